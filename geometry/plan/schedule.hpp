// The schedule: every course of a building with its compass settings, runs, tubes and cuts.
// The data behind `coilwright courses` (docs/reference/schedule.md), and all that later stages
// read.
#pragma once

#include "geometry/base/finding.hpp"
#include "geometry/plan/building_form.hpp"
#include "geometry/plan/heads.hpp"

#include <optional>
#include <string>
#include <vector>

namespace coilwright {

/// One tube as it is cut and laid, within its run.
struct LaidTube {
    std::string id;           // "T3": unique in its ring; "S3" in the course's straights
    double length = 0;        // along the centreline
    double outer_length = 0;  // along the outer thread
    double cut_length = 0;    // what to cut, with both end allowances
    double start_bearing = 0; // degrees, start <= end, may pass 360; cap bags: 0
    double end_bearing = 0;
    bool lap_short = false; // its end joint lies nearer than joint_lap to one below or to a cut
};

/// One unbroken stretch of a ring, clockwise; bearings at the centreline. end may pass 360.
struct Run {
    std::string id;
    double start_bearing = 0;
    double end_bearing = 0;
    double length = 0;
    bool closed = false;  // a full ring
    std::string start_by; // id of what stops it at its start and end; empty on a full ring
    std::string end_by;
    std::vector<LaidTube> tubes;
};

enum class Side { left, right };

/// Where an opening, a tunnel, a buttress or another dome stops the tubes of a ring, on one side of it.
struct Cut {
    std::string by;
    Side side = Side::left;
    std::string letter; // on the crew sheet: "A", "B", ...
    double half_width = 0;
    double inside_bearing = 0; // [0, 360) on the inside face, centreline and outside face
    double centre_bearing = 0;
    double outside_bearing = 0;
    double inside_arc_from_datum = 0; // clockwise, >= 0
    double short_arc = 0;             // the shorter way round from the datum mark...
    Side short_way = Side::right;     // ...to the left (anticlockwise) or right (clockwise)
    double chord = 0;                 // straight from the datum mark
};

enum class RingKind { ring, cap };

/// What one dome lays in one course.
struct Ring {
    std::string dome;
    RingKind kind = RingKind::ring;
    bool curb = false;
    int wythe = 1;    // 2: the second ring, outside the first
    std::string tube; // id of its tube type
    double width = 0; // of its tubes, tamped
    double inside_radius = 0, centre_radius = 0, outside_radius = 0;
    double chain = 0;     // reading of a chain fixed to the pole at chain_height
    double pole_face = 0; // compass reading from the pole's face
    double step_in = 0, bearing_width = 0;
    double contact_width = 0; // for statics
    double radius_per_height =
        0; // dr/dz at z_n, <= 0: what to change the arm by if the course lies off
    double fill_volume = 0; // m3, of its tubes' stadium sections; of a cap with its rounded rim
    std::vector<Run> runs;
    std::vector<Cut> cuts; // clockwise from the datum
    double wire_length = 0; // of the wire on top of it, all strands
};

/// Which part of a tunnel, its end wall or a buttress a straight run of tubes is. Left and right as
/// seen walking away from the dome.
enum class StraightPart { left, right, crown, end, pier };

/// "left", "crown", ...
std::string word(StraightPart part);

/// An unbroken straight run of tubes.
struct Straight {
    std::string of;             // id of the tunnel or pier
    StraightPart part = StraightPart::left;
    double length = 0;
    Vec2 start{0, 0}, end{0, 0}; // on the centreline, away from the dome; end walls left to right
    double start_distance = 0;  // from the dome's centre along the axis (end walls: across it)
    double end_distance = 0;
    std::string start_by, end_by; // what stops it: an opening, a dome; empty: its own end
    std::string tube;           // id of its tube type
    double width = 0;           // of its tubes, tamped
    std::vector<LaidTube> tubes;
    double wire_length = 0; // of the wire on top of it, all strands
};

/// What the crew sets before or after a course: a form, a lintel, a plate.
struct SetNote {
    std::string element; // id
    std::string what;    // "form", "anchor plates", "curb hoop", "frame", ...
    std::string text;    // one plain sentence
};

struct Course {
    int number = 1;
    double bottom = 0, middle = 0, top = 0;
    bool below_floor = false;
    std::vector<Ring> rings;
    std::vector<Straight> straights;
    std::vector<SetNote> before, after; // before laying it, after tamping it
    Region wall;                        // in plan; undecided where no arithmetic could tell
    double wall_area = 0;               // m2, of that
    double fill_volume = 0;             // m3, tubes' stadium sections
    double tube_length = 0, cut_length = 0, wire_length = 0;
};

/// An opening as it is built.
struct OpeningPlan {
    OpeningForm form;
    int first_course = 0, last_course = 0;    // that it cuts
    double clear_width = 0, clear_height = 0; // after frame and plaster
    double least_form_depth = 0;
    double frame_band_start = 0, frame_band_end = 0; // along the bearing from the pole
    double frame_depth = 0, frame_width = 0; // frame_width: its thickness on each side
    double frame_inset = 0; // plaster between the rough hole and the frame
    double innermost = 0;   // along the bearing, where the form must start
    int strike_after_course = 0; // the form stays until this course is laid and old enough
};

/// A sleeve as it is set.
struct SleevePlan {
    SleeveForm form;
    int course = 0;        // that holds its centre
    bool stops_tubes = false; // the tubes of its courses stop either side of it...
    double joint = 0;      // ...else it lies on this course joint, the one nearest to its centre
};

/// A tunnel's form, which carries its leaning courses.
struct VaultForm {
    std::string tunnel;
    int set_before_course = 0; // the first that leans
    int strike_after_course = 0; // the crown
};

/// What a "fit" was fitted to.
struct Fitted {
    std::string dome;
    std::string key;             // "springline", "profile.rise", "inside_diameter"
    double value = 0;            // metres
    int courses = 0;             // springline: whole courses above the floor
    std::string wish;            // "6 ft 8 in clear over a 30 in square"
    double reached = 0;          // what is had (height, apex or area)
    double reached_one_less = 0; // what one course (or 1/8 in) less would give
    std::string text;            // one plain sentence for every output
};

struct Totals {
    double tube_length = 0, cut_length = 0, fill_volume = 0, wire_length = 0, wall_volume = 0;
    int courses = 0;
};

struct Schedule {
    std::string name;
    DisplayUnit unit = DisplayUnit::feet;
    double course_height = 0;
    BuildingForm building;
    std::vector<OpeningPlan> openings;
    std::vector<Fan> fans;
    std::vector<Lintel> lintels;
    std::vector<SleevePlan> sleeves;
    std::vector<VaultForm> vault_forms; // one a tunnel
    std::vector<Fitted> fitted;
    std::vector<Course> courses;
    Totals totals;
};

} // namespace coilwright
