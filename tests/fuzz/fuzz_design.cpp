// Any bytes as a design: refused with diagnostics that can be shown, or laid with every promise of
// a schedule kept.
#include "geometry/design/read_design.hpp"
#include "geometry/plan/plan_building.hpp"
#include "tests/fuzz/must.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string>

using namespace coilwright;

namespace {

bool is_length(double value) {
    return std::isfinite(value) && value >= 0;
}

void check_diagnostics(const std::vector<Diagnostic>& diagnostics, const std::string& text) {
    const int lines = 1 + static_cast<int>(std::count(text.begin(), text.end(), '\n'));
    for (const Diagnostic& diagnostic : diagnostics) {
        MUST(!diagnostic.code.empty() && !diagnostic.message.empty());
        MUST(diagnostic.place.line >= 0 && diagnostic.place.line <= lines);
        MUST(diagnostic_text(diagnostic, "x", text).size() < 4000);
    }
}

void check_run(const Run& run) {
    MUST(is_length(run.length) && run.length > 0);
    MUST(run.end_bearing > run.start_bearing);
    MUST(run.end_bearing - run.start_bearing < 360 + 1e-9);
    double tubes = 0;
    for (const LaidTube& tube : run.tubes) {
        MUST(is_length(tube.length) && tube.length > 0);
        MUST(std::isfinite(tube.cut_length) && tube.cut_length >= tube.length - 1e-9);
        tubes += tube.length;
    }
    MUST(std::abs(tubes - run.length) < 1e-6 * std::max(1.0, run.length));
}

void check_schedule(const Schedule& schedule) {
    MUST(!schedule.courses.empty());
    MUST(schedule.totals.courses == static_cast<int>(schedule.courses.size()));
    double wall = 0;
    for (const Course& course : schedule.courses) {
        MUST(std::isfinite(course.bottom) && course.top > course.bottom);
        MUST(is_length(course.wall_area) && is_length(course.fill_volume));
        MUST(is_length(course.wire_length) && course.cut_length >= course.tube_length - 1e-9);
        wall += course.wall_area * (course.top - course.bottom); // measured tops may differ
        for (const Ring& ring : course.rings) {
            MUST(is_length(ring.inside_radius) && ring.outside_radius > ring.inside_radius);
            for (const Cut& cut : ring.cuts) {
                MUST(cut.inside_bearing >= 0 && cut.inside_bearing < 360);
                MUST(is_length(cut.inside_arc_from_datum) && is_length(cut.chord));
            }
            if (ring.kind == RingKind::ring) {
                std::for_each(ring.runs.begin(), ring.runs.end(), check_run);
            }
        }
    }
    MUST(std::abs(wall - schedule.totals.wall_volume) < 1e-6 * std::max(1.0, wall));
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string text(reinterpret_cast<const char*>(data), size);
    DesignReading reading = read_design(text);
    check_diagnostics(reading.diagnostics, text);
    const BuildingPlan plan =
        plan_building(std::move(reading.design), std::move(reading.diagnostics));
    if (plan.sound()) {
        check_schedule(plan.schedule);
    } else {
        check_diagnostics(plan.diagnostics, text);
        MUST(plan.schedule.courses.empty());
    }
    return 0;
}
