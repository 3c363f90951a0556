// Pictures as PNG, written by hand over zlib.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace coilwright {

/// Rows from the top, each of `width` pixels, red, green and blue; sRGB.
struct Pixels {
    int width = 0, height = 0;
    std::vector<std::uint8_t> values; // 3 width height
};

/// PNG (ISO/IEC 15948), 8 bits a channel, marked as sRGB, without a time. The same pixels give the
/// same bytes with the same zlib. Throws std::runtime_error where the size is none or zlib fails.
std::string png_of(const Pixels& pixels);

} // namespace coilwright
