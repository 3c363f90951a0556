#include "geometry/design/contradictions.hpp"
#include "geometry/design/read_tables.hpp"

#include <charconv>

namespace coilwright {

void read_course(TableReader& root, Design& design) {
    auto table = root.table("course", "{ height = \"5 in\" }");
    if (!table)
        return;
    CourseRules& course = design.course;
    course.place = table->place();
    set(course.height, table->length({"height", 0.040, 0.400, 0.127}, Need::must));
    set(course.foundation, table->whole("foundation", 0, 50, 3));
    set(course.end_allowance, table->length({"end_allowance", 0, 1, 0.2032}));
    set(course.longest_tube, table->length(usual_length("longest_tube", 0.5, 60, 500, 9.144)));
    set(course.joint_lap, table->length({"joint_lap", 0, 3, 0.4572}));
    set(course.least_inside_radius,
        table->length(usual_length("least_inside_radius", 0, 1.5, 5, 0.1905)));
    set(course.curve, table->choice<CutCurve>(
                          "curve", {{"outer", CutCurve::outer}, {"centre", CutCurve::centre}}));
    set(course.edge, table->choice<TubeEdge>(
                         "edge", {{"round", TubeEdge::round}, {"square", TubeEdge::square}}));
    set(course.tamp_gap, table->length(usual_length("tamp_gap", 0, 0.06, 0.2, 0.0127)));
    set(course.strike_age_days, table->measure({"strike_age", 0, 365, 7}, Measure::days));
    table->finish();
}

void read_compass(TableReader& root, Design& design) {
    auto table = root.table("compass", "{ pole_diameter = \"2 in\" }");
    if (!table)
        return;
    Compass& compass = design.compass;
    compass.place = table->place();
    set(compass.pole_diameter, table->length({"pole_diameter", 0, 0.5, 0.0508}));
    set(compass.chain_height, table->length(usual_length("chain_height", -5, 5, 20, 0.508)));
    set(compass.arm, table->choice<CompassArm>(
                         "arm", {{"level", CompassArm::level}, {"chain", CompassArm::chain}}));
    table->finish();
}

namespace {

constexpr int most_measured_course = 400;

std::optional<int> course_number(std::string_view text) {
    int number = 0;
    const auto result = std::from_chars(text.data(), text.data() + text.size(), number);
    const bool whole = result.ec == std::errc() && result.ptr == text.data() + text.size();
    if (!whole || number < 1 || number > most_measured_course || text.front() == '0')
        return std::nullopt;
    return number;
}

constexpr const char* tops_example = "{ 9 = \"31-1/4 in\" }";

void read_tops(const toml::table& tops, const faults::At& at, ReadContext& context,
               Design& design) {
    std::map<int, double>& heights = design.as_laid_tops;
    for (const auto& [key, node] : tops) {
        const auto course = course_number(key.str());
        if (!course) {
            context.add(faults::out_of_range({at.path, place_of(node)}, "keyed by no course number",
                                             "course numbers, 1 to 400, and measured tops",
                                             tops_example));
            continue;
        }
        const std::string path = at.path + "." + std::to_string(*course);
        context.note_place(path, place_of(node));
        if (const auto height = read_measure_value(node, {key.str(), -20, 60, 0.79375},
                                                   Measure::length, context.at(path), context))
            heights[*course] = *height;
        design.as_laid_places[*course] = place_of(node);
    }
    int below = 0;
    for (const auto& [course, height] : heights) {
        if (below > 0 && height <= heights[below])
            context.add(faults::tops_not_rising(
                context.at(at.path + "." + std::to_string(course)), below, course,
                heights[below] + (course - below) * design.course.height, design.unit));
        below = course;
    }
}

} // namespace

void read_as_laid(TableReader& root, Design& design) {
    auto table = root.table("as_laid", "{ top = { 9 = \"31-1/4 in\" } }");
    if (!table)
        return;
    constexpr const char* allowed = "a table of course numbers and measured tops";
    ReadContext& context = root.context();
    if (const toml::node* top = table->node("top", allowed, tops_example)) {
        const faults::At at = table->at("top");
        if (const toml::table* tops = top->as_table())
            read_tops(*tops, at, context, design);
        else
            context.add(faults::wrong_type(at, found_text(*top), allowed, tops_example));
    }
    table->finish();
}

void read_finish(TableReader& root, Design& design) {
    auto table = root.table("finish", "{ inside_plaster = \"1-1/2 in\" }");
    if (!table)
        return;
    Finish& finish = design.finish;
    finish.place = table->place();
    finish.inside_stated =
        set(finish.inside_plaster, table->length({"inside_plaster", 0, 0.3, 0.0381}));
    finish.outside_stated =
        set(finish.outside_plaster, table->length({"outside_plaster", 0, 0.3, 0.0508}));
    set(finish.floor_build_up, table->length({"floor_build_up", 0, 1, 0.1016}));
    table->finish();
}

} // namespace coilwright
