// Appending numbers to a file in memory, the same on every machine and in every locale.
#pragma once

#include <cstdint>
#include <string>

namespace coilwright {

/// Little-endian, whatever the machine's own order.
void append_u16(std::string& bytes, std::uint16_t value);
void append_u32(std::string& bytes, std::uint32_t value);
/// IEEE 754 single precision, little-endian.
void append_f32(std::string& bytes, float value);

/// A count of 10^-decimals as a decimal number: (-1500, 3) -> "-1.500", (0, 2) -> "0.00".
/// Precondition: 1 <= decimals <= 18.
void append_decimal(std::string& text, std::int64_t value, int decimals);

/// One line for a comment: control characters become spaces.
std::string comment_line(const std::string& text);

} // namespace coilwright
