// Values of materials, ground and site that no building has are refused, each by its own key.
#include "geometry/design/read_design.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>
#include <vector>

using namespace coilwright;

namespace {

const std::string store = R"(coilwright = 1
name = "Store"
unit = "ft"
[course]
height = "5 in"
[tube.main]
lay_flat = "17 in"
[dome.store]
at = [0, 0]
inside_diameter = "9 ft"
springline = "20 in"
profile = { kind = "pointed", rise = "9 ft" }
tube = "main"
)";

struct Refused {
    std::string table, key;
    std::vector<std::string> values; // as typed
    std::string sound;               // one that is taken
};

} // namespace

TEST_CASE("absurd and negative values of materials, ground and site are refused") {
    const std::vector<Refused> all{
        {"fill.main",
         "density",
         {"\"-110 pcf\"", "\"0 pcf\"", "\"1100 pcf\"", "\"9 kg/m3\""},
         "\"110 pcf\""},
        {"fill.main", "strength", {"\"-50 psi\"", "\"0 psi\"", "\"1e9 psi\""}, "\"50 psi\""},
        {"fill.main", "friction_angle", {"-5", "89"}, "30"},
        {"ground",
         "bearing_capacity",
         {"\"-1500 psf\"", "\"0 psf\"", "\"1e9 psf\""},
         "\"1500 psf\""},
        {"ground", "friction", {"-0.1", "50"}, "0.4"},
        {"ground", "friction_angle", {"-1", "95"}, "30"},
        {"joint", "friction", {"-0.5", "50"}, "0.5"},
        {"joint", "factor", {"-1.5", "0", "1e6"}, "1.5"},
        {"site", "wind_pressure", {"\"-20 psf\"", "\"1e6 psf\""}, "\"20 psf\""},
        {"site", "snow", {"\"-20 psf\"", "\"1e6 psf\""}, "\"20 psf\""},
        {"site", "seismic_acceleration", {"\"-0.2 g\"", "\"20 g\""}, "\"0.2 g\""},
        {"wire", "breaking", {"\"-950 lbf\"", "\"1e9 lbf\""}, "\"950 lbf\""},
        {"wire", "joint_factor", {"-0.5", "1.5"}, "0.5"},
    };
    for (const Refused& one : all) {
        const auto faults_of = [&](const std::string& value) {
            return read_design(store + "[" + one.table + "]\n" + one.key + " = " + value + "\n")
                .diagnostics;
        };
        CAPTURE(one.table, one.key);
        for (const Diagnostic& fault : faults_of(one.sound))
            FAIL_CHECK(fault.code + ": " + fault.message);
        for (std::string value : one.values) {
            CAPTURE(value);
            const std::vector<Diagnostic> faults = faults_of(value);
            REQUIRE_FALSE(faults.empty());
            CHECK(std::any_of(faults.begin(), faults.end(), [&](const Diagnostic& fault) {
                return fault.subject == one.table + "." + one.key &&
                       (fault.code == "out-of-range" || fault.code == "unreadable-measure");
            }));
        }
        for (const char* const odd : {"nan", "inf", "-inf"}) {
            CAPTURE(odd);
            CHECK_FALSE(faults_of(odd).empty());
        }
    }
}
