#include "exporters/model_formats.hpp"
#include "geometry/base/slug.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "tests/exporters/glb_file.hpp"
#include "tests/exporters/readers.hpp"
#include "tests/exporters/sample_models.hpp"

#include <catch2/catch.hpp>
#include <set>

namespace coilwright {
namespace {

std::string glb_of(const SolidModel& model) {
    const std::vector<OutputFile> files = write_glb(model, "shell");
    REQUIRE(files.size() == 1);
    CHECK(files[0].path == "shell.glb");
    return files[0].bytes;
}

// +Y up: y is the height, -z points north.
Vec3 turned_up(const Vec3& vertex) {
    return {vertex.x(), vertex.z(), -vertex.y()};
}

} // namespace

// The Khronos glTF validator (npm gltf-validator), reference of ISO/IEC 12113:2022.
TEST_CASE("the Khronos validator has nothing to say of a GLB file") {
    SolidModel empty;
    empty.name = "nothing built";
    SolidModel twins = small_building();
    twins.parts.push_back(twins.parts.front());
    for (const SolidModel& model : {small_building(), fine_torus(), empty, twins}) {
        const nlohmann::json report = khronos_report(glb_of(model));
        CAPTURE(model.name, report.dump(1));
        CHECK(report.at("issues").at("messages").empty());
        CHECK(report.at("issues").at("numErrors") == 0);
        CHECK(report.at("info").at("drawCallCount") == model.parts.size());
        std::size_t triangles = 0;
        for (const SolidPart& part : model.parts)
            triangles += part.mesh.triangles.size();
        CHECK(report.at("info").at("totalTriangleCount") == triangles);
    }
}

TEST_CASE("the validator that stands behind these tests does find faults") {
    std::string bytes = glb_of(small_building());
    const std::size_t at = bytes.find("\"max\":[");
    REQUIRE(at != std::string::npos);
    bytes[at + 7] = '9'; // a bound that does not hold
    CHECK(khronos_report(bytes).at("issues").at("numErrors") > 0);
}

TEST_CASE("Assimp finds every part of a GLB file in its place in the tree") {
    const SolidModel model = small_building();
    const std::vector<ReadPart> parts = read_by_assimp(glb_of(model), "glb");
    REQUIRE(parts.size() == 3);
    std::map<std::string, const ReadPart*> by_name;
    for (const ReadPart& part : parts)
        by_name[part.path.back()] = &part;
    REQUIRE(by_name.size() == 3);
    const std::string root = parts[0].path.front();
    CHECK(by_name.at("VAULT_C01_T1")->path ==
          std::vector<std::string>{root, "VAULT", "VAULT_C01", "VAULT_C01_T1"});
    CHECK(by_name.at("VAULT_C02_T1")->path ==
          std::vector<std::string>{root, "VAULT", "VAULT_C02", "VAULT_C02_T1"});
    CHECK(by_name.at("VAULT_LINTEL")->path ==
          std::vector<std::string>{root, "VAULT", "VAULT_LINTEL"});
    CHECK(by_name.at("VAULT_C01_T1")->material == "EARTH");
    CHECK(by_name.at("VAULT_C02_T1")->material == "EARTH_CAP");
    CHECK(by_name.at("VAULT_LINTEL")->material == "TIMBER");
}

TEST_CASE("a GLB file holds each mesh as it is, in metres, +Y up, rounded to single precision") {
    const SolidModel fine = fine_torus();
    for (const SolidModel& model : {small_building(), fine}) {
        std::map<std::string, ReadPart> by_name;
        for (ReadPart& part : read_by_assimp(glb_of(model), "glb"))
            by_name[part.path.back()] = std::move(part);
        for (const SolidPart& part : model.parts) {
            CAPTURE(part.slug);
            const ReadPart& read = by_name.at(part.slug);
            CHECK_FALSE(read.has_normals); // no smoothing: viewers shade such faces flat
            REQUIRE(read.mesh.vertices.size() == part.mesh.vertices.size());
            CHECK(read.mesh.triangles == part.mesh.triangles);
            double worst = 0;
            for (std::size_t k = 0; k < part.mesh.vertices.size(); ++k)
                worst = std::max(worst, (read.mesh.vertices[k] - turned_up(part.mesh.vertices[k]))
                                            .cwiseAbs()
                                            .maxCoeff());
            CHECK(worst <= 40 * 0x1p-24); // half a unit in the last place of 24 bits, within 40 m
            CHECK(volume(read.mesh) == Approx(part.volume).epsilon(1e-5));
            if (part.mesh.triangles.size() < 1000)
                CHECK(check_mesh(read.mesh, true).solid());
        }
    }
}

// Pappus-Guldinus: a torus of 2.2 and 0.15 m holds 0.977091 m3. Polygons inscribed in its circles
// lose no more than (1 - sin x / x) of each, x = 2 pi / n.
TEST_CASE("the torus in a GLB file has the volume of Pappus") {
    const ReadPart read = read_by_assimp(glb_of(fine_torus()), "glb").at(0);
    CHECK(volume(read.mesh) < 0.977091);
    CHECK(volume(read.mesh) == Approx(0.977091).epsilon(1e-3));
    CHECK(volume(read.mesh) == Approx(torus_volume(2.2, 0.15, 660, 100)).epsilon(1e-5));
}

TEST_CASE("nodes carry titles, course numbers, radii and volumes in their extras") {
    const SolidModel model = small_building();
    const GlbFile file = take_apart_glb(glb_of(model));
    std::map<std::string, nlohmann::json> extras;
    for (const auto& node : file.document.at("nodes"))
        extras[node.at("name")] = node.at("extras");
    REQUIRE(extras.size() == 7);
    const nlohmann::json& second = extras.at("VAULT_C02_T1");
    CHECK(second.at("course") == 2);
    CHECK(second.at("compass_radius") == 1.40789); // to 1e-6
    CHECK(second.at("volume").get<double>() == Approx(model.parts[1].volume).margin(5e-7));
    CHECK(second.at("title") == "part VAULT_C02_T1");
    CHECK_FALSE(extras.at("VAULT_LINTEL").contains("course"));
    CHECK(extras.at("VAULT_C01").at("title") == "Course 1 of the vault");
    const std::size_t top = file.document.at("scenes").at(0).at("nodes").at(0);
    const nlohmann::json& root = file.document.at("nodes").at(top);
    CHECK(root.at("extras").at("title") == model.name);
}

TEST_CASE("names of nodes are unique and legal, whatever the design is called") {
    for (const std::string name :
         {"vault", "", "42", "Über-Kuppel \n\"x\"", "\xff\xfe broken", "🏠🏠🏠"}) {
        SolidModel model = small_building();
        model.name = name;
        const GlbFile file = take_apart_glb(glb_of(model));
        std::set<std::string> names;
        for (const auto& node : file.document.at("nodes")) {
            const std::string node_name = node.at("name");
            CHECK(slug(node_name) == node_name);
            names.insert(node_name);
        }
        CHECK(names.size() == file.document.at("nodes").size());
    }
}

TEST_CASE("only materials in use are written, and glass lets light through") {
    SolidModel model = small_building();
    model.parts[2].material = Material::glass;
    const GlbFile file = take_apart_glb(glb_of(model));
    REQUIRE(file.document.at("materials").size() == 3);
    const auto& glass = file.document.at("materials")[2];
    CHECK(glass.at("name") == "GLASS");
    CHECK(glass.at("alphaMode") == "BLEND");
    CHECK(khronos_report(glb_of(model)).at("issues").at("messages").empty());
}

} // namespace coilwright
