#include "tests/takeoff/planned.hpp"

#include "geometry/design/read_design.hpp"
#include "geometry/design/read_works.hpp"

#include <catch2/catch.hpp>

namespace coilwright::testing {

BuildingPlan planned(const std::string& toml) {
    DesignReading reading = read_design(toml);
    BuildingPlan plan = plan_building(reading.design, reading.diagnostics);
    for (const Diagnostic& fault : plan.diagnostics)
        UNSCOPED_INFO(fault.subject << ": " << fault.message);
    REQUIRE(plan.sound());
    return plan;
}

double amount(const TakeOff& take, const std::string& code) {
    const TakeOffItem* item = find_item(take, code);
    return item ? item->amount : 0;
}

Works plastered_works() {
    return read_works(
               "works = 1\nunit = \"ft\"\n"
               "[coat.base]\nside = \"outside\"\norder = 1\nthickness = \"1 in\"\nmix = \"earth\"\n"
               "[coat.top]\nside = \"outside\"\norder = 2\nthickness = \"1/2 in\"\nmix = \"lime\"\n"
               "[coat.in]\nside = \"inside\"\nthickness = \"1 in\"\nmix = \"earth\"\n"
               "[paint.wash]\nside = \"outside\"\n")
        .works;
}

} // namespace coilwright::testing
