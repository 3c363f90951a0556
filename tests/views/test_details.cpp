// Details say what the schedule says.
#include "geometry/views/details.hpp"
#include "tests/views/building.hpp"

#include <cmath>
#include <set>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

const View* find(const std::vector<View>& views, const std::string& id) {
    for (const View& view : views)
        if (view.id == id)
            return &view;
    return nullptr;
}

std::vector<double> measured(const View& view, const std::string& of) {
    std::vector<double> values;
    for (const ViewDimension& dimension : view.dimensions)
        if (dimension.of == of)
            values.push_back(std::abs(dimension.measured()));
    return values;
}

} // namespace

TEST_CASE("details: the joint's measures are those of its courses") {
    for (const std::string& name : demo_names()) {
        const BuildingPlan plan = demo_plan(name);
        const std::vector<View> views = detail_views(plan);
        const View* joint = find(views, "detail-joint");
        CAPTURE(name);
        REQUIRE(joint);
        int found = 0;
        for (const Course& course : plan.schedule.courses)
            for (const Ring& ring : course.rings) {
                const std::string of = "course." + std::to_string(course.number);
                const auto steps = measured(*joint, of + ".step_in");
                if (steps.empty() || joint->title.find(" of " + ring.dome) == std::string::npos ||
                    ring.wythe != 1)
                    continue;
                ++found;
                CHECK(steps.size() == 1);
                CHECK(steps.front() == Approx(ring.step_in).margin(1e-9));
                CHECK(measured(*joint, of + ".bearing_width").front() ==
                      Approx(ring.bearing_width).margin(1e-9));
                CHECK(measured(*joint, "tube." + ring.tube + ".width").front() ==
                      Approx(ring.width).margin(1e-9));
                CHECK(measured(*joint, "course.height").front() ==
                      Approx(plan.schedule.course_height));
            }
        CHECK(found == 1);
    }
}

TEST_CASE("details: each building has those of what it has") {
    for (const std::string& name : demo_names()) {
        const BuildingPlan plan = demo_plan(name);
        const Schedule& schedule = plan.schedule;
        const std::vector<View> views = detail_views(plan);
        CAPTURE(name);
        bool curb = false;
        for (const DomeForm& dome : schedule.building.domes)
            curb = curb || dome.curb_courses > 0;
        CHECK((find(views, "detail-curb") != nullptr) == curb);
        CHECK((find(views, "detail-cap") != nullptr) == !curb);
        bool lintel = false;
        for (const Lintel& one : schedule.lintels)
            for (const OpeningPlan& opening : schedule.openings)
                lintel = lintel || (opening.form.id == one.opening && !opening.form.in_tunnel);
        CHECK((find(views, "detail-lintel") != nullptr) == lintel);
        bool pier = false; // a built-out jamb is none
        for (const ButtressForm& one : schedule.building.buttresses)
            pier = pier || !one.reveal;
        CHECK(bond_details(plan).size() == (pier ? 2 : 0));
        if (const View* view = find(views, "detail-lintel"))
            for (const Lintel& one : schedule.lintels)
                if (view->title == "Lintel of " + one.opening) {
                    const auto depths = measured(*view, "lintel." + one.opening + ".depth");
                    CHECK(depths.front() == Approx(one.depth));
                }
        for (const View& view : views)
            if (view.id == "detail-curb")
                for (const DomeForm& dome : schedule.building.domes)
                    if (view.title.find(" of " + dome.id) != std::string::npos) {
                        const auto heights = measured(view, "dome." + dome.id + ".curb");
                        REQUIRE(heights.size() >= 3);
                        CHECK(heights[1] ==
                              Approx(dome.curb_courses * schedule.course_height).margin(1e-9));
                        CHECK(heights.back() >= 0.150 - 1e-9); // upstand: common practice
                    }
    }
}

TEST_CASE("details: on one course of a bond the ring runs through, on the other the pier runs in") {
    const BuildingPlan plan = demo_plan("home");
    std::set<std::string> kinds;
    for (const View& view : bond_details(plan))
        kinds.insert(view.title.substr(view.title.find(": ") + 2));
    CHECK(kinds == std::set<std::string>{"the pier runs in", "the ring runs through"});
}
