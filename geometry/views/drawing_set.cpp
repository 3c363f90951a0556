#include "geometry/views/drawing_set.hpp"

#include "geometry/views/opening_schedule.hpp"
#include "geometry/views/upright_views.hpp"

namespace coilwright {

Mesh whole_shell(const SolidModel& shell) {
    Mesh whole;
    for (const SolidPart& part : shell.parts) {
        const auto first = static_cast<std::uint32_t>(whole.vertices.size());
        whole.vertices.insert(whole.vertices.end(), part.mesh.vertices.begin(),
                              part.mesh.vertices.end());
        for (const auto& triangle : part.mesh.triangles)
            whole.triangles.push_back(
                {triangle[0] + first, triangle[1] + first, triangle[2] + first});
    }
    return whole;
}

std::vector<const View*> DrawingViews::all() const {
    std::vector<const View*> views{&floor, &foundation, &roof};
    for (const View& view : sections)
        views.push_back(&view);
    for (const View& view : elevations)
        views.push_back(&view);
    return views;
}

DrawingViews drawing_views(const BuildingPlan& plan, const Mesh& shell, double tolerance,
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
            add_segment(views.floor, LineRole::cut, end + ahead * (side * 0.25),
                        end + ahead * (side * 0.65));
            views.floor.notes.insert(
                views.floor.notes.begin(),
                {letter, end + ahead * (side * 0.65), ahead * side, 3.5, true, false});
        }
    }
    return views;
}

std::vector<Sheet> drawing_set(const Drafting& drafting, const DrawingViews& views) {
    std::vector<Sheet> sheets{view_sheet(drafting, "Floor plan", {views.floor}),
                              view_sheet(drafting, "Foundation plan", {views.foundation}),
                              view_sheet(drafting, "Roof and site plan", {views.roof}),
                              view_sheet(drafting, "Sections", views.sections),
                              view_sheet(drafting, "Elevations", views.elevations)};
    for (Sheet& sheet : opening_schedule(drafting))
        sheets.push_back(std::move(sheet));
    for (std::size_t i = 0; i < sheets.size(); ++i) {
        const PaperBox frame = frame_of(sheets[i].width, sheets[i].height);
        add_text(sheets[i], {frame.right - 2, frame.bottom + 2},
                 "Sheet " + std::to_string(i + 1) + " of " + std::to_string(sheets.size()),
                 sizes::small, true, Align::right);
    }
    return sheets;
}

} // namespace coilwright
