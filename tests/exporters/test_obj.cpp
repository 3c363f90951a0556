#include "exporters/materials.hpp"
#include "exporters/model_formats.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "tests/exporters/readers.hpp"
#include "tests/exporters/sample_models.hpp"

#include <catch2/catch.hpp>
#include <sstream>

namespace coilwright {
namespace {

struct ObjPair {
    std::string obj, mtl;
};

ObjPair obj_of(const SolidModel& model) {
    const std::vector<OutputFile> files = write_obj(model, "courses");
    REQUIRE(files.size() == 2);
    CHECK(files[0].path == "courses.obj");
    CHECK(files[1].path == "courses.mtl");
    return {files[0].bytes, files[1].bytes};
}

// Wavefront's text form: lines that begin with a word.
std::vector<std::string> lines_that_begin(const std::string& text, const std::string& word) {
    std::vector<std::string> lines;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);)
        if (line.substr(0, word.size() + 1) == word + " ")
            lines.push_back(line.substr(word.size() + 1));
    return lines;
}

double worst_distance(const Mesh& read, const Mesh& made) {
    double worst = 0;
    for (std::size_t k = 0; k < made.triangles.size(); ++k)
        for (std::size_t c = 0; c < 3; ++c)
            worst = std::max(
                worst, (read.vertices[read.triangles[k][c]] - made.vertices[made.triangles[k][c]])
                           .cwiseAbs()
                           .maxCoeff());
    return worst;
}

} // namespace

TEST_CASE("tinyobjloader reads every part of an OBJ file as the solid it was") {
    for (const SolidModel& model : {small_building(), fine_torus()}) {
        const ObjPair files = obj_of(model);
        const ReadObj read = read_by_tinyobj(files.obj, files.mtl);
        CHECK(read.warnings.empty());
        REQUIRE(read.shapes.size() == model.parts.size());
        for (std::size_t k = 0; k < model.parts.size(); ++k) {
            const SolidPart& part = model.parts[k];
            const ReadShape& shape = read.shapes[k];
            CAPTURE(part.slug);
            CHECK(shape.name == part.slug);
            CHECK(shape.material == look(part.material).name);
            CHECK(shape.normals == 0);
            CHECK(shape.mesh.vertices.size() == part.mesh.vertices.size());
            REQUIRE(shape.mesh.triangles.size() == part.mesh.triangles.size());
            CHECK(worst_distance(shape.mesh, part.mesh) <= 0.5e-6 + 1e-12);
            CHECK(volume(shape.mesh) == Approx(part.volume).epsilon(1e-5));
            if (part.mesh.triangles.size() < 1000)
                CHECK(check_mesh(shape.mesh, false).solid());
        }
    }
}

TEST_CASE("Assimp reads the same parts from an OBJ file") {
    const SolidModel model = small_building();
    const std::vector<ReadPart> parts = read_by_assimp(obj_of(model).obj, "obj");
    REQUIRE(parts.size() == model.parts.size());
    for (std::size_t k = 0; k < parts.size(); ++k) {
        CHECK(parts[k].path.back() == model.parts[k].slug);
        CHECK(parts[k].mesh.triangles.size() == model.parts[k].mesh.triangles.size());
        CHECK(volume(parts[k].mesh) == Approx(model.parts[k].volume).epsilon(1e-5));
    }
}

TEST_CASE("an OBJ file says its unit and axes and names each part twice over") {
    const SolidModel model = small_building();
    const ObjPair files = obj_of(model);
    CHECK(files.obj.find("# Unit: metre. Axes: x east, y north, z up") != std::string::npos);
    CHECK(lines_that_begin(files.obj, "mtllib") == std::vector<std::string>{"courses.mtl"});
    const std::vector<std::string> names{"VAULT_C01_T1", "VAULT_C02_T1", "VAULT_LINTEL"};
    CHECK(lines_that_begin(files.obj, "o") == names);
    CHECK(lines_that_begin(files.obj, "g") == names);
    CHECK(lines_that_begin(files.obj, "usemtl") ==
          std::vector<std::string>{"EARTH", "EARTH_CAP", "TIMBER"});
    CHECK(lines_that_begin(files.obj, "vn").empty());
    CHECK(lines_that_begin(files.obj, "s") == std::vector<std::string>{"off"});
    CHECK(lines_that_begin(files.mtl, "newmtl") ==
          std::vector<std::string>{"EARTH", "EARTH_CAP", "TIMBER"});
}

TEST_CASE("a design's name cannot break out of its comment") {
    SolidModel model = small_building();
    model.name = "x\nv 9 9 9\r\nf 1 2 3";
    const ObjPair files = obj_of(model);
    CHECK(read_by_tinyobj(files.obj, files.mtl).shapes.size() == 3);
    std::size_t vertices = 0;
    for (const SolidPart& part : model.parts)
        vertices += part.mesh.vertices.size();
    CHECK(lines_that_begin(files.obj, "v").size() == vertices);
    CHECK(lines_that_begin(files.mtl, "newmtl").size() == 3);
}

TEST_CASE("an OBJ file goes to nanometres where a face would vanish in micrometres") {
    SolidModel model = small_building();
    CHECK(lines_that_begin(obj_of(model).obj, "v")[0] == "1.560000 0.000000 0.063500");
    // A sliver 0.2 um across, 100 m from the origin.
    model.parts = {sample_part("SLIVER", "", box_mesh({100, -100, 0}, {100.0000002, -99, 1}))};
    const ObjPair files = obj_of(model);
    const ReadObj read = read_by_tinyobj(files.obj, files.mtl);
    CHECK(check_mesh(read.shapes.at(0).mesh, false).solid());
    CHECK(volume(read.shapes.at(0).mesh) == Approx(2e-7).epsilon(0.005));
}

TEST_CASE("an OBJ file names coordinates below zero and whole metres right") {
    SolidModel model;
    model.name = "box";
    model.parts = {sample_part("BOX", "", box_mesh({-1, -0.0000004, -12.000001}, {0, 3, -0.5}))};
    const std::vector<std::string> vertices = lines_that_begin(obj_of(model).obj, "v");
    CHECK(vertices.front() == "-1.000000 0.000000 -12.000001");
    CHECK(vertices.back() == "0.000000 3.000000 -0.500000");
}

TEST_CASE("an OBJ file in another unit and with +Y up says so and is so") {
    SolidModel model;
    model.name = "box";
    model.parts = {sample_part("BOX", "", box_mesh({0, 0, 0}, {0.0254, 0.3048, 1}))};
    const auto vertices = [&](FileUnit unit, bool y_up) {
        const std::string obj = write_obj(model, "m", {unit, y_up})[0].bytes;
        CHECK(obj.find("# Unit: " + unit_name(unit) +
                       (y_up ? ". Axes: x east, y up, -z north"
                             : ". Axes: x east, y north, z up")) != std::string::npos);
        return lines_that_begin(obj, "v").back();
    };
    CHECK(vertices(FileUnit::millimetre, false) == "25.400 304.800 1000.000");
    CHECK(vertices(FileUnit::centimetre, true) == "2.5400 100.0000 -30.4800");
    CHECK(vertices(FileUnit::inch, false) == "1.00000 12.00000 39.37008");
    CHECK(vertices(FileUnit::foot, true) == "0.083333 3.280840 -1.000000");
}

} // namespace coilwright
