#include "geometry/takeoff/footings.hpp"

#include "geometry/plan/trench_room.hpp"

#include <algorithm>
#include <map>

namespace coilwright {

namespace {

struct Sum {
    double area = 0; // of its tubes
    double width = 0;
    double tube = 0;            // width of one, the innermost
    double right = 0, left = 0; // of a pier: edges of its tubes, from the middle of the first
    const Straight* first = nullptr;
};

/// How far to the left of one run another lies that is parallel to it.
double offset_between(const Straight& one, const Straight& other) {
    const Vec2 along = (one.end - one.start).normalized();
    const Vec2 off = other.start - one.start;
    return along.x() * off.y() - along.y() * off.x();
}

} // namespace

std::vector<Footing> footings(const BuildingPlan& plan) {
    std::map<std::string, Sum> sums;
    if (plan.schedule.courses.empty())
        return {};
    const Course& first = plan.schedule.courses.front();
    for (const Ring& ring : first.rings) {
        Sum& sum = sums[ring.dome];
        for (const Run& run : ring.runs)
            sum.area += run.length * ring.width;
        sum.width += ring.width;
        if (ring.wythe == 1)
            sum.tube = ring.width;
    }
    for (const Straight& straight : first.straights) {
        Sum& sum = sums[straight.of];
        if (!sum.first)
            sum.first = &straight;
        sum.area += straight.length * straight.width;
        sum.tube = straight.width;
        const double off =
            straight.part == StraightPart::pier ? offset_between(*sum.first, straight) : 0;
        sum.right = std::min(sum.right, off - straight.width / 2);
        sum.left = std::max(sum.left, off + straight.width / 2);
        sum.width = sum.left - sum.right;
    }
    std::vector<Footing> list;
    for (const auto& [element, sum] : sums)
        list.push_back({element, sum.area / sum.width, sum.width,
                        sum.width + trench_room(plan.design.trench, sum.tube)});
    return list;
}

} // namespace coilwright
