// The door that one walks out by, and the opening that one climbs out by.
#include "geometry/checks/rooms.hpp"
#include "geometry/checks/use_findings.hpp"
#include "geometry/plan/check_layout.hpp"
#include "geometry/plan/clear_outline.hpp"
#include "geometry/plan/fit.hpp"
#include "geometry/plan/lay.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

/// What is asked of an escape opening.
struct EscapeRule {
    const Limit *area, *area_at_grade, *grade_sill, *height, *width, *sill;
    bool whole() const { return area && area_at_grade && grade_sill && height && width && sill; }
};

/// What an opening gives of it.
struct Escape {
    const OpeningPlan* opening = nullptr;
    double area = 0, needed = 0, bottom = 0;
    double width = 0,
           height = 0; // of the largest rectangle, or of the whole if none is large enough
    bool fits = false; // a rectangle of the least width and height
    bool low = false;
    double ratio() const {
        return (fits ? 1 : 0.5) * (low ? 1 : 0.5) * (needed > 0 ? area / needed : 1);
    }
    bool passes(double tie = 1e-9) const { return fits && low && area >= needed - tie; }
};

class WaysOut {
public:
    explicit WaysOut(const BuildingPlan& plan)
        : plan_(plan), building_(plan.schedule.building), wording_{plan.design.unit},
          plaster_(plan.design.finish.inside_plaster) {}

    std::vector<Finding> run() {
        for (const DomeGroup& house : houses_of(building_))
            if (!lived_in(house, building_).domes.empty())
                check_egress(house);
        for (const DomeGroup& room : rooms_of(building_))
            if (!lived_in(room, building_).domes.empty())
                check_escape(room);
        return std::move(findings_);
    }

private:
    const BuildingPlan& plan_;
    const BuildingForm& building_;
    Wording wording_;
    double plaster_;
    std::vector<Finding> findings_;

    const Limit* limit(const char* name) const { return find_limit(plan_.design.limits, name); }

    bool serves(const OpeningForm& form, const DomeGroup& group) const {
        return holds_dome(group, building_, dome_served(form, building_)) &&
               leads_out(form, building_);
    }

    /// A way out with the height over which a width is clear.
    struct Way {
        std::string id;
        const OpeningPlan* door = nullptr; // none: the open end of a tunnel
        double width = 0, height = 0;
    };

    Way way_of(const OpeningPlan& door, double width, const TunnelForm* tunnel) const {
        const ClearOutline outline = clear_outline(door);
        Way way{door.form.id, &door, 2 * (outline.half_width - outline.lost),
                top_over_width(outline, width) - outline.bottom};
        if (tunnel) {
            const ClearOutline passage = clear_outline(*tunnel, plaster_);
            way.width = std::min(way.width, 2 * (passage.half_width - passage.lost));
            way.height = std::min(way.height, top_over_width(passage, width) - passage.bottom);
        }
        return way;
    }
    Way way_of(const OpeningPlan& door, double width) const {
        return way_of(door, width, find_tunnel(building_, door.form.in));
    }

    void check_egress(const DomeGroup& house) {
        const Limit *width = limit("egress-door.clear_width"),
                    *height = limit("egress-door.clear_height");
        if (!width || !height)
            return;
        std::optional<Way> best;
        const auto consider = [&](const Way& way) {
            const auto better = [&](const Way& a, const Way& b) {
                const double wa = std::min(a.width, width->value),
                             wb = std::min(b.width, width->value);
                return wa != wb ? wa > wb : a.height > b.height;
            };
            if (!best || better(way, *best))
                best = way;
        };
        for (const OpeningPlan& opening : plan_.schedule.openings)
            if (opening.form.use == OpeningUse::door && serves(opening.form, house))
                consider(way_of(opening, width->value));
        for (const TunnelForm& tunnel : building_.tunnels)
            if (tunnel.to.empty() && !tunnel.end_wall && !tunnel.wall_stays &&
                holds_dome(house, building_, tunnel.from)) {
                const ClearOutline passage = clear_outline(tunnel, plaster_);
                consider({tunnel.id, nullptr, 2 * (passage.half_width - passage.lost),
                          top_over_width(passage, width->value) - passage.bottom});
            }
        const Subject subject = subject_of(house, plan_.design, building_);
        if (!best) {
            Finding found =
                not_judged("egress-door", subject, *width, "No door leads out of this building.");
            found.verdict = Verdict::fails;
            found.remedy = "Add a door with " + wording_.length(width->value) + " clear over " +
                           wording_.length(height->value) + ".";
            findings_.push_back(std::move(found));
            return;
        }
        const bool narrow = best->width < width->value - 1e-6;
        Finding found = narrow
                            ? held_against("egress-door", subject, best->width, FindingUnit::metre,
                                           Bound::at_least, *width, Verdict::fails)
                            : held_against("egress-door", subject, best->height, FindingUnit::metre,
                                           Bound::at_least, *height, Verdict::fails);
        found.message =
            "The best way out, '" + best->id + "', is " + wording_.length(best->width) +
            " wide between " +
            (best->door ? "plaster and frame" : "its plaster (an open end, without a frame)") +
            (narrow ? " (" + wording_.length(width->value) + " needed)."
                    : "; " + wording_.length(width->value) + " fit up to " +
                          wording_.length_down(best->height) + " (" +
                          wording_.length(height->value) + " needed).");
        if (found.verdict != Verdict::holds)
            found.remedy = better_door(*best, width->value, height->value);
        findings_.push_back(std::move(found));
    }

    /// A door with the clear width and the least height, in whole courses, that gives the clear
    /// one; with its own head, else square.
    std::string better_door(const Way& way, double width, double height) const {
        const Opening* written = way.door ? find_opening(plan_.design, way.id) : nullptr;
        const std::string fallback = "Make a way out with " + wording_.length(width) +
                                     " clear over " + wording_.length(height) + ".";
        if (!written)
            return better_tunnel(way.id, width, height).value_or(fallback);
        const double lost = plaster_ + written->frame;
        const double step = plan_.design.unit == DisplayUnit::feet ? metres_per_inch : 0.01;
        Opening trial = *written;
        trial.width = std::max(written->width, std::ceil((width + 2 * lost) / step - 1e-6) * step);
        const auto sizes = [&] {
            return "Make '" + way.id + "' " + wording_.length(trial.width) + " by " +
                   wording_.length(trial.height) + ", rough";
        };
        for (const bool square : {false, true}) {
            if (square && written->head.kind == HeadKind::square)
                break;
            if (square) {
                trial.head = {};
                trial.head.kind = HeadKind::square;
            }
            if (tall_enough(trial, *written, *way.door, width, height, nullptr))
                return sizes() + (square ? ", with a square head on a lintel." : ".");
        }
        trial.head = written->head;
        if (const Tunnel* tunnel = find_tunnel(plan_.design, written->in)) {
            // As much wall beside the door as it has now.
            Tunnel wider = *tunnel;
            wider.width += trial.width - written->width;
            if (tall_enough(trial, *written, *way.door, width, height, &wider))
                return sizes() + ", in a tunnel " + wording_.length(wider.width) + " wide.";
        }
        return fallback +
               " Here it finds no place: raise the springline, or lead out by a tunnel with the "
               "door in its end wall.";
    }

    /// Raises a door by whole courses until the width is clear up to the height; whether it then
    /// has its place in the building, with `tunnel`, if given, in place of the tunnel of that id.
    bool tall_enough(Opening& trial, const Opening& written, const OpeningPlan& planned_now,
                     double width, double height, const Tunnel* tunnel) const {
        trial.height = written.height;
        if (trial.head.kind == HeadKind::round)
            trial.height = std::max(trial.height, trial.width / 2);
        std::optional<TunnelForm> passage;
        if (tunnel)
            passage = make_tunnel_form(plan_.design, *tunnel);
        const TunnelForm* now = find_tunnel(building_, written.in);
        for (int k = 0; k <= 24; ++k, trial.height += plan_.design.course.height) {
            OpeningPlan planned = planned_now;
            planned.form = make_opening_form(trial);
            planned.form.in_tunnel = planned_now.form.in_tunnel;
            if (way_of(planned, width, passage ? &*passage : now).height >= height - 1e-9)
                return can_stand(trial, tunnel);
        }
        return false;
    }

    /// A tunnel with a higher springline, in whole courses, and as wide as it must be.
    std::optional<std::string> better_tunnel(const std::string& id, double width,
                                             double height) const {
        const Tunnel* written = find_tunnel(plan_.design, id);
        if (!written)
            return std::nullopt;
        const double step = plan_.design.unit == DisplayUnit::feet ? metres_per_inch : 0.01;
        Tunnel trial = *written;
        for (int wider = 0; wider <= 8; ++wider, trial.width += step) {
            trial.springline = written->springline;
            for (int higher = 0; higher <= 24; ++higher) {
                const ClearOutline passage =
                    clear_outline(make_tunnel_form(plan_.design, trial), plaster_);
                if (top_over_width(passage, width) - passage.bottom >= height - 1e-9) {
                    Design design = plan_.design;
                    for (Tunnel& tunnel : design.tunnels)
                        if (tunnel.id == id)
                            tunnel = trial;
                    if (check_layout(design).empty())
                        return "Make '" + id + "' " + wording_.length(trial.width) +
                               " wide with its springline at " +
                               wording_.length_up(trial.springline) + ".";
                    break;
                }
                trial.springline += plan_.design.course.height;
            }
        }
        return std::nullopt;
    }

    bool can_stand(const Opening& trial, const Tunnel* with_tunnel = nullptr) const {
        Design design = plan_.design;
        for (Tunnel& tunnel : design.tunnels)
            if (with_tunnel && tunnel.id == with_tunnel->id)
                tunnel = *with_tunnel;
        for (Opening& opening : design.openings)
            if (opening.id == trial.id)
                opening = trial;
        return check_layout(design).empty();
    }

    Escape escape_of(const OpeningPlan& opening, const EscapeRule& rule) const {
        const ClearOutline outline = clear_outline(opening);
        Escape escape;
        escape.opening = &opening;
        escape.bottom = outline.bottom;
        const double over_ground = opening.form.sill - plan_.design.ground.level;
        escape.needed = over_ground <= rule.grade_sill->value + 1e-9 ? rule.area_at_grade->value
                                                                     : rule.area->value;
        auto clear = largest_rectangle(outline, rule.width->value, rule.height->value);
        escape.fits = clear.has_value();
        if (!clear)
            clear = largest_rectangle(outline, 0.02, 0);
        if (clear) {
            escape.area = clear->area();
            escape.width = clear->width;
            escape.height = clear->height;
            escape.bottom = clear->bottom;
        }
        escape.low = escape.bottom <= rule.sill->value + 1e-9;
        return escape;
    }

    void check_escape(const DomeGroup& room) {
        const EscapeRule rule{limit("escape.net_area"),    limit("escape.net_area_at_grade"),
                              limit("escape.grade_sill"),  limit("escape.clear_height"),
                              limit("escape.clear_width"), limit("escape.sill")};
        if (!rule.whole())
            return;
        Escape best;
        for (const OpeningPlan& opening : plan_.schedule.openings)
            if (opening.form.use != OpeningUse::vent && serves(opening.form, room))
                if (const Escape one = escape_of(opening, rule);
                    !best.opening || one.ratio() > best.ratio())
                    best = one;
        const Subject subject = subject_of(room, plan_.design, building_);
        Limit area = *rule.area;
        area.value = best.opening ? best.needed : rule.area_at_grade->value;
        Finding found =
            held_against("escape-opening", subject, best.area, FindingUnit::square_metre,
                         Bound::at_least, area, Verdict::fails);
        const std::string needed = wording_.area(area.value) + ", " +
                                   wording_.length(rule.width->value) + " wide and " +
                                   wording_.length(rule.height->value) + " high, from at most " +
                                   wording_.length(rule.sill->value) + " above the floor";
        if (!best.opening) {
            found.verdict = Verdict::fails;
            found.message =
                "This room has no window or door to escape by (if someone sleeps in it: " + needed +
                ").";
            found.remedy = "Add a window with a clear upright opening of " + needed + ".";
            findings_.push_back(std::move(found));
            return;
        }
        found.verdict = best.passes() ? Verdict::holds : Verdict::fails;
        found.message = "To escape by, '" + best.opening->form.id + "' leaves a clear upright " +
                        wording_.length(best.width) + " by " + wording_.length(best.height) + ", " +
                        wording_.area(best.area) + ", from " + wording_.length(best.bottom) +
                        " above the floor (if someone sleeps here: " + needed + ").";
        if (!best.low && best.fits && best.area >= best.needed) {
            found.value = best.bottom;
            found.limit = rule.sill->value;
            found.unit = FindingUnit::metre;
        }
        if (!best.passes())
            found.remedy = better_escape(best, rule, needed);
        findings_.push_back(std::move(found));
    }

    /// The least change of sill and width that gives an escape, its head staying at its height.
    std::string better_escape(const Escape& best, const EscapeRule& rule,
                              const std::string& needed) const {
        const Opening* written = find_opening(plan_.design, best.opening->form.id);
        const double t = plan_.design.course.height;
        const double step = plan_.design.unit == DisplayUnit::feet ? 2 * metres_per_inch : 0.05;
        for (int changes = 1; written && changes <= 24; ++changes)
            for (int lower = 0; lower <= changes; ++lower) {
                Opening trial = *written;
                trial.sill -= lower * t;
                trial.height += lower * t;
                trial.width += (changes - lower) * step;
                if (trial.sill < -1e-9 || (trial.head.kind == HeadKind::circle && changes > 0))
                    continue;
                if (trial.head.kind == HeadKind::round && trial.height < trial.width / 2)
                    continue;
                OpeningPlan planned = *best.opening;
                planned.form = make_opening_form(trial);
                if (escape_of(planned, rule).passes() && can_stand(trial))
                    return "Make '" + trial.id + "' " + wording_.length(trial.width) + " by " +
                           wording_.length(trial.height) + ", rough, from a sill at " +
                           wording_.length(trial.sill) + ".";
            }
        return "Add a window with a clear upright opening of " + needed + ".";
    }
};

} // namespace

std::vector<Finding> way_out_findings(const BuildingPlan& plan) {
    return WaysOut(plan).run();
}

} // namespace coilwright
