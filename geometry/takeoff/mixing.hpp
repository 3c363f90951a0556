// From parts by volume to what goes into the mixer.
#pragma once

#include "geometry/design/works.hpp"

#include <string>
#include <vector>

namespace coilwright {

struct MixShare {
    std::string material;
    double volume = 0; // m3 loose, as in buckets
    double mass = 0;   // kg
};

/// Wet volume over the sum of the loose parts: as stated, else the parts that are no binder, since
/// binders and straw fill the voids of the others (common practice). Lime 1, sand 3 -> 0.75.
double mix_yield(const Mix& mix, const Works& works);

/// What gives `wet` m3 of a mix, by material in the order of names. Lime 1 : sand 3, 3 m3 -> 1 m3
/// of lime (640.74 kg at 40 pcf) and 3 m3 of sand. Precondition: its materials are known and its
/// yield is above 0.
std::vector<MixShare> mix_shares(const Mix& mix, double wet, const Works& works);

/// How many whole bags hold a mass; a millionth of a bag too much does not take another. No
/// more than an int holds.
int whole_packs(double amount, double pack);

/// Bags that the trade sells, and how many of each hold a mass of cement or lime.
struct BagCount {
    std::string name; // "94 lb"
    double mass = 0;  // kg
    int count = 0;
};
std::vector<BagCount> bag_counts(const std::string& material, double mass);

/// Mass of stabiliser for a tamped volume by its share of the dry soil's mass: 1 yd3 at 120 pcf dry
/// and 5 % -> 162 lb, 1.7234 bags of 94 lb.
double stabiliser_by_dry_mass(double tamped, double dry_density, double ratio);
/// By its share of the loose soil's volume.
double stabiliser_by_volume(double loose, double ratio, double loose_density);

struct SoilVolumes {
    double tamped = 0, bank = 0, loose = 0;
};
/// bank = tamped / (1 - shrink), loose = bank (1 + swell): 1 m3 tamped, 0.25, 0.10 -> 1.3889 m3
/// loose (FHWA 2007; Church 1981).
SoilVolumes soil_volumes(double tamped, const SoilData& soil);

} // namespace coilwright
