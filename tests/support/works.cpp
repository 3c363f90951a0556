#include "tests/support/works.hpp"

#include "geometry/design/read_works.hpp"

#include <fstream>
#include <iterator>
#include <stdexcept>

namespace coilwright::testing {

Works demo_works(const std::string& name) {
    std::ifstream file(COILWRIGHT_SOURCE_DIR "/models/" + name + ".works", std::ios::binary);
    const std::string text{std::istreambuf_iterator<char>(file), {}};
    WorksReading reading = read_works(text);
    if (!reading.diagnostics.empty())
        throw std::runtime_error(diagnostic_text(reading.diagnostics.front(), name, text));
    return std::move(reading.works);
}

} // namespace coilwright::testing
