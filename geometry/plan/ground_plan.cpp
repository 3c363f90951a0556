#include "geometry/plan/ground_plan.hpp"

#include "geometry/plan/building_form.hpp"

namespace coilwright {

namespace {

double boundary(const Region& region, bool holes) {
    double sum = 0;
    for (const BoundaryLoop& loop : region.loops)
        if ((loop.area < 0) == holes)
            for (const BoundaryEdge& edge : loop.edges)
                sum += length_of(edge);
    return sum;
}

} // namespace

GroundPlan plan_ground(const BuildingForm& building, const DecideRegion& decide) {
    return {region_of(room_expression(building, 0), decide),
            region_of(footprint_expression(building, 0), decide),
            region_of(course_expression(building, 1), decide)};
}

double outer_perimeter(const Region& region) {
    return boundary(region, false);
}

double hole_perimeter(const Region& region) {
    return boundary(region, true);
}

} // namespace coilwright
