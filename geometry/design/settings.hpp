// Settings that hold for the whole design: courses, ground, loads, materials, rules.
#pragma once

#include "geometry/base/bearing.hpp"
#include "geometry/base/diagnostic.hpp"

#include <optional>
#include <string>
#include <utility>

namespace coilwright {

enum class CutCurve { outer, centre }; // which thread of a bent tube decides its cut length
enum class TubeEdge { round, square }; // how a test bag's edge measured

/// [course]
struct CourseRules {
    SourcePlace place;
    double height = 0;
    int foundation = 3;                        // whole courses below the floor
    double end_allowance = 0.2032;             // 8 in at each end of a tube
    double longest_tube = 9.144;               // 30 ft, along the centreline
    double joint_lap = 0.4572;                 // 18 in
    std::optional<double> least_inside_radius; // default: half the tamped width
    CutCurve curve = CutCurve::outer;
    TubeEdge edge = TubeEdge::round;
    double tamp_gap = 0;        // how far tamping pushes the face in
    double strike_age_days = 7; // that the courses over a form age before it is struck
    bool sound = true;
};

/// [finish]
struct Finish {
    SourcePlace place;
    double inside_plaster = 0;
    double outside_plaster = 0;
    bool inside_stated = false, outside_stated = false; // the plasters
    double floor_build_up = 0;
};

/// [ground]
struct Ground {
    SourcePlace place;
    double level = -0.1524; // ground against the floor; default 6 in below
    bool level_stated = false;
    std::optional<double> frost_depth;
    std::optional<double> bearing_capacity; // Pa
    double friction = 0.4;
    bool friction_stated = false;         // written, not the default
    std::optional<double> unit_weight;    // N/m3
    std::optional<double> friction_angle; // degrees
    std::optional<double> slope;          // rise over run
};

/// [wire]
struct Wire {
    SourcePlace place;
    std::optional<int> strands; // default 2, or 1 if the tube lies under 12 in flat
    double lap = 0.6096;        // 24 in
    double breaking = 4225.8;   // N; 950 lbf
    double joint_factor = 0.5;
    bool hoop_tension = false;
};

enum class Stabiliser { none, cement, lime };
enum class StabiliserBy { dry_mass, volume }; // what `ratio` is a share of
enum class FillKind { soil, gravel };
/// [fill.NAME]
struct Fill {
    std::string id;
    SourcePlace place;
    FillKind kind = FillKind::soil;
    std::optional<std::pair<int, int>> courses; // first and last; none: where no other fill is
    std::optional<double> density;              // kg/m3, moist, as placed
    std::optional<double> dry_density;          // kg/m3, as placed
    std::optional<double> strength;             // Pa, in compression
    std::optional<double> cohesion;             // Pa
    std::optional<double> friction_angle;       // degrees
    Stabiliser stabiliser = Stabiliser::none;
    double ratio = 0; // share of the stabiliser: 0.1 is 10 %
    StabiliserBy by = StabiliserBy::dry_mass;
    std::optional<double> age_per_lift; // days before the next lift
    bool sound = true;
};

/// [joint]: bed joints between courses
struct Joint {
    SourcePlace place;
    double friction = 0.5;        // with barbed wire, for design
    double friction_bare = 0.4;   // without
    bool friction_stated = false; // written, not the default
    double factor = 1.5;          // of safety against sliding
    bool factor_stated = false;
};

/// [trench]
struct Trench {
    SourcePlace place;
    double gravel_depth = 0;     // below the bottom of course 1
    std::optional<double> width; // default: tamped width and 6 in
    bool drain = true;
    std::optional<Bearing> outfall; // where the drain leads
};

/// [site]
struct Site {
    SourcePlace place;
    std::optional<double> wind_pressure;        // Pa
    std::optional<double> seismic_acceleration; // m/s2
    std::optional<double> snow;                 // Pa on the ground plan
};

enum class CompassArm { level, chain };
/// [compass]
struct Compass {
    SourcePlace place;
    double pole_diameter = 0;           // 0: readings from the axis only
    std::optional<double> chain_height; // of every dome without its own; default: its springline
    CompassArm arm = CompassArm::level;
};

/// One headroom rule; built-in values in geometry/design/headroom_rules.toml, overridden by
/// [rules.USE] of the design.
struct HeadroomRule {
    std::string use;    // "habitable", ...
    std::string source; // publication with edition
    std::string section;
    double clear_height = 0;               // at the full share
    std::optional<double> low_height;      // no part of the required area under this
    std::optional<double> required_area;   // floor area that must have low_height...
    double share = 0.5;                    // ...and this share of it clear_height
    std::optional<double> clear_square;    // side of the square that must have clear_height
    std::optional<double> least_dimension; // of the room in any direction
};

} // namespace coilwright
