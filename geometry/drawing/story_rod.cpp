#include "geometry/drawing/crew_pages.hpp"
#include "geometry/drawing/figures.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace coilwright {
namespace {

/// A mark on the rod: its height and what lies there.
struct RodMark {
    double height = 0;
    std::vector<std::string> names;
};

/// Names at one height, gathered: equal kinds share one phrase ("sill of 'a', 'b'").
class Marks {
public:
    void add(double height, const std::string& kind, const std::string& whose = "") {
        const long key = std::lround(height * 1e4); // heights within 0.1 mm are one mark
        Place& place = places_[-key];               // from the top down
        place.height = height;
        for (auto& [known, names] : place.kinds)
            if (known == kind) {
                names.push_back(whose);
                return;
            }
        place.kinds.push_back({kind, {whose}});
    }

    std::vector<RodMark> list() const {
        std::vector<RodMark> marks;
        for (const auto& [key, place] : places_) {
            RodMark mark{place.height, {}};
            for (const auto& [kind, names] : place.kinds) {
                std::string text = kind;
                for (std::size_t i = 0; i < names.size(); ++i)
                    if (!names[i].empty())
                        text += (i > 0 ? ", '" : " '") + names[i] + "'";
                mark.names.push_back(text);
            }
            marks.push_back(std::move(mark));
        }
        return marks;
    }

private:
    struct Place {
        double height = 0;
        std::vector<std::pair<std::string, std::vector<std::string>>> kinds;
    };
    std::map<long, Place> places_;
};

std::vector<RodMark> rod_marks(const BuildingPlan& plan) {
    const Schedule& schedule = plan.schedule;
    Marks marks;
    if (!schedule.courses.empty())
        marks.add(schedule.courses.front().bottom, "Underside of course 1");
    for (const Course& course : schedule.courses)
        marks.add(course.top, "Top of course " + std::to_string(course.number) +
                                  (course.top_measured ? ", as measured" : ""));
    marks.add(0, "BENCH MARK, finished floor");
    const bool several = schedule.building.domes.size() > 1;
    for (const DomeForm& dome : schedule.building.domes) {
        if (dome.springline > 1e-6)
            marks.add(dome.springline, "springline", several ? dome.id : "");
        if (dome.cap_courses > 0) // a skylight leaves the apex in the air
            marks.add(dome.apex(), "apex of the inside curve", several ? dome.id : "");
    }
    for (const TunnelForm& tunnel : schedule.building.tunnels) {
        marks.add(tunnel.springline, "springing of", tunnel.id);
        marks.add(tunnel.crown(), "crown of", tunnel.id);
    }
    for (const Lintel& lintel : schedule.lintels)
        marks.add(lintel.bottom, "lintel of", lintel.opening);
    for (const SleevePlan& sleeve : schedule.sleeves)
        marks.add(sleeve.mark(), sleeve.stops_tubes ? "centre of sleeve" : "sleeve on this joint,",
                  sleeve.form.id);
    std::set<std::string> tables; // piers of a table end at one height
    for (const ButtressForm& pier : schedule.building.buttresses)
        if (pier.reveal)
            marks.add(pier.top, "top of the reveal of", pier.reveal->opening.id);
        else if (tables.insert(pier.table).second)
            marks.add(pier.top, "top of buttress", pier.table);
    for (const OpeningPlan& opening : schedule.openings) {
        const OpeningForm& form = opening.form;
        if (form.use != OpeningUse::door || form.sill > 1e-6)
            marks.add(form.sill, "sill of", form.id);
        if (form.head && form.springing > form.sill + 1e-6)
            marks.add(form.springing, "springing of", form.id);
        marks.add(form.top, "top of", form.id);
    }
    return marks.list();
}

constexpr double rod_left = 6, rod_width = 7, leader_end = 38; // mm from the left

/// Sizes of the list in mm.
struct ListStyle {
    double text;
    double figures; // width of the widest height
    double figure_end() const { return leader_end + 2.5 + figures; }
    double names_start() const { return figure_end() + 4; }
    double line() const { return text * 1.35; }
    double gap() const { return text * 0.22; }
};

struct Row {
    const RodMark* mark = nullptr;
    std::vector<std::string> lines;
    double height = 0;
};

/// A strip of the rod: its rows, and whether another strip goes on above and below it.
struct Strip {
    std::vector<Row> rows;
    bool above = false, below = false;
};

constexpr double heads_height = 7; // mm, of the headings over the columns

void draw_rows(Page& page, const Drafting& drafting, const Strip& strip, const ListStyle& style) {
    const std::vector<Row>& rows = strip.rows;
    PaperBox box = page.body;
    Sheet& sheet = page.sheet;
    const double head = box.top - sizes::body;
    add_text(sheet, {box.left, head}, "The rod", sizes::small, true);
    add_text(sheet, {box.left + style.figure_end(), head}, "Height", sizes::small, true,
             Align::right);
    add_text(sheet, {box.left + style.names_start(), head}, "What lies there", sizes::small, true);
    box.top -= heads_height;
    const double high = rows.front().mark->height, low = rows.back().mark->height;
    const double rod_top = box.top - 4, rod_bottom = box.bottom + 4;
    const double x0 = box.left + rod_left, x1 = x0 + rod_width;
    add_fill(sheet, PaperBox{x0, rod_bottom - 3, x1, rod_top + 3}, {0.92});
    add_box(sheet, {x0, rod_bottom - 3, x1, rod_top + 3}, pens::cut);
    // A joint: the strips meet on a mark that both bear.
    for (const auto& [joint, at] : {std::pair{strip.above, rod_top}, {strip.below, rod_bottom}})
        if (joint)
            add_line(sheet, {x0 - 3.5, at}, {x1, at}, pens::heavy);
    double y = box.top;
    double total = 0;
    for (const Row& row : rows)
        total += row.height;
    // Spread the rows over the page, but no further apart than they read as one list.
    const double extra =
        rows.size() > 1
            ? std::clamp((box.height() - total) / static_cast<double>(rows.size() - 1), 0.0, 4.0)
            : 0.0;
    for (const Row& row : rows) {
        const double part = high > low ? (row.mark->height - low) / (high - low) : 0.5;
        const double on_rod = rod_bottom + part * (rod_top - rod_bottom);
        const double middle = y - style.gap() / 2 - style.line() / 2;
        const bool zero = std::abs(row.mark->height) < 1e-6;
        add_line(sheet, {x0, on_rod}, {x1, on_rod}, zero ? pens::heavy : pens::cut);
        add_polyline(sheet,
                     {{x1, on_rod},
                      {x1 + 3, on_rod},
                      {box.left + leader_end - 4, middle},
                      {box.left + leader_end, middle}},
                     pens::fine);
        const double baseline = middle - 0.365 * style.text;
        add_text(sheet, {box.left + style.figure_end(), baseline},
                 rod_text(row.mark->height, drafting.unit()), style.text, true, Align::right);
        const bool joint =
            (strip.above && &row == &rows.front()) || (strip.below && &row == &rows.back());
        for (std::size_t i = 0; i < row.lines.size(); ++i)
            add_text(
                sheet,
                {box.left + style.names_start(), baseline - static_cast<double>(i) * style.line()},
                row.lines[i], style.text, zero || joint);
        y -= row.height + extra;
    }
}

std::vector<Row> make_rows(const Drafting& drafting, const std::vector<RodMark>& marks,
                           double width, const ListStyle& style) {
    std::vector<Row> rows;
    for (const RodMark& mark : marks) {
        Row row;
        row.mark = &mark;
        std::string names;
        for (const std::string& name : mark.names)
            names += (names.empty() ? "" : "; ") + name;
        row.lines = wrapped(names, width - style.names_start(), style.text,
                            std::abs(mark.height) < 1e-6, drafting.measure, 8);
        row.height = static_cast<double>(row.lines.size()) * style.line() + style.gap();
        rows.push_back(std::move(row));
    }
    return rows;
}

double height_of(const std::vector<Row>& rows) {
    double height = 0;
    for (const Row& row : rows)
        height += row.height;
    return height;
}

/// Strips of the rod, each as high as a page holds and all of like length. The last row of one is
/// the first of the next: there the strips are joined.
std::vector<Strip> split_rod(const std::vector<Row>& rows, double room) {
    const double pages = std::ceil(height_of(rows) / room);
    double most = 0;
    for (const Row& row : rows)
        most = std::max(most, row.height);
    const double share = pages > 1 ? std::min(room, height_of(rows) / pages + 2 * most) : room;
    std::vector<Strip> strips;
    std::size_t next = 0;
    while (next < rows.size()) {
        Strip strip;
        strip.above = next > 0;
        if (strip.above)
            strip.rows.push_back(rows[next - 1]);
        while (next < rows.size() &&
               (strip.rows.size() < 2 || height_of(strip.rows) + rows[next].height <= share))
            strip.rows.push_back(rows[next++]);
        strip.below = next < rows.size();
        strips.push_back(std::move(strip));
    }
    return strips;
}

} // namespace

std::vector<Sheet> story_rod_pages(const Drafting& drafting) {
    const std::vector<RodMark> marks = rod_marks(drafting.plan);
    std::string under = "Mark these heights on a straight pole, by tape from the bench mark 0. "
                        "Figures only: do not scale from the drawing.";
    if (!drafting.plan.design.as_laid_tops.empty())
        under +=
            " Heights as measured are those that the design states; the courses over them follow.";
    const auto start_page = [&](bool first, const std::string& more) {
        return titled_page(drafting, first ? "Story rod" : "Story rod, continued", under + more);
    };
    const std::string joints =
        " The list is split over strips, joined where a strip's first mark is the "
        "last of the one before.";
    const double width = start_page(true, "").body.width();
    const double room = start_page(true, joints).body.height() - heads_height;
    // A little smaller if that saves the second page; else pages of like length.
    const auto style_of = [&](double text) {
        ListStyle made{text, 0};
        for (const RodMark& mark : marks)
            made.figures = std::max(
                made.figures,
                drafting.measure(rod_text(mark.height, drafting.unit()), text, true).width);
        return made;
    };
    ListStyle style = style_of(sizes::body);
    std::vector<Row> rows = make_rows(drafting, marks, width, style);
    for (const double size : {3.8, 3.6, 3.4}) {
        const std::vector<Row> smaller = make_rows(drafting, marks, width, style_of(size));
        if (height_of(rows) > room && height_of(smaller) <= room) {
            style = style_of(size);
            rows = smaller;
        }
    }
    std::vector<Strip> strips = split_rod(rows, room);
    std::vector<Sheet> sheets;
    for (std::size_t i = 0; i < strips.size(); ++i) {
        std::string more;
        if (strips.size() > 1) {
            more = " Strip " + std::to_string(i + 1) + " of " + std::to_string(strips.size()) + ":";
            const auto at = [&](const Row& row) {
                return rod_text(row.mark->height, drafting.unit());
            };
            if (strips[i].above)
                more += " JOINT with strip " + std::to_string(i) + " at " +
                        at(strips[i].rows.front()) + ".";
            if (strips[i].below)
                more += " JOINT with strip " + std::to_string(i + 2) + " at " +
                        at(strips[i].rows.back()) + ".";
        }
        Page page = start_page(i == 0, more);
        draw_rows(page, drafting, strips[i], style);
        sheets.push_back(std::move(page.sheet));
    }
    return sheets;
}

} // namespace coilwright
