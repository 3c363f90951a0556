#include "geometry/plan/room.hpp"

#include "geometry/plan/headroom.hpp"

#include <catch2/catch.hpp>
#include <cmath>

namespace coilwright {
namespace {

DomeForm dome_of(const Profile& profile, double springline) {
    DomeForm form;
    form.id = "vault";
    form.profile = profile;
    form.springline = springline;
    form.course_height = 0.1;
    form.width = 0.3;
    // So many rings that the lid lies at the apex or a little above it.
    form.last_ring = static_cast<int>(std::ceil((springline + profile.rise) / 0.1));
    form.cap_courses = 1;
    form.last_ring_radius = 0.01;
    return form;
}

} // namespace

// Sphere: 2/3 pi r^3 for the half; on a drum of height s pi r^2 s more.
TEST_CASE("the room of a round dome is a half sphere on a cylinder") {
    const double exact = pi * 1.5 * 1.5 * 0.8 + 2.0 / 3 * pi * 1.5 * 1.5 * 1.5;
    const DomeForm form = dome_of(round_profile(1.5), 0.8);
    double last = 1;
    for (const double tolerance : {0.01, 0.001, 0.0001}) {
        const auto chain = clear_room_curve(form, 0, tolerance);
        CHECK(chain.front().x() == 0);
        CHECK(chain.back().y() == 0);
        CHECK(chain.back().x() == Approx(1.5));
        const double off = std::abs(revolved_volume(chain) - exact);
        // A strip as thick as the tolerance over the whole face, at most.
        CHECK(off <= tolerance * (2 * pi * 1.5 * 1.5 + 2 * pi * 1.5 * 0.8));
        CHECK(off < last);
        last = off;
    }
}

TEST_CASE("the room's edge lies on the plaster's face, within the tolerance") {
    const DomeForm form = dome_of(pointed_profile(1.3716, 2.7432), 0.508);
    const double plaster = 0.0381, tolerance = 0.001;
    const auto chain = clear_room_curve(form, plaster, tolerance);
    for (std::size_t k = 1; k < chain.size(); ++k) {
        CHECK(chain[k].y() <= chain[k - 1].y());
        for (int i = 1; i < 8; ++i) {
            const Vec2 on = chain[k - 1] + i / 8.0 * (chain[k] - chain[k - 1]);
            const double height = clear_height_at(form, plaster, on.x());
            const double radius = clear_radius_at(form, plaster, on.y());
            // Near in height or in radius: the face is steep in one and flat in the other.
            CHECK(std::min(std::abs(height - on.y()), std::abs(radius - on.x())) <= tolerance);
        }
    }
    CHECK(revolved_volume({{0, 2}, {1, 2}, {1, 0}}) == Approx(2 * pi));
    CHECK(revolved_volume({{0, 3}, {1, 0}}) == Approx(pi));
}

} // namespace coilwright
