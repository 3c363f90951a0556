// A dome as wedges between its course joints.
#pragma once

#include "geometry/plan/ring_gaps.hpp"
#include "geometry/statics/slice.hpp"

#include <optional>
#include <set>
#include <vector>

namespace coilwright {

/// One course of a dome as the statics sees it: its first ring (a second wythe beside it is left
/// out), or a cap disc. Heights above the floor, radii from the pole, m.
struct WallCourse {
    int number = 1;
    bool cap = false;
    double bottom = 0, top = 0;
    double inside = 0, outside = 0; // faces
    double weight = 0;       // N per radian of the unbroken ring: fill, plaster, snow, glazing
    double mass_radius = 0;  // of its centre of mass
    double snow_weight = 0;  // of `weight`, what is snow
    double earth_push = 0;   // of a bank outside above the floor, inward, N per radian...
    double earth_height = 0; // ...and where it acts
    double contact_inner = 0, contact_outer = 0; // of the joint under it
    double strength = 0;                         // of its fill, Pa
    double tie = 0;                              // N of tension in the wire on it
    std::vector<RingGap> gaps;                   // the voids of its wall
    double open_share = 0;                       // of its centreline that they take
    double contact_width() const { return contact_outer - contact_inner; }
};

struct DomeLoads {
    bool plaster = true;
    bool snow = false; // [site] snow, on the outside's plan
    bool earth = true; // a bank against the wall, where the design says what it is of (bank_known)
};

/// The courses of a dome from the bottom up. Fill: the stadium's section A times the path of its
/// centroid, so N per radian = density g A r_c, at r_c + I/(A r_c) from the pole, I its second
/// moment about its upright axis; of a rectangle between ri and ro that is (2/3)(ro3 - ri3)/(ro2 -
/// ri2), radii 2.0 and 2.4 -> 2.206061. Discs: half of R2 t, at 2R/3. Plaster: its thickness over
/// the crests along the slope, and the grooves and steps under it, on the faces. The joint under a
/// course carries between the flats of the two: max of inner faces + t/2 to min of outer faces -
/// t/2 (edge = "square": without the t/2; two discs: from the pole); the lowest stands on the
/// ground with its own flat. A bank: see bank_pressure (materials.hpp), on the outer face; below
/// the floor the soil inside balances what lies below it outside. Preconditions: as lay(); `dome`
/// is of `building`.
std::vector<WallCourse> dome_courses(const Design& design, const BuildingForm& building,
                                     const DomeForm& dome, const DomeLoads& loads = {});

/// (2/3)(ro3 - ri3)/(ro2 - ri2): where a sector of a ring has its mass, thin in angle. 2.0, 2.4 ->
/// 2.206061.
double sector_mass_radius(double inside_radius, double outside_radius);

/// What of a dome a slice takes.
struct DomeSlice {
    int first = 1;                      // the course whose lower joint is the slice's end
    std::optional<int> last;            // topmost course that is laid; default: all
    double friction = unlimited;        // in bed joints
    double ground_friction = unlimited; // in the joint under course 1
    bool ignore_gaps = false;           // as if no opening broke a ring
    bool ties = true;                   // wire, where it is counted
    std::optional<std::string> beside;  // the strip that this opening, tunnel or dome weakens
    std::set<std::string> propped{};    // gaps with a form in them
};

/// The wedge of one radian, from its topmost course down; block i is course last - i. A ring that a
/// gap breaks carries neither compression nor tension; one whose gaps all have forms in them is
/// pressed through these, but not pulled. Beside a gap: a strip of the gap's greatest
/// angle and on either side of half as much again, or half the way to the next gap where that is
/// less; its courses weigh what the gap leaves of them. No gap counts for more than a half circle.
/// Precondition: contacts are longer than 0 (first_without_contact), first <= last.
Slice dome_slice(const std::vector<WallCourse>& courses, const DomeSlice& what = {});

/// The joint under a course in such a slice; within the cap, the joint under the cap. Precondition:
/// the slice has that course.
int joint_under(const std::vector<WallCourse>& courses, const DomeSlice& what, int course);

/// The lowest course whose flat finds nothing to lie on.
std::optional<int> first_without_contact(const std::vector<WallCourse>& courses);

/// Ids of all gaps in a dome, each once, sorted.
std::vector<std::string> gap_ids(const std::vector<WallCourse>& courses);

/// The strip beside a gap: by course, the share of the strip's angle that is wall.
std::vector<double> kept_beside(const std::vector<WallCourse>& courses, const std::string& gap);

} // namespace coilwright
