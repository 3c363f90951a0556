#include "geometry/takeoff/mixing.hpp"

#include "geometry/base/quantity.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace coilwright {

double mix_yield(const Mix& mix, const Works& works) {
    if (mix.yield)
        return *mix.yield;
    double all = 0, filling = 0;
    for (const auto& [material, part] : mix.parts) {
        all += part;
        filling += find_material(works, material)->binder ? 0 : part;
    }
    return filling / all;
}

std::vector<MixShare> mix_shares(const Mix& mix, double wet, const Works& works) {
    double all = 0;
    for (const auto& [material, part] : mix.parts)
        all += part;
    std::vector<MixShare> shares;
    for (const auto& [material, part] : mix.parts) {
        const double volume = wet / mix_yield(mix, works) * part / all;
        shares.push_back({material, volume, volume * find_material(works, material)->density});
    }
    return shares;
}

int whole_packs(double amount, double pack) {
    constexpr double most = std::numeric_limits<int>::max();
    return static_cast<int>(std::clamp(std::ceil(amount / pack - 1e-6), 0.0, most));
}

std::vector<BagCount> bag_counts(const std::string& material, double mass) {
    std::vector<BagCount> bags;
    if (material == "lime")
        bags = {{"50 lb", 50 * kilograms_per_pound, 0}, {"25 kg", 25, 0}};
    else
        bags = {{"94 lb", 94 * kilograms_per_pound, 0},
                {"90 lb", 90 * kilograms_per_pound, 0},
                {"50 kg", 50, 0},
                {"25 kg", 25, 0}};
    for (BagCount& bag : bags)
        bag.count = whole_packs(mass, bag.mass);
    return bags;
}

double stabiliser_by_dry_mass(double tamped, double dry_density, double ratio) {
    return tamped * dry_density * ratio;
}

double stabiliser_by_volume(double loose, double ratio, double loose_density) {
    return loose * ratio * loose_density;
}

SoilVolumes soil_volumes(double tamped, const SoilData& soil) {
    const double bank = tamped / (1 - soil.shrink);
    return {tamped, bank, bank * (1 + soil.swell)};
}

} // namespace coilwright
