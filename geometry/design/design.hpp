// The design as data: what the person wrote in the TOML file, in metres and degrees.
// One struct a table of the file; defaults are those of docs/reference/design-file.md.
#pragma once

#include "geometry/base/bearing.hpp"
#include "geometry/base/diagnostic.hpp"
#include "geometry/base/length.hpp"

#include <map>
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
    double strike_age_days = 7; // age of the fill before a form is struck
    double strike_age = 7;      // days that the courses over a form age before it is struck
    bool sound = true;
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
    double second_wythe = 0; // height above the floor up to which a second ring stands outside
    SourcePlace second_wythe_place;
    bool sound = true;
};

enum class OpeningUse { door, window, vent, niche };
enum class HeadKind { square, pointed, round, segmental, circle };
enum class HeadLaid { corbelled, fan };
enum class LintelKind { timber, concrete };
/// A square head's beam. It lies on the joint at the head and spans the width and a bearing each
/// side.
struct LintelSpec {
    SourcePlace place;
    LintelKind kind = LintelKind::timber;
    double bearing = 0.3048;     // on each side, 12 in
    std::optional<double> depth; // its height; default one course
    std::optional<double> width; // across the wall; default the tamped width less a course height
};
struct HeadSpec {
    SourcePlace place;
    HeadKind kind = HeadKind::square;
    std::optional<double> rise; // pointed (default width * sqrt 3 / 2), segmental (required)
    HeadLaid laid = HeadLaid::corbelled;
    std::optional<double> depth;      // fan: depth of its bags; default one tamped width
    std::optional<LintelSpec> lintel; // square heads; default: a timber lintel
};

/// Which wall of a tunnel an opening stands in, left and right as seen walking away from its dome.
enum class TunnelSide { end, left, right };

/// [opening.NAME]; width, sill and height are of the rough hole between the tubes.
struct Opening {
    std::string id;
    SourcePlace place;
    std::string in; // id of a dome (or a tunnel)
    SourcePlace in_place;
    OpeningUse use = OpeningUse::window;
    Bearing bearing;
    SourcePlace bearing_place;
    double width = 0;
    SourcePlace width_place;
    double sill = 0; // above the floor
    SourcePlace sill_place;
    double height = 0; // from sill to the top of the head
    SourcePlace height_place;
    HeadSpec head;
    double frame = 0.0381;       // thickness of the frame on each side, 1-1/2 in
    double frame_depth = 0.1143; // 4-1/2 in
    bool reveal_plumb = false;   // reveal = "plumb": jambs built out to the base ring's outside
    TunnelSide side = TunnelSide::end; // in a tunnel
    double along = 0;                  // in a tunnel's side: from the dome's centre along the axis
    SourcePlace along_place;
    std::optional<double> niche_depth; // use = "niche": depth = from the inside face
    bool sound = true;
};

/// [tunnel.NAME]
struct Tunnel {
    std::string id;
    SourcePlace place;
    std::string from, to; // dome ids; `to` empty when `reach` is given
    Bearing bearing;
    double width = 0, springline = 0;
    ProfileSpec profile;
    std::optional<double> reach;
    bool end_wall = false;   // end = "wall"
    bool wall_stays = false; // wall = "stays"
    std::string tube;
    bool sound = true;
};

/// [buttress.NAME]
struct Buttress {
    std::string id;
    SourcePlace place;
    std::string on;
    std::vector<double> bearings; // as written, or made from count and first
    std::string beside;           // id of the opening or tunnel it flanks
    double gap = 0;
    std::optional<double> width;
    double height = 0, projection = 0;
    std::optional<double> projection_top;
    bool sound = true;
};

/// [join.NAME]
struct Join {
    std::string id;
    SourcePlace place;
    std::string first, second; // dome ids
    std::string keep;          // id of the dome whose wall stays, or empty: "neither"
    bool sound = true;
};

/// [sleeve.NAME]
struct Sleeve {
    std::string id;
    SourcePlace place;
    std::string in;
    Bearing bearing;
    double height = 0, diameter = 0;
    bool sound = true;
};

/// [finish]
struct Finish {
    SourcePlace place;
    double inside_plaster = 0;
    double outside_plaster = 0;
    double floor_build_up = 0;
};

/// [ground]
struct Ground {
    SourcePlace place;
    double level = -0.1524; // ground against the floor; default 6 in below
    std::optional<double> frost_depth;
    std::optional<double> bearing_capacity; // Pa
    double friction = 0.4;
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
    double friction = 0.5;      // with barbed wire, for design
    double friction_bare = 0.4; // without
    double factor = 1.5;        // of safety against sliding
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

/// A whole design. Maps and vectors are ordered by id, so that the order of tables in the file
/// changes nothing.
struct Design {
    int format = 1;
    std::string name;
    DisplayUnit unit = DisplayUnit::feet;
    CourseRules course;
    std::vector<TubeType> tubes;
    std::vector<Dome> domes;
    std::vector<Opening> openings;
    std::vector<Tunnel> tunnels;
    std::vector<Buttress> buttresses;
    std::vector<Join> joins;
    std::vector<Sleeve> sleeves;
    Finish finish;
    Ground ground;
    Wire wire;
    Compass compass;
    std::vector<Fill> fills;
    Joint joint;
    Trench trench;
    Site site;
    std::map<int, double> as_laid_tops; // [as_laid] top: measured top of a course above the floor
    std::map<std::string, HeadroomRule> rules; // by use; "store" has none
};

/// The element of that id, or nullptr.
const TubeType* find_tube(const Design& design, const std::string& id);
const Dome* find_dome(const Design& design, const std::string& id);
const Opening* find_opening(const Design& design, const std::string& id);
const Tunnel* find_tunnel(const Design& design, const std::string& id);

/// The word of the design file for a value: "tiny-house", "pointed".
std::string word(Use use);
std::string word(OpeningUse use);
std::string word(HeadKind kind);
std::string word(ProfileKind kind);

} // namespace coilwright
