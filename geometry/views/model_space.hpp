// Views laid side by side at one scale, as a CAD file holds them.
#pragma once

#include "geometry/drawing/page.hpp"
#include "geometry/views/laid_view.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// Positions in mm on paper; a millimetre of it is `scale.per` mm of the building.
struct ModelSpace {
    std::string name; // of the design
    DisplayUnit unit = DisplayUnit::feet;
    Scale scale; // that texts and dimensions are sized for; without a text it is not told
    std::vector<LaidView> views;
    std::vector<TextItem> texts; // the design's name, how it is drawn, the caution
};

/// Rows of views, the first row on top. The views must outlive what is returned.
ModelSpace lay_side_by_side(const Drafting& drafting,
                            const std::vector<std::vector<const View*>>& rows, const Scale& scale);

} // namespace coilwright
