#include "geometry/plan/pieces.hpp"

#include "geometry/plan/heads.hpp"
#include "geometry/plan/section.hpp"
#include "tests/support/demos.hpp"
#include "tests/support/designs.hpp"
#include "tests/support/files.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

RingGap strip(const char* by, double middle, double half_width) {
    RingGap gap;
    gap.by = by;
    gap.middle = middle;
    gap.half_width = half_width;
    return gap;
}

bool of_fan(const Piece& piece) {
    return piece.kind == PieceKind::fan_bag || piece.kind == PieceKind::keystone;
}

} // namespace

TEST_CASE("pieces: the stretch between two close strips is a wedge between their cuts") {
    Ring ring;
    ring.inside_radius = 1.5;
    ring.centre_radius = 1.7;
    ring.outside_radius = 1.9;
    ring.width = 0.4;
    const std::vector<RingGap> gaps{strip("door", 0, 0.4), strip("pier", 30, 0.4)};
    const std::vector<WedgePlace> wedges = wedges_of(gaps, ring);
    REQUIRE(wedges.size() == 1);
    // Between the strips r (30 degrees - 2 asin(0.4 / r)): closed form.
    const auto length = [](double r) { return r * std::max(0.0, pi / 6 - 2 * std::asin(0.4 / r)); };
    CHECK(wedges[0].inside == Approx(length(1.5)).margin(1e-12));
    CHECK(wedges[0].centre == Approx(length(1.7)));
    CHECK(wedges[0].outside == Approx(length(1.9)));
    const CourseRules rules;
    const Piece piece = wedge_piece(wedges[0], ring, {150}, rules);
    CHECK(piece.of == "door");
    CHECK(piece.other == "pier");
    CHECK(piece.cut_length == Approx(length(1.9) + 2 * rules.end_allowance));
    // Its area by counting points of a grid.
    int count = 0;
    constexpr double step = 0.001;
    for (double x = 0; x < 1.9; x += step)
        for (double y = 0; y < 1.9; y += step) {
            const double r = std::hypot(x, y);
            const double right_of_pier = x * std::cos(pi / 6) - y * std::sin(pi / 6);
            count += r > 1.5 && r < 1.9 && x > 0.4 && right_of_pier < -0.4;
        }
    CHECK(piece.fill_volume == Approx(count * step * step).epsilon(0.02));
    // Half a tube apart or more it is a run, nothing apart it is nothing.
    CHECK(wedges_of({strip("door", 0, 0.4), strip("pier", 36, 0.4)}, ring).empty());
    CHECK(wedges_of({strip("door", 0, 0.4), strip("pier", 24, 0.4)}, ring).empty());
}

TEST_CASE("pieces: a stretch that only the outside face has is a wedge too") {
    Ring ring;
    ring.inside_radius = 1.5;
    ring.centre_radius = 1.7;
    ring.outside_radius = 1.9;
    ring.width = 0.4;
    // At 1.7 the strips overlap (27.22 degrees asked), at 1.9 they leave 2.7 degrees.
    const std::vector<WedgePlace> wedges =
        wedges_of({strip("door", 0, 0.4), strip("pier", 27, 0.4)}, ring);
    REQUIRE(wedges.size() == 1);
    CHECK(wedges[0].centre == 0);
    CHECK(wedges[0].outside == Approx(1.9 * (27 * pi / 180 - 2 * std::asin(0.4 / 1.9))));
}

TEST_CASE("pieces: the back of a niche as its header reckons it") {
    OpeningForm niche;
    niche.id = "shelf";
    Ring ring;
    ring.inside_radius = 1.5;
    ring.outside_radius = 1.9;
    const Piece back = niche_back(niche, 0.3, 1.75, ring, {});
    CHECK(back.longest == Approx(0.60252).margin(1e-5));
    // By Simpson's rule on the width.
    double area = 0;
    constexpr int parts = 200;
    for (int i = 0; i <= parts; ++i) {
        const double y = -0.3 + 0.6 * i / parts;
        area += (i == 0 || i == parts ? 1
                 : i % 2 == 1         ? 4
                                      : 2) *
                (std::sqrt(1.9 * 1.9 - y * y) - 1.75);
    }
    CHECK(back.fill_volume == Approx(area * 0.6 / parts / 3).epsilon(1e-9));
}

TEST_CASE("pieces: a fan's bags climb its outer curve") {
    OpeningForm form = make_opening_form(opening("door", 0, 32, 0, 60, HeadKind::round));
    form.fan_depth = 15;
    const Fan fan = *make_fan(form, 15, 9);
    REQUIRE(fan.count == 7);
    for (int i = 0; i <= 3; ++i) // a semicircle of radius 31 in seven parts
        CHECK(fan_corner(form, fan, i) == Approx(31 * std::sin(i * pi / 7)).margin(1e-12));
    CHECK(6 * fan_bag_area(fan, false) + fan_bag_area(fan, true) ==
          Approx(pi / 2 * (31 * 31 - 16 * 16)));
    CHECK(fan_bag_area(fan, true) == Approx(fan_bag_area(fan, false)));
}

TEST_CASE("pieces: every bag of a fan lies in one course, its keystone in the last") {
    const BuildingPlan plan = demo_plan("home.toml");
    REQUIRE_FALSE(plan.schedule.fans.empty());
    for (const Fan& fan : plan.schedule.fans) {
        std::map<std::string, int> course_of;
        double fill = 0;
        int last = 0;
        for (const Course& course : plan.schedule.courses)
            for (const Ring& ring : course.rings)
                for (const Piece& piece : ring.pieces)
                    if (of_fan(piece) && piece.of == fan.opening) {
                        CHECK(course_of.emplace(piece.id, course.number).second);
                        last = std::max(last, course.number);
                        fill += piece.fill_volume;
                        const double section =
                            stadium_area(ring.width, plan.schedule.course_height);
                        CHECK(piece.length * section == Approx(piece.fill_volume));
                        CHECK(piece.cut_length ==
                              Approx(piece.length + 2 * plan.design.course.end_allowance));
                    }
        CHECK(static_cast<int>(course_of.size()) == fan.count);
        CHECK(fill == Approx(fan.fill_volume));
        CHECK(course_of.at("FK") == last);
        CHECK(course_of.at("F1L") == fan.set_before_course);
        CHECK(course_of.at("F1R") == fan.set_before_course);
    }
}

TEST_CASE("pieces: gaps, runs and wedges make up every ring, and each end has its cut") {
    int wedges = 0;
    for (const std::string& name : demo_files()) {
        const BuildingPlan plan = demo_plan(name);
        const BuildingForm& building = plan.schedule.building;
        for (const Course& course : plan.schedule.courses)
            for (const Ring& ring : course.rings) {
                if (ring.kind == RingKind::cap)
                    continue;
                CAPTURE(name, course.number, ring.dome);
                const auto gaps = gaps_in_ring(building, *find_dome(building, ring.dome),
                                               course.number, Bond::laid);
                double kept = 0, laid = 0;
                std::size_t ends = 0;
                for (const KeptArc& arc : kept_arcs(gaps, ring.centre_radius))
                    kept += (arc.end - arc.start) * radians_per_degree * ring.centre_radius;
                for (const Run& run : ring.runs) {
                    laid += run.length;
                    ends += run.closed ? 0 : 2;
                }
                std::set<std::string> ids;
                for (const Piece& piece : ring.pieces) {
                    CHECK(ids.insert(piece.id + piece.of).second);
                    if (piece.kind != PieceKind::wedge)
                        continue;
                    ++wedges;
                    laid += piece.length;
                    ends += 2;
                    CHECK(piece.length < ring.width / 2);
                    CHECK(piece.cut_length >= piece.length);
                }
                CHECK(laid == Approx(kept).margin(2 * least_wedge));
                CHECK(ring.cuts.size() == ends);
            }
    }
    CHECK(wedges > 0); // else this says nothing of them
}

TEST_CASE("pieces: a niche is closed behind in every course that it cuts") {
    const BuildingPlan plan = demo_plan("home.toml");
    int backs = 0;
    for (const OpeningPlan& opening : plan.schedule.openings) {
        if (opening.form.niche_depth <= 0)
            continue;
        for (const Course& course : plan.schedule.courses)
            for (const Ring& ring : course.rings) {
                const bool cuts =
                    std::any_of(ring.cuts.begin(), ring.cuts.end(),
                                [&](const Cut& cut) { return cut.by == opening.form.id; });
                int found = 0;
                for (const Piece& piece : ring.pieces)
                    found += piece.kind == PieceKind::niche_back && piece.of == opening.form.id;
                CHECK(found == (cuts ? 1 : 0));
                backs += found;
            }
    }
    CHECK(backs > 0);
}

TEST_CASE("order: all that takes tube, by element and type, adds up") {
    for (const std::string& name : demo_files()) {
        CAPTURE(name);
        const BuildingPlan plan = demo_plan(name);
        std::map<std::string, double> by_type; // summed here from what is laid, tube by tube
        double tubes = 0, pieces = 0;
        for (const Course& course : plan.schedule.courses) {
            for (const Ring& ring : course.rings) {
                for (const Run& run : ring.runs)
                    for (const LaidTube& tube : run.tubes) {
                        by_type[ring.tube] += tube.cut_length;
                        tubes += tube.cut_length;
                    }
                for (const Piece& piece : ring.pieces) {
                    by_type[ring.tube] += piece.cut_length;
                    pieces += piece.cut_length;
                }
            }
            for (const Straight& straight : course.straights)
                for (const LaidTube& tube : straight.tubes) {
                    by_type[straight.tube] += tube.cut_length;
                    tubes += tube.cut_length;
                }
        }
        std::map<std::string, double> ordered;
        double of_tubes = 0, of_pieces = 0;
        std::set<std::string> elements;
        for (const TubeOrder& line : plan.schedule.totals.order) {
            ordered[line.tube] += line.cut_length - line.linings;
            of_tubes += line.rings + line.straights + line.cap_bags;
            of_pieces += line.fan_bags + line.niche_backs + line.wedges;
            CHECK(line.cut_length ==
                  Approx(line.rings + line.straights + line.cap_bags + line.fan_bags +
                         line.niche_backs + line.wedges + line.linings));
            elements.insert(line.element);
        }
        CHECK(of_tubes == Approx(plan.schedule.totals.cut_length));
        CHECK(of_tubes == Approx(tubes));
        CHECK(of_pieces == Approx(pieces).margin(1e-12));
        REQUIRE(ordered.size() == by_type.size());
        for (const auto& [type, length] : by_type)
            CHECK(ordered.at(type) == Approx(length));
        for (const Dome& dome : plan.design.domes)
            CHECK(elements.count(dome.id) == 1);
        for (const Tunnel& tunnel : plan.design.tunnels)
            CHECK(elements.count(tunnel.id) == 1);
        for (const Buttress& buttress : plan.design.buttresses)
            CHECK(elements.count(buttress.id) == 1);
    }
}

TEST_CASE("order: gravel courses take their tubes twice") {
    Design design = demo_plan("grain-store.toml").design;
    const auto order = [&] { return plan_building(design, {}).schedule.totals; };
    const Totals once = order();
    REQUIRE(once.order.size() == 1);
    Fill gravel;
    gravel.id = "stone";
    gravel.kind = FillKind::gravel;
    gravel.courses = {1, 2};
    design.fills = {gravel};
    const Totals twice = order();
    const Schedule schedule = plan_building(design, {}).schedule;
    const double two = schedule.courses[0].cut_length + schedule.courses[1].cut_length;
    CHECK(twice.order[0].linings == Approx(two));
    design.fills.clear();
    const Totals none = order();
    CHECK(none.order[0].linings == 0);
    CHECK(twice.order[0].cut_length == Approx(none.order[0].cut_length + two));
    CHECK(twice.cut_length == Approx(none.cut_length)); // totals are of tubes laid
    CHECK(once.cut_length == Approx(none.cut_length));
}
