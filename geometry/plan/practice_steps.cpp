// What the steps inward of a dome's courses come to: advice of the trade, and courses that find
// nothing to rest on.
#include "geometry/base/shown_step.hpp"
#include "geometry/plan/contact.hpp"
#include "geometry/plan/practice.hpp"
#include "geometry/plan/section.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace coilwright {

namespace {

class StepCheck {
public:
    StepCheck(const Design& design, const DomeForm& form)
        : design_(design), form_(form), dome_(*find_dome(design, form.id)) {}

    std::vector<Finding> run() {
        check_step_in();
        check_measured_tops();
        check_contact();
        return std::move(findings_);
    }

private:
    const Design& design_;
    const DomeForm& form_;
    const Dome& dome_;
    std::vector<Finding> findings_;

    std::string length(double metres) const { return length_text(metres, design_.unit); }

    Finding& add(const std::string& code, Verdict verdict, const std::string& message, double value,
                 double limit) {
        Finding finding;
        finding.code = code;
        finding.subject = "dome." + dome_.id;
        finding.place = dome_.profile.place;
        finding.verdict = verdict;
        finding.message = message;
        finding.value = value;
        finding.limit = limit;
        finding.unit = FindingUnit::metre;
        findings_.push_back(finding);
        return findings_.back();
    }

    /// The length that a person reads and types.
    double as_shown(double metres) const { return read_length(length(metres), design_.unit).value; }

    /// A limit of the rules; what crews keep to where a design made without the reader has none.
    double limit(const char* name, double otherwise) const {
        const Limit* set = find_limit(design_.limits, name);
        return set ? set->value : otherwise;
    }
    std::string source(const char* name) const {
        const Limit* set = find_limit(design_.limits, name);
        return set ? source_text(*set) : "common practice, read second-hand";
    }
    static std::string share_text(double share, double usual, const char* words) {
        return share == usual ? words : fixed_text(share * 100, 0) + " %";
    }

    static double step_in(const DomeForm& form, int n) {
        return inside_radius(form, form.course_middle(n - 1)) -
               inside_radius(form, form.course_middle(n));
    }

    void check_step_in() {
        const double share = limit("step-in.share", 0.25), half_share = limit("step-in.most", 0.5);
        int worst = 0, over_quarter = 0;
        double most = 0;
        for (int n = 2; n <= form_.last_ring; ++n) {
            const double step = step_in(form_, n);
            if (step > most) {
                most = step;
                worst = n;
            }
            if (over_quarter == 0 && step > share * form_.width + height_tie)
                over_quarter = n;
        }
        if (over_quarter == 0)
            return;
        Finding& quarter =
            add("step-in-over-quarter", Verdict::advice,
                "From course " + std::to_string(over_quarter) + " on, courses of '" + dome_.id +
                    "' step in by more than " + share_text(share, 0.25, "a quarter") +
                    " of the tube; the most is " + length(most) + " at course " +
                    std::to_string(worst) + ".",
                most, share * form_.width);
        quarter.source = source("step-in.share");
        quarter.remedy =
            "Lay these courses slowly, each ring closed before the next. A higher rise "
            "steps in less" +
            higher_rise(share * form_.width);
        if (most <= half_share * form_.width + height_tie)
            return;
        Finding& half =
            add("step-in-over-half", Verdict::advice,
                "Course " + std::to_string(worst) + " of '" + dome_.id + "' steps in by " +
                    length(most) + ": less than " + share_text(1 - half_share, 0.5, "half") +
                    " of the tube lies on the course below.",
                most, half_share * form_.width);
        half.source = source("step-in.most");
        half.remedy =
            "Raise the profile or widen the skylight" + higher_rise(half_share * form_.width);
    }

    static double greatest_step_in(const DomeForm& form) {
        double most = 0;
        for (int n = 2; n <= form.last_ring; ++n)
            most = std::max(most, step_in(form, n));
        return most;
    }

    /// The lowest rise, in whole inches or centimetres, that keeps the step-in within a limit.
    std::string higher_rise(double most) const {
        if (dome_.profile.kind == ProfileKind::drawn || dome_.profile.kind == ProfileKind::round)
            return ".";
        const auto keeps = [&](const Dome& trial) {
            return greatest_step_in(make_dome_form(design_, trial)) <= most + height_tie;
        };
        if (const auto rise = lowest_rise(dome_.profile.kind, 24, keeps))
            return ": with a rise of " + length(*rise) + " no course steps in by more than " +
                   length(most) + ".";
        return ".";
    }

    /// The lowest rise over the present one, in whole inches or centimetres, with which a dome
    /// does; at most so many courses more.
    template <typename Does>
    std::optional<double> lowest_rise(ProfileKind kind, int most_courses_more, Does does) const {
        const double now = form_.profile.rise;
        const double step = design_.unit == DisplayUnit::feet ? metres_per_inch : 0.01;
        const double most = now + most_courses_more * form_.course_height;
        for (double rise = (std::floor(now / step + 1e-6) + 1) * step; rise <= most; rise += step)
            if (const Dome trial = with_rise(kind, as_shown(rise)); does(trial))
                return trial.profile.rise;
        return std::nullopt;
    }

    Dome with_rise(ProfileKind kind, double rise) const {
        Dome trial = dome_;
        trial.profile = {};
        trial.profile.kind = kind;
        trial.profile.rise = rise;
        return trial;
    }

    /// The lowest course that a measured top moves by enough to be felt. Course n was laid to its
    /// own setting before its top was measured; the setting of course n + 1 follows from that top.
    void check_measured_tops() {
        const Limit* set = find_limit(design_.limits, "as-laid.step_change");
        const double most = set ? set->value : metres_per_inch;
        for (const auto& [n, top] : form_.measured_tops) {
            if (n + 1 > form_.last_ring)
                return;
            const double t = form_.course_height, planned = form_.course_bottom(n) + t;
            const auto radius = [&](double top_below) {
                return half_width(form_.profile, top_below + t / 2 - form_.springline);
            };
            const auto change = [&](double top_below) {
                return radius(planned) - radius(top_below);
            };
            const double changed = change(top);
            if (std::abs(changed) <= most + height_tie)
                continue;
            const std::string laid = std::to_string(n), next = std::to_string(n + 1);
            const double step = step_in(form_, n + 1);
            Finding& found =
                add("step-in-changed", Verdict::advice,
                    "Course " + next + " of '" + dome_.id + "' steps in by " + length(step) +
                        " where " + length(step - changed) + " was planned: the top of course " +
                        laid + " was measured " + length(std::abs(top - planned)) +
                        (top > planned ? " above" : " below") + " the layout.",
                    std::abs(changed), most);
            found.subject += " course " + next;
            found.source = set ? source_text(*set) : "a judgement without source";
            double keeps = planned, beyond = top;
            for (int i = 0; i < 50; ++i) {
                const double middle = (keeps + beyond) / 2;
                (std::abs(change(middle)) <= most ? keeps : beyond) = middle;
            }
            const double step_shown =
                design_.unit == DisplayUnit::feet ? metres_per_inch / 8 : 0.001;
            const double to = top > planned ? std::floor(keeps / step_shown) * step_shown
                                            : std::ceil(keeps / step_shown) * step_shown;
            found.remedy =
                top > planned
                    ? "Tamp or rake course " + laid + " down to " + length(to) +
                          " or less before you go on, or spread the change over the next courses."
                    : "Bring course " + laid + " up to " + length(to) +
                          " or more with a thin layer of fill before you go on, or spread the "
                          "change over the next courses.";
            return;
        }
    }

    /// A course whose flat misses the one below cannot be built at all, nor what lies on it.
    void check_contact() {
        const TubeEdge edge = design_.course.edge;
        const int n = first_without_contact(form_, edge);
        if (n == 0)
            return;
        const double overlap = contact_overlap(form_, n, edge);
        const std::string course = std::to_string(n), below = std::to_string(n - 1);
        const std::string misses =
            overlap > -shown_step(design_.unit) / 2
                ? "the flats of their tubes only touch."
                : "the flats of their tubes miss each other by " + length(-overlap) + ".";
        Finding& found =
            add("course-without-bearing", Verdict::fails,
                "Course " + course + " of '" + dome_.id + "' does not rest on course " + below +
                    ": " + misses + others_without_contact(n),
                overlap, 0);
        found.subject += " course " + course;
        found.formula = edge == TubeEdge::square
                            ? "contact = least outside radius - greatest inside radius of the two"
                            : "contact = least outside radius - greatest inside radius of the two, "
                              "less t/2 at each round edge";
        found.source = "geometry: the flats of the two tubes do not meet";
        found.remedy = contact_remedy();
    }

    /// The courses above the first that would not rest either.
    std::string others_without_contact(int first) const {
        std::string others;
        int count = 0;
        for (int n = first + 1; n <= form_.courses(); ++n)
            if (contact_overlap(form_, n, design_.course.edge) <= 0) {
                others += (count > 0 ? ", " : "") + std::to_string(n);
                ++count;
            }
        if (count == 0)
            return {};
        return (count == 1 ? " Nor does course " : " Nor do courses ") + others +
               " on the one below.";
    }

    bool rests(const Design& design, const Dome& dome) const {
        const DomeForm form = make_dome_form(design, dome);
        return form.last_ring > 0 && form.courses() < most_courses &&
               first_without_contact(form, design.course.edge) == 0;
    }

    std::string contact_remedy() const {
        std::vector<std::string> ways;
        for (const std::string& way : {steeper_profile(), wider_tube(), larger_skylight()})
            if (!way.empty())
                ways.push_back(way);
        if (ways.empty())
            return "Choose a steeper profile: this crown is too flat to corbel.";
        std::string text = "This crown is too flat to corbel. It rests with ";
        for (std::size_t i = 0; i < ways.size(); ++i)
            text += (i == 0 ? "" : i + 1 < ways.size() ? ", with " : ", or with ") + ways[i];
        return text + ".";
    }

    /// A pointed one where the profile has no rise to change.
    std::string steeper_profile() const {
        constexpr int most_more = 80; // courses
        const bool has_rise =
            dome_.profile.kind != ProfileKind::drawn && dome_.profile.kind != ProfileKind::round;
        const ProfileKind kind = has_rise ? dome_.profile.kind : ProfileKind::pointed;
        const auto does = [&](const Dome& trial) { return rests(design_, trial); };
        const auto rise = lowest_rise(kind, most_more, does);
        return rise ? (has_rise ? "a rise of " : "a pointed profile and a rise of ") + length(*rise)
                    : std::string();
    }

    /// In whole inches or centimetres more.
    std::string wider_tube() const {
        constexpr double widest = 0.8; // lying flat; none is sold wider
        const double step = design_.unit == DisplayUnit::feet ? metres_per_inch : 0.01;
        Design trial = design_;
        const auto tube =
            std::find_if(trial.tubes.begin(), trial.tubes.end(),
                         [&](const TubeType& other) { return other.id == dome_.tube; });
        while (tube->lay_flat + step <= widest) {
            tube->lay_flat = as_shown(tube->lay_flat + step);
            if (tube->tamped_width)
                tube->tamped_width = as_shown(*tube->tamped_width + step);
            if (rests(trial, dome_))
                return "a tube of " + length(tube->lay_flat) + " lying flat" +
                       (tube->tamped_width ? ", " + length(*tube->tamped_width) + " tamped" : "");
        }
        return {};
    }

    std::string larger_skylight() const {
        constexpr double widest = 0.75; // of the diameter: beyond it little of a dome is left
        const double step = design_.unit == DisplayUnit::feet ? 2 * metres_per_inch : 0.05;
        Dome trial = dome_;
        trial.top.kind = TopKind::skylight;
        for (int k = static_cast<int>(dome_.top.diameter / step) + 1;
             k * step <= widest * dome_.inside_diameter; ++k) {
            trial.top.diameter = k * step;
            if (rests(design_, trial))
                return "a skylight of " + length(trial.top.diameter);
        }
        return {};
    }
};

} // namespace

std::vector<Finding> step_findings(const Design& design, const DomeForm& form) {
    return StepCheck(design, form).run();
}

} // namespace coilwright
