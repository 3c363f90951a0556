#include "geometry/design/works.hpp"

#include <algorithm>

namespace coilwright {

namespace {

template <typename List>
auto find_in(const List& list, const std::string& id) {
    const auto found =
        std::find_if(list.begin(), list.end(), [&](const auto& one) { return one.id == id; });
    return found == list.end() ? nullptr : &*found;
}

} // namespace

Works default_works() {
    Works works;
    // Loose densities: cement 94 lb to a cubic foot and lime 40 pcf (ASTM C270), damp loose sand 80
    // pcf (ASTM C270); the others are common practice, no source.
    works.materials = {{"cement", {}, 1505.74, true}, {"gravel", {}, 1600, false},
                       {"lime", {}, 640.74, true},    {"sand", {}, 1281.48, false},
                       {"soil", {}, 1200, false},     {"straw", {}, 100, true}};
    // Parts by volume: common practice, no source.
    works.mixes = {
        {"cement", {}, {{"cement", 1}, {"lime", 0.25}, {"sand", 4}}, {}},
        {"concrete", {}, {{"cement", 1}, {"gravel", 3}, {"sand", 2}}, 0.67},
        {"earth", {}, {{"sand", 2}, {"soil", 1}, {"straw", 0.5}}, {}},
        {"lime", {}, {{"lime", 1}, {"sand", 3}}, {}},
        {"lime-cement", {}, {{"cement", 1}, {"lime", 1}, {"sand", 6}}, {}},
        {"soil-cement", {}, {{"cement", 1}, {"soil", 10}}, {}},
    };
    return works;
}

const Mix* find_mix(const Works& works, const std::string& id) {
    return find_in(works.mixes, id);
}

const MixMaterial* find_material(const Works& works, const std::string& id) {
    return find_in(works.materials, id);
}

const std::vector<std::string>& price_items() {
    static const std::vector<std::string> items{
        "anchor-plate", "cement",        "door-leaf", "drain-pipe", "floor-fill", "form-sheet",
        "form-timber",  "frame",         "glass",     "gravel",     "hoop",       "labour",
        "lime",         "lintel-timber", "membrane",  "paint",      "sand",       "sleeve-pipe",
        "soil",         "straw",         "water",     "wire"};
    return items;
}

std::string word(WallSide side) {
    return side == WallSide::inside ? "inside" : "outside";
}

std::string word(PriceUnit unit) {
    switch (unit) {
    case PriceUnit::pack:
        return "pack";
    case PriceUnit::piece:
        return "piece";
    case PriceUnit::metre:
        return "m";
    case PriceUnit::foot:
        return "ft";
    case PriceUnit::square_metre:
        return "m2";
    case PriceUnit::square_foot:
        return "sq ft";
    case PriceUnit::cubic_metre:
        return "m3";
    case PriceUnit::cubic_yard:
        return "cu yd";
    case PriceUnit::kilogram:
        return "kg";
    case PriceUnit::pound:
        return "lb";
    case PriceUnit::tonne:
        return "t";
    case PriceUnit::litre:
        return "l";
    case PriceUnit::gallon:
        return "gal";
    case PriceUnit::hour:
        return "hour";
    case PriceUnit::day:
        return "day";
    }
    return {};
}

} // namespace coilwright
