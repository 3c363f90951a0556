#include "exporters/schedule_csv.hpp"

#include "exporters/csv.hpp"
#include "geometry/base/bearing.hpp"

#include <cmath>

namespace coilwright {
namespace {

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

void add_course(Row& row, const Course& course) {
    row.add(number(course.number)).add(number(course.bottom)).add(number(course.top));
    row.add(yes_or_no(course.below_floor));
}

void add_empty(Row& row, int count) {
    for (int i = 0; i < count; ++i)
        row.add("");
}

void add_lengths(Row& row, const LaidTube& tube) {
    row.add(number(tube.length)).add(number(tube.outer_length)).add(number(tube.cut_length));
    row.add(yes_or_no(tube.lap_short));
}

void add_ring_tube(std::string& text, const Course& course, const Ring& ring, const Run& run,
                   const LaidTube& tube) {
    const bool is_ring = ring.kind == RingKind::ring;
    const auto bearing = [&](double degrees) { return is_ring ? number(degrees) : ""; };
    Row row(text);
    add_course(row, course);
    row.add(csv_field(ring.dome)).add(!is_ring ? "cap" : ring.curb ? "curb" : "ring");
    row.add(number(ring.inside_radius)).add(number(ring.centre_radius));
    row.add(number(ring.outside_radius)).add(number(ring.chain)).add(number(ring.step_in));
    row.add(csv_field(run.id)).add(csv_field(run.start_by)).add(csv_field(run.end_by));
    row.add(csv_field(tube.id)).add(bearing(tube.start_bearing)).add(bearing(tube.end_bearing));
    add_lengths(row, tube);
    row.add(csv_field(ring.tube)).add(number(ring.width)).add(number(ring.wythe));
    add_empty(row, 4);
    row.end();
}

void add_piece(std::string& text, const Course& course, const Ring& ring, const Piece& piece) {
    const bool of_fan = piece.kind == PieceKind::fan_bag || piece.kind == PieceKind::keystone;
    const auto bearing = [&](double degrees) { return of_fan ? "" : number(degrees); };
    Row row(text);
    add_course(row, course);
    row.add(csv_field(ring.dome)).add(word(piece.kind));
    row.add(number(ring.inside_radius)).add(number(ring.centre_radius));
    row.add(number(ring.outside_radius)).add(number(ring.chain)).add(number(ring.step_in));
    row.add("").add(csv_field(piece.of)).add(csv_field(piece.other)).add(csv_field(piece.id));
    row.add(bearing(piece.start_bearing)).add(bearing(piece.end_bearing));
    row.add(number(piece.length)).add(number(piece.longest)).add(number(piece.cut_length));
    row.add("no").add(csv_field(ring.tube)).add(number(ring.width)).add(number(ring.wythe));
    add_empty(row, 4);
    row.end();
}

void add_straight_tube(std::string& text, const Course& course, const Straight& straight,
                       const LaidTube& tube) {
    Row row(text);
    add_course(row, course);
    row.add(csv_field(straight.of)).add(word(straight.part));
    add_empty(row, 6); // radii, chain, step-in, run
    row.add(csv_field(straight.start_by)).add(csv_field(straight.end_by)).add(csv_field(tube.id));
    add_empty(row, 2); // bearings
    add_lengths(row, tube);
    row.add(csv_field(straight.tube)).add(number(straight.width)).add("");
    for (const Vec2& end : {straight.start, straight.end})
        row.add(number(end.x())).add(number(end.y()));
    row.end();
}

} // namespace

std::string schedule_csv(const BuildingPlan& plan) {
    std::string text = "course,bottom_m,top_m,below_floor,element,kind,inside_radius_m,"
                       "centre_radius_m,outside_radius_m,chain_m,step_in_m,run,run_start_by,"
                       "run_end_by,tube,start_bearing_deg,end_bearing_deg,length_m,"
                       "outer_length_m,cut_length_m,lap_short,tube_type,width_m,wythe,"
                       "straight_start_east_m,straight_start_north_m,straight_end_east_m,"
                       "straight_end_north_m\r\n";
    for (const Course& course : plan.schedule.courses) {
        for (const Ring& ring : course.rings) {
            for (const Run& run : ring.runs)
                for (const LaidTube& tube : run.tubes)
                    add_ring_tube(text, course, ring, run, tube);
            for (const Piece& piece : ring.pieces)
                add_piece(text, course, ring, piece);
        }
        for (const Straight& straight : course.straights)
            for (const LaidTube& tube : straight.tubes)
                add_straight_tube(text, course, straight, tube);
    }
    return text;
}

} // namespace coilwright
