// What a view says of itself: names of rooms within them, tags on what can be seen, measures of
// what is there, titles with their scale.
#include "geometry/drawing/figures.hpp"
#include "geometry/views/laid_view.hpp"
#include "geometry/views/plan_views.hpp"
#include "geometry/views/role_strokes.hpp"
#include "geometry/views/seen_edges.hpp"
#include "tests/views/building.hpp"

#include <Eigen/Geometry>
#include <cmath>
#include <set>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr PaperBox sheet_box{0, 0, 250, 150}; // of a Letter or an A4 sheet, mm

/// Whether a segment comes within a circle, its first `skip` mm left out.
bool enters(Vec2 from, Vec2 to, double skip, Vec2 centre, double radius) {
    const double length = (to - from).norm();
    for (double s = skip; s <= length; s += 0.5)
        if ((from + (to - from) * (s / length) - centre).norm() < radius)
            return true;
    return false;
}

bool is_in_loops(const std::vector<std::vector<Vec2>>& loops, Vec2 at) {
    bool in = false;
    for (const auto& loop : loops)
        for (std::size_t i = 0; i < loop.size(); ++i) {
            const Vec2 &a = loop[i], &b = loop[(i + 1) % loop.size()];
            if ((a.y() > at.y()) != (b.y() > at.y()) &&
                at.x() < a.x() + (b.x() - a.x()) * (at.y() - a.y()) / (b.y() - a.y()))
                in = !in;
        }
    return in;
}

/// Whether a ray from a point meets the mesh: Moeller and Trumbore's test of each facet.
bool meets(const Mesh& mesh, const Vec3& from, const Vec3& way) {
    for (const auto& triangle : mesh.triangles) {
        const Vec3& a = mesh.vertices[triangle[0]];
        const Vec3 ab = mesh.vertices[triangle[1]] - a, ac = mesh.vertices[triangle[2]] - a;
        const Vec3 p = way.cross(ac);
        const double det = ab.dot(p);
        if (std::abs(det) < 1e-12)
            continue;
        const double u = (from - a).dot(p) / det;
        const Vec3 q = (from - a).cross(ab);
        const double v = way.dot(q) / det;
        if (u >= 0 && v >= 0 && u + v <= 1 && ac.dot(q) / det > 1e-3)
            return true;
    }
    return false;
}

} // namespace

TEST_CASE("names of domes stand in their own room, or a leader joins them to it") {
    const MeasureText measure = pango_measure();
    for (const char* const name : {"home", "retreat"}) {
        const DrawnBuilding building = drawn(demo_plan(name));
        std::vector<View> views = building.views.sections;
        views.push_back(building.views.floor);
        for (const View& view : views)
            for (const int per : {96, 128, 192}) {
                const LaidView laid = laid_view(sheet_box, view, {per, ""}, measure);
                for (const DomeForm& dome : building.plan.schedule.building.domes)
                    for (const ViewNote& note : view.notes) {
                        if (note.text != dome.id)
                            continue;
                        CAPTURE(name, view.id, per, dome.id);
                        int found = 0;
                        for (const LaidNote& one : laid.notes) {
                            if (one.text.text != dome.id)
                                continue;
                            ++found;
                            const Vec2 pole = laid.on_paper(note.target);
                            const double radius = dome.profile.half_span * 1000 / per;
                            const PaperBox box = bounds(one.text, measure);
                            const bool within =
                                box.left > pole.x() - radius && box.right < pole.x() + radius;
                            CHECK((within || one.led()));
                            if (one.led())
                                CHECK((one.to - pole).norm() < 1e-6);
                        }
                        CHECK(found == 1);
                    }
            }
    }
}

TEST_CASE("what a floor plan says of a room stands in it or in the schedule alone") {
    const MeasureText measure = pango_measure();
    const DrawnBuilding building = drawn(demo_plan("home"));
    const auto& domes = building.plan.schedule.building.domes;
    int shown = 0;
    for (const int per : {96, 128, 192}) {
        const LaidView laid = laid_view(sheet_box, building.views.floor, {per, ""}, measure);
        const auto in_a_room = [&](Vec2 at) {
            for (const DomeForm& dome : domes)
                if ((at - laid.on_paper(dome.at)).norm() < dome.profile.half_span * 1000 / per)
                    return true;
            return false;
        };
        for (const LaidNote& note : laid.notes) {
            CAPTURE(per, note.text.text);
            const bool of_room = note.text.text.find(" clear") != std::string::npos ||
                                 note.text.text.find(" inside") != std::string::npos;
            if (of_room) {
                ++shown;
                CHECK_FALSE(note.led());
                const PaperBox box = bounds(note.text, measure);
                CHECK((in_a_room({box.left, box.bottom}) && in_a_room({box.right, box.top})));
            }
            // Names of openings and piers stand outside, and their leaders run there.
            const bool is_dome = std::any_of(domes.begin(), domes.end(), [&](const DomeForm& dome) {
                return dome.id == note.text.text;
            });
            const bool is_mark = note.text.text.size() < 2; // of a section
            if (is_dome || of_room || is_mark)
                continue;
            CHECK_FALSE(in_a_room(bounds(note.text, measure).centre()));
            if (!note.led())
                continue;
            for (const DomeForm& dome : domes)
                CHECK_FALSE(enters(note.to, note.from, 1.5, laid.on_paper(dome.at),
                                   dome.profile.half_span * 1000 / per - 1));
        }
    }
    CHECK(shown > 1);
}

TEST_CASE("floor plans give the rough widths of the schedule, as long as they say") {
    int widths = 0;
    for (const std::string& name : demo_names()) {
        const BuildingPlan plan = demo_plan(name);
        const View view = floor_plan(plan, usual_plan_height);
        for (const ViewDimension& dimension : view.dimensions)
            for (const OpeningPlan& opening : plan.schedule.openings) {
                if (dimension.of.rfind("opening." + opening.form.id + ".", 0) != 0)
                    continue;
                CAPTURE(name, dimension.of, dimension.text);
                ++widths;
                CHECK(dimension.measured() == Approx(2 * opening.form.half_width));
                CHECK(dimension.text ==
                      length_text(2 * opening.form.half_width, plan.schedule.unit));
            }
        for (const TunnelForm& tunnel : plan.schedule.building.tunnels)
            for (const ViewDimension& dimension : view.dimensions)
                if (dimension.of.rfind("tunnel." + tunnel.id + ".", 0) == 0)
                    CHECK(dimension.measured() == Approx(2 * inner_half_width(tunnel, 0)));
    }
    CHECK(widths > 20);
}

TEST_CASE("elevations tag every opening that is seen, and no other") {
    for (const std::string& name : demo_names()) {
        const DrawnBuilding building = drawn(demo_plan(name));
        const auto tags = opening_tags(building.plan.schedule);
        std::set<std::string> tagged;
        const double bearings[] = {180, 90, 0, 270};
        for (std::size_t i = 0; i < 4; ++i) {
            const SightFrame frame = sight_from(Bearing{bearings[i]});
            for (const OpeningPlan& opening : building.plan.schedule.openings) {
                const OpeningForm& form = opening.form;
                CAPTURE(name, bearings[i], form.id);
                const std::string& tag = tags.at(form.id);
                const ViewNote* found = nullptr;
                for (const ViewNote& note : building.views.elevations[i].notes)
                    if (note.text == tag)
                        found = &note;
                if (!found)
                    continue;
                tagged.insert(tag);
                CHECK(form.use != OpeningUse::niche);
                // Over the head of the hole, and nothing between half its height and the viewer:
                // from 0.1 m before the face.
                const double z = (form.sill + form.top) / 2;
                const HoleFaces faces = hole_faces(building.plan.schedule.building, form, 0, z);
                const Vec2 at = form.origin + form.axis * (faces.outer + 0.1);
                const Vec3 seen = frame.of(Vec3(at.x(), at.y(), z));
                CHECK(std::abs(found->target.x() - seen.x()) < 0.12);
                CHECK(found->target.y() == Approx(form.top));
                CHECK_FALSE(meets(building.shell.mesh, Vec3(at.x(), at.y(), z), frame.toward));
            }
        }
        std::set<std::string> wanted;
        for (const OpeningPlan& opening : building.plan.schedule.openings)
            if (opening.form.use != OpeningUse::niche)
                wanted.insert(tags.at(opening.form.id));
        CAPTURE(name);
        CHECK(tagged == wanted);
    }
}

TEST_CASE("sections measure no wall where the cut has none") {
    int measured = 0, left_out = 0;
    for (const std::string& name : demo_names()) {
        const DrawnBuilding building = drawn(demo_plan(name));
        for (const View& view : building.views.sections) {
            std::vector<std::vector<Vec2>> loops;
            for (const ViewHatch& hatch : view.hatches)
                for (const Outline& outline : hatch.loops)
                    loops.push_back(flattened(outline, 0.05));
            int walls = 0;
            for (const ViewDimension& dimension : view.dimensions) {
                if (dimension.of.find(".widths") == std::string::npos || dimension.measured() > 0.9)
                    continue;
                ++walls;
                CAPTURE(name, view.id, dimension.text);
                const double x = (dimension.from.x() + dimension.to.x()) / 2;
                bool cut = false;
                for (double y = building.plan.schedule.courses.front().bottom; y < 1; y += 0.02)
                    cut = cut || is_in_loops(loops, {x, y});
                CHECK(cut);
            }
            measured += walls;
            left_out += 2 - walls;
        }
    }
    CHECK(measured > 15);
    CHECK(left_out > 0);
}

TEST_CASE("a caption that is too long loses its own end, never its scale") {
    const MeasureText measure = pango_measure();
    View view;
    view.title = "Elevation from the north-east of a building with a very long name indeed";
    add_segment(view, LineRole::seen, {0, 0}, {1, 1});
    const Scale scale{96, "1/8 in = 1 ft (1:96)"};
    for (double width = 60; width < 260; width += 20) {
        const LaidView laid = laid_view({0, 0, width, 60}, view, scale, measure);
        CAPTURE(width, laid.title.text);
        REQUIRE(laid.title.text.size() > scale.text.size());
        CHECK(laid.title.text.substr(laid.title.text.size() - scale.text.size()) == scale.text);
        const PaperBox box = bounds(laid.title, measure);
        CHECK((box.left > -0.01 && box.right < width + 0.01));
    }
}
