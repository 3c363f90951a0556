#include "exporters/png.hpp"

#include <zlib.h>

#include <stdexcept>

namespace coilwright {
namespace {

void append_big_endian(std::string& bytes, std::uint32_t value) {
    for (int shift = 24; shift >= 0; shift -= 8)
        bytes += static_cast<char>((value >> shift) & 255);
}

std::string chunk(const std::string& kind, const std::string& data) {
    std::string bytes;
    append_big_endian(bytes, static_cast<std::uint32_t>(data.size()));
    const std::string checked = kind + data;
    bytes += checked;
    append_big_endian(
        bytes, static_cast<std::uint32_t>(crc32(0, reinterpret_cast<const Bytef*>(checked.data()),
                                                static_cast<uInt>(checked.size()))));
    return bytes;
}

} // namespace

std::string png_of(const Pixels& pixels) {
    const auto row = static_cast<std::size_t>(pixels.width) * 3;
    if (pixels.width < 1 || pixels.height < 1 ||
        pixels.values.size() != row * static_cast<std::size_t>(pixels.height))
        throw std::runtime_error("A picture must have a size.");
    // Each row as its difference from the one above (filter 2): smooth shades pack well.
    std::string raw;
    raw.reserve((row + 1) * static_cast<std::size_t>(pixels.height));
    for (std::size_t y = 0; y < static_cast<std::size_t>(pixels.height); ++y) {
        raw += static_cast<char>(y == 0 ? 0 : 2);
        for (std::size_t i = 0; i < row; ++i) {
            const int above = y == 0 ? 0 : pixels.values[(y - 1) * row + i];
            raw += static_cast<char>(pixels.values[y * row + i] - above);
        }
    }
    uLongf size = compressBound(static_cast<uLong>(raw.size()));
    std::string packed(size, '\0');
    if (compress2(reinterpret_cast<Bytef*>(packed.data()), &size,
                  reinterpret_cast<const Bytef*>(raw.data()), static_cast<uLong>(raw.size()),
                  6) != Z_OK)
        throw std::runtime_error("A picture could not be packed.");
    packed.resize(size);
    std::string head;
    append_big_endian(head, static_cast<std::uint32_t>(pixels.width));
    append_big_endian(head, static_cast<std::uint32_t>(pixels.height));
    head += std::string("\x08\x02\x00\x00\x00", 5); // 8 bits, red green blue
    return "\x89PNG\r\n\x1a\n" + chunk("IHDR", head) + chunk("sRGB", std::string(1, '\0')) +
           chunk("IDAT", packed) + chunk("IEND", "");
}

} // namespace coilwright
