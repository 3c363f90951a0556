#include "exporters/materials.hpp"
#include "exporters/model_formats.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "tests/exporters/read_3mf.hpp"
#include "tests/exporters/sample_models.hpp"
#include "tests/exporters/scratch.hpp"

#include <catch2/catch.hpp>
#include <cmath>

namespace coilwright {
namespace {

std::string bytes_3mf(const SolidModel& model, const ModelOptions& options = {}) {
    const std::vector<OutputFile> files = write_3mf(model, "shell", options);
    REQUIRE(files.size() == 1);
    CHECK(files[0].path == "shell.3mf");
    return files[0].bytes;
}

} // namespace

// lib3mf, the reader of the consortium that publishes the format, in strict mode.
TEST_CASE("lib3mf has nothing to say of a 3MF file and finds every part in its place") {
    const SolidModel model = small_building();
    for (const FileUnit unit : file_units()) {
        CAPTURE(unit_word(unit));
        const Read3mf read = read_3mf(bytes_3mf(model, {unit, true})); // its up is not free
        CHECK(read.warnings.empty());
        CHECK(read.metres == metres_in(unit));
        CHECK(read.metadata.at("Title") == model.name);
        REQUIRE(read.parts.size() == model.parts.size());
        std::map<std::string, const Read3mfPart*> by_name;
        for (const Read3mfPart& part : read.parts)
            by_name[part.path.back()] = &part;
        for (const SolidPart& part : model.parts) {
            CAPTURE(part.slug);
            const Read3mfPart& found = *by_name.at(part.slug);
            CHECK(found.path[found.path.size() - 2] == part.group);
            CHECK(found.material == look(part.material).name);
            CHECK(found.closed);
            CHECK(found.mesh.vertices.size() == part.mesh.vertices.size());
            CHECK(check_mesh(found.mesh, true).solid());
            CHECK(volume(found.mesh) * std::pow(read.metres, 3) ==
                  Approx(part.volume).epsilon(1e-5));
            const Bounds box = bounds(found.mesh), made = bounds(part.mesh);
            CHECK((box.low * read.metres - made.low).cwiseAbs().maxCoeff() < 2e-6);
            CHECK((box.high * read.metres - made.high).cwiseAbs().maxCoeff() < 2e-6);
        }
    }
}

TEST_CASE("a 3MF file is in millimetres unless asked otherwise, and shows its materials") {
    const Read3mf read = read_3mf(bytes_3mf(small_building()));
    CHECK(read.metres == 0.001);
    // Timber: linear 0.57, 0.40, 0.21 by the curve of sRGB (IEC 61966-2-1), times 255.
    CHECK(read.colours.at("TIMBER") == std::vector<int>{199, 170, 126, 255});
}

TEST_CASE("lib3mf reads a 3MF file of nothing, and of parts without faces") {
    SolidModel model;
    model.name = "nothing";
    CHECK(read_3mf(bytes_3mf(model)).parts.empty());
    model.groups = {{"A", "a", ""}, {"B", "b", "A"}};
    model.parts = {sample_part("HOLLOW", "B", {})};
    CHECK(read_3mf(bytes_3mf(model)).parts.empty());
}

// Python's zipfile: a judge of the archive itself, checksums included.
TEST_CASE("the archive of a 3MF file is sound and its dates never change") {
    const ScratchDirectory scratch;
    put_bytes(scratch.path() / "m.3mf", bytes_3mf(fine_torus()));
    const std::string names = output_of(
        {"/usr/bin/python3", "-c",
         "import sys, zipfile\nz = zipfile.ZipFile(sys.argv[1])\nassert z.testzip() is None\n"
         "for i in z.infolist(): print(i.filename, i.date_time[0], i.compress_type)",
         (scratch.path() / "m.3mf").string()});
    CHECK(names == "[Content_Types].xml 1980 8\n_rels/.rels 1980 8\n3D/3dmodel.model 1980 8\n");
}

} // namespace coilwright
