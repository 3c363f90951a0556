// Soil, stabiliser and mixes against published values.
#include "geometry/base/quantity.hpp"
#include "geometry/design/works.hpp"
#include "geometry/takeoff/mixing.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace coilwright;

namespace {

constexpr double foot = metres_per_foot, cubic_foot = foot * foot * foot,
                 pound = kilograms_per_pound;
constexpr double pcf = pound / cubic_foot;

} // namespace

TEST_CASE("cement of a cubic yard of soil") {
    // Reckoned from the bag of 94 lb (ASTM C150): 5 % of 120 pcf -> 1.7234 bags, 10 % -> 3.4468.
    for (const auto& [ratio, bags] : {std::pair(0.05, 1.7234), std::pair(0.10, 3.4468)})
        CHECK(stabiliser_by_dry_mass(27 * cubic_foot, 120 * pcf, ratio) / (94 * pound) ==
              Approx(bags).margin(5e-5));
}

TEST_CASE("swell and shrinkage") {
    // FHWA 2007, Church 1981: loose = bank (1 + s), bank = compacted / (1 - k): 1.3889.
    const SoilVolumes volumes = soil_volumes(1, SoilData{});
    CHECK(volumes.loose == Approx(1.3889).margin(5e-5));
    CHECK(volumes.bank == Approx(1 / 0.9));
}

TEST_CASE("buckets and barrows") {
    // A US gallon is 231 cubic inches: 5 of them are 0.66840 cu ft.
    CHECK(PackSizes{}.bucket / cubic_foot == Approx(0.66840).margin(5e-6));
    CHECK(PackSizes{}.barrow / cubic_foot == Approx(6).epsilon(1e-7));
    CHECK(PackSizes{}.spool / foot == Approx(1320)); // ASTM A121
    CHECK(PackSizes{}.cement_bag / pound == Approx(94));
    CHECK(PackSizes{}.lime_bag / pound == Approx(50));
}

TEST_CASE("by volume a share of the loose soil") {
    // Ten buckets of soil to one of cement, a bucket of cement weighing 62.83 lb at 94 pcf.
    const double bucket = PackSizes{}.bucket;
    CHECK(stabiliser_by_volume(10 * bucket, 0.1, 94 * pcf) / pound ==
          Approx(0.66840 * 94).margin(1e-3));
}

TEST_CASE("a mix of parts by volume") {
    const Works works = default_works();
    const auto shares = mix_shares(*find_mix(works, "lime"), 3, works);
    REQUIRE(shares.size() == 2);
    // Lime putty fills the voids of the sand: 3 m3 of plaster hold 3 m3 of sand and 1 of lime.
    CHECK(shares[0].material == "lime");
    CHECK(shares[0].volume == Approx(1));
    CHECK(shares[0].mass / pound == Approx(40 * 35.31467).epsilon(1e-5)); // 40 pcf, ASTM C270
    CHECK(shares[1].volume == Approx(3));
    CHECK(shares[1].mass / shares[1].volume / pcf == Approx(80).epsilon(1e-5)); // ASTM C270
    Mix lean{"lean", {}, {{"cement", 1}, {"sand", 5}}, 0.5};
    CHECK(mix_shares(lean, 1, works)[0].volume == Approx(1 / 0.5 / 6));
    // Every mix that is built in can be mixed, and its parts give back its wet volume.
    for (const Mix& mix : works.mixes) {
        double loose = 0;
        for (const MixShare& share : mix_shares(mix, 1, works)) {
            CHECK(share.mass > 0);
            loose += share.volume;
        }
        CHECK(loose * mix_yield(mix, works) == Approx(1));
    }
}

TEST_CASE("bags are whole") {
    const auto bags = bag_counts("cement", 1000 * pound);
    REQUIRE(bags.size() == 4);
    CHECK(bags[0].count == 11); // 10.64 of 94 lb
    CHECK(bags[1].count == 12); // 11.11 of 90 lb
    CHECK(bags[2].count == 10); // 9.07 of 50 kg
    CHECK(bags[3].count == 19); // 18.14 of 25 kg
    CHECK(bag_counts("lime", 100 * pound).front().count == 2);
    CHECK(whole_packs(3 + 1e-9, 1) == 3);
    CHECK(whole_packs(0, 1) == 0);
}

TEST_CASE("packs without number stay within an int") {
    CHECK(whole_packs(1e30, 1e-3) == std::numeric_limits<int>::max());
    CHECK(whole_packs(0, 1) == 0);
}
