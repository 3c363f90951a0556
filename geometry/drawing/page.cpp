#include "geometry/drawing/page.hpp"

#include "geometry/drawing/words.hpp"

#include <algorithm>

namespace coilwright {
namespace {

constexpr double foot_height = 22; // mm
constexpr double ruler_width = 104;
constexpr double ruler_zero = 1.5; // from the frame's left to the ruler's zero

std::string paper_title(const Drafting& drafting, const std::string& title, double width) {
    const std::string name =
        shortened(drafting.schedule().name, width * 0.55, sizes::small, true, drafting.measure);
    return shortened(name + "  ·  " + title, width, sizes::small, true, drafting.measure);
}

void add_foot(Sheet& sheet, const Drafting& drafting, const PaperBox& frame,
              const std::string& title) {
    const double top = frame.bottom + foot_height;
    add_line(sheet, {frame.left, top}, {frame.right, top}, pens::seen);
    // Left: the check ruler and what to do with it.
    add_text(sheet, {frame.left + ruler_zero, top - 3.7}, words::print_at_full_size(), sizes::small,
             true);
    add_check_ruler(sheet, {frame.left + ruler_zero, top - 9.6});
    // Right: the caution.
    const double left = frame.left + ruler_width + 5;
    const double width = frame.right - left;
    double size = sizes::small;
    std::vector<std::string> lines;
    do {
        lines = wrapped("CAUTION. " + words::caution(), width - 4, size, true, drafting.measure);
        size -= 0.1;
    } while (lines_height(lines.size(), size) > foot_height - 7.2 && size > sizes::least);
    size += 0.1;
    const double high = lines_height(lines.size(), size) + 1.6;
    add_box(sheet, {left, top - 1.2 - high, frame.right, top - 1.2}, pens::cut);
    add_lines(sheet, {left + 2, top - 1.6}, lines, size, true);
    // Bottom: which building, which sheet. The count comes last.
    add_text(sheet, {frame.left, frame.bottom + 0.9},
             paper_title(drafting, title, frame.width() - 36), sizes::small, true);
}

} // namespace

PaperBox frame_of(double width, double height) {
    return {page_margin, page_margin, width - page_margin, height - page_margin};
}

void add_check_ruler(Sheet& sheet, Vec2 at) {
    constexpr double bar = 1.6; // mm high
    add_line(sheet, at, at + Vec2(101.6, 0), pens::seen);
    for (int i = 0; i <= 10; ++i) // centimetres up
        add_line(sheet, at + Vec2(10.0 * i, 0), at + Vec2(10.0 * i, i % 5 == 0 ? 2 * bar : bar),
                 pens::seen);
    for (int i = 0; i <= 8; ++i) // half inches down
        add_line(sheet, at + Vec2(12.7 * i, 0), at - Vec2(-12.7 * i, i % 2 == 0 ? 2 * bar : bar),
                 pens::seen);
    for (const auto& [x, text] : {std::pair{0.0, "0"}, {50.0, "50"}, {100.0, "100 mm"}})
        add_text(sheet, at + Vec2(x + (x > 0 ? -1.0 : 1.0), 1.9), text, sizes::least, false,
                 x > 0 ? Align::right : Align::left);
    for (const auto& [x, text] : {std::pair{0.0, "0"}, {50.8, "2"}, {101.6, "4 in"}})
        add_text(sheet, at + Vec2(x + (x > 0 ? -1.0 : 1.0), -3.9), text, sizes::least, false,
                 x > 0 ? Align::right : Align::left);
}

Page new_page(const Drafting& drafting, const std::string& title, bool landscape) {
    Page page;
    page.sheet.title = title;
    page.sheet.width = landscape ? drafting.paper.height : drafting.paper.width;
    page.sheet.height = landscape ? drafting.paper.width : drafting.paper.height;
    page.body = frame_of(page.sheet.width, page.sheet.height);
    add_foot(page.sheet, drafting, page.body, title);
    page.body.bottom += foot_height + 1.5;
    return page;
}

namespace {

constexpr double between_halves = 4; // mm

double half_height(const PaperBox& body) {
    return (body.height() - between_halves) / 2;
}

} // namespace

Page half_page(const Drafting& drafting, const std::string& title) {
    Page page = new_page(drafting, title);
    page.sheet.items.clear();
    page.body.bottom = page.body.top - half_height(page.body);
    return page;
}

Sheet join_halves(const Drafting& drafting, const std::string& title, const Sheet& upper,
                  const Sheet& lower) {
    Page page = new_page(drafting, title);
    const double down = half_height(page.body) + between_halves;
    for (const PaperItem& item : upper.items)
        page.sheet.items.push_back(item);
    for (const PaperItem& item : lower.items)
        page.sheet.items.push_back(moved(item, {0, -down}));
    const double middle = page.body.top - down + between_halves / 2;
    add_line(page.sheet, {page.body.left, middle}, {page.body.right, middle}, pens::hidden);
    return std::move(page.sheet);
}

Page titled_page(const Drafting& drafting, const std::string& title, const std::string& under) {
    Page page = new_page(drafting, title);
    const double size = 8;
    add_text(page.sheet, {page.body.left, page.body.top - size},
             shortened(title, page.body.width(), size, true, drafting.measure), size, true);
    double used = size * leading;
    if (!under.empty())
        used += add_lines(page.sheet, {page.body.left, page.body.top - used},
                          wrapped(under, page.body.width(), sizes::body, false, drafting.measure),
                          sizes::body, false);
    page.body.top -= used + 3;
    add_line(page.sheet, {page.body.left, page.body.top + 1.5},
             {page.body.right, page.body.top + 1.5}, pens::heavy);
    return page;
}

void number_sheets(std::vector<Sheet>& sheets) {
    for (std::size_t i = 0; i < sheets.size(); ++i) {
        const PaperBox frame = frame_of(sheets[i].width, sheets[i].height);
        add_text(sheets[i], {frame.right, frame.bottom + 0.9},
                 "Sheet " + std::to_string(i + 1) + " of " + std::to_string(sheets.size()),
                 sizes::small, true, Align::right);
    }
}

Flow::Flow(const Drafting& drafting, std::function<Page()> start_page, double text_size,
           double row_part, bool draw)
    : drafting_(drafting), start_page_(std::move(start_page)), text_size_(text_size),
      row_part_(row_part), draw_(draw), page_(start_page_()), y_(page_.body.top) {}

void Flow::turn_page() {
    done_.push_back(std::move(page_.sheet));
    page_ = start_page_();
    y_ = page_.body.top;
    empty_ = true;
}

void Flow::need(double height) {
    if (room() < height && !empty_)
        turn_page();
}

void Flow::space(double height) {
    if (!empty_)
        y_ -= height;
}

void Flow::block(double height, const std::function<void(Sheet&, const PaperBox&)>& draw) {
    need(height);
    if (draw_)
        draw(page_.sheet, {page_.body.left, y_ - height, page_.body.right, y_});
    y_ -= height;
    empty_ = false;
}

void Flow::at_bottom(double height, const std::function<void(Sheet&, const PaperBox&)>& draw) {
    need(height);
    y_ = page_.body.bottom + height;
    block(height, draw);
}

void Flow::heading(const std::string& text, double keep_with) {
    const double size = std::max(sizes::strong * text_size_ / sizes::body, text_size_);
    need(size * leading + keep_with);
    space(0.6 * text_size_);
    block(size * leading, [&](Sheet& sheet, const PaperBox& box) {
        add_text(sheet, {box.left, box.top - size},
                 shortened(text, box.width(), size, true, drafting_.measure), size, true);
    });
}

void Flow::paragraph(const std::string& text, double size, bool bold) {
    size = size > 0 ? size : text_size_;
    const auto lines = wrapped(text, width(), size, bold, drafting_.measure);
    block(lines_height(lines.size(), size), [&](Sheet& sheet, const PaperBox& box) {
        add_lines(sheet, {box.left, box.top}, lines, size, bold);
    });
    y_ -= 0.8;
}

namespace {

double indent_of(Flow::Mark mark) {
    return mark == Flow::Mark::dot ? 4.5 : 7;
}

constexpr double item_gap = 0.8; // mm below an item

} // namespace

double Flow::item_height(const Item& one, double width, double indent) const {
    return lines_height(
        wrapped(one.text, width - indent, text_size_, one.bold, drafting_.measure).size(),
        text_size_);
}

void Flow::draw_item(Sheet& sheet, Vec2 top_left, double width, const Item& one, Mark mark) const {
    const double size = text_size_, left = top_left.x();
    const double middle = top_left.y() - size + 0.36 * size; // of the capitals
    if (mark == Mark::dot)
        add_disc(sheet, {left + 1.5, middle}, 0.7, {0});
    else
        add_box(sheet, {left + 0.5, middle - 1.9, left + 4.3, middle + 1.9}, pens::seen);
    const double indent = indent_of(mark);
    add_lines(sheet, {left + indent, top_left.y()},
              wrapped(one.text, width - indent, size, one.bold, drafting_.measure), size, one.bold);
}

void Flow::item(const std::string& text, Mark mark, bool bold) {
    const Item one{text, bold};
    block(item_height(one, width(), indent_of(mark)), [&](Sheet& sheet, const PaperBox& box) {
        draw_item(sheet, {box.left, box.top}, box.width(), one, mark);
    });
    y_ -= item_gap;
}

void Flow::two_columns(const std::vector<Item>& all, std::size_t first, std::size_t split,
                       std::size_t last, Mark mark) {
    const double half = column_width(), indent = indent_of(mark);
    double columns[2] = {0, 0};
    for (std::size_t i = first; i < last; ++i)
        columns[i < split ? 0 : 1] += item_height(all[i], half, indent) + item_gap;
    block(std::max(columns[0], columns[1]), [&](Sheet& sheet, const PaperBox& box) {
        double y = box.top;
        for (std::size_t i = first; i < last; ++i) {
            if (i == split)
                y = box.top;
            draw_item(sheet, {i < split ? box.left : box.right - half, y}, half, all[i], mark);
            y -= item_height(all[i], half, indent) + item_gap;
        }
    });
}

void Flow::items(const std::vector<Item>& all, Mark mark) {
    const double half = column_width(), indent = indent_of(mark);
    double one_column = 0;
    std::vector<double> below{0}; // heights of the first items in a column
    for (const Item& one : all) {
        one_column += item_height(one, width(), indent) + item_gap;
        below.push_back(below.back() + item_height(one, half, indent) + item_gap);
    }
    double best = one_column;
    std::size_t split = all.size();
    for (std::size_t left = 1; left < all.size(); ++left)
        if (const double high = std::max(below[left], below.back() - below[left]);
            high < best - 1e-9) {
            best = high;
            split = left;
        }
    if (best <= 0.8 * one_column && best <= page_.body.height())
        two_columns(all, 0, split, all.size(), mark);
    else
        for (const Item& one : all)
            item(one.text, mark, one.bold);
}

void Flow::list(const std::vector<Item>& all, Mark mark) {
    constexpr double least_room = 30; // mm: no shorter columns at the foot of a page
    const double half = column_width(), indent = indent_of(mark);
    const auto height = [&](std::size_t i) { return item_height(all[i], half, indent) + item_gap; };
    std::size_t first = 0;
    while (first < all.size()) {
        need(least_room);
        const auto filled = [&](std::size_t from, double high) {
            double used = 0;
            std::size_t i = from;
            while (i < all.size() && (used + height(i) <= high || i == first))
                used += height(i++);
            return i;
        };
        double high = room();
        while (filled(filled(first, high - 2), high - 2) == all.size() && high > 2)
            high -= 2; // the last columns are of like height
        const std::size_t split = filled(first, high), last = filled(split, high);
        two_columns(all, first, split, last, mark);
        first = last;
    }
}

void Flow::table(const std::string& heading_text, const Table& table, double wanted, double least,
                 bool spread) {
    const TableLayout layout =
        lay_out(table, width(), wanted, least, spread, drafting_.measure, row_part_);
    // Together if a page can well hold it; else at least two rows with the heading.
    const auto least_height = [&](std::size_t rows) {
        const double whole = layout.height(rows);
        return whole <= page_.body.height() * 0.7 ? whole
                                                  : layout.height(std::min<std::size_t>(2, rows));
    };
    if (!heading_text.empty())
        heading(heading_text, least_height(table.rows.size()));
    std::size_t first = 0;
    while (first < table.rows.size()) {
        need(least_height(table.rows.size() - first));
        const std::size_t fit = static_cast<std::size_t>(
            std::max(1.0, (room() - layout.head_height) / layout.row_height));
        const std::size_t count = std::min(fit, table.rows.size() - first);
        block(layout.height(count), [&](Sheet& sheet, const PaperBox& box) {
            add_table(sheet, table, layout, {box.left, box.top}, first, count, drafting_.measure);
        });
        first += count;
    }
    y_ -= 1;
}

std::vector<Sheet> Flow::finish() {
    done_.push_back(std::move(page_.sheet));
    return std::move(done_);
}

} // namespace coilwright
