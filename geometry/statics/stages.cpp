#include "geometry/statics/stages.hpp"

namespace coilwright {

std::vector<BuildingStage> building_stages(const std::vector<WallCourse>& courses,
                                           const DomeSlice& what) {
    std::vector<BuildingStage> stages;
    for (const WallCourse& course : courses) {
        if (course.number < what.first)
            continue;
        DomeSlice so_far = what;
        so_far.last = course.number;
        const CentredThrust centred = centred_share(dome_slice(courses, so_far));
        BuildingStage stage;
        stage.last = course.number;
        stage.stands = centred.line.stands && centred.share <= 1;
        stage.share = centred.line.stands ? centred.share : unlimited;
        stage.open_lever = course.mass_radius - course.contact_inner;
        stages.push_back(stage);
    }
    return stages;
}

} // namespace coilwright
