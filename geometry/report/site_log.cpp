#include "geometry/report/site_log.hpp"

#include "geometry/drawing/figures.hpp"
#include "geometry/drawing/page.hpp"
#include "geometry/takeoff/amount_text.hpp"

#include <algorithm>

namespace coilwright {

namespace {

/// How large a sheet is set, mm: its text, read at arm's length, and a row to write in.
struct LogStyle {
    double text, row;
};
constexpr LogStyle log_styles[] = {{4.4, 9.5}, {4.2, 8.6}, {4.0, 8.0}, {3.7, 7.6}, {3.4, 7.2}};
constexpr double sign_height = 20; // mm

/// A column of a table to write in: its head and its part of the width.
struct LogColumn {
    std::string head;
    double part = 1;
};

/// What a part of a course should read, on the compass or the gauge.
std::string setting_of(const Drafting& drafting, const CoursePart& part) {
    if (part.tunnel) {
        const double z = part.course->middle;
        return part.course->number > part.tunnel->side_courses
                   ? "crown " + drafting.length(2 * outer_half_width(*part.tunnel, z))
                   : "gauge " + drafting.length(inner_half_width(*part.tunnel, z));
    }
    const Ring& ring = *part.rings.front();
    if (ring.kind == RingKind::cap)
        return "disc " + drafting.length(2 * ring.outside_radius);
    return drafting.length(compass_readings(ring, *part.dome, drafting.plan.design).front().metres);
}

/// "soil with cement, 10 % of its dry mass", or what little is known.
std::string mix_of(const Design& design, const CourseTake& take) {
    if (take.kind == FillKind::gravel)
        return "gravel";
    for (const Fill& fill : design.fills)
        if (fill.id == take.fill && fill.stabiliser != Stabiliser::none)
            return std::string("soil with ") +
                   (fill.stabiliser == Stabiliser::cement ? "cement, " : "lime, ") +
                   fixed_text(100 * fill.ratio, 1) +
                   (fill.by == StabiliserBy::dry_mass ? " % of its dry mass"
                                                      : " % of its loose volume");
    return "soil";
}

class DayLog {
public:
    DayLog(const Drafting& drafting, const WorkedOut& out, const WorkDay& day,
           const LogStyle& style)
        : drafting_(drafting), out_(out), day_(day), style_(style),
          title_("Day " + std::to_string(day.number) +
                 (day.date ? "   " + date_text(*day.date) : "")),
          flow_(
              drafting, [this] { return titled_page(drafting_, title_, under()); }, style_.text) {}

    std::vector<Sheet> sheets() {
        add_work();
        add_courses();
        add_supplies();
        add_test_bag();
        add_end();
        return flow_.finish();
    }

private:
    std::string under() const {
        std::string text = "Site log of the working day, day " + std::to_string(day_.calendar + 1) +
                           " on the calendar.";
        return day_.date ? text : text + " Date:";
    }

    void add_work() {
        flow_.heading("Planned");
        for (const DayWork& work : day_.work)
            flow_.item(work.what + (work.ends ? "" : " (goes on)"), Flow::Mark::tick);
        if (day_.set.empty())
            return;
        flow_.heading("To set, to strike, to leave");
        for (const std::string& note : day_.set)
            flow_.item(note, Flow::Mark::tick, note.find("DO NOT") != std::string::npos);
    }

    /// A table with lines around its cells; cells without text are for the pen.
    void add_form(const std::vector<LogColumn>& columns,
                  const std::vector<std::vector<std::string>>& rows) {
        double parts = 0;
        for (const LogColumn& column : columns)
            parts += column.part;
        const double head = 6.5;
        const auto line = [&](const std::vector<std::string>& cells, double height, bool is_head) {
            flow_.block(height, [&](Sheet& sheet, const PaperBox& box) {
                double left = box.left;
                for (std::size_t i = 0; i < columns.size(); ++i) {
                    const double wide = box.width() * columns[i].part / parts;
                    add_box(sheet, {left, box.bottom, left + wide, box.top}, pens::seen);
                    const double wanted = is_head ? sizes::small : style_.text;
                    const double size = fitting_size(cells[i], wide - 2.5, wanted, sizes::least,
                                                     true, drafting_.measure);
                    add_text(sheet, {left + 1.5, box.bottom + (height - 0.73 * size) / 2},
                             shortened(cells[i], wide - 2, size, true, drafting_.measure), size,
                             true);
                    left += wide;
                }
            });
        };
        std::vector<std::string> heads;
        for (const LogColumn& column : columns)
            heads.push_back(column.head);
        flow_.need(head + style_.row);
        line(heads, head, true);
        for (const auto& row : rows)
            line(row, style_.row, false);
    }

    void add_courses() {
        std::vector<std::vector<std::string>> rows;
        for (const DayWork& work : day_.work) {
            if (work.course == 0)
                continue;
            const Schedule& schedule = drafting_.schedule();
            const Course& course = schedule.courses[static_cast<std::size_t>(work.course - 1)];
            for (const CoursePart& part : parts_of(schedule, course))
                rows.push_back({std::to_string(course.number), part.id(),
                                setting_of(drafting_, part), "",
                                rod_text(course.top, drafting_.unit()), "", ""});
        }
        if (rows.empty())
            return;
        flow_.heading("Courses: what they should read, and what they read");
        add_form({{"course", 0.7},
                  {"of", 1.1},
                  {"compass", 2.1},
                  {"read", 1.2},
                  {"top on the rod", 1.5},
                  {"read", 1.2},
                  {"laid whole?", 1.1}},
                 rows);
    }

    void add_supplies() {
        const DisplayUnit unit = drafting_.unit();
        std::vector<std::vector<std::string>> rows;
        const auto row = [&](const std::string& what, double amount, const std::string& text) {
            if (amount > 1e-9)
                rows.push_back({what, text, "", ""});
        };
        row("Loose fill", day_.fill_loose,
            amount_text(day_.fill_loose, AmountUnit::cubic_metre, unit) + ", " +
                fixed_text(day_.buckets, 0) + " buckets");
        row("Cement or lime of the fill", day_.stabiliser_mass,
            amount_text(day_.stabiliser_mass, AmountUnit::kilogram, unit));
        row("Water of the fill", day_.water, amount_text(day_.water, AmountUnit::litre, unit));
        row("Tube to cut", day_.tube_cut, amount_text(day_.tube_cut, AmountUnit::metre, unit));
        row("Barbed wire", day_.wire, amount_text(day_.wire, AmountUnit::metre, unit));
        if (rows.empty())
            return;
        flow_.heading("On site");
        add_form({{"what", 1.6}, {"planned", 1.6}, {"used", 1.2}, {"left", 1.2}}, rows);
    }

    void add_test_bag() {
        std::string mix;
        for (const DayWork& work : day_.work)
            for (const CourseTake& take : out_.take.courses)
                if (work.course > 0 && take.course == work.course) {
                    const std::string one = mix_of(drafting_.plan.design, take);
                    if (mix.find(one) == std::string::npos)
                        mix += (mix.empty() ? "" : "; ") + one;
                }
        if (mix.empty())
            return;
        flow_.heading("Mix and test bag. Planned: " + mix);
        add_form({{"parts by volume", 2},
                  {"dampness", 1.2},
                  {"test bag: width, tamped", 1.5},
                  {"height, tamped", 1.2}},
                 {{"", "", "", ""}});
    }

    void add_end() {
        flow_.heading("What went otherwise, weather", 3 * style_.row);
        flow_.block(2 * style_.row, [&](Sheet& sheet, const PaperBox& box) {
            for (const double y : {box.top - style_.row, box.top - 2 * style_.row + 1})
                add_line(sheet, {box.left, y}, {box.right, y}, pens::seen);
        });
        flow_.at_bottom(sign_height, [&](Sheet& sheet, const PaperBox& box) {
            const auto blank = [&](double x, double y, double width, const std::string& label) {
                add_text(sheet, {x, y}, label, style_.text, true);
                const double used = drafting_.measure(label, style_.text, true).width + 1.5;
                add_line(sheet, {x + used, y - 0.6}, {x + width, y - 0.6}, pens::seen);
            };
            const double half = box.width() / 2;
            blank(box.left, box.top - 8, half - 4, "People here");
            blank(box.left + half, box.top - 8, half, "Hours");
            blank(box.left, box.top - 18, half - 4, "Name");
            blank(box.left + half, box.top - 18, half, "Signed");
        });
    }

    const Drafting& drafting_;
    const WorkedOut& out_;
    const WorkDay& day_;
    LogStyle style_;
    std::string title_;
    Flow flow_;
};

} // namespace

std::vector<Sheet> site_log(const BuildingPlan& plan, const WorkedOut& out, const PaperSize& paper,
                            const MeasureText& measure) {
    const Drafting drafting{plan, paper, measure};
    std::vector<Sheet> sheets;
    for (const WorkDay& day : out.days.days) {
        std::vector<Sheet> best;
        for (const LogStyle& style : log_styles) { // the largest that takes fewest sheets
            std::vector<Sheet> set = DayLog(drafting, out, day, style).sheets();
            if (best.empty() || set.size() < best.size())
                best = std::move(set);
            if (best.size() == 1)
                break;
        }
        for (Sheet& sheet : best)
            sheets.push_back(std::move(sheet));
    }
    number_sheets(sheets);
    return sheets;
}

} // namespace coilwright
