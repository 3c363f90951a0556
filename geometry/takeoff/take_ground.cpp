#include "geometry/takeoff/footings.hpp"
#include "geometry/takeoff/ledger.hpp"

#include <algorithm>

namespace coilwright {

namespace {

void take_gravel(const Ledger& ledger) {
    const Trench& trench = ledger.plan.design.trench;
    if (trench.gravel_depth <= 0)
        return;
    const double shrink = ledger.works.soil.shrink;
    for (const Footing& footing : footings(ledger.plan)) {
        const double placed = footing.trench_area() * trench.gravel_depth;
        ledger.add({"gravel",
                    footing.element,
                    Phase::trench,
                    "Gravel under the first course",
                    placed / (1 - shrink),
                    "Centreline of the footing, all tubes side by side, times the trench's width "
                    "and the gravel's depth, over 1 less what it settles.",
                    {{"centreline", footing.length, "m"},
                     {"width", footing.trench, "m"},
                     {"depth", trench.gravel_depth, "m"},
                     {"settling", shrink, ""}}});
    }
}

} // namespace

void take_ground(const Ledger& ledger, const DecideRegion& decide) {
    take_gravel(ledger);
    const Design& design = ledger.plan.design;
    const BuildingForm& building = ledger.schedule().building;
    const Region room = region_of(room_expression(building, height_tie), decide);
    ledger.take.floor_area = room.area;
    if (!room.decided)
        ledger.take.notes.push_back("The floor's area could not be told: domes touch.");
    const double bottom = ledger.schedule().courses.front().bottom;
    const Region foot = region_of(footprint_expression(building, bottom + height_tie), decide);
    double around = 0;
    for (const BoundaryLoop& loop : foot.loops)
        if (loop.area > 0)
            for (const BoundaryEdge& edge : loop.edges)
                around += length_of(edge);
    const double buried = std::max(0.0, design.ground.level - bottom);
    ledger.add({"membrane",
                whole_building,
                Phase::base,
                "Membrane up the outside below ground",
                around * buried,
                "Outline of the footing times its depth below the ground; none between courses, "
                "where the wire would pierce it.",
                {{"outline", around, "m"}, {"depth", buried, "m"}}});
    if (design.trench.drain && design.trench.gravel_depth > 0)
        ledger.add({"drain-pipe",
                    whole_building,
                    Phase::trench,
                    "Drain around the footing",
                    around,
                    "Outline of the footing; the way to the outfall is not in it.",
                    {}});
    ledger.add({"membrane",
                whole_building,
                Phase::finish,
                "Membrane under the floor",
                room.area,
                "Floor between the bags' faces.",
                {}});
    ledger.add({"floor-fill",
                whole_building,
                Phase::finish,
                "Floor build-up",
                room.area * design.finish.floor_build_up,
                "Floor between the bags' faces times the build-up.",
                {{"floor", room.area, "m2"}, {"build-up", design.finish.floor_build_up, "m"}}});
}

} // namespace coilwright
