#include "geometry/checks/formulas.hpp"

#include <map>

namespace coilwright {

namespace {

constexpr const char* balance = "statics of rigid bodies";
constexpr const char* heyman = "limit analysis: Heyman, The Stone Skeleton, 1966, from memory";

const std::map<ReportTable, std::vector<ColumnFormula>>& table() {
    static const std::map<ReportTable, std::vector<ColumnFormula>> all{
        {ReportTable::sections,
         {{"factor",
           "half the contact / greatest distance of the most centred line from the middle of a "
           "joint, by a linear program, friction without limit",
           heyman},
          {"friction needed",
           "least possible value of the greatest shear / normal in a joint, by the same program",
           heyman},
          {"thrust on the ground",
           "least and greatest horizontal force in the joint under course 1 with the friction "
           "assumed in the joints and on the ground, by the same program: the greatest is no more "
           "than the ground's friction x the weight",
           heyman}}},
        {ReportTable::tunnel_sections,
         {{"factor",
           "half the contact / greatest distance of the most centred line from the middle of a "
           "joint, by a linear program, friction without limit",
           heyman},
          {"friction needed",
           "least possible value of the greatest shear / normal in a joint, by the same program",
           heyman},
          {"thrust on the ground",
           "least and greatest horizontal force in the joint under course 1 on a metre or a foot "
           "of length, at the friction of the joints (the least with which a line stands, where "
           "that is more), by the same program",
           heyman}}},
        {ReportTable::courses,
         {{"inside radius", "half-width of the profile at the middle of the course's height",
           "geometry"},
          {"width", "outside less inside radius; of a disc its radius", "geometry"},
          {"flat under it",
           "least outside radius less greatest inside radius of it and the course below, less t, "
           "the course's height (a tube measured square: nothing less); under course 1 its own",
           "geometry; tubes with half-round sides"},
          {"weight",
           "density x g x A x r_c, A = (w - t) t + pi t^2/4, r_c to the middle of the tube; a "
           "disc: density x g x t R^2/2; and plaster, glazing and snow where they count; on a "
           "radian, as if nothing opened it",
           "Pappus-Guldinus"},
          {"centroid from pole",
           "r_c + I/(A r_c), I of the section about its upright axis; a disc: 2R/3; plaster at its "
           "face",
           "statics of a sector"},
          {"open %", "share of the centreline that openings, tunnels and joined domes take",
           "geometry"},
          {"meridian and ring",
           "of the membrane, as under its plot; the meridian's in the joint "
           "under the course",
           "Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells, 1959, ch. 14, from "
           "memory"}}},
        {ReportTable::tunnel_courses,
         {{"inside from axis", "half-width of the profile at the middle of the course's height",
           "geometry"},
          {"width", "outside less inside half-width; at the crown, half of the solid course",
           "geometry"},
          {"flat under it",
           "least outside less greatest inside half-width of it and the course below, less t, the "
           "course's height (a tube measured square: nothing less); under course 1 its own",
           "geometry; tubes with half-round sides"},
          {"weight",
           "density x g x A, A = (w - t) t + pi t^2/4; at the crown density x g x w t; and "
           "plaster; "
           "of one side, on a metre or a foot of length",
           "geometry"},
          {"centroid from axis", "middle of the section; plaster at its face", balance}}},
        {ReportTable::joints,
         {{"normal",
           "N/(r k), N on a radian from the line of thrust, r the radius where it acts, k the "
           "share of the strip that is wall, of the course over or under the joint the less",
           balance},
          {"thrust", "H/(r k), H the horizontal force on a radian", balance},
          {"reach",
           "distance from the middle of the flat / half the flat; over 100 % it is outside",
           balance},
          {"shear / normal",
           "|S|/N; level joints: H/N; up to the friction of the joints where a line stands so",
           balance},
          {"pressure", "N/(r k (d - 2 e)), d the flat, e the distance from its middle",
           "Meyerhof 1953, from memory"},
          {"ring",
           "push of the closed ring over the joint that balances its course: change of H on a "
           "radian; wire's pull counts as negative",
           balance}}},
        {ReportTable::membrane,
         {{"meridian", "V sqrt(1 + x'^2)/r, V the weight above on a radian, x' the profile's slope",
           "balance of a ring sector; Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells, "
           "1959, ch. 14, from memory"},
          {"ring",
           "change of V |x'| over a course (over the topmost ring V |x'| counts as zero) / (t "
           "sqrt(1 + x'^2)): q r |x'| + V x''/sqrt(1 + x'^2), "
           "q the weight of the surface",
           "the same"}}},
        {ReportTable::piers,
         {{"length", "kept arc of the centreline between the two", "geometry"},
          {"pressure",
           "weight of the dome above, less its openings, on its arc and on half of each opening "
           "beside it / (length x flat)",
           balance},
          {"strength", "of the fill of that course", "as under Materials and loads"}}},
        {ReportTable::lintels,
         {{"span", "opening and half a bearing at either end", "common practice, no source"},
          {"load",
           "(gamma b + p) h (L - h) and its own weight: the wall's triangle of 45 degrees, h = L/2 "
           "or the wall's height over it where that is less, b its thickness, gamma its unit "
           "weight, p the weight of the plaster on both its faces",
           "common practice, no source; any handbook of masonry"},
          {"moment", "at mid-span: W L/6 of a whole triangle, q L^2/8 of its own weight", balance},
          {"bending", "6 M/(b d^2), b and d of the lintel", "elastic theory of beams"},
          {"shear", "3 V/(2 b d), V half the load", "elastic theory of beams"},
          {"bearing", "load / area of both ends on the course below", balance}}},
    };
    return all;
}

} // namespace

const std::vector<ColumnFormula>& formulas_of(ReportTable which) {
    return table().at(which);
}

std::string formula_line(ReportTable which) {
    std::string line;
    for (const ColumnFormula& one : formulas_of(which))
        line +=
            (line.empty() ? "" : "; ") + one.column + ": " + one.formula + " (" + one.source + ")";
    return line + ".";
}

} // namespace coilwright
