// Ten thousand random buildings: too many for the quick suite, so no part of it. The target
// many-buildings runs them and prints what became of them. MESH_EVERY (10) tells which are meshed
// too, TOLERANCE_MM (6) how finely.
#include "geometry/exact/exact_region.hpp"
#include "geometry/plan/check_layout.hpp"
#include "geometry/plan/lay.hpp"
#include "geometry/solids/building_parts.hpp"
#include "geometry/solids/shape_fault.hpp"
#include "tests/solids/building_checks.hpp"
#include "tests/support/effort.hpp"
#include "tests/support/random_buildings.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <iostream>
#include <map>
#include <string>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

void check_tubes(const std::vector<LaidTube>& tubes, double run, double longest) {
    double sum = 0;
    for (const LaidTube& tube : tubes) {
        CHECK(tube.length > 0);
        CHECK(tube.length <= longest + 1e-9);
        CHECK(tube.cut_length >= tube.length - 1e-9);
        sum += tube.length;
    }
    CHECK(sum == Approx(run).epsilon(1e-9).margin(1e-9));
}

/// Runs and gaps partition the circle, tubes sum to runs, areas and volumes add up.
void check_schedule(const Design& design, const Schedule& schedule) {
    double wall = 0;
    for (const Course& course : schedule.courses) {
        CAPTURE(course.number);
        CHECK(course.wall.decided);
        CHECK(course.wall_area == Approx(course.wall.area));
        CHECK(course.wall_area >= 0);
        wall += course.wall_area * (course.top - course.bottom);
        for (const Ring& ring : course.rings) {
            CAPTURE(ring.dome);
            if (ring.kind == RingKind::cap)
                continue;
            double turned = 0;
            for (const Run& run : ring.runs) {
                const double turn = run.end_bearing - run.start_bearing;
                CHECK(turn > 0);
                CHECK(run.length ==
                      Approx(turn * radians_per_degree * ring.centre_radius).margin(1e-9));
                check_tubes(run.tubes, run.length, design.course.longest_tube);
                turned += turn;
            }
            CHECK(turned < 360 + 1e-9);
            for (const Cut& cut : ring.cuts)
                CHECK((cut.inside_bearing >= 0 && cut.inside_bearing < 360));
        }
        for (const Straight& straight : course.straights) {
            CHECK((straight.end - straight.start).norm() == Approx(straight.length));
            check_tubes(straight.tubes, straight.length, design.course.longest_tube);
        }
    }
    CHECK(schedule.totals.wall_volume == Approx(wall));
}

/// Every part is meshed and sound, or refused with the names of its elements.
void mesh_parts(const BuildingForm& building, double tolerance, int& meshed,
                std::map<std::string, int>& not_meshed) {
    for (const BuildingPart& part : building_parts(building)) {
        const auto fault = mesh_building_shell(part.building, tolerance).fault;
        if (!fault) {
            checked_shell(part.building, tolerance, 0.3);
            ++meshed;
            continue;
        }
        CHECK_FALSE(fault->first.empty());
        ++not_meshed[fault_text(fault->kind, fault->first, fault->second)];
    }
}

int from_environment(const char* name, int otherwise) {
    const char* text = std::getenv(name);
    return text ? std::atoi(text) : otherwise;
}

} // namespace

TEST_CASE(
    "random buildings are refused with a diagnostic, or laid and meshed with all promises kept") {
    const int first = from_environment("FIRST_SEED", 1),
              last = from_environment("LAST_SEED", 10000);
    const int mesh_every = std::max(1, from_environment("MESH_EVERY", 10));
    const double tolerance = from_environment("TOLERANCE_MM", 6) / 1000.0;
    int laid = 0, meshed = 0;
    double longest = 0; // seconds
    std::map<std::string, int> refused, not_meshed;
    for (int seed = first; seed <= last; ++seed) {
        CAPTURE(seed);
        const double before = processor_seconds();
        Design design = random_building(static_cast<std::uint64_t>(seed));
        if (seed % 4 == 0)
            design = with_reveals(std::move(design), static_cast<std::uint64_t>(seed));
        if (seed % 4 == 1)
            design =
                with_fans_lintels_and_sleeves(std::move(design), static_cast<std::uint64_t>(seed));
        const std::vector<Diagnostic> faults = check_layout(design);
        if (!faults.empty()) {
            for (const Diagnostic& fault : faults)
                CHECK_FALSE((fault.code.empty() || fault.message.empty() || fault.allowed.empty()));
            ++refused[faults.front().code];
            continue;
        }
        check_schedule(design, lay(design, exact_region));
        ++laid;
        if (seed % mesh_every == 0)
            mesh_parts(make_building_form(design), tolerance, meshed, not_meshed);
        longest = std::max(longest, processor_seconds() - before);
        CHECK(longest < most_seconds_a_building);
    }
    std::cout << "seeds " << first << " to " << last << ": " << laid << " laid, " << meshed
              << " parts meshed; the longest took " << longest << " s, memory reached "
              << peak_megabytes() << " MB; refused by their first fault:\n";
    for (const auto& [code, count] : refused)
        std::cout << "  " << count << "  " << code << '\n';
    std::cout << "parts that could not be meshed:\n";
    for (const auto& [text, count] : not_meshed)
        std::cout << "  " << count << "  " << text << '\n';
    CHECK(peak_megabytes() < most_megabytes);
    CHECK(static_cast<int>(not_meshed.size()) * 100 <= meshed);
    CHECK(laid >= (last - first + 1) / 2);
}
