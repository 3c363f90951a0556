// The small tools of the layout: boxes, scales, lines of text, tables' widths, labels.
#include "geometry/drawing/dimension.hpp"
#include "geometry/drawing/pen.hpp"
#include "geometry/drawing/placer.hpp"
#include "geometry/drawing/ring_shapes.hpp"
#include "geometry/drawing/scale.hpp"
#include "geometry/drawing/spread.hpp"
#include "geometry/drawing/table.hpp"
#include "geometry/drawing/text_layout.hpp"
#include "tests/support/seeded.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;

namespace {

/// Every byte as wide as half its size: so that widths can be reckoned by hand.
TextExtent plain_measure(const std::string& text, double size, bool) {
    return {0.5 * size * static_cast<double>(text.size()), 0.7 * size, 0.2 * size};
}

} // namespace

TEST_CASE("Scales are those of a scale rule, the largest that fits") {
    // 4 m in 100 mm: 1:40 would fit exactly but is on no rule (ISO 5455 and triangular rules).
    CHECK(largest_scale(4, 4, 100, 100, DisplayUnit::metres).per == 50);
    CHECK(largest_scale(2, 5, 100, 100, DisplayUnit::metres).per == 50);
    CHECK(largest_scale(2.5, 1, 100, 100, DisplayUnit::metres).per == 25);
    CHECK(largest_scale(2.5, 1, 100, 100, DisplayUnit::metres).text == "1:25");
    // 1/4 in to the foot is one to 48, by definition of the foot.
    const Scale quarter = largest_scale(12 * 0.3048, 1, 100, 100, DisplayUnit::feet);
    CHECK(quarter.per == 48);
    CHECK(quarter.text == "1/4 in = 1 ft (1:48)");
    CHECK(std::abs(quarter.on_paper(0.3048) - 25.4 / 4) < 1e-12);
    for (double size = 0.001; size < 1000; size *= 1.3)
        for (const DisplayUnit unit : {DisplayUnit::feet, DisplayUnit::metres}) {
            const Scale scale = largest_scale(size, size / 2, 90, 90, unit);
            CHECK(scale.on_paper(size) <= std::max(90.0, size));
        }
}

TEST_CASE("Lines are broken at blanks, and words only where they alone are too wide") {
    const auto lines = wrapped("one two three fourteen", 10, 2, false, plain_measure);
    CHECK(lines == std::vector<std::string>{"one two", "three", "fourteen"});
    CHECK(wrapped("abcdefghijklmno", 10, 2, false, plain_measure) ==
          std::vector<std::string>{"abcdefghij", "klmno"});
    CHECK(wrapped("", 10, 2, false, plain_measure).size() == 1);
    CHECK(wrapped("a b c d e f", 1, 2, false, plain_measure, 3).size() == 3);
    // Nothing is lost and nothing is too wide, whatever the words.
    for (std::uint64_t seed = 1; seed <= 50; ++seed) {
        CAPTURE(seed);
        Seeded random(seed);
        std::string text, letters;
        for (int word = random.whole(1, 30); word > 0; --word) {
            for (int i = random.whole(1, 14); i > 0; --i) {
                const std::string sign = random.coin() ? "m" : "é"; // one and two bytes
                text += sign;
                letters += sign;
            }
            text += ' ';
        }
        std::string back;
        for (const std::string& line : wrapped(text, 9.3, 2, false, plain_measure, 1000)) {
            CHECK(plain_measure(line, 2, false).width <= 9.3);
            for (const char byte : line)
                if (byte != ' ')
                    back += byte;
        }
        CHECK(back == letters);
    }
}

TEST_CASE("What is cut short ends in an ellipsis and fits") {
    CHECK(shortened("short", 10, 2, false, plain_measure) == "short");
    const std::string cut = shortened("a name that is too long", 10, 2, false, plain_measure);
    CHECK(cut.substr(cut.size() - 3) == "…");
    CHECK(plain_measure(cut, 2, false).width <= 10);
    // A megabyte of text is cut without measuring it again and again.
    CHECK(shortened(std::string(1 << 20, 'x'), 10, 2, false, plain_measure).size() < 20);
    CHECK(fitting_size("1234567890", 10, 4, 1, false, plain_measure) == Approx(2).epsilon(0.01));
    CHECK(fitting_size("1234567890", 1, 4, 1, false, plain_measure) == 1);
}

TEST_CASE("A table is as wide as its cells and never wider than its place") {
    Table table;
    table.columns = {{{"Course"}, Align::left, false}, {{"Setting"}, Align::right, true}};
    table.rows = {{"1", "4 ft 6 in"}, {"2", "4 ft 5-7/8 in"}};
    CHECK(lay_out(table, 200, 4, 3, false, plain_measure).size == 4);
    const TableLayout small = lay_out(table, 35, 4, 3, false, plain_measure);
    CHECK(small.size < 4);
    CHECK(small.width <= 35 + 1e-9);
    CHECK(lay_out(table, 12, 4, 3, false, plain_measure).width <= 12 + 1e-9);
    CHECK(lay_out(table, 100, 4, 3, true, plain_measure).width == Approx(100));
}

TEST_CASE("Labels on a line part as little as they must") {
    // Free ones stay.
    CHECK(spread({{10, 4}, {20, 4}}, 0, 30) == std::vector<double>{10, 20});
    // Two at one place share it evenly.
    CHECK(spread({{10, 4}, {10, 4}}, 0, 30) == std::vector<double>{8, 12});
    // At the edge they go inwards.
    CHECK(spread({{0, 4}, {0, 4}}, 0, 30) == std::vector<double>{2, 6});
    CHECK(spread({{10, 20}, {10, 20}}, 0, 30).empty());
    for (std::uint64_t seed = 1; seed <= 200; ++seed) {
        CAPTURE(seed);
        Seeded random(seed);
        std::vector<SpreadLabel> labels;
        double at = 0, total = 0;
        for (int i = random.whole(1, 20); i > 0; --i) {
            at += random.between(0, 6);
            labels.push_back({at, random.between(1, 8)});
            total += labels.back().width;
        }
        const double high = std::max(total, random.between(0, 120));
        const std::vector<double> middles = spread(labels, 0, high);
        REQUIRE(middles.size() == labels.size());
        for (std::size_t i = 0; i < labels.size(); ++i) {
            CHECK(middles[i] - labels[i].width / 2 >= -1e-9);
            CHECK(middles[i] + labels[i].width / 2 <= high + 1e-9);
            if (i > 0)
                CHECK(middles[i] - middles[i - 1] >=
                      (labels[i].width + labels[i - 1].width) / 2 - 1e-9);
        }
    }
}

TEST_CASE("Turned rectangles overlap where their areas do") {
    const Corners unit = corners(PaperBox{0, 0, 2, 2});
    CHECK(overlap(unit, corners(PaperBox{1, 1, 3, 3})));
    CHECK_FALSE(overlap(unit, corners(PaperBox{2, 0, 4, 2}))); // a touch is none
    CHECK_FALSE(overlap(unit, corners(PaperBox{3, 3, 4, 4})));
    // A square on its corner, 2.1 from the middle: its upright box meets, it does not.
    const double r = 1.3;
    const Corners diamond{Vec2(3.1, 3.1 - r), Vec2(3.1 + r, 3.1), Vec2(3.1, 3.1 + r),
                          Vec2(3.1 - r, 3.1)};
    CHECK(overlap(unit, corners(bounds(diamond))));
    CHECK_FALSE(overlap(unit, diamond));
    // Against counted points, seeded.
    for (std::uint64_t seed = 1; seed <= 200; ++seed) {
        CAPTURE(seed);
        Seeded random(seed);
        const auto any = [&] {
            const Vec2 from(random.between(-3, 3), random.between(-3, 3));
            const double turn = random.between(0, 2 * pi), length = random.between(0.5, 4);
            return corners(from, from + length * Vec2(std::cos(turn), std::sin(turn)),
                           random.between(0.2, 2));
        };
        const Corners a = any(), b = any();
        bool shared = false;
        for (int i = 1; i < 40 && !shared; ++i)
            for (int k = 1; k < 40 && !shared; ++k) {
                const Vec2 point = a[0] + (a[1] - a[0]) * (i / 40.0) + (a[3] - a[0]) * (k / 40.0);
                const Vec2 x = b[1] - b[0], y = b[3] - b[0], off = point - b[0];
                const double u = off.dot(x) / x.squaredNorm(), v = off.dot(y) / y.squaredNorm();
                shared = u > 0 && u < 1 && v > 0 && v < 1;
            }
        if (shared) // points can miss a small overlap, but not find one that is not there
            CHECK(overlap(a, b));
    }
}

TEST_CASE("Bounds hold the bulge of arcs") {
    FillItem half; // a half circle to the right of a line from (0, 0) to (0, 2)
    half.loops.push_back({{0, 0}, {{{0, 2}, 1}, {{0, 0}, 0}}});
    const PaperBox box = bounds(PaperItem(half), plain_measure);
    CHECK(box.left == Approx(0).margin(1e-12));
    CHECK(box.right == Approx(1));
    CHECK(box.bottom == Approx(0).margin(1e-12));
    CHECK(box.top == Approx(2));
    const PaperBox arc = bounds(PaperItem(ArcItem{{0, 0}, 1, 0.1, 3, {0, {0}, {}}}), plain_measure);
    CHECK(arc.top == Approx(1));
    CHECK(arc.bottom == Approx(std::sin(0.1)));
}

TEST_CASE("A label takes its place, and the next goes elsewhere") {
    Placer placer({0, 0, 100, 100}, plain_measure);
    const std::vector<TextItem> candidates{text_at({10, 10}, "one", 4),
                                           text_at({10, 30}, "one", 4)};
    CHECK(placer.place(candidates)->at.y() == 10);
    CHECK(placer.place(candidates)->at.y() == 30);
    CHECK_FALSE(placer.place(candidates));
    // Not over a line, not over the edge, not with a leader through another text.
    placer.take_line({0, 50}, {100, 50});
    CHECK_FALSE(placer.place({text_at({10, 49}, "two", 4)}));
    CHECK_FALSE(placer.place({text_at({97, 80}, "two", 4)}));
    CHECK_FALSE(placer.place_led({text_at({10, 2}, "led", 4)}, {11, 25}, 3));
    CHECK(placer.place_led({text_at({40, 2}, "led", 4)}, {40, 25}, 3));
    CHECK_FALSE(placer.place_disc({{12, 11}}, 2, {50, 20}));
    CHECK(placer.place_disc({{12, 11}, {60, 20}}, 2, {50, 20})->x() == 60);
}

TEST_CASE("A dimension's figure stands on its line, or beyond an end that is free") {
    const auto figure = [](double length, bool block_end) {
        Sheet sheet;
        Placer placer({0, 0, 200, 200}, plain_measure);
        if (block_end)
            placer.take(PaperBox{100 + length, 100, 160, 130});
        add_dimension(sheet, placer, {100, 100}, {100 + length, 100}, {1, 0}, 10, "6 ft 8 in", 4);
        return std::get<TextItem>(sheet.items.back());
    };
    CHECK(figure(60, false).at.x() == Approx(130)); // 18 mm of figure on 60 of line
    CHECK(figure(10, false).at.x() > 110);
    CHECK(figure(10, true).at.x() < 100);
    CHECK(figure(60, false).at.y() == Approx(111.1));
}

TEST_CASE("A tube's outline has the area of its part of the ring") {
    Ring ring;
    ring.inside_radius = 2;
    ring.outside_radius = 3;
    ring.centre_radius = 2.5;
    Run run;
    run.closed = true;
    LaidTube tube;
    tube.start_bearing = 30;
    tube.end_bearing = 30 + 250;
    run.tubes = {tube};
    const FillItem fill = band_fill(tube_shape(ring, run, run.tubes[0]), {{0, 0}, 1}, {0});
    // Green's theorem over chords and circle segments: (theta - sin theta) r^2 / 2 each.
    double area = 0;
    Vec2 from = fill.loops[0].from;
    for (const FillItem::Edge& edge : fill.loops[0].edges) {
        area += (from.x() * edge.to.y() - from.y() * edge.to.x()) / 2;
        if (edge.bulge != 0) {
            const double theta = 4 * std::atan(std::abs(edge.bulge));
            const double radius = (edge.to - from).norm() / (2 * std::sin(theta / 2));
            area += (edge.bulge > 0 ? 1 : -1) * (theta - std::sin(theta)) * radius * radius / 2;
        }
        from = edge.to;
    }
    CHECK(std::abs(area) == Approx(250.0 / 360 * pi * (9 - 4)));
}
