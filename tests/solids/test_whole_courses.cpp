// The courses model of whole buildings: every tube of the schedule a body, where it is laid.
#include "geometry/design/read_design.hpp"
#include "geometry/plan/check_layout.hpp"
#include "geometry/plan/fit.hpp"
#include "geometry/plan/lay.hpp"
#include "geometry/plan/section.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "geometry/solids/solid_model.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <iterator>
#include <map>

using namespace coilwright;

namespace {

Schedule laid(const std::string& name) {
    std::ifstream file(COILWRIGHT_SOURCE_DIR "/models/" + name + ".toml", std::ios::binary);
    const std::string text{std::istreambuf_iterator<char>(file), {}};
    const DesignReading reading = read_design(text);
    REQUIRE(reading.diagnostics.empty());
    const Fit fitted = fit(reading.design);
    REQUIRE(fitted.diagnostics.empty());
    REQUIRE(check_layout(fitted.design).empty());
    return lay(fitted.design);
}

} // namespace

TEST_CASE("whole buildings have every tube, bag, beam, frame and form as a sound part") {
    for (const std::string name : {"home", "retreat", "square-door"}) {
        CAPTURE(name);
        const Schedule schedule = laid(name);
        const SolidResult result = courses_model(schedule);
        std::string faults;
        for (const SolidFault& fault : result.faults)
            faults += fault.message + "\n";
        CHECK(faults == "");
        std::map<std::string, const SolidPart*> parts;
        for (const SolidPart& part : result.model.parts)
            parts[part.slug] = &part;
        CHECK(parts.size() == result.model.parts.size());
        int straights = 0;
        for (const Course& course : schedule.courses) {
            for (const Straight& straight : course.straights)
                for (const LaidTube& tube : straight.tubes) {
                    std::string of = straight.of;
                    std::replace(of.begin(), of.end(), '-', '_');
                    std::transform(of.begin(), of.end(), of.begin(), ::toupper);
                    const std::string number =
                        (course.number < 10 ? "0" : "") + std::to_string(course.number);
                    const std::string slug = of + "_C" + number + "_" + tube.id;
                    CAPTURE(slug);
                    REQUIRE(parts.count(slug) == 1);
                    const SolidPart& part = *parts[slug];
                    CHECK(part.course == course.number);
                    // Stadium times length, but for ends that follow a round wall or a tube that is
                    // squeezed to its share of a pier or a crown.
                    const double fill =
                        stadium_area(straight.width, schedule.course_height) * tube.length;
                    CHECK(part.volume == Approx(fill).epsilon(0.35));
                    ++straights;
                }
        }
        CHECK(straights > (name == "square-door" ? 20 : 100));
        for (const OpeningPlan& opening : schedule.openings) {
            std::string id = opening.form.id;
            std::transform(id.begin(), id.end(), id.begin(), ::toupper);
            CAPTURE(id);
            CHECK(parts.count(id + "_FORM") == 1);
            CHECK(parts.count(id + "_FRAME") == (opening.form.niche_depth > 0 ? 0 : 1));
        }
        for (const Lintel& lintel : schedule.lintels) {
            std::string id = lintel.opening;
            std::transform(id.begin(), id.end(), id.begin(), ::toupper);
            REQUIRE(parts.count(id + "_LINTEL") == 1);
            CHECK(parts[id + "_LINTEL"]->volume ==
                  Approx(lintel.depth * lintel.width * lintel.length));
        }
    }
}

TEST_CASE("the tubes of a whole building hold its fill") {
    const Schedule schedule = laid("retreat");
    const SolidResult result = courses_model(schedule, 0.002);
    REQUIRE(result.faults.empty());
    double all = 0;
    for (const SolidPart& part : result.model.parts)
        if (part.course > 0)
            all += part.volume;
    CHECK(all == Approx(schedule.totals.fill_volume).epsilon(0.03));
}
