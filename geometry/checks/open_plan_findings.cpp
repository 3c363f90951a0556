// Domes that open into each other: what of it the statics leaves out, said and never silent.
#include "geometry/checks/element_findings.hpp"
#include "geometry/checks/statics_finding.hpp"

#include <algorithm>

namespace coilwright {

namespace {

/// What one dome loses of its rings to another.
struct Lost {
    int last_course = 0;
    double degrees = 0; // the most, in one course
};

Lost lost_to(const BuildingPlan& plan, const DomeForm& dome, const std::string& other) {
    Lost lost;
    for (const WallCourse& course : dome_courses(plan.design, plan.schedule.building, dome))
        for (const RingGap& gap : course.gaps) {
            if (gap.by != other || gap.kind() == GapKind::strip)
                continue;
            const auto ends = gap_ends(gap, (course.inside + course.outside) / 2);
            if (!ends)
                continue;
            lost.last_course = std::max(lost.last_course, course.number);
            lost.degrees = std::max(lost.degrees, ends->second - ends->first);
        }
    return lost;
}

} // namespace

std::vector<Finding> open_plan_findings(const BuildingPlan& plan) {
    std::vector<Finding> findings;
    const BuildingForm& building = plan.schedule.building;
    for (const JoinForm& join : building.joins) {
        const DomeForm* first = find_dome(building, join.first);
        const DomeForm* second = find_dome(building, join.second);
        if (!join.keep.empty() || !first || !second)
            continue;
        const Lost one = lost_to(plan, *first, join.second);
        const Lost other = lost_to(plan, *second, join.first);
        const auto written = std::find_if(plan.design.joins.begin(), plan.design.joins.end(),
                                          [&](const Join& table) { return table.id == join.id; });
        Finding found =
            statics_finding("open-plan-rings", "join." + join.id,
                            written == plan.design.joins.end() ? SourcePlace{} : written->place);
        found.unit = FindingUnit::degree;
        found.value = std::max(one.degrees, other.degrees);
        found.formula =
            "the most that the room of one takes of a ring of the other, about its pole";
        found.source = "geometry; rings that lean on each other along an edge are outside of this "
                       "limit analysis";
        found.message = "'" + join.first + "' and '" + join.second +
                        "' open into each other up to course " +
                        std::to_string(std::max(one.last_course, other.last_course)) + ": up to " +
                        fixed_text(one.degrees, 0) + " degrees of a ring of '" + join.first +
                        "' and " + fixed_text(other.degrees, 0) + " of '" + join.second +
                        "' are missing, and the broken rings lean on each other where the domes "
                        "meet. What that "
                        "edge carries is not reckoned: each dome is checked as if nothing held its "
                        "rings there, "
                        "and what does not hold so is not judged.";
        found.remedy = "Ask an engineer to reckon the two together. A kept wall, or a tunnel "
                       "between domes that stand apart, leaves rings whole.";
        findings.push_back(std::move(found));
    }
    return findings;
}

} // namespace coilwright
