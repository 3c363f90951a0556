// Figures of dimensions: each on its own line, or where none can take it for another's.
#include "geometry/drawing/pen.hpp"
#include "geometry/views/dimension_lines.hpp"

#include <catch2/catch.hpp>
#include <cmath>

using namespace coilwright;

namespace {

/// Letters of one width, so that the test knows what fits.
TextExtent even_letters(const std::string& text, double size, bool) {
    return {static_cast<double>(text.size()) * size * 0.5, size * 0.73, size * 0.2};
}

PaperDimension level(double from, double to, double y, const std::string& text) {
    return {{from, y}, {to, y}, {-1, 0}, 8, text, false};
}

/// What stands nearest under a figure of a level dimension: the line of which dimension.
std::size_t read_as(const std::vector<LaidDimension>& laid, const TextItem& figure) {
    std::size_t nearest = laid.size();
    double least = 4; // mm: farther away nothing is read as its line
    for (std::size_t i = 0; i < laid.size(); ++i) {
        const double low = std::min(laid[i].from.x(), laid[i].to.x());
        const double high = std::max(laid[i].from.x(), laid[i].to.x());
        const double away = std::abs(figure.at.y() - laid[i].from.y());
        if (figure.at.x() > low && figure.at.x() < high && away < least) {
            least = away;
            nearest = i;
        }
    }
    return nearest;
}

bool has_leader(const LaidDimension& laid) {
    for (const LineItem& line : laid.lines)
        for (const Vec2& point : line.points)
            if ((point - (laid.from + laid.to) / 2).norm() < 1e-9)
                return true;
    return false;
}

} // namespace

TEST_CASE("a figure too long for its line does not stand on its neighbour's") {
    // A chain of a short span between two long ones, as between poles: the short one's figure has
    // no room on its own line.
    Placer placer({0, 0, 200, 100}, even_letters);
    const std::vector<LaidDimension> laid =
        lay_dimensions(placer, {level(20, 90, 50, "1776 mm"), level(90, 94, 50, "1400 mm long"),
                                level(94, 180, 50, "2200 mm")});
    REQUIRE(laid.size() == 3);
    CHECK(read_as(laid, laid[0].figure) == 0);
    CHECK(read_as(laid, laid[2].figure) == 2);
    const std::size_t as = read_as(laid, laid[1].figure);
    CAPTURE(laid[1].figure.at.x(), laid[1].figure.at.y());
    CHECK((as == 1 || as == laid.size()));
    CHECK(has_leader(laid[1]));
}

TEST_CASE("a figure beyond the end of a line that has no neighbour stays beside it") {
    Placer placer({0, 0, 200, 100}, even_letters);
    const std::vector<LaidDimension> laid = lay_dimensions(placer, {level(90, 94, 50, "1400 mm")});
    REQUIRE(laid.size() == 1);
    CHECK(std::abs(laid[0].figure.at.y() - laid[0].from.y()) < 3);
    CHECK(std::abs(laid[0].figure.at.x() - 92) < 20);
}

TEST_CASE("a figure whose line is crossed in the middle stands aside on the same line") {
    Placer placer({0, 0, 200, 100}, even_letters);
    placer.take_line({100, 0}, {100, 100}); // a leader through the middle
    const std::vector<LaidDimension> laid = lay_dimensions(placer, {level(60, 140, 50, "2000 mm")});
    REQUIRE(laid.size() == 1);
    const double half = even_letters("2000 mm", laid[0].figure.size, false).width / 2;
    CHECK(read_as(laid, laid[0].figure) == 0);
    CHECK_FALSE(has_leader(laid[0]));
    CHECK(laid[0].figure.at.x() - half > 60);
    CHECK(laid[0].figure.at.x() + half < 140);
    CHECK(std::abs(laid[0].figure.at.x() - 100) > half);
}
