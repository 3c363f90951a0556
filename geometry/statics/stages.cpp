#include "geometry/statics/stages.hpp"

namespace coilwright {

BuildingStage building_stage(const std::vector<WallCourse>& courses, const DomeSlice& what,
                             int last) {
    DomeSlice so_far = what;
    so_far.last = last;
    const CentredThrust centred = centred_share(dome_slice(courses, so_far));
    const WallCourse& course = courses[static_cast<std::size_t>(last - 1)];
    BuildingStage stage;
    stage.last = last;
    stage.stands = centred.line.stands && centred.share <= 1;
    stage.share = centred.line.stands ? centred.share : unlimited;
    stage.open_lever = course.mass_radius - course.contact_inner;
    return stage;
}

} // namespace coilwright
