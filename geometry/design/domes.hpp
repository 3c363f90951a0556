// Tubes and the domes built of them, as the design file states them.
#pragma once

#include "geometry/base/diagnostic.hpp"
#include "geometry/base/vec.hpp"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace coilwright {

/// The empty and the tamped tube ([tube.NAME]).
struct TubeType {
    std::string id;
    SourcePlace place;
    double lay_flat = 0;                // width of the empty tube lying flat
    std::optional<double> tamped_width; // as measured on a test bag
    double roll = 457.2;                // length of a roll; default 1500 ft
    bool sound = true;                  // false: a fault was reported; later stages skip it
};

enum class ProfileKind { pointed, round, segmental, catenary, parabola, drawn };
/// A profile as written; geometry/plan/profile.hpp makes the curve of it. At most one of rise,
/// arc_radius and rise_to_span is set by the person; `fit_rise` asks for rise = "fit".
struct ProfileSpec {
    SourcePlace place;
    ProfileKind kind = ProfileKind::pointed;
    std::optional<double> rise;
    std::optional<double> arc_radius;
    std::optional<double> rise_to_span;
    bool fit_rise = false;
    std::vector<std::pair<double, double>> points; // drawn: height above the springline, half-width
};

enum class TopKind { closed, skylight };
struct TopSpec {
    SourcePlace place;
    TopKind kind = TopKind::closed;
    double diameter = 0;                // of the skylight asked for
    int curb = 2;                       // plumb courses on the last ring of a skylight
    std::optional<double> glazing_load; // N/m along the top ring, of the glazing and its frame
};

/// What a dome is used for: picks the headroom rule.
enum class Use { habitable, bath, shower, tiny_house, store };

/// [dome.NAME.fit]: what "fit" values are fitted to.
struct FitWish {
    SourcePlace place;
    std::optional<double> clear_height; // springline = "fit": this height, after plaster...
    std::optional<double> clear_square; // ...over a square of this side about the pole
    std::optional<double> clear_circle; // ...or over a circle of this diameter
    std::optional<double> apex; // profile rise = "fit": apex of the inside curve above the floor
    std::optional<double>
        floor_area; // inside_diameter = "fit": clear floor after plaster (at most)
    std::optional<double>
        outside_area; // inside_diameter = "fit": area by the outside of the base ring (at most)
};

/// [dome.NAME]
struct Dome {
    std::string id;
    SourcePlace place;
    Vec2 at{0, 0};
    Use use = Use::store;
    double inside_diameter = 0; // between bag faces
    bool fit_diameter = false;
    double springline = 0; // above the floor
    bool fit_springline = false;
    ProfileSpec profile;
    TopSpec top;
    std::string tube; // id
    SourcePlace tube_place;
    std::string datum; // id of an opening or tunnel; empty: the smallest bearing
    SourcePlace datum_place;
    FitWish fit;
    std::optional<double> chain_height; // from [compass], per dome; default: the springline
    std::string lower_tube;             // id of a second tube for the courses below lower_height
    SourcePlace lower_tube_place;
    double lower_height = 0; // above the floor
    SourcePlace lower_height_place;
    double second_wythe = 0; // height above the floor up to which a second ring stands outside
    SourcePlace second_wythe_place;
    bool sound = true;
    bool itself_sound = true; // as `sound`, whatever its tube's faults
};

} // namespace coilwright
