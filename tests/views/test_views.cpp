// Views against the building that they show: cuts against exact regions and closed forms, seen
// edges against rays.
#include "geometry/views/mesh_cut.hpp"
#include "geometry/views/opening_schedule.hpp"
#include "geometry/views/role_strokes.hpp"
#include "geometry/views/seen_edges.hpp"
#include "geometry/views/upright_views.hpp"
#include "tests/views/building.hpp"

#include <Eigen/Geometry>

#include <cmath>
#include <random>
#include <set>
#include <sstream>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

double area_of(const std::vector<Vec2>& loop) {
    double twice = 0;
    for (std::size_t i = 0; i < loop.size(); ++i) {
        const Vec2 &a = loop[i], &b = loop[(i + 1) % loop.size()];
        twice += a.x() * b.y() - a.y() * b.x();
    }
    return twice / 2;
}

/// Greatest distance from the viewer at which a ray meets a triangle, by solving for the crossing
/// in space: shares nothing with the grid of SightBlock.
bool ray_hits(const Mesh& mesh, const Vec3& from, const Vec3& toward, double beyond) {
    for (const auto& t : mesh.triangles) {
        const Vec3 a = mesh.vertices[t[0]];
        Eigen::Matrix3d system;
        system << mesh.vertices[t[1]] - a, mesh.vertices[t[2]] - a, -toward;
        if (std::abs(system.determinant()) < 1e-14)
            continue;
        const Vec3 found = system.inverse() * (from - a);
        if (found.x() >= 0 && found.y() >= 0 && found.x() + found.y() <= 1 && found.z() > beyond)
            return true;
    }
    return false;
}

} // namespace

TEST_CASE("what a floor plan hatches is the wall's exact region") {
    for (const std::string& name : demo_names()) {
        const BuildingPlan plan = demo_plan(name);
        for (const double height : {0.3, usual_plan_height, 1.9}) {
            const View view = floor_plan(plan, height);
            REQUIRE(view.hatches.size() == 1);
            double area = 0;
            for (const Outline& loop : view.hatches.front().loops)
                area += area_of(flattened(loop, 0.0005));
            CAPTURE(name, height);
            const Region wall = region_of(wall_expression(plan.schedule.building, height), {});
            CHECK(area == Approx(wall.area).epsilon(1e-5));
        }
    }
}

TEST_CASE("a section through a plain dome has the area between its profiles") {
    // A round dome: the cut between two half circles w apart, the stem and what lies below the
    // floor, without the cap: pi ((R + w)^2 - R^2) / 2 is for concentric circles; here the outside
    // is the inside moved out by w, so each side of the cut is w wide at every height.
    const DrawnBuilding building = drawn(demo_plan("grain-store"));
    const DomeForm& dome = building.plan.schedule.building.domes.front();
    // A bearing clear of openings.
    const SightFrame frame = sight_from(Bearing{dome.datum.degrees + 90 + 45});
    const double depth = frame.of(Vec3(dome.at.x(), dome.at.y(), 0)).z();
    double area = 0;
    for (const auto& loop : mesh_cut(building.shell.mesh, frame, depth))
        area += std::abs(area_of(loop)); // one loop, without holes
    double expected = 0;
    const double top = dome.top(), bottom = dome.bottom();
    constexpr int pieces = 20000;
    for (int i = 0; i < pieces; ++i) {
        const double z = bottom + (top - bottom) * (i + 0.5) / pieces;
        bool opened = false;
        for (const OpeningForm& form : building.plan.schedule.building.openings)
            opened = opened || std::abs(std::sin((form.bearing.degrees - dome.datum.degrees - 45) *
                                                 radians_per_degree)) < 0.05;
        REQUIRE_FALSE(opened);
        expected +=
            2 * (outside_radius(dome, z) - inside_radius(dome, z)) * (top - bottom) / pieces;
    }
    CHECK(area == Approx(expected).epsilon(0.004));
}

TEST_CASE("the cut of a pointed dome keeps its arcs") {
    const DrawnBuilding building = drawn(demo_plan("grain-store"));
    const DomeForm& dome = building.plan.schedule.building.domes.front();
    int arcs = 0;
    for (const ViewPath& path : building.views.sections[1].paths) {
        if (path.role != LineRole::cut)
            continue;
        Vec2 from = path.path.from;
        for (const OutlineEdge& edge : path.path.edges) {
            if (const auto arc = arc_of(BoundaryEdge{0, from, edge.to, edge.bulge})) {
                ++arcs;
                CHECK(arc->radius == Approx(dome.profile.radius).margin(0.01));
            }
            from = edge.to;
        }
    }
    CHECK(arcs >= 4);
}

TEST_CASE("points on drawn edges are visible and points behind are not, by rays") {
    std::mt19937 random(20260611);
    for (const char* const name : {"washroom", "home"}) {
        const DrawnBuilding building = drawn(demo_plan(name));
        std::uniform_real_distribution<double> turn(0, 360), pitch(0, 60), unit(0, 1);
        for (int view = 0; view < 3; ++view) {
            const Bearing bearing{turn(random)};
            const SightFrame frame = sight_from(bearing, pitch(random));
            CAPTURE(name, bearing.degrees);
            const std::vector<SeenLine> lines = seen_edges(
                building.shell, SightBlock(building.shell.mesh, frame), default_tolerance);
            REQUIRE(lines.size() > 5);
            int seen = 0, wrong = 0;
            std::ostringstream hidden_at;
            for (int sample = 0; sample < 80; ++sample) {
                const SeenLine& line = lines[random() % lines.size()];
                const std::size_t i = random() % (line.points.size() - 1);
                const double part = unit(random);
                const Vec2 at = line.points[i] + part * (line.points[i + 1] - line.points[i]);
                const double depth = line.depths[i] + part * (line.depths[i + 1] - line.depths[i]);
                const Vec3 point = frame.right * at.x() + frame.up * at.y() + frame.toward * depth;
                ++seen;
                // Visible if from any place within 10 mm beside it the way to the viewer is free.
                bool free = false;
                for (int k = 0; k < 24 && !free; ++k) {
                    const double angle = k * pi / 4;
                    const Vec3 beside =
                        point + (k < 8    ? 0.002
                                 : k < 16 ? 0.005
                                          : 0.010) *
                                    (std::cos(angle) * frame.right + std::sin(angle) * frame.up);
                    free = !ray_hits(building.shell.mesh, beside, frame.toward, 0.02);
                }
                if (!free)
                    hidden_at << point.transpose() << "; ";
                wrong += free ? 0 : 1;
            }
            CHECK(seen == 80);
            INFO(hidden_at.str());
            CHECK(wrong == 0);
            // The other way round: edges that rays call hidden are not drawn.
            const SightBlock block(building.shell.mesh, frame);
            int hidden = 0;
            for (int sample = 0; sample < 200; ++sample) {
                const Vec3& vertex =
                    building.shell.mesh.vertices[random() % building.shell.mesh.vertices.size()];
                const Vec3 lifted = vertex + frame.toward * 0.01;
                const bool by_ray = ray_hits(building.shell.mesh, lifted, frame.toward, 0.02);
                const bool by_grid = block.hides(frame.of(lifted), 0.02);
                CHECK(by_ray == by_grid);
                hidden += by_ray ? 1 : 0;
            }
            CHECK(hidden > 20);
        }
    }
}

TEST_CASE("tags of openings are by use and no two are one") {
    const BuildingPlan plan = demo_plan("home");
    const auto tags = opening_tags(plan.schedule);
    CHECK(tags.size() == plan.schedule.openings.size());
    CHECK(tags.at("front") == "D1");
    std::set<std::string> different;
    for (const auto& [id, tag] : tags)
        different.insert(tag);
    CHECK(different.size() == tags.size());
}
