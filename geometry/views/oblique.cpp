#include "geometry/drawing/figures.hpp"
#include "geometry/solids/mesh_clip.hpp"
#include "geometry/views/plan_parts.hpp"
#include "geometry/views/role_strokes.hpp"
#include "geometry/views/upright_parts.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

/// The foot of the walls on the ground, as far as it is seen.
void add_foot(View& view, const BuildingForm& building, const SightBlock& block,
              const SightFrame& frame, double ground, double clearance) {
    constexpr double step = 0.02; // m
    const Region foot = decided_region(wall_expression(building, ground + height_tie));
    for (const BoundaryLoop& loop : foot.loops) {
        Outline outline{loop.edges.front().from, {}};
        for (const BoundaryEdge& edge : loop.edges)
            outline.edges.push_back({edge.to, edge.bulge});
        const std::vector<Vec2> points = flattened(outline, step);
        ViewPath path;
        path.role = LineRole::seen;
        const auto close = [&] {
            if (!path.path.edges.empty())
                view.paths.push_back(path);
            path.path.edges.clear();
        };
        bool open = false;
        for (std::size_t i = 0; i + 1 < points.size(); ++i) {
            const Vec2 way = points[i + 1] - points[i];
            const int pieces = std::max(1, static_cast<int>(std::ceil(way.norm() / step)));
            const Vec2 out = Vec2(way.y(), -way.x()).normalized(); // the wall is on the left
            for (int k = 0; k < pieces; ++k) {
                const Vec2 a = points[i] + way * k / pieces, b = points[i] + way * (k + 1) / pieces;
                const Vec2 middle = (a + b) / 2 + 0.01 * out;
                const Vec3 at = frame.of(Vec3(middle.x(), middle.y(), ground));
                if (block.hides(at, clearance)) {
                    close();
                    open = false;
                    continue;
                }
                if (!open)
                    path.path.from = frame.of(Vec3(a.x(), a.y(), ground)).head<2>();
                open = true;
                path.path.edges.push_back({frame.of(Vec3(b.x(), b.y(), ground)).head<2>(), 0});
            }
        }
        close();
    }
}

} // namespace

View oblique_view(const BuildingPlan& plan, const EdgedMesh& shell, double tolerance, Bearing from,
                  double pitch) {
    const SightFrame frame = sight_from(from, pitch);
    const double ground = std::max(plan.design.ground.level, plan.schedule.courses.front().bottom);
    const EdgedMesh above = with_edges(clipped_below(shell.mesh, ground));
    View view;
    view.kind = ViewKind::elevation;
    view.id = "view-" + fixed_text(turned_into_circle(from.degrees), 0);
    view.title = "Seen " + side_text(from) + ", " + degrees_text(pitch) + " above the level";
    const SightBlock block(above.mesh, frame);
    for (const SeenLine& line : seen_edges(above, block, tolerance)) {
        ViewPath path;
        path.role = LineRole::seen;
        path.path.from = line.points.front();
        for (std::size_t i = 1; i < line.points.size(); ++i)
            path.path.edges.push_back({line.points[i], 0});
        view.paths.push_back(std::move(path));
    }
    add_foot(view, plan.schedule.building, block, frame, ground, 2 * tolerance + 1e-3);
    return view;
}

} // namespace coilwright
