// Any bytes as a length or an area: a fault, or a finite value that is read again as it is shown.
#include "geometry/base/length.hpp"
#include "tests/fuzz/must.hpp"

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string_view>

using namespace coilwright;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    for (const DisplayUnit unit : {DisplayUnit::feet, DisplayUnit::metres}) {
        const LengthReading length = read_length(text, unit);
        if (length.fault.empty()) {
            MUST(std::abs(length.value) <= 10000);
            // To the nearest 1/8 in, or whole millimetre, as shown.
            const LengthReading again = read_length(length_text(length.value, unit), unit);
            MUST(again.fault.empty() || std::abs(length.value) > 9999);
            MUST(!again.fault.empty() || std::abs(again.value - length.value) < 0.0016);
        }
        const LengthReading area = read_area(text, unit);
        MUST(!area.fault.empty() || std::isfinite(area.value));
    }
    return 0;
}
