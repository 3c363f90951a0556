#include "exporters/schedule_table.hpp"

#include "exporters/text_table.hpp"
#include "geometry/base/utf8.hpp"

namespace coilwright {
namespace {

std::size_t tube_count(const Ring& ring) {
    std::size_t count = 0;
    for (const Run& run : ring.runs)
        count += run.tubes.size();
    return count;
}

/// As on the crew's sheets: those of a second wythe bear a 2.
std::string letter_of(const Ring& ring, const Cut& cut) {
    return ring.wythe > 1 ? cut.letter + std::to_string(ring.wythe) : cut.letter;
}

std::string cut_letters(const Ring& ring) {
    std::string letters;
    for (const Cut& cut : ring.cuts)
        letters += (letters.empty() ? "" : " ") + letter_of(ring, cut);
    return letters;
}

std::string course_kind(const Course& course, const Ring& ring) {
    const bool is_cap = ring.kind == RingKind::cap;
    std::string kind = is_cap               ? "cap"
                       : ring.curb          ? "curb"
                       : course.below_floor ? "below floor"
                                            : "";
    const auto add = [&](bool holds, const char* what) {
        if (holds)
            kind += (kind.empty() ? "" : ", ") + std::string(what);
    };
    add(!is_cap && ring.wythe > 1, "outer ring");
    add(course.top_measured, "top measured");
    return kind;
}

std::string bearing_text(double degrees) {
    const std::string text = fixed_text(degrees, 1);
    return (text == "360.0" ? "0.0" : text) + "°";
}

std::string course_table(const Schedule& schedule) {
    const auto length = [&](double metres) { return length_text(metres, schedule.unit); };
    std::vector<std::vector<std::string>> rows;
    for (const Course& course : schedule.courses)
        for (const Ring& ring : course.rings) {
            const bool is_cap = ring.kind == RingKind::cap;
            rows.push_back({std::to_string(course.number), ring.dome, length(course.top),
                            is_cap ? "" : length(ring.inside_radius), length(ring.outside_radius),
                            is_cap ? "" : length(ring.chain), is_cap ? "" : length(ring.step_in),
                            std::to_string(ring.runs.size()), std::to_string(tube_count(ring)),
                            cut_letters(ring), volume_text(ring.fill_volume, schedule.unit),
                            course_kind(course, ring)});
        }
    return text_table({{"course"},
                       {"dome", CellAlign::left},
                       {"top at"},
                       {"compass"},
                       {"outside"},
                       {"chain"},
                       {"step-in"},
                       {"runs"},
                       {"tubes"},
                       {"cuts", CellAlign::left},
                       {"fill"},
                       {"", CellAlign::left}},
                      rows);
}

std::string cut_table(const Schedule& schedule) {
    std::vector<std::vector<std::string>> rows;
    for (const Course& course : schedule.courses)
        for (const Ring& ring : course.rings)
            for (const Cut& cut : ring.cuts)
                rows.push_back({std::to_string(course.number), ring.dome, letter_of(ring, cut),
                                cut.by, cut.side == Side::left ? "left" : "right",
                                bearing_text(cut.inside_bearing),
                                length_text(cut.short_arc, schedule.unit),
                                cut.short_way == Side::left ? "left" : "right",
                                length_text(cut.chord, schedule.unit)});
    if (rows.empty())
        return {};
    return "\nCuts on the inside face; arc and chord from the datum mark\n" +
           text_table({{"course"},
                       {"dome", CellAlign::left},
                       {"cut", CellAlign::left},
                       {"by", CellAlign::left},
                       {"side", CellAlign::left},
                       {"bearing"},
                       {"arc"},
                       {"way", CellAlign::left},
                       {"chord"}},
                      rows);
}

std::string straight_table(const Schedule& schedule) {
    const auto length = [&](double metres) { return length_text(metres, schedule.unit); };
    std::vector<std::vector<std::string>> rows;
    for (const Course& course : schedule.courses)
        for (const Straight& straight : course.straights) {
            std::string tubes;
            for (const LaidTube& tube : straight.tubes)
                tubes += (tubes.empty() ? "" : " ") + tube.id;
            rows.push_back({std::to_string(course.number), straight.of, word(straight.part),
                            length(straight.length), tubes});
        }
    if (rows.empty())
        return {};
    return "\nStraight tubes of tunnels and buttresses\n" + text_table({{"course"},
                                                                        {"of", CellAlign::left},
                                                                        {"part", CellAlign::left},
                                                                        {"length"},
                                                                        {"tubes", CellAlign::left}},
                                                                       rows);
}

} // namespace

std::string schedule_table(const BuildingPlan& plan) {
    const Schedule& schedule = plan.schedule;
    const auto length = [&](double metres) { return length_text(metres, schedule.unit); };
    std::string text = shown_text(schedule.name) + "\n";
    for (const Fitted& fitted : schedule.fitted)
        text += "Fitted: " + fitted.text + "\n";
    text += "\n" + course_table(schedule) + cut_table(schedule) + straight_table(schedule);
    const Totals& totals = schedule.totals;
    text += "\nTotals: " + std::to_string(totals.courses) + " courses of " +
            length(schedule.course_height) + "; tube laid " + length(totals.tube_length) +
            ", to cut without short bags " + length(totals.cut_length) + "; fill " +
            volume_text(totals.fill_volume, schedule.unit) + "; wire " +
            length(totals.wire_length) + "\n";
    return text + "\nOn the ground\n" + ground_text(schedule, "  ");
}

std::string ground_text(const Schedule& schedule, const std::string& indent) {
    const auto line = [&](const char* what, const Region& region) {
        return indent + what + ": " +
               (region.decided
                    ? area_text(region.area, schedule.unit) + ", " +
                          length_text(outer_perimeter(region), schedule.unit) + " around\n"
                    : "not decided\n");
    };
    const GroundPlan& ground = schedule.ground;
    return line("Floor between the bags", ground.floor) +
           line("Footprint over the outside faces", ground.footprint) +
           line("First course, for the trench", ground.ground_course);
}

} // namespace coilwright
