#include "tests/drawing/sheet_checks.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <deque>

namespace coilwright::testing {

namespace {

/// The rectangle a hair smaller, so that what only touches does not count.
Corners shrunk(const Corners& corners, double by) {
    const Vec2 ahead = (corners[1] - corners[0]).normalized() * by;
    const Vec2 up = (corners[3] - corners[0]).normalized() * by;
    return {corners[0] + ahead + up, corners[1] - ahead + up, corners[2] - ahead - up,
            corners[3] + ahead - up};
}

/// Whether a line or the edge of a dark fill runs through a rectangle.
bool line_crosses(const PaperItem& item, const Corners& text) {
    if (const auto* line = std::get_if<LineItem>(&item)) {
        for (std::size_t i = 0; i + 1 < line->points.size(); ++i)
            if (overlap(corners(line->points[i], line->points[i + 1], line->stroke.width), text))
                return true;
        return line->closed &&
               overlap(corners(line->points.back(), line->points.front(), line->stroke.width),
                       text);
    }
    if (const auto* fill = std::get_if<FillItem>(&item)) {
        if (fill->ink.grey > 0.5) // light grounds do not hurt a text
            return false;
        for (const FillItem::Loop& loop : fill->loops) {
            Vec2 from = loop.from;
            for (const FillItem::Edge& edge : loop.edges) {
                if (overlap(corners(from, edge.to, 0.01), text))
                    return true;
                from = edge.to;
            }
        }
    }
    if (const auto* arc = std::get_if<ArcItem>(&item)) {
        constexpr int pieces = 180;
        const auto at = [&](int i) {
            const double angle = arc->start + (arc->end - arc->start) * i / pieces;
            return Vec2(arc->centre + arc->radius * Vec2(std::cos(angle), std::sin(angle)));
        };
        for (int i = 0; i < pieces; ++i)
            if (overlap(corners(at(i), at(i + 1), arc->stroke.width), text))
                return true;
    }
    return false;
}

} // namespace

std::vector<std::string> sheet_faults(const Sheet& sheet, double margin,
                                      const MeasureText& measure) {
    std::vector<std::string> faults;
    const auto fault = [&](const std::string& what) {
        faults.push_back(sheet.title + ": " + what);
    };
    const PaperBox frame{margin, margin, sheet.width - margin, sheet.height - margin};
    std::vector<std::pair<const TextItem*, Corners>> texts;
    for (const PaperItem& item : sheet.items) {
        const PaperBox box = bounds(item, measure);
        // Strokes on the frame's edge lie half outside it.
        if (!inside(box, grown(frame, 0.75)))
            fault("an item leaves the frame");
        const auto* text = std::get_if<TextItem>(&item);
        if (!text)
            continue;
        if (!inside(box, frame))
            fault("'" + text->text + "' leaves the frame");
        if (text->size < 2.8 - 1e-9)
            fault("'" + text->text + "' is too small");
        texts.emplace_back(text, corners(*text, measure));
    }
    for (std::size_t i = 0; i < texts.size(); ++i)
        for (std::size_t k = i + 1; k < texts.size(); ++k)
            if (overlap(texts[i].second, texts[k].second))
                fault("'" + texts[i].first->text + "' overlaps '" + texts[k].first->text + "'");
    for (const auto& [text, box] : texts) {
        if (text->on_white)
            continue;
        const Corners core = shrunk(box, 0.05);
        for (const PaperItem& item : sheet.items)
            if (line_crosses(item, core)) {
                fault("a line crosses '" + text->text + "'");
                break;
            }
    }
    return faults;
}

namespace {

/// The half of a shared sheet that is headed by a part's name.
const Sheet* half_of(const Sheet& sheet, const std::string& quoted) {
    static std::deque<Sheet> halves;
    double divide = 0, head = 0;
    for (const PaperItem& item : sheet.items) {
        if (const auto* line = std::get_if<LineItem>(&item);
            line && !line->stroke.dashes.empty() && line->points.size() == 2 &&
            line->points[0].y() == line->points[1].y() &&
            std::abs(line->points[1].x() - line->points[0].x()) > 0.9 * (sheet.width - 20))
            divide = line->points[0].y();
        if (const auto* text = std::get_if<TextItem>(&item);
            text && text->text.find(quoted + ". ") != std::string::npos &&
            (text->text.rfind("DOME ", 0) == 0 || text->text.rfind("TUNNEL ", 0) == 0))
            head = text->at.y();
    }
    REQUIRE(divide > 0);
    REQUIRE(head > 0);
    Sheet half = sheet;
    half.items.clear();
    for (const PaperItem& item : sheet.items) {
        const PaperBox box = bounds(item, [](const std::string&, double size, bool) {
            return TextExtent{size, size, 0.0}; // of a text only its height matters here
        });
        if ((box.centre().y() > divide) == (head > divide))
            half.items.push_back(item);
    }
    return &halves.emplace_back(std::move(half));
}

} // namespace

CourseSheets sheets_of_course(const std::vector<Sheet>& book, int course, const std::string& part) {
    const std::string title = "Course " + std::to_string(course);
    const std::string quoted = "'" + part + "'";
    CourseSheets found;
    for (std::size_t i = 0; i < book.size(); ++i) {
        const std::string& whole = book[i].title;
        if (whole.rfind(title, 0) != 0)
            continue;
        const std::string rest = whole.substr(title.size());
        if (!rest.empty() && rest[0] != ',' && rest[0] != ' ')
            continue; // another course
        const bool shared = rest.find(" and ") != std::string::npos;
        if (!part.empty() && rest.find(quoted) == std::string::npos)
            continue;
        found.places.push_back(i);
        found.sheets.push_back(shared ? half_of(book[i], quoted) : &book[i]);
        found.shared = found.shared || shared;
    }
    return found;
}

std::vector<const TextItem*> text_items(const Sheet& sheet) {
    std::vector<const TextItem*> items;
    for (const PaperItem& item : sheet.items)
        if (const auto* text = std::get_if<TextItem>(&item))
            items.push_back(text);
    return items;
}

std::vector<std::string> texts_of(const Sheet& sheet) {
    std::vector<std::string> texts;
    for (const TextItem* item : text_items(sheet))
        texts.push_back(item->text);
    return texts;
}

int count_of(const Sheet& sheet, const std::string& text) {
    const std::vector<std::string> texts = texts_of(sheet);
    return static_cast<int>(std::count(texts.begin(), texts.end(), text));
}

std::string all_text(const Sheet& sheet) {
    std::string all;
    for (const std::string& text : texts_of(sheet))
        all += text + " ";
    return all;
}

} // namespace coilwright::testing
