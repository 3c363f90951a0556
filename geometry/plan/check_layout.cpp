#include "geometry/plan/check_layout.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

/// A sound dome with its wall, ready for its openings.
struct Laid {
    const Dome* dome;
    DomeForm form;
};

class LayoutCheck {
public:
    explicit LayoutCheck(const Design& design) : design_(design) {}

    std::vector<Diagnostic> run() {
        refuse_what_is_not_laid_yet();
        if (!design_.course.sound)
            return std::move(faults_);
        for (const Dome& dome : design_.domes)
            check_dome(dome);
        for (std::size_t i = 0; i < laid_.size(); ++i)
            for (std::size_t j = i + 1; j < laid_.size(); ++j)
                check_apart(laid_[i], laid_[j]);
        for (const Laid& laid : laid_)
            check_openings(laid);
        return std::move(faults_);
    }

private:
    const Design& design_;
    std::vector<Laid> laid_;
    std::vector<Diagnostic> faults_;

    std::string length(double metres) const { return length_text(metres, design_.unit); }

    Diagnostic& fault(const std::string& code, SourcePlace place, const std::string& subject,
                      const std::string& message) {
        Diagnostic diagnostic;
        diagnostic.code = code;
        diagnostic.place = place;
        diagnostic.subject = subject;
        diagnostic.message = message;
        faults_.push_back(diagnostic);
        return faults_.back();
    }

    void not_laid_yet(SourcePlace place, const std::string& subject, const std::string& what) {
        Diagnostic& found =
            fault("not-laid-yet", place, subject, "This version cannot lay " + what + " yet.");
        found.allowed = "domes with openings";
        found.example = "leave this table out";
    }

    void refuse_what_is_not_laid_yet() {
        for (const Tunnel& tunnel : design_.tunnels)
            not_laid_yet(tunnel.place, "tunnel." + tunnel.id, "tunnels");
        for (const Buttress& buttress : design_.buttresses)
            not_laid_yet(buttress.place, "buttress." + buttress.id, "buttresses");
        for (const Join& join : design_.joins)
            not_laid_yet(join.place, "join." + join.id, "joined domes");
        for (const Sleeve& sleeve : design_.sleeves)
            not_laid_yet(sleeve.place, "sleeve." + sleeve.id, "sleeves");
        for (const Opening& opening : design_.openings) {
            if (opening.use == OpeningUse::niche)
                not_laid_yet(opening.place, "opening." + opening.id, "niches");
            if (opening.head.laid == HeadLaid::fan)
                not_laid_yet(opening.head.place, "opening." + opening.id + ".head", "fan heads");
        }
    }

    void check_dome(const Dome& dome) {
        const TubeType* tube = find_tube(design_, dome.tube);
        if (!dome.sound || !tube || !tube->sound || dome.fit_springline || dome.fit_diameter ||
            dome.profile.fit_rise)
            return;
        const std::string subject = "dome." + dome.id;
        const DomeForm form = make_dome_form(design_, dome);
        if (form.last_ring == 0) {
            Diagnostic& found = fault("dome-without-ring", dome.place, subject,
                                      "No course of '" + dome.id +
                                          "' can be laid as a ring: its inside radius of " +
                                          length(dome.inside_diameter / 2) +
                                          " is too small for its tube or its skylight.");
            found.allowed = "an inside radius of at least half a tamped tube (" +
                            length(form.width / 2) + "), and more than the skylight's";
            found.example = "inside_diameter = \"" + length(4 * form.width) + "\"";
            return;
        }
        if (form.courses() >= most_courses) {
            Diagnostic& found = fault("too-many-courses", dome.place, subject,
                                      "'" + dome.id + "' needs " + std::to_string(most_courses) +
                                          " courses or more, or its profile never closes.");
            found.allowed = "fewer than " + std::to_string(most_courses) + " courses";
            found.example = "rise = \"" + length(dome.inside_diameter) + "\"";
            return;
        }
        if (form.course_middle(form.last_ring) < 0) {
            Diagnostic& found = fault("dome-below-floor", dome.place, subject,
                                      "'" + dome.id + "' ends below the floor.");
            found.allowed = "a springline and rise that bring rings above the floor";
            found.example = "springline = \"" + length(4 * form.course_height) + "\"";
            return;
        }
        laid_.push_back({&dome, form});
    }

    void check_apart(const Laid& a, const Laid& b) {
        const double apart = (a.form.at - b.form.at).norm();
        const double radii = outside_radius(a.form, 0) + outside_radius(b.form, 0);
        if (apart > radii + a.form.width)
            return;
        Diagnostic& found = fault("domes-overlap", b.dome->place, "dome." + b.dome->id,
                                  "'" + b.dome->id + "' meets '" + a.dome->id +
                                      "': their poles stand " + length(apart) + " apart.");
        found.allowed = "poles more than " + length(radii + a.form.width) + " apart";
        found.example = "at = [\"" + length(a.form.at.x() + radii + 2 * a.form.width) + "\", \"" +
                        length(a.form.at.y()) + "\"]";
    }

    void check_openings(const Laid& laid) {
        std::vector<std::pair<const Opening*, OpeningForm>> fitting;
        for (const Opening& opening : design_.openings) {
            if (!opening.sound || opening.in != laid.dome->id)
                continue;
            const OpeningForm form = make_opening_form(opening);
            if (fits(opening, form, laid))
                fitting.emplace_back(&opening, form);
        }
        for (std::size_t i = 0; i < fitting.size(); ++i)
            for (std::size_t j = i + 1; j < fitting.size(); ++j)
                check_gap(*fitting[i].first, fitting[i].second, *fitting[j].first,
                          fitting[j].second, laid);
    }

    bool fits(const Opening& opening, const OpeningForm& form, const Laid& laid) {
        const std::string subject = "opening." + opening.id;
        const DomeForm& dome = laid.form;
        const double rings_end = dome.course_bottom(dome.last_ring + 1);
        if (form.top > rings_end + height_tie) {
            Diagnostic& found = fault("opening-too-high", opening.height_place, subject,
                                      "The head of '" + opening.id + "' at " + length(form.top) +
                                          " lies above the last ring of '" + dome.id +
                                          "', which ends at " + length(rings_end) + ".");
            found.allowed = "a head no higher than " + length(rings_end);
            const double fitting = rings_end - form.sill;
            found.example = fitting > dome.course_height ? "height = \"" + length(fitting) + "\""
                                                         : "sill = \"0 in\"";
            return false;
        }
        for (const double z : heights(form, dome)) {
            const double a = half_width(form, z), r = inside_radius(dome, z);
            if (a < widest_share * r)
                continue;
            Diagnostic& found = fault("opening-too-wide", opening.width_place, subject,
                                      "'" + opening.id + "' is " + length(2 * a) + " wide at " +
                                          length(z) + " above the floor, where the inside of '" +
                                          dome.id + "' is " + length(2 * r) + " across.");
            found.allowed = "less than " + length(2 * widest_share * r) + " at that height";
            found.example = "width = \"" + length(std::floor(r / 0.0254) * 0.0254) + "\"";
            return false;
        }
        if (!cuts_any_course(form, dome)) {
            Diagnostic& found = fault("opening-cuts-nothing", opening.height_place, subject,
                                      "'" + opening.id +
                                          "' is too small to cut a course: at no "
                                          "course's middle is it a course height (" +
                                          length(dome.course_height) + ") wide.");
            found.allowed =
                "an opening wider than a course height at the middle of a course; smaller "
                "holes are sleeves";
            found.example = "width = \"" + length(3 * dome.course_height) + "\"";
            return false;
        }
        return true;
    }

    static bool cuts_any_course(const OpeningForm& form, const DomeForm& dome) {
        for (int n = 1; n <= dome.last_ring; ++n)
            if (cuts_course(form, dome, n))
                return true;
        return false;
    }

    /// Where widths are compared: often enough that no facet of the model finds a wider place.
    static std::vector<double> heights(const OpeningForm& form, const DomeForm& dome) {
        std::vector<double> heights;
        const double step = dome.course_height / 4;
        for (double z = form.sill; z < form.top; z += step)
            heights.push_back(z);
        heights.push_back(std::min(form.top, std::max(form.sill, form.springing - 2 * height_tie)));
        for (int n = 1; n <= dome.last_ring; ++n) {
            const double z = dome.course_middle(n);
            if (z >= form.sill && z < form.top)
                heights.push_back(z);
        }
        return heights;
    }

    void check_gap(const Opening& a, const OpeningForm& form_a, const Opening& b,
                   const OpeningForm& form_b, const Laid& laid) {
        const DomeForm& dome = laid.form;
        const double least = dome.width;
        const double low = std::max(form_a.sill, form_b.sill);
        const double high = std::min(form_a.top, form_b.top);
        if (low - high >= least - height_tie) // one stands a tube width above the other
            return;
        const double turn = clockwise_degrees(form_a.bearing, form_b.bearing);
        const double between = std::min(turn, 360 - turn);
        double nearest = 2 * pi * dome.profile.half_span;
        double at = low;
        const auto compare = [&](double z, double width_a, double width_b) {
            const double r = inside_radius(dome, z);
            const double gap =
                r * radians_per_degree *
                (between - half_angle_degrees(width_a, r) - half_angle_degrees(width_b, r));
            if (gap < nearest) {
                nearest = gap;
                at = z;
            }
        };
        if (low < high) {
            const double step = std::min(dome.course_height / 4, (high - low) / 4);
            for (double z = low; z < high; z += step)
                compare(z, half_width(form_a, z), half_width(form_b, z));
        } else { // above each other: the head of one against the sill of the other
            const OpeningForm& upper = form_a.sill > form_b.sill ? form_a : form_b;
            const OpeningForm& lower = form_a.sill > form_b.sill ? form_b : form_a;
            compare(upper.sill, half_width(upper, upper.sill + 2 * height_tie),
                    widest_near_top(lower));
        }
        if (nearest >= least - height_tie)
            return;
        if (low >= high) {
            const bool b_above = form_b.sill > form_a.sill;
            const Opening& upper = b_above ? b : a;
            const Opening& lower = b_above ? a : b;
            Diagnostic& found = fault("openings-too-close", upper.sill_place, "opening." + upper.id,
                                      "'" + upper.id + "' stands only " + length(low - high) +
                                          " above '" + lower.id + "'.");
            found.allowed =
                "at least one tamped tube width (" + length(least) + ") of wall between them";
            found.example =
                "sill = \"" +
                length(std::ceil((high + least) / dome.course_height - 1e-9) * dome.course_height) +
                "\"";
            return;
        }
        const bool overlap = nearest <= 0;
        Diagnostic& found = fault(
            overlap ? "openings-overlap" : "openings-too-close", b.bearing_place, "opening." + b.id,
            overlap
                ? "'" + b.id + "' and '" + a.id + "' overlap at " + length(at) + " above the floor."
                : "'" + b.id + "' comes within " + length(nearest) + " of '" + a.id + "' at " +
                      length(at) + " above the floor, measured along the inside face.");
        found.allowed =
            "at least one tamped tube width (" + length(least) + ") of wall between them";
        const double away =
            std::ceil(between + (least - nearest) / (inside_radius(dome, at) * radians_per_degree));
        found.example =
            "bearing = " +
            fixed_text(turned_into_circle(form_a.bearing.degrees + (turn <= 180 ? away : -away)),
                       0);
    }

    /// Half-width of a head within a tube's reach of its top: a flat or round head is wide there.
    static double widest_near_top(const OpeningForm& form) {
        return half_width(form, std::max(form.sill, form.top - 0.05));
    }

    /// An opening that takes all but this share of the inside circle leaves no jamb to build.
    static constexpr double widest_share = 0.98;
};

} // namespace

std::vector<Diagnostic> check_layout(const Design& design) {
    return LayoutCheck(design).run();
}

} // namespace coilwright
