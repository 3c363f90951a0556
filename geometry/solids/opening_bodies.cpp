#include "geometry/solids/opening_bodies.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

constexpr double least_hole = 0.01; // metres: what an inset must leave of an opening

/// The left half of an arched head, from where it springs to the axis: y left of the axis, z up.
struct HeadArc {
    Vec2 centre{0, 0};
    double radius = 0, start = 0, end = 0; // angles from y towards z

    Vec2 at(double angle) const { return centre + radius * Vec2(std::cos(angle), std::sin(angle)); }
};

/// `inset` inside the head's own curve, about the same centres; negative: outside it. The ends of a
/// fan (negative) lie on the radii through the springing, those of a lining plumb over its jamb.
HeadArc head_arc(const OpeningForm& opening, double inset) {
    const Profile& head = *opening.head;
    HeadArc arc;
    arc.radius = head.radius - inset;
    if (head.kind == ProfileKind::segmental) {
        arc.centre = {0, opening.springing - (head.radius - head.rise)};
        arc.start = std::acos(inset < 0 ? head.half_span / head.radius
                                        : std::min(1.0, (head.half_span - inset) / arc.radius));
        arc.end = pi / 2;
    } else {
        const double beyond = head.radius - head.half_span;
        arc.centre = {-beyond, opening.springing};
        arc.end = std::acos(std::min(1.0, beyond / arc.radius));
    }
    return arc;
}

int arc_edges(double radius, double turn, double tolerance) {
    const double step = 2 * std::acos(std::max(0.5, 1 - tolerance / radius));
    return std::max(2, static_cast<int>(std::ceil(turn / step - 1e-9)));
}

/// Anticlockwise as seen from the axis' far end, looking back; the same count of points for any
/// inset.
class Outlines {
public:
    Outlines(const OpeningForm& opening, const LiningBody& body, double tolerance)
        : opening_(opening), body_(body) {
        if (opening.head_kind == HeadKind::square)
            return;
        const HeadArc outer = head_arc(opening, body.outer_inset);
        edges_ = arc_edges(outer.radius, outer.end - outer.start, tolerance);
        const double sill = opening.sill + (body.with_sill ? body.inner_inset : 0);
        has_jamb_ = head_arc(opening, body.inner_inset).at(outer.start).y() > sill + 1e-6 &&
                    opening.springing > sill + 1e-6;
    }

    bool leaves_a_hole() const {
        const double in = body_.inner_inset;
        const double foot = opening_.sill + (body_.with_sill ? in : 0);
        return opening_.half_width - in > least_hole / 2 && opening_.top - in > foot + least_hole;
    }

    std::vector<Vec2> at(double inset) const {
        std::vector<Vec2> points;
        if (opening_.head_kind == HeadKind::circle) {
            const int count = 4 * edges_;
            for (int i = 0; i < count; ++i) {
                const double angle = 2 * pi * i / count;
                points.push_back(Vec2(0, opening_.springing) +
                                 (opening_.half_width - inset) *
                                     Vec2(-std::sin(angle), std::cos(angle)));
            }
            return points;
        }
        const double foot = opening_.sill + (body_.with_sill ? inset : 0);
        const double half = opening_.half_width - inset;
        if (opening_.head_kind == HeadKind::square) {
            points = {{half, foot}, {half, opening_.top - inset}};
        } else {
            HeadArc arc = head_arc(opening_, inset);
            if (has_jamb_)
                points.emplace_back(half, foot);
            else
                arc.start = std::max(
                    arc.start,
                    std::asin(std::clamp((foot - arc.centre.y()) / arc.radius, -1.0, 1.0)));
            for (int i = 0; i <= edges_; ++i)
                points.push_back(arc.at(arc.start + (arc.end - arc.start) * i / edges_));
            points.back().x() = 0;
        }
        // The right side, from the axis down.
        const bool crown = opening_.head_kind != HeadKind::square;
        for (std::size_t i = points.size() - (crown ? 1 : 0); i-- > 0;)
            points.emplace_back(-points[i].x(), points[i].y());
        return points;
    }

private:
    const OpeningForm& opening_;
    const LiningBody& body_;
    int edges_ = 0;
    bool has_jamb_ = true;
};

/// What lies between two lines of as many points, carried along x.
Mesh mesh_band(const std::vector<Vec2>& outer, const std::vector<Vec2>& inner, bool closed,
               double from, double to) {
    Mesh mesh;
    const auto count = static_cast<std::uint32_t>(outer.size());
    for (std::uint32_t k = 0; k < count; ++k)
        for (const auto& [points, x] :
             {std::pair{&outer, from}, {&outer, to}, {&inner, to}, {&inner, from}})
            mesh.vertices.emplace_back(x, (*points)[k].x(), (*points)[k].y());
    const auto vertex = [&](std::uint32_t k, std::uint32_t corner) {
        return 4 * (k % count) + corner % 4;
    };
    const auto add_quad = [&](std::uint32_t a, std::uint32_t b, std::uint32_t c, std::uint32_t d) {
        mesh.triangles.push_back({a, b, c});
        mesh.triangles.push_back({a, c, d});
    };
    for (std::uint32_t k = 0; k < (closed ? count : count - 1); ++k)
        for (std::uint32_t corner = 0; corner < 4; ++corner)
            add_quad(vertex(k, corner), vertex(k, corner + 1), vertex(k + 1, corner + 1),
                     vertex(k + 1, corner));
    if (!closed) {
        add_quad(vertex(0, 3), vertex(0, 2), vertex(0, 1), vertex(0, 0));
        const std::uint32_t last = count - 1;
        add_quad(vertex(last, 0), vertex(last, 1), vertex(last, 2), vertex(last, 3));
    }
    if (volume(mesh) < 0)
        for (auto& triangle : mesh.triangles)
            std::swap(triangle[1], triangle[2]);
    return mesh;
}

} // namespace

std::optional<LiningBody> frame_body(const OpeningPlan& opening) {
    const OpeningForm& form = opening.form;
    if (opening.first_course == 0 || form.niche_depth > 0 || opening.frame_width <= 0 ||
        opening.frame_depth <= 0)
        return {};
    const double inset = opening.frame_inset;
    const double middle = (opening.frame_band_start + opening.frame_band_end) / 2;
    return LiningBody{inset, inset + opening.frame_width, form.use != OpeningUse::door,
                      middle - opening.frame_depth / 2, middle + opening.frame_depth / 2};
}

Mesh mesh_lining(const OpeningForm& opening, const LiningBody& body, double tolerance) {
    const bool arched = opening.head_kind != HeadKind::square;
    if (arched && (!opening.head || opening.head->radius <= body.inner_inset))
        return {};
    const Outlines outlines(opening, body, tolerance);
    if (!outlines.leaves_a_hole())
        return {};
    const bool closed = body.with_sill || opening.head_kind == HeadKind::circle;
    return mesh_band(outlines.at(body.outer_inset), outlines.at(body.inner_inset), closed,
                     body.from, body.to);
}

std::vector<Mesh> mesh_fan(const OpeningForm& opening, const Fan& fan, const DomeForm& dome,
                           double tolerance) {
    const HeadArc inner = head_arc(opening, 0), outer = head_arc(opening, -fan.depth);
    // A place on the whole arch, 0 at the right springing, 1 at the left one, 1/2 at the crown.
    const auto at = [](const HeadArc& arc, double place) {
        const bool left = place > 0.5;
        const double way = 2 * (left ? 1 - place : place);
        const Vec2 point = arc.at(arc.start + (arc.end - arc.start) * way);
        return Vec2(left ? point.x() : -point.x(), point.y());
    };
    std::vector<Mesh> bags;
    for (int bag = 0; bag < fan.count; ++bag) {
        const double first = static_cast<double>(bag) / fan.count, last = (bag + 1.0) / fan.count;
        const double turn = 2 * (outer.end - outer.start) * (last - first);
        // An even number of edges: the keystone has a corner at the crown.
        const int edges = 2 * ((arc_edges(outer.radius, turn, tolerance) + 1) / 2);
        std::vector<Vec2> over, under;
        for (int i = 0; i <= edges; ++i) {
            const double place = first + (last - first) * i / edges;
            over.push_back(at(outer, place));
            under.push_back(at(inner, place));
        }
        const Vec2 middle = (over[edges / 2] + under[edges / 2]) / 2;
        const auto face = [&](double radius) {
            return std::sqrt(std::max(0.0, radius * radius - middle.x() * middle.x()));
        };
        bags.push_back(mesh_band(over, under, false, face(inside_radius(dome, middle.y())),
                                 face(outside_radius(dome, middle.y()))));
    }
    return bags;
}

Mesh mesh_lintel(const Lintel& lintel) {
    const double half = lintel.length / 2, top = lintel.bottom + lintel.depth;
    return mesh_band({{half, top}, {-half, top}}, {{half, lintel.bottom}, {-half, lintel.bottom}},
                     false, lintel.centre_distance - lintel.width / 2,
                     lintel.centre_distance + lintel.width / 2);
}

} // namespace coilwright
