#include "tests/support/demos.hpp"

#include "geometry/design/read_design.hpp"

#include <fstream>
#include <iterator>
#include <stdexcept>

namespace coilwright::testing {

BuildingPlan demo_plan(const std::string& name) {
    std::ifstream file(COILWRIGHT_SOURCE_DIR "/models/" + name, std::ios::binary);
    const std::string text{std::istreambuf_iterator<char>(file), {}};
    DesignReading reading = read_design(text);
    BuildingPlan plan = plan_building(std::move(reading.design), std::move(reading.diagnostics));
    if (!plan.sound())
        throw std::runtime_error(diagnostic_text(plan.diagnostics.front(), name, text));
    return plan;
}

} // namespace coilwright::testing
