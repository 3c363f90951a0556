// Plan expressions for the tests: random ones, and such as buildings have.
#pragma once

#include "geometry/base/bearing.hpp"
#include "geometry/plan/region.hpp"
#include "tests/support/seeded.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace coilwright::testing {

inline int add_shape(PlanExpression& plan, const Shape& shape) {
    plan.shapes.push_back(shape);
    return static_cast<int>(plan.shapes.size()) - 1;
}

inline Vec2 unit(double angle) {
    return {std::cos(angle), std::sin(angle)};
}

/// The plan turned about the origin, anticlockwise, then moved.
inline PlanExpression moved(PlanExpression plan, double angle, const Vec2& by) {
    const auto turn = [&](const Vec2& v) -> Vec2 {
        return {std::cos(angle) * v.x() - std::sin(angle) * v.y(),
                std::sin(angle) * v.x() + std::cos(angle) * v.y()};
    };
    for (Shape& shape : plan.shapes) {
        if (Disc* disc = std::get_if<Disc>(&shape)) {
            disc->centre = turn(disc->centre) + by;
        } else {
            Box& box = std::get<Box>(shape);
            box.origin = turn(box.origin) + by;
            box.axis = turn(box.axis);
        }
    }
    return plan;
}

/// Rings and boxes thrown together, each less some of the others: nothing in line but by chance.
inline PlanExpression scattered_plan(Seeded& dice) {
    PlanExpression plan;
    const int rings = dice.whole(1, 4), boxes = dice.whole(0, 4);
    for (int i = 0; i < rings; ++i) {
        const Vec2 centre(dice.between(-3, 3), dice.between(-3, 3));
        const double radius = dice.between(0.8, 2.5);
        const int outer = add_shape(plan, Disc{centre, radius + dice.between(0.2, 0.5)});
        plan.terms.push_back({"ring", outer, {add_shape(plan, Disc{centre, radius})}});
    }
    for (int i = 0; i < boxes; ++i) {
        Box box;
        box.origin = {dice.between(-3, 3), dice.between(-3, 3)};
        box.axis = unit(dice.between(0, 2 * pi));
        box.to = dice.between(0.2, 4);
        box.low = -dice.between(0.1, 0.8);
        box.high = dice.between(0.1, 0.8);
        const int body = add_shape(plan, box);
        if (dice.coin())
            plan.terms.push_back({"box", body, {}});
    }
    for (PlanTerm& term : plan.terms)
        for (int shape = 0; shape < static_cast<int>(plan.shapes.size()); ++shape)
            if (shape != term.solid && dice.whole(0, 5) == 0)
                term.less.push_back(shape);
    return plan;
}

/// One or more domes in a row, tunnels with end walls, buttresses, openings: sides in one line,
/// corners on other sides, the same discs in several terms, as buildings have them. Not turned.
inline PlanExpression building_plan(Seeded& dice) {
    PlanExpression plan;
    const int domes = dice.whole(1, 3);
    const double w = dice.between(0.25, 0.45);
    double east = 0;
    for (int d = 0; d < domes; ++d) {
        const double r = dice.between(1.2, 2.6);
        east += d == 0 ? 0 : r;
        const Vec2 at(east, 0);
        east += r - dice.between(-1, 0.6);
        const int inner = add_shape(plan, Disc{at, r});
        PlanTerm ring{"dome", add_shape(plan, Disc{at, r + w}), {inner}};
        // A tunnel to the north with an end wall and a door in it.
        const double reach = r + w + dice.between(0.5, 1.5), b = dice.between(0.3, 0.6);
        const Vec2 north(0, 1);
        const int body = add_shape(plan, Box{at, north, 0, reach, -b - w, b + w});
        const int hole = add_shape(plan, Box{at, north, 0, reach, -b, b});
        const int end = add_shape(plan, Box{at, north, reach - w, reach, -b - w, b + w});
        const int door = add_shape(plan, Box{at, north, 0, 100, -b / 2, b / 2});
        plan.terms.push_back({"tunnel", body, {hole, inner}});
        if (dice.coin())
            plan.terms.push_back({"end", end, {door}});
        ring.less.push_back(hole);
        // Buttresses to the south as seen from the other side: another frame, sides in line with
        // the tunnel's or not.
        const double half = dice.coin() ? b : dice.between(0.2, 0.5);
        const int pier =
            add_shape(plan, Box{at, Vec2(0, -1), r, r + w + dice.between(0.3, 0.8), -half, half});
        plan.terms.push_back({"pier", pier, {inner}});
        const int window =
            add_shape(plan, Box{at, unit(dice.between(-0.4, 0.1)), 0, 100, -0.25, 0.25});
        ring.less.push_back(window);
        plan.terms.push_back(ring);
    }
    // Of neighbours, the ring stops at the other's outside or opens into its inside.
    for (PlanTerm& term : plan.terms)
        for (const PlanTerm& other : plan.terms)
            if (term.element == "dome" && other.element == "dome" && &term != &other)
                term.less.push_back(&term < &other ? other.less[0] : other.solid);
    return plan;
}

} // namespace coilwright::testing
