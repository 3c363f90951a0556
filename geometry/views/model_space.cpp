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
                 : "; texts and dimensions are sized for " + space.scale.text + "."),
        sizes::body, false);
    add("CAUTION. " + words::caution(), sizes::body, true);
}

} // namespace

ModelSpace lay_side_by_side(const Drafting& drafting,
                            const std::vector<std::vector<const View*>>& rows, const Scale& scale) {
    ModelSpace space;
    space.name = drafting.schedule().name;
    space.unit = drafting.unit();
    space.scale = scale;
    double top = 0;
    for (const auto& row : rows) {
        double left = 0, height = 0;
        for (const View* view : row)
            height = std::max(height, size_of(*view, scale).height());
        for (const View* view : row) {
            const double width = size_of(*view, scale).width();
            space.views.push_back(
                laid_view({left, top - height, left + width, top}, *view, scale, drafting.measure));
            left += width + gap;
        }
        top -= height + gap;
    }
    add_texts(space, drafting, top);
    return space;
}

} // namespace coilwright
