// Values as every JSON file of ours writes them.
#pragma once

#include "geometry/base/bearing.hpp"
#include "geometry/base/design_change.hpp"
#include "geometry/base/finding.hpp"

#include <nlohmann/json.hpp>
#include <string>

namespace coilwright {

using Json = nlohmann::ordered_json; // keys stay in the order written

/// A number rounded to 1e-6, without "-0"; null if it is not finite.
Json json_number(double value);

/// A bearing in degrees, rounded to 1e-6, in [0, 360) after rounding too: 359.9999999 -> 0.
Json json_bearing(Bearing bearing);

/// [x, y]
Json json_point(const Vec2& point);

Json json_finding(const Finding& finding);
/// With the key `changes` where some were sought.
Json json_finding(const Finding& finding, const SoughtChanges* sought);

/// The document as text: UTF-8 (what is not becomes U+FFFD), two spaces a level, final line break.
std::string json_text(const Json& document);

} // namespace coilwright
