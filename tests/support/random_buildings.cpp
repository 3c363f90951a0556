#include "tests/support/random_buildings.hpp"

#include "geometry/plan/check_layout.hpp"
#include "tests/support/designs.hpp"

#include <array>
#include <cmath>
#include <string>

namespace coilwright::testing {

namespace {

class BuildingMaker {
public:
    BuildingMaker(std::uint64_t seed, int most_domes) : dice_(seed), most_domes_(most_domes) {
        design_.name = "Random building " + std::to_string(seed);
    }

    Design make() {
        set_course();
        turn_ = dice_.chance(0.3) ? 0 : dice_.between(0, 360);
        const int domes = dice_.whole(1, most_domes_);
        for (int i = 0; i < domes; ++i)
            add_dome(i);
        for (int i = dice_.whole(0, 2); i > 0; --i)
            attempt([&] { add_porch(); });
        for (int i = dice_.whole(0, 2 * domes); i > 0; --i)
            attempt([&] { add_opening(); });
        for (int i = dice_.whole(0, domes); i > 0; --i)
            attempt([&] { add_buttress(); });
        return std::move(design_);
    }

private:
    std::string next_id(const char* kind) { return kind + std::to_string(++count_); }
    double course() const { return design_.course.height; }
    double width() const { return *design_.tubes[0].tamped_width; }

    template <typename Values>
    auto one_of(const Values& values) {
        return values[static_cast<std::size_t>(
            dice_.whole(0, static_cast<int>(std::size(values)) - 1))];
    }

    /// Keeps what is added if the layout check lets it pass, and now and then if it does not.
    template <typename Add>
    bool attempt(Add add) {
        const Design before = design_;
        add();
        if (check_layout(design_).empty())
            return true;
        if (!dice_.chance(0.97))
            return false;
        design_ = before;
        return false;
    }

    void set_course() {
        design_.course.height = dice_.between(0.1, 0.15);
        design_.course.foundation = dice_.whole(0, 3);
        for (const char* id : {"main", "wide"}) {
            TubeType tube;
            tube.id = id;
            tube.tamped_width = design_.tubes.empty() ? dice_.between(0.25, 0.42)
                                                      : width() + dice_.between(0.05, 0.15);
            tube.lay_flat = *tube.tamped_width + 0.4 * course();
            design_.tubes.push_back(tube);
        }
    }

    /// Mostly a whole number of courses.
    double height(double low, double high) {
        const double value = dice_.between(low, high);
        return dice_.chance(0.7) ? course() * std::round(value / course()) : value;
    }

    ProfileSpec profile(double half_span) {
        ProfileSpec spec;
        spec.kind =
            one_of(std::array{ProfileKind::pointed, ProfileKind::pointed, ProfileKind::round,
                              ProfileKind::catenary, ProfileKind::parabola});
        if (spec.kind != ProfileKind::round)
            spec.rise = half_span * dice_.between(1.1, 2.4);
        return spec;
    }

    Dome dome() {
        Dome dome;
        dome.id = next_id("d");
        dome.tube = "main";
        dome.inside_diameter = dice_.between(2.2, 5.5);
        dome.springline = height(0.4, 1.4);
        dome.profile = profile(dome.inside_diameter / 2);
        if (dice_.chance(0.2)) {
            dome.top.kind = TopKind::skylight;
            dome.top.diameter = dome.inside_diameter * dice_.between(0.2, 0.4);
            dome.top.curb = dice_.whole(0, 2);
        }
        if (dice_.chance(0.2)) {
            dome.lower_tube = "wide";
            dome.lower_height = height(0.2, dome.springline);
        }
        if (dice_.chance(0.15))
            dome.second_wythe = height(0.1, dome.springline);
        return dome;
    }

    double base_width(const Dome& dome) const {
        const double first = dome.lower_tube.empty() ? width() : *design_.tubes[1].tamped_width;
        return first + (dome.second_wythe > 0 ? width() : 0);
    }
    double outer(const Dome& dome) const { return dome.inside_diameter / 2 + base_width(dome); }

    /// A bearing, often square to the building.
    Bearing bearing() {
        return turned({turn_}, dice_.chance(0.5) ? 90 * dice_.whole(0, 3) : dice_.between(0, 360));
    }

    void add_dome(int index) {
        if (index == 0) {
            design_.domes.push_back(dome());
            if (dice_.chance(0.5))
                design_.domes[0].at = {dice_.between(-20, 20), dice_.between(-20, 20)};
            return;
        }
        for (int trial = 0; trial < 4; ++trial)
            if (attempt([&] { add_next_dome(); }))
                return;
    }

    void add_next_dome() {
        const Dome from = one_of(design_.domes);
        Dome to = dome();
        const Bearing way = bearing();
        const double r = from.inside_diameter / 2, s = to.inside_diameter / 2;
        const double clear = outer(from) + outer(to);
        switch (dice_.whole(0, 3)) {
        case 0: { // a tunnel
            to.at = from.at + (clear + dice_.between(0.4, 1.5)) * along(way);
            Tunnel tunnel = this->tunnel(std::min(r, s));
            tunnel.from = from.id;
            tunnel.to = to.id;
            design_.tunnels.push_back(tunnel);
            break;
        }
        case 1: // apart
            to.at = from.at + (clear + dice_.between(1, 4)) * along(way);
            break;
        default: { // a join
            const bool open = dice_.chance(0.5);
            const double least = std::max(outer(from), outer(to));
            const double most = open ? r + s - width() : clear - width() / 2;
            to.at = from.at + dice_.between(least, most) * along(way);
            Join join;
            join.id = next_id("j");
            join.first = from.id;
            join.second = to.id;
            join.keep = open ? "" : dice_.chance(0.5) ? from.id : to.id;
            design_.joins.push_back(join);
        }
        }
        design_.domes.push_back(to);
    }

    Tunnel tunnel(double radius) {
        Tunnel tunnel;
        tunnel.id = next_id("t");
        tunnel.tube = "main";
        tunnel.width = dice_.between(0.3, 0.8) * radius;
        tunnel.springline = height(0.5, 1.3);
        tunnel.profile = profile(tunnel.width / 2);
        return tunnel;
    }

    void add_porch() {
        const Dome& from = one_of(design_.domes);
        Tunnel tunnel = this->tunnel(from.inside_diameter / 2);
        tunnel.from = from.id;
        tunnel.bearing = bearing();
        tunnel.reach = outer(from) + width() + dice_.between(0.3, 2);
        tunnel.end_wall = dice_.chance(0.5);
        tunnel.wall_stays = dice_.chance(0.2);
        design_.tunnels.push_back(tunnel);
    }

    void add_opening() {
        constexpr std::array heads{HeadKind::square, HeadKind::pointed, HeadKind::round,
                                   HeadKind::segmental, HeadKind::circle};
        const HeadKind head = one_of(heads);
        const double wide = dice_.between(0.25, 0.9);
        double tall = wide + dice_.between(0.1, 1);
        const double sill = dice_.chance(0.3) ? 0 : height(0.2, 1.2);
        if (head == HeadKind::circle)
            tall = wide;
        Opening opening =
            testing::opening(next_id("o").c_str(), bearing().degrees, wide, sill, tall, head);
        if (head == HeadKind::segmental)
            opening.head.rise = wide * dice_.between(0.1, 0.45);
        if (head == HeadKind::pointed)
            opening.head.rise = std::min(tall, wide * dice_.between(0.55, 1.2));
        if (!design_.tunnels.empty() && dice_.chance(0.35)) {
            const Tunnel& in = one_of(design_.tunnels);
            opening.in = in.id;
            opening.side = in.end_wall && dice_.chance(0.6) ? TunnelSide::end
                           : dice_.chance(0.5)              ? TunnelSide::left
                                                            : TunnelSide::right;
            if (opening.side != TunnelSide::end)
                opening.along = dice_.between(1, 6);
            opening.width *= 0.6;
            if (head == HeadKind::circle)
                opening.height = opening.width;
        } else {
            opening.in = one_of(design_.domes).id;
            if (dice_.chance(0.15)) {
                opening.use = OpeningUse::niche;
                opening.niche_depth = width() * dice_.between(0.2, 0.6);
            }
        }
        design_.openings.push_back(opening);
    }

    void add_buttress() {
        const Dome& on = one_of(design_.domes);
        Buttress pier;
        pier.id = next_id("b");
        pier.on = on.id;
        pier.width = width() * dice_.whole(1, 2);
        pier.height = height(0.4, on.springline + 0.5);
        pier.projection = dice_.between(0.3, 1.0);
        if (dice_.chance(0.7))
            pier.projection_top = pier.projection * dice_.between(0.2, 1);
        if (dice_.chance(0.3)) {
            for (const Opening& opening : design_.openings)
                if (opening.in == on.id)
                    pier.beside = opening.id;
            pier.gap = dice_.chance(0.5) ? 0 : dice_.between(0, 0.3);
        }
        const int count = dice_.whole(1, 3);
        for (int i = 0; pier.beside.empty() && i < count; ++i)
            pier.bearings.push_back(bearing().degrees);
        design_.buttresses.push_back(pier);
    }

    Dice dice_;
    int most_domes_;
    int count_ = 0;
    double turn_ = 0;
    Design design_;
};

} // namespace

Design random_building(std::uint64_t seed, int most_domes) {
    return BuildingMaker(seed, most_domes).make();
}

Design with_reveals(Design design, std::uint64_t seed) {
    Dice dice(seed + 1'000'000);
    const bool sound = check_layout(design).empty();
    for (Opening& opening : design.openings) {
        if (!dice.chance(1.0 / 3))
            continue;
        opening.reveal_plumb = true;
        if (sound && !check_layout(design).empty())
            opening.reveal_plumb = false;
    }
    return design;
}

namespace {

/// The opening with its head's springing, or the head itself if it is square, on a course joint.
Opening on_joint(Opening opening, double course) {
    double rise = 0;
    if (opening.head.kind == HeadKind::round)
        rise = opening.width / 2;
    else if (opening.head.kind == HeadKind::pointed || opening.head.kind == HeadKind::segmental)
        rise = opening.head.rise.value_or(opening.width * std::sqrt(3.0) / 2);
    const double springing = course * std::round((opening.sill + opening.height - rise) / course);
    opening.height = springing + rise - opening.sill;
    return opening;
}

} // namespace

Design with_fans_lintels_and_sleeves(Design design, std::uint64_t seed) {
    Dice dice(seed + 2'000'000);
    if (!check_layout(design).empty())
        return design;
    const auto keep_if_sound = [&](Design changed) {
        if (check_layout(changed).empty())
            design = std::move(changed);
    };
    for (std::size_t i = 0; i < design.openings.size(); ++i) {
        if (design.openings[i].use == OpeningUse::niche || !dice.chance(0.8))
            continue;
        Design changed = design;
        Opening& opening = changed.openings[i];
        opening = on_joint(opening, design.course.height);
        if (opening.head.kind == HeadKind::square) {
            LintelSpec lintel;
            lintel.kind = dice.chance(0.5) ? LintelKind::timber : LintelKind::concrete;
            lintel.bearing = dice.between(0.2, 0.4);
            if (dice.chance(0.5))
                lintel.depth = dice.between(0.08, 0.25);
            opening.head.lintel = lintel;
        } else {
            opening.head.laid = HeadLaid::fan;
        }
        keep_if_sound(std::move(changed));
    }
    for (int i = dice.whole(0, 3); i > 0; --i) {
        Design changed = design;
        const auto in =
            static_cast<std::size_t>(dice.whole(0, static_cast<int>(design.domes.size()) - 1));
        Sleeve added = sleeve(("s" + std::to_string(i)).c_str(), dice.between(0, 360),
                              dice.between(-0.1, 1.5), dice.between(0.02, 0.16));
        added.in = design.domes[in].id;
        changed.sleeves.push_back(added);
        keep_if_sound(std::move(changed));
    }
    return design;
}

} // namespace coilwright::testing
