#include "exporters/context_obj.hpp"

#include "exporters/model_formats.hpp"
#include "tests/exporters/comma_locale.hpp"
#include "tests/exporters/readers.hpp"
#include "tests/exporters/sample_models.hpp"

#include <catch2/catch.hpp>

namespace coilwright {
namespace {

constexpr const char* cube = "# a cube\n"
                             "mtllib none.mtl\no cube\n"
                             "v 0 0 0\nv 1 0 0\nv 1 2 0\nv 0 2 0\n"
                             "v 0 0 3\nv 1 0 3\nv 1 2 3\nv 0 2 3\n"
                             "vn 0 0 1\nusemtl wood\ns off\n"
                             "f 4 3 2 1\nf 5//1 6//1 7//1 8//1\nf 1 2 6 5\n"
                             "f -7 -6 -2 -3\nf 3 4 8 7\nf 4 1 5 8\n";

} // namespace

TEST_CASE("an OBJ file of other origin is read as triangles, in every locale") {
    const CommaLocale commas;
    const ContextShape shape = read_context_obj(cube);
    CHECK(shape.fault == "");
    CHECK(shape.mesh.vertices.size() == 8);
    CHECK(shape.mesh.triangles.size() == 12);
    CHECK(volume(shape.mesh) == Approx(6));
    CHECK(read_context_obj("v 0.5 1e-1 -2.25\r\nv 1 0 0\r\nv 0 1 0\r\nf 1 2 3\r\n")
              .mesh.vertices.at(0) == Vec3(0.5, 0.1, -2.25));
}

TEST_CASE("a broken OBJ file is refused with its line") {
    const auto fault = [](const std::string& text) {
        const ContextShape shape = read_context_obj(text);
        return std::to_string(shape.line) + " " + shape.fault;
    };
    const std::string three = "v 0 0 0\nv 1 0 0\nv 0 1 0\n";
    CHECK(fault(three + "f 1 2 4\n") == "4 a corner names no vertex above it");
    CHECK(fault(three + "f 1 2 0\n") == "4 a corner names no vertex above it");
    CHECK(fault(three + "f 1 2 -4\n") == "4 a corner names no vertex above it");
    CHECK(fault(three + "f 1 2 x\n") == "4 a corner names no vertex above it");
    CHECK(fault(three + "f 1 2 99999999999999999999\n") == "4 a corner names no vertex above it");
    CHECK(fault(three + "f 1 2\n") == "4 a face has three corners or more");
    CHECK(fault("v 0 0 0\nv 1 zero 0\n").rfind("2 a coordinate is no number", 0) == 0);
    CHECK(fault("v 0 0 nan\n").rfind("1 a coordinate is no number", 0) == 0);
    CHECK(fault("v 0 0 1e300\n").rfind("1 a coordinate is no number", 0) == 0);
    CHECK(fault("v 0 0\n") == "1 a vertex has three numbers");
    CHECK(fault(three) == "0 it has no face");
    CHECK(fault("") == "0 it has no face");
    CHECK(fault(std::string("\0\xff\x80 binary", 10)) == "0 it has no face");
    CHECK(fault(three + "f 1 1 1\n") == "0 none of its faces has an area");
}

TEST_CASE("an object is scaled, turned and moved as the design says, without mirroring") {
    const Mesh mesh = read_context_obj(cube).mesh;
    ContextObject object;
    object.metres = 0.5;
    object.at = {10, 20};
    object.base = 0.25;
    object.bearing = {90}; // its +y points east
    Bounds box = bounds(placed_mesh(mesh, object));
    CHECK(box.low.isApprox(Vec3(10, 19.5, 0.25)));
    CHECK(box.high.isApprox(Vec3(11, 20, 1.75)));
    CHECK(volume(placed_mesh(mesh, object)) == Approx(6.0 / 8));
    object.y_up = true; // height 2, its -z (3 long) points east
    box = bounds(placed_mesh(mesh, object));
    CHECK(box.low.isApprox(Vec3(8.5, 19.5, 0.25)));
    CHECK(box.high.isApprox(Vec3(10, 20, 1.25)));
    CHECK(volume(placed_mesh(mesh, object)) == Approx(6.0 / 8));
}

TEST_CASE("objects stand in the models under a group of their own") {
    SolidModel model = small_building();
    ContextObject bed, chair;
    bed.id = "bed";
    chair.id = "chair";
    add_context(model, bed, read_context_obj(cube).mesh);
    add_context(model, chair, read_context_obj(cube).mesh);
    const std::vector<ReadPart> parts = read_by_assimp(write_glb(model, "m")[0].bytes, "glb");
    int found = 0;
    for (const ReadPart& part : parts)
        if (part.material == "FURNISHING") {
            ++found;
            CHECK(part.path[part.path.size() - 2] == "CONTEXT_OBJECTS");
            CHECK((part.path.back() == "CONTEXT_BED" || part.path.back() == "CONTEXT_CHAIR"));
            CHECK(volume(part.mesh) == Approx(6));
        }
    CHECK(found == 2);
}

} // namespace coilwright
