#include "exporters/schedule_csv.hpp"

#include "geometry/base/bearing.hpp"

#include <cmath>

namespace coilwright {
namespace {

// RFC 4180. A text that a spreadsheet would take for a formula gets an apostrophe before it.
std::string field(const std::string& text) {
    std::string safe = text;
    if (!safe.empty() && std::string("=+-@\t\r").find(safe.front()) != std::string::npos)
        safe.insert(safe.begin(), '\'');
    if (safe.find_first_of(",\"\r\n") == std::string::npos)
        return safe;
    std::string quoted = "\"";
    for (const char c : safe) {
        quoted += c;
        if (c == '"')
            quoted += '"';
    }
    return quoted + "\"";
}

std::string number(double value) {
    return fixed_text(value, 6);
}
std::string number(int value) {
    return std::to_string(value);
}
std::string yes_or_no(bool value) {
    return value ? "yes" : "no";
}

class Row {
public:
    explicit Row(std::string& text) : text_(text) {}
    Row& add(const std::string& cell) {
        text_ += (first_ ? "" : ",") + cell;
        first_ = false;
        return *this;
    }
    void end() { text_ += "\r\n"; }

private:
    std::string& text_;
    bool first_ = true;
};

void add_tube(std::string& text, const Course& course, const Ring& ring, const Run& run,
              const LaidTube& tube) {
    const bool is_ring = ring.kind == RingKind::ring;
    const auto bearing = [&](double degrees) { return is_ring ? number(degrees) : ""; };
    Row row(text);
    row.add(number(course.number)).add(number(course.bottom)).add(number(course.top));
    row.add(yes_or_no(course.below_floor)).add(field(ring.dome));
    row.add(!is_ring ? "cap" : ring.curb ? "curb" : "ring");
    row.add(number(ring.inside_radius)).add(number(ring.centre_radius));
    row.add(number(ring.outside_radius)).add(number(ring.chain)).add(number(ring.step_in));
    row.add(field(run.id)).add(field(run.start_by)).add(field(run.end_by));
    row.add(field(tube.id)).add(bearing(tube.start_bearing)).add(bearing(tube.end_bearing));
    row.add(number(tube.length)).add(number(tube.outer_length)).add(number(tube.cut_length));
    row.add(yes_or_no(tube.lap_short)).end();
}

} // namespace

std::string schedule_csv(const BuildingPlan& plan) {
    std::string text = "course,bottom_m,top_m,below_floor,dome,kind,inside_radius_m,"
                       "centre_radius_m,outside_radius_m,chain_m,step_in_m,run,run_start_by,"
                       "run_end_by,tube,start_bearing_deg,end_bearing_deg,length_m,"
                       "outer_length_m,cut_length_m,lap_short\r\n";
    for (const Course& course : plan.schedule.courses)
        for (const Ring& ring : course.rings)
            for (const Run& run : ring.runs)
                for (const LaidTube& tube : run.tubes)
                    add_tube(text, course, ring, run, tube);
    return text;
}

} // namespace coilwright
