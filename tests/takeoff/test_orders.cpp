// Purchases by stage: together what the take-off buys, and never too late.
#include "geometry/takeoff/orders.hpp"

#include "geometry/design/read_design.hpp"
#include "geometry/design/read_works.hpp"
#include "tests/support/demos.hpp"
#include "tests/support/files.hpp"
#include "tests/support/works.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <map>

using namespace coilwright;

namespace {

/// An item in packs of 10 whose lines are of three stages.
TakeOff bags(double base, double walls, double plaster) {
    TakeOff take;
    const double amount = base + walls + plaster;
    TakeOffItem item{"lime", "Lime", AmountUnit::kilogram, amount, 0, 0, "bag", 10, 0, ""};
    item.packs = whole_packs(amount, 10);
    item.to_buy = item.packs * 10;
    take.items.push_back(item);
    take.lines = {{"lime", "store", Phase::base, "a", base, "", {}},
                  {"lime", "store", Phase::walls, "b", walls, "", {}},
                  {"lime", "store", Phase::plaster, "c", plaster, "", {}}};
    return take;
}

} // namespace

TEST_CASE("packs are bought whole, no sooner than a stage needs them") {
    // 4, 3 and 8 of bags of 10: the first bag serves two stages, the second comes for the plaster.
    const auto groups = order_list(bags(4, 3, 8), {});
    REQUIRE(groups.size() == 2);
    CHECK(groups[0].phase == Phase::base);
    CHECK(groups[0].lines[0].packs == 1);
    CHECK(groups[1].phase == Phase::plaster);
    CHECK(groups[1].lines[0].packs == 1);
    CHECK_FALSE(groups[0].calendar);
}

TEST_CASE("the orders of a demo are its purchases, each stage with the day on which it starts") {
    const WorksReading works =
        read_works("works = 1\nunit = \"ft\"\n[crew]\nstart = \"2027-04-05\"\n"
                   "[coat.in]\nside = \"inside\"\nthickness = \"1 in\"\nmix = \"lime\"\n");
    REQUIRE(works.diagnostics.empty());
    for (const std::string name : {"grain-store", "home", "workshop"}) {
        CAPTURE(name);
        const DesignReading reading = read_design(testing::whole_building_text(name));
        const BuildingPlan plan = plan_building(reading.design, reading.diagnostics);
        TakeOff take = take_off(plan, works.works);
        const DayPlan days = plan_days(plan, take, works.works);
        add_labour(take, days);
        std::map<std::string, double> amounts;
        std::map<std::string, int> packs;
        int last = 0;
        for (const OrderGroup& group : order_list(take, days)) {
            if (group.calendar && group.phase <= Phase::walls) {
                CHECK(*group.calendar >= last);
                CHECK(group.date);
                last = *group.calendar;
            }
            for (const OrderLine& line : group.lines) {
                amounts[line.item] += line.amount;
                packs[line.item] += line.packs;
            }
        }
        CHECK(amounts.count("labour") == 0);
        for (const TakeOffItem& item : take.items)
            if (item.code != "labour") {
                CAPTURE(item.code);
                CHECK(amounts[item.code] == Approx(item.to_buy).epsilon(1e-9));
                CHECK(packs[item.code] == item.packs);
            }
    }
}

TEST_CASE("what a course is built around is ordered for its day or before") {
    for (const std::string& demo : testing::demo_files()) {
        const std::string name = demo.substr(0, demo.find('.'));
        CAPTURE(name);
        const DesignReading reading = read_design(testing::whole_building_text(name));
        const BuildingPlan plan = plan_building(reading.design, reading.diagnostics);
        const Works works = testing::demo_works(name);
        TakeOff take = take_off(plan, works);
        const DayPlan days = plan_days(plan, take, works);
        std::map<std::string, int> ordered; // the first day of each item
        for (const OrderGroup& group : order_list(take, days))
            for (const OrderLine& line : group.lines)
                ordered.emplace(line.item, group.calendar.value());
        const auto day_of = [&](int course) {
            for (const WorkDay& day : days.days)
                for (const DayWork& work : day.work)
                    if (work.course == course)
                        return day.calendar;
            return -1;
        };
        const std::map<std::string, std::string> bought{{"sleeve", "sleeve-pipe"},
                                                        {"form", "form-timber"},
                                                        {"vault form", "form-timber"},
                                                        {"anchor plates", "anchor-plate"}};
        int set = 0;
        for (const Course& course : plan.schedule.courses)
            for (const auto* notes : {&course.before, &course.after})
                for (const SetNote& note : *notes)
                    if (const auto item = bought.find(note.what); item != bought.end()) {
                        CAPTURE(course.number, note.text);
                        REQUIRE(ordered.count(item->second) == 1);
                        CHECK(ordered[item->second] <= day_of(course.number));
                        ++set;
                    }
        CHECK(set > 0);
        const auto left_out =
            std::find_if(take.notes.begin(), take.notes.end(), [](const std::string& note) {
                return note.rfind("In no list: ", 0) == 0;
            });
        REQUIRE(left_out != take.notes.end());
        CHECK((left_out->find("under each cap") != std::string::npos) ==
              std::any_of(plan.schedule.building.domes.begin(), plan.schedule.building.domes.end(),
                          [](const DomeForm& dome) { return dome.cap_courses > 0; }));
    }
}

TEST_CASE("a stage without work is had the day after the last task") {
    TakeOff take;
    take.items.push_back({"membrane", "Membrane", AmountUnit::square_metre, 5, 0, 5, "", 0, 0, ""});
    take.lines.push_back({"membrane", whole_building, Phase::finish, "Floor", 5, "", {}});
    DayPlan days;
    WorkDay day;
    day.calendar = 11;
    day.date = Date{2027, 4, 30};
    day.work.push_back({Phase::walls, "Course 1", 1, 1, 1, true});
    days.days.push_back(day);
    const std::vector<OrderGroup> groups = order_list(take, days);
    REQUIRE(groups.size() == 1);
    REQUIRE(groups.front().calendar);
    CHECK(*groups.front().calendar == 12);
    CHECK(date_text(*groups.front().date) == "2027-05-01");
}
