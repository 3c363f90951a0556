// The building as solids, at two depths.
#pragma once

#include "geometry/plan/schedule.hpp"
#include "geometry/solids/mesh.hpp"

#include <string>
#include <vector>

namespace coilwright {

enum class Material {
    earth,
    earth_cap,
    lime_plaster,
    earth_render,
    earth_floor,
    timber,
    concrete,
    glass,
    ground,
    furnishing
};

/// One named part: a closed solid, or a surface about one.
struct SolidPart {
    std::string slug;  // unique in the model, valid in every format (base/slug.hpp)
    std::string group; // slug of the group it hangs under; empty: at the top
    std::string title; // for people
    Material material = Material::earth;
    int course = 0;            // 0: not of one course
    double compass_radius = 0; // of that course, 0 if none
    double volume = 0;         // m3, of the mesh; 0 of a surface, which need not be closed
    bool printed = true;       // false: formats for printers leave it out
    Mesh mesh;
};

/// A group of parts: the building holds domes, a dome holds courses (courses model).
struct SolidGroup {
    std::string slug;
    std::string title;
    std::string parent; // slug, empty at the top
};

struct SolidModel {
    std::string name;               // of the design, as written
    std::vector<SolidGroup> groups; // parents before children
    std::vector<SolidPart> parts;
};

/// What could not be meshed: the two elements at fault.
struct SolidFault {
    std::string first, second;
    std::string message;
};

struct SolidResult {
    SolidModel model;
    std::vector<SolidFault> faults; // empty: the model is proven
};

/// Greatest distance between a chord or a facet and the true surface, metres.
inline constexpr double default_tolerance = 0.002;
inline constexpr double least_tolerance = 0.0001, most_tolerance = 0.05;
/// False for NaN too.
inline bool tolerance_in_bounds(double tolerance) {
    return tolerance >= least_tolerance && tolerance <= most_tolerance;
}

/// The smooth walls, one watertight solid for all that hangs together (domes joined or linked by
/// tunnels, their buttresses and openings), named by its largest dome: every surface is
/// triangulated in its own parameters between boundary curves shared by index (no Booleans), and
/// the result is checked at single precision before it is handed out. Parts are at the top, without
/// groups. Volume and faces are those of the wall's smooth form, not of the courses' steps. What
/// cannot be meshed has no part but a fault; a tolerance out of bounds is one fault. A dome of 9 ft
/// with three openings at 2 mm: 10,000 triangles, 20 ms to mesh, as much to check.
SolidResult shell_model(const Schedule& schedule, double tolerance = default_tolerance);

/// The same with what makes it look like a building, as parts of their own that printers leave out
/// (`printed` false). Group FINISH: of each wall the plaster of its rooms, its outside and its
/// reveals (plaster.hpp), at the thickness of [finish]; the floor, a closed slab where its build-up
/// is given, else a surface; the ground about it all at [ground] level (site_surfaces.hpp). Group
/// FRAMES: the frames of doors and windows.
SolidResult finished_shell_model(const Schedule& schedule, const Design& design,
                                 double tolerance = default_tolerance);

/// Every tube a rounded closed body along its arc or its line, ended where the schedule ends it: at
/// the face of the opening, tunnel, pier or wall it stops at, or square at a joint. Bags of a
/// dome's cap course are one rounded disc; those of a vault's crown and the tubes of a pier lie
/// side by side across its width. Lintels, a fan's bags, frames and forms are parts of their own;
/// forms are for building only and stand where frames come later. Groups: dome, tunnel or pier >
/// course; heads, frames, forms. A full ring of one tube is a body without ends. Neighbours touch
/// along their joints.
SolidResult courses_model(const Schedule& schedule, double tolerance = default_tolerance);

} // namespace coilwright
