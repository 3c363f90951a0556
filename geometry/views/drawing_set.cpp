#include "geometry/views/drawing_set.hpp"

#include "geometry/drawing/pen.hpp"
#include "geometry/views/details.hpp"
#include "geometry/views/opening_schedule.hpp"
#include "geometry/views/tiles.hpp"
#include "geometry/views/upright_views.hpp"

#include <algorithm>
#include <utility>

namespace coilwright {

EdgedMesh whole_shell(const SolidModel& shell) {
    Mesh whole;
    for (const SolidPart& part : shell.parts) {
        const auto first = static_cast<std::uint32_t>(whole.vertices.size());
        whole.vertices.insert(whole.vertices.end(), part.mesh.vertices.begin(),
                              part.mesh.vertices.end());
        for (const auto& triangle : part.mesh.triangles)
            whole.triangles.push_back(
                {triangle[0] + first, triangle[1] + first, triangle[2] + first});
    }
    return with_edges(std::move(whole));
}

std::vector<const View*> DrawingViews::all() const {
    std::vector<const View*> views{&floor, &foundation, &roof};
    for (const View& view : sections)
        views.push_back(&view);
    for (const View& view : elevations)
        views.push_back(&view);
    for (const auto* several : {&details, &bonds})
        for (const View& view : *several)
            views.push_back(&view);
    return views;
}

DrawingViews drawing_views(const BuildingPlan& plan, const EdgedMesh& shell, double tolerance,
                           const DrawingOptions& options) {
    DrawingViews views;
    views.floor = floor_plan(plan, options.plan_height);
    views.foundation = foundation_plan(plan);
    views.roof = roof_plan(plan, shell, tolerance);
    const MainAxis main = main_axis(plan.schedule);
    const Bearing right = options.section_bearing.value_or(main.bearing);
    views.sections.push_back(section(plan, shell, tolerance, *main.dome, right, "A"));
    views.sections.push_back(section(plan, shell, tolerance, *main.dome, turned(right, 90), "B"));
    for (const double from : {180.0, 90.0, 0.0, 270.0})
        views.elevations.push_back(elevation(plan, shell, tolerance, {from}));
    views.details = detail_views(plan);
    views.bonds = bond_details(plan);
    // Where the sections run, on the floor plan.
    const ViewExtent extent = extent_of(views.floor);
    for (std::size_t i = 0; i < views.sections.size(); ++i) {
        const Vec2 ahead = along(turned(right, i == 0 ? 0 : 90));
        const std::string letter(1, static_cast<char>('A' + i));
        for (const double side : {1.0, -1.0}) {
            // From the pole on until the building's box is left.
            double far = extent.size().norm();
            for (const int axis : {0, 1}) {
                const double step = side * ahead[axis];
                if (std::abs(step) > 1e-9)
                    far = std::min(far, ((step > 0 ? extent.high[axis] : extent.low[axis]) -
                                         main.dome->at[axis]) /
                                            step);
            }
            const Vec2 end = main.dome->at + ahead * (side * far);
            const Vec2 mark = end + ahead * (side * 0.65);
            add_segment(views.floor, LineRole::symbol, end + ahead * (side * 0.25), mark);
            // An arrow the way the section looks: to the left of the bearing to the right.
            const Vec2 sight(-ahead.y(), ahead.x()), tip = mark + sight * 0.35;
            add_segment(views.floor, LineRole::symbol, mark, tip);
            for (const double aside : {1.0, -1.0})
                add_segment(views.floor, LineRole::symbol, tip,
                            tip - sight * 0.15 + ahead * (aside * 0.08));
            views.floor.notes.insert(views.floor.notes.begin(),
                                     {letter, mark, ahead * side, 3.5, true, false});
        }
    }
    return views;
}

ModelSpace drawing_space(const Drafting& drafting, const DrawingViews& views) {
    const Scale scale = sheet_scale(drafting, {views.floor});
    std::vector<ViewRow> rows{
        {{&views.floor, &views.foundation, &views.roof}, scale}, {{}, scale}, {{}, scale}};
    for (const View& view : views.sections)
        rows[1].views.push_back(&view);
    for (const View& view : views.elevations)
        rows[2].views.push_back(&view);
    for (const auto* several : {&views.details, &views.bonds}) {
        if (several->empty())
            continue;
        rows.push_back({{}, sheet_scale(drafting, *several)});
        for (const View& view : *several)
            rows.back().views.push_back(&view);
    }
    return lay_side_by_side(drafting, rows, scale);
}

namespace {

/// A view at a scale, on as many sheets as it takes.
void add_tiled(std::vector<Sheet>& sheets, const Drafting& drafting, const View& view,
               const Scale& scale) {
    constexpr double spare = 15; // mm that names may take beyond the margins
    const ViewMargins margins = margins_of(view);
    const Vec2 size = extent_of(view).size() * scale.on_paper(1);
    Sheet drawing;
    lay_view(drawing,
             {0, 0, size.x() + margins.left + margins.right + 2 * spare,
              size.y() + margins.bottom + margins.top + 2 * spare},
             view, scale, drafting.measure);
    const TileGrid grid = tile_grid(drafting, drawing);
    const std::string title = view.title.substr(0, view.title.find(','));
    if (grid.used.size() > 1) {
        Page page = start_drawing(drafting, title + ": how its tiles lie", scale.text);
        const auto lines =
            wrapped(tile_words(), page.body.width() - 4, sizes::body, false, drafting.measure);
        const double used =
            add_lines(page.sheet, {page.body.left + 2, page.body.top}, lines, sizes::body, false);
        add_tile_key(page.sheet,
                     {page.body.left + 4, page.body.bottom + 4, page.body.right - 4,
                      page.body.top - used - 4},
                     drawing, grid);
        sheets.push_back(std::move(page.sheet));
    }
    for (Sheet& sheet : tile_sheets(drafting, drawing, grid, title, scale.text))
        sheets.push_back(std::move(sheet));
}

} // namespace

std::vector<Sheet> drawing_set(const Drafting& drafting, const DrawingViews& views,
                               const std::optional<Scale>& tiled_at) {
    std::vector<Sheet> sheets;
    if (tiled_at) {
        for (const View* view : {&views.floor, &views.foundation, &views.roof})
            add_tiled(sheets, drafting, *view, *tiled_at);
        for (const auto* several : {&views.sections, &views.elevations})
            for (const View& view : *several)
                add_tiled(sheets, drafting, view, *tiled_at);
    } else {
        sheets = {view_sheet(drafting, "Floor plan", {views.floor}),
                  view_sheet(drafting, "Foundation plan", {views.foundation}),
                  view_sheet(drafting, "Roof and site plan", {views.roof}),
                  view_sheet(drafting, "Sections", views.sections),
                  view_sheet(drafting, "Elevations", views.elevations)};
    }
    // As many on a sheet as leave each room for its names.
    const std::size_t most = drafting.paper.width < 250 ? 1 : drafting.paper.width < 290 ? 2 : 4;
    for (std::size_t first = 0; first < views.details.size(); first += most)
        sheets.push_back(view_sheet(
            drafting, "Details",
            {views.details.begin() + static_cast<std::ptrdiff_t>(first),
             views.details.begin() +
                 static_cast<std::ptrdiff_t>(std::min(views.details.size(), first + most))}));
    if (!views.bonds.empty())
        sheets.push_back(view_sheet(drafting, "Details: bond of a pier", views.bonds));
    for (Sheet& sheet : opening_schedule(drafting))
        sheets.push_back(std::move(sheet));
    number_drawings(sheets);
    return sheets;
}

} // namespace coilwright
