// Which element of the building each course stands in, with what the IFC writer says of it.
#pragma once

#include "geometry/plan/plan_building.hpp"
#include "geometry/solids/solid_model.hpp"

#include <string>
#include <vector>

namespace coilwright {

enum class WholeKind { footing, wall, roof, pier };

/// One course of an element: the bodies that the solids give it.
struct CourseBodies {
    int course = 0;
    std::vector<const SolidPart*> parts;
};

/// An element whose parts are courses.
struct Whole {
    WholeKind kind = WholeKind::wall;
    std::string of;   // id of the dome, the tunnel or the pier
    std::string word; // "dome", "tunnel", "buttress"
    std::string tube; // id, of its first course
    double width = 0; // of its wall, in most of its courses
    double bottom = 0, top = 0;
    std::vector<CourseBodies> courses;      // from the bottom up
    std::vector<const SolidPart*> fan_bags; // of the openings whose heads spring in it
};

/// In the order domes, tunnels, piers; of each footing, wall, roof or footing, pier. None without
/// courses. Throws std::logic_error where a part of a course belongs to none.
std::vector<Whole> wholes_of(const BuildingPlan& plan, const SolidModel& courses);

/// Id of the tube type that lies in a course of an element.
std::string tube_of_course(const BuildingPlan& plan, const Whole& whole, const Course& course);
/// What fills a course: "main: soil"; empty where the design does not say.
std::string fill_of_course(const Design& design, int course);

} // namespace coilwright
