// What is cut from boards before the walls rise: arch forms, frames and panes, boards of the domes'
// profiles. Shapes are in metres, x across, y up from the finished floor unless said otherwise.
#pragma once

#include "geometry/plan/form_stock.hpp"
#include "geometry/plan/plan_building.hpp"
#include "geometry/templates/outlines.hpp"

#include <optional>
#include <string>
#include <vector>

namespace coilwright {

/// The outline of an opening's hole, closed, from a bottom up: the sill, or lower or higher than
/// it. A circle starts at its lowest point. Precondition: bottom < springing.
Outline hole_outline(const OpeningForm& opening, double bottom);
/// The void of a tunnel from a height below its springline up.
Outline vault_outline(const TunnelForm& tunnel, double bottom);
/// Of its plumb wall, which a vault's form has below the springline; less where that lies lower.
inline constexpr double vault_foot = 0.1;

/// The form of an opening or of a tunnel's vault: faces a span apart or less, battens along their
/// edge, stiffeners between them. Face and battens together fill the hole.
struct ArchForm {
    std::string of; // id
    bool vault = false;
    Outline hole;     // what it fills, closed; its first edge is the bottom (a circle has none)
    Outline face;     // of each face
    double depth = 0; // over the outer faces
    double start = 0; // of its inner end, along the axis from the pole (in a tunnel's side: from
                      // the tunnel's axis)
    int faces = 2;
    double girth = 0; // of the face's edge under battens
    int battens = 0;
    double batten_gap = 0; // between battens
    int stiffeners = 0;    // between two faces
    double stiffener_length = 0;
    std::vector<double> stiffener_places; // along the girth, from its right foot
};

/// The form; nothing where the hole is too small to hold battens.
std::optional<ArchForm> arch_form(const OpeningPlan& opening, const FormStock& stock);
std::optional<ArchForm> vault_form(const Schedule& schedule, const VaultForm& vault,
                                   const FormStock& stock);

/// The frame of a door, window or vent and what it holds: a leaf 3 mm clear of it all round, or a
/// pane that stands 10 mm in its rebate less 3 mm.
struct FrameParts {
    std::string of;
    OpeningUse use = OpeningUse::window;
    Outline outer, inner, pane;
};
/// How much smaller than the clear opening a leaf is, or larger a pane, on each side.
inline constexpr double leaf_clearance = 0.003, pane_rebate = 0.010, pane_clearance = 0.003;
/// Nothing for niches, and where the frame leaves no hole.
std::optional<FrameParts> frame_parts(const OpeningPlan& opening);

/// A board whose edge is a dome's inside profile, x from the pole, y above the springline: held
/// plumb against the pole it shows each course's place. In pieces no longer than 1.2 m (4 ft).
struct ProfileBoard {
    std::string dome;
    int piece = 1, pieces = 1;
    Outline board; // its first edge, or first edges of a curve without circle, are the profile
    std::size_t profile_edges = 1;
    struct Mark {
        int course = 0;
        Vec2 at{0, 0};      // on the profile, at the course's middle
        Vec2 inward{-1, 0}; // unit, into the room
        double radius = 0;  // the compass setting
    };
    std::vector<Mark> marks;
};
std::vector<ProfileBoard> profile_boards(const Schedule& schedule, const DomeForm& dome,
                                         const FormStock& stock);

/// The skin of a form's soffit laid flat: u along the girth from the right foot, v along the axis
/// from the form's inner end. With the lines in which the wall's faces meet it, and the joints of
/// the courses.
struct SoffitStrip {
    std::string of;
    double length = 0, depth = 0;
    std::vector<Vec2> inner_face, outer_face;   // lines
    std::vector<std::pair<int, double>> joints; // top of course n at u, on both sides
    double springing_right = 0, springing_left = 0, crown = 0;
};
SoffitStrip soffit_strip(const Schedule& schedule, const OpeningPlan& opening,
                         const ArchForm& form);

} // namespace coilwright
