// Shaded pictures: what covers what, how large, in which light, and the file's own format.
#include "exporters/materials.hpp"
#include "exporters/shaded_picture.hpp"
#include "tests/exporters/sample_plans.hpp"
#include "tests/exporters/scratch.hpp"
#include "tests/support/demos.hpp"

#include <Eigen/Geometry>
#include <catch2/catch.hpp>

#include <cmath>
#include <random>

namespace coilwright {
namespace {

/// A box with its faces outwards.
SolidPart box(Vec3 low, Vec3 high, Material material) {
    SolidPart part;
    part.material = material;
    for (int i = 0; i < 8; ++i)
        part.mesh.vertices.emplace_back(i & 1 ? high.x() : low.x(), i & 2 ? high.y() : low.y(),
                                        i & 4 ? high.z() : low.z());
    part.mesh.triangles = {{0, 2, 1}, {1, 2, 3}, {4, 5, 6}, {5, 7, 6}, {0, 1, 4}, {1, 5, 4},
                           {2, 6, 3}, {3, 6, 7}, {0, 4, 2}, {2, 4, 6}, {1, 3, 5}, {3, 7, 5}};
    return part;
}

std::array<int, 3> at(const Pixels& pixels, int x, int y) {
    const std::size_t i = 3 * static_cast<std::size_t>(y * pixels.width + x);
    return {pixels.values[i], pixels.values[i + 1], pixels.values[i + 2]};
}

bool is_white(const std::array<int, 3>& colour) {
    return colour == std::array<int, 3>{255, 255, 255};
}

double brightness(const std::array<int, 3>& colour) {
    return colour[0] + colour[1] + colour[2];
}

} // namespace

TEST_CASE("picture: a box covers the pixels of its outline") {
    // Seen level from the south: 4 m wide, 3 m high. As large as the picture allows: 94 % of it.
    SolidModel model;
    model.parts = {box({-2, -1, 0}, {2, 1, 3}, Material::earth)};
    const Pixels picture = shaded_picture(model, {Bearing{180}, 0, 400, 300});
    int covered = 0;
    for (int y = 0; y < picture.height; ++y)
        for (int x = 0; x < picture.width; ++x)
            covered += is_white(at(picture, x, y)) ? 0 : 1;
    CHECK(covered == Approx(0.94 * 400 * 0.94 * 300).epsilon(0.01));
    CHECK(is_white(at(picture, 5, 5)));
    CHECK_FALSE(is_white(at(picture, 200, 150)));
}

TEST_CASE("picture: what is nearer hides what is behind, and east is on the right from the south") {
    SolidModel model;
    model.parts = {box({-3, 0, 0}, {-1, 1, 2}, Material::lime_plaster),
                   box({1, 0, 0}, {3, 1, 2}, Material::earth),
                   box({-3, 3, 0}, {3, 4, 2}, Material::concrete)};
    const auto is_grey = [](const std::array<int, 3>& c) { return std::abs(c[0] - c[2]) <= 1; };
    const Pixels south = shaded_picture(model, {Bearing{180}, 0, 300, 200});
    CHECK(at(south, 60, 100)[0] > at(south, 240, 100)[0] + 40); // plaster is west, on the left
    CHECK_FALSE(is_grey(at(south, 60, 100)));
    CHECK_FALSE(is_grey(at(south, 240, 100)));
    CHECK(is_grey(at(south, 150, 100))); // between them the wall behind
    const Pixels north = shaded_picture(model, {Bearing{0}, 0, 300, 200});
    for (const int x : {60, 150, 240})
        CHECK(is_grey(at(north, x, 100)));
}

TEST_CASE("picture: a sunlit face sends back its material's share, a shaded one less") {
    // A floor seen from straight above beside a tower that throws a shadow on it.
    SolidModel model;
    model.parts = {box({-5, -5, -0.1}, {5, 5, 0}, Material::concrete),
                   box({-0.5, -0.5, 0}, {0.5, 0.5, 4}, Material::earth)};
    const Pixels picture = shaded_picture(model, {Bearing{180}, 60, 300, 300});
    // N 7 in sun from 42 degrees under the whole sky: 0.42 (0.95 sin 42 + 0.55), sRGB-encoded; in
    // shade 0.42 * 0.55.
    struct Patch {
        double value = 0;
        int count = 0;
        double x = 0, y = 0; // sums
    } lit, shaded;
    lit.value = 255 * srgb_encoded(0.42 * (0.95 * std::sin(42 * radians_per_degree) + 0.55));
    shaded.value = 255 * srgb_encoded(0.42 * 0.55);
    for (int y = 0; y < picture.height; ++y)
        for (int x = 0; x < picture.width; ++x)
            for (Patch* patch : {&lit, &shaded})
                if (std::abs(at(picture, x, y)[0] - patch->value) < 1.5 &&
                    std::abs(at(picture, x, y)[2] - patch->value) < 2.5) {
                    ++patch->count;
                    patch->x += x;
                    patch->y += y;
                }
    // The sun stands at 235 degrees, over the left shoulder of who looks from the south: the shadow
    // is that of 4 m / tan 42 = 4.44 m, 1.39 m wide, 6.2 of the floor's 100 square metres, some of
    // them behind the tower; it falls to the north-east, to the right and up.
    REQUIRE(lit.count > 0);
    CHECK(shaded.count > 0.045 * lit.count);
    CHECK(shaded.count < 0.068 * lit.count);
    CHECK(shaded.x / shaded.count > lit.x / lit.count + 0.1 * picture.width);
    CHECK(shaded.y / shaded.count < lit.y / lit.count);
}

TEST_CASE("picture: pixels show what a ray meets first") {
    const BuildingPlan plan = testing::demo_plan("washroom.toml");
    SolidModel model = finished_shell_model(plan.schedule, plan.design).model;
    for (SolidPart& part : model.parts) // told apart by colour: walls against all else
        part.material = part.material == Material::earth_render || part.material == Material::earth
                            ? Material::concrete
                            : Material::earth_floor;
    const PictureView view{Bearing{200}, 25, 240, 180};
    const Pixels picture = shaded_picture(model, view);
    // The same parallel view, reckoned here: right, up and towards the viewer.
    const double turn = view.from.degrees * radians_per_degree, rise = 25 * radians_per_degree;
    const Vec3 out(std::sin(turn), std::cos(turn), 0);
    const Vec3 toward = out * std::cos(rise) + Vec3(0, 0, std::sin(rise));
    const Vec3 right(-out.y(), out.x(), 0), up = toward.cross(right);
    Vec2 low(1e9, 1e9), high(-1e9, -1e9);
    for (const SolidPart& part : model.parts)
        for (const Vec3& vertex : part.mesh.vertices) {
            low = low.cwiseMin(Vec2(right.dot(vertex), up.dot(vertex)));
            high = high.cwiseMax(Vec2(right.dot(vertex), up.dot(vertex)));
        }
    const double per = std::min(0.94 * 240 / (high - low).x(), 0.94 * 180 / (high - low).y());
    std::mt19937 random(20261126);
    int checked = 0;
    for (int sample = 0; sample < 400; ++sample) {
        const int x = 5 + static_cast<int>(random() % static_cast<unsigned>(picture.width - 10));
        const int y = 5 + static_cast<int>(random() % static_cast<unsigned>(picture.height - 10));
        // Clear of edges: the pixel looks like its neighbours.
        bool plain = true;
        for (const auto& [dx, dy] : {std::pair{1, 0}, {-1, 0}, {0, 1}, {0, -1}})
            plain = plain && std::abs(brightness(at(picture, x + dx, y + dy)) -
                                      brightness(at(picture, x, y))) < 30;
        if (!plain)
            continue;
        const Vec2 middle = (low + high) / 2;
        const double sx = middle.x() + (x + 0.5 - picture.width / 2.0) / per,
                     sy = middle.y() - (y + 0.5 - picture.height / 2.0) / per;
        double nearest = -1e9;
        const SolidPart* met = nullptr;
        for (const SolidPart& part : model.parts)
            for (const auto& t : part.mesh.triangles) {
                const Vec3 a = part.mesh.vertices[t[0]];
                Eigen::Matrix3d system;
                system << part.mesh.vertices[t[1]] - a, part.mesh.vertices[t[2]] - a, -toward;
                if (std::abs(system.determinant()) < 1e-14)
                    continue;
                const Vec3 found = system.inverse() * (right * sx + up * sy - a);
                if (found.x() >= 0 && found.y() >= 0 && found.x() + found.y() <= 1 &&
                    found.z() > nearest) {
                    nearest = found.z();
                    met = &part;
                }
            }
        CAPTURE(x, y);
        const auto colour = at(picture, x, y);
        if (!met)
            CHECK(is_white(colour));
        else if (met->material == Material::concrete)
            CHECK(std::abs(colour[0] - colour[2]) <= 1); // grey
        else
            CHECK(colour[0] > colour[2] + 5); // brown
        ++checked;
    }
    CHECK(checked > 150);
}

TEST_CASE("picture: the PNG says what the pixels are") {
    SolidModel model;
    model.parts = {box({-2, -1, 0}, {2, 1, 3}, Material::timber)};
    const Pixels picture = shaded_picture(model, {Bearing{140}, 30, 123, 77});
    const ScratchDirectory scratch;
    const auto file = scratch.path() / "picture.png", raw = scratch.path() / "picture.rgb";
    put_bytes(file, png_of(picture));
    CHECK(output_of({"/usr/bin/python3", COILWRIGHT_SOURCE_DIR "/tests/exporters/read_png.py",
                     file.string(), raw.string()}) ==
          std::to_string(picture.width) + " " + std::to_string(picture.height) + "\n");
    const std::string values = bytes_of(raw);
    REQUIRE(values.size() == picture.values.size());
    CHECK(std::equal(values.begin(), values.end(), picture.values.begin(),
                     [](char a, std::uint8_t b) { return static_cast<std::uint8_t>(a) == b; }));
    CHECK(png_of(picture) == png_of(shaded_picture(model, {Bearing{140}, 30, 123, 77})));
    CHECK_THROWS(png_of(Pixels{}));
}

} // namespace coilwright
