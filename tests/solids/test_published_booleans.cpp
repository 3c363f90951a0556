// Volumes that any handbook has, through the Booleans that judge the shells: were these wrong,
// their verdict on a shell would be worth nothing. They come nearer as facets grow finer, at the
// rate of inscribed facets: a quarter of the error for twice the edges to a circle.
#include "geometry/solids/mesh.hpp"
#include "tests/solids/boolean_oracle.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <functional>

using namespace coilwright;

namespace {

/// A circle of radius r; `turn` in edges keeps its corners off the level of another's.
std::vector<Vec2> circle(double r, int around, double turn) {
    std::vector<Vec2> outline;
    for (int i = 0; i < around; ++i) {
        const double angle = 2 * pi * (i + turn) / around;
        outline.emplace_back(r * std::cos(angle), r * std::sin(angle));
    }
    return outline;
}

/// A cylinder along x or y, from -reach to reach.
Mesh cylinder(double r, const Vec2& axis, double reach, int around, double turn) {
    return carried_body(circle(r, around, turn), {0, 0}, axis, -reach, reach);
}

Mesh union_of(Mesh a, Mesh b) {
    return by_booleans({{true, std::move(a), {}}, {true, std::move(b), {}}});
}

Mesh difference_of(Mesh a, std::vector<Mesh> taken) {
    std::vector<BooleanStep> steps{{true, std::move(a), {}}};
    for (Mesh& body : taken)
        steps.push_back({false, std::move(body), {}});
    return by_booleans(steps);
}

/// `volume_with` edges to a circle against what is published.
void check_converges(const std::function<double(int)>& volume_with, double published) {
    const double coarse = std::abs(volume_with(32) - published);
    const double fine = std::abs(volume_with(64) - published);
    const double finest = std::abs(volume_with(128) - published);
    CHECK(finest < 2e-3 * published);
    CHECK(coarse / fine == Approx(4).epsilon(0.1));
    CHECK(fine / finest == Approx(4).epsilon(0.1));
}

} // namespace

TEST_CASE("two equal cylinders that cross have 16/3 of the radius cubed in common") {
    // Steinmetz; known since Archimedes (The Method). From memory.
    check_converges(
        [](int around) {
            const Mesh a = cylinder(1, {1, 0}, 1.5, around, 0.25);
            const Mesh b = cylinder(1, {0, 1}, 1.5, around, 0.4);
            return volume(a) + volume(b) - volume(union_of(a, b));
        },
        16.0 / 3);
}

TEST_CASE("a groin vault over a square of twice the radius encloses 2 pi - 8/3") {
    // Two half cylinders of radius and half-length 1, less what they have in common, half of 16/3:
    // elementary, from memory. They are cut out of a block that is wider than the square, so that
    // no faces coincide; the arms beyond the square are 4 half cylinders 0.25 long.
    check_converges(
        [](int around) {
            const Mesh block = carried_body({{-1.25, 0}, {1.25, 0}, {1.25, 1.5}, {-1.25, 1.5}},
                                            {0, 0}, {1, 0}, -1.25, 1.25);
            const double left =
                volume(difference_of(block, {cylinder(1, {1, 0}, 1.5, around, 0.25),
                                             cylinder(1, {0, 1}, 1.5, around, 0.4)}));
            return volume(block) - left - 4 * 0.25 * pi / 2;
        },
        2 * pi - 8.0 / 3);
}

TEST_CASE("a sphere bored through its centre loses two caps and a cylinder") {
    // Radius 2 by a bore of radius 1/2: 4/3 pi (R^3 - (R^2 - a^2)^(3/2)) = 3.091982, the
    // napkin-ring problem of any calculus text; from memory.
    const double published = 4.0 / 3 * pi * (8 - std::pow(4 - 0.25, 1.5));
    CHECK(published == Approx(3.091982).margin(1e-6));
    check_converges(
        [](int around) {
            const auto radius = [](double z) { return std::sqrt(std::max(0.0, 4 - z * z)); };
            std::vector<double> heights;
            for (int i = 1; i < around / 2; ++i)
                heights.push_back(-2 * std::cos(2 * pi * i / around));
            const Mesh sphere = revolved_body(radius, heights, around, 0.001);
            // Through the side, where the sphere's facets are small.
            const Mesh bore = cylinder(0.5, {1, 0}, 2.5, around, 0.25);
            return volume(sphere) - volume(difference_of(sphere, {bore}));
        },
        published);
}
