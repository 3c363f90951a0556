#include "geometry/base/length.hpp"
#include "geometry/design/measure.hpp"
#include "geometry/design/read_tables.hpp"

namespace coilwright {
namespace {

constexpr std::size_t longest_path = 200;

ContextObject read_context_object(TableReader& table) {
    ContextObject object;
    set(object.file, table.text("file", longest_path, "bed.obj", Need::must));
    object.file_place = table.place_of_key("file");
    set(object.at, read_place(table));
    set(object.base, table.length({"base", -10, 20, 0.4572}));
    if (const auto bearing = table.bearing("bearing"))
        object.bearing = {turned_into_circle(*bearing)};
    const double unit = table
                            .choice<double>("unit", {{"m", 1},
                                                     {"cm", 0.01},
                                                     {"mm", 0.001},
                                                     {"ft", 12 * metres_per_inch},
                                                     {"in", metres_per_inch}})
                            .value_or(1);
    const double scale = table.measure({"scale", 0.0001, 10000, 2}, Measure::number).value_or(1);
    object.metres = unit * scale;
    set(object.y_up, table.choice<bool>("up", {{"z", false}, {"y", true}}));
    return object;
}

} // namespace

void read_context_objects(TableReader& root, Design& design) {
    read_elements(root, "context", design.context, read_context_object);
}

} // namespace coilwright
