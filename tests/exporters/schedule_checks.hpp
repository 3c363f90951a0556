// A schedule as written held to the schedule as laid, value by value.
#pragma once

#include "geometry/plan/schedule.hpp"

#include <nlohmann/json.hpp>

namespace coilwright {

using Json = nlohmann::ordered_json;

/// Equal after rounding to 1e-6.
bool same(const Json& written, double value);
bool same_bearing(const Json& written, double value);
bool same_point(const Json& written, const Vec2& point);

/// Rings, straights, outline and notes of one course.
void check_course(const Json& json, const Course& course);
/// Openings, tunnels, buttresses, joins, heads, sleeves and domes of the whole document.
void check_elements(const Json& json, const Schedule& schedule);

} // namespace coilwright
