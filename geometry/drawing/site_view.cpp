#include "geometry/drawing/site_view.hpp"

#include "geometry/drawing/plan_view.hpp"
#include "geometry/drawing/scale.hpp"

#include <algorithm>
#include <limits>

namespace coilwright {

void add_site(Sheet& sheet, const PaperBox& box, const Drafting& drafting) {
    const std::vector<DomeForm>& domes = drafting.schedule().building.domes;
    constexpr double inf = std::numeric_limits<double>::infinity();
    PaperBox ground{inf, inf, -inf, -inf}; // metres
    for (const DomeForm& dome : domes) {
        const double r = dome.profile.half_span + dome.width;
        ground.left = std::min(ground.left, dome.at.x() - r);
        ground.right = std::max(ground.right, dome.at.x() + r);
        ground.bottom = std::min(ground.bottom, dome.at.y() - r);
        ground.top = std::max(ground.top, dome.at.y() + r);
    }
    constexpr double caption = 6, rim = 12;
    const PaperBox room{box.left, box.bottom, box.right, box.top - caption};
    const Scale scale = largest_scale(ground.width(), ground.height(), room.width() - 2 * rim,
                                      room.height() - 2 * rim, drafting.unit());
    add_text(sheet, {box.left, box.top - 4.2}, scale.text, sizes::small);
    Placer placer(room, drafting.measure);
    std::vector<std::vector<TextItem>> labels;
    for (const DomeForm& dome : domes) {
        const Vec2 pole = room.centre() + (dome.at - ground.centre()) * scale.on_paper(1);
        const double inner = scale.on_paper(dome.profile.half_span);
        const double outer = scale.on_paper(dome.profile.half_span + dome.width);
        for (const double radius : {inner, outer}) {
            add_circle(sheet, pole, radius, pens::cut);
            placer.take_arc(pole, radius, 0, 2 * pi);
        }
        for (const Vec2& arm : {Vec2(2, 0), Vec2(0, 2)}) {
            add_line(sheet, pole - arm, pole + arm, pens::seen);
            placer.take_line(pole - arm, pole + arm);
        }
        std::vector<TextItem> candidates;
        const std::string text = dome.id;
        for (const double size : {sizes::strong, sizes::small})
            for (const Vec2& place : places_about(pole, {0, 1}, 5, outer + 30, pi))
                candidates.push_back(text_at(place, text, size, true, Align::centre));
        labels.push_back(std::move(candidates));
    }
    add_north(sheet, placer);
    for (const std::vector<TextItem>& candidates : labels)
        if (const auto label = placer.place(candidates))
            sheet.items.push_back(*label);
}

} // namespace coilwright
