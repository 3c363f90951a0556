#include "exporters/materials.hpp"
#include "exporters/model_formats.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "tests/exporters/readers.hpp"
#include "tests/exporters/sample_models.hpp"

#include <catch2/catch.hpp>

namespace coilwright {
namespace {

std::string dae_of(const SolidModel& model, const ModelOptions& options = {}) {
    const std::vector<OutputFile> files = write_dae(model, "shell", options);
    REQUIRE(files.size() == 1);
    CHECK(files[0].path == "shell.dae");
    return files[0].bytes;
}

} // namespace

TEST_CASE("Assimp finds every part of a DAE file in its place in the tree, in true metres") {
    const SolidModel model = small_building();
    for (const FileUnit unit : file_units())
        for (const bool y_up : {false, true}) {
            CAPTURE(unit_word(unit), y_up);
            // Assimp turns the scene to +Y up and to metres by what the file says of itself.
            const std::vector<ReadPart> parts =
                read_by_assimp(dae_of(model, {unit, y_up}), "dae", Placement::applied);
            REQUIRE(parts.size() == model.parts.size());
            std::map<std::string, const ReadPart*> by_name;
            for (const ReadPart& part : parts)
                by_name[part.path.back()] = &part;
            for (const SolidPart& part : model.parts) {
                CAPTURE(part.slug);
                const ReadPart& read = *by_name.at(part.slug);
                CHECK(read.path[read.path.size() - 2] == part.group);
                CHECK(read.material == look(part.material).name);
                CHECK(volume(read.mesh) == Approx(part.volume).epsilon(1e-4));
                const Bounds box = bounds(read.mesh), made = bounds(part.mesh);
                CHECK(box.low.x() == Approx(made.low.x()).margin(2e-6));
                CHECK(box.high.y() == Approx(made.high.z()).margin(2e-6));
                CHECK(box.low.z() == Approx(-made.high.y()).margin(2e-6));
            }
        }
}

TEST_CASE("each part of a DAE file is the solid it was, vertices shared") {
    const SolidModel model = small_building();
    for (const ReadPart& read : read_by_assimp(dae_of(model), "dae", Placement::applied)) {
        CHECK_FALSE(read.has_normals);
        CHECK(check_mesh(welded(read.mesh), true).solid());
    }
}

TEST_CASE("a DAE file holds the texts and the data of its parts") {
    const std::string text = dae_of(small_building());
    CHECK(text.find("<title>Séchoir \"Nº 1\" – 乾燥小屋</title>") != std::string::npos);
    CHECK(text.find("<title>Course 1 of the vault</title>") != std::string::npos);
    CHECK(text.find("<title>part VAULT_C02_T1</title><course>2</course>"
                    "<compass_radius>1.407890</compass_radius><volume>") != std::string::npos);
    CHECK(text.find("<up_axis>Z_UP</up_axis>") != std::string::npos);
    CHECK(text.find("meter=\"1.000000\"") != std::string::npos);
}

TEST_CASE("a DAE file of nothing is still a scene") {
    SolidModel empty;
    empty.name = "]]>&<nothing>";
    CHECK(dae_of(empty).find("<title>]]&gt;&amp;&lt;nothing&gt;</title>") != std::string::npos);
}

} // namespace coilwright
