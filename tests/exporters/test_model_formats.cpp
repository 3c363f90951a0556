#include "exporters/ifc.hpp"
#include "exporters/materials.hpp"
#include "exporters/model_formats.hpp"
#include "tests/exporters/comma_locale.hpp"
#include "tests/exporters/sample_models.hpp"
#include "tests/exporters/sample_plans.hpp"
#include "tests/exporters/scratch.hpp"

#include <Eigen/Geometry>
#include <catch2/catch.hpp>
#include <cmath>

namespace coilwright {

TEST_CASE("every model format gives the same bytes twice, and where decimals are commas") {
    const SolidModel model = small_building();
    for (const ModelFormat& format : model_formats()) {
        CAPTURE(format.name);
        const std::vector<OutputFile> first = format.write(model, "shell", {});
        REQUIRE_FALSE(first.empty());
        CHECK(first[0].path == "shell." + format.name);
        const CommaLocale commas;
        const std::vector<OutputFile> second = format.write(model, "shell", {});
        REQUIRE(second.size() == first.size());
        for (std::size_t k = 0; k < first.size(); ++k)
            CHECK((first[k].path == second[k].path && first[k].bytes == second[k].bytes));
    }
}

TEST_CASE("a building's IFC is the same bytes where decimals are commas") {
    const BuildingPlan plan = demo_plan("washroom.toml");
    const SolidResult courses = courses_model(plan.schedule, 0.02);
    REQUIRE(courses.faults.empty());
    for (const IfcSchema schema : {IfcSchema::ifc4, IfcSchema::ifc2x3}) {
        const std::string first = ifc_text(plan, courses.model, schema);
        CHECK(first.size() > 10000);
        const CommaLocale commas;
        CHECK(ifc_text(plan, courses.model, schema) == first);
    }
}

TEST_CASE("the reference names every model format") {
    const std::string page = bytes_of(COILWRIGHT_SOURCE_DIR "/docs/reference/formats.md");
    for (const ModelFormat& format : model_formats()) {
        CAPTURE(format.name);
        CHECK_FALSE(format.what.empty());
        const std::string up = format.y_up ? "+Y" : "Z";
        const std::string row = "| `" + format.name + "` | " + format.what + " | " +
                                unit_name(format.unit) + (format.unit_is_free ? ", `--unit`" : "") +
                                " | " + up + (format.up_is_free ? ", `--y-up`" : "") + " | " +
                                format.names + " | " + format.tree + " | " + format.colours +
                                " | " + format.precision + " |";
        CAPTURE(row);
        CHECK(page.find(row) != std::string::npos);
    }
    for (const Material material :
         {Material::earth, Material::earth_cap, Material::lime_plaster, Material::earth_render,
          Material::earth_floor, Material::timber, Material::concrete, Material::glass,
          Material::ground, Material::furnishing}) {
        const MaterialLook& looks = look(material);
        const std::string row = "| `" + looks.name + "` | " + fixed_text(looks.red, 2) + " | " +
                                fixed_text(looks.green, 2) + " | " + fixed_text(looks.blue, 2) +
                                " |";
        CAPTURE(row);
        CHECK(page.find(row) != std::string::npos);
    }
}

// IEC 61966-2-1: linear 0.214041 is encoded as 0.5; below 0.0031308 the curve is straight.
TEST_CASE("linear reflectances are encoded by the curve of sRGB") {
    CHECK(srgb_encoded(0) == 0);
    CHECK(srgb_encoded(1) == Approx(1).margin(1e-12));
    CHECK(srgb_encoded(0.214041) == Approx(0.5).margin(1e-6));
    for (const double linear : {0.0, 0.002, 0.1, 0.5, 1.0})
        CHECK(srgb_decoded(srgb_encoded(linear)) == Approx(linear).margin(1e-12));
    CHECK(srgb_encoded(0.001) == Approx(0.01292).margin(1e-12));
    // Straight up to 0.0031308, from there the curve.
    CHECK(srgb_encoded(0.0031) == Approx(12.92 * 0.0031).margin(1e-12));
    CHECK(srgb_encoded(0.005) == Approx(1.055 * std::pow(0.005, 1 / 2.4) - 0.055).margin(1e-12));
}

// ASTM D1535-08: reflectance of a Munsell value V in percent of the perfect diffuser (100 at V =
// 10): 1.1914 V - 0.22533 V^2 + 0.23352 V^3 - 0.020484 V^4 + 0.00081939 V^5. Coefficients from
// memory.
TEST_CASE("the looks of matt materials reflect what their Munsell value says") {
    const auto reflectance = [](double v) {
        return (1.1914 * v - 0.22533 * v * v + 0.23352 * v * v * v - 0.020484 * v * v * v * v +
                0.00081939 * v * v * v * v * v) /
               100;
    };
    const auto check = [&](Material material, double value) {
        const MaterialLook& looks = look(material);
        CAPTURE(looks.name);
        // Luminance by the primaries of sRGB (ITU-R BT.709).
        const double luminance = 0.2126 * looks.red + 0.7152 * looks.green + 0.0722 * looks.blue;
        CHECK(luminance == Approx(reflectance(value)).epsilon(0.05));
    };
    check(Material::earth, 5);
    check(Material::earth_cap, 4);
    check(Material::lime_plaster, 9);
    check(Material::timber, 7);
    check(Material::concrete, 7);
    check(Material::ground, 4);
    check(Material::furnishing, 8);
}

// International yard and pound agreement of 1959: the inch is 25.4 mm exactly.
TEST_CASE("a file's frame scales by its unit and turns without mirroring") {
    const Vec3 point(1, 2, 3);
    CHECK(FileFrame{FileUnit::metre, false}.placed(point) == point);
    CHECK(FileFrame{FileUnit::millimetre, true}.placed(point) == Vec3(1000, 3000, -2000));
    CHECK(FileFrame{FileUnit::inch, false}
              .placed({0.0254, -0.0254 * 36, 0})
              .isApprox(Vec3(1, -36, 0), 1e-15));
    CHECK(FileFrame{FileUnit::foot, false}
              .placed({0.3048, 0, 3.048})
              .isApprox(Vec3(1, 0, 10), 1e-15));
    const FileFrame turned{FileUnit::metre, true};
    const Vec3 x = turned.placed({1, 0, 0}), y = turned.placed({0, 1, 0}),
               z = turned.placed({0, 0, 1});
    CHECK(x.cross(y).dot(z) == 1);
    CHECK_FALSE(std::signbit(turned.placed({0, 0, 0}).z()));
}

TEST_CASE("formats that fix their unit or axes keep them whatever is asked") {
    const ModelOptions asked{FileUnit::inch, true};
    for (const ModelFormat& format : model_formats()) {
        CAPTURE(format.name);
        const FileFrame plain = frame_of(format, {}), frame = frame_of(format, asked);
        CHECK(plain.unit == format.unit);
        CHECK(plain.y_up == format.y_up);
        CHECK(frame.unit == (format.unit_is_free ? FileUnit::inch : format.unit));
        CHECK(frame.y_up == (format.y_up || format.up_is_free));
        const SolidModel model = small_building();
        const bool same =
            format.write(model, "m", {})[0].bytes == format.write(model, "m", asked)[0].bytes;
        CHECK(same == !(format.unit_is_free || format.up_is_free));
    }
}

} // namespace coilwright
