#include "geometry/plan/wire.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

const Ring* ring_of(const Course& course, const std::string& dome) {
    for (const Ring& ring : course.rings)
        if (ring.dome == dome)
            return &ring;
    return nullptr;
}

/// The stretches of a run, in degrees, that lie under runs of the course above.
struct Covered {
    double degrees = 0;
    int stretches = 0;
    bool whole_ring = false;
};

Covered covered(const Run& run, const Ring& above) {
    Covered result;
    if (above.kind == RingKind::cap || above.runs.front().closed) {
        result.degrees = run.end_bearing - run.start_bearing;
        result.whole_ring = run.closed;
        result.stretches = run.closed ? 0 : 1;
        return result;
    }
    for (const Run& over : above.runs) {
        if (run.closed) {
            result.degrees += over.end_bearing - over.start_bearing;
            ++result.stretches;
            continue;
        }
        // Both are arcs of under one turn; an arc may meet the other on either side of north.
        for (const double turn : {-360.0, 0.0, 360.0}) {
            const double from = std::max(run.start_bearing, over.start_bearing + turn);
            const double to = std::min(run.end_bearing, over.end_bearing + turn);
            if (to - from > 1e-9) {
                result.degrees += to - from;
                ++result.stretches;
            }
        }
    }
    return result;
}

/// Over the bags of a cap disc: what the next disc covers of them.
double covered_bags(const Ring& disc, const Ring& above) {
    const auto& bags = disc.runs.front().tubes;
    const double count = static_cast<double>(bags.size());
    double length = 0;
    for (std::size_t i = 0; i < bags.size(); ++i) {
        const double y =
            (static_cast<double>(i) - (count - 1) / 2) * 2 * disc.outside_radius / count;
        const double reach = above.outside_radius * above.outside_radius - y * y;
        if (reach > 0)
            length += std::min(bags[i].length, 2 * std::sqrt(reach));
    }
    return length;
}

} // namespace

int wire_strands(const Design& design, const Dome& dome) {
    if (design.wire.strands)
        return *design.wire.strands;
    const TubeType* tube = find_tube(design, dome.tube);
    return tube && tube->lay_flat < 12 * metres_per_inch ? 1 : 2;
}

void measure_wire(Schedule& schedule, const Design& design) {
    for (std::size_t i = 0; i + 1 < schedule.courses.size(); ++i) {
        Course& course = schedule.courses[i];
        for (const Ring& ring : course.rings) {
            const Ring* above = ring_of(schedule.courses[i + 1], ring.dome);
            if (!above)
                continue;
            double strand = 0;
            if (ring.kind == RingKind::cap) {
                strand = covered_bags(ring, *above);
            } else {
                for (const Run& run : ring.runs) {
                    const Covered part = covered(run, *above);
                    strand += part.degrees * radians_per_degree * ring.centre_radius;
                    strand += part.whole_ring
                                  ? design.wire.lap
                                  : 2 * part.stretches * (ring.outside_radius - ring.inside_radius);
                }
            }
            const Dome* dome = find_dome(design, ring.dome);
            course.wire_length += strand * (dome ? wire_strands(design, *dome) : 0);
        }
    }
}

} // namespace coilwright
