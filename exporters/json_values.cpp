#include "exporters/json_values.hpp"

#include <cmath>

namespace coilwright {
namespace {

double rounded(double value) {
    // Beyond 2^53 millionths a double has no digit left to round.
    if (std::abs(value) >= 9e9)
        return value;
    const double millionths = std::round(value * 1e6);
    return millionths == 0 ? 0 : millionths / 1e6;
}

Json optional_number(const std::optional<double>& value) {
    return value ? json_number(*value) : Json(nullptr);
}

} // namespace

Json json_number(double value) {
    return std::isfinite(value) ? Json(rounded(value)) : Json(nullptr);
}

Json json_bearing(Bearing bearing) {
    const double degrees = rounded(turned_into_circle(bearing.degrees));
    return degrees >= 360 ? Json(0.0) : json_number(degrees);
}

Json json_point(const Vec2& point) {
    return {json_number(point.x()), json_number(point.y())};
}

namespace {

Json json_change(const DesignChange& change) {
    Json worsens = Json::array();
    for (const SideEffect& effect : change.worsens)
        worsens.push_back({{"code", effect.code},
                           {"subject", effect.subject},
                           {"verdict", verdict_text(effect.verdict)}});
    return {{"table", change.table},
            {"key", change.key},
            {"replaces", change.replaces},
            {"from", json_number(change.from)},
            {"to", json_number(change.to)},
            {"unit", unit_word(change.unit)},
            {"share", json_number(change.share)},
            {"verdict", verdict_text(change.verdict)},
            {"value", optional_number(change.value)},
            {"worsens", std::move(worsens)}};
}

} // namespace

Json json_finding(const Finding& finding) {
    Json json{{"code", finding.code},
              {"subject", finding.subject},
              {"line", finding.place.line},
              {"column", finding.place.column},
              {"verdict", verdict_text(finding.verdict)},
              {"message", finding.message},
              {"value", optional_number(finding.value)},
              {"limit", optional_number(finding.limit)},
              {"unit", unit_word(finding.unit)},
              {"formula", finding.formula},
              {"source", finding.source},
              {"remedy", finding.remedy}};
    if (finding.good)
        json["good"] = json_number(*finding.good);
    return json;
}

Json json_finding(const Finding& finding, const SoughtChanges* sought) {
    Json json = json_finding(finding);
    if (sought) {
        json["changes"] = Json::array();
        for (const DesignChange& change : sought->changes)
            json["changes"].push_back(json_change(change));
    }
    return json;
}

std::string json_text(const Json& document) {
    return document.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace coilwright
