#include "geometry/plan/region.hpp"

#include "geometry/plan/lay.hpp"
#include "tests/support/random_plans.hpp"
#include "tests/support/region_checks.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <limits>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

/// What the circles of two discs have in common: Weisstein, "Circle-Circle Intersection",
/// MathWorld, eq. 14.
double lens_area(double r, double s, double d) {
    if (d >= r + s)
        return 0;
    if (d <= std::abs(r - s))
        return pi * std::min(r, s) * std::min(r, s);
    return r * r * std::acos((d * d + r * r - s * s) / (2 * d * r)) +
           s * s * std::acos((d * d + s * s - r * r) / (2 * d * s)) -
           std::sqrt((-d + r + s) * (d + r - s) * (d - r + s) * (d + r + s)) / 2;
}

Region decided(const PlanExpression& plan) {
    const std::optional<Region> region = fast_region(plan);
    REQUIRE(region);
    check_region(plan, *region);
    return *region;
}

PlanExpression one_term(std::vector<Shape> shapes) {
    PlanExpression plan;
    plan.shapes = std::move(shapes);
    PlanTerm term{"one", 0, {}};
    for (int i = 1; i < static_cast<int>(plan.shapes.size()); ++i)
        term.less.push_back(i);
    plan.terms.push_back(term);
    return plan;
}

PlanExpression all_together(std::vector<Shape> shapes) {
    PlanExpression plan;
    plan.shapes = std::move(shapes);
    for (int i = 0; i < static_cast<int>(plan.shapes.size()); ++i)
        plan.terms.push_back({"part", i, {}});
    return plan;
}

Box square(double x, double y, double side) {
    return {{x, y}, {1, 0}, 0, side, 0, side};
}

std::size_t edge_count(const Region& region) {
    std::size_t count = 0;
    for (const BoundaryLoop& loop : region.loops)
        count += loop.edges.size();
    return count;
}

} // namespace

TEST_CASE("a disc is two half circles from its westmost point", "[region]") {
    const Region region = decided(one_term({Disc{{1, 2}, 3}}));
    REQUIRE(region.loops.size() == 1);
    REQUIRE(region.loops[0].edges.size() == 2);
    CHECK(region.loops[0].edges[0].from == Vec2(-2, 2));
    CHECK(region.loops[0].edges[0].bulge == Approx(1));
    CHECK(region.area == Approx(9 * pi).epsilon(1e-14));
    CHECK(perimeter(region) == Approx(6 * pi).epsilon(1e-14));
}

TEST_CASE("a ring has an outer loop anticlockwise and a hole clockwise", "[region]") {
    const Region region = decided(one_term({Disc{{0, 0}, 2}, Disc{{0, 0}, 1}}));
    REQUIRE(region.loops.size() == 2);
    CHECK(region.loops[0].area == Approx(4 * pi));
    CHECK(region.loops[1].area == Approx(-pi));
    CHECK(region.loops[1].edges[0].bulge == Approx(-1));
    CHECK(region.area == Approx(9.424778).margin(1e-6));
}

TEST_CASE("a ring less a strip from its middle is one loop of four edges", "[region]") {
    // The opening of a course: r 2, R 2.4, half-width 0.5. The piece that it takes out of the ring
    // is 0.403557 by the difference of two half strips, a sqrt(r^2 - a^2) + r^2 asin(a / r).
    const Region region = decided(
        one_term({Disc{{0, 0}, 2.4}, Disc{{0, 0}, 2}, Box{{0, 0}, {1, 0}, 0, 100, -0.5, 0.5}}));
    REQUIRE(region.loops.size() == 1);
    CHECK(region.loops[0].edges.size() == 4);
    const double ring = pi * (2.4 * 2.4 - 2 * 2);
    CHECK(region.area == Approx(ring - strip_area_in_ring(2, 2.4, 0.5)).epsilon(1e-13));
    CHECK(ring - region.area == Approx(0.403557).margin(5e-7));
}

TEST_CASE("lenses and lunes have their published areas", "[region]") {
    // The vesica piscis, d = r: (4 pi - 3 sqrt 3) / 6 r^2; Weisstein, "Vesica Piscis", MathWorld.
    const auto lune = [](double r, double s, double d) {
        return decided(one_term({Disc{{0, 0}, r}, Disc{{d, 0}, s}})).area;
    };
    CHECK(pi - lune(1, 1, 1) == Approx((4 * pi - 3 * std::sqrt(3)) / 6).epsilon(1e-13));
    // Hippocrates of Chios, 5th century BC: the lune on the side of a square has a triangle's area.
    const PlanExpression hippocrates =
        one_term({Disc{{0.5, 0.5}, std::sqrt(0.5)}, Disc{{0, 0}, 1}});
    CHECK(decided(hippocrates).area == Approx(0.5).epsilon(1e-13));
    // Two unit discs share half of each other's area at d = 0.807946 (MathWorld, as above).
    CHECK(lune(1, 1, 0.807946) == Approx(pi / 2).epsilon(1e-6));
    for (const double d : {0.6, 1.1, 2.0, 2.9})
        CHECK(lune(2, 1, d) == Approx(4 * pi - lens_area(2, 1, d)).epsilon(1e-13));
}

TEST_CASE("two overlapping rings cover both less what they share", "[region]") {
    const double r = 2, w = 0.4, d = 3.1, s = 1.5;
    PlanExpression plan = all_together({Disc{{0, 0}, r + w}, Disc{{d, 0}, s + w}});
    for (const double inside : {r, s})
        plan.terms[inside == r ? 0 : 1].less = {
            add_shape(plan, Disc{{inside == r ? 0 : d, 0}, inside})};
    const double shared = lens_area(r + w, s + w, d) - lens_area(r, s + w, d) -
                          lens_area(r + w, s, d) + lens_area(r, s, d);
    const double rings = pi * ((r + w) * (r + w) - r * r + (s + w) * (s + w) - s * s);
    const Region both = decided(plan);
    CHECK(both.area == Approx(rings - shared).epsilon(1e-13));
    CHECK(both.loops.size() == 4); // the outside, two rooms, the lens between their insides
    // Open plan: each inside voids the other's wall.
    plan.terms[0].less.push_back(3);
    plan.terms[1].less.push_back(2);
    const double voided =
        lens_area(r + w, s, d) - lens_area(r, s, d) + lens_area(r, s + w, d) - lens_area(r, s, d);
    const Region open = decided(plan);
    CHECK(open.area == Approx(rings - shared - voided).epsilon(1e-13));
    CHECK(open.loops.size() == 2);
    // The first keeps its wall: the other stops at its outside.
    plan.terms[0].less.pop_back();
    plan.terms[1].less.back() = 0;
    CHECK(decided(plan).area ==
          Approx(rings - lens_area(r + w, s + w, d) + lens_area(r + w, s, d)).epsilon(1e-13));
}

TEST_CASE("a pier against a ring is what lies outside of the ring, and the ring", "[region]") {
    // |y| <= a from the ring's inside face to x = e; its part beyond the circle R is
    // 2 a e - (a sqrt(R^2 - a^2) + R^2 asin(a / R)) to the centre.
    const double r = 1.4, w = 0.4, outside = r + w, a = 0.4, e = 2.5;
    PlanExpression plan =
        all_together({Disc{{0, 0}, outside}, Box{{0, 0}, {0, -1}, r, e, -a, a}, Disc{{0, 0}, r}});
    plan.terms.pop_back();
    plan.terms[0].less = plan.terms[1].less = {2};
    const Region region = decided(plan);
    const double beyond = 2 * a * e - a * std::sqrt(outside * outside - a * a) -
                          outside * outside * std::asin(a / outside);
    CHECK(region.area == Approx(pi * (outside * outside - r * r) + beyond).epsilon(1e-13));
    REQUIRE(region.loops.size() == 2);
    CHECK(region.loops[0].edges.size() == 4); // one long arc and three sides
    const auto& edges = region.loops[0].edges;
    CHECK(std::count_if(edges.begin(), edges.end(),
                        [](const BoundaryEdge& edge) { return edge.bulge > 1; }) == 1);
}

TEST_CASE("the same shape listed twice is one", "[region]") {
    PlanExpression plan = all_together({Disc{{0, 0}, 2}, Disc{{1e-10, 0}, 2 + 1e-10}});
    CHECK(edge_count(decided(plan)) == 2);
    plan = one_term({Disc{{0, 0}, 2}, Disc{{0, 0}, 2}});
    CHECK(decided(plan).loops.empty());
    // The same rectangle by another frame.
    plan = all_together({Box{{0, 0}, {1, 0}, 0, 2, -1, 1}, Box{{2, 0}, {0, 1}, -1, 1, 0, 2}});
    CHECK(edge_count(decided(plan)) == 4);
    plan.terms[0].less = {1};
    plan.terms.pop_back();
    CHECK(decided(plan).loops.empty());
}

TEST_CASE("sides on one line and corners on sides are decided", "[region]") {
    const double turn = 0.3;
    // A tunnel's walls: band less void, both ending flush: two strips.
    PlanExpression tunnel =
        one_term({Box{{0, 0}, {1, 0}, 0, 3, -0.9, 0.9}, Box{{0, 0}, {1, 0}, 0, 3, -0.5, 0.5}});
    const Region walls = decided(moved(tunnel, turn, {5, 7}));
    CHECK(walls.loops.size() == 2);
    CHECK(walls.area == Approx(2 * 3 * 0.4).epsilon(1e-12));
    // With an end wall that ends flush too, given in a frame that looks back: one U.
    tunnel.terms.push_back({"end", add_shape(tunnel, Box{{3, 0}, {-1, 0}, 0, 0.4, -0.9, 0.9}), {}});
    const Region closed = decided(moved(tunnel, turn, {5, 7}));
    REQUIRE(closed.loops.size() == 1);
    CHECK(closed.loops[0].edges.size() == 8);
    CHECK(closed.area == Approx(2 * 3 * 0.4 + 1.0 * 0.4).epsilon(1e-12));
    // Two boxes side by side are one, their common side gone.
    const Region side_by_side = decided(all_together({square(0, 0, 1), square(1, 0, 1)}));
    CHECK(side_by_side.loops.size() == 1);
    CHECK(side_by_side.area == Approx(2));
    // A smaller box against the middle of a side; and cut out of it, flush.
    CHECK(decided(all_together({square(0, 0, 3), square(3, 1, 1)})).area == Approx(10));
    const Region notch = decided(one_term({square(0, 0, 3), square(2, 1, 1)}));
    CHECK(notch.area == Approx(8));
    CHECK(notch.loops[0].edges.size() == 8);
    // Corner to corner: two loops that touch.
    const Region corners = decided(all_together({square(0, 0, 1), square(1, 1, 1)}));
    CHECK(corners.loops.size() == 2);
    CHECK(corners.area == Approx(2));
    // A hole whose corners lie on the outline.
    const Region diamond = decided(
        one_term({square(0, 0, 2), Box{{0, 1}, unit(pi / 4), 0, std::sqrt(2), -std::sqrt(2), 0}}));
    CHECK(diamond.area == Approx(2).epsilon(1e-12));
    CHECK(diamond.loops.size() == 4);
    // A box in a circle, corner by corner.
    const Region segments =
        decided(one_term({Disc{{0, 0}, 1}, Box{{0, 0}, unit(0.7), -0.6, 0.6, -0.8, 0.8}}));
    CHECK(segments.area == Approx(pi - 1.2 * 1.6).epsilon(1e-12));
    CHECK(segments.loops.size() == 4);
}

TEST_CASE("a side is not split where another, longer one on its line does not matter", "[region]") {
    // A wall 10 long; on it a box from 4 to 12, less what lies left of 5 on a line of 25.
    PlanExpression plan =
        all_together({Box{{0, 0}, {1, 0}, 0, 10, 0, 1}, Box{{0, 0}, {1, 0}, 4, 12, 1, 2},
                      Box{{0, 0}, {1, 0}, -20, 5, 1, 2}});
    plan.terms.pop_back();
    plan.terms[1].less = {2};
    const Region region = decided(moved(plan, 1, {1, 2}));
    REQUIRE(region.loops.size() == 1);
    CHECK(region.loops[0].edges.size() == 8);
    CHECK(region.area == Approx(10 + 7));
    // The void first of all shapes, and not there where the wall's top is: still one edge.
    plan.shapes = {plan.shapes[2], plan.shapes[0], Box{{0, 0}, {1, 0}, 9, 14, 1, 2}};
    std::get<Box>(plan.shapes[0]).to = 20;
    plan.terms = {{"wall", 1, {}}, {"box", 2, {0}}};
    CHECK(edge_count(decided(plan)) == 4);
    // A void along a short wall's top, taken from a disc that does not reach the wall.
    plan.shapes = {Box{{0, 0}, {1, 0}, -20, 20, 1, 2}, Box{{0, 0}, {1, 0}, 3, 4, 0, 1},
                   Disc{{5, 3}, 2.2}};
    plan.terms = {{"wall", 1, {}}, {"disc", 2, {0}}};
    const Region apart = decided(plan); // the disc in two, and the wall
    REQUIRE(apart.loops.size() == 3);
    CHECK(apart.loops[1].area == Approx(1));
    for (const BoundaryEdge& edge : apart.loops[1].edges)
        CHECK(edge.shape == 1);
    // Two boxes with one bottom, of which a third hides the rest: the longer one's.
    const Region bottoms =
        decided(all_together({Box{{0, 0}, {1, 0}, 0, 6, 0, 2}, Box{{0, 0}, {1, 0}, 0, 10, 0, 1},
                              Box{{0, 0}, {1, 0}, 6, 12, -1, 3}}));
    REQUIRE(bottoms.loops.size() == 1);
    CHECK(bottoms.loops[0].edges[0].shape == 1);
    // Sides that only touch by halves: each names its own.
    const Region steps =
        decided(all_together({Box{{0, 0}, {1, 0}, 0, 6, 0, 1}, Box{{0, 0}, {1, 0}, 4, 11, 0, 1}}));
    CHECK(steps.loops[0].edges.size() == 6);
}

TEST_CASE("shapes that hold nothing change nothing", "[region]") {
    const Region region =
        decided(one_term({square(0, 0, 2), Disc{{1, 1}, 0}, Disc{{1, 1}, -3},
                          Box{{0, 0}, {1, 0}, 0, 2, 1, 1}, Box{{0, 0}, {1, 0}, 2, 0, 0, 1}}));
    CHECK(region.area == Approx(4));
    CHECK(edge_count(region) == 4);
    CHECK(fast_region({}).value().loops.empty());
    CHECK(decided(one_term({Disc{{0, 0}, 0}})).loops.empty());
}

TEST_CASE("what doubles cannot tell is refused where it matters", "[region]") {
    const auto touching = [](double gap) {
        return fast_region(all_together({Disc{{0, 0}, 1}, Disc{{2.5 + gap, 0}, 1.5}}));
    };
    for (const double gap : {0.0, 1e-12, -1e-12, 5e-8, -5e-8})
        CHECK_FALSE(touching(gap));
    CHECK(touching(2e-7).value().loops.size() == 2);
    CHECK(touching(-2e-7).value().loops.size() == 1);
    for (const double gap : {5e-8, -5e-8})
        CHECK_FALSE(fast_region(one_term({Disc{{0, 0}, 2}, Disc{{1 + gap, 0}, 1}})));
    // A corner that points at a side, and at a circle.
    const Box tip{{1, 0}, unit(pi / 4), 0, 1, -1, 0};
    for (const double gap : {1e-8, -1e-8}) {
        CHECK_FALSE(fast_region(all_together({Box{{0, 0}, {1, 0}, 0, 1 - gap, -1, 1}, tip})));
        CHECK_FALSE(fast_region(all_together({Disc{{0, 0}, 1 - gap}, tip})));
    }
    // Covered where they touch, but not where they are still near each other.
    CHECK_FALSE(fast_region(all_together({Disc{{-1, 0}, 1}, Disc{{1, 0}, 1}, Disc{{0, 0}, 1e-4}})));
    // Inside tangency, a strip along a circle, sides that all but coincide, a corner near a side.
    CHECK_FALSE(fast_region(one_term({Disc{{0, 0}, 2}, Disc{{1, 0}, 1}})));
    CHECK_FALSE(fast_region(all_together({Disc{{0, 0}, 1}, Box{{0, 0}, {1, 0}, -3, 3, 0, 1}})));
    CHECK_FALSE(fast_region(all_together({square(0, 0, 1), square(1 + 1e-8, 0, 1)})));
    CHECK_FALSE(fast_region(all_together({square(0, 0, 1), square(1 + 5e-9, 0.2, 0.3)})));
    CHECK_FALSE(fast_region(one_term({Disc{{0, 0}, 2}, Disc{{0, 0}, 2 - 1e-8}})));
    // Three circles through one point within 1e-8.
    CHECK_FALSE(fast_region(all_together(
        {Disc{{1, 0}, 1}, Disc{{-0.5, 0.5}, std::sqrt(0.5)}, Disc{{0, -1}, 1 + 1e-8}})));
}

TEST_CASE("what doubles cannot tell is passed over where it cannot matter", "[region]") {
    // Two discs that touch inside a third, which is all that there is.
    const Region covered =
        decided(all_together({Disc{{0, 0}, 4}, Disc{{-1, 0}, 1}, Disc{{1, 0}, 1}}));
    CHECK(covered.area == Approx(16 * pi));
    CHECK(edge_count(covered) == 2);
    // The same, taken away.
    PlanExpression plan = one_term({Disc{{0, 0}, 4}, Disc{{0, 0}, 3}});
    plan.shapes.push_back(Disc{{-1, 0}, 1});
    plan.shapes.push_back(square(0, -1, 2));
    plan.terms[0].less = {1, 2, 3};
    CHECK(decided(plan).area == Approx(7 * pi));
    // A circle through the crossing of two others, under a fourth: not there on the whole's
    // outline.
    PlanExpression three =
        all_together({Disc{{1, 0}, 1}, Disc{{-0.5, 0.5}, std::sqrt(0.5)}, Disc{{0, -1}, 1 + 1e-8}});
    three.terms.push_back({"cover", add_shape(three, Disc{{0, 0}, 0.3}), {}});
    decided(three);
    // On the outline two circles cross; a third passes there too, but cuts what lies elsewhere.
    PlanExpression crossing = all_together({Disc{{0, 0}, 2}, Disc{{2, 0}, 2}, Disc{{0.1, 0.9}, 1},
                                            Disc{{1, 0.7}, std::sqrt(3) - 0.7 + 1e-8}});
    crossing.terms.pop_back();
    crossing.terms[2].less = {3};
    CHECK(decided(crossing).area == Approx(8 * pi - lens_area(2, 2, 2)));
    // A shape that no term names.
    PlanExpression idle = one_term({Disc{{0, 0}, 1}});
    idle.shapes.push_back(Disc{{2, 0}, 1});
    CHECK(decided(idle).area == Approx(pi));
}

TEST_CASE("an expression that is not sound is refused", "[region]") {
    const double bad[] = {std::numeric_limits<double>::quiet_NaN(),
                          std::numeric_limits<double>::infinity(), 2e5};
    for (const double value : bad) {
        CHECK_FALSE(fast_region(one_term({Disc{{0, 0}, value}})));
        CHECK_FALSE(fast_region(one_term({Disc{{value, 0}, 1}})));
        CHECK_FALSE(fast_region(one_term({Box{{0, 0}, {1, 0}, 0, value, 0, 1}})));
        CHECK_FALSE(fast_region(one_term({Box{{0, 0}, {value, 0}, 0, 1, 0, 1}})));
    }
    PlanExpression plan = one_term({Disc{{0, 0}, 1}});
    plan.terms[0].less = {1};
    CHECK_FALSE(fast_region(plan));
    plan.terms[0] = {"none", -1, {}};
    CHECK_FALSE(fast_region(plan));
    CHECK_FALSE(region_of(plan, [](const PlanExpression&) { return Region{}; }).decided);
}

TEST_CASE("only the part that cannot be decided is handed on", "[region]") {
    // Two discs that touch, far from a ring; the ring's region comes from the doubles.
    PlanExpression plan =
        all_together({Disc{{50, 0}, 3}, Disc{{0, 0}, 1}, Disc{{2, 0}, 1}, Disc{{50, 0}, 2}});
    plan.terms.pop_back();
    plan.terms[0].less = {3};
    CHECK_FALSE(region_of(plan, nullptr).decided);
    int asked = 0;
    const Region region = region_of(plan, [&](const PlanExpression& part) {
        ++asked;
        CHECK(part.shapes.size() == 2);
        CHECK(std::get<Disc>(part.shapes[1]).centre.x() == 2);
        // Each disc alone, as an exact answer would have them.
        Region answer;
        for (int i = 0; i < 2; ++i) {
            PlanExpression one = part;
            one.terms = {{"disc", i, {}}};
            answer.loops.push_back(fast_region(one).value().loops[0]);
        }
        return answer;
    });
    CHECK(asked == 1);
    REQUIRE(region.loops.size() == 4);
    CHECK(region.area == Approx(2 * pi + 5 * pi));
    CHECK(region.loops[0].edges[0].shape == 0);
    CHECK(region.loops[1].edges[0].shape == 3);
    CHECK(region.loops[2].edges[0].shape == 1);
    CHECK(region.loops[3].edges[0].shape == 2);
}
