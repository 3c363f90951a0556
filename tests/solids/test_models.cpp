// The two models of a building from its schedule: parts, names, places and volumes.
#include "geometry/plan/lay.hpp"
#include "geometry/plan/section.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "geometry/solids/placement.hpp"
#include "geometry/solids/solid_model.hpp"
#include "tests/solids/sample_domes.hpp"
#include "tests/solids/wall_truth.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <regex>
#include <set>

using namespace coilwright;

namespace {

SampleDome sample() {
    SampleDome sample;
    sample.openings = one_of_each_head();
    return sample;
}

double total(const SolidModel& model) {
    double volume = 0;
    for (const SolidPart& part : model.parts)
        volume += part.volume;
    return volume;
}

const Course& course_of(const Schedule& schedule, const SolidPart& part) {
    return schedule.courses.at(part.course - 1);
}

} // namespace

TEST_CASE("the shell is one proven part a dome, where the design has it") {
    Design design = design_of(sample());
    design.domes.front().at = {12.5, -3.25};
    const Schedule schedule = lay(design);
    const SolidResult result = shell_model(schedule);
    REQUIRE(result.faults.empty());
    CHECK(result.model.name == "Sample");
    REQUIRE(result.model.parts.size() == 1);
    const SolidPart& wall = result.model.parts.front();
    CHECK(wall.slug == "VAULT");
    CHECK(wall.group.empty());
    CHECK(wall.material == Material::earth);
    CHECK(wall.volume == volume(wall.mesh));
    const Bounds box = bounds(wall.mesh);
    const double reach = outside_radius(schedule.building.domes.front(), 0);
    CHECK(box.low.x() == Approx(12.5 - reach).margin(0.002));
    CHECK(box.high.y() == Approx(-3.25 + reach).margin(0.002));
    CHECK(box.low.z() == Approx(schedule.building.domes.front().bottom()));
    CHECK(box.high.z() == Approx(schedule.building.domes.front().top()));
}

TEST_CASE("turning and moving a building changes no volume") {
    const double first = total(shell_model(lay(design_of(sample()))).model);
    const double first_courses = total(courses_model(lay(design_of(sample()))).model);
    for (const double degrees : {17.3, 181.77}) {
        SampleDome turned = sample();
        turned.datum = degrees;
        Design design = design_of(turned);
        design.domes.front().at = {-4.4, 2.7};
        const SolidResult shell = shell_model(lay(design)), courses = courses_model(lay(design));
        CHECK(shell.faults.empty());
        CHECK(courses.faults.empty());
        CHECK(total(shell.model) == Approx(first).epsilon(1e-9));
        CHECK(total(courses.model) == Approx(first_courses).epsilon(1e-9));
    }
}

TEST_CASE("an opening stands on its bearing") {
    SampleDome one;
    one.openings = {sample_opening("door", HeadKind::square, 0, 0.8, 0, 1.8)};
    one.datum = 120; // clockwise from north: to the south-east
    const SolidResult result = shell_model(lay(design_of(one)));
    REQUIRE(result.faults.empty());
    // The sill's middle: no corner of the mesh above it, on that bearing, is below the head.
    const Vec2 toward(std::sin(120 * radians_per_degree), std::cos(120 * radians_per_degree));
    for (const Vec3& v : result.model.parts.front().mesh.vertices) {
        const double along = v.head<2>().dot(toward);
        const double across = v.x() * toward.y() - v.y() * toward.x();
        const bool in_the_way =
            along > 0 && std::abs(across) < 0.4 - 1e-9 && v.z() > 1e-9 && v.z() < 1.8 - 1e-9;
        CHECK_FALSE(in_the_way);
    }
}

TEST_CASE("every tube and cap of every course is a part of its own, in groups") {
    SampleDome whole;
    const Schedule schedule = lay(design_of(whole));
    const SolidResult result = courses_model(schedule);
    REQUIRE(result.faults.empty());
    std::size_t expected = 0;
    for (const Course& course : schedule.courses)
        for (const Ring& ring : course.rings) {
            expected += ring.kind == RingKind::cap;
            for (const Run& run : ring.runs)
                expected += ring.kind == RingKind::ring ? run.tubes.size() : 0;
        }
    CHECK(result.model.parts.size() == expected);
    CHECK(result.model.groups.size() == 1 + schedule.courses.size());
    CHECK(result.model.groups.front().slug == "VAULT");
    std::set<std::string> names, groups;
    for (const SolidGroup& group : result.model.groups) {
        CHECK((group.parent.empty() || groups.count(group.parent) == 1));
        groups.insert(group.slug);
        names.insert(group.slug);
    }
    const std::regex legal("[A-Z][A-Z0-9_]{0,30}");
    for (const SolidPart& part : result.model.parts) {
        CAPTURE(part.slug);
        CHECK(std::regex_match(part.slug, legal));
        CHECK(names.insert(part.slug).second);
        CHECK(groups.count(part.group) == 1);
        const Course& course = course_of(schedule, part);
        CHECK(part.compass_radius == course.rings.front().inside_radius);
        const Bounds box = bounds(part.mesh);
        CHECK(box.low.z() == Approx(course.bottom).margin(1e-9));
        CHECK(box.high.z() == Approx(course.top).margin(1e-9));
        CHECK(check_mesh(part.mesh, true).components == 1);
    }
    CHECK(names.count("VAULT_C07") == 1);
    CHECK(names.count("VAULT_C07_T1") == 1);
}

TEST_CASE("a full ring of one tube is a body without ends, others have them") {
    SampleDome plain;
    Design design = design_of(plain);
    design.course.longest_tube = 30;
    const Schedule schedule = lay(design);
    const SolidResult result = courses_model(schedule);
    REQUIRE(result.faults.empty());
    const SolidPart& ring = result.model.parts.front();
    CHECK(ring.mesh.vertices.size() == ring.mesh.triangles.size() / 2); // genus 1
    design.course.longest_tube = 5;
    const SolidResult cut = courses_model(lay(design));
    const SolidPart& piece = cut.model.parts.front();
    CHECK(piece.mesh.vertices.size() == piece.mesh.triangles.size() / 2 + 2); // genus 0
}

TEST_CASE(
    "the tubes' volumes are the schedule's fill, from below, closer as the tolerance shrinks") {
    // Fill counts the stadium along the centreline (Pappus), rings exactly so; cuts at openings are
    // square to the opening instead, which takes some from the outside and gives some inside.
    SampleDome plain;
    const Schedule schedule = lay(design_of(plain));
    double rings = 0, caps = 0;
    const DomeForm& form = schedule.building.domes.front();
    for (const Course& course : schedule.courses)
        for (const Ring& ring : course.rings) {
            const double r = form.course_height / 2, flat = ring.outside_radius - r;
            if (ring.kind == RingKind::ring)
                rings += stadium_area(form.width, form.course_height) * 2 * pi * ring.centre_radius;
            else
                caps += pi * flat * flat * 2 * r +
                        pi * pi * r * r * (flat + 4 * r / (3 * pi)); // flats, and half a torus
        }
    double before = 0;
    for (const double tolerance : {0.008, 0.002, 0.0005}) {
        const SolidResult result = courses_model(schedule, tolerance);
        REQUIRE(result.faults.empty());
        const double off = rings + caps - total(result.model);
        CHECK(off > 0);
        if (before > 0)
            CHECK(before / off == Approx(4).epsilon(0.4));
        before = off;
    }
    CHECK(before < 0.004 * (rings + caps));
}

TEST_CASE("cut tubes keep out of every opening they stop at") {
    const Schedule schedule = lay(design_of(sample()));
    const SolidResult result = courses_model(schedule);
    REQUIRE(result.faults.empty());
    int reached = 0; // corners that stand on a jamb's plane
    for (const SolidPart& part : result.model.parts) {
        if (part.course == 0) // frames and forms stand in the openings
            continue;
        const Course& course = course_of(schedule, part);
        for (const Cut& cut : course.rings.front().cuts) {
            const auto opening =
                std::find_if(schedule.openings.begin(), schedule.openings.end(),
                             [&](const OpeningPlan& plan) { return plan.form.id == cut.by; });
            const double bearing = opening->form.bearing.degrees * radians_per_degree;
            const Vec2 toward(std::sin(bearing), std::cos(bearing));
            for (const Vec3& v : part.mesh.vertices) {
                const double along = v.head<2>().dot(toward);
                const double across = std::abs(v.x() * toward.y() - v.y() * toward.x());
                if (along < 0)
                    continue;
                CHECK(across > cut.half_width - 1e-9);
                reached += std::abs(across - cut.half_width) < 1e-9;
            }
        }
    }
    CHECK(reached > 100);
}

TEST_CASE("tolerances out of bounds are refused with one fault") {
    const Schedule schedule = lay(design_of({}));
    for (const double tolerance :
         {0.0, -1.0, 0.00009, 0.051, std::numeric_limits<double>::quiet_NaN(),
          std::numeric_limits<double>::infinity()}) {
        for (const SolidResult& result :
             {shell_model(schedule, tolerance), courses_model(schedule, tolerance)}) {
            CHECK(result.faults.size() == 1);
            CHECK(result.model.parts.empty());
        }
    }
}

TEST_CASE("a building too large for its tolerance is refused before it is meshed") {
    SampleDome vast;
    vast.diameter = 60;
    vast.rise = 40;
    const SolidResult result = courses_model(lay(design_of(vast)), least_tolerance);
    REQUIRE(result.faults.size() == 1);
    CHECK(result.faults.front().first == "dome.vault");
    CHECK(result.faults.front().message.find("triangles") != std::string::npos);
    CHECK(result.model.parts.empty());
}

TEST_CASE("a dome that cannot be meshed has a fault that names both elements, and no part") {
    SampleDome on_floor;
    on_floor.foundation = 0;
    on_floor.openings = {sample_opening("drain", HeadKind::circle, 40, 0.3, 0, 0.3)};
    const SolidResult result = shell_model(lay(design_of(on_floor)));
    REQUIRE(result.faults.size() == 1);
    CHECK(result.faults.front().first == "opening.drain");
    CHECK(result.faults.front().second == "dome.vault");
    CHECK(result.faults.front().message.find("single point") != std::string::npos);
    CHECK(result.model.parts.empty());
}
