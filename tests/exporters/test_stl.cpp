#include "exporters/model_formats.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "tests/exporters/readers.hpp"
#include "tests/exporters/sample_models.hpp"
#include "tests/exporters/scratch.hpp"

#include <Eigen/Geometry>
#include <catch2/catch.hpp>
#include <cmath>

namespace coilwright {
namespace {

std::string stl_of(const SolidModel& model) {
    const std::vector<OutputFile> files = write_stl(model, "shell");
    REQUIRE(files.size() == 1);
    CHECK(files[0].path == "shell.stl");
    return files[0].bytes;
}

} // namespace

TEST_CASE("an STL file is binary, and no reader can take it for text") {
    const std::string bytes = stl_of(small_building());
    CHECK(bytes.substr(0, 5) != "solid");
    CHECK(bytes.substr(0, 80).find("millimetre") != std::string::npos);
    CHECK(read_stl(bytes).mesh.triangles.size() == 2 * 24 * 8 * 2 + 12);
}

TEST_CASE("each part of an STL file welds into the solid it was, in millimetres") {
    const SolidModel model = small_building();
    const ReadStl read = read_stl(stl_of(model));
    std::size_t first = 0;
    for (const SolidPart& part : model.parts) {
        CAPTURE(part.slug);
        const std::size_t last = first + part.mesh.triangles.size();
        const Mesh mesh = welded(some_triangles(read.mesh, first, last));
        first = last;
        CHECK(mesh.vertices.size() == part.mesh.vertices.size());
        CHECK(check_mesh(mesh, true).solid());
        CHECK(volume(mesh) == Approx(part.volume * 1e9).epsilon(1e-5));
        const Bounds box = bounds(mesh), made = bounds(part.mesh);
        CHECK((box.low - made.low * 1000).cwiseAbs().maxCoeff() < 2e-3);
        CHECK((box.high - made.high * 1000).cwiseAbs().maxCoeff() < 2e-3);
    }
    CHECK(first == read.mesh.triangles.size());
}

TEST_CASE("facet normals are of unit length and point out of the solid") {
    const ReadStl read = read_stl(stl_of(small_building()));
    double shortest = 1, worst_turn = 1;
    for (std::size_t k = 0; k < read.normals.size(); ++k) {
        const Vec3* corner = &read.mesh.vertices[3 * k];
        const Vec3 across = (corner[1] - corner[0]).cross(corner[2] - corner[0]).normalized();
        worst_turn = std::min(worst_turn, across.dot(read.normals[k]));
        shortest = std::min(shortest, read.normals[k].norm());
    }
    CHECK(shortest > 1 - 1e-6);
    CHECK(worst_turn > 1 - 1e-6);
}

TEST_CASE("Assimp reads an STL file as one mesh of the same size") {
    const SolidModel model = small_building();
    const std::vector<ReadPart> parts = read_by_assimp(stl_of(model), "stl");
    REQUIRE(parts.size() == 1);
    double whole = 0;
    std::size_t triangles = 0;
    for (const SolidPart& part : model.parts) {
        whole += part.volume * 1e9;
        triangles += part.mesh.triangles.size();
    }
    CHECK(parts[0].mesh.triangles.size() == triangles);
    CHECK(volume(parts[0].mesh) == Approx(whole).epsilon(1e-5));
}

// ADMesh, the checker of STL files: what it would have to mend, and the volume it finds.
TEST_CASE("ADMesh finds nothing to mend in an STL file") {
    SolidModel model = small_building();
    model.parts.resize(1);
    const ScratchDirectory scratch;
    for (const FileUnit unit : file_units()) {
        CAPTURE(unit_word(unit));
        const auto file = scratch.path() / "m.stl";
        put_bytes(file, write_stl(model, "m", {unit, true})[0].bytes);
        const std::string report = output_of({"admesh", file.string()});
        CAPTURE(report);
        const auto numbers = [&](const std::string& label) {
            const std::size_t at = report.find(label);
            REQUIRE(at != std::string::npos);
            return report.substr(at + label.size(), report.find('\n', at) - at - label.size());
        };
        CHECK(std::stoi(numbers("Number of parts       :")) == 1);
        CHECK(std::stod(numbers("Volume   :")) * std::pow(metres_in(unit), 3) ==
              Approx(model.parts[0].volume).epsilon(1e-4));
        for (const char* const label :
             {"Degenerate facets     :", "Edges fixed           :", "Facets removed        :",
              "Facets added          :", "Facets reversed       :", "Backwards edges       :",
              "Normals fixed         :"})
            CHECK(std::stoi(numbers(label)) == 0);
        // Up is +y: the ring lies 0.0635 m above the floor, its tube 0.06 m in radius.
        CHECK(std::stod(numbers("Min Y = ")) * metres_in(unit) == Approx(0.0035).margin(1e-5));
    }
}

} // namespace coilwright
