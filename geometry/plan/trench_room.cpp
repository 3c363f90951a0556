#include "geometry/plan/trench_room.hpp"

#include "geometry/base/quantity.hpp"

#include <algorithm>

namespace coilwright {

double trench_room(const Trench& trench, double tube) {
    return trench.width ? std::max(0.0, *trench.width - tube) : 6 * metres_per_inch;
}

} // namespace coilwright
