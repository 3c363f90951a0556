#include "geometry/drawing/figures.hpp"
#include "geometry/views/plan_parts.hpp"
#include "geometry/views/upright_parts.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

void add_seen_above(View& view, const std::vector<SeenLine>& lines, double height) {
    for (const SeenLine& line : lines) {
        ViewPath path;
        path.role = LineRole::seen;
        const auto close = [&] {
            if (!path.path.edges.empty())
                view.paths.push_back(path);
            path.path.edges.clear();
        };
        for (std::size_t i = 0; i + 1 < line.points.size(); ++i) {
            Vec2 a = line.points[i], b = line.points[i + 1];
            const bool starts_above = a.y() >= height, ends_above = b.y() >= height;
            if (!starts_above && !ends_above) {
                close();
                continue;
            }
            const Vec2 on = starts_above == ends_above
                                ? a
                                : Vec2(a + (b - a) * ((height - a.y()) / (b.y() - a.y())));
            if (!starts_above)
                a = on;
            if (!ends_above)
                b = on;
            if (path.path.edges.empty())
                path.path.from = a;
            path.path.edges.push_back({b, 0});
            if (!ends_above)
                close();
        }
        close();
    }
}

std::string side_text(Bearing from) {
    static const char* const names[] = {"north", "north-east", "east", "south-east",
                                        "south", "south-west", "west", "north-west"};
    const double eighth = turned_into_circle(from.degrees) / 45;
    const double nearest = std::round(eighth);
    const std::string bearing = degrees_text(turned_into_circle(from.degrees));
    if (std::abs(eighth - nearest) > 1e-9)
        return "from " + bearing;
    return std::string("from the ") + names[static_cast<int>(nearest) % 8];
}

namespace {

/// Tags on the openings that can be seen, as on the floor plan.
void add_tags(View& view, const BuildingPlan& plan, const SightBlock& block) {
    constexpr double before = 0.05; // m before the wall's face, clear of its own facets
    const SightFrame& frame = block.frame();
    const auto tags = opening_tags(plan.schedule);
    for (const OpeningPlan& opening : plan.schedule.openings) {
        const OpeningForm& form = opening.form;
        if (form.use == OpeningUse::niche)
            continue;
        const Vec3 out(form.axis.x(), form.axis.y(), 0);
        if (out.dot(frame.toward) < 0.25) // seen from the side or from behind
            continue;
        const double z = (form.sill + form.top) / 2;
        const HoleFaces faces = hole_faces(plan.schedule.building, form, half_width(form, z), z);
        const Vec2 at = form.origin + form.axis * (faces.outer + before);
        const Vec3 seen = frame.of(Vec3(at.x(), at.y(), z));
        if (!block.hides(seen, before)) // at its head: within it a leader would seem a mullion
            view.notes.push_back({tags.at(form.id), {seen.x(), form.top}, {0, 1}, 3, true, true});
    }
}

} // namespace

View elevation(const BuildingPlan& plan, const EdgedMesh& shell, double tolerance, Bearing from) {
    const SightFrame frame = sight_from(from);
    const DisplayUnit unit = plan.schedule.unit;
    const double ground = plan.design.ground.level;
    View view;
    view.kind = ViewKind::elevation;
    view.id = "elevation-" + fixed_text(turned_into_circle(from.degrees), 0);
    view.title = "Elevation " + side_text(from);
    const SightBlock block(shell.mesh, frame);
    add_seen_above(view, seen_edges(shell, block, tolerance), ground);
    const ViewExtent extent = extent_of(view);
    const double apron = 0.05 * extent.size().x() + 0.1;
    add_segment(view, LineRole::ground, {extent.low.x() - apron, ground},
                {extent.high.x() + apron, ground});
    add_tags(view, plan, block);
    add_chain(view, {ground, 0, extent.high.y()}, {0, 1}, {extent.low.x(), 0}, 0, unit, "heights");
    add_chain(view, {-extent.low.x(), -extent.high.x()}, {-1, 0}, {0, ground}, 0, unit, "overall");
    return view;
}

} // namespace coilwright
