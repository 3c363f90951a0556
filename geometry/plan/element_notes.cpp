#include "geometry/plan/element_notes.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

Course* course_numbered(Schedule& schedule, int n) {
    const bool exists = n >= 1 && n <= static_cast<int>(schedule.courses.size());
    return exists ? &schedule.courses[static_cast<std::size_t>(n) - 1] : nullptr;
}

namespace {

void note_fan(Schedule& schedule, const Fan& fan) {
    const auto length = [&](double metres) { return length_text(metres, schedule.unit); };
    if (Course* course = course_numbered(schedule, fan.set_before_course))
        course->before.push_back(
            {fan.opening, "fan",
             "From this course on lay the head of '" + fan.opening + "' as a fan over its form: " +
                 std::to_string(fan.count) + " bags, " + length(fan.depth) + " deep, each " +
                 length(fan.outer_width) + " wide outside and " + length(fan.inner_width) +
                 " at the form. Work up from both sides and tamp the keystone last; each course "
                 "butts "
                 "against the bags that its sheet names."});
}

/// Names the bags of a fan on each course before which some of them are set.
void note_fan_bags(Schedule& schedule, const Fan& fan) {
    for (Course& course : schedule.courses)
        for (const Ring& ring : course.rings) {
            std::string names;
            int count = 0;
            const Piece* key = nullptr;
            double cut = 0;
            for (const Piece& piece : ring.pieces) {
                if (piece.of != fan.opening || piece.kind == PieceKind::niche_back ||
                    piece.kind == PieceKind::wedge)
                    continue;
                if (piece.kind == PieceKind::keystone) {
                    key = &piece;
                    continue;
                }
                names += (count > 0 ? ", " : "") + piece.id;
                ++count;
                cut = piece.cut_length;
            }
            if (count == 0 && !key)
                continue;
            std::string text = "Set of the fan of '" + fan.opening + "': ";
            if (count > 0)
                text += names + " (" + std::to_string(count) + " of " + std::to_string(fan.count) +
                        " bags, cut " + length_text(cut, schedule.unit) + " each)";
            if (key)
                text += std::string(count > 0 ? ", then " : "") + "the keystone " + key->id +
                        " last, tamped tight (1 bag, cut " +
                        length_text(key->cut_length, schedule.unit) + ")";
            course.before.push_back({fan.opening, "fan bags", text + "."});
        }
}

/// What an opening's distances count from: "the pole of 'room'", "the axis of 'entry'", or of an
/// end wall's "the pole that 'entry' starts from".
std::string axis_origin(const BuildingForm& building, const std::string& id) {
    for (const OpeningForm& form : building.openings)
        if (form.id == id && form.in_tunnel)
            return form.side == TunnelSide::end ? "the pole that '" + form.in + "' starts from"
                                                : "the axis of '" + form.in + "'";
    return "the pole";
}

/// How far the ring's inside face lies before that of a straight lintel at its ends, at the most of
/// its courses: the ring stops there, and nothing fills the wedge. 0 in a tunnel.
double open_before_ends(const BuildingForm& building, const Lintel& lintel) {
    for (const OpeningForm& form : building.openings)
        if (const DomeForm* dome =
                form.id == lintel.opening ? find_dome(building, form.in) : nullptr) {
            const double face = lintel.centre_distance - lintel.width / 2, end = lintel.length / 2;
            double deep = 0;
            for (int n = lintel.first_course; n <= lintel.last_course; ++n) {
                const double r = inside_radius(*dome, dome->course_middle(n));
                deep = std::max(deep, face - std::sqrt(std::max(0.0, r * r - end * end)));
            }
            return deep;
        }
    return 0;
}

void note_lintel(Schedule& schedule, const Lintel& lintel) {
    const auto length = [&](double metres) { return length_text(metres, schedule.unit); };
    Course* course = course_numbered(schedule, lintel.first_course);
    if (!course)
        return;
    std::string text =
        "Set the " + std::string(lintel.kind == LintelKind::timber ? "timber" : "concrete") +
        " lintel of '" + lintel.opening + "': " + length(lintel.length) + " long, " +
        length(lintel.depth) + " high, " + length(lintel.width) + " wide, bearing " +
        length(lintel.bearing) + " each side, its long axis " + length(lintel.centre_distance) +
        " from " + axis_origin(schedule.building, lintel.opening) +
        ". Nail its plates into the course below.";
    course->before.push_back({lintel.opening, "lintel", text});
    Course* top = course_numbered(schedule, lintel.last_course);
    if (const double deep = open_before_ends(schedule.building, lintel);
        top && deep > narrowest_pocket)
        top->after.push_back({lintel.opening, "lintel pocket",
                              "At both ends of the lintel of '" + lintel.opening +
                                  "' fill the wedge on the room's side, up to " + length(deep) +
                                  " deep, with folded bags flush with the ring's inside face."});
    if (lintel.open_behind > narrowest_pocket) {
        // Over the hole nothing else carries what fills the pocket.
        course->before.push_back({lintel.opening, "lintel planks",
                                  "Behind it lay planks as long as the lintel, under a pocket " +
                                      length(lintel.open_behind) + " deep."});
        if (top)
            top->after.push_back({lintel.opening, "lintel pocket",
                                  "Fill the pocket behind the lintel of '" + lintel.opening +
                                      "' with folded bags or rammed fill on its planks."});
    }
    if (top && lintel.packing > 0.001)
        top->after.push_back({lintel.opening, "lintel packing",
                              "Pack " + length(lintel.packing) + " on the lintel of '" +
                                  lintel.opening + "', up to the top of this course."});
}

/// "1 ft 3 in above the floor", "8 in below the floor", "at the floor".
std::string level_text(double height, DisplayUnit unit) {
    if (std::abs(height) < height_tie)
        return "at the floor";
    return length_text(std::abs(height), unit) + (height < 0 ? " below" : " above") + " the floor";
}

/// "turn right 4 ft 8 in along the inside face from the datum mark (bearing 240.0° from north)".
std::string turn_text(const DomeForm& dome, Bearing bearing, int course, DisplayUnit unit) {
    const double clockwise = clockwise_degrees(dome.datum, bearing);
    const double shorter = std::min(clockwise, 360 - clockwise);
    const double arc =
        inside_radius(dome, dome.course_middle(course)) * shorter * radians_per_degree;
    const std::string north =
        "bearing " + fixed_text(turned_into_circle(bearing.degrees), 1) + "\u00b0 from north";
    if (arc < 0.0005)
        return "at the datum mark (" + north + ")";
    return "turn " + std::string(clockwise <= 180 ? "right " : "left ") + length_text(arc, unit) +
           " along the inside face from the datum mark (" + north + ")";
}

void note_sleeve(Schedule& schedule, const SleevePlan& sleeve) {
    const auto length = [&](double metres) { return length_text(metres, schedule.unit); };
    const SleeveForm& form = sleeve.form;
    const DomeForm* dome = find_dome(schedule.building, form.in);
    Course* course = course_numbered(schedule, sleeve.set_before_course);
    if (!course)
        return;
    const std::string where =
        dome ? turn_text(*dome, form.bearing, sleeve.set_before_course, schedule.unit)
             : "in the " + word(form.side) + " side, " + length(form.along) +
                   " from the pole of '" + find_tunnel(schedule.building, form.in)->from + "'";
    std::string how;
    if (sleeve.stops_tubes) {
        how = "Its centre is " + level_text(form.height, schedule.unit) +
              "; the tubes of this course stop either side of it.";
    } else {
        how = "It lies on the joint under this course, " + level_text(sleeve.joint, schedule.unit);
        if (std::abs(form.height - sleeve.joint) > height_tie)
            how += " (drawn at " + level_text(form.height, schedule.unit) +
                   "; a pipe as thin lies on a joint)";
        how += ".";
    }
    course->before.push_back({form.id, "sleeve",
                              "Set the sleeve '" + form.id + "' of '" + form.in + "', " +
                                  length(form.diameter) + " across: " + where + ". " + how +
                                  " Let it fall 1:50 outward."});
}

} // namespace

void note_heads(Schedule& schedule) {
    for (const Fan& fan : schedule.fans)
        note_fan(schedule, fan);
    for (const Fan& fan : schedule.fans)
        note_fan_bags(schedule, fan);
    for (const Lintel& lintel : schedule.lintels)
        note_lintel(schedule, lintel);
}

void note_sleeves(Schedule& schedule) {
    for (const SleevePlan& sleeve : schedule.sleeves)
        note_sleeve(schedule, sleeve);
}

} // namespace coilwright
