#include "exporters/statics_json.hpp"

#include "exporters/json_values.hpp"
#include "exporters/schedule_json.hpp"
#include "geometry/checks/element_findings.hpp"
#include "geometry/checks/formulas.hpp"
#include "geometry/statics/materials.hpp"

namespace coilwright {

namespace {

Json json_course(const WallCourse& course) {
    return {{"number", course.number},
            {"cap", course.cap},
            {"bottom", json_number(course.bottom)},
            {"top", json_number(course.top)},
            {"inside", json_number(course.inside)},
            {"outside", json_number(course.outside)},
            {"contact_inner", json_number(course.contact_inner)},
            {"contact_outer", json_number(course.contact_outer)},
            {"weight", json_number(course.weight)},
            {"centroid", json_number(course.mass_radius)},
            {"open_share", json_number(course.open_share)},
            {"strength", json_number(course.strength)}};
}

Json json_courses(const std::vector<WallCourse>& courses) {
    Json all = Json::array();
    for (const WallCourse& course : courses)
        all.push_back(json_course(course));
    return all;
}

/// Null where there is none: [x, z, normal, shear] of each joint that is pressed.
Json json_line(const ThrustLine& line) {
    if (!line.stands)
        return nullptr;
    Json all = Json::array();
    for (const JointThrust& joint : line.joints)
        if (joint.normal > 0)
            all.push_back({json_number(joint.point.x()), json_number(joint.point.y()),
                           json_number(joint.normal), json_number(joint.shear)});
    return all;
}

Json json_thrust(const ThrustLine& line) {
    return line.stands ? json_number(line.joints.back().thrust()) : Json(nullptr);
}

Json json_lines(const CentredThrust& centred, const LeastFriction& friction,
                const ThrustLine& least, const ThrustLine& greatest) {
    return {
        {"safety", centred.line.stands ? json_number(centred.safety()) : Json(nullptr)},
        {"friction_needed", friction.line.stands ? json_number(friction.friction) : Json(nullptr)},
        {"least_thrust", json_thrust(least)},
        {"greatest_thrust", json_thrust(greatest)},
        {"lines",
         {{"centred", json_line(centred.line)},
          {"least", json_line(least)},
          {"greatest", json_line(greatest)}}}};
}

Json json_joints(const std::vector<JointCheck>& joints) {
    Json all = Json::array();
    for (const JointCheck& joint : joints)
        all.push_back({{"under_course", joint.course},
                       {"normal", json_number(joint.normal)},
                       {"thrust", json_number(joint.thrust)},
                       {"reach", json_number(joint.reach)},
                       {"shear_over_normal", json_number(joint.friction_needed)},
                       {"pressure", json_number(joint.pressure)},
                       {"ring", json_number(joint.hoop)}});
    return all;
}

Json json_dome(const DomeAnalysis& dome) {
    Json strips = Json::array(), membrane = Json::array(), piers = Json::array();
    for (std::size_t i = 0; i < dome.statics.strips.size(); ++i) {
        const StripStatics& strip = dome.statics.strips[i];
        Json json{{"beside", strip.beside.empty() ? Json(nullptr) : Json(strip.beside)}};
        json.update(json_lines(strip.centred, strip.friction, strip.least, strip.greatest));
        json["joints"] = json_joints(strip.joints);
        json["joints_of_least_strength"] = json_joints(dome.pressures[i].joints);
        strips.push_back(std::move(json));
    }
    for (const CourseMembrane& course : dome.membrane)
        membrane.push_back({{"course", course.course},
                            {"meridian", json_number(course.forces.meridional)},
                            {"ring", json_number(course.forces.hoop)}});
    for (const PierCheck& pier : dome.statics.piers)
        piers.push_back({{"course", pier.course},
                         {"from", pier.from},
                         {"to", pier.to},
                         {"length", json_number(pier.length)},
                         {"pressure", json_number(pier.pressure)},
                         {"strength", json_number(pier.strength)}});
    return {{"dome", dome.statics.dome},           {"courses", json_courses(dome.statics.courses)},
            {"strips", std::move(strips)},         {"membrane", std::move(membrane)},
            {"piers", std::move(piers)},           {"slice_acceleration", json_number(dome.sway)},
            {"slice_wind", json_number(dome.wind)}};
}

Json json_tunnel(const TunnelAnalysis& tunnel) {
    Json json{{"tunnel", tunnel.tunnel}, {"courses", json_courses(tunnel.courses)}};
    json.update(json_lines(tunnel.centred, tunnel.friction, tunnel.least, tunnel.greatest));
    json["acceleration"] = json_number(tunnel.sway);
    json["wind"] = json_number(tunnel.wind);
    return json;
}

Json json_lintel(const LaidLintel& laid) {
    return {{"over", laid.lintel.opening},
            {"span", json_number(laid.beam.span)},
            {"depth", json_number(laid.beam.depth)},
            {"width", json_number(laid.beam.width)},
            {"load", json_number(laid.forces.load)},
            {"moment", json_number(laid.forces.moment)},
            {"bending", json_number(laid.forces.bending)},
            {"shear", json_number(laid.forces.shear_stress)},
            {"bearing", json_number(laid.forces.bearing)}};
}

Json json_formulas() {
    Json all = Json::object();
    for (const auto& [name, table] : {std::pair{"lines", ReportTable::sections},
                                      {"tunnel_lines", ReportTable::tunnel_sections},
                                      {"dome_courses", ReportTable::courses},
                                      {"tunnel_courses", ReportTable::tunnel_courses},
                                      {"joints", ReportTable::joints},
                                      {"membrane", ReportTable::membrane},
                                      {"piers", ReportTable::piers},
                                      {"lintels", ReportTable::lintels}}) {
        Json columns = Json::array();
        for (const ColumnFormula& one : formulas_of(table))
            columns.push_back(
                {{"number", one.column}, {"formula", one.formula}, {"source", one.source}});
        all[name] = std::move(columns);
    }
    return all;
}

Json json_statics(const BuildingPlan& plan, const BuildingStatics& statics) {
    Json domes = Json::array(), tunnels = Json::array(), lintels = Json::array();
    for (const DomeAnalysis& dome : statics.domes)
        domes.push_back(json_dome(dome));
    for (const TunnelAnalysis& tunnel : statics.tunnels)
        tunnels.push_back(json_tunnel(tunnel));
    for (const LaidLintel& laid : laid_lintels(plan))
        lintels.push_back(json_lintel(laid));
    Json fills = Json::array();
    for (const Course& course : plan.schedule.courses) {
        const MaterialValue density = fill_density(plan.design, course.number),
                            strength = fill_strength(plan.design, course.number);
        fills.push_back({{"course", course.number},
                         {"density", json_number(density.value)},
                         {"density_source", density.source},
                         {"strength", json_number(strength.value)},
                         {"strength_source", strength.source}});
    }
    return {{"friction", json_number(plan.design.joint.friction)},
            {"ground_friction", json_number(plan.design.ground.friction)},
            {"fills", std::move(fills)},
            {"domes", std::move(domes)},
            {"tunnels", std::move(tunnels)},
            {"lintels", std::move(lintels)},
            {"formulas", json_formulas()}};
}

} // namespace

std::string checks_json(const BuildingPlan& plan, const CheckedBuilding& checked) {
    Json json = Json::parse(findings_json(plan, checked.findings, checked.changes));
    json["statics"] = json_statics(plan, checked.statics);
    return json_text(json);
}

} // namespace coilwright
