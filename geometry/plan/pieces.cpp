#include "geometry/plan/pieces.hpp"

#include "geometry/plan/heads.hpp"
#include "geometry/plan/section.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

double end_of(const RingGap& gap, double radius, double fallback) {
    const auto ends = gap_ends(gap, radius);
    return ends ? ends->second : fallback;
}

double start_of(const RingGap& gap, double radius, double fallback) {
    const auto ends = gap_ends(gap, radius);
    return ends ? ends->first : fallback;
}

/// Degrees from the end of one gap to the start of the next, clockwise; 0 where they meet.
double between(const RingGap& from, const RingGap& to, double radius) {
    double turn = start_of(to, radius, to.middle) - end_of(from, radius, from.middle);
    turn -= 360 * std::round(turn / 360);
    return std::max(0.0, turn);
}

bool overlaps(const KeptArc& a, const KeptArc& b) {
    for (const double turn : {-360.0, 0.0, 360.0})
        if (a.start < b.end + turn - 1e-9 && b.start + turn < a.end - 1e-9)
            return true;
    return false;
}

} // namespace

std::string word(PieceKind kind) {
    switch (kind) {
    case PieceKind::fan_bag:
        return "fan bag";
    case PieceKind::keystone:
        return "keystone";
    case PieceKind::niche_back:
        return "niche back";
    case PieceKind::wedge:
        return "wedge";
    }
    return {};
}

std::vector<WedgePlace> wedges_of(const std::vector<RingGap>& gaps, const Ring& ring) {
    std::vector<WedgePlace> wedges;
    if (gaps.empty())
        return wedges;
    const auto add = [&](const KeptArc& arc) {
        WedgePlace wedge;
        wedge.starts_at = arc.starts_at;
        wedge.ends_at = arc.ends_at;
        const auto length = [&](double radius) {
            return between(*arc.starts_at, *arc.ends_at, radius) * radians_per_degree * radius;
        };
        wedge.inside = length(ring.inside_radius);
        wedge.centre = length(ring.centre_radius);
        wedge.outside = length(ring.outside_radius);
        wedge.start = arc.start;
        wedge.end = arc.end;
        if (std::max({wedge.inside, wedge.centre, wedge.outside}) >= least_wedge)
            wedges.push_back(wedge);
    };
    const auto length = [](const KeptArc& arc, double radius) {
        return (arc.end - arc.start) * radians_per_degree * radius;
    };
    const std::vector<KeptArc> centre = kept_arcs(gaps, ring.centre_radius);
    for (const KeptArc& arc : centre)
        if (arc.starts_at && length(arc, ring.centre_radius) < ring.width / 2)
            add(arc);
    for (const double radius : {ring.inside_radius, ring.outside_radius})
        for (const KeptArc& arc : kept_arcs(gaps, radius))
            if (arc.starts_at && length(arc, radius) < ring.width &&
                std::none_of(centre.begin(), centre.end(),
                             [&](const KeptArc& other) { return overlaps(arc, other); }))
                add(arc);
    std::sort(wedges.begin(), wedges.end(),
              [](const WedgePlace& a, const WedgePlace& b) { return a.start < b.start; });
    return wedges;
}

Piece wedge_piece(const WedgePlace& place, const Ring& ring, Bearing datum,
                  const CourseRules& rules) {
    Piece piece;
    piece.kind = PieceKind::wedge;
    piece.of = place.starts_at->by;
    piece.other = place.ends_at->by;
    piece.length = place.centre;
    piece.longest = std::max({place.inside, place.centre, place.outside});
    piece.cut_length = piece.longest + 2 * rules.end_allowance;
    piece.start_bearing = turned(datum, place.start).degrees;
    piece.end_bearing = piece.start_bearing + place.end - place.start;
    constexpr int steps = 64; // midpoint rule
    const double step = (ring.outside_radius - ring.inside_radius) / steps;
    for (int i = 0; i < steps; ++i) {
        const double radius = ring.inside_radius + (i + 0.5) * step;
        piece.fill_volume +=
            between(*place.starts_at, *place.ends_at, radius) * radians_per_degree * radius * step;
    }
    return piece;
}

Piece niche_back(const OpeningForm& niche, double half_width, double face, const Ring& ring,
                 const CourseRules& rules) {
    const double a = half_width, outside = ring.outside_radius;
    Piece piece;
    piece.kind = PieceKind::niche_back;
    piece.of = niche.id;
    const double middle = (face + outside) / 2;
    piece.length = 2 * middle * std::asin(std::min(1.0, a / middle));
    piece.longest = 2 * outside * std::asin(std::min(1.0, a / outside));
    piece.cut_length = piece.longest + 2 * rules.end_allowance;
    const double turn = piece.length / middle / radians_per_degree / 2;
    piece.start_bearing = turned(niche.bearing, -turn).degrees;
    piece.end_bearing = piece.start_bearing + 2 * turn;
    const double area = a * std::sqrt(outside * outside - a * a) +
                        outside * outside * std::asin(a / outside) - 2 * a * face;
    piece.fill_volume = std::max(0.0, area);
    return piece;
}

std::vector<Piece> fan_pieces(const OpeningForm& opening, const DomeForm& dome, int n,
                              const CourseRules& rules) {
    std::vector<Piece> pieces;
    const double width = ring_width(dome, opening.springing);
    const std::optional<Fan> fan = make_fan(opening, width, n);
    if (!fan)
        return pieces;
    // With the course whose middle reaches its foot, and none later than its fan reaches.
    const double top = fan_top(opening);
    const auto set_before = [&](double height) {
        int course = 1;
        while (course < dome.courses() && dome.course_middle(course) < height - height_tie &&
               dome.course_bottom(course + 1) < top - height_tie)
            ++course;
        return course;
    };
    const int pairs = fan->count / 2;
    const double section = stadium_area(width, dome.course_height);
    for (int i = 0; i <= pairs; ++i) {
        if (set_before(opening.springing + fan_corner(opening, *fan, i)) != n)
            continue;
        const bool key = i == pairs;
        Piece piece;
        piece.kind = key ? PieceKind::keystone : PieceKind::fan_bag;
        piece.of = opening.id;
        piece.fill_volume = fan_bag_area(*fan, key) * width;
        piece.length = piece.longest = piece.fill_volume / section;
        piece.cut_length = piece.length + 2 * rules.end_allowance;
        piece.start_bearing = piece.end_bearing = opening.bearing.degrees;
        if (key) {
            piece.id = "FK";
            pieces.push_back(piece);
            continue;
        }
        for (const char* side : {"L", "R"}) {
            piece.id = "F" + std::to_string(i + 1) + side;
            pieces.push_back(piece);
        }
    }
    return pieces;
}

} // namespace coilwright
