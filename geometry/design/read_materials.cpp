#include "geometry/design/contradictions.hpp"
#include "geometry/design/read_tables.hpp"

namespace coilwright {

namespace {

TubeType read_tube(TableReader& table) {
    TubeType tube;
    set(tube.lay_flat, table.length({"lay_flat", 0.1, 1.5, 0.4318}, Need::must));
    set(tube.tamped_width, table.length({"tamped_width", 0.05, 1.5, 0.381}));
    set(tube.roll, table.length({"roll", 1, 10000, 457.2}));
    return tube;
}

std::optional<std::pair<int, int>> read_courses(TableReader& table) {
    constexpr const char* allowed = "two course numbers, the first and the last, 1 to 400";
    const toml::array* array = table.array("courses", allowed, "[1, 4]");
    if (!array)
        return std::nullopt;
    const auto number = [&](std::size_t i) -> std::int64_t {
        const toml::node* node = array->get(i);
        return node && node->is_integer() ? node->ref<std::int64_t>() : 0;
    };
    const bool two = array->size() == 2;
    const bool in_range =
        two && number(0) >= 1 && number(0) <= 400 && number(1) >= 1 && number(1) <= 400;
    if (!in_range) {
        table.context().add(faults::wrong_type(
            table.at("courses"), two ? "not two course numbers" : "not a pair", allowed, "[1, 4]"));
        return std::nullopt;
    }
    const std::pair courses{static_cast<int>(number(0)), static_cast<int>(number(1))};
    if (courses.first > courses.second) {
        table.context().add(
            faults::backward_courses(table.at("courses"), courses.first, courses.second));
        return std::nullopt;
    }
    return courses;
}

Fill read_fill(TableReader& table) {
    Fill fill;
    set(fill.kind,
        table.choice<FillKind>("kind", {{"soil", FillKind::soil}, {"gravel", FillKind::gravel}}));
    fill.courses = read_courses(table);
    set(fill.density, table.measure({"density", 500, 3000, 1762.03}, Measure::density));
    set(fill.dry_density, table.measure({"dry_density", 500, 3000, 1601.85}, Measure::density));
    set(fill.strength, table.measure({"strength", 1e3, 50e6, 344738}, Measure::pressure));
    set(fill.cohesion, table.measure({"cohesion", 0, 5e6, 6894.76}, Measure::pressure));
    set(fill.friction_angle, table.measure({"friction_angle", 0, 60, 30}, Measure::degrees));
    set(fill.stabiliser, table.choice<Stabiliser>("stabiliser", {{"none", Stabiliser::none},
                                                                 {"cement", Stabiliser::cement},
                                                                 {"lime", Stabiliser::lime}}));
    set(fill.ratio, table.measure({"ratio", 0, 0.5, 0.1}, Measure::number));
    set(fill.by, table.choice<StabiliserBy>("by", {{"dry mass", StabiliserBy::dry_mass},
                                                   {"volume", StabiliserBy::volume}}));
    set(fill.age_per_lift, table.measure({"age_per_lift", 0, 365, 1}, Measure::days));

    ReadContext& context = table.context();
    if (fill.density && fill.dry_density && *fill.dry_density > *fill.density)
        context.add(faults::density_order(table.at("dry_density"), *fill.dry_density, *fill.density,
                                          context.unit));
    const bool has_stabiliser = fill.stabiliser != Stabiliser::none;
    if (has_stabiliser != (fill.ratio > 0) && !context.is_faulty(table.path()))
        context.add(faults::stabiliser_without_ratio(
            table.at(has_stabiliser ? "stabiliser" : "ratio"), !has_stabiliser));
    return fill;
}

// Two fills that claim one course; fills without courses take what is left.
void check_overlaps(const std::vector<Fill>& fills, ReadContext& context) {
    int free_course = 1;
    for (const Fill& fill : fills)
        if (fill.courses)
            free_course = std::max(free_course, fill.courses->second + 1);
    for (std::size_t i = 0; i < fills.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            const auto &a = fills[j].courses, &b = fills[i].courses;
            if (!a || !b || a->first > b->second || b->first > a->second)
                continue;
            context.add(faults::overlapping_fills(context.at("fill." + fills[i].id + ".courses"),
                                                  "fill." + fills[j].id,
                                                  std::max(a->first, b->first), free_course));
            break;
        }
    }
}

} // namespace

void read_tubes(TableReader& root, Design& design) {
    read_elements(root, "tube", design.tubes, read_tube);
}

void read_fills(TableReader& root, Design& design) {
    read_elements(root, "fill", design.fills, read_fill);
    check_overlaps(design.fills, root.context());
}

} // namespace coilwright
