// The take-off: what a building takes of every material, line by line, with how each amount was
// worked out, and what to buy of it.
#pragma once

#include "geometry/design/works.hpp"
#include "geometry/plan/plan_building.hpp"
#include "geometry/takeoff/mixing.hpp"
#include "geometry/takeoff/packing.hpp"
#include "geometry/takeoff/surfaces.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// Stages of the work, in their order.
enum class Phase { trench, base, walls, openings, plaster, finish };
inline constexpr Phase all_phases[] = {Phase::trench,   Phase::base,    Phase::walls,
                                       Phase::openings, Phase::plaster, Phase::finish};
std::string word(Phase phase);

enum class AmountUnit { metre, square_metre, cubic_metre, kilogram, litre, piece, day };
/// "m", "m2", "m3", "kg", "l", "piece", "day": as JSON and CSV write it.
std::string word(AmountUnit unit);

/// Stands for an element in lines that are of no single one; no id has a space.
inline constexpr const char* whole_building = "whole building";

/// A number that an amount was worked out from.
struct Figure {
    std::string name;
    double value = 0;
    std::string unit; // "m", "kg/m3", "" for shares and counts
};

/// One amount. Lines of an item add up to its amount.
struct TakeOffLine {
    std::string item;    // code of the item
    std::string element; // id of a dome, tunnel, pier, opening or sleeve; whole_building
    Phase phase = Phase::walls;
    std::string what; // "Cut lengths of tube 'main'"
    double amount = 0;
    std::string how; // one sentence
    std::vector<Figure> figures;
};

/// One thing to buy.
struct TakeOffItem {
    std::string code; // "tube-main", "cement"
    std::string name; // "Tube 'main'"
    AmountUnit unit = AmountUnit::piece;
    double amount = 0; // sum of its lines
    double waste = 0;  // share added to it
    double to_buy = 0; // with waste, in whole packs where it comes in packs
    std::string pack;  // "roll", "bag", "spool"; empty: loose
    double pack_size = 0;
    int packs = 0;
    std::string how; // from the amount to what to buy
};

/// What one element takes in one course.
struct CourseTake {
    int course = 0;
    std::string element;
    Phase phase = Phase::walls;
    std::string fill; // id of the [fill] that it has; empty: none is stated
    FillKind kind = FillKind::soil;
    double tube_net = 0, tube_cut = 0; // metres; of gravel courses the outer tube alone
    double lining = 0;                 // of gravel courses the second tube to cut, metres
    double wire = 0;
    SoilVolumes soil;
    Stabiliser stabiliser = Stabiliser::none;
    double stabiliser_mass = 0;      // kg
    double water = 0;                // litres
    double buckets = 0, barrows = 0; // of loose fill
};

/// What one tube takes.
struct TubeTake {
    int course = 0;
    std::string element, tube; // "T3"
    double cut_length = 0, tamped = 0, buckets = 0, barrows = 0;
};

/// What one dome, tunnel or buttress takes in all its courses.
struct ElementTake {
    std::string element;
    double tube_net = 0, tube_cut = 0, lining = 0, wire = 0; // as in CourseTake
    SoilVolumes soil;                                        // of gravel and soil together
    double stabiliser_mass = 0, water = 0, buckets = 0, barrows = 0;
};

/// Rolls of one type of tube.
struct RollTake {
    std::string tube;
    double roll = 0, net = 0, cut = 0; // metres, of all its pieces
    std::vector<std::string> pieces;   // "course 3 store T1", by their places in the plan
    std::vector<double> lengths;
    RollPlan plan;
};

/// Pieces of timber or concrete to make, all alike.
struct PieceTake {
    std::string element, what;
    double length = 0, width = 0, depth = 0; // metres
    int count = 1;
};

struct TakeOff {
    std::string name;
    DisplayUnit unit = DisplayUnit::feet;
    std::vector<TakeOffItem> items; // by code
    std::vector<TakeOffLine> lines; // by phase, then item
    std::vector<CourseTake> courses;
    std::vector<TubeTake> tubes;
    std::vector<RollTake> rolls;
    std::vector<FaceArea> faces;
    std::vector<PieceTake> pieces;
    double floor_area = 0;               // between the bags' faces, m2
    std::vector<std::string> notes;      // assumptions, each a sentence
    std::vector<Diagnostic> diagnostics; // then what hangs on them is missing
};

/// Everything a laid building takes. Precondition: plan.sound(), the works file without fault.
/// A cut that no roll holds is the diagnostic "cut-longer-than-roll".
TakeOff take_off(const BuildingPlan& plan, const Works& works, const DecideRegion& decide = {});

/// The sums of `take.courses` by element, in the order in which the courses name them.
std::vector<ElementTake> element_totals(const TakeOff& take);

const TakeOffItem* find_item(const TakeOff& take, const std::string& code);

} // namespace coilwright
