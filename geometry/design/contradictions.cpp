#include "geometry/design/contradictions.hpp"

#include "geometry/base/bearing.hpp"
#include "geometry/base/utf8.hpp"

#include <algorithm>

namespace coilwright::faults {

namespace {

std::string ticked(const std::string& key) {
    return '`' + key + '`';
}

std::string typed_length(double metres, DisplayUnit unit) {
    return typed_measure(metres, Measure::length, unit);
}

} // namespace

Diagnostic exclusive_keys(const At& at, const std::string& first,
                          const std::vector<std::string>& of, const std::string& typed) {
    return {"contradictory-keys",
            at.place,
            at.path,
            at.table() + " has both " + ticked(first) + " and " + ticked(at.key()),
            "exactly one of " + listed(of),
            typed,
            "keep the one you mean"};
}

Diagnostic none_of_keys(const At& at, const std::vector<std::string>& of,
                        const std::string& typed) {
    return {"missing-key",
            at.place,
            at.path,
            at.table() + " has none of " + listed(of),
            "exactly one of " + listed(of),
            typed,
            "add the line"};
}

Diagnostic key_out_of_place(const At& at, const std::string& because, const std::string& allowed,
                            const std::string& example) {
    return {"key-out-of-place",
            at.place,
            at.path,
            ticked(at.key()) + " has no meaning with " + because,
            allowed,
            example,
            "take it out, or change the other key"};
}

Diagnostic half_of_a_pair(const At& at, const std::string& other, const std::string& typed) {
    return {"missing-key",
            at.place,
            at.path,
            at.table() + " has " + ticked(other) + " without " + ticked(at.key()),
            "both " + ticked(other) + " and " + ticked(at.key()) + ", or neither",
            assignment(at, typed),
            "add the line"};
}

Diagnostic fit_without_wish(const At& at, const std::string& wish, const std::string& example) {
    return {"fit-without-wish",
            at.place,
            at.path,
            ticked(at.key()) + " is to be fitted, but `fit` does not say to what",
            wish + " in the dome's `fit`",
            example,
            ""};
}

Diagnostic wish_without_fit(const At& at, const std::string& fitted) {
    return {"wish-without-fit",
            at.place,
            at.path,
            ticked(at.key()) + " is wished for, but nothing is to be fitted to it",
            fitted + " = \"fit\" in the dome's table",
            fitted + " = \"fit\"",
            "or take the wish out"};
}

Diagnostic impossible_tamped_width(const At& at, double width, double course, double lay_flat,
                                   DisplayUnit unit) {
    // The stadium of unstretched fabric always lies between the bounds.
    const double example = lay_flat - 0.57 * course;
    return {"impossible-tamped-width",
            at.place,
            at.path,
            "a tube of " + length_text(lay_flat, unit) + " lay-flat cannot be " +
                length_text(width, unit) + " wide in a course of " + length_text(course, unit),
            "more than " + length_text(course, unit) + " and less than " +
                length_text(lay_flat, unit),
            assignment(at, typed_length(example, unit)),
            "practice is 2 to 3 in (50 to 75 mm) less than lay-flat; or leave it out"};
}

Diagnostic tube_too_narrow(const At& at, double lay_flat, double course, DisplayUnit unit) {
    return {"tube-too-narrow",
            at.place,
            at.path,
            "a tube of " + length_text(lay_flat, unit) + " lay-flat cannot fill a course of " +
                length_text(course, unit) + ": full and round it is lower",
            "lay-flat over pi/2 times the course height, " + length_text(course * pi / 2, unit),
            assignment(at, typed_length(3.5 * course, unit)),
            "a lower course, or a wider tube"};
}

Diagnostic profile_too_flat(const At& at, const std::string& found, const std::string& least,
                            const std::string& typed) {
    return {"profile-too-flat",
            at.place,
            at.path,
            ticked(at.key()) + " is " + found +
                ": a pointed profile is at least as high as half its width",
            "at least " + least,
            assignment(at, typed),
            "practice is as tall as wide; exactly half is kind = \"round\""};
}

Diagnostic skylight_too_wide(const At& at, double diameter, double inside, DisplayUnit unit) {
    return {"skylight-too-wide",
            at.place,
            at.path,
            "the skylight of " + length_text(diameter, unit) + " is as wide as its dome or wider",
            "less than the inside diameter, " + length_text(inside, unit),
            assignment(at, typed_length(inside / 4, unit)),
            ""};
}

Diagnostic plaster_fills_dome(const At& at, double inside, double plaster, DisplayUnit unit) {
    return {"plaster-fills-dome",
            at.place,
            at.path,
            "inside plaster of " + length_text(plaster, unit) + " leaves no room in " +
                length_text(inside, unit),
            "more than twice the inside plaster",
            assignment(at, typed_length(2 * plaster + 2, unit)),
            ""};
}

Diagnostic drawn_points(const At& at, const std::string& message, const std::string& typed) {
    return {
        "drawn-points",
        at.place,
        at.path,
        message,
        "pairs of height above the springline and half-width: from height 0 with half the width, "
        "heights rising, half-widths never growing, to half-width 0",
        assignment(at, typed),
        ""};
}

Diagnostic circle_not_round(const At& at, double width, double height, DisplayUnit unit) {
    return {"circle-not-round",
            at.place,
            at.path,
            "a circle of " + length_text(width, unit) + " width cannot be " +
                length_text(height, unit) + " high",
            "height equal to width",
            assignment(at, typed_length(width, unit)),
            ""};
}

Diagnostic head_too_high(const At& at, double rise, double height, DisplayUnit unit,
                         double example) {
    return {"head-too-high",
            at.place,
            at.path,
            "the head rises " + length_text(rise, unit) + ", more than the whole opening's " +
                length_text(height, unit),
            "a head no higher than the opening",
            assignment(at, typed_length(example, unit)),
            "a lower head, a narrower or a higher opening"};
}

Diagnostic head_too_flat(const At& at, double rise, double half_width, double height,
                         DisplayUnit unit) {
    // A head that would rise above the sill is no remedy: a flat one then, or a lower curve.
    const bool fits = half_width <= height;
    const double example = std::min(1.75 * half_width, height);
    return {"head-too-flat",
            at.place,
            at.path,
            "a pointed head cannot rise only " + length_text(rise, unit),
            "at least half the width, " + length_text(half_width, unit) +
                (fits ? "" : ", which is more than the opening's height"),
            fits ? assignment(at, typed_length(example, unit)) : "head = { kind = \"square\" }",
            "a flatter curve is kind = \"segmental\""};
}

Diagnostic head_too_steep(const At& at, double rise, double half_width, DisplayUnit unit) {
    return {"head-too-steep",
            at.place,
            at.path,
            "a segmental head cannot rise " + length_text(rise, unit),
            "at most half the width, " + length_text(half_width, unit),
            assignment(at, typed_length(half_width / 2, unit)),
            "a steeper curve is kind = \"pointed\""};
}

Diagnostic bearing_off_its_tunnel(const At& at, const std::string& tunnel, double found,
                                  double right) {
    return {"bearing-off-its-tunnel",
            at.place,
            at.path,
            "the bearing is " + short_number(found) + " degrees, but that wall of the tunnel \"" +
                shown_text(tunnel) + "\" looks on a bearing of " + fixed_text(right, 1),
            "the bearing that the wall looks on, within 1 degree, or none",
            assignment(at, fixed_text(right, 1)),
            "take the bearing out, or name another side"};
}

Diagnostic same_dome_twice(const At& at, const std::string& id, const std::string& typed) {
    return {"same-dome-twice",
            at.place,
            at.path,
            "both ends are the dome \"" + shown_text(id) + "\"",
            "two domes",
            assignment(at, typed),
            ""};
}

Diagnostic repeated_join(const At& at, const std::string& other, SourcePlace place) {
    return {"repeated-join",
            at.place,
            at.path,
            "the two domes are joined already by [" + other + "] in line " +
                std::to_string(place.line),
            "one join for two domes",
            "[" + other + "]",
            "take one of them out"};
}

Diagnostic domes_in_one_place(const At& at) {
    return {"domes-in-one-place",
            at.place,
            at.path,
            "the two domes stand on one centre, so that no tunnel leads from one to the other",
            "domes at different places",
            "at = [\"20 ft\", \"0 ft\"]",
            ""};
}

Diagnostic tunnel_off_its_line(const At& at, double found, double line) {
    return {"tunnel-off-its-line",
            at.place,
            at.path,
            "the tunnel's bearing is " + short_number(found) +
                " degrees, but its domes lie on a bearing of " + fixed_text(line, 1),
            "the bearing from centre to centre, within 1 degree, or none with `to`",
            assignment(at, fixed_text(line, 1)),
            "take the bearing out, or move a dome"};
}

Diagnostic projection_grows(const At& at, double top, double base, DisplayUnit unit) {
    return {"projection-grows",
            at.place,
            at.path,
            "the buttress projects " + length_text(top, unit) + " at its top and only " +
                length_text(base, unit) + " at the floor",
            "at most the projection at the floor",
            assignment(at, typed_length(base / 2, unit)),
            ""};
}

Diagnostic pier_name_taken(const At& at, const std::string& pier, SourcePlace other) {
    return {"repeated-id",
            at.place,
            at.path,
            "the name \"" + pier +
                "\" of one of the buttress's piers is that of the element in line " +
                std::to_string(other.line),
            "a name of its own for each element and each pier",
            "[buttress.pier]",
            "rename one of them"};
}

Diagnostic repeated_bearing(const At& at, double bearing) {
    return {"repeated-bearing",
            at.place,
            at.path,
            "two buttresses stand on the bearing " + short_number(bearing),
            "each bearing once",
            "bearings = [60, 240]",
            ""};
}

Diagnostic density_order(const At& at, double dry, double moist, DisplayUnit unit) {
    return {"density-order",
            at.place,
            at.path,
            "the fill is denser dry (" + measure_text(dry, Measure::density, unit) +
                ") than moist (" + measure_text(moist, Measure::density, unit) + ")",
            "dry_density at most density",
            assignment(at, typed_measure(moist * 0.9, Measure::density, unit)),
            ""};
}

Diagnostic stabiliser_without_ratio(const At& at, bool has_ratio) {
    const std::string message = has_ratio ? "a share of stabiliser is given, but none is named"
                                          : "a stabiliser is named, but not how much of it";
    return {"stabiliser-without-ratio",
            at.place,
            at.path,
            message,
            "both `stabiliser` and `ratio`, or neither",
            has_ratio ? "stabiliser = \"cement\"" : "ratio = 0.1",
            ""};
}

Diagnostic backward_courses(const At& at, int first, int last) {
    return {"backward-courses",
            at.place,
            at.path,
            "the fill's courses run from " + std::to_string(first) + " down to " +
                std::to_string(last),
            "first course, last course",
            assignment(at, "[" + std::to_string(last) + ", " + std::to_string(first) + "]"),
            ""};
}

Diagnostic overlapping_fills(const At& at, const std::string& other, int course, int free_course) {
    return {"overlapping-fills",
            at.place,
            at.path,
            "course " + std::to_string(course) + " is filled by [" + other + "] too",
            "courses that no other fill has",
            assignment(at, "[" + std::to_string(free_course) + ", " + std::to_string(free_course) +
                               "]"),
            ""};
}

Diagnostic tops_not_rising(const At& at, int lower, int upper, double layout, DisplayUnit unit) {
    return {"tops-not-rising",
            at.place,
            at.path,
            "the measured top of course " + std::to_string(upper) +
                " is not above that of course " + std::to_string(lower),
            "tops that rise with the course number",
            assignment(at, typed_length(layout, unit)),
            "is a number mistyped?"};
}

Diagnostic low_height_over_clear(const At& at, double low, double clear, DisplayUnit unit) {
    return {"low-height-over-clear",
            at.place,
            at.path,
            "the least height " + length_text(low, unit) + " is more than the clear height " +
                length_text(clear, unit),
            "low_height at most clear_height",
            assignment(at, typed_length(0.7 * clear, unit)),
            ""};
}

} // namespace coilwright::faults
