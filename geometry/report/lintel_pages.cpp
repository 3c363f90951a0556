#include "geometry/base/quantity.hpp"
#include "geometry/checks/element_findings.hpp"
#include "geometry/checks/statics_finding.hpp"
#include "geometry/report/formula_notes.hpp"
#include "geometry/report/report_pages.hpp"

namespace coilwright {

std::vector<Sheet> lintel_pages(const Drafting& drafting) {
    const std::vector<LaidLintel> lintels = laid_lintels(drafting.plan);
    if (lintels.empty())
        return {};
    Flow flow(
        drafting, [&] { return titled_page(drafting, "Lintels", ""); }, sizes::small);
    const DisplayUnit unit = drafting.unit();
    Table sizes_of, forces;
    sizes_of.columns = {{{"over"}, Align::left, true},
                        {{"of"}, Align::left, false},
                        {{"span"}, Align::right, false},
                        {{"depth"}, Align::right, false},
                        {{"width"}, Align::right, false},
                        {{"bearing", "each side"}, Align::right, false},
                        {{"wall", "over it"}, Align::right, false}};
    forces.columns = {{{"over"}, Align::left, true},     {{"load"}, Align::right, false},
                      {{"moment"}, Align::right, false}, {{"bending"}, Align::right, false},
                      {{"shear"}, Align::right, false},  {{"bearing"}, Align::right, false}};
    for (const LaidLintel& laid : lintels) {
        const LintelBeam& beam = laid.beam;
        sizes_of.rows.push_back(
            {laid.lintel.opening, laid.lintel.kind == LintelKind::timber ? "timber" : "concrete",
             drafting.length(beam.span), drafting.length(beam.depth), drafting.length(beam.width),
             drafting.length(laid.lintel.bearing), drafting.length(beam.wall_above)});
        forces.rows.push_back(
            {laid.lintel.opening, force_text(laid.forces.load, unit),
             moment_text(laid.forces.moment, unit), stress_text(laid.forces.bending, unit),
             stress_text(laid.forces.shear_stress, unit), stress_text(laid.forces.bearing, unit)});
    }
    flow.table("Lintels as beams on two supports", sizes_of, sizes::small, sizes::least);
    flow.space(2);
    flow.table("What they carry", forces, sizes::small, sizes::least);
    add_formulas(flow, ReportTable::lintels);
    return flow.finish();
}

} // namespace coilwright
