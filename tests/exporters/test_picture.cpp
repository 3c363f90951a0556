// The GLB as a client sees it: opened by three.js (npm) in headless Chromium, and measured on the
// picture.
#include "exporters/materials.hpp"
#include "exporters/model_formats.hpp"
#include "exporters/model_tree.hpp"
#include "tests/exporters/sample_plans.hpp"
#include "tests/exporters/scratch.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

namespace coilwright {
namespace {

struct Picture {
    int width = 0, height = 0;
    std::string bytes; // RGBA, rows from the top

    std::array<int, 3> at(int column, int row) const {
        std::array<int, 3> colour{};
        for (std::size_t k = 0; k < 3; ++k)
            colour[k] = static_cast<unsigned char>(
                bytes.at(4 * static_cast<std::size_t>(row * width + column) + k));
        return colour;
    }
};

struct Photographs {
    nlohmann::json told;
    Picture flat, south, east;
};

Photographs photographs(const SolidModel& model, const std::string& demo) {
    const ScratchDirectory scratch;
    put_bytes(scratch.path() / "model.glb", write_glb(model, "model")[0].bytes);
    Photographs made;
    made.told = nlohmann::json::parse(
        output_of({"node", COILWRIGHT_NODE_DIRECTORY "/photograph.js",
                   (scratch.path() / "model.glb").string(), scratch.path().string()}));
    const auto picture = [&](const char* name) {
        return Picture{made.told.at("width"), made.told.at("height"),
                       bytes_of(scratch.path() / name)};
    };
    made.flat = picture("flat.rgba");
    made.south = picture("south.rgba");
    made.east = picture("east.rgba");
    // Kept where a person can look at it, one file a design: tests run side by side.
    put_bytes(COILWRIGHT_NODE_DIRECTORY "/picture-" + demo + ".png",
              bytes_of(scratch.path() / "picture.png"));
    return made;
}

bool is_black(const Picture& picture, int column, int row) {
    const auto [r, g, b] = picture.at(column, row);
    return r + g + b < 30;
}

struct PixelBox {
    int left = 1 << 20, right = -1, top = 1 << 20, bottom = -1;
};

PixelBox box_of_black(const Picture& picture) {
    PixelBox box;
    for (int row = 0; row < picture.height; ++row)
        for (int column = 0; column < picture.width; ++column)
            if (is_black(picture, column, row)) {
                box.left = std::min(box.left, column);
                box.right = std::max(box.right, column);
                box.top = std::min(box.top, row);
                box.bottom = std::max(box.bottom, row);
            }
    return box;
}

int black_in_row(const Picture& picture, int row) {
    int count = 0;
    for (int column = 0; column < picture.width; ++column)
        count += is_black(picture, column, row) ? 1 : 0;
    return count;
}

void check_pictures(const std::string& demo, const std::vector<std::string>& materials) {
    CAPTURE(demo);
    const BuildingPlan plan = demo_plan(demo + ".toml");
    const SolidResult result = finished_shell_model(plan.schedule, plan.design, 0.01);
    REQUIRE(result.faults.empty());
    const Photographs seen = photographs(result.model, demo);
    CHECK(seen.told.at("parts").size() == result.model.parts.size());

    // The silhouettes against the true bounds: x east and z up seen from the south; north to the
    // right and z up seen from the east. The middle of the picture is 1 m above the origin.
    Vec3 low(1e9, 1e9, 1e9), high = -low;
    for (const SolidPart& part : result.model.parts)
        if (part.material != Material::ground) {
            const Bounds box = bounds(part.mesh);
            low = low.cwiseMin(box.low);
            high = high.cwiseMax(box.high);
        }
    const double per_metre = seen.told.at("pixels_per_metre");
    for (const auto& [picture, axis] : {std::pair{&seen.south, 0}, {&seen.east, 1}}) {
        const PixelBox box = box_of_black(*picture);
        CAPTURE(axis, box.left, box.right, box.top, box.bottom);
        CHECK(box.left == Approx(picture->width / 2.0 + low[axis] * per_metre).margin(1.5));
        CHECK(box.right + 1 == Approx(picture->width / 2.0 + high[axis] * per_metre).margin(1.5));
        CHECK(box.top == Approx(picture->height / 2.0 - (high.z() - 1) * per_metre).margin(1.5));
        CHECK(box.bottom + 1 ==
              Approx(picture->height / 2.0 - (low.z() - 1) * per_metre).margin(1.5));
        // Domes stand on their broad side.
        const int rows = box.bottom - box.top;
        CHECK(black_in_row(*picture, box.top + rows / 8) <
              black_in_row(*picture, box.bottom - rows / 8) / 2);
    }

    // In plain colours every pixel is one of its materials or the background, which is no material.
    std::map<std::array<int, 3>, int> counts;
    for (int row = 0; row < seen.flat.height; ++row)
        for (int column = 0; column < seen.flat.width; ++column)
            ++counts[seen.flat.at(column, row)];
    const int all = seen.flat.width * seen.flat.height;
    int background = counts[{0, 255, 0}], known = background;
    std::set<std::string> shown;
    for (const Material material : materials_of(result.model)) {
        const MaterialLook& looks = look(material);
        for (const auto& [colour, count] : counts) {
            bool same = true;
            const double wanted[] = {looks.red, looks.green, looks.blue};
            for (std::size_t k = 0; k < 3; ++k)
                same = same && std::abs(colour[k] - 255 * srgb_encoded(wanted[k])) <= 1.01;
            if (!same)
                continue;
            known += count;
            if (count > 40)
                shown.insert(looks.name);
        }
    }
    CHECK(known == all);
    CHECK(all - background > all / 8);
    CHECK(background > all / 8);
    for (const std::string& name : materials) {
        CAPTURE(name);
        CHECK(shown.count(name) == 1);
    }
}

} // namespace

TEST_CASE("a browser shows the home's GLB upright, in metres, in the colours of its materials") {
    check_pictures("home", {"EARTH_RENDER", "LIME_PLASTER", "EARTH_FLOOR", "TIMBER", "GROUND"});
}

TEST_CASE("a browser shows the grain store's GLB as it is") {
    check_pictures("grain-store", {"EARTH_RENDER", "LIME_PLASTER", "TIMBER", "GROUND"});
}

TEST_CASE("a browser shows the seed-house's GLB as it is") {
    check_pictures("seed-house", {"EARTH_RENDER", "LIME_PLASTER", "TIMBER", "GROUND"});
}

} // namespace coilwright
