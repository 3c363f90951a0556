#include "geometry/design/metric_defaults.hpp"

namespace coilwright {

void take_metric_defaults(Design& design) {
    if (design.unit != DisplayUnit::metres)
        return;
    design.course.end_allowance = 0.200;
    design.course.joint_lap = 0.450;
    design.course.longest_tube = 9.0;
    design.wire.lap = 0.600;
    design.ground.level = -0.150;
}

} // namespace coilwright
