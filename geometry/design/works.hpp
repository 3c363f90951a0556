// The works file: what a site buys, mixes, pays and works by, kept beside the design. One struct a
// table of the file (docs/reference/works-file.md); SI units inside. Defaults are of common
// practice, without a source where none is named, and are printed as assumptions. There is no
// built-in price.
#pragma once

#include "geometry/base/diagnostic.hpp"
#include "geometry/base/length.hpp"
#include "geometry/design/crew.hpp"

#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace coilwright {

/// [soil]: how the fill's soil swells when dug and shrinks when tamped.
struct SoilData {
    double swell = 0.25;          // loose = bank (1 + swell)
    double shrink = 0.10;         // bank = tamped / (1 - shrink)
    double dry_density = 1762.04; // kg/m3 tamped, of fills that state none; 110 pcf
    double moisture = 0.10;       // water to add, share of the dry mass
};

/// [waste]: shares added when buying.
struct WasteShares {
    double tube = 0.05, wire = 0.05, fill = 0.05, stabiliser = 0.05, plaster = 0.10, paint = 0.10,
           timber = 0.10, membrane = 0.10;
};

/// [packs]: what things come in.
struct PackSizes {
    double bucket = 0.018927059;   // m3, 5 US gallons
    double barrow = 0.16990108;    // m3, 6 cu ft
    double cement_bag = 42.637683; // kg, 94 lb
    double lime_bag = 22.6796185;  // kg, 50 lb
    double spool = 402.336;        // m of barbed wire, 1320 ft (ASTM A121)
};

/// [material.NAME]: loose, as it goes into a bucket.
struct MixMaterial {
    std::string id;
    SourcePlace place;   // 0: built in
    double density = 0;  // kg/m3
    bool binder = false; // fills the voids of the others: adds no volume
};

/// [mix.NAME]: parts by volume.
struct Mix {
    std::string id;
    SourcePlace place;
    std::vector<std::pair<std::string, double>> parts; // material, parts; by name
    std::optional<double>
        yield;           // wet volume over the sum of the parts; default: parts that are no binder
    double water = 0.22; // of the wet volume, mixed in; common practice, no source
};

enum class WallSide { inside, outside };

/// [coat.NAME]
struct Coat {
    std::string id;
    SourcePlace place;
    WallSide side = WallSide::inside;
    int order = 1; // 1 goes on first
    double thickness = 0;
    std::string mix;
    double cure_days = 2; // before the next coat
};

/// [paint.NAME]
struct Paint {
    std::string id;
    SourcePlace place;
    WallSide side = WallSide::inside;
    int coats = 2;
    double coverage = 6;    // m2 a litre on a smooth face
    double roughness = 1.3; // true surface over flat surface
    double dry_days = 1;
};

/// What a price is for one of.
enum class PriceUnit {
    pack,
    piece,
    metre,
    foot,
    square_metre,
    square_foot,
    cubic_metre,
    cubic_yard,
    kilogram,
    pound,
    tonne,
    litre,
    gallon,
    hour,
    day
};

/// [price.ITEM]
struct Price {
    std::string item; // code of a take-off item, or "labour"
    SourcePlace place;
    PriceUnit per = PriceUnit::pack;
    double low = 0, likely = 0, high = 0; // in the file's currency
    std::string source, date;
};

/// The whole file.
struct Works {
    int format = 1;
    bool stated = false; // a file was read
    DisplayUnit unit = DisplayUnit::feet;
    std::string currency;
    std::string note; // shown beside every sum: "invented prices of a demo"
    SoilData soil;
    WasteShares waste;
    PackSizes packs;
    std::vector<MixMaterial> materials;
    std::vector<Mix> mixes;
    std::vector<Coat> coats;
    std::vector<Paint> paints;
    std::vector<Price> prices;
    Crew crew;
};

/// The works of a design that has no file: built-in materials and mixes, no price.
Works default_works();

const Mix* find_mix(const Works& works, const std::string& id);
const MixMaterial* find_material(const Works& works, const std::string& id);

/// Codes of take-off items that may be priced, but for "tube-NAME".
const std::vector<std::string>& price_items();
std::string word(WallSide side);
std::string word(PriceUnit unit);

} // namespace coilwright
