#include "geometry/checks/trial.hpp"

#include "geometry/checks/check_building.hpp"
#include "geometry/checks/dome_findings.hpp"
#include "geometry/checks/element_findings.hpp"
#include "geometry/checks/snow_findings.hpp"
#include "geometry/checks/trade_findings.hpp"
#include "geometry/checks/use_findings.hpp"
#include "geometry/plan/check_layout.hpp"
#include "geometry/statics/tunnel_slice.hpp"

#include <algorithm>

namespace coilwright {

CheckedElements checked_elements(const BuildingPlan& plan) {
    CheckedElements all;
    const BuildingForm& building = plan.schedule.building;
    for (const DomeForm& dome : building.domes)
        all.domes[dome.id] = {dome_courses(plan.design, building, dome), dome.springline,
                              dome_checks(plan, dome)};
    for (const TunnelForm& tunnel : building.tunnels)
        all.tunnels[tunnel.id] = {tunnel_courses(plan.design, tunnel), tunnel.springline,
                                  tunnel_checks(plan, tunnel)};
    return all;
}

Trial::Trial(Design design, DecideRegion decide, std::string table, const CheckedElements& before)
    : design_(std::move(design)), decide_(std::move(decide)), table_(std::move(table)),
      before_(before) {}

Trial::~Trial() = default;

bool Trial::can_be_laid() {
    const std::lock_guard lock(mutex_);
    return lies();
}

bool Trial::lies() {
    if (!lies_)
        lies_ = std::make_unique<bool>(check_layout(design_).empty());
    return *lies_;
}

const BuildingPlan& Trial::plan() {
    if (!plan_) {
        plan_ = std::make_unique<BuildingPlan>(plan_building(design_, {}, decide_));
        lies_ = std::make_unique<bool>(plan_->sound());
    }
    return *plan_;
}

const std::vector<Finding>& Trial::findings(Judge judge, const std::string& element) {
    const std::lock_guard lock(mutex_);
    const auto key = std::make_pair(judge, element);
    auto found = found_.find(key);
    if (found == found_.end())
        found = found_
                    .emplace(key, lies() && plan().sound() ? judged(judge, element)
                                                           : std::vector<Finding>{})
                    .first;
    return found->second;
}

const std::vector<Finding>& Trial::all() {
    const std::lock_guard lock(mutex_);
    if (!all_) {
        all_ = std::make_unique<std::vector<Finding>>();
        if (lies() && plan().sound()) {
            *all_ = plan().findings;
            const std::vector<Finding> more = check_building(
                plan(), [&](const DomeForm& dome) { return checked_dome(dome); },
                [&](const TunnelForm& tunnel) { return checked_tunnel(tunnel); });
            all_->insert(all_->end(), more.begin(), more.end());
        }
    }
    return *all_;
}

namespace {

bool same(const RingGap& a, const RingGap& b) {
    return a.by == b.by && a.middle == b.middle && a.half_width == b.half_width &&
           a.disc_distance == b.disc_distance && a.disc_radius == b.disc_radius &&
           a.band_inside == b.band_inside && a.band_side == b.band_side;
}

bool same(const WallCourse& a, const WallCourse& b) {
    return a.number == b.number && a.cap == b.cap && a.bottom == b.bottom && a.top == b.top &&
           a.inside == b.inside && a.outside == b.outside && a.weight == b.weight &&
           a.mass_radius == b.mass_radius && a.snow_weight == b.snow_weight &&
           a.earth_push == b.earth_push && a.earth_height == b.earth_height &&
           a.contact_inner == b.contact_inner && a.contact_outer == b.contact_outer &&
           a.strength == b.strength && a.tie == b.tie && a.open_share == b.open_share &&
           std::equal(a.gaps.begin(), a.gaps.end(), b.gaps.begin(), b.gaps.end(),
                      [](const RingGap& x, const RingGap& y) { return same(x, y); });
}

/// Whether two walls are one to the statics.
bool same(const std::vector<WallCourse>& a, const std::vector<WallCourse>& b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](const WallCourse& x, const WallCourse& y) { return same(x, y); });
}

} // namespace

/// Whether the change touches no more than some elements: not the ground, not every course.
bool Trial::is_local() const {
    for (const char* const kind : {"dome.", "opening.", "tunnel.", "buttress.", "tube."})
        if (table_.rfind(kind, 0) == 0)
            return true;
    return false;
}

std::vector<Finding> Trial::checked_dome(const DomeForm& dome) {
    const auto old = before_.domes.find(dome.id);
    const std::vector<ButtressForm>& piers = plan().schedule.building.buttresses;
    const bool pier_changed = std::any_of(piers.begin(), piers.end(), [&](const ButtressForm& p) {
        return p.dome == dome.id && table_ == "buttress." + p.table;
    });
    if (is_local() && !pier_changed && old != before_.domes.end() &&
        old->second.springline == dome.springline &&
        same(old->second.courses, dome_courses(design_, plan().schedule.building, dome)))
        return old->second.findings;
    return dome_checks(plan(), dome);
}

std::vector<Finding> Trial::checked_tunnel(const TunnelForm& tunnel) {
    const auto old = before_.tunnels.find(tunnel.id);
    if (is_local() && old != before_.tunnels.end() && old->second.springline == tunnel.springline &&
        same(old->second.courses, tunnel_courses(design_, tunnel)))
        return old->second.findings;
    return tunnel_checks(plan(), tunnel);
}

std::vector<Finding> Trial::judged(Judge judge, const std::string& element) {
    const BuildingPlan& laid = plan();
    switch (judge) {
    case Judge::plan:
        return laid.findings;
    case Judge::rooms:
        return room_findings(laid);
    case Judge::ways_out:
        return way_out_findings(laid);
    case Judge::passages:
        return passage_findings(laid);
    case Judge::permit:
        return permit_findings(laid);
    case Judge::shape:
        return shape_practice_findings(laid);
    case Judge::ground:
        return ground_practice_findings(laid);
    case Judge::seismic:
        return seismic_practice_findings(laid);
    case Judge::wall_openings:
        return opening_practice_findings(laid);
    case Judge::doorways:
        return buttress_practice_findings(laid);
    case Judge::work:
        return work_practice_findings(laid);
    case Judge::heads:
        return opening_findings(laid);
    case Judge::tunnel: {
        const TunnelForm* tunnel = find_tunnel(laid.schedule.building, element);
        return tunnel ? tunnel_checks(laid, *tunnel) : std::vector<Finding>{};
    }
    default: {
        const DomeForm* dome = find_dome(laid.schedule.building, element);
        return dome ? worse_of_snow(
                          laid.design,
                          [&](const DomeLoads& loads) { return judged_dome(judge, *dome, loads); })
                    : std::vector<Finding>{};
    }
    }
}

std::vector<Finding> Trial::judged_dome(Judge judge, const DomeForm& dome, const DomeLoads& loads) {
    const Design& design = plan().design;
    const BuildingForm& building = plan().schedule.building;
    AnalysisParts parts;
    parts.strips = {judge == Judge::dome_safety, judge == Judge::dome_friction, false};
    parts.pressures = judge == Judge::dome_crushing;
    parts.ground_pressures = judge == Judge::dome_ground;
    parts.springline = judge == Judge::dome_stem || judge == Judge::piers;
    parts.levers = judge == Judge::dome_corbel;
    parts.sideways = judge == Judge::dome_sideways;
    parts.membrane = false;
    const DomeAnalysis analysis = analyse_dome(design, building, dome, parts, loads);
    switch (judge) {
    case Judge::dome_safety:
    case Judge::dome_friction:
    case Judge::dome_corbel:
    case Judge::dome_crushing:
        return dome_findings(design, dome, analysis);
    case Judge::dome_ground:
    case Judge::dome_stem:
    case Judge::dome_piers:
        return ground_findings(design, dome, analysis);
    case Judge::dome_sideways:
        return sideways_findings(design, dome, analysis);
    case Judge::dome_stages:
        return stage_findings(design, dome, analysis);
    case Judge::piers:
        return buttress_findings(design, building, dome, analysis);
    default:
        return {};
    }
}

} // namespace coilwright
