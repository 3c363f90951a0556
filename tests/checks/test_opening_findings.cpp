// What lies over openings: lintels as beams. Bending of a beam on two supports under an even load,
// q L^2/8, and its stress 6 M/(b d^2): any handbook of the strength of materials.
#include "geometry/checks/element_findings.hpp"
#include "tests/checks/laid.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

std::string lintelled(const std::string& kind) {
    return with(room_design, "height = \"85 in\"\nhead = { kind = \"square\" }",
                "height = \"80 in\"\nhead = { kind = \"square\", lintel = { kind = \"" + kind +
                    "\", bearing = \"12 in\", depth = \"10 in\", width = \"12 in\" } }");
}

Finding bent(const std::string& design) {
    return the(opening_findings(laid(design)), "lintel-bending", "opening.door");
}

} // namespace

TEST_CASE("a lintel weighs what the rules say of its kind") {
    for (const char* const kind : {"timber", "concrete"}) {
        CAPTURE(kind);
        const std::string design = lintelled(kind);
        const auto weighing = [&](const std::string& density) {
            return bent(design + "[rules.lintel-weight]\n" + kind + " = \"" + density + "\"\n")
                .value.value();
        };
        // 1000 kg/m3 more on 38 + 12 in: 6/(b d^2) x rho g b d L^2/8 = 0.75 rho g L^2/d.
        const double more = 0.75 * 1000 * 9.80665 * 50 * 50 / 10 * inch;
        CHECK(weighing("1400 kg/m3") - weighing("400 kg/m3") == Approx(more));
        const bool timber = kind == std::string("timber");
        CHECK(bent(design).value.value() ==
              Approx(weighing(timber ? "600 kg/m3" : "2400 kg/m3"))); // as built in
    }
}

TEST_CASE("what an engineer is to be given of a concrete lintel is in the design's unit") {
    const std::string feet = lintelled("concrete");
    CHECK(bent(feet).verdict == Verdict::not_judged);
    CHECK(bent(feet).remedy.find(" lbf ft.") != std::string::npos);
    CHECK(bent(with(feet, "unit = \"ft\"", "unit = \"m\"")).remedy.find(" kN m.") !=
          std::string::npos);
}
