// Views laid side by side, as a CAD file holds them.
#pragma once

#include "geometry/drawing/page.hpp"
#include "geometry/views/laid_view.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// Positions of texts in mm on paper, a millimetre of which is `scale.per` mm of the building;
/// those of a view in mm at its own scale, 1000 / per_metre mm of the building each.
struct ModelSpace {
    std::string name; // of the design
    DisplayUnit unit = DisplayUnit::feet;
    Scale scale; // that texts and dimensions are sized for; without a text it is not told
    std::vector<LaidView> views;
    std::vector<TextItem> texts; // the design's name, how it is drawn, the caution
};

struct ViewRow {
    std::vector<const View*> views;
    Scale scale;
};

/// Rows of views, the first row on top; `scale` is what is told of most. The views must outlive
/// what is returned.
ModelSpace lay_side_by_side(const Drafting& drafting, const std::vector<ViewRow>& rows,
                            const Scale& scale);

} // namespace coilwright
