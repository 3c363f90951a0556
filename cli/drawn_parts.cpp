#include "cli/drawn_parts.hpp"

#include "exporters/dxf.hpp"
#include "exporters/pdf.hpp"
#include "exporters/shaded_picture.hpp"
#include "exporters/svg.hpp"
#include "geometry/templates/form_set.hpp"
#include "geometry/views/upright_views.hpp"

namespace coilwright {

namespace {

/// A view as a picture of its own, for mail and web pages.
void add_picture(Package& files, const std::string& name, const View& view,
                 const Drafting& drafting) {
    constexpr double width = 250, height = 200; // mm at most
    constexpr std::size_t many = 12;            // notes, which want room about the building
    const double larger = view.notes.size() > many ? 1.6 : 1;
    const Sheet sheet = picture_sheet(view, drafting, width * larger, height * larger);
    files.files.push_back({"pictures/" + name + ".png", png_bytes(sheet, 150)});
    files.files.push_back({"pictures/" + name + ".svg", svg_text(sheet)});
}

/// Where the picture is seen from.
PictureView picture_view(const BuildingPlan& plan, const PackageOptions& options) {
    PictureView view;
    view.from = options.view_bearing.value_or(turned(main_axis(plan.schedule).bearing, -30));
    return view;
}

} // namespace

Package drawing_files(const BuildingPlan& plan, const PackageOptions& options,
                      const EdgedMesh& shell) {
    Package files;
    const MeasureText measure = pango_measure();
    const DrawingViews views = drawing_views(plan, shell, options.tolerance, options.drawings);
    const Drafting drafting{plan, options.sheet, measure};
    files.files.push_back({"drawings.pdf", pdf_bytes(drawing_set(drafting, views, options.tiled_at),
                                                     plan.schedule.name)});
    files.files.push_back({"drawings.dxf", dxf_text_of(drawing_space(drafting, views), measure)});
    add_picture(files, "plan", views.floor, drafting);
    add_picture(files, "section", views.sections.front(), drafting);
    const PictureView from = picture_view(plan, options);
    const View seen = oblique_view(plan, shell, options.tolerance, from.from, from.pitch);
    files.files.push_back({"pictures/view.svg", svg_text(picture_sheet(seen, drafting, 250, 200))});
    return files;
}

Package shaded_files(const BuildingPlan& plan, const SolidModel& finished,
                     const PackageOptions& options) {
    const Pixels picture = shaded_picture(finished, picture_view(plan, options));
    return {{{"pictures/view.png", png_of(picture)}}, {}};
}

Package template_files(const BuildingPlan& plan, const PackageOptions& options) {
    const MeasureText measure = pango_measure();
    const Drafting drafting{plan, options.sheet, measure};
    const FormSet set = form_set(plan.schedule);
    const std::vector<std::vector<View>> views = cutting_views(set, options.kerf);
    // Texts as large as on a drawing at 1:5: they are read on the whole board.
    const Scale scale{5, ""};
    std::vector<ViewRow> rows;
    for (const std::vector<View>& row : views) {
        rows.push_back({{}, scale});
        for (const View& view : row) {
            rows.back().views.push_back(&view);
        }
    }
    const ModelSpace space = lay_side_by_side(drafting, rows, scale);
    return {{{"forms.dxf", dxf_text_of(space, measure)},
             {"forms.pdf", pdf_bytes(form_sheets(drafting, set), plan.schedule.name)}},
            {}};
}

} // namespace coilwright
