#include "tests/support/home.hpp"

#include "tests/support/designs.hpp"

#include <cmath>
#include <string>

namespace coilwright::testing {

namespace {

Dome dome(const char* id, Vec2 at, double diameter, double springline, ProfileKind kind,
          double rise) {
    Dome dome;
    dome.id = id;
    dome.at = at;
    dome.inside_diameter = diameter;
    dome.springline = springline;
    dome.profile.kind = kind;
    dome.profile.rise = rise;
    dome.tube = "main";
    return dome;
}

void add_opening(Design& design, const char* id, const char* in, double bearing, double width,
                 double sill, double height, HeadKind head, std::optional<double> rise = {}) {
    Opening made = opening(id, bearing, width, sill, height, head);
    made.in = in;
    made.head.rise = rise;
    design.openings.push_back(made);
}

void add_buttress(Design& design, const char* id, const char* on, std::vector<double> bearings,
                  double height, double projection) {
    Buttress made;
    made.id = id;
    made.on = on;
    made.bearings = std::move(bearings);
    made.width = 0.6;
    made.height = height;
    made.projection = projection;
    made.projection_top = 0.3;
    design.buttresses.push_back(made);
}

/// Courses and a tube, and nothing laid of them.
Design bare_design(const char* name) {
    Design design;
    design.name = name;
    design.course.height = 0.127;
    TubeType tube;
    tube.id = "main";
    tube.lay_flat = 0.432;
    tube.tamped_width = 0.381;
    design.tubes = {tube};
    return design;
}

} // namespace

Design home_design() {
    Design design = bare_design("Home of the tests");
    design.domes = {dome("big", {0, 0}, 5, 1.016, ProfileKind::pointed, 4.6),
                    dome("east", {3.55, 0}, 3.2, 0.889, ProfileKind::pointed, 3),
                    dome("north", {0, 6.2}, 3, 0.762, ProfileKind::catenary, 2.8),
                    dome("west", {-3.45, 0.36}, 3, 0.889, ProfileKind::parabola, 2.9)};
    design.domes[2].top.kind = TopKind::skylight;
    design.domes[2].top.diameter = 1;
    design.joins.resize(2);
    design.joins[0].id = "open";
    design.joins[0].first = "big";
    design.joins[0].second = "east";
    design.joins[1].id = "kept";
    design.joins[1].first = design.joins[1].keep = "big";
    design.joins[1].second = "west";

    Tunnel tunnel;
    tunnel.id = "link";
    tunnel.from = "big";
    tunnel.to = "north";
    tunnel.tube = "main";
    tunnel.width = 0.9;
    tunnel.springline = 1.1;
    tunnel.profile.kind = ProfileKind::round;
    design.tunnels.push_back(tunnel);
    tunnel.id = "porch";
    tunnel.to.clear();
    tunnel.bearing = {180};
    tunnel.width = 1;
    tunnel.profile.kind = ProfileKind::pointed;
    tunnel.profile.rise = 1;
    tunnel.reach = 5;
    tunnel.end_wall = true;
    design.tunnels.push_back(tunnel);

    add_opening(design, "e1", "east", 90, 0.8, 0, 2, HeadKind::pointed, 0.6);
    add_opening(design, "e2", "east", 30, 0.5, 0.889, 0.5, HeadKind::segmental, 0.1);
    add_opening(design, "e3", "east", 150, 0.5, 0.889, 0.5, HeadKind::square);
    add_opening(design, "front", "porch", 0, 0.4, 0.508, 0.6, HeadKind::round);
    add_opening(design, "n1", "north", 0, 0.5, 0.889, 0.6, HeadKind::round);
    add_opening(design, "n2", "north", 90, 0.5, 0.889, 0.5, HeadKind::square);
    add_opening(design, "w1", "big", 140, 0.6, 0.889, 0.8, HeadKind::round);
    add_opening(design, "w2", "big", 225, 0.6, 0.889, 0.8, HeadKind::pointed, 0.5);
    add_opening(design, "w3", "big", 320, 0.5, 1.016, 0.5, HeadKind::circle);
    add_opening(design, "x1", "west", 270, 0.5, 0.889, 0.6, HeadKind::round);
    add_opening(design, "x2", "big", 277, 0.7, 0, 1.9, HeadKind::round);
    add_opening(design, "x3", "west", 200, 0.4, 0.889, 0.4, HeadKind::round);
    design.openings.back().use = OpeningUse::niche;
    design.openings.back().niche_depth = 0.2;
    add_buttress(design, "flank", "big", {42, 207, 335}, 1.4, 0.7);
    add_buttress(design, "rest", "north", {45, 135, 225, 315}, 1.2, 0.6);
    add_buttress(design, "stay", "west", {235}, 1.2, 0.6);
    return design;
}

Design home_for_booleans() {
    Design design = home_design();
    std::erase_if(design.domes, [](const Dome& dome) { return dome.id == "west"; });
    std::erase_if(design.openings, [](const Opening& opening) {
        return opening.in == "west" || opening.id == "x2";
    });
    std::erase_if(design.buttresses, [](const Buttress& pier) { return pier.on == "west"; });
    std::erase_if(design.joins, [](const Join& join) { return join.id == "kept"; });
    design.tunnels[0].profile.kind = ProfileKind::pointed;
    design.tunnels[0].profile.rise = 0.9;
    return design;
}

Design village_design(int domes, double vary) {
    Design design = bare_design("Village of the tests");
    const int side = static_cast<int>(std::ceil(std::sqrt(domes)));
    const auto id = [](const char* kind, int number) {
        const std::string digits = std::to_string(number);
        return kind + std::string(3 - digits.size(), '0') + digits;
    };
    for (int i = 0; i < domes; ++i) {
        const double more = vary * i;
        design.domes.push_back(dome(id("d", i).c_str(), {6.5 * (i % side), 6.5 * (i / side)},
                                    3.8 + 0.003 * more, 0.6 + 0.0037 * more, ProfileKind::pointed,
                                    3.4));
        for (const int window : {0, 1})
            add_opening(design, id(window == 0 ? "v" : "w", i).c_str(), id("d", i).c_str(),
                        45 + 180 * window, 0.28, 0.5 + 0.0053 * more, 0.5, HeadKind::round);
        Buttress pier;
        pier.id = id("b", i);
        pier.on = id("d", i);
        pier.bearings = {135, 315};
        pier.width = 0.3;
        pier.height = 0.9 + 0.002 * more;
        pier.projection = 0.5;
        design.buttresses.push_back(pier);
        Tunnel link;
        link.to = id("d", i);
        link.tube = "main";
        link.width = 0.8;
        link.springline = 0.9 + 0.003 * more;
        link.profile.kind = ProfileKind::round;
        for (const int back : {1, side}) {
            if (back == 1 ? i % side == 0 : i < side)
                continue;
            link.id = id(back == 1 ? "t" : "u", i);
            link.from = id("d", i - back);
            design.tunnels.push_back(link);
        }
    }
    return design;
}

} // namespace coilwright::testing
