#include "geometry/drawing/course_head.hpp"

#include "geometry/drawing/barred_course.hpp"
#include "geometry/drawing/figures.hpp"
#include "geometry/drawing/key_plan.hpp"

#include <algorithm>

namespace coilwright {
namespace {

constexpr double band_height = 32;        // mm, of number and setting
constexpr double low_band_height = 27;    // where a warning stands over it
constexpr double warning_height = 43;     // two lines across the sheet
constexpr double warning_line_height = 9; // on sheets that continue
constexpr double key_width = 32;

/// What stands in the head beside the number.
struct Setting {
    std::string what, value, under;
};

Setting dome_setting(const Drafting& drafting, const CoursePart& part) {
    const Ring& ring = *part.rings.front();
    const std::vector<CompassReading> readings =
        compass_readings(ring, *part.dome, drafting.plan.design);
    Setting setting;
    if (ring.kind == RingKind::cap) {
        setting.what = "SOLID DISC, across";
        setting.value = drafting.length(2 * ring.outside_radius);
        setting.under = "No compass: short bags side by side, centred on the pole's axis";
    } else {
        setting.what = readings.front().from;
        setting.value = drafting.length(readings.front().metres);
        for (std::size_t i = 1; i < readings.size(); ++i)
            setting.under +=
                (i > 1 ? " · " : "") + readings[i].from + " " + drafting.length(readings[i].metres);
    }
    for (const Ring* outer : part.rings)
        if (outer->wythe > 1)
            setting.under +=
                (setting.under.empty() ? "" : " · ") + std::string("outer ring ") +
                drafting.length(
                    compass_readings(*outer, *part.dome, drafting.plan.design).front().metres);
    if (ring.curb)
        setting.what = "CURB, plumb. " + setting.what;
    if (several_parts(drafting.schedule()))
        setting.what = "DOME '" + part.dome->id + "'. " + setting.what;
    return setting;
}

Setting tunnel_setting(const Drafting& drafting, const CoursePart& part) {
    const TunnelForm& tunnel = *part.tunnel;
    const double z = part.course->middle;
    Setting setting;
    setting.what = "TUNNEL '" + tunnel.id + "'. ";
    if (part.course->number > tunnel.side_courses) {
        const int tubes = static_cast<int>(part.straights.size());
        setting.what += "SOLID CROWN, across";
        setting.value = drafting.length(2 * outer_half_width(tunnel, z));
        setting.under =
            count_text(tubes, "tube", "tubes side by side") + " on the form, centred on the axis";
    } else {
        const double half = inner_half_width(tunnel, z);
        setting.what += "GAUGE, from the axis string";
        setting.value = drafting.length(half);
        setting.under =
            "to the inside face of each wall; " + drafting.length(2 * half) + " between them";
    }
    return setting;
}

int courses_of(const CoursePart& part) {
    return part.dome ? part.dome->courses()
                     : part.tunnel->side_courses + part.tunnel->crown_courses;
}

/// What stands over the head in the largest type; nothing over most.
std::vector<std::string> warning_lines(const Drafting& drafting, const CoursePart& part) {
    if (barred_from(drafting.plan, part) > 0)
        return {"DO NOT LAY", "THIS COURSE"};
    if (form_carries(part))
        return {"FORM CARRIES", "THIS COURSE"};
    return {};
}

/// White on black, as large as the sheet's width allows; returns the size of its type.
double add_warning(Sheet& sheet, const PaperBox& box, const MeasureText& measure,
                   std::vector<std::string> lines, bool full) {
    add_fill(sheet, box, {0});
    if (!full)
        lines = {lines[0] + " " + lines[1]};
    double size = full ? 22 : 6.5;
    for (const std::string& line : lines)
        size = fitting_size(line, box.width() - 8, size, 4, true, measure);
    const double step = box.height() / static_cast<double>(lines.size());
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const double middle = box.top - (static_cast<double>(i) + 0.5) * step;
        TextItem text =
            text_at({box.centre().x(), middle - 0.365 * size}, lines[i], size, true, Align::centre);
        text.ink = {1};
        sheet.items.push_back(text);
    }
    return size;
}

} // namespace

std::string sheet_title(const Drafting& drafting, const CoursePart& part) {
    std::string title = "Course " + std::to_string(part.course->number);
    if (several_parts(drafting.schedule()))
        title += " of '" + part.id() + "'";
    if (part.dome && part.rings.front()->kind == RingKind::cap)
        title += ", cap";
    if (part.dome && part.rings.front()->curb)
        title += ", curb";
    if (part.tunnel && part.course->number > part.tunnel->side_courses)
        title += ", crown";
    return title;
}

std::string joint_title(const Drafting& drafting, const CoursePart& first,
                        const CoursePart& second) {
    const std::string other = sheet_title(drafting, second);
    return sheet_title(drafting, first) + " and " + other.substr(other.find('\''));
}

double course_head_height(const Drafting& drafting, const CoursePart& part, bool first_sheet,
                          bool half) {
    if (warning_lines(drafting, part).empty())
        return half ? low_band_height : band_height;
    return low_band_height + (first_sheet ? warning_height : warning_line_height);
}

namespace {

/// A text beside the setting: on one line, or on two of the least size.
struct HeadText {
    std::vector<std::string> lines;
    double size = 0;
    /// What lines after the first add to its height.
    double more() const { return static_cast<double>(lines.size() - 1) * size * leading; }
};

HeadText head_text(const std::string& text, double room, double wanted,
                   const MeasureText& measure) {
    const double size = fitting_size(text, room, wanted, sizes::least, true, measure);
    if (measure(text, size, true).width <= room)
        return {{text}, size};
    return {wrapped(text, room, sizes::least, true, measure, 2), sizes::least};
}

/// The first line's baseline at a point.
void add_head_text(Sheet& sheet, Vec2 at, const HeadText& text) {
    for (const std::string& line : text.lines) {
        add_text(sheet, at, line, text.size, true);
        at.y() -= text.size * leading;
    }
}

void add_course_head(Sheet& sheet, const PaperBox& whole, const Drafting& drafting,
                     const CoursePart& part, int number, int of) {
    const bool first_sheet = number == 1;
    const MeasureText& measure = drafting.measure;
    const std::vector<std::string> lines = warning_lines(drafting, part);
    PaperBox box = whole;
    double largest = 26;
    if (!lines.empty()) {
        PaperBox warning = whole;
        warning.bottom = whole.top - (first_sheet ? warning_height : warning_line_height) + 1;
        const double size = add_warning(sheet, warning, measure, lines, first_sheet);
        largest = std::min(largest, first_sheet ? size - 1 : 19.0);
        box.top = warning.bottom - 1;
    }
    constexpr double label = 3.8;
    const double number_size = std::min(largest, 0.81 * box.height());
    const std::string course = std::to_string(part.course->number);
    const double number_width = measure(course, number_size, true).width;
    const double divide = box.left + std::max(38.0, number_width + 9);
    add_box(sheet, box, pens::heavy);
    add_line(sheet, {divide, box.bottom}, {divide, box.top}, pens::heavy);
    add_text(sheet, {box.left + 3, box.top - 5}, "COURSE of " + std::to_string(courses_of(part)),
             label, true);
    add_text(sheet, {(box.left + divide) / 2, box.bottom + 0.15 * number_size}, course, number_size,
             true, Align::centre);
    if (several_parts(drafting.schedule())) {
        const double left = box.right - key_width;
        add_line(sheet, {left, box.bottom}, {left, box.top}, pens::seen);
        add_key_plan(sheet, {left + 1.5, box.bottom + 1.5, box.right - 1.5, box.top - 1.5},
                     drafting.schedule().building, part.id());
        box.right = left;
    }
    Setting setting = barred_from(drafting.plan, part) > 0 ? Setting{"NO SETTING", "STOP", {}}
                      : part.dome                          ? dome_setting(drafting, part)
                                                           : tunnel_setting(drafting, part);
    if (of > 1) // a crew that finds one of them must look for the rest
        setting.what += "  " + std::to_string(number) + " of " + std::to_string(of) +
                        (number < of ? ": GOES ON" : "");
    const double left = divide + 4, room = box.right - 3 - left;
    const HeadText what = head_text(setting.what, room, label, measure);
    // Two lines stand nearer to the edge than one.
    const auto edge = [](const HeadText& text) { return text.lines.size() > 1 ? 1.2 : 0.0; };
    add_head_text(sheet, {left, box.top - 5 + edge(what)}, what);
    // The setting stands in the middle of what the texts over and under it leave.
    double low = box.bottom + 1, high = box.top - 7.4 - what.more() + edge(what);
    if (!setting.under.empty()) {
        const HeadText under = head_text(setting.under, room, sizes::strong, measure);
        const double foot = box.bottom + 2.8 - edge(under);
        add_head_text(sheet, {left, foot + under.more()}, under);
        low = foot + 6 + under.more();
    }
    const double wanted = std::min((high - low) / 0.8, std::min(24.0, largest - 1));
    const double size =
        fitting_size(setting.value, room, wanted, std::min(10.0, wanted), true, measure);
    add_text(sheet, {left - 0.04 * size, (low + high) / 2 - 0.365 * size}, setting.value, size,
             true);
}

} // namespace

Page course_page(const Drafting& drafting, const CoursePart& part, int number, int of, bool half) {
    const bool first_sheet = number == 1;
    const std::string title = sheet_title(drafting, part);
    Page page = half ? half_page(drafting, title)
                     : new_page(drafting, first_sheet ? title : title + ", continued");
    const double height = course_head_height(drafting, part, first_sheet, half);
    const PaperBox head{page.body.left, page.body.top - height, page.body.right, page.body.top};
    add_course_head(page.sheet, head, drafting, part, number, of);
    page.body.top = head.bottom - 1.5;
    return page;
}

} // namespace coilwright
