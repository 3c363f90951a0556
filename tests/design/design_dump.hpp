// Everything that a design says, without the places where it says it, for comparing designs.
#pragma once

#include "geometry/design/design.hpp"

#include <cstdio>
#include <string>

namespace coilwright {

class DesignDump {
public:
    std::string text;

    void add(const std::string& value) { text += value + "|"; }
    void add(double value) {
        char buffer[40];
        std::snprintf(buffer, sizeof buffer, "%a|", value);
        text += buffer;
    }
    void add(int value) { text += std::to_string(value) + "|"; }
    void add(bool value) { text += value ? "yes|" : "no|"; }
    void add(Bearing value) { add(value.degrees); }
    template <typename Enum, typename = std::enable_if_t<std::is_enum_v<Enum>>>
    void add(Enum value) {
        add(static_cast<int>(value));
    }
    template <typename A, typename B>
    void add(const std::pair<A, B>& value) {
        add(value.first);
        add(value.second);
    }
    template <typename Value>
    void add(const std::optional<Value>& value) {
        if (value)
            add(*value);
        else
            text += "none|";
    }
    template <typename Value>
    void add(const std::vector<Value>& values) {
        for (const Value& value : values)
            add(value);
        text += "end\n";
    }
    template <typename... Values>
    void all(const Values&... values) {
        (add(values), ...);
        text += "\n";
    }

    void add(const TubeType& t) { all(t.id, t.lay_flat, t.tamped_width, t.roll, t.sound); }
    void add(const ProfileSpec& p) {
        all(p.kind, p.rise, p.arc_radius, p.rise_to_span, p.fit_rise, p.points);
    }
    void add(const Dome& d) {
        all(d.id, d.at.x(), d.at.y(), d.use, d.inside_diameter, d.fit_diameter, d.springline,
            d.fit_springline, d.profile, d.top.kind, d.top.diameter, d.top.curb, d.top.glazing_load,
            d.tube, d.datum, d.chain_height, d.lower_tube, d.lower_height, d.second_wythe, d.sound);
        all(d.fit.clear_height, d.fit.clear_square, d.fit.clear_circle, d.fit.apex,
            d.fit.floor_area, d.fit.outside_area);
    }
    void add(const Opening& o) {
        all(o.id, o.in, o.use, o.bearing, o.width, o.sill, o.height, o.head.kind, o.head.rise,
            o.head.laid, o.head.depth, o.head.lintel, o.frame, o.frame_depth, o.reveal_plumb,
            o.side, o.along, o.niche_depth, o.sound);
    }
    void add(const LintelSpec& l) { all(l.kind, l.bearing, l.depth, l.width); }
    void add(const Tunnel& t) {
        all(t.id, t.from, t.to, t.bearing, t.width, t.springline, t.profile, t.reach, t.end_wall,
            t.wall_stays, t.tube, t.sound);
    }
    void add(const Buttress& b) {
        all(b.id, b.on, b.bearings, b.beside, b.gap, b.width, b.height, b.projection,
            b.projection_top, b.sound);
    }
    void add(const Join& j) { all(j.id, j.first, j.second, j.keep, j.sound); }
    void add(const ContextObject& c) {
        all(c.id, c.file, c.at.x(), c.at.y(), c.base, c.bearing, c.metres, c.y_up, c.sound);
    }
    void add(const Sleeve& s) {
        all(s.id, s.in, s.bearing, s.height, s.diameter, s.side, s.along, s.sound);
    }
    void add(const Fill& f) {
        all(f.id, f.kind, f.courses, f.density, f.dry_density, f.strength, f.cohesion,
            f.friction_angle, f.stabiliser, f.ratio, f.by, f.age_per_lift, f.sound);
    }
    void add(const HeadroomRule& r) {
        all(r.use, r.source, r.section, r.clear_height, r.low_height, r.required_area, r.share,
            r.clear_square, r.least_dimension);
    }
};

inline std::string design_dump(const Design& d) {
    DesignDump dump;
    dump.all(d.format, d.name, d.unit);
    const CourseRules& c = d.course;
    dump.all(c.height, c.foundation, c.end_allowance, c.longest_tube, c.joint_lap,
             c.least_inside_radius, c.curve, c.edge, c.tamp_gap, c.strike_age_days, c.sound);
    dump.all(d.tubes, d.domes, d.openings, d.tunnels, d.buttresses, d.joins, d.sleeves, d.context,
             d.fills);
    dump.all(d.finish.inside_plaster, d.finish.outside_plaster, d.finish.inside_stated,
             d.finish.outside_stated, d.finish.floor_build_up);
    const Ground& g = d.ground;
    dump.all(g.level, g.level_stated, g.frost_depth, g.bearing_capacity, g.friction,
             g.friction_stated, g.unit_weight, g.friction_angle, g.slope);
    dump.all(d.wire.strands, d.wire.lap, d.wire.breaking, d.wire.joint_factor, d.wire.hoop_tension);
    dump.all(d.compass.pole_diameter, d.compass.chain_height, d.compass.arm);
    dump.all(d.joint.friction, d.joint.friction_stated, d.joint.friction_bare, d.joint.factor,
             d.joint.factor_stated);
    dump.all(d.trench.gravel_depth, d.trench.width, d.trench.drain, d.trench.outfall);
    dump.all(d.site.wind_pressure, d.site.seismic_acceleration, d.site.snow);
    for (const auto& top : d.as_laid_tops)
        dump.all(top);
    for (const auto& [use, rule] : d.rules)
        dump.add(rule);
    return dump.text;
}

} // namespace coilwright
