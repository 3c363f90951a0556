// Openings in the wall, by rules for seismic zones.
#include "geometry/checks/held_against.hpp"
#include "geometry/checks/trade_findings.hpp"
#include "geometry/checks/wall_share.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

std::string per_cent(double share) {
    return fixed_text(share * 100, 1) + " %";
}

class SeismicCheck {
public:
    explicit SeismicCheck(const BuildingPlan& plan)
        : design_(plan.design), building_(plan.schedule.building),
          relations_(make_relations(building_)), wording_{plan.design.unit} {
        const auto& stated = design_.site.seismic_acceleration;
        is_seismic_ = stated && *stated > 0;
    }

    std::vector<Finding> run() {
        for (std::size_t i = 0; i < building_.domes.size(); ++i) {
            check_sum(static_cast<int>(i));
            check_pier(static_cast<int>(i));
            check_width(building_.domes[i]);
        }
        return std::move(findings_);
    }

private:
    const Design& design_;
    const BuildingForm& building_;
    WallRelations relations_;
    Wording wording_;
    bool is_seismic_ = false;
    std::vector<Finding> findings_;

    const Limit* limit(const char* name) const { return find_limit(design_.limits, name); }
    Verdict beyond() const { return is_seismic_ ? Verdict::fails : Verdict::not_judged; }
    Subject subject(const DomeForm& form) const {
        const Dome* dome = find_dome(design_, form.id);
        return {"dome." + form.id, dome ? dome->place : SourcePlace{}};
    }
    /// Said where the limit is passed and no earthquake is stated.
    std::string for_zones(const Finding& found) const {
        return found.verdict == Verdict::not_judged
                   ? " The value is for seismic zones; the design states no seismic_acceleration."
                   : " (a value for seismic zones).";
    }
    void add(Finding found, const std::string& message, const std::string& remedy) {
        found.message =
            message + (found.verdict == Verdict::not_judged ? "." : "") + for_zones(found);
        if (found.verdict != Verdict::holds)
            found.remedy = remedy;
        findings_.push_back(std::move(found));
    }

    void check_sum(int dome) {
        const Limit* most = limit("seismic-openings.share");
        const OpenCourse open = most_open_course(building_, relations_, dome);
        if (!most || open.course == 0)
            return;
        const DomeForm& form = building_.domes[static_cast<std::size_t>(dome)];
        Finding found = held_against("opening-sum", subject(form), open.share, FindingUnit::ratio,
                                     Bound::at_most, *most, beyond());
        const std::string of_joins =
            open.joins > 0 ? ", " + per_cent(open.joins) + " by open joins" : std::string();
        add(std::move(found),
            "Course " + std::to_string(open.course) + " of '" + form.id + "' is open over " +
                per_cent(open.share) + " of its length" + of_joins + "; " + per_cent(most->value) +
                " at most",
            narrower_openings(dome, most->value, open));
    }

    std::string narrower_openings(int dome, double most, const OpenCourse& open) const {
        if (open.joins > most)
            return "Its open joins alone take more: keep a wall in one of them, or have an "
                   "engineer tie "
                   "the ring there.";
        double low = 0, high = 1;
        for (int i = 0; i < 20; ++i) {
            const double middle = (low + high) / 2;
            (most_open_course(building_, relations_, dome, middle).share <= most ? low : high) =
                middle;
        }
        return "Make its openings " + fixed_text(std::floor(low * 100), 0) +
               " % as wide as they are, or leave one out.";
    }

    void check_pier(int dome) {
        const Limit* least = limit("seismic-openings.pier");
        const Pier pier = narrowest_pier(building_, relations_, dome);
        if (!least || pier.course == 0)
            return;
        const DomeForm& form = building_.domes[static_cast<std::size_t>(dome)];
        Finding found = held_against("opening-pier", subject(form), pier.length, FindingUnit::metre,
                                     Bound::at_least, *least, beyond());
        const double degrees =
            std::ceil((least->value - pier.length) / pier.radius * 180 / pi - 1e-9);
        add(std::move(found),
            "Between '" + pier.from + "' and '" + pier.to + "' course " +
                std::to_string(pier.course) + " has a pier of " + wording_.length(pier.length) +
                "; " + wording_.length(least->value) + " at least",
            "Move '" + pier.to + "' " + fixed_text(degrees, 0) + " degrees away from '" +
                pier.from + "'.");
    }

    void check_width(const DomeForm& form) {
        const Limit* most = limit("seismic-openings.width");
        std::string widest;
        double width = 0;
        const auto consider = [&](const std::string& id, double one) {
            if (one > width) {
                width = one;
                widest = id;
            }
        };
        for (const OpeningForm& opening : building_.openings)
            if (opening.in == form.id && opening.niche_depth == 0)
                consider(opening.id, 2 * opening.half_width);
        for (const TunnelForm& tunnel : building_.tunnels)
            if ((tunnel.from == form.id || tunnel.to == form.id) && !tunnel.wall_stays)
                consider(tunnel.id, 2 * tunnel.profile.half_span);
        if (!most || widest.empty())
            return;
        Finding found = held_against("opening-width", subject(form), width, FindingUnit::metre,
                                     Bound::at_most, *most, beyond());
        add(std::move(found),
            "The widest opening of '" + form.id + "', '" + widest + "', is " +
                wording_.length(width) + " wide; " + wording_.length(most->value) + " at most",
            "Make it " + wording_.length_down(most->value) + " wide.");
    }
};

} // namespace

std::vector<Finding> seismic_practice_findings(const BuildingPlan& plan) {
    return SeismicCheck(plan).run();
}

} // namespace coilwright
