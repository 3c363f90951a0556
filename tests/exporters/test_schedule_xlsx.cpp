// The schedule's workbook, reckoned anew by LibreOffice, against the schedule.
#include "exporters/schedule_xlsx.hpp"
#include "tests/exporters/recalculated.hpp"
#include "tests/exporters/sample_plans.hpp"

#include <catch2/catch.hpp>

namespace coilwright {

using nlohmann::json;

TEST_CASE("schedule.xlsx of every demo sums to the schedule's totals") {
    std::vector<std::pair<std::string, std::string>> books;
    std::vector<BuildingPlan> plans;
    for (const std::string& name : demo_files()) {
        plans.push_back(demo_plan(name));
        books.emplace_back("book" + std::to_string(books.size()), schedule_xlsx(plans.back()));
    }
    const json read = recalculated(books);
    for (std::size_t i = 0; i < plans.size(); ++i) {
        const Schedule& schedule = plans[i].schedule;
        CAPTURE(schedule.name);
        const json& sheets = read.at(books[i].first).at("sheets");
        check_no_error(sheets);
        const bool feet = schedule.unit == DisplayUnit::feet;
        const double length = feet ? 0.3048 : 1;
        const double volume = feet ? 0.3048 * 0.3048 * 0.3048 : 1;
        const json& courses = sheets.at("Courses");
        const std::size_t all = row_named(courses, "all");
        CHECK(number_in(courses, all, 10) * length ==
              Approx(schedule.totals.tube_length).epsilon(1e-9));
        CHECK(number_in(courses, all, 11) * length ==
              Approx(schedule.totals.cut_length).epsilon(1e-9));
        CHECK(number_in(courses, all, 12) * length ==
              Approx(schedule.totals.wire_length).epsilon(1e-9));
        CHECK(number_in(courses, all, 13) * volume ==
              Approx(schedule.totals.fill_volume).epsilon(1e-9));
        const json& tubes = sheets.at("Tubes");
        const std::size_t foot = row_named(tubes, "all");
        CHECK(number_in(tubes, foot, 8) * length ==
              Approx(schedule.totals.tube_length).epsilon(1e-9));
        CHECK(number_in(tubes, foot, 10) * length ==
              Approx(schedule.totals.cut_length).epsilon(1e-9));
        // As many tubes as the courses say, and as many cuts as the schedule has.
        double count = 0;
        for (std::size_t row = 2; row < all; ++row)
            count += number_in(courses, row, 9);
        CHECK(count == static_cast<double>(foot - 2));
        std::size_t cuts = 0;
        for (const Course& course : schedule.courses)
            for (const Ring& ring : course.rings)
                cuts += ring.cuts.size();
        CHECK(sheets.at("Cuts").size() == cuts + 2);
    }
}

TEST_CASE("schedule.xlsx gives the grain store's compass in inches") {
    const json sheets = recalculated({{"store", schedule_xlsx(demo_plan("grain-store.toml"))}})
                            .at("store")
                            .at("sheets");
    // 9 ft inside, so 54 in from the pole; the first course starts 3 courses of 5 in below the
    // floor.
    CHECK(number_in(sheets.at("Courses"), 2, 5) == Approx(54));
    CHECK(number_in(sheets.at("Courses"), 2, 3) == Approx(-15));
    CHECK(sheets.at("Courses").at(1).at(5) == "compass, in");
}

} // namespace coilwright
