// Membrane forces of any profile against the closed forms of sphere and cone, against equilibrium,
// and against the thrust lines of the same dome.
#include "geometry/base/bearing.hpp"
#include "geometry/statics/membrane.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

MembraneShell closed(const Profile& profile, double skin_weight) {
    return {profile, 0, profile.rise, skin_weight, 0};
}

} // namespace

TEST_CASE("a hemisphere by its profile is the sphere by formula") {
    const MembraneShell shell = closed(round_profile(4), 1000);
    for (const double degrees : {5.0, 30.0, 51.8273, 70.0, 89.0}) {
        CAPTURE(degrees);
        const double phi = degrees * radians_per_degree;
        const MembraneForces formula = spherical_membrane(1000, 4, phi);
        const MembraneForces forces = membrane_forces(shell, 4 * std::cos(phi));
        CHECK(forces.meridional == Approx(formula.meridional).epsilon(1e-9));
        CHECK(forces.hoop == Approx(formula.hoop).epsilon(1e-9).margin(1e-6));
    }
}

TEST_CASE("a cap of a sphere, and a cone, by their profiles") {
    // Segmental: R 5, half-span 3, rise 1.
    const MembraneShell cap = closed(segmental_profile(3, 1), 10);
    const double phi = std::asin(2.0 / 5);
    const MembraneForces formula = spherical_membrane(10, 5, phi);
    const MembraneForces forces = membrane_forces(cap, 5 * std::cos(phi) - 4);
    CHECK(forces.meridional == Approx(formula.meridional).epsilon(1e-9));
    CHECK(forces.hoop == Approx(formula.hoop).epsilon(1e-9));
    // A drawn straight line is a cone of half-angle 30 deg.
    const MembraneShell cone = closed(drawn_profile({{0, 1}, {std::sqrt(3.0), 0}}), 7.2);
    for (const double slant : {0.3, 1.0, 1.9}) {
        CAPTURE(slant);
        const MembraneForces straight =
            membrane_forces(cone, std::sqrt(3.0) - slant * std::cos(pi / 6));
        const MembraneForces expected = conical_membrane(7.2, slant, pi / 6);
        CHECK(straight.meridional == Approx(expected.meridional).epsilon(1e-9));
        CHECK(straight.hoop == Approx(expected.hoop).epsilon(1e-7));
    }
}

TEST_CASE("any profile: the meridian carries all the weight, the hoops its turning") {
    // The vertical part of N_phi around the ring is the weight above; the gain of its horizontal
    // part per radian down the slope is the hoop: here by differences, in the code by the curve's
    // second derivative.
    const Profile profiles[] = {pointed_profile(1.4, 2.8), catenary_profile(2, 3.1),
                                parabola_profile(1.5, 2), segmental_profile(2, 1.2),
                                drawn_profile({{0, 2}, {1, 1.8}, {2, 1.1}, {2.6, 0.4}, {2.8, 0}})};
    for (const Profile& profile : profiles) {
        for (const double offset : {0.0, 0.19}) {
            CAPTURE(word(profile.kind), offset);
            const MembraneShell shell{profile, offset, 0.9 * profile.rise, 3000, 250};
            const auto thrust = [&](double y) { // horizontal, per radian
                const double lean = slope(profile, y);
                return membrane_forces(shell, y).meridional * (half_width(profile, y) + offset) *
                       -lean / std::sqrt(1 + lean * lean);
            };
            for (const double share : {0.05, 0.3, 0.55, 0.8}) {
                const double y = share * profile.rise, d = 1e-5;
                const double lean = slope(profile, y), stretch = std::sqrt(1 + lean * lean);
                const double r = half_width(profile, y) + offset;
                const double skin = surface_between(profile, y, shell.top) +
                                    2 * pi * offset * length_between(profile, y, shell.top);
                const double ring = 2 * pi * (half_width(profile, shell.top) + offset);
                CHECK(membrane_forces(shell, y).meridional * 2 * pi * r / stretch ==
                      Approx(3000 * skin + 250 * ring).epsilon(1e-9));
                const double hoop = (thrust(y - d) - thrust(y + d)) / (2 * d * stretch);
                CHECK(membrane_forces(shell, y).hoop == Approx(hoop).epsilon(1e-4).margin(0.05));
            }
        }
    }
}

TEST_CASE("where the rings turn from compression to tension") {
    const std::optional<double> height = hoop_turns_at(closed(round_profile(3), 100));
    REQUIRE(height);
    CHECK(*height == Approx(3 * (std::sqrt(5.0) - 1) / 2).epsilon(1e-9));
    CHECK_FALSE(hoop_turns_at(closed(segmental_profile(3, 1), 100))); // 36.9 deg: all compression
    CHECK_FALSE(hoop_turns_at(closed(drawn_profile({{0, 1}, {2, 0}}), 100))); // nor a cone's
    // The steeper a pointed dome, the lower it turns, as a share of its rise.
    const std::optional<double> pointed = hoop_turns_at(closed(pointed_profile(3, 6), 100));
    REQUIRE(pointed);
    CHECK(*pointed / 6 < *height / 3);
}

TEST_CASE("a laid dome's membrane is that of the smooth shell of the same weight") {
    Design design = store_design();
    design.openings.clear();
    design.domes[0].datum.clear();
    design.course.height /= 8; // thin courses: the steps vanish
    design.course.foundation = 0;
    design.tubes[0].lay_flat = 0.4;
    design.tubes[0].tamped_width = 0.381;
    const BuildingForm building = make_building_form(design);
    const DomeForm& dome = building.domes[0];
    const std::vector<WallCourse> courses = dome_courses(design, building, dome);
    const std::vector<CourseMembrane> laid = dome_membrane(dome, courses);
    // Load by closed form: density x section per metre of height, by Pappus, and the cap's weight.
    double cap = 0;
    for (const WallCourse& course : courses)
        cap += course.cap ? course.weight : 0;
    int compared = 0;
    for (const CourseMembrane& row : laid) {
        const WallCourse& course = courses[static_cast<std::size_t>(row.course - 1)];
        const double y = course.bottom - dome.springline, lean = slope(dome.profile, y);
        if (y < 0.05 || y > 2.4)
            continue;
        double volume = 0; // of the wall above, per radian: w times the integral of (x + w/2) dy
        const double top = dome.course_bottom(dome.last_ring + 1) - dome.springline;
        volume += 0.381 * (area_between(dome.profile, y, top) / 2 + 0.381 / 2 * (top - y));
        const double load = cap + 1762 * 9.80665 * volume;
        const double stadium_loss = 0.99; // rounds of a thin tube, less than this
        CHECK(row.thrust < load * -lean * 1.001);
        CHECK(row.thrust > load * -lean * stadium_loss);
        ++compared;
    }
    CHECK(compared > 50);
}

TEST_CASE("membrane thrust lies between the least and the greatest of the wedges") {
    // Where the rings are compressed and the membrane lies inside the wall, it is one of the states
    // that the linear program chooses from.
    for (const double rise : {80.0, 108.0, 140.0}) {
        CAPTURE(rise);
        Design design = store_design();
        design.openings.clear();
        design.domes[0].datum.clear();
        design.domes[0].profile.rise = rise * metres_per_inch;
        const BuildingForm building = make_building_form(design);
        const DomeForm& dome = building.domes[0];
        const std::vector<WallCourse> courses = dome_courses(design, building, dome);
        int compared = 0;
        double pressed_from = 0; // rings in compression down to this course
        for (const CourseMembrane& row : dome_membrane(dome, courses))
            if (row.forces.hoop < 0)
                pressed_from = row.course;
        for (const CourseMembrane& row : dome_membrane(dome, courses)) {
            if (row.course <= pressed_from || row.course >= dome.last_ring - 1)
                continue;
            DomeSlice what;
            what.first = row.course;
            const int end = joint_under(courses, what, row.course);
            const Slice slice = dome_slice(courses, what);
            const ThrustLine least = least_thrust(slice, end), most = greatest_thrust(slice, end);
            REQUIRE(least.stands);
            const auto j = static_cast<std::size_t>(end);
            CHECK(least.joints[j].thrust() <= row.thrust);
            CHECK(row.thrust <= most.joints[j].thrust());
            ++compared;
        }
        CHECK(compared >= 3);
    }
}
