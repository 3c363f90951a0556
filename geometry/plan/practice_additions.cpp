// Advice of the trade on what stands beside a plain dome: buttresses, joins, tunnels, fans, and
// heads that lean in over their sills.
#include "geometry/plan/opening_place.hpp"
#include "geometry/plan/practice.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

constexpr const char* practice = "common practice, no source";
constexpr const char* judgement = "a judgement, no source";

/// What holds where a design does not bring the limits of the reader.
const Limit buttress_over_springline{18 * metres_per_inch, "m", practice, {}, {},
                                     Standing::practice};
const Limit widest_vault{4 * metres_per_foot, "m", judgement, {}, {}, Standing::judgement};
const Limit thinnest_bag{4 * metres_per_inch, "m", practice, {}, {}, Standing::practice};

class AdditionCheck {
public:
    AdditionCheck(const Design& design, const Schedule& schedule)
        : design_(design), schedule_(schedule), building_(schedule.building) {}

    std::vector<Finding> run() {
        for (const Buttress& table : design_.buttresses)
            check_buttress(table);
        for (const JoinForm& join : building_.joins)
            check_join(join);
        for (const TunnelForm& tunnel : building_.tunnels)
            check_tunnel(tunnel);
        for (const Fan& fan : schedule_.fans)
            check_fan(fan);
        for (const OpeningPlan& opening : schedule_.openings)
            check_rain(opening);
        return std::move(findings_);
    }

private:
    const Design& design_;
    const Schedule& schedule_;
    const BuildingForm& building_;
    std::vector<Finding> findings_;

    std::string length(double metres) const { return length_text(metres, design_.unit); }

    Finding& advice(const std::string& code, const std::string& subject, SourcePlace place,
                    const std::string& message, double value, double limit) {
        Finding finding;
        finding.code = code;
        finding.subject = subject;
        finding.place = place;
        finding.verdict = Verdict::advice;
        finding.message = message;
        finding.value = value;
        finding.limit = limit;
        finding.unit = FindingUnit::metre;
        finding.source = practice;
        findings_.push_back(finding);
        return findings_.back();
    }

    const Limit& limit(const char* name, const Limit& otherwise) const {
        const Limit* set = find_limit(design_.limits, name);
        return set ? *set : otherwise;
    }

    void check_buttress(const Buttress& table) {
        const auto pier =
            std::find_if(building_.buttresses.begin(), building_.buttresses.end(),
                         [&](const ButtressForm& form) { return form.table == table.id; });
        if (pier == building_.buttresses.end())
            return;
        const DomeForm& dome = *find_dome(building_, pier->dome);
        const Limit& above = limit("buttress.above_springline", buttress_over_springline);
        const double least = dome.springline + above.value;
        if (pier->top >= least - height_tie)
            return;
        Finding& found =
            advice("buttress-low", "buttress." + table.id, table.place,
                   "The buttress '" + table.id + "' ends at " + length(pier->top) + ", " +
                       (pier->top >= dome.springline - height_tie
                            ? length(pier->top - dome.springline) + " above"
                            : length(dome.springline - pier->top) + " below") +
                       " the springline of '" + dome.id + "'; buttresses usually go " +
                       length(above.value) + " above it or more.",
                   pier->top, least);
        found.source = source_text(above);
        const double height = joint_from(building_.domes.front(), least);
        found.remedy = height <= rings_end(dome) + height_tie
                           ? "Raise it to " + length(height) + "."
                           : "'" + dome.id +
                                 "' ends below that: raise its rise, or lower its "
                                 "springline by " +
                                 length(height - rings_end(dome)) + ".";
    }

    /// Where the outsides of two domes part: the saddle of the valley between them.
    static double saddle(const DomeForm& a, const DomeForm& b) {
        const double apart = (a.at - b.at).norm();
        double low = 0, high = std::min(a.top(), b.top());
        for (int i = 0; i < 60; ++i) {
            const double middle = (low + high) / 2;
            (outside_radius(a, middle) + outside_radius(b, middle) > apart ? low : high) = middle;
        }
        return low;
    }

    void check_join(const JoinForm& join) {
        const auto written = std::find_if(design_.joins.begin(), design_.joins.end(),
                                          [&](const Join& other) { return other.id == join.id; });
        const DomeForm* first = find_dome(building_, join.first);
        const DomeForm* second = find_dome(building_, join.second);
        if (written == design_.joins.end() || !first || !second)
            return;
        const double height = saddle(*first, *second);
        Finding& found = advice("join-needs-cricket", "join." + join.id, written->place,
                                "'" + join.first + "' and '" + join.second +
                                    "' meet in a valley that starts level at its saddle, " +
                                    length(height) + " above the floor: rain and dirt lie there.",
                                height, 0);
        found.limit.reset();
        found.remedy =
            "Build a cricket in the valley, highest in the line between the two poles at " +
            length(height) + " and over, with fall to an outlet at each end, and plaster over it.";
    }

    void check_tunnel(const TunnelForm& tunnel) {
        const double span = 2 * tunnel.profile.half_span;
        const Limit& most = limit("vault.span", widest_vault);
        if (span <= most.value + height_tie)
            return;
        Finding& found =
            advice("tunnel-wide", "tunnel." + tunnel.id, find_tunnel(design_, tunnel.id)->place,
                   "The tunnel '" + tunnel.id + "' spans " + length(span) +
                       "; no ring holds its vault, and a corbelled one is seldom wider than " +
                       length(most.value) + ".",
                   span, most.value);
        found.source = source_text(most);
        found.remedy = "Keep it to " + length(most.value) +
                       ", or lay the vault as a fan over its form: short tapered bags, the "
                       "keystones tamped last.";
    }

    /// Greatest depth of a fan's bags, in whole inches or centimetres, that leaves them thick
    /// enough at the form; 0: none.
    double thicker_bags(const OpeningForm& form, double width, double thinnest) const {
        const double step = design_.unit == DisplayUnit::feet ? metres_per_inch : 0.01;
        OpeningForm trial = form;
        for (int k = static_cast<int>(std::ceil(form.fan_depth / step - 1e-9)) - 1;
             k * step >= width / 2; --k) {
            trial.fan_depth = k * step;
            if (make_fan(trial, width, 1)->inner_width >= thinnest - height_tie)
                return trial.fan_depth;
        }
        return 0;
    }

    void check_fan(const Fan& fan) {
        const Limit& least = limit("fan-bag.width", thinnest_bag);
        if (fan.inner_width >= least.value - height_tie)
            return;
        const Opening& opening = *find_opening(design_, fan.opening);
        const auto form =
            std::find_if(building_.openings.begin(), building_.openings.end(),
                         [&](const OpeningForm& other) { return other.id == fan.opening; });
        Finding& found =
            advice("fan-bags-thin", "opening." + fan.opening, opening.head.place,
                   "The " + std::to_string(fan.count) + " bags of the fan over '" + fan.opening +
                       "' are " + length(fan.inner_width) + " wide at the form; under " +
                       length(least.value) + " a bag can hardly be filled and tamped.",
                   fan.inner_width, least.value);
        found.source = source_text(least);
        const double depth =
            thicker_bags(*form, find_dome(building_, form->in)->width, least.value);
        found.remedy = depth > 0 ? "Make the bags " + length(depth) + " deep, or the opening wider."
                                 : "Make the opening wider, or lay its head corbelled.";
    }

    void check_rain(const OpeningPlan& opening) {
        const OpeningForm& form = opening.form;
        if (opening.rained_on <= 0)
            return;
        const Opening& written = *find_opening(design_, form.id);
        Finding& found = advice("head-takes-rain", "opening." + form.id, written.head.place,
                                "The outside of the wall at the head of '" + form.id + "' lies " +
                                    length(opening.rained_on) +
                                    " inside that at its sill: rain falls on the sill.",
                                opening.rained_on, 0);
        found.remedy = "Set a drip over the head, and slope the sill outward over its whole depth.";
        const DomeForm* dome = find_dome(building_, form.in);
        const bool steps =
            dome &&
            std::max(dome->lower_width > 0 ? dome->lower_top : dome->bottom(),
                     dome->second_wythe ? dome->second_wythe_top : dome->bottom()) > form.sill;
        if (!steps)
            found.remedy += " A springline at " +
                            length(joint_from(building_.domes.front(), form.top)) +
                            " or over would keep the wall plumb there.";
    }
};

} // namespace

std::vector<Finding> addition_findings(const Design& design, const Schedule& schedule) {
    return AdditionCheck(design, schedule).run();
}

} // namespace coilwright
