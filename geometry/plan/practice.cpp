#include "geometry/plan/practice.hpp"

#include "geometry/plan/check_layout.hpp"
#include "geometry/plan/opening_place.hpp"
#include "geometry/plan/section.hpp"
#include "geometry/plan/set_notes.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace coilwright {

namespace {

constexpr const char* practice = "common practice, no source";

class PracticeCheck {
public:
    PracticeCheck(const Design& design, const Schedule& schedule)
        : design_(design), schedule_(schedule) {}

    std::vector<Finding> run() {
        for (const TubeType& tube : design_.tubes)
            check_tamped_width(tube);
        for (const DomeForm& form : schedule_.building.domes) {
            const Dome& dome = *find_dome(design_, form.id);
            check_tube_for_diameter(dome, form);
            const std::vector<Finding> steps = step_findings(design_, form);
            findings_.insert(findings_.end(), steps.begin(), steps.end());
            check_skylight(dome, form);
            check_cap_hole(dome, form);
            check_ring_laps(form.id);
        }
        for (const TunnelForm& form : schedule_.building.tunnels)
            check_straight_laps(form.id);
        for (const OpeningPlan& opening : schedule_.openings) {
            const Opening& written = *find_opening(design_, opening.form.id);
            check_joints(written, opening.form);
            check_frame(written, opening);
            check_lintel(written, opening.form);
        }
        const std::vector<Finding> more = addition_findings(design_, schedule_);
        findings_.insert(findings_.end(), more.begin(), more.end());
        return std::move(findings_);
    }

private:
    const Design& design_;
    const Schedule& schedule_;
    std::vector<Finding> findings_;

    std::string length(double metres) const { return length_text(metres, design_.unit); }

    Finding& advice(const std::string& code, const std::string& subject, SourcePlace place,
                    const std::string& message) {
        Finding finding;
        finding.code = code;
        finding.subject = subject;
        finding.place = place;
        finding.verdict = Verdict::advice;
        finding.message = message;
        finding.source = practice;
        findings_.push_back(finding);
        return findings_.back();
    }

    void measured(Finding& finding, double value, double limit) {
        finding.value = value;
        finding.limit = limit;
        finding.unit = FindingUnit::metre;
    }

    /// A limit of the rules; what crews keep to where a design made without the reader has none.
    double limit(const char* name, double otherwise) const {
        const Limit* set = find_limit(design_.limits, name);
        return set ? set->value : otherwise;
    }
    void name_source(Finding& finding, const char* name) const {
        if (const Limit* set = find_limit(design_.limits, name))
            finding.source = source_text(*set);
    }

    void check_tamped_width(const TubeType& tube) {
        if (!tube.tamped_width)
            return;
        const double w = *tube.tamped_width;
        const double least = tube.lay_flat - design_.course.height;
        const double most = tube.lay_flat - metres_per_inch;
        if (w >= least - 0.001 && w <= most + 0.001)
            return;
        Finding& found = advice("tamped-width-off-practice", "tube." + tube.id, tube.place,
                                "A tamped width of " + length(w) +
                                    " is off what crews measure on a " + length(tube.lay_flat) +
                                    " tube: " + length(least) + " to " + length(most) + ".");
        measured(found, w, w < least ? least : most);
        found.remedy = "Measure a test bag again; the fabric's own reckoning gives " +
                       length(stadium_width(tube.lay_flat, design_.course.height)) + ".";
    }

    void check_tube_for_diameter(const Dome& dome, const DomeForm& form) {
        // An inch of width for a foot of diameter.
        const double share = limit("tube-width.of_diameter", 1.0 / 12);
        const double least = dome.inside_diameter * share;
        if (form.width >= least - height_tie)
            return;
        Finding& found =
            advice("tube-narrow-for-diameter", "dome." + dome.id, dome.tube_place,
                   "The tamped tube of '" + dome.id + "' is " + length(form.width) +
                       " wide; a dome " + length(dome.inside_diameter) +
                       " across is usually built with at least " + length(least) + ".");
        measured(found, form.width, least);
        found.remedy =
            "Take a tube about " +
            length(std::ceil((least + (pi / 2 - 1) * form.course_height) / 0.0254) * 0.0254) +
            " lay-flat, or a dome of at most " + length(form.width / share) + ".";
        name_source(found, "tube-width.of_diameter");
    }

    void check_skylight(const Dome& dome, const DomeForm& form) {
        if (form.curb_courses == 0 && dome.top.kind == TopKind::closed)
            return;
        const double eye = 2 * form.last_ring_radius;
        if (eye - dome.top.diameter <= limit("joint.slack", joint_slack))
            return;
        Finding& found = advice("skylight-wider-than-asked", "dome." + dome.id, dome.top.place,
                                "The last ring of '" + dome.id + "' leaves an eye " + length(eye) +
                                    " across; " + length(dome.top.diameter) + " was asked for.");
        measured(found, eye, dome.top.diameter);
        found.remedy = "Order the skylight for " + length(eye) + ", or change the rise.";
    }

    /// Bags span the hole that a cap closes on their two ends; the hole that the last ring leaves
    /// is about a tube across, unless the design ends the rings early or its crown is too flat.
    void check_cap_hole(const Dome& dome, const DomeForm& form) {
        if (form.cap_courses == 0)
            return;
        const double most = limit("cap.hole", 2) * form.width;
        const double hole = 2 * form.last_ring_radius;
        if (hole <= most + height_tie)
            return;
        Finding& found =
            advice("cap-hole", "dome." + dome.id, dome.profile.place,
                   "The last ring of '" + dome.id + "' leaves a hole " + length(hole) +
                       " across for the cap's bags to span; " + length(most) + " at most.");
        found.verdict = Verdict::fails;
        measured(found, hole, most);
        found.remedy = "End it in a skylight, top = { kind = \"skylight\", diameter = \"" +
                       length(hole) +
                       "\" }, or take a steeper crown and rings down to half a "
                       "tube's width.";
        name_source(found, "cap.hole");
    }

    static bool is_short(const std::vector<LaidTube>& tubes) {
        return std::any_of(tubes.begin(), tubes.end(),
                           [](const LaidTube& tube) { return tube.lap_short; });
    }

    void check_ring_laps(const std::string& dome) {
        check_laps("dome." + dome, dome, [&](const Course& course) {
            return std::any_of(course.rings.begin(), course.rings.end(), [&](const Ring& ring) {
                return ring.dome == dome &&
                       std::any_of(ring.runs.begin(), ring.runs.end(),
                                   [](const Run& run) { return is_short(run.tubes); });
            });
        });
    }

    void check_straight_laps(const std::string& tunnel) {
        check_laps("tunnel." + tunnel, tunnel, [&](const Course& course) {
            return std::any_of(course.straights.begin(), course.straights.end(),
                               [&](const Straight& straight) {
                                   return straight.of == tunnel && is_short(straight.tubes);
                               });
        });
    }

    void check_laps(const std::string& subject, const std::string& id,
                    const std::function<bool(const Course&)>& is_short_in) {
        std::string courses;
        int count = 0;
        for (const Course& course : schedule_.courses)
            if (is_short_in(course)) {
                courses += (count > 0 ? ", " : "") + std::to_string(course.number);
                ++count;
            }
        if (count == 0)
            return;
        Finding& found =
            advice("joint-lap-short", subject, design_.course.place,
                   "In " + std::string(count == 1 ? "course " : "courses ") + courses + " of '" +
                       id + "' a tube joint lies nearer than " + length(design_.course.joint_lap) +
                       " to one below or to a cut.");
        found.value = count;
        found.limit = 0;
        found.unit = FindingUnit::count;
        found.remedy = "Tie these joints with wire, or fill longer tubes than " +
                       length(design_.course.longest_tube) + ".";
    }

    void check_joints(const Opening& written, const OpeningForm& form) {
        const auto check = [&](double z, const char* code, const char* what, SourcePlace place) {
            // Joints lie where courses lie, measured tops included.
            const auto course = std::find_if(
                schedule_.courses.begin(), schedule_.courses.end(), [&](const Course& c) {
                    return z >= c.bottom - height_tie && z < c.top - height_tie;
                });
            if (course == schedule_.courses.end())
                return;
            const double below = course->bottom, above = course->top;
            if (std::min(z - below, above - z) <= limit("joint.slack", joint_slack))
                return;
            Finding& found = advice(code, "opening." + written.id, place,
                                    std::string("The ") + what + " of '" + written.id + "' at " +
                                        length(z) + " lies between two course joints.");
            measured(found, z, z - below < above - z ? below : above);
            found.remedy = std::string("The joints next to it lie at ") + length(below) + " and " +
                           length(above) + ".";
        };
        check(form.sill, "sill-misses-joint", "sill", written.sill_place);
        check(form.top, "head-misses-joint", "head", written.height_place);
    }

    void check_frame(const Opening& written, const OpeningPlan& opening) {
        if (written.use != OpeningUse::door && written.use != OpeningUse::window)
            return;
        const double band = opening.frame_band_end - opening.frame_band_start;
        if (opening.frame_depth <= band + height_tie)
            return;
        Finding& found =
            advice("frame-deeper-than-band", "opening." + written.id, written.place,
                   "A plumb frame of '" + written.id +
                       "' lies inside the leaning wall at every course "
                       "only over " +
                       length(band) + "; the frame is " + length(opening.frame_depth) + " deep.");
        measured(found, band, opening.frame_depth);
        found.remedy = std::string(written.reveal_plumb ? "Take"
                                                        : "Build the jambs out plumb (reveal = "
                                                          "\"plumb\"), or take") +
                       " a shallower frame" + raised_springline(written, opening.frame_depth);
    }

    /// The lowest springline, in whole courses, at which the frame finds its band.
    std::string raised_springline(const Opening& written, double frame_depth) const {
        const Dome* dome = find_dome(design_, written.in);
        if (!dome)
            return ".";
        Dome trial = *dome;
        const double t = schedule_.course_height;
        const int from = static_cast<int>(std::floor(dome->springline / t)) + 1;
        for (int k = from; k <= from + 40; ++k) {
            trial.springline = k * t;
            BuildingForm alone;
            alone.domes.push_back(make_dome_form(design_, trial));
            const OpeningPlan plan =
                plan_opening(design_, written, make_opening_form(written), alone);
            if (plan.frame_band_end - plan.frame_band_start >= frame_depth)
                return "; a springline at " + length(trial.springline) + " would hold it.";
        }
        return ".";
    }

    /// Nothing carries the courses over a square hole but a lintel. A tube bridges what is no wider
    /// than itself, and over a niche the wall behind it helps.
    void check_bare_head(const Opening& written, const OpeningForm& form) {
        const DomeForm* dome = find_dome(schedule_.building, form.in);
        const TunnelForm* tunnel = find_tunnel(schedule_.building, form.in);
        const double width = dome ? ring_width(*dome, form.top) : tunnel ? tunnel->width : 0;
        const bool bridged = form.niche_depth > 0 || 2 * form.half_width <= width + height_tie;
        Finding& found =
            advice("square-head-without-lintel", "opening." + written.id, written.head.place,
                   "'" + written.id + "' has a square head, " + length(2 * form.half_width) +
                       " wide, and no lintel: nothing carries the courses over it.");
        found.verdict = bridged ? Verdict::advice : Verdict::fails;
        measured(found, 2 * form.half_width, width);
        found.remedy = lintel_to_paste(written, form) +
                       (form.niche_depth > 0 ? "Or take an arched head."
                                             : "Or take an arched head: pointed, round or "
                                               "segmental.");
    }

    /// The head with the longest bearing that the place has, up to the usual one.
    std::string lintel_to_paste(const Opening& written, const OpeningForm& form) const {
        const double usual = limit("lintel.bearing", 12 * metres_per_inch);
        const double step = design_.unit == DisplayUnit::feet ? metres_per_inch : 0.01;
        const double depth = 2 * schedule_.course_height;
        for (const double share : {1.0, 0.75, 0.5}) {
            LintelSpec lintel;
            lintel.bearing = std::ceil(share * usual / step - 1e-6) * step;
            lintel.depth = depth;
            Design trial = design_;
            for (Opening& opening : trial.openings)
                if (opening.id == written.id)
                    opening.head.lintel = lintel;
            if (!check_layout(trial).empty())
                continue;
            return "Write head = { kind = \"square\", lintel = { kind = \"timber\", bearing = \"" +
                   length(lintel.bearing) + "\", depth = \"" + length(depth) +
                   "\" } } in [opening." + form.id + "], and have it sized by an engineer. ";
        }
        return {};
    }

    /// A square head without a lintel, and one in a leaning wall.
    void check_lintel(const Opening& written, const OpeningForm& form) {
        if (form.head_kind != HeadKind::square)
            return;
        if (!form.lintel)
            check_bare_head(written, form);
        const DomeForm* dome = find_dome(schedule_.building, form.in);
        if (!dome || form.top <= dome->springline + height_tie)
            return;
        Finding& leaning =
            advice("lintel-above-springline", "opening." + written.id, written.head.place,
                   "The head of '" + written.id + "' at " + length(form.top) +
                       " lies above the springline at " + length(dome->springline) +
                       ": the leaning wall loads a straight lintel off its middle.");
        measured(leaning, form.top, dome->springline);
        leaning.remedy = "Take an arched head, or raise the springline to " +
                         length(joint_from(schedule_.building.domes.front(), form.top)) + ".";
    }
};

} // namespace

std::vector<Finding> practice_findings(const Design& design, const Schedule& schedule) {
    return PracticeCheck(design, schedule).run();
}

} // namespace coilwright
