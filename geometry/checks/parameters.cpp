#include "geometry/checks/parameters.hpp"

#include "geometry/plan/buttress_form.hpp"
#include "geometry/plan/section.hpp"
#include "geometry/plan/wall_form.hpp"
#include "geometry/statics/linear_program.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace coilwright {

namespace {

template <typename Element>
Element& the(std::vector<Element>& elements, const std::string& id) {
    return *std::find_if(elements.begin(), elements.end(),
                         [&](const Element& element) { return element.id == id; });
}
template <typename Element>
const Element& the(const std::vector<Element>& elements, const std::string& id) {
    return *std::find_if(elements.begin(), elements.end(),
                         [&](const Element& element) { return element.id == id; });
}

/// The least and the greatest width at which the head can be drawn as it is written.
std::pair<double, double> widths_of(const Opening& opening) {
    const std::optional<double>& rise = opening.head.rise;
    double least = opening.width / 4, most = 3 * opening.width;
    if (opening.head.kind == HeadKind::round)
        most = std::min(most, 2 * opening.height);
    else if (opening.head.kind == HeadKind::pointed)
        most = std::min(most, rise ? 2 * *rise : 2 * opening.height / std::sqrt(3.0));
    else if (opening.head.kind == HeadKind::segmental)
        least = std::max(least, 2 * *rise);
    return {least, most};
}

void add_id(std::vector<std::string>& ids, const std::string& id) {
    if (!id.empty() && std::find(ids.begin(), ids.end(), id) == ids.end())
        ids.push_back(id);
}

/// Makes parameters of one design.
class Maker {
public:
    Maker(const Elements& elements, const BuildingPlan& plan)
        : elements_(elements), plan_(plan), design_(plan.design),
          length_step_(design_.unit == DisplayUnit::feet ? metres_per_inch : 0.01) {}

    std::vector<Parameter> run(const std::string& word) {
        const std::size_t dot = word.find('.');
        const std::string kind = word.substr(0, dot);
        const std::string what = dot == std::string::npos ? "" : word.substr(dot + 1);
        if (kind == "opening" || kind == "own")
            for (const std::string& id : elements_.openings) {
                const Opening& opening = the(design_.openings, id);
                if (kind == "opening" || find_dome(design_, opening.in))
                    add_opening(opening, what);
            }
        else if (kind == "tunnel")
            for (const std::string& id : elements_.tunnels)
                add_tunnel(the(design_.tunnels, id), what);
        else if (kind == "buttress")
            for (const std::string& id : elements_.buttresses)
                add_buttress(the(design_.buttresses, id), what);
        else if (what == "tamped")
            for (const std::string& id : elements_.tubes)
                add_tamped(the(design_.tubes, id));
        else if (!add_whole(kind))
            for (const std::string& id : elements_.domes)
                add_dome(the(design_.domes, id), kind);
        return std::move(made_);
    }

private:
    const Elements& elements_;
    const BuildingPlan& plan_;
    const Design& design_;
    double length_step_;
    std::vector<Parameter> made_;

    /// A length from 1 cm to three times what it is.
    Parameter& add(const std::string& table, const std::string& key, double now,
                   std::function<void(Design&, double)> set) {
        Parameter one;
        one.table = table;
        one.key = key;
        one.now = now;
        one.step = length_step_;
        one.least = 0.01;
        one.most = 3 * now;
        one.scale = now;
        one.set = std::move(set);
        made_.push_back(std::move(one));
        return made_.back();
    }

    /// A limit of the rules; none binds in a design made without the reader.
    double rule(const char* name, double otherwise = unlimited) const {
        const Limit* set = find_limit(design_.limits, name);
        return set ? set->value : otherwise;
    }
    /// Bounds of use and practice, which what is past them already is not brought within.
    static void keep_over(Parameter& one, double least) {
        one.least = std::max(one.least, std::min(least, one.now));
    }
    static void keep_under(Parameter& one, double most) {
        one.most = std::min(one.most, std::max(most, one.now));
    }

    /// How high an opening's head may come: in a dome no higher than the room half way to the pole.
    double head_room(const Opening& opening) const {
        if (const DomeForm* dome = find_dome(plan_.schedule.building, opening.in))
            return dome->springline + height_at(dome->profile, dome->profile.half_span / 2);
        if (const TunnelForm* tunnel = find_tunnel(plan_.schedule.building, opening.in))
            return tunnel->crown();
        return opening.sill + 3 * opening.height;
    }

    static void set_rise(ProfileSpec& profile, double rise) {
        profile.rise = rise;
        profile.arc_radius.reset();
        profile.rise_to_span.reset();
    }
    static bool has_rise(const ProfileSpec& profile) {
        return profile.kind != ProfileKind::drawn && profile.kind != ProfileKind::round;
    }
    static std::string written_rise(const ProfileSpec& profile) {
        return profile.arc_radius     ? "profile.arc_radius"
               : profile.rise_to_span ? "profile.rise_to_span"
                                      : "";
    }

    void add_dome(const Dome& dome, const std::string& what) {
        const DomeForm& form = *find_dome(plan_.schedule.building, dome.id);
        const std::string table = "dome." + dome.id, id = dome.id;
        const double height = std::max(form.top(), form.course_height);
        if (what == "rise" && has_rise(dome.profile)) {
            Parameter& rise =
                add(table, "profile.rise", form.profile.rise,
                    [id](Design& d, double v) { set_rise(the(d.domes, id).profile, v); });
            rise.replaces = written_rise(dome.profile);
            rise.scale = height;
            rise.least = form.profile.rise / 3;
            const double usual = rule("rise.rise_to_diameter") * dome.inside_diameter;
            keep_over(rise, usual * (1 - rule("rise-slack.share")));
            keep_under(rise, usual * (1 + rule("rise-slack.share")));
        } else if (what == "springline") {
            Parameter& line = add(table, "springline", dome.springline,
                                  [id](Design& d, double v) { the(d.domes, id).springline = v; });
            line.step = design_.course.height;
            line.least = 0;
            line.most = dome.springline + height;
            line.scale = height;
        } else if (what == "diameter") {
            Parameter& wide =
                add(table, "inside_diameter", dome.inside_diameter,
                    [id](Design& d, double v) { the(d.domes, id).inside_diameter = v; });
            keep_over(wide, wide.now * (1 - rule("remedy.diameter")));
            keep_under(wide, wide.now * (1 + rule("remedy.diameter")));
        } else if (what == "skylight" && dome.top.kind == TopKind::skylight) {
            Parameter& eye = add(table, "top.diameter", dome.top.diameter,
                                 [id](Design& d, double v) { the(d.domes, id).top.diameter = v; });
            keep_under(eye, rule("remedy.skylight") * dome.inside_diameter);
        } else if (what == "tube") {
            add_tube(dome.tube);
        } else if (what == "lower_tube" && !dome.lower_tube.empty()) {
            add_tube(dome.lower_tube);
            Parameter& high = add(table, "lower_height", dome.lower_height,
                                  [id](Design& d, double v) { the(d.domes, id).lower_height = v; });
            high.step = design_.course.height;
            high.scale = height;
            high.most = form.top();
        }
    }

    /// Another tube: how wide that is tamped is not measured yet.
    void add_tube(const std::string& id) {
        const TubeType& tube = the(design_.tubes, id);
        const std::string table = "tube." + id;
        if (std::any_of(made_.begin(), made_.end(),
                        [&](const Parameter& one) { return one.table == table; }))
            return;
        Parameter& wide = add(table, "lay_flat", tube.lay_flat, [id](Design& d, double v) {
            the(d.tubes, id).lay_flat = v;
            the(d.tubes, id).tamped_width.reset();
        });
        wide.replaces = tube.tamped_width ? "tamped_width" : "";
        keep_under(wide, rule("remedy.lay_flat"));
    }

    void add_tamped(const TubeType& tube) {
        const std::string id = tube.id;
        if (!tube.tamped_width)
            return;
        Parameter& wide = add("tube." + id, "tamped_width", *tube.tamped_width,
                              [id](Design& d, double v) { the(d.tubes, id).tamped_width = v; });
        wide.most = tube.lay_flat;
    }

    void add_opening(const Opening& opening, const std::string& what) {
        const std::string table = "opening." + opening.id, id = opening.id;
        const bool circle = opening.head.kind == HeadKind::circle; // width and height are one
        const auto set_to = [id](double Opening::*member) {
            return [id, member](Design& d, double v) { the(d.openings, id).*member = v; };
        };
        if (what == "width" && !circle) {
            Parameter& wide = add(table, "width", opening.width, set_to(&Opening::width));
            std::tie(wide.least, wide.most) = widths_of(opening);
            if (opening.use == OpeningUse::door)
                keep_over(wide, rule("remedy.door_width", 0));
            if (opening.use == OpeningUse::window)
                keep_over(wide, rule("remedy.window_width", 0));
        } else if (what == "height" && !circle) {
            Parameter& high = add(table, "height", opening.height, set_to(&Opening::height));
            const OpeningForm form = make_opening_form(opening);
            high.least = std::max(high.least, form.top - form.springing); // room for its head
            high.step = design_.course.height;
            high.origin = -opening.sill;
            keep_under(high, head_room(opening) - opening.sill);
            if (opening.use == OpeningUse::door)
                keep_over(high, rule("remedy.door_height", 0));
            if (opening.use == OpeningUse::window)
                keep_over(high, rule("remedy.window_width", 0));
        } else if (what == "sill") {
            Parameter& low = add(table, "sill", opening.sill, set_to(&Opening::sill));
            low.step = design_.course.height;
            low.least = 0;
            low.most = opening.sill + opening.height;
            keep_under(low, head_room(opening) - opening.height);
            if (opening.use == OpeningUse::door) // a step that people climb
                keep_under(low, design_.ground.level + rule("threshold.step"));
            low.scale = opening.sill + opening.height;
        } else if (what == "bearing" && find_dome(design_, opening.in)) { // a tunnel has its own
            Parameter& way = add(table, "bearing", opening.bearing.degrees,
                                 [id](Design& d, double v) { the(d.openings, id).bearing = {v}; });
            way.unit = FindingUnit::degree;
            way.step = 1;
            way.least = std::max(0.0, way.now - 60);
            way.most = std::min(359.0, way.now + 60);
            way.scale = 90;
        } else if (what == "frame")
            add(table, "frame_depth", opening.frame_depth, set_to(&Opening::frame_depth));
        else if (what == "fan" && opening.head.laid == HeadLaid::fan) {
            const double depth = find_dome(plan_.schedule.building, opening.in)
                                     ? opening.head.depth.value_or(
                                           find_dome(plan_.schedule.building, opening.in)->width)
                                     : 0;
            if (depth > 0)
                add(table, "head.depth", depth,
                    [id](Design& d, double v) { the(d.openings, id).head.depth = v; });
        } else if (opening.head.lintel && what == "lintel_bearing")
            add(table, "head.lintel.bearing", opening.head.lintel->bearing,
                [id](Design& d, double v) { the(d.openings, id).head.lintel->bearing = v; });
        else if (opening.head.lintel && what == "lintel_depth")
            add(table, "head.lintel.depth",
                opening.head.lintel->depth.value_or(design_.course.height),
                [id](Design& d, double v) { the(d.openings, id).head.lintel->depth = v; })
                .step = design_.course.height;
        else if (opening.head.lintel && what == "lintel_width")
            for (const Lintel& lintel : plan_.schedule.lintels)
                if (lintel.opening == id)
                    add(table, "head.lintel.width", lintel.width,
                        [id](Design& d, double v) { the(d.openings, id).head.lintel->width = v; });
    }

    void add_tunnel(const Tunnel& tunnel, const std::string& what) {
        const std::string table = "tunnel." + tunnel.id, id = tunnel.id;
        const TunnelForm& form = *find_tunnel(plan_.schedule.building, id);
        if (what == "width") {
            Parameter& wide = add(table, "width", tunnel.width,
                                  [id](Design& d, double v) { the(d.tunnels, id).width = v; });
            keep_over(wide, rule("remedy.door_width", 0));
            keep_under(wide, rule("vault.span"));
        } else if (what == "springline") {
            Parameter& line = add(table, "springline", tunnel.springline,
                                  [id](Design& d, double v) { the(d.tunnels, id).springline = v; });
            line.step = design_.course.height;
            line.least = 0;
            line.scale = form.crown();
        } else if (what == "rise" && has_rise(tunnel.profile)) {
            Parameter& rise =
                add(table, "profile.rise", form.profile.rise,
                    [id](Design& d, double v) { set_rise(the(d.tunnels, id).profile, v); });
            rise.replaces = written_rise(tunnel.profile);
            rise.scale = form.crown();
        } else if (what == "tube")
            add_tube(tunnel.tube);
    }

    void add_buttress(const Buttress& pier, const std::string& what) {
        const std::string table = "buttress." + pier.id, id = pier.id;
        const DomeForm& dome = *find_dome(plan_.schedule.building, pier.on);
        const auto set_to = [id](std::optional<double> Buttress::*member) {
            return [id, member](Design& d, double v) { the(d.buttresses, id).*member = v; };
        };
        if (what == "width")
            add(table, "width", pier.width.value_or(2 * dome.width), set_to(&Buttress::width));
        else if (what == "height") {
            Parameter& high = add(table, "height", pier.height,
                                  [id](Design& d, double v) { the(d.buttresses, id).height = v; });
            high.step = design_.course.height;
        } else if (what == "projection")
            add(table, "projection", pier.projection, [id](Design& d, double v) {
                Buttress& one = the(d.buttresses, id);
                if (!one.projection_top) // written or not, the top keeps as it is
                    one.projection_top = std::min(one.projection, v);
                one.projection = v;
            });
        else if (what == "top")
            add(table, "projection_top", pier.projection_top.value_or(pier.projection),
                set_to(&Buttress::projection_top))
                .most = pier.projection;
    }

    /// What the design as a whole has one of.
    bool add_whole(const std::string& what) {
        if (what == "foundation") {
            Parameter& courses =
                add("course", "foundation", design_.course.foundation, [](Design& d, double v) {
                    d.course.foundation = static_cast<int>(std::lround(v));
                });
            courses.unit = FindingUnit::count;
            courses.step = 1;
            courses.least = 0;
            courses.most = 12;
            courses.scale = 10;
        } else if (what == "ground_level") {
            Parameter& level = add("ground", "level", design_.ground.level,
                                   [](Design& d, double v) { d.ground.level = v; });
            level.least = level.now - 1;
            level.most = level.now + 1;
            keep_under(level, 0); // the floor
            level.scale = 1;
        } else if (what == "gravel") {
            Parameter& deep = add("trench", "gravel_depth", design_.trench.gravel_depth,
                                  [](Design& d, double v) { d.trench.gravel_depth = v; });
            deep.most = deep.now + 2;
            deep.scale = 1;
        } else if (what == "least_radius") {
            double width = 0;
            for (const DomeForm& dome : plan_.schedule.building.domes)
                width = std::max(width, dome.width);
            Parameter& radius = add("course", "least_inside_radius",
                                    design_.course.least_inside_radius.value_or(width / 2),
                                    [](Design& d, double v) { d.course.least_inside_radius = v; });
            radius.most = 2 * width;
        } else if (what == "longest_tube") {
            add("course", "longest_tube", design_.course.longest_tube,
                [](Design& d, double v) { d.course.longest_tube = v; });
        } else if (what == "strands") {
            Parameter& wires =
                add("wire", "strands", design_.wire.strands.value_or(1),
                    [](Design& d, double v) { d.wire.strands = static_cast<int>(std::lround(v)); });
            wires.unit = FindingUnit::count;
            wires.step = 1;
            wires.least = 1;
            wires.most = 4;
            wires.scale = 2;
        } else
            return false;
        return true;
    }
};

} // namespace

double Parameter::value_at(int n, DisplayUnit shown) const {
    const double at = (now - origin) / step;
    const double whole = n > 0 ? std::floor(at + 1e-6) : std::ceil(at - 1e-6);
    const double value = origin + (whole + n) * step;
    if (unit != FindingUnit::metre)
        return value;
    const double grain = shown == DisplayUnit::feet ? metres_per_inch / 8 : 0.001;
    return std::round(value / grain) * grain;
}

Elements elements_of(const std::string& subject, const BuildingPlan& plan) {
    Elements found;
    const Design& design = plan.design;
    const auto add_of_dome = [&](const std::string& id) {
        add_id(found.domes, id);
        for (const Tunnel& tunnel : design.tunnels)
            if (tunnel.from == id || tunnel.to == id)
                add_id(found.tunnels, tunnel.id);
        for (const Opening& opening : design.openings) {
            const Tunnel* tunnel = find_tunnel(design, opening.in);
            if (opening.in == id || (tunnel && tunnel->from == id))
                add_id(found.openings, opening.id);
        }
        for (const Buttress& pier : design.buttresses)
            if (pier.on == id)
                add_id(found.buttresses, pier.id);
    };
    for (std::size_t at = 0; at < subject.size();) {
        const std::size_t end = std::min(subject.find(' ', at), subject.size());
        const std::string word = subject.substr(at, end - at);
        at = end + 1;
        const std::size_t dot = word.find('.');
        if (dot == std::string::npos)
            continue; // "+", "course", a number
        const std::string kind = word.substr(0, dot), id = word.substr(dot + 1);
        if (kind == "dome")
            add_of_dome(id);
        else if (kind == "tube")
            add_id(found.tubes, id);
        else if (kind == "tunnel") {
            add_id(found.tunnels, id);
            add_id(found.domes, find_tunnel(design, id)->from);
        } else if (kind == "opening") {
            add_id(found.openings, id);
            const std::string& in = find_opening(design, id)->in;
            const Tunnel* tunnel = find_tunnel(design, in);
            add_id(found.tunnels, tunnel ? in : "");
            add_id(found.domes, tunnel ? tunnel->from : in);
        } else if (kind == "buttress") {
            for (const ButtressForm& pier : plan.schedule.building.buttresses)
                if (pier.id == id || pier.table == id) {
                    add_id(found.buttresses, pier.table);
                    add_id(found.domes, pier.dome);
                }
        }
    }
    return found;
}

std::vector<Parameter> parameters(const std::string& word, const Elements& elements,
                                  const BuildingPlan& plan) {
    return Maker(elements, plan).run(word);
}

} // namespace coilwright
