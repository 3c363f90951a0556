// Floor, light and air of rooms.
#include "geometry/checks/rooms.hpp"
#include "geometry/checks/use_findings.hpp"
#include "geometry/plan/clear_outline.hpp"
#include "geometry/plan/headroom.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace coilwright {

namespace {

/// What lets light or air into a room.
struct RoomOpenings {
    double glazed = 0, opens = 0;
};

class Rooms {
public:
    explicit Rooms(const BuildingPlan& plan)
        : plan_(plan), building_(plan.schedule.building), wording_{plan.design.unit},
          plaster_(plan.design.finish.inside_plaster) {}

    std::vector<Finding> run() {
        for (const DomeGroup& room : rooms_of(building_)) {
            const DomeGroup lived = lived_in(room, building_);
            if (lived.domes.empty())
                continue;
            const Subject subject = subject_of(room, plan_.design, building_);
            if (lived.domes.size() > 1) {
                check_area(lived, subject);
                check_dimension(lived, subject);
            }
            const RoomOpenings openings = openings_of(room);
            const double floor = group_floor(lived, building_, plaster_, 0);
            check_light(room, subject, openings.glazed, floor);
            check_air(subject, openings.opens, floor);
        }
        return std::move(findings_);
    }

private:
    const BuildingPlan& plan_;
    const BuildingForm& building_;
    Wording wording_;
    double plaster_;
    std::vector<Finding> findings_;

    const DomeForm& dome(int i) const { return building_.domes[static_cast<std::size_t>(i)]; }

    RoomOpenings openings_of(const DomeGroup& room) const {
        RoomOpenings sum;
        for (const OpeningPlan& opening : plan_.schedule.openings) {
            const std::string served = dome_served(opening.form, building_);
            if (!holds_dome(room, building_, served) || !leads_out(opening.form, building_))
                continue;
            const double area = clear_area(clear_outline(opening));
            sum.opens += area;
            if (opening.form.use == OpeningUse::window)
                sum.glazed += area;
        }
        for (const int i : room.domes)
            if (const double r = eye(dome(i)); r > 0)
                sum.glazed += pi * r * r;
        return sum;
    }

    /// Radius of a skylight after plaster; 0 of a closed dome.
    double eye(const DomeForm& form) const {
        return form.curb_courses > 0 ? std::max(0.0, form.last_ring_radius - plaster_) : 0;
    }

    void check_area(const DomeGroup& lived, const Subject& subject) {
        const auto rule = plan_.design.rules.find(word(Use::habitable));
        if (rule == plan_.design.rules.end() || !rule->second.required_area)
            return;
        Limit limit;
        limit.value = *rule->second.required_area;
        limit.source = rule->second.source;
        limit.section = rule->second.section;
        const double low = rule->second.low_height.value_or(0);
        const double area = group_floor(lived, building_, plaster_, low);
        Finding found = held_against("room-area", subject, area, FindingUnit::square_metre,
                                     Bound::at_least, limit, Verdict::fails);
        found.message = "The open plan has " + wording_.area(area) + " of floor with " +
                        wording_.length(low) + " over it, joined domes counted once (" +
                        wording_.area(limit.value) + " needed).";
        if (found.verdict != Verdict::holds)
            found.remedy = "Widen its domes: one alone has it with " +
                           wording_.length_up(2 * std::sqrt(limit.value / pi) + 2 * plaster_) +
                           " across where it has that height.";
        findings_.push_back(std::move(found));
    }

    /// The narrowest of the domes that are one room: what lies off its widest part, through an open
    /// join, is lived in as well. Where no dome is wide enough it fails; where the widest is,
    /// offices differ in whether the narrower ones are alcoves or rooms.
    void check_dimension(const DomeGroup& lived, const Subject& subject) {
        const auto rule = plan_.design.rules.find(word(Use::habitable));
        if (rule == plan_.design.rules.end() || !rule->second.least_dimension)
            return;
        Limit limit;
        limit.value = *rule->second.least_dimension;
        limit.source = rule->second.source;
        limit.section = rule->second.section;
        const double low = rule->second.low_height.value_or(0);
        const auto across = [&](int i) { return 2 * clear_radius_at(dome(i), plaster_, low); };
        const auto [narrow, wide] =
            std::minmax_element(lived.domes.begin(), lived.domes.end(),
                                [&](int a, int b) { return across(a) < across(b); });
        const bool some_holds = across(*wide) >= limit.value - 1e-6;
        Finding found =
            held_against("room-dimension", subject, across(*narrow), FindingUnit::metre,
                         Bound::at_least, limit, some_holds ? Verdict::advice : Verdict::fails);
        found.message = "The narrowest dome of the open plan, '" + dome(*narrow).id + "', is " +
                        wording_.length(across(*narrow)) + " across where it has " +
                        wording_.length(low) + " over it (" + wording_.length(limit.value) +
                        " needed in every direction of a room).";
        if (found.verdict == Verdict::advice)
            found.message += " '" + dome(*wide).id + "' is wide enough, with " +
                             wording_.length(across(*wide)) +
                             "; ask the office whether it takes the other as an alcove.";
        if (found.verdict != Verdict::holds)
            found.remedy = "Widen '" + dome(*narrow).id + "' to " +
                           wording_.length_up(dome(*narrow).profile.half_span * 2 + limit.value -
                                              across(*narrow)) +
                           ", or raise its springline.";
        findings_.push_back(std::move(found));
    }

    /// A limit that a rule states as a share of the floor, in m2.
    struct ShareOfFloor {
        double share = 0;
        Limit limit;
    };
    std::optional<ShareOfFloor> share_of_floor(const char* name, double floor) const {
        const Limit* share = find_limit(plan_.design.limits, name);
        if (!share)
            return {};
        ShareOfFloor result{share->value, *share};
        result.limit.value *= floor;
        return result;
    }

    void check_light(const DomeGroup& room, const Subject& subject, double glazed, double floor) {
        const std::optional<ShareOfFloor> share = share_of_floor("light.share", floor);
        if (!share)
            return;
        const Limit& limit = share->limit;
        Finding found = held_against("room-light", subject, glazed, FindingUnit::square_metre,
                                     Bound::at_least, limit, Verdict::fails);
        found.message = "Windows and skylights give " + wording_.area(glazed) + " of light to " +
                        wording_.area(floor) + " of floor, clear of plaster and frames (" +
                        wording_.area(limit.value) + " needed, " +
                        fixed_text(share->share * 100, 0) + " %); doors are not counted.";
        if (found.verdict != Verdict::holds)
            found.remedy = more_light(room, limit.value - glazed);
        findings_.push_back(std::move(found));
    }

    /// A skylight that gives what is missing, of the largest dome that can take it.
    std::string more_light(const DomeGroup& room, double missing) const {
        const int widest =
            *std::max_element(room.domes.begin(), room.domes.end(), [&](int a, int b) {
                return dome(a).profile.half_span < dome(b).profile.half_span;
            });
        const double old = eye(dome(widest));
        const double radius = std::sqrt(old * old + missing / pi) + plaster_;
        if (radius < 0.6 * dome(widest).profile.half_span)
            return "A skylight of " + wording_.length_up(2 * radius) + " in '" + dome(widest).id +
                   "' gives it" + (old > 0 ? " (in place of its present one)." : ".");
        return wording_.area(missing) + " more of clear glass is needed.";
    }

    void check_air(const Subject& subject, double opens, double floor) {
        const std::optional<ShareOfFloor> share = share_of_floor("ventilation.share", floor);
        if (!share)
            return;
        const Limit& limit = share->limit;
        Finding found = held_against("room-air", subject, opens, FindingUnit::square_metre,
                                     Bound::at_least, limit, Verdict::fails);
        found.message = "Doors, windows and vents open " + wording_.area(opens) + " for " +
                        wording_.area(floor) + " of floor, if all of each opens (" +
                        wording_.area(limit.value) + " needed, " +
                        fixed_text(share->share * 100, 0) + " %).";
        if (found.verdict != Verdict::holds) {
            const Opening usual; // its frame
            const double side = std::sqrt(limit.value - opens) + 2 * (plaster_ + usual.frame);
            found.remedy = "A vent or window of " + wording_.length_up(side) + " by " +
                           wording_.length_up(side) + " more, rough, gives it.";
        }
        findings_.push_back(std::move(found));
    }
};

} // namespace

std::vector<Finding> room_findings(const BuildingPlan& plan) {
    return Rooms(plan).run();
}

} // namespace coilwright
