// Stacks and corbelled domes whose balance is known.
#include "geometry/design/read_design.hpp"
#include "geometry/plan/plan_building.hpp"
#include "geometry/statics/corbel.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>
#include <iterator>

using namespace coilwright;

namespace {

double worst(const std::vector<CorbelCourse>& courses) {
    const std::vector<double> levers = corbel_levers(courses);
    return *std::min_element(levers.begin(), levers.end());
}

/// Equal blocks of length 1, top first by how far each reaches in over the next, the last over the
/// edge of a table at 0; inward is negative.
std::vector<CorbelCourse> stack(const std::vector<double>& reaches) {
    std::vector<CorbelCourse> courses;
    double edge = 0;
    for (std::size_t i = reaches.size(); i-- > 0;) {
        courses.push_back({1, edge - reaches[i] + 0.5, edge});
        edge -= reaches[i];
    }
    return courses;
}

} // namespace

TEST_CASE("harmonic stack: four equal blocks reach 25/24 of their length over the edge") {
    // Any text of statics (reckoned). Each block in turn is pushed under as far as the stack lets
    // it.
    std::vector<double> reaches;
    double sum = 0;
    for (int n = 1; n <= 4; ++n) {
        double stands = 0, falls = 1;
        reaches.push_back(0);
        for (int i = 0; i < 60; ++i) {
            reaches.back() = (stands + falls) / 2;
            (worst(stack(reaches)) >= 0 ? stands : falls) = reaches.back();
        }
        reaches.back() = stands * (1 - 1e-10); // on the edge rounding decides
        sum += stands;
        CHECK(stands == Approx(1.0 / (2 * n)).epsilon(1e-8));
    }
    CHECK(sum == Approx(25.0 / 24).epsilon(1e-8));
    reaches.back() += 0.001;
    CHECK(worst(stack(reaches)) < 0);
}

TEST_CASE("a corbelled dome as a cantilever wedge falls in: it stands by its rings") {
    // Benvenuto & Corradi 1987-90; Rovero & Tonietti 2012-14 (from memory): for each course the sum
    // of W (r_G - r_inner) over the courses above is negative somewhere for every ordinary profile.
    for (const char* const demo : {"grain-store", "washroom", "workshop", "retreat", "home"}) {
        std::ifstream file(std::string(COILWRIGHT_SOURCE_DIR "/models/") + demo + ".toml");
        DesignReading reading = read_design(std::string{std::istreambuf_iterator<char>(file), {}});
        const Design design = reading.design;
        const BuildingPlan plan =
            plan_building(std::move(reading.design), std::move(reading.diagnostics));
        REQUIRE(plan.sound());
        for (const DomeForm& dome : plan.schedule.building.domes) {
            CAPTURE(demo, dome.id);
            const std::vector<WallCourse> courses =
                dome_courses(plan.design, plan.schedule.building, dome);
            CHECK(worst(corbel_courses(courses)) < 0);
            // About the inner faces, as written there, which lie farther in than the flats.
            std::vector<CorbelCourse> at_faces;
            for (const WallCourse& course : courses)
                at_faces.push_back(
                    {course.weight, course.mass_radius,
                     std::max(course.inside,
                              at_faces.empty() ? 0.0 : courses[at_faces.size() - 1].inside)});
            CHECK(worst(at_faces) < 0);
        }
    }
}
