// Earthquake and wind on a tunnel's vault with its walls, and on its end wall as if it stood free.
#include "geometry/base/quantity.hpp"
#include "geometry/checks/element_findings.hpp"
#include "geometry/checks/statics_finding.hpp"
#include "geometry/plan/section.hpp"
#include "geometry/statics/materials.hpp"
#include "geometry/statics/sway.hpp"

namespace coilwright {

namespace {

/// Held against what the site asks; what a tunnel bears is no more than an advice, because the dome
/// that it leans on is left out.
void judge_site(Finding& found, const std::optional<double>& asked, const std::string& key,
                DisplayUnit unit) {
    if (!asked) {
        found.message += " What the site asks is not stated.";
        found.remedy = "State [site] " + key + ".";
        return;
    }
    found.limit = *asked;
    found.verdict = *found.value >= *asked ? Verdict::holds : Verdict::advice;
    if (found.verdict == Verdict::advice) {
        found.message += " The site asks for " + shown_value(found, *asked, unit) +
                         (found.unit == FindingUnit::ratio ? " g." : ".");
        found.remedy = "A wider tube or a lower tunnel bears more; ask an engineer what the dome "
                       "beside it takes.";
    }
}

struct Codes {
    const char *earthquake, *wind;
};
struct Asked {
    std::optional<double> acceleration, wind; // g, Pa
};

std::vector<Finding> judged(const Design& design, const TunnelForm& tunnel, const Codes& codes,
                            const std::string& of, double sway, double wind,
                            const std::string& formula) {
    const Site& site = design.site;
    const Asked asked{site.seismic_acceleration
                          ? std::optional(*site.seismic_acceleration / standard_gravity)
                          : std::nullopt,
                      site.wind_pressure};
    const SourcePlace place = find_tunnel(design, tunnel.id)->place;
    Finding quake = statics_finding(codes.earthquake, "tunnel." + tunnel.id, place);
    quake.unit = FindingUnit::ratio;
    quake.value = sway;
    quake.formula = "greatest even sideways acceleration, as a share of gravity, of " + formula;
    quake.source = "limit analysis, tested against Oppenheim 1992";
    quake.message =
        of + " bears " + three_digits(sway) + " g sideways, the dome beside it left out.";
    judge_site(quake, asked.acceleration, "seismic_acceleration", design.unit);
    Finding blown = statics_finding(codes.wind, "tunnel." + tunnel.id, place);
    blown.unit = FindingUnit::pascal;
    blown.value = wind;
    blown.formula =
        "greatest even pressure on one side of " + formula + "; no suction on the other";
    blown.source = quake.source;
    blown.message = of + " bears a wind of " + pressure_text(wind, design.unit) +
                    ", the dome beside it left out.";
    judge_site(blown, asked.wind, "wind_pressure", design.unit);
    return {quake, blown};
}

} // namespace

FreeWall end_wall_of(const Design& design, const TunnelForm& tunnel) {
    const double t = tunnel.course_height;
    FreeWall wall;
    wall.contact = tunnel.width - (design.course.edge == TubeEdge::round ? t : 0);
    double bottom = tunnel.top();
    for (int n = tunnel.side_courses + tunnel.crown_courses; n >= 1; --n) {
        if (tunnel.course_bottom(n) < design.ground.level - height_tie)
            break;
        bottom = tunnel.course_bottom(n);
        wall.weight +=
            fill_density(design, n).value * standard_gravity * stadium_area(tunnel.width, t);
    }
    wall.height = tunnel.top() - bottom;
    return wall;
}

std::vector<Finding> tunnel_sideways_findings(const Design& design, const TunnelForm& tunnel,
                                              const TunnelAnalysis& analysis) {
    std::vector<Finding> findings =
        judged(design, tunnel, {"tunnel-earthquake", "tunnel-wind"},
               "The closed vault of '" + tunnel.id + "' with its walls", analysis.sway,
               analysis.wind, "vault and walls as one arch down to the ground, without sliding");
    if (!tunnel.end_wall)
        return findings;
    const FreeWall wall = end_wall_of(design, tunnel);
    if (wall.height <= 0 || wall.contact <= 0)
        return findings;
    const double sway = free_wall_capacity(wall.contact, wall.height, design.joint.friction);
    for (Finding& found :
         judged(design, tunnel, {"end-wall-earthquake", "end-wall-wind"},
                "The end wall of '" + tunnel.id + "', if it stood free,", sway,
                wall.weight * sway / wall.height,
                "a free wall from the ground up, the less of flat/height and the joints' friction, "
                "times its weight/height for wind; plaster left out"))
        findings.push_back(std::move(found));
    for (std::size_t i = 2; i < findings.size(); ++i)
        findings[i].source = "statics of rigid bodies; friction by [joint]";
    return findings;
}

} // namespace coilwright
