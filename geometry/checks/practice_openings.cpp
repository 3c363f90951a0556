// Doors apart from each other, wall over heads, lintels on their bearings.
#include "geometry/base/length.hpp"
#include "geometry/checks/held_against.hpp"
#include "geometry/checks/trade_findings.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

/// A doorway of a dome: a door, or a tunnel that opens its wall.
struct Doorway {
    std::string id;
    Bearing bearing;
    double half_width = 0;
};

double between(Bearing a, Bearing b) {
    const double d = clockwise_degrees(a, b);
    return std::min(d, 360 - d);
}

class OpeningCheck {
public:
    explicit OpeningCheck(const BuildingPlan& plan)
        : design_(plan.design), schedule_(plan.schedule),
          building_(plan.schedule.building), wording_{plan.design.unit} {}

    std::vector<Finding> run() {
        for (const DomeForm& form : building_.domes) {
            check_doors(form);
            check_cover(form);
        }
        for (const Lintel& lintel : schedule_.lintels) {
            check_rest(lintel);
            check_width(lintel);
        }
        return std::move(findings_);
    }

private:
    const Design& design_;
    const Schedule& schedule_;
    const BuildingForm& building_;
    Wording wording_;
    std::vector<Finding> findings_;

    const Limit* limit(const char* name) const { return find_limit(design_.limits, name); }
    Subject subject(const DomeForm& form) const {
        const Dome* dome = find_dome(design_, form.id);
        return {"dome." + form.id, dome ? dome->place : SourcePlace{}};
    }

    std::vector<Doorway> doorways_of(const DomeForm& form) const {
        std::vector<Doorway> doors;
        for (const OpeningForm& opening : building_.openings)
            if (opening.in == form.id && opening.use == OpeningUse::door)
                doors.push_back({opening.id, opening.bearing, opening.half_width});
        for (const TunnelForm& tunnel : building_.tunnels)
            if (const auto bearing = bearing_from(tunnel, form.id); !tunnel.wall_stays && bearing)
                doors.push_back({tunnel.id, *bearing, tunnel.profile.half_span});
        return doors;
    }

    void check_doors(const DomeForm& form) {
        const Limit *quadrant = limit("doors.between"), *apart = limit("doors.apart");
        const std::vector<Doorway> doors = doorways_of(form);
        if (!quadrant || !apart || doors.size() < 2)
            return;
        const double r = form.profile.half_span;
        const Doorway *one = nullptr, *other = nullptr;
        double least = 360;
        for (std::size_t i = 0; i < doors.size(); ++i)
            for (std::size_t j = i + 1; j < doors.size(); ++j)
                if (const double d = between(doors[i].bearing, doors[j].bearing); d < least) {
                    least = d;
                    one = &doors[i];
                    other = &doors[j];
                }
        if (!one)
            return;
        const auto half = [&](const Doorway& door) {
            return door.half_width < r ? half_angle_degrees(door.half_width, r) : 90;
        };
        const double jambs = half(*one) + half(*other);
        const double length = std::max(0.0, (least - jambs) * pi / 180 * r);
        const bool near = least < quadrant->value - 1e-9;
        Finding found =
            near ? held_against("door-spacing", subject(form), least, FindingUnit::degree,
                                Bound::at_least, *quadrant, Verdict::advice)
                 : held_against("door-spacing", subject(form), length, FindingUnit::metre,
                                Bound::at_least, *apart, Verdict::advice);
        found.message = "The doorways '" + one->id + "' and '" + other->id + "' stand " +
                        fixed_text(least, 0) + " degrees and " + wording_.length(length) +
                        " of wall apart; one a quadrant and " + wording_.length(apart->value) +
                        " are usual.";
        if (found.verdict != Verdict::holds) {
            const double needed =
                std::ceil(std::max(quadrant->value, apart->value / r * 180 / pi + jambs) - 1e-9);
            found.remedy = "Set '" + other->id + "' " + fixed_text(needed, 0) + " degrees from '" +
                           one->id + "'.";
        }
        findings_.push_back(std::move(found));
    }

    /// Of neighbours with little wall between, the lower head against the springing of the other.
    void check_cover(const DomeForm& form) {
        const Limit *courses = limit("head-cover.courses"), *apart = limit("doors.apart");
        if (!courses || !apart)
            return;
        const double r = form.profile.half_span, t = form.course_height;
        const OpeningForm *low = nullptr, *high = nullptr;
        double least = 0;
        for (const OpeningForm& a : building_.openings)
            for (const OpeningForm& b : building_.openings) {
                if (a.in != form.id || b.in != form.id || &a == &b || a.niche_depth > 0 ||
                    b.niche_depth > 0 || b.springing < a.top - height_tie || a.half_width >= r ||
                    b.half_width >= r)
                    continue;
                const double degrees = between(a.bearing, b.bearing) -
                                       half_angle_degrees(a.half_width, r) -
                                       half_angle_degrees(b.half_width, r);
                if (degrees * pi / 180 * r >= apart->value)
                    continue;
                const double cover = (b.springing - a.top) / t;
                if (!low || cover < least) {
                    least = cover;
                    low = &a;
                    high = &b;
                }
            }
        if (!low)
            return;
        Finding found = held_against("head-cover", subject(form), least, FindingUnit::count,
                                     Bound::at_least, *courses, Verdict::advice);
        found.message = "Over the head of '" + low->id + "' lie " + fixed_text(least, 1) +
                        " courses before the head of its neighbour '" + high->id + "' springs; " +
                        fixed_text(courses->value, 0) +
                        " unbroken ones carry before the form below is struck.";
        if (found.verdict != Verdict::holds)
            found.remedy = "Raise the sill of '" + high->id + "' to " +
                           wording_.length_up(high->sill + (courses->value - least) * t) +
                           ", or leave the form of '" + low->id + "' until both heads are closed.";
        findings_.push_back(std::move(found));
    }

    Subject subject_of(const Lintel& lintel) const {
        const Opening* written = find_opening(design_, lintel.opening);
        return {"opening." + lintel.opening,
                written && written->head.lintel ? written->head.lintel->place : SourcePlace{}};
    }

    void check_rest(const Lintel& lintel) {
        const auto& shaken = design_.site.seismic_acceleration;
        const bool is_seismic = shaken && *shaken > 0;
        const Limit* least =
            limit(is_seismic ? "seismic-openings.lintel_bearing" : "lintel.bearing");
        if (!least)
            return;
        Finding found =
            held_against("lintel-rest", subject_of(lintel), lintel.bearing, FindingUnit::metre,
                         Bound::at_least, *least, is_seismic ? Verdict::fails : Verdict::advice);
        found.message = "The lintel of '" + lintel.opening + "' lies " +
                        wording_.length(lintel.bearing) + " on the wall each side (" +
                        wording_.length(least->value) + " at least" +
                        (is_seismic ? " in a seismic zone)." : ").");
        if (found.verdict != Verdict::holds)
            found.remedy = "Set bearing = " + wording_.length_up(least->value) + " in its lintel.";
        findings_.push_back(std::move(found));
    }

    std::optional<Lintel> as_wide(const Lintel& lintel, double width) const {
        for (OpeningForm form : building_.openings)
            if (form.id == lintel.opening && form.lintel) {
                form.lintel->width = width;
                if (const DomeForm* dome = find_dome(building_, form.in))
                    return make_lintel(form, *dome);
                if (const TunnelForm* tunnel = find_tunnel(building_, form.in))
                    return make_lintel(form, *tunnel);
            }
        return std::nullopt;
    }

    /// A straight lintel in a round wall, or one narrower than the wall, leaves a part of the
    /// course on it over nothing but the hole.
    void check_width(const Lintel& lintel) {
        const Limit* least = limit("lintel.carried");
        if (!least)
            return;
        Finding found = held_against("lintel-width", subject_of(lintel), lintel.carried_share,
                                     FindingUnit::ratio, Bound::at_least, *least, Verdict::advice);
        found.message = "At mid-span of the lintel of '" + lintel.opening + "' " +
                        fixed_text(std::floor(100 * lintel.carried_share), 0) +
                        " % of the width of the course on it lies on it (" +
                        fixed_text(100 * least->value, 0) + " % at least).";
        if (found.verdict != Verdict::holds) {
            found.remedy = "A second lintel beside it.";
            const double step = design_.unit == DisplayUnit::feet ? metres_per_inch / 2 : 0.01;
            for (double width = lintel.width + step; width < 2; width += step)
                if (const auto wider = as_wide(lintel, width);
                    wider && wider->carried_share >= least->value) {
                    found.remedy = "Set width = " + wording_.length_up(width) + " in its lintel.";
                    break;
                }
        }
        findings_.push_back(std::move(found));
    }
};

} // namespace

std::vector<Finding> opening_practice_findings(const BuildingPlan& plan) {
    return OpeningCheck(plan).run();
}

} // namespace coilwright
