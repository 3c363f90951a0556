#include "geometry/views/model_space.hpp"

#include "geometry/drawing/pen.hpp"
#include "geometry/drawing/words.hpp"

#include <algorithm>

namespace coilwright {
namespace {

constexpr double gap = 25;     // mm between views
constexpr double spare = 25;   // mm that names may take beyond a view's margins
constexpr double column = 180; // mm of the texts

PaperBox size_of(const View& view, const Scale& scale) {
    const ViewMargins margins = margins_of(view);
    const Vec2 size = extent_of(view).size() * scale.on_paper(1);
    return {0, 0, size.x() + margins.left + margins.right + 2 * spare,
            size.y() + margins.bottom + margins.top + 2 * spare};
}

void add_texts(ModelSpace& space, const Drafting& drafting, double top) {
    const auto add = [&](const std::string& text, double size, bool bold) {
        for (const std::string& line : wrapped(text, column, size, bold, drafting.measure)) {
            top -= size * leading;
            space.texts.push_back(text_at({0, top}, line, size, bold));
        }
    };
    add(drafting.schedule().name, sizes::heading, true);
    add(std::string("Drawn full size in ") +
            (space.unit == DisplayUnit::feet ? "inches" : "millimetres") +
            (space.scale.text.empty()
                 ? "."
                 : "; texts and dimensions are sized for the scale under each view."),
        sizes::body, false);
    add("CAUTION. " + words::caution(), sizes::body, true);
}

} // namespace

ModelSpace lay_side_by_side(const Drafting& drafting, const std::vector<ViewRow>& rows,
                            const Scale& scale) {
    ModelSpace space;
    space.name = drafting.schedule().name;
    space.unit = drafting.unit();
    space.scale = scale;
    double top = 0; // mm of the building
    for (const ViewRow& row : rows) {
        double left = 0, height = 0;
        for (const View* view : row.views)
            height = std::max(height, size_of(*view, row.scale).height());
        const double high = top / row.scale.per;
        for (const View* view : row.views) {
            const double width = size_of(*view, row.scale).width();
            space.views.push_back(laid_view({left, high - height, left + width, high}, *view,
                                            row.scale, drafting.measure));
            left += width + gap;
        }
        top -= height * row.scale.per + gap * scale.per;
    }
    add_texts(space, drafting, top / scale.per);
    return space;
}

} // namespace coilwright
