// What is laid in a course: rings round a pole and straight runs, as tubes between cuts. Lengths in
// metres; radii about the dome's pole; bearings in degrees clockwise from north; points in plan in
// metres east and north of the design's origin.
#pragma once

#include "geometry/base/vec.hpp"

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
    bool lap_short =
        false; // its end joint lies nearer than joint_lap to one below or to a cut (see divide_run)
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

/// Where an opening, a tunnel, a buttress or another dome stops the tubes of a ring, on one side of
/// it.
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

enum class PieceKind { fan_bag, keystone, niche_back, wedge };

/// "fan bag", "keystone", "niche back", "wedge".
std::string word(PieceKind kind);

/// A short bag that is laid beside the tubes of a ring's runs: it takes tube as they do.
struct Piece {
    PieceKind kind = PieceKind::wedge;
    std::string id; // "F1L", "FK" (left and right from inside), "N1", "W1": unique in its ring for
                    // each `of`
    std::string of; // the opening of a fan or niche; what stops a wedge at its start, clockwise
    std::string other;        // what stops a wedge at its end; else empty
    double length = 0;        // along its centreline; of a fan's bag the tube that holds its fill
    double longest = 0;       // along its longest edge
    double cut_length = 0;    // that and both end allowances
    double fill_volume = 0;   // m3; not in the sums over tubes
    double start_bearing = 0; // degrees on the centreline, start <= end; a fan's bags: its axis
    double end_bearing = 0;
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
    // Compass readings to the inside face at mid-course, level and on a chain fixed to the pole at
    // chain_height: from the pole's axis inside_radius and chain, from its face these.
    double chain = 0;
    double pole_face = 0;
    double chain_face = 0;
    double step_in = 0, bearing_width = 0;
    double contact_width = 0; // for statics
    double radius_per_height =
        0;                  // dr/dz at z_n, <= 0: what to change the arm by if the course lies off
    double fill_volume = 0; // m3, of its tubes' stadium sections; of a cap with its rounded rim
    std::vector<Run> runs;
    std::vector<Piece> pieces; // wedges clockwise, backs of niches, bags of fans from below
    std::vector<Cut> cuts;     // clockwise from the datum; of the runs and the wedges
    double wire_length = 0;    // of the wire on top of it, all strands
};

/// Which part of a tunnel, its end wall or a buttress a straight run of tubes is. Left and right as
/// seen walking away from the dome.
enum class StraightPart { left, right, crown, end, pier };

/// "left", "crown", ...
std::string word(StraightPart part);

/// An unbroken straight run of tubes.
struct Straight {
    std::string of; // id of the tunnel or pier
    StraightPart part = StraightPart::left;
    double length = 0;
    Vec2 start{0, 0}, end{0, 0}; // on the centreline, away from the dome; end walls left to right
    double start_distance = 0;   // from the dome's centre along the axis (end walls: across it)
    double end_distance = 0;
    std::string start_by, end_by; // what stops it: an opening, a dome; empty: its own end
    std::string tube;             // id of its tube type
    double width = 0;             // of its tubes, tamped
    std::vector<LaidTube> tubes;
    double wire_length = 0; // of the wire on top of it, all strands
};

} // namespace coilwright
