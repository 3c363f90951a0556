// Identifiers that stay: the same name gives the same one, in every export.
#pragma once

#include <array>
#include <cstdint>
#include <string>

namespace coilwright {

using Digest = std::array<std::uint8_t, 20>;
/// SHA-1 (RFC 3174), for names only: "abc" -> a9993e36 4706816a ba3e2571 7850c26c 9cd0d89d.
Digest sha1(const std::string& bytes);

/// The 22 characters of IFC for the UUID of version 5 (RFC 4122) of a part of a design: the name
/// space is the UUID of the design's name in that of URLs, the name the part's.
std::string ifc_guid(const std::string& design_name, const std::string& part);

} // namespace coilwright
