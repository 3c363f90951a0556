#include "geometry/variants/variants.hpp"

#include "geometry/statics/dome_slice.hpp"
#include "geometry/statics/tunnel_slice.hpp"
#include "geometry/takeoff/days.hpp"
#include "geometry/takeoff/money.hpp"
#include "geometry/threads/side_by_side.hpp"

#include <algorithm>
#include <mutex>

namespace coilwright {

namespace {

double dome_safety(const BuildingPlan& plan, const DomeForm& dome) {
    const std::vector<WallCourse> courses = dome_courses(plan.design, plan.schedule.building, dome);
    if (courses.empty() || first_without_contact(courses))
        return 0;
    double least = centred_thrust(dome_slice(courses)).safety();
    for (const std::string& gap : gap_ids(courses)) {
        DomeSlice what;
        what.beside = gap;
        least = std::min(least, centred_thrust(dome_slice(courses, what)).safety());
    }
    return least;
}

double tunnel_safety(const BuildingPlan& plan, const TunnelForm& tunnel) {
    const std::vector<WallCourse> courses = tunnel_courses(plan.design, tunnel);
    if (tunnel.crown_courses < 1 || first_without_contact(courses))
        return 0;
    return centred_thrust(tunnel_slice(courses)).safety();
}

VariantFigures figures_of(const BuildingPlan& plan, const Works& works) {
    VariantFigures figures;
    TakeOff take = take_off(plan, works);
    const DayPlan days = plan_days(plan, take, works);
    add_labour(take, days);
    // The range of the total is not told: no draws.
    const Costs costs = work_out_costs(take, works, 1, 0);
    figures.floor_area = take.floor_area;
    for (const Headroom& room : plan.headroom) {
        figures.clear_height = std::max(figures.clear_height, room.at_pole);
        figures.headroom += room.rows.front().area;
    }
    for (const CourseTake& course : take.courses) { // short bags are in these, not in the totals
        figures.tube += course.tube_cut + course.lining;
        figures.fill += course.soil.tamped;
    }
    figures.cost = costs.total.likely;
    figures.person_days = days.person_days;
    figures.working_days = days.working_days;
    figures.calendar_days = days.calendar_days;
    figures.ended = days.ended;
    const std::vector<double> safeties = geometric_safeties(plan);
    figures.safety = *std::min_element(safeties.begin(), safeties.end());
    const auto fails = [](const Finding& finding) { return finding.verdict == Verdict::fails; };
    const Limit* limit = find_limit(plan.design.limits, "geometric-safety.least");
    const double least = limit ? limit->value : 1;
    figures.failing =
        static_cast<double>(std::count_if(plan.findings.begin(), plan.findings.end(), fails) +
                            std::count_if(safeties.begin(), safeties.end(), [&](double safety) {
                                return safety < least * (1 - 1e-9);
                            }));
    return figures;
}

} // namespace

const std::vector<FigureColumn>& figure_columns() {
    using F = VariantFigures;
    static const std::vector<FigureColumn> columns{
        {"floor_area", "Floor between the bags", FigureKind::area, &F::floor_area},
        {"clear_height", "Clear height", FigureKind::height, &F::clear_height},
        {"headroom", "Floor with 7 ft over it", FigureKind::area, &F::headroom},
        {"tube", "Tube to cut", FigureKind::length, &F::tube},
        {"fill", "Tamped fill", FigureKind::volume, &F::fill},
        {"cost", "Likely cost", FigureKind::money, &F::cost},
        {"person_days", "Person-days", FigureKind::days, &F::person_days},
        {"working_days", "Days of work", FigureKind::days, &F::working_days},
        {"calendar_days", "Days on the calendar", FigureKind::days, &F::calendar_days},
        {"safety", "Geometric factor of safety", FigureKind::ratio, &F::safety},
        {"failing", "Failing: plan, line of thrust", FigureKind::count, &F::failing}};
    return columns;
}

std::size_t variant_count(const VariantStudy& study) {
    std::size_t count = 1;
    for (const Choice& choice : study.choices)
        count *= choice.values.size();
    return count;
}

std::vector<std::size_t> variant_places(const VariantStudy& study, std::size_t index) {
    std::vector<std::size_t> places(study.choices.size());
    for (std::size_t i = places.size(); i-- > 0;) {
        places[i] = index % study.choices[i].values.size();
        index /= study.choices[i].values.size();
    }
    return places;
}

VariantResult work_out_variant(const VariantStudy& study, std::size_t index) {
    std::vector<KeyChange> changes;
    const std::vector<std::size_t> places = variant_places(study, index);
    for (std::size_t i = 0; i < places.size(); ++i) {
        const std::vector<KeyChange>& more = study.choices[i].values[places[i]].changes;
        changes.insert(changes.end(), more.begin(), more.end());
    }
    VariantResult result;
    DesignReading reading = read_changed_design(study.text, changes);
    const BuildingPlan plan =
        plan_building(std::move(reading.design), std::move(reading.diagnostics));
    if (!plan.sound()) {
        const Diagnostic& first = plan.diagnostics.front();
        result.fault = first.subject + ": " + first.message;
        return result;
    }
    result.laid = true;
    result.figures = figures_of(plan, study.works);
    return result;
}

std::vector<double> geometric_safeties(const BuildingPlan& plan) {
    std::vector<double> safeties;
    for (const DomeForm& dome : plan.schedule.building.domes)
        safeties.push_back(dome_safety(plan, dome));
    for (const TunnelForm& tunnel : plan.schedule.building.tunnels)
        safeties.push_back(tunnel_safety(plan, tunnel));
    return safeties;
}

double least_geometric_safety(const BuildingPlan& plan) {
    const std::vector<double> safeties = geometric_safeties(plan);
    return *std::min_element(safeties.begin(), safeties.end());
}

void run_variants(const VariantStudy& study, const std::vector<bool>& wanted, unsigned threads,
                  const std::atomic<bool>& stop,
                  const std::function<void(std::size_t index, VariantResult result)>& tell) {
    const std::size_t count = variant_count(study);
    std::mutex one_at_a_time;
    side_by_side(
        count,
        [&](std::size_t index) {
            if (stop || (!wanted.empty() && !wanted[index]))
                return;
            VariantResult result = work_out_variant(study, index);
            const std::lock_guard<std::mutex> lock(one_at_a_time);
            tell(index, std::move(result));
        },
        threads);
}

} // namespace coilwright
