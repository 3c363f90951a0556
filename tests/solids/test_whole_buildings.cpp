// Shells of tunnels, buttresses, joined domes, niches and walls of two widths, each by itself.
#include "geometry/plan/check_layout.hpp"
#include "geometry/plan/lay.hpp"
#include "geometry/solids/building_parts.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "geometry/solids/slab_search.hpp"
#include "geometry/solids/solid_model.hpp"
#include "tests/solids/building_checks.hpp"
#include "tests/support/designs.hpp"
#include "tests/support/home.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

/// A porch that ends clear of the dome's wall.
Tunnel long_porch() {
    Tunnel tunnel = porch();
    tunnel.reach = 120 * inch;
    return tunnel;
}

/// A second dome to the west of the store.
Dome second_dome(double west, double diameter) {
    Dome dome = store_design().domes[0];
    dome.id = "bath";
    dome.at = {-west, 0};
    dome.inside_diameter = diameter;
    dome.datum.clear();
    return dome;
}

Join join(const char* keep) {
    Join join;
    join.id = "both";
    join.first = "bath";
    join.second = "store";
    join.keep = keep;
    return join;
}

/// The only part of a design, checked at 2 mm.
BuildingShell shell_of(const Design& design, double least_angle = 10) {
    for (const Diagnostic& fault : check_layout(design))
        FAIL(fault.message);
    const auto parts = building_parts(make_building_form(design));
    REQUIRE(parts.size() == 1);
    return checked_shell(parts[0].building, 0.002, least_angle);
}

double length_along(const Mesh& mesh, const Vec2& axis) {
    double furthest = -1e9;
    for (const Vec3& v : mesh.vertices)
        furthest = std::max(furthest, axis.dot(v.head<2>()));
    return furthest;
}

} // namespace

TEST_CASE("a porch with an open end is one solid with its dome") {
    Design design = store_design();
    design.tunnels = {long_porch()};
    const Mesh mesh = shell_of(design).mesh;
    // The door is a hole through the wall, the tunnel another.
    CHECK(genus(mesh) == 2);
    // Datum at 150, porch at 330: against the x axis.
    CHECK(length_along(mesh, {-1, 0}) == Approx(120 * inch).margin(1e-9));
    // At the open end the wall is 2 w wide at the floor: the void's 36 in between.
    Design walled = design;
    walled.tunnels[0].end_wall = true;
    const Mesh closed = shell_of(walled).mesh;
    // The end wall fills the void's section over one tube: 36 in by 45 in to the springline, two
    // arcs of 45 in above, and the foundation of 15 in.
    const TunnelForm form = make_building_form(walled).tunnels[0];
    const double section = area_between(form.profile, 0, form.profile.rise) + 36 * 60 * inch * inch;
    CHECK(volume(closed) - volume(mesh) == Approx(section * 15 * inch).epsilon(0.002));
    CHECK(genus(closed) == 2);
}

TEST_CASE("an end wall and a tunnel's side carry openings of their own") {
    Design design = store_design();
    design.tunnels = {long_porch()};
    design.tunnels[0].reach = 150 * inch;
    design.tunnels[0].end_wall = true;
    const Mesh blind = shell_of(design).mesh;
    Opening gate = opening("gate", 0, 14 * inch, 20 * inch, 20 * inch, HeadKind::square);
    gate.in = "porch";
    design.openings.push_back(gate);
    const Mesh pierced = shell_of(design).mesh;
    CHECK(genus(pierced) == genus(blind) + 1);
    CHECK(volume(blind) - volume(pierced) ==
          Approx(14 * 20 * 15 * std::pow(inch, 3)).epsilon(0.02));
    Opening side = opening("side", 0, 16 * inch, 10 * inch, 16 * inch, HeadKind::circle);
    side.in = "porch";
    side.side = TunnelSide::left;
    side.along = 100 * inch;
    design.openings.push_back(side);
    const Mesh twice = shell_of(design).mesh;
    CHECK(genus(twice) == genus(blind) + 2);
    CHECK(volume(pierced) - volume(twice) ==
          Approx(pi * 64 * 15 * std::pow(inch, 3)).epsilon(0.01));
}

TEST_CASE("a tunnel from dome to dome") {
    Design design = store_design();
    design.domes.insert(design.domes.begin(), second_dome(5, 84 * inch));
    Tunnel link = long_porch();
    link.from = "bath";
    link.to = "store";
    link.reach.reset();
    design.tunnels = {link};
    const Mesh mesh = shell_of(design).mesh;
    // A door; and of the tunnel's two holes one makes a handle, the other joins two bodies.
    CHECK(genus(mesh) == 3);
}

TEST_CASE("a tunnel before a wall that stays leaves no hole in it") {
    Design design = store_design();
    design.tunnels = {long_porch()};
    design.tunnels[0].wall_stays = true;
    CHECK(genus(shell_of(design).mesh) == 1); // the door
    design.tunnels[0].end_wall = true;
    CHECK(genus(shell_of(design).mesh) == 1);
}

TEST_CASE("buttresses, plumb and battered, die into the leaning wall") {
    Design design = store_design();
    const double bare = volume(shell_of(design).mesh);
    design.buttresses = {flank()};
    const Mesh battered = shell_of(design).mesh;
    CHECK(genus(battered) == 1);
    design.buttresses[0].projection_top.reset();
    const Mesh plumb = shell_of(design).mesh;
    // Between the two: wedges of 30 in by 15 in at 40 in, linear from nothing at the floor, then
    // plumb up to their top.
    const ButtressForm pier = make_building_form(design).buttresses[0];
    const double wedge = 15 * inch * (pier.height / 2 + (pier.top - pier.height));
    CHECK(volume(plumb) - volume(battered) == Approx(2 * 30 * inch * wedge).epsilon(1e-3));
    CHECK(volume(plumb) > bare);
    design.buttresses[0].bearings.clear();
    design.buttresses[0].beside = "door";
    CHECK(genus(shell_of(design, 0.3).mesh) == 1);
    design.buttresses[0].gap = 8 * inch;
    CHECK(genus(shell_of(design).mesh) == 1);
}

TEST_CASE("joined domes: in open plan, and with the wall of one of them kept") {
    Design design = store_design();
    design.domes.insert(design.domes.begin(), second_dome(1.95, 84 * inch));
    design.joins = {join("")};
    const Mesh open = shell_of(design, 5).mesh;
    // A door. Two caps on one ring, however they meet, are a bowl without handles.
    CHECK(genus(open) == 1);
    design.joins = {join("store")};
    const Mesh kept = shell_of(design, 5).mesh;
    CHECK(genus(kept) == 1);
    // The kept wall stands in the opening of the open plan.
    CHECK(volume(kept) > volume(open));
    // A doorway through the kept wall.
    Opening between = opening("between", 270, 24 * inch, 0, 60 * inch, HeadKind::round);
    design.openings.push_back(between);
    CHECK(genus(shell_of(design, 5).mesh) == 2);
}

TEST_CASE("a niche does not go through") {
    Design design = store_design();
    const double bare = volume(shell_of(design).mesh);
    Opening niche = opening("shelf", 240, 16 * inch, 5 * inch, 10 * inch, HeadKind::square);
    niche.use = OpeningUse::niche;
    niche.niche_depth = 6 * inch;
    design.openings.push_back(niche);
    const Mesh mesh = shell_of(design).mesh;
    CHECK(genus(mesh) == 1);
    // Below the springline it is a box 16 in wide with the circle of 54 in for a front: the back
    // stands 60 in from the pole, the segment under the chord has asin(8/54).
    const double r = 54 * inch, a = 8 * inch;
    const double front = a * std::sqrt(r * r - a * a) + r * r * std::asin(a / r);
    CHECK(bare - volume(mesh) == Approx(10 * inch * (2 * a * 60 * inch - front)).epsilon(0.02));
}

TEST_CASE("a wider tube below and a second wythe end in ledges") {
    Design design = store_design();
    const double bare = volume(shell_of(design).mesh);
    TubeType wide = design.tubes[0];
    wide.id = "wide";
    wide.lay_flat = 22 * inch;
    wide.tamped_width = 19 * inch;
    design.tubes.push_back(wide);
    design.domes[0].lower_tube = "wide";
    design.domes[0].lower_height = 10 * inch;
    design.openings.clear();
    design.domes[0].datum.clear();
    const double plain = volume([] {
        Design closed = store_design();
        closed.openings.clear();
        closed.domes[0].datum.clear();
        return shell_of(closed).mesh;
    }());
    CHECK(plain > bare);
    // Four inches more outside 69 in, over the 15 in of the foundation and 10 in above the floor.
    const Mesh ledge = shell_of(design).mesh;
    CHECK(volume(ledge) - plain ==
          Approx(pi * (73.0 * 73 - 69 * 69) * 25 * std::pow(inch, 3)).epsilon(0.005));
    design.domes[0].second_wythe = 5 * inch;
    const Mesh both = shell_of(design).mesh;
    CHECK(volume(both) - volume(ledge) ==
          Approx(pi * (88.0 * 88 - 73 * 73) * 20 * std::pow(inch, 3)).epsilon(0.005));
}

TEST_CASE("the home is one solid, in one part of the model") {
    const Design design = home_design();
    for (const Diagnostic& fault : check_layout(design))
        FAIL(fault.message);
    const SolidResult result = shell_model(lay(design));
    REQUIRE(result.faults.empty());
    REQUIRE(result.model.parts.size() == 1);
    CHECK(result.model.parts[0].slug == "BIG");
    CHECK(result.model.parts[0].title == "Wall of big, east, north and west");
    CHECK(check_mesh(result.model.parts[0].mesh, true).least_angle_degrees > 10);
    shell_of(design);
}

TEST_CASE("domes that stand apart are parts of their own") {
    Design design = store_design();
    design.domes.insert(design.domes.begin(), second_dome(12, 84 * inch));
    const SolidResult result = shell_model(lay(design));
    REQUIRE(result.faults.empty());
    REQUIRE(result.model.parts.size() == 2);
    CHECK(result.model.parts[0].slug == "BATH");
    CHECK(result.model.parts[1].title == "Wall of store");
}

TEST_CASE("a large building is looked at in parts, with the same result as whole") {
    for (const double vary : {0.0, 1.0}) {
        CAPTURE(vary);
        const Design design = village_design(9, vary);
        for (const Diagnostic& fault : check_layout(design))
            FAIL(fault.message);
        const auto parts = building_parts(make_building_form(design));
        REQUIRE(parts.size() == 1);
        const WallFaces faces(parts[0].building);
        std::vector<double> known;
        for (const KnownHeight& height : faces.heights())
            known.push_back(height.z);
        const SlabSearch whole = search_slabs(faces, known, {}, 0.2);
        REQUIRE(whole.done);
        const WallSlabs by_parts = find_slabs(faces);
        REQUIRE_FALSE(by_parts.fault);
        REQUIRE(by_parts.slabs.size() == whole.slabs.size());
        for (std::size_t i = 0; i < whole.slabs.size(); ++i) {
            CHECK(by_parts.slabs[i].low == Approx(whole.slabs[i].low).margin(1e-9));
            CHECK(by_parts.slabs[i].high == Approx(whole.slabs[i].high).margin(1e-9));
            CHECK(by_parts.slabs[i].topology == whole.slabs[i].topology);
        }
        checked_shell(parts[0].building, 0.006, 5);
    }
}
