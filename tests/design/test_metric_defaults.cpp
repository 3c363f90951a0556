#include "geometry/design/read_design.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;

namespace {

Design read(const std::string& unit, const std::string& course) {
    const DesignReading reading = read_design("coilwright = 1\nname = \"Store\"\nunit = \"" + unit +
                                              "\"\n[course]\nheight = \"12 cm\"\n" + course +
                                              "[tube.main]\nlay_flat = \"43 cm\"\n"
                                              "[dome.store]\nuse = \"store\"\n"
                                              "inside_diameter = \"3 m\"\nspringline = \"60 cm\"\n"
                                              "profile = { kind = \"pointed\", rise = \"3 m\" }\n"
                                              "tube = \"main\"\n");
    for (const Diagnostic& diagnostic : reading.diagnostics)
        UNSCOPED_INFO(diagnostic.subject << ": " << diagnostic.message);
    REQUIRE(reading.diagnostics.empty());
    return reading.design;
}

bool multiple(double length, double step) {
    return std::abs(std::remainder(length, step)) < 1e-12;
}

} // namespace

TEST_CASE("metric defaults: round in millimetres, as those in feet are in inches") {
    for (const auto& [unit, step] : {std::pair{"m", 0.050}, {"ft", 0.0508}}) {
        CAPTURE(unit);
        const Design design = read(unit, "");
        for (const double length :
             {design.course.end_allowance, design.course.joint_lap, design.course.longest_tube,
              design.wire.lap, design.ground.level})
            CHECK(multiple(length, step));
        // Near each other: who writes metres builds alike.
        CHECK(design.course.end_allowance == Approx(0.2032).epsilon(0.02));
        CHECK(design.course.joint_lap == Approx(0.4572).epsilon(0.02));
        CHECK(design.course.longest_tube == Approx(9.144).epsilon(0.02));
        CHECK(design.wire.lap == Approx(0.6096).epsilon(0.02));
        CHECK(design.ground.level == Approx(-0.1524).epsilon(0.02));
    }
}

TEST_CASE("metric defaults: what the design says wins") {
    const Design design = read("m", "end_allowance = \"8 in\"\njoint_lap = 0.5\n");
    CHECK(design.course.end_allowance == Approx(0.2032));
    CHECK(design.course.joint_lap == Approx(0.5));
    CHECK(design.course.longest_tube == 9.0);
}
