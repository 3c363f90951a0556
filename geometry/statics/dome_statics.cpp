#include "geometry/statics/dome_statics.hpp"

namespace coilwright {

namespace {

StripStatics strip_statics(const Design& design, const std::vector<WallCourse>& courses,
                           const std::string& beside, const StripParts& parts) {
    DomeSlice what;
    if (!beside.empty())
        what.beside = beside;
    const Slice free = dome_slice(courses, what);
    StripStatics strip;
    strip.beside = beside;
    if (parts.centred)
        strip.centred = parts.lines ? centred_thrust(free) : centred_share(free);
    if (parts.friction)
        strip.friction = parts.lines ? least_friction(free) : friction_needed(free);
    if (!parts.lines)
        return strip;
    if (strip.centred.line.stands)
        strip.joints = check_joints(courses, what, strip.centred.line);
    what.friction = design.joint.friction;
    what.ground_friction = design.ground.friction;
    const Slice slice = dome_slice(courses, what);
    const auto ground = static_cast<int>(slice.blocks.size());
    strip.least = least_thrust(slice, ground);
    strip.greatest = strip.least.stands ? greatest_thrust(slice, ground) : strip.least;
    return strip;
}

} // namespace

DomeStatics dome_statics(const Design& design, const BuildingForm& building, const DomeForm& dome,
                         const DomeLoads& loads, const StripParts& parts) {
    DomeStatics result;
    result.dome = dome.id;
    result.courses = dome_courses(design, building, dome, loads);
    result.without_contact = first_without_contact(result.courses);
    if (result.without_contact || result.courses.empty())
        return result;
    result.strips.push_back(strip_statics(design, result.courses, "", parts));
    for (const std::string& gap : gap_ids(result.courses))
        result.strips.push_back(strip_statics(design, result.courses, gap, parts));
    result.piers = check_piers(result.courses);
    const auto share = [](const StripStatics& strip) {
        return strip.centred.line.stands ? strip.centred.share : unlimited;
    };
    for (std::size_t i = 1; i < result.strips.size(); ++i)
        if (share(result.strips[i]) > share(result.strips[result.worst]))
            result.worst = i;
    return result;
}

ThrustLine springline_thrust(const std::vector<WallCourse>& courses, const DomeForm& dome,
                             const DomeSlice& what) {
    DomeSlice above = what;
    for (const WallCourse& course : courses)
        if (course.bottom < dome.springline - height_tie && !course.cap)
            above.first = std::min(course.number + 1, dome.last_ring);
    return least_thrust(dome_slice(courses, above), joint_under(courses, above, above.first));
}

} // namespace coilwright
