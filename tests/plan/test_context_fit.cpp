#include "geometry/plan/context_fit.hpp"

#include "geometry/plan/headroom.hpp"

#include <catch2/catch.hpp>
#include <cmath>

namespace coilwright {
namespace {

// A half sphere of radius 2 on a drum of 1: distances to it are known in closed form.
DomeForm round_dome(const std::string& id, const Vec2& at) {
    DomeForm form;
    form.id = id;
    form.at = at;
    form.profile = round_profile(2);
    form.springline = 1;
    form.course_height = 0.1;
    form.width = 0.3;
    form.last_ring = 30;
    form.cap_courses = 1;
    form.last_ring_radius = 0.01;
    return form;
}

PlacedObject box_at(const std::string& id, const Vec3& low, const Vec3& high) {
    PlacedObject object;
    object.id = id;
    for (int k = 0; k < 8; ++k)
        object.corners.emplace_back(k & 1 ? high.x() : low.x(), k & 2 ? high.y() : low.y(),
                                    k & 4 ? high.z() : low.z());
    return object;
}

} // namespace

TEST_CASE("an object's distance to the plaster is that of its nearest corner") {
    const std::vector<DomeForm> domes{round_dome("vault", {10, -5})};
    // On the drum: 2 - sqrt(1.2^2 + 0.5^2) = 0.7. In the sphere: 2 - |corner - centre|.
    ObjectFit fit = object_fit(box_at("low", {8.8, -5.5, 0}, {11.2, -4.5, 0.4}), domes, 0);
    CHECK(fit.dome == "vault");
    CHECK(fit.nearest == Approx(0.7).margin(0.001));
    CHECK(fit.headroom == Approx(1 + std::sqrt(4 - 1.69) - 0.4).margin(0.001));
    fit = object_fit(box_at("high", {9, -6, 0}, {11, -4, 2}), domes, 0);
    CHECK(fit.nearest == Approx(2 - std::sqrt(3.0)).margin(0.001));
    CHECK(fit.headroom == Approx(std::sqrt(2.0) - 1).margin(0.001));
    // With 100 mm of plaster the sphere and the drum are of 1.9 m.
    CHECK(object_fit(box_at("high", {9, -6, 0}, {11, -4, 2}), domes, 0.1).nearest ==
          Approx(1.9 - std::sqrt(3.0)).margin(0.001));
}

TEST_CASE("an object that stands into the plaster has a distance below zero") {
    const std::vector<DomeForm> domes{round_dome("vault", {0, 0})};
    const ObjectFit fit = object_fit(box_at("bed", {-1, 0.5, 0}, {1, 2.3, 0.5}), domes, 0);
    CHECK(fit.nearest == Approx(2 - std::sqrt(1 + 2.3 * 2.3)).margin(0.001));
    CHECK(object_fit(box_at("out", {5, 5, 0}, {6, 6, 1}), domes, 0).dome.empty());
    // A corner in the room is enough to be judged there.
    const ObjectFit across = object_fit(box_at("beam", {1.5, -0.1, 1}, {4, 0.1, 1.2}), domes, 0);
    CHECK(across.dome == "vault");
    CHECK(across.nearest < -2);
}

TEST_CASE("where rooms open to each other their common edge is no wall") {
    const std::vector<DomeForm> domes{round_dome("east", {1.5, 0}), round_dome("west", {-1.5, 0})};
    const ObjectFit fit = object_fit(box_at("table", {-1, -0.4, 0}, {1, 0.4, 0.8}), domes, 0);
    CHECK(fit.nearest > 1);
}

TEST_CASE("findings of context tell what fits, what it hits and what is outside") {
    Schedule schedule;
    schedule.unit = DisplayUnit::metres;
    schedule.building.domes = {round_dome("vault", {0, 0})};
    const auto findings = context_findings(
        {box_at("bed", {-1, -1, 0}, {1, 0, 0.5}), box_at("chair", {0.5, -0.5, 0}, {0.9, -0.1, 0.9}),
         box_at("desk", {-0.5, 0.001, 0}, {0.5, 0.6, 0.75}), box_at("tree", {5, 5, 0}, {6, 6, 4}),
         box_at("shelf", {1.2, 0.5, 0}, {2.2, 0.9, 1.8})},
        schedule, 0.03);
    REQUIRE(findings.size() == 5);
    CHECK(findings[0].verdict == Verdict::fails);
    CHECK(findings[0].message.find("meets the box about chair.") != std::string::npos);
    CHECK(findings[1].message.find("meets the box about bed.") != std::string::npos);
    CHECK(findings[2].verdict == Verdict::holds);
    CHECK(findings[2].subject == "context.desk");
    CHECK(findings[2].value.value() > 0);
    CHECK(findings[3].verdict == Verdict::not_judged);
    CHECK(findings[4].verdict == Verdict::fails);
    CHECK(findings[4].value.value() < 0);
    CHECK(findings[4].message.find("into the plaster of vault") != std::string::npos);
    // The remedy: moved towards the pole by what it says, and a little.
    const double by = -findings[4].value.value() + 0.001;
    const Vec3 inward =
        -by * Vec3(std::cos(std::atan2(0.9, 2.2)), std::sin(std::atan2(0.9, 2.2)), 0);
    PlacedObject moved = box_at("shelf", {1.2, 0.5, 0}, {2.2, 0.9, 1.8});
    for (Vec3& corner : moved.corners)
        corner += inward;
    CHECK(object_fit(moved, schedule.building.domes, 0.03).nearest >= findings[4].value.value());
}

} // namespace coilwright
