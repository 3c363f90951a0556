#include "geometry/plan/wire.hpp"

#include "geometry/plan/ring_gaps.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <map>

namespace coilwright {

namespace {

/// The rings of a course by dome and wythe, its straights by element and part.
class Index {
public:
    explicit Index(const Course& course) {
        for (const Ring& ring : course.rings)
            rings_.emplace(std::pair(ring.dome, ring.wythe), &ring);
        for (const Straight& straight : course.straights)
            straights_[{straight.of, straight.part}].push_back(&straight);
    }
    const Ring* ring(const Ring& like) const {
        const auto found = rings_.find({like.dome, like.wythe});
        return found == rings_.end() ? nullptr : found->second;
    }
    const std::vector<const Straight*>& straights(const std::string& of, StraightPart part) const {
        static const std::vector<const Straight*> none;
        const auto found = straights_.find({of, part});
        return found == straights_.end() ? none : found->second;
    }

private:
    std::map<std::pair<std::string, int>, const Ring*> rings_;
    std::map<std::pair<std::string, StraightPart>, std::vector<const Straight*>> straights_;
};

/// What is covered of a line or ring: its length and in how many stretches.
struct Covered {
    double length = 0;
    int stretches = 0;
};

/// Arcs of a ring without bonds: wire runs unbroken through those with buttresses and tunnels.
std::vector<KeptArc> wired_arcs(const BuildingForm& building, const WallRelations& relations,
                                int dome, int n, double radius) {
    // Ends are not needed, so the gaps may go.
    return kept_arcs(gaps_in_ring(building, relations, dome, n, Bond::wall), radius);
}

Covered covered_degrees(const std::vector<KeptArc>& arcs, const std::vector<KeptArc>& above) {
    Covered covered;
    for (const KeptArc& arc : arcs)
        for (const KeptArc& over : above)
            // Both are arcs of at most one turn; an arc may meet the other on either side of the
            // datum.
            for (const double turn : {-360.0, 0.0, 360.0}) {
                const double from = std::max(arc.start, over.start + turn);
                const double to = std::min(arc.end, over.end + turn);
                if (to - from > 1e-9) {
                    covered.length += to - from;
                    ++covered.stretches;
                }
            }
    return covered;
}

bool is_whole(const std::vector<KeptArc>& arcs) {
    return arcs.size() == 1 && arcs.front().starts_at == nullptr;
}

/// On a cap disc: along each bag of the disc above, which lies on it whole.
double under_bags(const Ring& disc_above) {
    double length = 0;
    for (const Run& run : disc_above.runs)
        length += run.length;
    return length;
}

double ring_strand(const BuildingForm& building, const WallRelations& relations,
                   const Design& design, int dome, const Ring& ring, const Ring& above, int n) {
    if (ring.kind == RingKind::cap)
        return under_bags(above);
    const auto arcs = wired_arcs(building, relations, dome, n, ring.centre_radius);
    const auto over = above.kind == RingKind::cap
                          ? std::vector<KeptArc>{{0, 360, nullptr, nullptr}}
                          : wired_arcs(building, relations, dome, n + 1, above.centre_radius);
    if (is_whole(arcs) && is_whole(over))
        return 2 * pi * ring.centre_radius + design.wire.lap;
    // A full ring may start anywhere: take the other's ends.
    Covered covered;
    if (is_whole(arcs) || is_whole(over)) {
        const auto& broken = is_whole(arcs) ? over : arcs;
        for (const KeptArc& arc : broken)
            covered.length += arc.end - arc.start;
        covered.stretches = static_cast<int>(broken.size());
    } else {
        covered = covered_degrees(arcs, over);
    }
    return covered.length * radians_per_degree * ring.centre_radius +
           2 * covered.stretches * ring.width;
}

/// How far a line lies to the left of another.
double to_the_left(const Straight& of, const Straight& line) {
    const Vec2 along_it = (of.end - of.start).normalized(), off = line.start - of.start;
    return along_it.x() * off.y() - along_it.y() * off.x();
}

/// What of the next course lies on a straight run: of the same part, and of a vault's crown if it
/// is a wall under one, those along the one line that is nearest to it, within a tube's width.
std::vector<const Straight*> lying_on(const Straight& straight, const Index& above) {
    std::vector<const Straight*> found;
    const auto add_nearest = [&](const std::vector<const Straight*>& all) {
        const auto nearest = std::min_element(all.begin(), all.end(), [&](auto* a, auto* b) {
            return std::abs(to_the_left(straight, *a)) < std::abs(to_the_left(straight, *b));
        });
        if (nearest == all.end())
            return;
        const double line = to_the_left(straight, **nearest);
        if (std::abs(line) > straight.width)
            return;
        std::copy_if(all.begin(), all.end(), std::back_inserter(found), [&](auto* over) {
            return std::abs(to_the_left(straight, *over) - line) < 1e-6;
        });
    };
    add_nearest(above.straights(straight.of, straight.part));
    if (straight.part == StraightPart::left || straight.part == StraightPart::right)
        add_nearest(above.straights(straight.of, StraightPart::crown));
    return found;
}

/// Along a straight run: what lies on it covers of it, a tail at each end; where it meets the ring
/// its wire runs on by a tube width instead, which is as long.
double straight_strand(const Straight& straight, const Index& above) {
    double strand = 0;
    for (const Straight* const over : lying_on(straight, above)) {
        const double from = std::max(straight.start_distance, over->start_distance);
        const double to = std::min(straight.end_distance, over->end_distance);
        if (to > from + 1e-9)
            strand += to - from + 2 * straight.width;
    }
    return strand;
}

} // namespace

int wire_strands(const Design& design, const std::string& tube) {
    if (design.wire.strands)
        return *design.wire.strands;
    const TubeType* type = find_tube(design, tube);
    const Limit* bound = find_limit(design.limits, "wire.narrow_lay_flat");
    const double narrow = bound ? bound->value : 12 * metres_per_inch;
    return type && type->lay_flat < narrow - 1e-9 ? 1 : 2;
}

void measure_wire(Schedule& schedule, const Design& design) {
    const BuildingForm& building = schedule.building;
    const WallRelations relations = make_relations(building);
    std::map<std::string, int> domes;
    for (std::size_t i = 0; i < building.domes.size(); ++i)
        domes.emplace(building.domes[i].id, static_cast<int>(i));
    for (std::size_t i = 0; i + 1 < schedule.courses.size(); ++i) {
        Course& course = schedule.courses[i];
        const Index next(schedule.courses[i + 1]);
        for (Ring& ring : course.rings)
            if (const Ring* above = next.ring(ring)) {
                ring.wire_length = wire_strands(design, ring.tube) *
                                   ring_strand(building, relations, design, domes.at(ring.dome),
                                               ring, *above, course.number);
                course.wire_length += ring.wire_length;
            }
        for (Straight& straight : course.straights) {
            straight.wire_length =
                wire_strands(design, straight.tube) * straight_strand(straight, next);
            course.wire_length += straight.wire_length;
        }
    }
}

} // namespace coilwright
