// Outlines of openings: areas and perimeters of arches as the books have them.
#include "geometry/base/bearing.hpp"
#include "geometry/solids/hole_outline.hpp"
#include "tests/solids/sample_domes.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;

namespace {

HoleOutline outline(const Opening& opening, double foot = -1) {
    return hole_outline(make_opening_form(opening), foot);
}

double length_of(const HoleOutline& outline) {
    double length = 0;
    for (const SectionPiece& piece : outline.pieces)
        length += piece.length();
    return length;
}

/// By Green's theorem over fine chords; positive when run anticlockwise.
double area_of(const HoleOutline& outline) {
    double twice = 0;
    for (const SectionPiece& piece : outline.pieces)
        for (int i = 0; i < 2000; ++i) {
            const Vec2 a = piece.at(piece.length() * i / 2000),
                       b = piece.at(piece.length() * (i + 1) / 2000);
            twice += a.x() * b.y() - a.y() * b.x();
        }
    return twice / 2;
}

} // namespace

TEST_CASE("every outline is closed, anticlockwise, and as wide as the opening at every height") {
    for (const Opening& opening : one_of_each_head()) {
        CAPTURE(opening.id);
        const HoleOutline closed = outline(opening);
        CHECK_FALSE(closed.open);
        for (std::size_t i = 0; i < closed.pieces.size(); ++i) {
            const SectionPiece& next = closed.pieces[(i + 1) % closed.pieces.size()];
            CHECK((closed.pieces[i].end - next.start).norm() < 1e-12);
        }
        CHECK(area_of(closed) > 0);
        const OpeningForm form = make_opening_form(opening);
        for (const SectionPiece& piece : closed.pieces)
            for (int i = 1; i < 20; ++i) {
                const Vec2 at = piece.at(piece.length() * i / 20);
                const bool level =
                    std::abs(piece.start.y() - piece.end.y()) < 1e-12 && piece.radius == 0;
                if (!level && at.y() < form.top - 1e-5)
                    CHECK(std::abs(at.x()) == Approx(half_width(form, at.y())).margin(1e-7));
            }
    }
}

TEST_CASE("arches of a span of 1: areas and lengths") {
    // Equilateral arch: two circular segments of 60 degrees and the triangle between; drop arch
    // with arc radius 3/4 of the span. Reckoned from the circle.
    const Opening equilateral = sample_opening("a", HeadKind::pointed, 0, 1, 0, std::sqrt(0.75));
    CHECK(area_of(outline(equilateral)) == Approx(0.614185).margin(1e-6));
    CHECK(length_of(outline(equilateral)) == Approx(1 + 2.094395).margin(1e-6));
    const Opening drop =
        sample_opening("b", HeadKind::pointed, 0, 1, 0, std::sqrt(0.5), std::sqrt(0.5));
    CHECK(area_of(outline(drop)) == Approx(0.515638).margin(1e-6));
    CHECK(length_of(outline(drop)) == Approx(1 + 1.846439).margin(1e-6));
    const Opening half_round = sample_opening("c", HeadKind::round, 0, 1, 0, 0.5);
    CHECK(area_of(outline(half_round)) == Approx(pi / 8).margin(1e-6));
    const Opening vent = sample_opening("d", HeadKind::circle, 0, 1, 0.2, 1);
    CHECK(area_of(outline(vent)) == Approx(pi / 4).margin(1e-6));
    CHECK(length_of(outline(vent)) == Approx(pi));
    // Circular segment of half-span 0.5, rise 0.25: radius 0.625, half-angle asin 0.8.
    const Opening segment = sample_opening("e", HeadKind::segmental, 0, 1, 0, 0.25, 0.25);
    const double half_angle = std::asin(0.8);
    CHECK(area_of(outline(segment)) ==
          Approx(0.625 * 0.625 * (half_angle - std::sin(2 * half_angle) / 2)).margin(1e-6));
}

TEST_CASE("an opening whose sill is not above the wall's foot is open there") {
    const Opening door = sample_opening("door", HeadKind::square, 0, 0.9, 0, 2);
    const HoleOutline open = outline(door, 0);
    CHECK(open.open);
    REQUIRE(open.pieces.size() == 3);
    CHECK(open.pieces.front().start == Vec2(0.45, 0));
    CHECK(open.pieces.back().end == Vec2(-0.45, 0));
    CHECK_FALSE(outline(door, -0.381).open);
}

TEST_CASE("a head that starts at the sill has no jambs") {
    CHECK(outline(sample_opening("niche", HeadKind::round, 0, 1, 0.3, 0.5)).pieces.size() == 2);
    CHECK(outline(sample_opening("door", HeadKind::round, 0, 1, 0.3, 1.5)).pieces.size() == 4);
    CHECK(outline(sample_opening("point", HeadKind::pointed, 0, 1, 0.3, 1.5)).pieces.size() == 5);
}
