#include "tests/solids/boolean_operands.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace coilwright {

namespace {

/// Coordinates on a grid of 2^-20 m: sums and differences of them are then exact.
Vec3 snapped(double x, double y, double z) {
    const auto snap = [](double v) { return std::ldexp(std::round(std::ldexp(v, 20)), -20); };
    return {snap(x), snap(y), snap(z)};
}

/// Closes a loop of vertices in zig-zag: a fan would crowd its edges into one point.
void close(Mesh& mesh, const std::vector<std::uint32_t>& loop) {
    for (std::size_t i = 0, j = loop.size() - 1; i + 1 < j;) {
        mesh.triangles.push_back({loop[i], loop[i + 1], loop[j]});
        ++i;
        if (i + 1 < j) {
            mesh.triangles.push_back({loop[i], loop[j - 1], loop[j]});
            --j;
        }
    }
}

/// A solid between loops of as many points each, lowest first or nearest first; loops run
/// anticlockwise for someone who looks back along the way from the first to the last.
Mesh stacked(const std::vector<std::vector<Vec3>>& loops) {
    Mesh mesh;
    std::vector<std::vector<std::uint32_t>> vertices;
    for (const auto& loop : loops) {
        vertices.emplace_back();
        for (const Vec3& point : loop) {
            vertices.back().push_back(static_cast<std::uint32_t>(mesh.vertices.size()));
            mesh.vertices.push_back(point);
        }
    }
    const std::size_t count = loops.front().size();
    for (std::size_t k = 0; k + 1 < loops.size(); ++k)
        for (std::size_t i = 0; i < count; ++i) {
            const std::size_t next = (i + 1) % count;
            mesh.triangles.push_back({vertices[k][i], vertices[k][next], vertices[k + 1][next]});
            mesh.triangles.push_back({vertices[k][i], vertices[k + 1][next], vertices[k + 1][i]});
        }
    close(mesh, vertices.back());
    close(mesh, {vertices.front().rbegin(), vertices.front().rend()});
    if (volume(mesh) <= 0)
        throw std::runtime_error("an operand is not a solid");
    return mesh;
}

} // namespace

Mesh revolved_body(const std::function<double(double)>& radius, const std::vector<double>& heights,
                   int around, double turn) {
    std::vector<std::vector<Vec3>> loops;
    for (const double z : heights) {
        loops.emplace_back();
        for (int i = 0; i < around; ++i) {
            const double angle = turn + 2 * pi * i / around;
            loops.back().push_back(
                snapped(radius(z) * std::cos(angle), radius(z) * std::sin(angle), z));
        }
    }
    return stacked(loops);
}

Mesh carried_body(const std::vector<Vec2>& outline, const Vec2& origin, const Vec2& axis,
                  double from, double to) {
    const Vec2 left(-axis.y(), axis.x());
    std::vector<std::vector<Vec3>> loops;
    for (const double x : {from, to}) {
        loops.emplace_back();
        for (const Vec2& at : outline) {
            const Vec2 plan = origin + x * axis + at.x() * left;
            loops.back().push_back(snapped(plan.x(), plan.y(), at.y()));
        }
    }
    return stacked(loops);
}

namespace {

std::vector<double> heights(const DomeForm& form, double low, double high) {
    std::vector<double> heights{low};
    for (const double bend : {form.springline, form.course_middle(form.last_ring), form.cap.line_z,
                              form.course_middle(form.courses()), high})
        if (bend > heights.back() + 1e-3 && bend <= high) {
            const double start = heights.back();
            const int steps = static_cast<int>(std::ceil((bend - start) / 0.06));
            for (int i = 1; i <= steps; ++i)
                heights.push_back(start + (bend - start) * i / steps);
        }
    return heights;
}

/// Outline of an opening, to the left of its axis and up; anticlockwise seen against the axis.
std::vector<Vec2> outline_of(const OpeningForm& opening, double foot, int around) {
    std::vector<Vec2> outline;
    const auto add_right_half = [&](bool up) {
        for (int i = 1; i < around / 4; ++i) {
            const double share = std::sin(pi / 2 * i / (around / 4));
            const double z = opening.springing + share * (opening.top - opening.springing);
            outline.emplace_back(half_width(*opening.head, z - opening.springing),
                                 up ? z : 2 * opening.springing - z);
        }
    };
    const double a = opening.half_width;
    if (opening.head_kind == HeadKind::circle) {
        for (int i = 0; i < around; ++i)
            outline.emplace_back(a * std::cos(2 * pi * i / around),
                                 opening.springing + a * std::sin(2 * pi * i / around));
        return outline;
    }
    // Below the foot where the hole is open there: no faces of the two may coincide.
    const double sill = opening.sill <= foot ? foot - 0.1 : opening.sill;
    outline = {{-a, sill}, {a, sill}};
    if (opening.springing > sill + 1e-6)
        outline.emplace_back(a, opening.springing);
    if (opening.head) {
        add_right_half(true);
        outline.emplace_back(0, opening.top);
        const std::size_t crest = outline.size() - 1;
        for (std::size_t i = crest; i-- > 3;)
            outline.emplace_back(-outline[i].x(), outline[i].y());
    }
    if (opening.springing > sill + 1e-6)
        outline.emplace_back(-a, opening.springing);
    return outline;
}

Mesh prism(const DomeForm& form, const OpeningForm& opening, int around) {
    const double angle = (form.datum.degrees - opening.bearing.degrees) * radians_per_degree;
    return carried_body(outline_of(opening, form.bottom(), around), {0, 0},
                        {std::cos(angle), std::sin(angle)}, 0,
                        outside_radius(form, form.bottom()) + 0.3);
}

/// A symmetric section from its half-width over height: up on the right, down on the left. Heights
/// stand closer where the width runs away, as at a crown.
std::vector<Vec2> symmetric(const std::function<double(double)>& half, double low, double high,
                            const std::vector<double>& bends, int around) {
    std::vector<double> heights{low};
    for (const double bend : bends)
        if (bend > low + 1e-3 && bend < high - 1e-3)
            heights.push_back(bend);
    heights.push_back(high);
    std::sort(heights.begin(), heights.end());
    std::vector<Vec2> right;
    for (std::size_t k = 1; k < heights.size(); ++k)
        for (int i = k == 1 ? 0 : 1; i <= around / 2; ++i) {
            const double share = std::sin(pi / 2 * i / (around / 2));
            const double z = heights[k - 1] + share * (heights[k] - heights[k - 1]);
            right.emplace_back(half(z), z);
        }
    std::vector<Vec2> outline = right;
    for (std::size_t i = right.size(); i-- > 0;)
        if (right[i].x() > 1e-9)
            outline.emplace_back(-right[i].x(), right[i].y());
    return outline;
}

Mesh moved(Mesh mesh, const Vec2& by) {
    for (Vec3& v : mesh.vertices)
        v = snapped(v.x() + by.x(), v.y() + by.y(), v.z());
    return mesh;
}

Mesh outer_body(const DomeForm& form, int around, double turn) {
    return revolved_body([&](double z) { return outside_radius(form, z); },
                         heights(form, form.bottom(), form.top()), around, turn);
}

/// The room overshoots the wall's foot, and its top where it is open.
Mesh room_body(const DomeForm& form, int around, double turn) {
    const double room_top = form.cap_courses > 0 ? form.ceiling() : form.top() + 0.1;
    return revolved_body(
        [&](double z) {
            return inside_radius(
                form, std::clamp(z, form.bottom(), std::min(form.ceiling() - 2e-6, form.top())));
        },
        heights(form, form.bottom() - 0.1, room_top), around, turn);
}

BooleanStep add(Mesh body) {
    return {true, std::move(body), {}};
}

BooleanStep cut(Mesh body) {
    return {false, std::move(body), {}};
}

} // namespace

std::vector<BooleanStep> wall_steps(const DomeForm& form, const std::vector<OpeningForm>& openings,
                                    int around) {
    std::vector<BooleanStep> steps{add(outer_body(form, around, 0.001)),
                                   cut(room_body(form, around, 0.0123))};
    for (const OpeningForm& opening : openings)
        steps.push_back(cut(prism(form, opening, around)));
    return steps;
}

std::vector<BooleanStep> building_steps(const BuildingForm& building, int around) {
    std::vector<BooleanStep> steps{
        add(moved(outer_body(building.domes[0], around, 0.001), building.domes[0].at))};
    double turn = 0.001;
    for (std::size_t i = 1; i < building.domes.size(); ++i) {
        Mesh body =
            moved(outer_body(building.domes[i], around, turn += 0.0037), building.domes[i].at);
        steps.push_back(add(std::move(body)));
    }
    for (const TunnelForm& tunnel : building.tunnels) {
        Mesh body = carried_body(
            symmetric([&](double z) { return outer_half_width(tunnel, z); }, tunnel.bottom(),
                      tunnel.top(),
                      {tunnel.springline, tunnel.cap.line_z,
                       tunnel.course_middle(tunnel.side_courses + tunnel.crown_courses)},
                      around / 2),
            tunnel.origin, tunnel.axis(), 0.3,
            tunnel.to.empty() ? tunnel.reach : tunnel.reach - 0.3);
        steps.push_back(add(std::move(body)));
    }
    for (const ButtressForm& pier : building.buttresses) {
        // Across its axis: the section is what is seen from its side.
        const double low = pier.bottom, high = pier.top, middle = std::min(pier.height, high);
        std::vector<Vec2> outline{
            {0.4, low}, {outer_face(pier, low), low}, {outer_face(pier, 0), 0}};
        if (middle < high - 1e-6)
            outline.emplace_back(outer_face(pier, middle), middle);
        outline.insert(outline.end(), {{outer_face(pier, high), high}, {0.4, high}});
        // Left of the way across is along the pier's axis.
        const Vec2 across(pier.axis().y(), -pier.axis().x());
        Mesh body = carried_body(outline, pier.origin, across, -pier.half_width, pier.half_width);
        steps.push_back(add(std::move(body)));
    }
    std::vector<Mesh> rings; // to keep the voids below the floor out of
    for (const DomeForm& dome : building.domes)
        rings.push_back(moved(outer_body(dome, around, 0.001), dome.at));
    for (const DomeForm& dome : building.domes) {
        Mesh room = moved(room_body(dome, around, turn += 0.0041), dome.at);
        steps.push_back(cut(std::move(room)));
    }
    for (const TunnelForm& tunnel : building.tunnels) {
        const double end = tunnel.end_wall     ? tunnel.reach - tunnel.width
                           : tunnel.to.empty() ? tunnel.reach + 0.2
                                               : tunnel.reach - 0.3;
        const auto half = [&](double z) {
            return half_width(tunnel.profile, z - tunnel.springline);
        };
        Mesh above =
            carried_body(symmetric(half, 0, tunnel.crown(), {tunnel.springline}, around / 2),
                         tunnel.origin, tunnel.axis(), 0.3, end);
        steps.push_back(cut(std::move(above)));
        const double b = half(0);
        Mesh below =
            carried_body({{-b, tunnel.bottom() - 0.1}, {b, tunnel.bottom() - 0.1}, {b, 0}, {-b, 0}},
                         tunnel.origin, tunnel.axis(), 0.3, end);
        BooleanStep void_below = cut(std::move(below));
        for (std::size_t i = 0; i < rings.size(); ++i)
            if (building.domes[i].id == tunnel.from || building.domes[i].id == tunnel.to)
                void_below.less.push_back(rings[i]);
        steps.push_back(std::move(void_below));
    }
    for (const OpeningForm& opening : building.openings) {
        const DomeForm* dome = find_dome(building, opening.in);
        const TunnelForm* tunnel = find_tunnel(building, opening.in);
        const double foot = dome ? dome->bottom() : tunnel->bottom();
        double from = 0.2, to = 0;
        if (dome) {
            to = outside_radius(*dome, dome->bottom()) + 2;
        } else if (std::abs(opening.axis.dot(tunnel->axis())) > 0.5) {
            from = tunnel->reach - 2 * tunnel->width;
            to = tunnel->reach + 0.2;
        } else {
            from = 0;
            to = outer_half_width(*tunnel, 0) + 0.2;
        }
        Mesh hole = carried_body(outline_of(opening, foot, around / 2), opening.origin,
                                 opening.axis, from, to);
        steps.push_back(cut(std::move(hole)));
    }
    return steps;
}

} // namespace coilwright
