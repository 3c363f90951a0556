// Wire in the joints, and how fast the wall may rise.
#include "geometry/checks/held_against.hpp"
#include "geometry/checks/trade_findings.hpp"
#include "geometry/plan/wire.hpp"

#include <cmath>

namespace coilwright {

namespace {

/// Courses in which a ring that another lies on got no wire.
int joints_without_wire(const Schedule& schedule, const std::string& tube) {
    int bare = 0;
    for (std::size_t i = 0; i + 1 < schedule.courses.size(); ++i)
        for (const Ring& ring : schedule.courses[i].rings) {
            if (ring.tube != tube || ring.runs.empty() || ring.wire_length > 0)
                continue;
            for (const Ring& above : schedule.courses[i + 1].rings)
                if (above.dome == ring.dome && above.wythe == ring.wythe && !above.runs.empty()) {
                    ++bare;
                    break;
                }
        }
    return bare;
}

} // namespace

std::vector<Finding> work_practice_findings(const BuildingPlan& plan) {
    const Design& design = plan.design;
    const Wording wording{design.unit};
    std::vector<Finding> findings;
    const Limit* wide = find_limit(design.limits, "wire.strands");
    const Limit* narrow = find_limit(design.limits, "wire.narrow_strands");
    const Limit* bound = find_limit(design.limits, "wire.narrow_lay_flat");
    for (const TubeType& tube : design.tubes) {
        if (!wide || !narrow || !bound)
            break;
        const bool is_narrow = tube.lay_flat < bound->value - 1e-9;
        const int strands = wire_strands(design, tube.id);
        Finding found = held_against("wire-strands", {"tube." + tube.id, tube.place}, strands,
                                     FindingUnit::count, Bound::at_least,
                                     is_narrow ? *narrow : *wide, Verdict::advice);
        const int bare = joints_without_wire(plan.schedule, tube.id);
        const std::string number = std::to_string(strands);
        found.message =
            (bare > 0 ? std::to_string(bare) + " rings lie on a joint without wire; else "
                      : std::string("Every joint has wire: ")) +
            number + (strands == 1 ? " strand (" : " strands (") +
            fixed_text(found.limit.value_or(0), 0) + " on a tube " + wording.length(tube.lay_flat) +
            " flat).";
        if (bare > 0)
            found.verdict = Verdict::fails;
        if (strands < found.limit.value_or(0) - 1e-6)
            found.remedy = "Set strands = " + fixed_text(std::ceil(found.limit.value_or(0)), 0) +
                           " in [wire].";
        else if (bare > 0)
            found.remedy = "No wall of one course lies on that of the next there: part the "
                           "openings, so that the " +
                           number + (strands == 1 ? " strand" : " strands") + " can be laid.";
        findings.push_back(std::move(found));
    }

    const Limit* built = find_limit(design.limits, "daily-height.built");
    const Limit* lift = find_limit(design.limits, "lift.height");
    for (const Fill& fill : design.fills) {
        if (!built || !lift)
            continue;
        if (!fill.age_per_lift) {
            Finding unknown = not_judged("daily-height", {"fill." + fill.id, fill.place}, *built,
                                         "A crew builds about " + wording.length(built->value) +
                                             " of wall a day; how long '" + fill.id +
                                             "' must age before the next lift is not stated.");
            unknown.remedy = "State age_per_lift in [fill." + fill.id + "], in days.";
            findings.push_back(std::move(unknown));
            continue;
        }
        if (*fill.age_per_lift <= 0)
            continue;
        Limit pace = *lift;
        pace.value /= *fill.age_per_lift;
        Finding found = held_against("daily-height", {"fill." + fill.id, fill.place}, built->value,
                                     FindingUnit::metre, Bound::at_most, pace, Verdict::advice);
        found.message = "A crew builds about " + wording.length(built->value) + " of wall a day (" +
                        built->source + ", " + built->edition + "); '" + fill.id + "' ages " +
                        fixed_text(*fill.age_per_lift, 1) + " days a lift of " +
                        wording.length(lift->value) + ": " + wording.length(pace.value) + " a day.";
        if (found.verdict != Verdict::holds)
            found.remedy = "After each " + wording.length(lift->value) + " wait until " +
                           fixed_text(std::ceil(*fill.age_per_lift), 0) +
                           " days have passed since it was begun, or take a fill that needs " +
                           fixed_text(std::floor(lift->value / built->value * 10) / 10, 1) +
                           " days.";
        findings.push_back(std::move(found));
    }
    return findings;
}

} // namespace coilwright
