#include "geometry/plan/region_crossings.hpp"

#include "geometry/plan/vertex_weld.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

/// Curves that cross at a smaller angle (radians) count as touching: the crossing's place is no
/// longer sure to plan_weld.
constexpr double least_circle_angle = 1e-5;
constexpr double least_side_angle = 1e-4;

/// Where a point along a side's line lies against the side's ends.
enum class Against { outside, doubtful, start, inside, end };

Against against(double along, double length, double near) {
    if (std::abs(along) <= plan_weld)
        return Against::start;
    if (std::abs(along - length) <= plan_weld)
        return Against::end;
    if (along > 0 && along < length)
        return Against::inside;
    return along < -near || along > length + near ? Against::outside : Against::doubtful;
}

class Finder {
public:
    Finder(const PlanOutline& outline, double near)
        : outline_(outline), near_(near), weld_(outline.corners) {}

    Crossings find() {
        for (std::size_t i = 0; i < outline_.curves.size(); ++i) {
            const PlanCurve& curve = outline_.curves[i];
            if (curve.circle)
                continue;
            weld_.add_node(static_cast<int>(i), 0, curve.start_corner);
            weld_.add_node(static_cast<int>(i), curve.length, curve.end_corner);
        }
        for (const auto& [p, q] : outline_.neighbours)
            for (int a = first(p); a < first(p + 1); ++a)
                for (int b = first(q); b < first(q + 1); ++b)
                    meet(a, b);
        Crossings found = weld_.finish(outline_, near_);
        found.doubts.insert(found.doubts.end(), doubts_.begin(), doubts_.end());
        std::sort(shared_.begin(), shared_.end(), [](const SharedLine& a, const SharedLine& b) {
            return a.curve != b.curve ? a.curve < b.curve : a.other < b.other;
        });
        found.shared = std::move(shared_);
        return found;
    }

private:
    int first(int shape) const { return outline_.first_curve[static_cast<std::size_t>(shape)]; }
    const PlanCurve& curve(int index) const {
        return outline_.curves[static_cast<std::size_t>(index)];
    }

    void meet(int a, int b) {
        if (curve(a).circle && curve(b).circle)
            circles(a, b);
        else if (curve(a).circle)
            circle_and_side(a, b);
        else if (curve(b).circle)
            circle_and_side(b, a);
        else
            sides(a, b);
    }

    /// Elsewhere one of the two bounds nothing, and need not be split or split the other.
    bool matters(int a, int b, const Vec2& at) const {
        return outline_.bounds_of(curve(a)).holds(at) && outline_.bounds_of(curve(b)).holds(at);
    }

    void touching(int a, int b, const Vec2& at, double reach) {
        doubts_.push_back({at, reach, a, b, true});
    }
    void many_meet(int a, const Vec2& at) { doubts_.push_back({at, 4 * near_, a, a, false}); }

    /// How far along two curves from where they touch they stay within 2 near of each other, with a
    /// margin; `radius` is that of their curvatures' difference.
    double contact_reach(double radius) const { return 3 * std::sqrt(near_ * radius) + 2 * near_; }

    void on_circle(int index, int vertex) {
        const Vec2 out = weld_.at(vertex) - curve(index).start;
        weld_.add_node(index, turn_order(out), vertex);
    }

    void circles(int a, int b) {
        const PlanCurve &p = curve(a), &q = curve(b);
        const double r = p.length, s = q.length;
        const Vec2 apart = q.start - p.start;
        const double d = apart.norm();
        const double outer = d - (r + s), inner = std::abs(r - s) - d; // positive: they do not meet
        if (outer >= near_ || inner >= near_)
            return;
        const Vec2 towards = d > 0 ? Vec2(apart / d) : Vec2(1, 0);
        const double everywhere = 2 * std::max(r, s) + near_;
        if (outer > -near_)
            return touching(a, b, p.start + r * towards, contact_reach(r * s / (r + s)));
        if (inner > -near_) {
            const double reach = contact_reach(r * s / std::max(std::abs(r - s), 1e-300));
            const Vec2 at = r >= s ? Vec2(p.start + r * towards) : Vec2(q.start - s * towards);
            return touching(a, b, at, std::min(reach, everywhere));
        }
        // Heron: the triangle of the centres and a crossing, stable where it is flat.
        const double h =
            std::sqrt((d + r + s) * (d + (r - s)) * (d - (r - s)) * ((r + s) - d)) / (2 * d);
        if (d * h < least_circle_angle * r * s) // sine of the angle of crossing times r s
            return touching(a, b, p.start, everywhere);
        const Vec2 foot = p.start + (d + (r - s) * (r + s) / d) / 2 * towards;
        for (const double side : {-h, h}) {
            const Vec2 at = foot + side * turned_left(towards);
            if (!matters(a, b, at))
                continue;
            const int vertex = weld_.add_vertex(at);
            on_circle(a, vertex);
            on_circle(b, vertex);
        }
    }

    void circle_and_side(int c, int s) {
        const PlanCurve &circle = curve(c), &side = curve(s);
        const Vec2 to_centre = circle.start - side.start;
        const double off = std::abs(cross(side.direction, to_centre)), r = circle.length;
        if (off >= r + near_)
            return;
        const double foot = side.direction.dot(to_centre);
        if (off > r - near_) {
            const double reach = contact_reach(r);
            if (foot > -reach && foot < side.length + reach)
                touching(c, s, side.at(foot), reach);
            return;
        }
        const double h = std::sqrt((r - off) * (r + off));
        for (const double along : {foot - h, foot + h}) {
            const Against place = against(along, side.length, near_);
            if (place == Against::outside || !matters(c, s, side.at(along)))
                continue;
            switch (place) {
            case Against::outside:
                break;
            case Against::doubtful:
                many_meet(s, side.at(along));
                break;
            case Against::start:
                on_circle(c, side.start_corner);
                break;
            case Against::end:
                on_circle(c, side.end_corner);
                break;
            case Against::inside: {
                const int vertex = weld_.add_vertex(side.at(along));
                on_circle(c, vertex);
                weld_.add_node(s, along, vertex);
            }
            }
        }
    }

    static int corner(const PlanCurve& side, Against place) {
        return place == Against::start ? side.start_corner : side.end_corner;
    }

    void sides(int a, int b) {
        const PlanCurve &p = curve(a), &q = curve(b);
        const double sine = cross(p.direction, q.direction);
        if (std::abs(sine) < least_side_angle)
            return parallel_sides(a, b);
        const Vec2 between = q.start - p.start;
        const double along_p = cross(between, q.direction) / sine;
        const double along_q = cross(between, p.direction) / sine;
        const Against on_p = against(along_p, p.length, near_);
        const Against on_q = against(along_q, q.length, near_);
        if (on_p == Against::outside || on_q == Against::outside || !matters(a, b, p.at(along_p)))
            return;
        if (on_p == Against::doubtful || on_q == Against::doubtful)
            return many_meet(a, p.at(along_p));
        join(a, along_p, on_p, b, along_q, on_q);
    }

    void join(int a, double along_p, Against on_p, int b, double along_q, Against on_q) {
        const bool inside_p = on_p == Against::inside, inside_q = on_q == Against::inside;
        if (inside_p && inside_q) {
            const int vertex = weld_.add_vertex(curve(a).at(along_p));
            weld_.add_node(a, along_p, vertex);
            weld_.add_node(b, along_q, vertex);
        } else if (inside_p) {
            weld_.add_node(a, along_p, corner(curve(b), on_q));
        } else if (inside_q) {
            weld_.add_node(b, along_q, corner(curve(a), on_p));
        } else {
            weld_.unite(corner(curve(a), on_p), corner(curve(b), on_q));
        }
    }

    void parallel_sides(int a, int b) {
        const PlanCurve &p = curve(a), &q = curve(b);
        const Vec2 between = q.start - p.start;
        const double start = p.direction.dot(between);
        const double rate =
            p.direction.dot(q.direction); // of along_p per metre of q, nearly 1 or -1
        const double end = start + q.length * rate;
        const double low = std::max(0.0, std::min(start, end));
        const double high = std::min(p.length, std::max(start, end));
        if (high - low < -near_)
            return;
        // Distance of q from p's line, linear along p.
        const double off = cross(p.direction, between);
        const double slope = cross(p.direction, q.direction) / rate;
        const double off_low = off + slope * (low - start), off_high = off + slope * (high - start);
        if (std::min(off_low, off_high) >= near_ || std::max(off_low, off_high) <= -near_)
            return;
        if (std::max(std::abs(off_low), std::abs(off_high)) > plan_weld)
            return touching(a, b, p.at((low + high) / 2), std::abs(high - low) / 2 + 2 * near_);
        if (high - low > plan_weld) {
            shared_.push_back({a, b, rate > 0});
            shared_.push_back({b, a, rate > 0});
        }
        end_on_line(a, start, b, Against::start);
        end_on_line(a, end, b, Against::end);
        end_on_line(b, -start / rate, a, Against::start);
        end_on_line(b, (p.length - start) / rate, a, Against::end);
    }

    /// One end of `other`, which lies on the line of `side`, as a node of it.
    void end_on_line(int side, double along, int other, Against end) {
        const Against on = against(along, curve(side).length, near_);
        if (on == Against::doubtful)
            many_meet(side, curve(side).at(along));
        else if (on != Against::outside)
            join(side, along, on, other, 0, end);
    }

    const PlanOutline& outline_;
    const double near_;
    VertexWeld weld_;
    std::vector<SharedLine> shared_;
    std::vector<Doubt> doubts_;
};

} // namespace

Crossings find_crossings(const PlanOutline& outline, double near) {
    return Finder(outline, std::max(near, 2 * plan_weld)).find();
}

std::pair<std::size_t, std::size_t> shared_lines_of(const Crossings& crossings, int curve) {
    const auto first =
        std::lower_bound(crossings.shared.begin(), crossings.shared.end(), curve,
                         [](const SharedLine& line, int index) { return line.curve < index; });
    auto last = first;
    while (last != crossings.shared.end() && last->curve == curve)
        ++last;
    const auto begin = crossings.shared.begin();
    return {static_cast<std::size_t>(first - begin), static_cast<std::size_t>(last - begin)};
}

} // namespace coilwright
