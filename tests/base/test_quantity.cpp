// Conversion factors: NIST Special Publication 811 (2008), appendix B: 1 lbf = 4.448222 N,
// 1 psi = 6.894757 kPa, 1 psf = 47.88026 Pa, 1 lb/ft3 = 16.01846 kg/m3, 1 lbf/ft = 14.59390 N/m
// (from memory).
#include "geometry/base/quantity.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;

namespace {

double read(const char* text, Quantity quantity) {
    const LengthReading reading = read_quantity(text, quantity);
    CAPTURE(text, reading.fault);
    CHECK(reading.fault.empty());
    return reading.value;
}

} // namespace

TEST_CASE("quantities of both systems read to SI") {
    CHECK(read("1 psf", Quantity::pressure) == Approx(47.88026).epsilon(1e-6));
    CHECK(read("1 psi", Quantity::pressure) == Approx(6894.757).epsilon(1e-6));
    // Presumptive bearing of clay: 1500 psf is 71.82 kPa.
    CHECK(read("1500 psf", Quantity::pressure) == Approx(71820).epsilon(1e-4));
    CHECK(read("75 kPa", Quantity::pressure) == 75000);
    CHECK(read("71.8 kN/m\u00B2", Quantity::pressure) == Approx(71800));
    // Barbed wire of ASTM A121 breaks at 950 lbf, 4230 N.
    CHECK(read("950 lbf", Quantity::force) == Approx(4230).epsilon(1e-3));
    CHECK(read("1 pcf", Quantity::density) == Approx(16.01846).epsilon(1e-6));
    CHECK(read("1800 kg/m\u00B3", Quantity::density) == 1800);
    CHECK(read("1 pcf", Quantity::unit_weight) == Approx(16.01846 * 9.80665).epsilon(1e-6));
    CHECK(read("18 kN/m3", Quantity::unit_weight) == 18000);
    CHECK(read("1 plf", Quantity::line_load) == Approx(14.59390).epsilon(1e-6));
    CHECK(read("0.2 g", Quantity::acceleration) == Approx(1.96133));
    CHECK(read("1 m/s2", Quantity::acceleration) == 1);
    CHECK(read("1 kgf", Quantity::force) == 9.80665);
    CHECK(read("1 N", Quantity::force) == 1);
    CHECK(read("4.2 kN", Quantity::force) == 4200);
    CHECK(read("1.8 t/m3", Quantity::density) == 1800);
    CHECK(read("1 lb/ft3", Quantity::density) == read("1 pcf", Quantity::density));
    CHECK(read("2 N/mm2", Quantity::pressure) == read("2 MPa", Quantity::pressure));
    CHECK(read("2 MPa", Quantity::pressure) == 2e6);
    CHECK(read("3 Pa", Quantity::pressure) == 3);
    CHECK(read("1 N/m3", Quantity::unit_weight) == 1);
    CHECK(read("0.7 kN/m", Quantity::line_load) == 700);
    CHECK(read("1 lbf/ft", Quantity::line_load) == read("1 plf", Quantity::line_load));
    CHECK(read("1 N/m", Quantity::line_load) == 1);
    CHECK(read("-1 kPa", Quantity::pressure) == -1000);
    CHECK(read(" 1 lbf / ft^3 ", Quantity::unit_weight) == read("1 pcf", Quantity::unit_weight));
}

TEST_CASE("a quantity without a known unit is refused") {
    for (const char* text : {"", "1500", "1500 ft", "psf", "1,500 psf", "1/0 psf", "1e3 psf"}) {
        CAPTURE(text);
        CHECK_FALSE(read_quantity(text, Quantity::pressure).fault.empty());
    }
    CHECK(read_quantity(std::string(60, ' ') + "1 psf" + std::string(60, ' '), Quantity::pressure)
              .fault == "is too long");
    CHECK(known_units(Quantity::acceleration) == "g, m/s2");
}

TEST_CASE("a quantity is written so that it reads back") {
    CHECK(quantity_text(71820.388, Quantity::pressure, DisplayUnit::feet) == "1500 psf");
    CHECK(quantity_text(71820.388, Quantity::pressure, DisplayUnit::metres) == "71.8204 kPa");
    for (Quantity quantity : {Quantity::pressure, Quantity::force, Quantity::density,
                              Quantity::unit_weight, Quantity::line_load, Quantity::acceleration})
        for (DisplayUnit unit : {DisplayUnit::feet, DisplayUnit::metres})
            CHECK(read(quantity_text(1234.5, quantity, unit).c_str(), quantity) ==
                  Approx(1234.5).epsilon(1e-5));
}
