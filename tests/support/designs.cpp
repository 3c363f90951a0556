#include "tests/support/designs.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace coilwright::testing {

namespace {

constexpr double inch = metres_per_inch;

ProfileSpec random_profile(Dice& dice, double half_span) {
    ProfileSpec spec;
    switch (dice.whole(0, 4)) {
    case 0:
        spec.kind = ProfileKind::pointed;
        spec.rise = half_span *
                    (dice.chance(0.2) ? 1.0 + 0.2 * dice.between(0, 1) : dice.between(1.0, 3.0));
        break;
    case 1:
        spec.kind = ProfileKind::round;
        break;
    case 2:
        spec.kind = ProfileKind::catenary;
        spec.rise = half_span * dice.between(0.5, 2.5);
        break;
    case 3:
        spec.kind = ProfileKind::parabola;
        spec.rise = half_span * dice.between(0.5, 2.5);
        break;
    default: {
        spec.kind = ProfileKind::drawn;
        const double rise = half_span * dice.between(1.0, 2.5);
        const int inner = dice.whole(1, 4);
        spec.points.emplace_back(0.0, half_span);
        for (int i = 1; i <= inner; ++i) { // on an ellipse, shaken a little inward
            const double y = rise * i / (inner + 1.0);
            spec.points.emplace_back(y, half_span * std::sqrt(1 - y * y / rise / rise) *
                                            dice.between(0.93, 1.0));
        }
        spec.points.emplace_back(rise, 0.0);
        for (std::size_t i = 1; i < spec.points.size(); ++i)
            spec.points[i].second = std::min(spec.points[i].second, spec.points[i - 1].second);
    }
    }
    return spec;
}

Opening random_opening(Dice& dice, const Dome& dome, double course_height, int index) {
    constexpr HeadKind heads[] = {HeadKind::square, HeadKind::pointed, HeadKind::round,
                                  HeadKind::segmental, HeadKind::circle};
    const double width = dice.between(0.2, 0.55) * dome.inside_diameter / 2 + 0.2;
    const HeadKind head = heads[dice.whole(0, 4)];
    Opening result = opening(("o" + std::to_string(index)).c_str(), dice.between(0, 360), width, 0,
                             width + dice.between(0.1, 1.2), head);
    result.in = dome.id;
    if (dice.chance(0.6))
        result.sill = dice.chance(0.7) ? course_height * dice.whole(0, 8) : dice.between(0, 1.2);
    if (head == HeadKind::segmental)
        result.head.rise = width * dice.between(0.1, 0.5);
    if (head == HeadKind::pointed && dice.chance(0.5))
        result.head.rise = std::min(result.height, width * dice.between(0.5, 1.2));
    if (head == HeadKind::circle)
        result.height = width;
    return result;
}

} // namespace

Opening opening(const char* id, double bearing, double width, double sill, double height,
                HeadKind head) {
    Opening result;
    result.id = id;
    result.in = "store";
    result.use = sill == 0 ? OpeningUse::door : OpeningUse::window;
    result.bearing = {bearing};
    result.width = width;
    result.sill = sill;
    result.height = height;
    result.head.kind = head;
    return result;
}

Design store_design() {
    Design design;
    design.name = "Store of the tests";
    design.course.height = 5 * inch;
    TubeType tube;
    tube.id = "main";
    tube.lay_flat = 17 * inch;
    tube.tamped_width = 15 * inch;
    design.tubes.push_back(tube);
    Dome dome;
    dome.id = "store";
    dome.inside_diameter = 108 * inch;
    dome.springline = 20 * inch;
    dome.profile.kind = ProfileKind::pointed;
    dome.profile.rise = 108 * inch;
    dome.tube = "main";
    dome.datum = "door";
    design.domes.push_back(dome);
    Opening door = opening("door", 150, 32 * inch, 0, 80 * inch, HeadKind::pointed);
    door.head.rise = 24 * inch;
    design.openings.push_back(door);
    return design;
}

Tunnel porch() {
    Tunnel tunnel;
    tunnel.id = "porch";
    tunnel.from = "store";
    tunnel.bearing = {330};
    tunnel.width = 36 * inch;
    tunnel.springline = 45 * inch;
    tunnel.profile.kind = ProfileKind::pointed;
    tunnel.profile.rise = 36 * inch;
    tunnel.reach = 114 * inch;
    tunnel.tube = "main";
    return tunnel;
}

Buttress flank() {
    Buttress buttress;
    buttress.id = "flank";
    buttress.on = "store";
    buttress.bearings = {60, 240};
    buttress.width = 30 * inch;
    buttress.height = 40 * inch;
    buttress.projection = 30 * inch;
    buttress.projection_top = 15 * inch;
    return buttress;
}

Design store_with_porch() {
    Design design = store_design();
    design.tunnels.push_back(porch());
    design.buttresses.push_back(flank());
    return design;
}

Design two_stores(double apart, const std::string& keep) {
    Design design = store_design();
    design.openings[0].bearing = {270};
    Dome second = design.domes[0];
    second.id = "store2";
    second.datum.clear();
    second.at = {apart, 0};
    design.domes.push_back(second);
    Join join;
    join.id = "both";
    join.first = "store";
    join.second = "store2";
    join.keep = keep;
    design.joins.push_back(join);
    return design;
}

Opening in_porch(const char* id, TunnelSide side, double along, double width, double sill,
                 double height, HeadKind head) {
    Opening result = opening(id, 330, width, sill, height, head);
    result.in = "porch";
    result.side = side;
    result.along = along;
    if (side != TunnelSide::end)
        result.bearing = {side == TunnelSide::left ? 240.0 : 60.0};
    return result;
}

Sleeve sleeve(const char* id, double bearing, double height, double diameter) {
    Sleeve result;
    result.id = id;
    result.in = "store";
    result.bearing = {bearing};
    result.height = height;
    result.diameter = diameter;
    return result;
}

// SplitMix64 (Steele, Lea and Flood 2014): one multiply-xorshift step a number.
std::uint64_t Dice::bits() {
    std::uint64_t z = (state_ += 0x9e3779b97f4a7c15ULL);
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
    return z ^ (z >> 31);
}

double Dice::between(double low, double high) {
    return low + (high - low) * static_cast<double>(bits() >> 11) * 0x1.0p-53;
}

int Dice::whole(int low, int high) {
    return low + static_cast<int>(bits() % static_cast<std::uint64_t>(high - low + 1));
}

Design random_design(std::uint64_t seed) {
    Dice dice(seed);
    Design design;
    design.name = "Random " + std::to_string(seed);
    design.unit = dice.chance(0.5) ? DisplayUnit::feet : DisplayUnit::metres;
    design.course.height = dice.between(0.09, 0.17);
    design.course.foundation = dice.whole(0, 4);
    design.course.longest_tube = dice.between(2.5, 10);
    design.course.joint_lap = dice.between(0.2, 0.6);
    TubeType tube;
    tube.id = "main";
    tube.lay_flat = dice.between(2.2, 4.0) * design.course.height;
    if (dice.chance(0.3))
        tube.tamped_width = tube.lay_flat - design.course.height * dice.between(0.3, 0.9);
    design.tubes.push_back(tube);
    design.finish.inside_plaster = dice.chance(0.5) ? dice.between(0, 0.06) : 0;
    design.compass.pole_diameter = dice.chance(0.5) ? 0.06 : 0;
    const int domes = dice.chance(0.8) ? 1 : 2;
    int count = 0;
    for (int i = 0; i < domes; ++i) {
        Dome dome;
        dome.id = std::string("dome") + static_cast<char>('a' + i);
        dome.at = {i * dice.between(12, 20), dice.between(-1, 1)};
        dome.inside_diameter = dice.between(1.6, 5.5);
        dome.springline =
            dice.chance(0.5) ? design.course.height * dice.whole(0, 14) : dice.between(0, 1.8);
        dome.profile = random_profile(dice, dome.inside_diameter / 2);
        dome.tube = "main";
        if (dice.chance(0.3)) {
            dome.top.kind = TopKind::skylight;
            dome.top.diameter = dice.between(0.4, 0.5 * dome.inside_diameter);
            dome.top.curb = dice.whole(0, 3);
        }
        const int openings = dice.whole(0, 3);
        for (int k = 0; k < openings; ++k)
            design.openings.push_back(random_opening(dice, dome, design.course.height, count++));
        design.domes.push_back(dome);
    }
    return design;
}

} // namespace coilwright::testing
