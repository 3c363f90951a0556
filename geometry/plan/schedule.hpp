// The schedule: every course of a building with its compass settings, runs, tubes and cuts.
// Lengths in metres, heights above the finished floor, areas in m2, volumes in m3.
// The data behind `coilwright courses` (docs/reference/schedule.md), and all that later stages
// read.
#pragma once

#include "geometry/base/finding.hpp"
#include "geometry/plan/building_form.hpp"
#include "geometry/plan/ground_plan.hpp"
#include "geometry/plan/heads.hpp"
#include "geometry/plan/laid.hpp"
#include "geometry/plan/tube_order.hpp"

#include <optional>
#include <string>
#include <vector>

namespace coilwright {

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
    bool top_measured = false; // on site, and stated in the design
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
    double frame_depth = 0, frame_width = 0;         // frame_width: its thickness on each side
    double frame_inset = 0;                          // plaster between the rough hole and the frame
    double innermost = 0;                            // along the bearing, where the form must start
    int strike_after_course = 0; // the form stays until this course is laid and old enough
    bool last_form =
        false; // the last of its dome: it stays until the dome is closed or its curb tied
    double rained_on = 0; // how far the outside at its head lies inside that at its sill
};

/// A sleeve as it is set.
struct SleevePlan {
    SleeveForm form;
    int course = 0;           // that holds its centre
    bool stops_tubes = false; // the tubes of its courses stop either side of it...
    double joint = 0;         // ...else it lies on this course joint, the one nearest to its centre
    int set_before_course = 0; // that it is set with: the one whose tubes stop, or lie on it
    /// What the rod shows: its centre, or the joint under it.
    double mark() const { return stops_tubes ? form.height : joint; }
};

/// A tunnel's form, which carries its leaning courses.
struct VaultForm {
    std::string tunnel;
    int set_before_course = 0;   // the first that leans
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
    std::vector<TubeOrder> order{}; // all that takes tube, by element and tube type
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
    GroundPlan ground;
};

} // namespace coilwright
