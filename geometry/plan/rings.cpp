#include "geometry/plan/rings.hpp"

#include "geometry/plan/contact.hpp"
#include "geometry/plan/heads.hpp"
#include "geometry/plan/pieces.hpp"
#include "geometry/plan/tubes.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace coilwright {

namespace {

std::string letter(std::size_t index) {
    std::string text;
    for (++index; index > 0; index = (index - 1) / 26)
        text.insert(text.begin(), static_cast<char>('A' + (index - 1) % 26));
    return text;
}

/// Where one side of a gap meets the faces of a ring. A gap that misses a face cuts it where it
/// cuts the centreline.
Cut make_cut(const RingGap& gap, Side side, const Ring& ring, Bearing datum) {
    const auto end_at = [&](double radius) -> std::optional<double> {
        const auto ends = gap_ends(gap, radius);
        if (!ends || ends->second - ends->first >= 360)
            return std::nullopt;
        return side == Side::right ? ends->second : ends->first;
    };
    const double centre = end_at(ring.centre_radius).value_or(gap.middle);
    const auto bearing_at = [&](double radius) {
        return turned(datum, end_at(radius).value_or(centre)).degrees;
    };
    Cut cut;
    cut.by = gap.by;
    cut.side = side;
    cut.half_width = gap.half_width;
    cut.inside_bearing = bearing_at(ring.inside_radius);
    cut.centre_bearing = bearing_at(ring.centre_radius);
    cut.outside_bearing = bearing_at(ring.outside_radius);
    const double degrees = clockwise_degrees(datum, {cut.inside_bearing});
    const double shorter = std::min(degrees, 360 - degrees);
    cut.inside_arc_from_datum = ring.inside_radius * degrees * radians_per_degree;
    cut.short_arc = ring.inside_radius * shorter * radians_per_degree;
    cut.short_way = degrees <= 180 ? Side::right : Side::left;
    cut.chord = 2 * ring.inside_radius * std::sin(shorter * radians_per_degree / 2);
    return cut;
}

/// What the outer thread has at the ends of a run, from the cuts there: where a jamb stands square
/// to no radius, its outside lies at another bearing than its middle.
OuterEnds outer_ends(const Run& run, const Ring& ring) {
    if (run.closed)
        return {};
    OuterEnds ends;
    const auto is_at = [&](double bearing, double centre) {
        return std::abs(std::remainder(bearing - centre, 360)) < 1e-9;
    };
    for (const Cut& cut : ring.cuts) {
        const double reach = std::remainder(cut.outside_bearing - cut.centre_bearing, 360) *
                             radians_per_degree * ring.outside_radius;
        if (cut.side == Side::right && is_at(cut.centre_bearing, run.start_bearing))
            ends.start = -reach;
        if (cut.side == Side::left && is_at(cut.centre_bearing, run.end_bearing))
            ends.end = reach;
    }
    return ends;
}

/// Runs between the gaps, and the cuts at their ends, lettered clockwise from the datum. A stretch
/// of less than half a tube's width, such as the wedge between a jamb and the pier beside it, is no
/// run but a piece of its own.
void cut_ring(Ring& ring, const std::vector<RingGap>& gaps, const DomeForm& dome,
              const CourseRules& rules) {
    const double metres_per_degree = ring.centre_radius * radians_per_degree;
    for (const KeptArc& arc : kept_arcs(gaps, ring.centre_radius)) {
        if ((arc.end - arc.start) * metres_per_degree < ring.width / 2)
            continue;
        Run run;
        run.id = "R" + std::to_string(ring.runs.size() + 1);
        run.closed = arc.starts_at == nullptr;
        run.length = (arc.end - arc.start) * metres_per_degree;
        if (!run.closed) {
            run.start_bearing = turned(dome.datum, arc.start).degrees;
            run.end_bearing = run.start_bearing + (arc.end - arc.start);
            run.start_by = arc.starts_at->by;
            run.end_by = arc.ends_at->by;
            ring.cuts.push_back(make_cut(*arc.starts_at, Side::right, ring, dome.datum));
            ring.cuts.push_back(make_cut(*arc.ends_at, Side::left, ring, dome.datum));
        }
        ring.runs.push_back(run);
    }
    for (const WedgePlace& wedge : wedges_of(gaps, ring)) {
        Piece piece = wedge_piece(wedge, ring, dome.datum, rules);
        piece.fill_volume *= dome.course_height;
        piece.id = "W" + std::to_string(ring.pieces.size() + 1);
        ring.pieces.push_back(piece);
        ring.cuts.push_back(make_cut(*wedge.starts_at, Side::right, ring, dome.datum));
        ring.cuts.push_back(make_cut(*wedge.ends_at, Side::left, ring, dome.datum));
    }
    std::stable_sort(ring.cuts.begin(), ring.cuts.end(), [&](const Cut& a, const Cut& b) {
        return clockwise_degrees(dome.datum, {a.centre_bearing}) <
               clockwise_degrees(dome.datum, {b.centre_bearing});
    });
    for (std::size_t i = 0; i < ring.cuts.size(); ++i)
        ring.cuts[i].letter = letter(i);
}

/// The disc of a cap course as short bags side by side: as few as are no wider than the tube lies
/// tamped, for a bag tamped to less than that is slack and one that is to be wider cannot be.
/// Bags side by side, along the datum line in the first disc, across it in the next, by turns: no
/// seam lies on a seam.
void lay_cap_bags(Ring& ring, const DomeForm& dome, int n, const CourseRules& rules) {
    const int disc = n - dome.last_ring - dome.curb_courses; // from 1
    const double radius = ring.outside_radius;
    const int count = std::max(1, static_cast<int>(std::ceil(2 * radius / dome.width - 1e-6)));
    Run run;
    run.id = "R1";
    run.closed = true;
    run.start_bearing = turned_into_circle(dome.datum.degrees + (disc % 2 == 0 ? 90 : 0));
    run.end_bearing = run.start_bearing + 360;
    for (int i = 0; i < count; ++i) {
        const double y = (i - (count - 1) / 2.0) * 2 * radius / count;
        LaidTube bag;
        // Its edge nearer to the pole is the longest.
        const double edge = std::max(0.0, std::abs(y) - radius / count);
        bag.length = 2 * std::sqrt(radius * radius - y * y);
        bag.outer_length = 2 * std::sqrt(radius * radius - edge * edge);
        bag.cut_length = bag.outer_length + 2 * rules.end_allowance;
        run.length += bag.length;
        run.tubes.push_back(bag);
    }
    ring.runs.push_back(run);
}

/// Backs of the niches that cut the rings, and the bags of fans that are set before this course.
void add_pieces(std::vector<Ring>& rings, const BuildingForm& building,
                const std::vector<int>& openings, const DomeForm& dome, int n,
                const CourseRules& rules) {
    for (const int index : openings) {
        const OpeningForm& opening = building.openings[static_cast<std::size_t>(index)];
        const double half = laid_half_width(opening, dome, n);
        if (half > 0 && opening.niche_depth > 0 && rings.front().kind == RingKind::ring)
            for (Ring& ring : rings) {
                const double face =
                    std::max(rings.front().inside_radius + opening.niche_depth, ring.inside_radius);
                if (face > ring.outside_radius - least_wedge)
                    continue;
                Piece back = niche_back(opening, half, face, ring, rules);
                back.fill_volume *= dome.course_height;
                back.id = "N1";
                ring.pieces.push_back(back);
            }
        for (Piece& bag : fan_pieces(opening, dome, n, rules))
            rings.front().pieces.push_back(std::move(bag));
    }
}

void number_tubes(Ring& ring, int& count) {
    for (Run& run : ring.runs)
        for (LaidTube& tube : run.tubes)
            tube.id = "T" + std::to_string(++count);
}

/// What the crew reads off an arm or a chain. The tape lies on the pole's face, not on its axis.
void set_readings(Ring& ring, const DomeForm& dome, double z, double half_pole) {
    ring.pole_face = std::max(0.0, ring.inside_radius - half_pole);
    ring.chain = std::hypot(ring.inside_radius, z - dome.chain_height);
    ring.chain_face = std::hypot(ring.pole_face, z - dome.chain_height);
}

/// Radii, steps and contact of the first ring of a course (a ring, a curb ring or a cap disc).
Ring first_ring(const Design& design, const DomeForm& dome, int n, const Ring* below) {
    const double z = dome.course_middle(n);
    Ring ring;
    ring.dome = dome.id;
    ring.kind = n > dome.last_ring + dome.curb_courses ? RingKind::cap : RingKind::ring;
    ring.curb = ring.kind == RingKind::ring && n > dome.last_ring;
    ring.inside_radius = inside_radius(dome, z);
    ring.outside_radius = ring.kind == RingKind::cap ? outside_radius(dome, z)
                                                     : ring.inside_radius + ring_width(dome, z);
    ring.width = ring.kind == RingKind::cap ? dome.width : ring_width(dome, z);
    ring.tube = ring.kind == RingKind::cap ? dome.tube : ring_tube(dome, z);
    ring.centre_radius = (ring.inside_radius + ring.outside_radius) / 2;
    set_readings(ring, dome, z, design.compass.pole_diameter / 2);
    if (ring.kind == RingKind::ring && !ring.curb)
        ring.radius_per_height = slope(dome.profile, z - dome.springline);
    if (below)
        ring.step_in = below->inside_radius - ring.inside_radius;
    ring.bearing_width = std::max(0.0, bearing_overlap(dome, n));
    ring.contact_width = std::max(0.0, contact_overlap(dome, n, design.course.edge));
    return ring;
}

/// The second ring outside the first, where the design asks for one. It lies on that of the course
/// below.
Ring second_wythe(const Ring& first, const DomeForm& dome, double z, const Ring* below,
                  TubeEdge edge) {
    Ring ring = first;
    const double half_pole = first.inside_radius - first.pole_face;
    ring.wythe = 2;
    ring.tube = dome.tube;
    ring.width = dome.width;
    ring.inside_radius = first.outside_radius;
    ring.outside_radius = ring.inside_radius + dome.width;
    ring.centre_radius = ring.inside_radius + dome.width / 2;
    set_readings(ring, dome, z, half_pole);
    double from = ring.inside_radius, to = ring.outside_radius;
    ring.step_in = 0;
    if (below) {
        ring.step_in = below->inside_radius - ring.inside_radius;
        from = std::max(from, below->inside_radius);
        to = std::min(to, below->outside_radius);
    }
    ring.bearing_width = std::max(0.0, to - from);
    ring.contact_width =
        std::max(0.0, ring.bearing_width - (edge == TubeEdge::round ? dome.course_height : 0));
    return ring;
}

/// Bearings that the joints of a ring keep away from: joints and cuts of the ring below, and the
/// cuts that the course above will have, for a joint under a jamb's foot is the start of a crack.
std::vector<double> bearings_to_keep_from(const Ring& ring, const Ring* below,
                                          const std::vector<RingGap>& gaps_above,
                                          const DomeForm& dome) {
    std::vector<double> bearings;
    if (below) {
        bearings = joint_bearings(*below);
        for (const Cut& cut : below->cuts)
            bearings.push_back(cut.centre_bearing);
    }
    for (const KeptArc& arc : kept_arcs(gaps_above, ring.centre_radius))
        if (arc.starts_at)
            for (const double end : {arc.start, arc.end})
                bearings.push_back(turned(dome.datum, end).degrees);
    return bearings;
}

} // namespace

std::vector<Ring> lay_rings(const Design& design, const BuildingForm& building,
                            const WallRelations& relations, int index, int n,
                            std::span<const Ring> below) {
    const DomeForm& dome = building.domes[static_cast<std::size_t>(index)];
    std::vector<Ring> rings;
    if (n > dome.courses())
        return rings;
    const double z = dome.course_middle(n);
    rings.push_back(first_ring(design, dome, n, below.empty() ? nullptr : &below.front()));
    if (has_second_wythe(dome, z) && rings.front().kind == RingKind::ring)
        rings.push_back(second_wythe(rings.front(), dome, z, below.size() > 1 ? &below[1] : nullptr,
                                     design.course.edge));
    const std::vector<RingGap> gaps = gaps_in_ring(building, relations, index, n, Bond::laid);
    std::vector<RingGap> gaps_above;
    if (n < dome.last_ring + dome.curb_courses)
        gaps_above = gaps_in_ring(building, relations, index, n + 1, Bond::laid);
    int tube_count = 0;
    for (Ring& ring : rings) {
        if (ring.kind == RingKind::cap) {
            lay_cap_bags(ring, dome, n, design.course);
        } else {
            cut_ring(ring, gaps, dome, design.course);
            const std::size_t wythe = static_cast<std::size_t>(ring.wythe) - 1;
            const std::vector<double> keep_from = bearings_to_keep_from(
                ring, wythe < below.size() ? &below[wythe] : nullptr, gaps_above, dome);
            for (Run& run : ring.runs)
                divide_run(run, ring, design.course, keep_from, dome.datum, n,
                           outer_ends(run, ring));
        }
        number_tubes(ring, tube_count);
    }
    add_pieces(rings, building, relations.dome_openings[static_cast<std::size_t>(index)], dome, n,
               design.course);
    // A ring that another dome takes up whole still has its radii, for the course above it.
    return rings;
}

double rounded_disc_volume(double radius, double height) {
    // A flat disc, and half a disc of diameter t about the pole at its centroid (Pappus-Guldinus).
    const double flat = radius - height / 2;
    const double rim_centroid = flat + 2 * height / (3 * pi);
    return pi * flat * flat * height + 2 * pi * rim_centroid * pi * height * height / 8;
}

} // namespace coilwright
