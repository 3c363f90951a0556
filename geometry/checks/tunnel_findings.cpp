#include "geometry/checks/element_findings.hpp"
#include "geometry/checks/statics_finding.hpp"
#include "geometry/statics/materials.hpp"

#include <algorithm>

namespace coilwright {

namespace {

Finding of_tunnel(const Design& design, const TunnelForm& tunnel, const std::string& code) {
    return statics_finding(code, "tunnel." + tunnel.id, find_tunnel(design, tunnel.id)->place);
}

Finding vault_safety(const Design& design, const TunnelForm& tunnel,
                     const TunnelAnalysis& analysis) {
    const Limit& least = limit_of(design, "geometric-safety.least");
    Finding found = of_tunnel(design, tunnel, "tunnel-safety");
    found.formula = "half contact / greatest distance of the most centred line of thrust from the "
                    "middle of a joint; vault and walls as one arch down to the ground";
    found.source = source_text(least);
    if (!analysis.laid) {
        found.message = "A course of '" + tunnel.id + "' finds nothing to lie on.";
        return found;
    }
    const double safety = analysis.centred.safety();
    judge_ratio(found, safety, least.value, limit_of(design, "geometric-safety.good").value);
    if (found.verdict == Verdict::fails) {
        found.message = "No line of thrust keeps within the vault and walls of '" + tunnel.id +
                        "' by themselves" +
                        (safety > 0 ? "; the best would need joints " + fixed_text(1 / safety, 2) +
                                          " times as wide."
                                    : ".");
        found.remedy =
            "A higher vault, lower walls or a wider tube; or earth or buttresses against "
            "the walls, which this leaves out.";
        return found;
    }
    found.message = "The most centred line of thrust in the closed vault and walls of '" +
                    tunnel.id + "' would keep within joints " + fixed_text(safety, 2) +
                    " times narrower.";
    if (found.verdict != Verdict::holds)
        found.remedy =
            "A higher vault, lower walls or a wider tube brings it nearer to the middle.";
    return found;
}

Finding vault_corbel(const Design& design, const TunnelForm& tunnel,
                     const TunnelAnalysis& analysis) {
    Finding found = of_tunnel(design, tunnel, "tunnel-corbel");
    found.unit = FindingUnit::metre;
    found.limit = 0;
    found.formula =
        "centre of mass of what is laid above, less the inner edge of the flat under it";
    found.source = "balance; Rovero & Tonietti 2012-14 (from memory)";
    const auto worst = std::min_element(analysis.levers.begin(), analysis.levers.end());
    if (worst == analysis.levers.end())
        return found;
    found.value = *worst;
    if (*worst >= 0) {
        found.verdict = Verdict::holds;
        found.message = "The courses of '" + tunnel.id + "' lie by themselves up to the crown.";
        return found;
    }
    const auto first = std::find_if(analysis.levers.begin(), analysis.levers.end(),
                                    [](double lever) { return lever < 0; });
    found.verdict = Verdict::advice;
    found.message = "A vault has no rings: what lies above course " +
                    std::to_string(first - analysis.levers.begin() + 1) + " of '" + tunnel.id +
                    "' falls in, by " + length_text(-*worst, design.unit) +
                    " at the worst, until the crown is laid.";
    found.remedy = "A form under all of the vault carries it until the crown is laid, tamped and " +
                   three_digits(design.course.strike_age_days) + " days old.";
    return found;
}

/// Joints of vault and walls; the ground under them is abutment().
Finding vault_sliding(const Design& design, const TunnelForm& tunnel,
                      const TunnelAnalysis& analysis) {
    Finding found = of_tunnel(design, tunnel, "tunnel-sliding");
    found.formula = "friction of the joints / the least friction with which any line of thrust "
                    "balances vault and walls as one arch down to the ground";
    found.source = joint_sliding_source(design);
    if (!analysis.friction.line.stands) {
        found.message = "No balance of the vault and walls of '" + tunnel.id +
                        "' by themselves is found, so what friction they need is not known.";
        found.remedy = "First mend what keeps a line of thrust from the vault.";
        return found;
    }
    const double needed = analysis.friction.friction;
    judge_ratio(found, needed > 0 ? design.joint.friction / needed : unlimited, 1,
                design.joint.factor);
    found.message = "The joints of the closed vault and the walls of '" + tunnel.id +
                    "' need a friction of at least " + three_digits(needed) +
                    "; they are taken to have " + three_digits(design.joint.friction) + ".";
    soften_default(found, design.joint.friction_stated, "friction of the joints");
    if (found.verdict != Verdict::holds)
        found.remedy = "Measure the friction of two filled bags with the wire between them; " +
                       three_digits(up_to_three_digits(needed * design.joint.factor)) +
                       " would do. A higher vault needs less.";
    if (bank_against_wall(design)) {
        found.verdict = Verdict::not_judged;
        found.message += " The bank outside is left out.";
    }
    return found;
}

Finding abutment(const Design& design, const TunnelForm& tunnel, const TunnelAnalysis& analysis) {
    Finding found = of_tunnel(design, tunnel, "tunnel-abutment");
    found.formula = "friction on the ground x weight of half the vault and its wall / least thrust "
                    "at the friction of the joints";
    found.source = ground_sliding_source(design);
    if (!analysis.least.stands) {
        found.message = "There is no line of thrust in '" + tunnel.id +
                        "' by itself, so its walls are not judged.";
        return found;
    }
    const JointThrust& ground = analysis.least.joints.back();
    judge_ratio(found,
                ground.thrust() > 1e-9 ? design.ground.friction * ground.normal / ground.thrust()
                                       : unlimited,
                1, design.joint.factor);
    found.message = "Each wall of '" + tunnel.id + "' must keep " +
                    line_force_text(ground.thrust(), design.unit) + " under " +
                    line_force_text(ground.normal, design.unit) +
                    " from sliding outward on the ground.";
    soften_ground_friction(found, design);
    if (found.verdict != Verdict::holds)
        found.remedy = "A higher vault pushes less; more buried courses hold more.";
    if (!(analysis.line_friction <= design.joint.friction))
        leave_sliding(found, design, {{"", analysis.line_friction}}, false);
    if (bank_against_wall(design)) {
        found.verdict = Verdict::not_judged;
        found.message += " The bank outside is left out.";
    }
    return found;
}

} // namespace

std::vector<Finding> tunnel_findings(const Design& design, const TunnelForm& tunnel,
                                     const TunnelAnalysis& analysis) {
    std::vector<Finding> findings{vault_safety(design, tunnel, analysis)};
    if (!analysis.laid)
        return findings;
    findings.push_back(vault_corbel(design, tunnel, analysis));
    findings.push_back(vault_sliding(design, tunnel, analysis));
    findings.push_back(abutment(design, tunnel, analysis));
    for (Finding& found : tunnel_pressure_findings(design, tunnel, analysis))
        findings.push_back(std::move(found));
    for (Finding& found : tunnel_sideways_findings(design, tunnel, analysis))
        findings.push_back(std::move(found));
    return findings;
}

} // namespace coilwright
