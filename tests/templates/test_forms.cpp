// Forms, frames, boards and strips against the openings and domes they are for.
#include "geometry/base/bearing.hpp"
#include "geometry/templates/form_set.hpp"
#include "geometry/templates/half_templates.hpp"
#include "geometry/views/plan_views.hpp"
#include "geometry/views/role_strokes.hpp"
#include "tests/drawing/plans.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

const std::vector<std::string> demos{"grain-store", "cabin-metric", "washroom", "workshop",
                                     "square-door", "home",         "retreat"};

double distance_to(const std::vector<Vec2>& line, Vec2 point) {
    double least = 1e9;
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        const Vec2 way = line[i + 1] - line[i];
        const double part =
            way.squaredNorm() > 0
                ? std::clamp((point - line[i]).dot(way) / way.squaredNorm(), 0.0, 1.0)
                : 0;
        least = std::min(least, (line[i] + part * way - point).norm());
    }
    return least;
}

OpeningPlan plain(HeadKind kind, double half, double jamb, const std::optional<Profile>& head) {
    OpeningPlan plan;
    plan.form.id = "one";
    plan.form.head_kind = kind;
    plan.form.half_width = half;
    plan.form.sill = 0.5;
    plan.form.springing = 0.5 + jamb;
    plan.form.head = head;
    plan.form.top = plan.form.springing + (head ? head->rise : 0);
    plan.least_form_depth = 0.5;
    plan.frame_inset = 0.02;
    plan.frame_width = 0.05;
    return plan;
}

} // namespace

TEST_CASE("forms: a face with its battens fills the hole of its opening") {
    int checked = 0;
    for (const std::string& name : demos) {
        const BuildingPlan plan = demo_plan(name);
        const FormStock stock = form_stock(plan.schedule.unit);
        for (const OpeningPlan& opening : plan.schedule.openings) {
            CAPTURE(name, opening.form.id);
            const auto form = arch_form(opening, stock);
            REQUIRE(form.has_value());
            const std::vector<Vec2> edge = flattened(form->face, 0.0005);
            // The hole as the courses are cut from it, which knows nothing of outlines.
            const OpeningForm& hole = opening.form;
            const double low = form->hole.from.y() + 0.02;
            for (int i = 0; i <= 400; ++i) {
                const double z = low + (hole.top - 1e-6 - low) * i / 400;
                const Vec2 at(half_width(hole, z), z);
                // At the very apex battens of both sides meet: farther from the face's point.
                if (hole.head_kind == HeadKind::pointed && at.x() < 1.5 * stock.batten)
                    continue;
                // So at corners.
                if (hole.head_kind == HeadKind::segmental &&
                    std::abs(z - hole.springing) < 1.5 * stock.batten)
                    continue;
                if (hole.head_kind == HeadKind::square && z > hole.top - 1.5 * stock.batten)
                    continue;
                CHECK(std::abs(distance_to(edge, at) - stock.batten) < 0.0005);
                ++checked;
            }
            CHECK(form->depth == opening.least_form_depth);
        }
    }
    CHECK(checked > 5000);
}

TEST_CASE("forms: areas and girths of faces are closed forms") {
    const FormStock stock{0.018, 0.02, 0.06, 0.6, 0.025, 0.2};
    const double a = 0.4, jamb = 1.1;
    const double j = jamb - stock.wedge, in = a - stock.batten;
    const auto round = arch_form(plain(HeadKind::round, a, jamb, round_profile(a)), stock);
    REQUIRE(round);
    CHECK(area_of(round->face) == Approx(2 * in * j + pi * in * in / 2));
    CHECK(round->girth == Approx(2 * j + pi * in));
    CHECK(round->battens == static_cast<int>((2 * j + pi * in) / 0.06));
    CHECK(round->battens * (0.06 + round->batten_gap) == Approx(round->girth));
    CHECK(round->batten_gap < 0.06);
    CHECK(round->faces == 2); // 0.5 m deep: no rib between
    CHECK(round->stiffener_length == Approx(0.5 - 2 * 0.018));
    const auto square = arch_form(plain(HeadKind::square, a, jamb, std::nullopt), stock);
    REQUIRE(square);
    CHECK(area_of(square->face) == Approx(2 * in * (j - stock.batten)));
    const auto equilateral =
        arch_form(plain(HeadKind::pointed, a, jamb, pointed_profile(a, a * std::sqrt(3.0))), stock);
    REQUIRE(equilateral);
    const double rho = 2 * a - stock.batten; // the equilateral arch's radius is its span
    CHECK(equilateral->girth == Approx(2 * j + 2 * rho * std::acos(a / rho)));
    OpeningPlan deep = plain(HeadKind::round, a, jamb, round_profile(a));
    deep.least_form_depth = 1.3;
    const auto ribbed = arch_form(deep, stock);
    REQUIRE(ribbed);
    CHECK(ribbed->faces == 4); // 1.3 m in spans of at most 0.6
    CHECK(ribbed->stiffener_length * 3 + 4 * 0.018 == Approx(1.3));
    // A hole that battens fill leaves no face.
    CHECK_FALSE(arch_form(plain(HeadKind::round, 0.02, 0.1, round_profile(0.02)), stock));
}

TEST_CASE("forms: frames, panes and leaves lie within each other by what they should") {
    const double a = 0.4, jamb = 0.6;
    OpeningPlan window = plain(HeadKind::round, a, jamb, round_profile(a));
    window.form.use = OpeningUse::window;
    const auto parts = frame_parts(window);
    REQUIRE(parts);
    const auto area = [&](double inset) { // with a sill
        const double r = a - inset;
        return 2 * r * (jamb - inset) + pi * r * r / 2;
    };
    CHECK(area_of(parts->outer) == Approx(area(0.02)));
    CHECK(area_of(parts->inner) == Approx(area(0.07)));
    CHECK(area_of(parts->pane) == Approx(area(0.07 - 0.010 + 0.003)));
    window.form.use = OpeningUse::door; // open at the foot
    const auto door = frame_parts(window);
    REQUIRE(door);
    CHECK(area_of(door->outer) == Approx(2 * 0.38 * jamb + pi * 0.38 * 0.38 / 2));
    CHECK(area_of(door->pane) == Approx(2 * 0.327 * jamb + pi * 0.327 * 0.327 / 2));
    window.form.use = OpeningUse::niche;
    CHECK_FALSE(frame_parts(window));
}

TEST_CASE("forms: the clear hole of a frame is that of the schedule") {
    int checked = 0;
    for (const std::string& name : demos) {
        const BuildingPlan plan = demo_plan(name);
        for (const OpeningPlan& opening : plan.schedule.openings) {
            const auto parts = frame_parts(opening);
            if (!parts)
                continue;
            CAPTURE(name, opening.form.id);
            View view;
            view.paths.push_back({LineRole::cut, parts->inner});
            CHECK(extent_of(view).size().x() == Approx(opening.clear_width).margin(1e-9));
            ++checked;
        }
    }
    CHECK(checked > 10);
}

TEST_CASE(
    "boards: the edge of a profile board is the dome's inside, its marks the compass settings") {
    for (const std::string& name : demos) {
        const BuildingPlan plan = demo_plan(name);
        for (const DomeForm& dome : plan.schedule.building.domes) {
            CAPTURE(name, dome.id);
            const auto boards = profile_boards(plan.schedule, dome, form_stock(plan.schedule.unit));
            REQUIRE(!boards.empty());
            double length = 0, top = 0;
            int marks = 0;
            for (const ProfileBoard& board : boards) {
                CHECK(area_of(board.board) > 0);
                Outline edge{board.board.from, {}};
                edge.edges.assign(board.board.edges.begin(),
                                  board.board.edges.begin() +
                                      static_cast<std::ptrdiff_t>(board.profile_edges));
                CHECK(length_of(edge) < 1.22);
                length += length_of(edge);
                for (const Vec2& at : flattened(edge, 0.002)) {
                    CHECK(at.x() == Approx(half_width(dome.profile, at.y())).margin(0.0002));
                    top = std::max(top, at.y());
                }
                for (const ProfileBoard::Mark& mark : board.marks) {
                    ++marks;
                    const Course& course =
                        plan.schedule.courses.at(static_cast<std::size_t>(mark.course - 1));
                    const double y = course.middle - dome.springline;
                    CHECK(mark.at.y() == Approx(y));
                    CHECK(mark.radius == Approx(half_width(dome.profile, y)).margin(1e-9));
                }
            }
            CHECK(length == Approx(length_between(dome.profile, 0, top)).epsilon(1e-4));
            CHECK(marks >= 3);
        }
    }
}

TEST_CASE("strips: length and lines are those of the hole in its wall") {
    const BuildingPlan plan = demo_plan("grain-store");
    const Schedule& schedule = plan.schedule;
    const FormStock stock = form_stock(schedule.unit);
    for (const OpeningPlan& opening : schedule.openings) {
        const auto form = arch_form(opening, stock);
        REQUIRE(form);
        const SoffitStrip strip = soffit_strip(schedule, opening, *form);
        const OpeningForm& hole = opening.form;
        CAPTURE(hole.id);
        if (hole.head_kind == HeadKind::pointed || hole.head_kind == HeadKind::round) {
            const double jamb = hole.springing - hole.sill - stock.wedge;
            CHECK(strip.length ==
                  Approx(2 * jamb + 2 * length_between(*hole.head, 0, hole.head->rise)));
        }
        // At the crown the wall's faces lie as far out as the dome's radii there.
        const DomeForm& dome = schedule.building.domes.front();
        for (std::size_t i = 0; i < strip.inner_face.size(); ++i) {
            const Vec2 in = strip.inner_face[i], out = strip.outer_face[i];
            // The form reaches past the bags on both sides; their smooth face may stand out by as
            // much as a course leans in half its height.
            CHECK(in.y() > -0.01);
            CHECK(out.y() < strip.depth + 0.01);
            CHECK(out.y() - in.y() > 0.9 * dome.width);
            if (std::abs(in.x() - strip.crown) < 1e-9) {
                CHECK(in.y() + form->start == Approx(inside_radius(dome, hole.top)).margin(1e-5));
                CHECK(out.y() + form->start == Approx(outside_radius(dome, hole.top)).margin(1e-5));
            }
        }
        CHECK(!strip.joints.empty());
    }
}

TEST_CASE("templates: half an outline is half as long") {
    const double r = 0.35, j = 0.9;
    const Outline hole{{-r, 0}, {{{r, 0}, 0}, {{r, j}, 0}, {{-r, j}, 1}, {{-r, 0}, 0}}};
    double length = 0;
    for (const Outline& path : right_half(hole, -1))
        length += length_of(path);
    CHECK(length == Approx(length_of(hole) / 2));
    double head = 0;
    for (const Outline& path : right_half(hole, j - 0.1))
        head += length_of(path);
    CHECK(head == Approx(0.1 + pi * r / 2));
}

TEST_CASE("forms: alike openings share a kind, and all have one") {
    const BuildingPlan plan = demo_plan("home");
    const FormSet set = form_set(plan.schedule);
    std::size_t count = 0;
    for (const FormKind& kind : set.kinds)
        count += kind.ids.size();
    CHECK(count == plan.schedule.openings.size() + plan.schedule.vault_forms.size());
    CHECK(set.kinds.size() < count);
}
