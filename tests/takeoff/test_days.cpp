// The day plan: order, ages, rates, the calendar.
#include "geometry/takeoff/days.hpp"

#include "geometry/design/read_works.hpp"
#include "tests/support/files.hpp"
#include "tests/takeoff/planned.hpp"

#include <catch2/catch.hpp>

#include <map>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

std::string store_text() {
    return whole_building_text("grain-store");
}

DayPlan days_of(const BuildingPlan& plan, const Works& works) {
    return plan_days(plan, take_off(plan, works), works);
}

/// Calendar day on which each course ends.
std::map<int, int> course_days(const DayPlan& plan) {
    std::map<int, int> days;
    for (const WorkDay& day : plan.days)
        for (const DayWork& work : day.work)
            if (work.course > 0 && work.ends)
                days[work.course] = day.calendar;
    return days;
}

} // namespace

TEST_CASE("all work is done once, in order, within the crew") {
    const BuildingPlan plan = planned(store_text());
    Works works = default_works();
    const DayPlan days = days_of(plan, works);
    CHECK(days.ended);
    std::map<std::string, double> shares;
    double person_days = 0;
    for (const WorkDay& day : days.days) {
        CHECK(day.person_days <= works.crew.size + 1e-9);
        person_days += day.person_days;
        for (const DayWork& work : day.work)
            shares[work.what] += work.share;
    }
    for (const auto& [what, share] : shares) {
        CAPTURE(what);
        CHECK(share == Approx(1));
    }
    CHECK(person_days == Approx(days.person_days));
    const auto ends = course_days(days);
    CHECK(ends.size() == plan.schedule.courses.size());
    int before = 0;
    for (const auto& [course, day] : ends) {
        CHECK(day >= before);
        before = day;
    }
    // The fill that days have on site is the fill of the take-off.
    double loose = 0, wanted = 0;
    for (const WorkDay& day : days.days)
        loose += day.fill_loose;
    for (const CourseTake& course : take_off(plan, works).courses)
        wanted += course.soil.loose;
    CHECK(loose == Approx(wanted));
}

TEST_CASE("the pace that was published") {
    // Lopez-Gomez and others 2018 (read): ten learners, a dome of 4 m inside, 0.23 m of height a
    // day. A plumb ring of 4 m in 41.4 cm of wall; what they filled on a day is volume over height.
    const double wall = 3.14159265 * (2.414 * 2.414 - 2 * 2);
    CHECK(0.23 * wall / 10 == Approx(Crew{}.fill_rate).epsilon(0.12));
    // And the plan goes at the crew's pace: its walls take their volume over the rate.
    const BuildingPlan plan = planned(store_text());
    const Works works = default_works();
    double tamped = 0, person_days = 0;
    const TakeOff take = take_off(plan, works);
    for (const CourseTake& course : take.courses)
        tamped += course.soil.tamped;
    for (const WorkDay& day : plan_days(plan, take, works).days)
        for (const DayWork& work : day.work)
            person_days += work.course > 0 ? work.person_days : 0;
    CHECK(person_days == Approx(tamped / (0.23 * wall / 10)).epsilon(0.12));
}

TEST_CASE("a course waits for the age of the fill below") {
    const BuildingPlan plan = planned(
        store_text() + "\n[fill.main]\nstabiliser = \"cement\"\nratio = 0.1\nage_per_lift = 3\n");
    Works works = default_works();
    works.crew.size = 200;
    works.crew.lift = 2;
    const auto ends = course_days(days_of(plan, works));
    for (const auto& [course, day] : ends)
        if (course > 2) {
            CAPTURE(course);
            CHECK(day >= ends.at(course - 2) + 3);
        }
    // 30 courses, two every three days.
    CHECK(ends.rbegin()->second == (static_cast<int>(ends.size()) - 1) / 2 * 3);
}

TEST_CASE("no more courses a day than the works allow") {
    const BuildingPlan plan = planned(store_text());
    Works works = default_works();
    works.crew.size = 200;
    works.crew.most_courses = 3;
    std::map<int, int> count;
    for (const auto& [course, day] : course_days(days_of(plan, works)))
        ++count[day];
    for (const auto& [day, courses] : count)
        CHECK(courses <= 3);
}

TEST_CASE("coats cure and forms stay") {
    const BuildingPlan plan = planned(store_text());
    const Works works =
        read_works(
            "works = 1\nunit = \"ft\"\n"
            "[coat.one]\nside = \"outside\"\norder = 1\nthickness = \"1 in\"\nmix = \"lime\"\ncure "
            "= 5\n"
            "[coat.two]\nside = \"outside\"\norder = 2\nthickness = \"1 in\"\nmix = \"lime\"\n")
            .works;
    const DayPlan days = days_of(plan, works);
    std::map<std::string, int> first, last;
    for (const WorkDay& day : days.days)
        for (const DayWork& work : day.work) {
            first.emplace(work.what, day.calendar);
            last[work.what] = day.calendar;
        }
    CHECK(first.at("Coat 'two' outside") >= last.at("Coat 'one' outside") + 5);
    const auto ends = course_days(days);
    for (const OpeningPlan& opening : plan.schedule.openings)
        CHECK(first.at("Strike the form of '" + opening.form.id + "', fit its frame") >=
              ends.at(std::min(opening.strike_after_course, static_cast<int>(ends.size()))) + 7);
}

TEST_CASE("the calendar") {
    // 1 January 2000 was a Saturday, 4 July 1976 a Sunday (any almanac).
    CHECK(day_of_week({2000, 1, 1}) == 5);
    CHECK(day_of_week({1976, 7, 4}) == 6);
    CHECK(day_of_week({2027, 4, 5}) == 0);
    CHECK(date_text(days_after({2028, 2, 28}, 1)) == "2028-02-29");
    CHECK(date_text(days_after({2100, 2, 28}, 1)) == "2100-03-01");
    CHECK(date_text(days_after({2027, 12, 31}, 1)) == "2028-01-01");
    for (int day = 0; day < 3000; ++day)
        CHECK(day_of_week(days_after({1999, 1, 4}, day)) == day % 7);
}

TEST_CASE("rest days are kept") {
    const BuildingPlan plan = planned(store_text());
    Works works = default_works();
    works.crew.start = Date{2027, 4, 5};
    works.crew.rest_days = {5, 6};
    const DayPlan days = days_of(plan, works);
    for (const WorkDay& day : days.days) {
        REQUIRE(day.date);
        CHECK(day_of_week(*day.date) < 5);
        CHECK(*day.date == days_after({2027, 4, 5}, day.calendar));
    }
    CHECK(days.calendar_days > days.working_days);
}

TEST_CASE("labour is a thing to buy") {
    const BuildingPlan plan = planned(store_text());
    const Works works = default_works();
    TakeOff take = take_off(plan, works);
    const DayPlan days = plan_days(plan, take, works);
    add_labour(take, days);
    REQUIRE(find_item(take, "labour"));
    CHECK(find_item(take, "labour")->amount == Approx(days.person_days));
    double bars = 0;
    for (const StageBar& bar : days.stages)
        bars += bar.person_days;
    CHECK(bars == Approx(days.person_days));
}

namespace {

std::map<std::string, int> first_days(const DayPlan& plan) {
    std::map<std::string, int> first;
    for (const WorkDay& day : plan.days)
        for (const DayWork& work : day.work)
            first.emplace(work.what, day.calendar);
    return first;
}

std::map<std::string, int> last_days(const DayPlan& plan) {
    std::map<std::string, int> last;
    for (const WorkDay& day : plan.days)
        for (const DayWork& work : day.work)
            last[work.what] = day.calendar;
    return last;
}

} // namespace

TEST_CASE("labour tells the amounts and rates it was worked out from") {
    const BuildingPlan plan = planned(whole_building_text("home"));
    const Works works = plastered_works();
    TakeOff take = take_off(plan, works);
    add_labour(take, plan_days(plan, take, works));
    int told = 0;
    for (const TakeOffLine& line : take.lines) {
        if (line.item != "labour")
            continue;
        ++told;
        REQUIRE(line.figures.size() >= 2);
        REQUIRE(line.figures.size() % 2 == 0);
        double days = 0;
        for (std::size_t i = 0; i < line.figures.size(); i += 2)
            days += line.figures[i].value / line.figures[i + 1].value;
        CHECK(days == Approx(line.amount).epsilon(1e-9));
    }
    CHECK(told >= 4);
}

TEST_CASE("paint and floor without coats wait for forms and frames, as coats do") {
    BuildingPlan plan = planned(store_text());
    plan.design.finish.inside_plaster = plan.design.finish.outside_plaster = 0;
    plan.design.finish.floor_build_up = 0.1;
    Works works = default_works();
    works.crew.size = 200;
    Paint wash;
    wash.id = "wash";
    works.paints = {wash};
    wash.id = "glaze";
    works.paints.push_back(wash);
    const DayPlan days = days_of(plan, works);
    const auto first = first_days(days), last = last_days(days);
    for (const auto& [what, day] : last)
        if (what.rfind("Strike", 0) == 0) {
            CAPTURE(what);
            CHECK(first.at("Paint 'wash' inside, coat 1") >= day);
            CHECK(first.at("Floor build-up, its membrane laid") >= day);
        }
}

TEST_CASE("a floor's membrane is laid on a day even where nothing is built on it") {
    const BuildingPlan plan = planned(whole_building_text("home"));
    const Works works = plastered_works();
    const TakeOff take = take_off(plan, works);
    REQUIRE(amount(take, "floor-fill") == 0);
    const DayPlan days = plan_days(plan, take, works);
    int laid = 0;
    for (const WorkDay& day : days.days)
        for (const DayWork& work : day.work)
            laid += work.what == "Lay the floor's membrane" && work.ends;
    CHECK(laid == 1);
}

TEST_CASE("a second paint waits for the first one to dry, and for no plaster") {
    const BuildingPlan plan = planned(store_text());
    Works works = default_works();
    works.crew.size = 200;
    Paint wash;
    wash.id = "wash";
    wash.coats = 1;
    wash.dry_days = 2;
    works.paints = {wash};
    wash.id = "glaze";
    works.paints.push_back(wash);
    Coat coat;
    coat.id = "in";
    coat.thickness = 0.02;
    coat.mix = "lime";
    coat.cure_days = 28;
    works.coats = {coat};
    const DayPlan days = days_of(plan, works);
    const auto first = first_days(days), last = last_days(days);
    const int washed = last.at("Paint 'wash' inside, coat 1");
    CHECK(washed >= last.at("Coat 'in' inside") + 28);
    CHECK(first.at("Paint 'glaze' inside, coat 1") == washed + 2);
}

TEST_CASE("a plan of more than ten years counts all of its labour") {
    const BuildingPlan plan = planned(store_text());
    Works slow = default_works(), quick = default_works();
    slow.crew.size = 1;
    slow.crew.fill_rate = 0.001; // some ten thousand days
    const TakeOff take = take_off(plan, slow);
    const DayPlan days = plan_days(plan, take, slow);
    REQUIRE_FALSE(days.ended);
    quick.crew.size = 200;
    const DayPlan all = plan_days(plan, take, quick);
    double tamped = 0;
    for (const CourseTake& course : take.courses)
        tamped += course.soil.tamped;
    CHECK(days.person_days ==
          Approx(all.person_days + tamped * (1 / 0.001 - 1 / quick.crew.fill_rate)));
    TakeOff with = take;
    add_labour(with, days);
    CHECK(find_item(with, "labour")->amount == Approx(days.person_days));
    for (const TakeOffLine& line : with.lines)
        CHECK(line.amount > 0);
}
