#include "exporters/materials.hpp"
#include "exporters/model_formats.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "tests/exporters/read_ply.hpp"
#include "tests/exporters/readers.hpp"
#include "tests/exporters/sample_models.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

namespace coilwright {

TEST_CASE("a PLY file holds every part in doubles, and says which face is whose") {
    const SolidModel model = small_building();
    const std::vector<OutputFile> files = write_ply(model, "shell");
    REQUIRE(files.size() == 1);
    CHECK(files[0].path == "shell.ply");
    const ReadPly read = read_ply(files[0].bytes);
    std::size_t vertex = 0, triangle = 0;
    for (std::size_t k = 0; k < model.parts.size(); ++k) {
        const SolidPart& part = model.parts[k];
        CAPTURE(part.slug);
        const std::string line =
            "part " + std::to_string(k) + " " + part.slug + " " + look(part.material).name;
        CHECK(std::count(read.comments.begin(), read.comments.end(), line) == 1);
        const std::size_t last = triangle + part.mesh.triangles.size();
        for (std::size_t t = triangle; t < last; ++t)
            CHECK(read.parts.at(t) == k);
        for (std::size_t v = 0; v < part.mesh.vertices.size(); ++v) {
            CHECK(read.mesh.vertices.at(vertex + v) == part.mesh.vertices[v]);
            CHECK(read.colours[vertex + v] == read.colours[vertex]);
        }
        // sRGB, as in the MTL of the OBJ: 8 bits.
        CHECK(read.colours[vertex][0] / 255.0 ==
              Approx(srgb_encoded(look(part.material).red)).margin(0.5 / 255));
        CHECK(read.colours[vertex][2] / 255.0 ==
              Approx(srgb_encoded(look(part.material).blue)).margin(0.5 / 255));
        const Mesh mesh = welded(some_triangles(read.mesh, triangle, last));
        CHECK(check_mesh(mesh, false).solid());
        CHECK(volume(mesh) == Approx(part.volume).epsilon(1e-12));
        vertex += part.mesh.vertices.size();
        triangle = last;
    }
    CHECK(read.mesh.triangles.size() == triangle);
    CHECK(read.mesh.vertices.size() == vertex);
}

TEST_CASE("Assimp reads a PLY file as one coloured mesh of the same size") {
    const SolidModel model = small_building();
    const std::vector<ReadPart> parts = read_by_assimp(write_ply(model, "shell")[0].bytes, "ply");
    REQUIRE(parts.size() == 1);
    double whole = 0;
    for (const SolidPart& part : model.parts)
        whole += part.volume;
    CHECK(volume(parts[0].mesh) == Approx(whole).epsilon(1e-5));
}

TEST_CASE("a design's name cannot break a PLY file's header") {
    SolidModel model = small_building();
    model.name = "x\nend_header\nelement vertex 1";
    const ReadPly read = read_ply(write_ply(model, "shell")[0].bytes);
    CHECK(read.mesh.triangles.size() == 2 * 24 * 8 * 2 + 12);
    CHECK(read.comments.at(1) == "x end_header element vertex 1");
}

} // namespace coilwright
