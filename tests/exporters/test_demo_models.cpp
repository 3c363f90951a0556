// The models of every demo design, written in every format and read back: what an architect opens.
#include "exporters/materials.hpp"
#include "exporters/model_formats.hpp"
#include "exporters/model_tree.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "tests/exporters/glb_file.hpp"
#include "tests/exporters/read_3mf.hpp"
#include "tests/exporters/read_ply.hpp"
#include "tests/exporters/readers.hpp"
#include "tests/exporters/sample_plans.hpp"
#include "tests/exporters/scratch.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <set>
#include <stdexcept>

namespace coilwright {
namespace {

struct NamedModel {
    std::string name;
    SolidModel model;
};

// Both depths of every demo; coarse, so that the test stays quick.
const std::vector<NamedModel>& demo_models() {
    static const std::vector<NamedModel> models = [] {
        constexpr double tolerance = 0.01;
        std::vector<NamedModel> made;
        for (const std::string& name : demo_files()) {
            const BuildingPlan plan = demo_plan(name);
            const Schedule& schedule = plan.schedule;
            SolidResult shell = finished_shell_model(schedule, plan.design, tolerance);
            SolidResult courses = courses_model(schedule, tolerance);
            if (!shell.faults.empty() || !courses.faults.empty())
                throw std::runtime_error(name + " cannot be meshed");
            made.push_back({name + ", shell", std::move(shell.model)});
            made.push_back({name + ", courses", std::move(courses.model)});
        }
        return made;
    }();
    return models;
}

// A part as read against the part as made: closed and sound at the file's precision, the same size.
void check_part(const Mesh& read, const SolidPart& made, double per_metre, bool as_float) {
    CAPTURE(made.slug);
    CHECK(read.vertices.size() == made.mesh.vertices.size());
    CHECK(read.triangles.size() == made.mesh.triangles.size());
    // Half a step of a single at 64 m is 2 um, half a step of the decimals half a micrometre.
    const Bounds box = bounds(read), wanted = bounds(made.mesh);
    CHECK((box.low - wanted.low * per_metre).cwiseAbs().maxCoeff() < 3e-6 * per_metre);
    CHECK((box.high - wanted.high * per_metre).cwiseAbs().maxCoeff() < 3e-6 * per_metre);
    if (made.volume == 0) { // a surface
        CHECK(surface_area(read) ==
              Approx(surface_area(made.mesh) * per_metre * per_metre).epsilon(1e-5));
        return;
    }
    const MeshCheck check = check_mesh(read, as_float);
    CAPTURE(check.closed, check.manifold, check.self_intersecting, check.degenerate_faces);
    CHECK(check.solid());
    // Coordinates are off by half a micrometre, the whole face at the most.
    const double cubed = std::pow(per_metre, 3);
    CHECK(volume(read) ==
          Approx(made.volume * cubed).epsilon(1e-6).margin(1e-6 * surface_area(made.mesh) * cubed));
}

// A mesh whose +Y is up, turned back by hand: east stays, south becomes z.
Mesh turned_z_up(Mesh mesh) {
    for (Vec3& vertex : mesh.vertices)
        vertex = Vec3(vertex.x(), -vertex.z(), vertex.y());
    return mesh;
}

} // namespace

TEST_CASE("GLB: the demo designs' models are clean, whole and named") {
    for (const auto& [name, model] : demo_models()) {
        CAPTURE(name);
        const std::string bytes = write_glb(model, "m")[0].bytes;
        const nlohmann::json report = khronos_report(bytes);
        CAPTURE(report.at("issues").dump(1));
        CHECK(report.at("issues").at("messages").empty());
        std::map<std::string, ReadPart> by_name;
        for (ReadPart& part : read_by_assimp(bytes, "glb"))
            by_name[part.path.back()] = std::move(part);
        REQUIRE(by_name.size() == model.parts.size());
        for (const SolidPart& part : model.parts) {
            const ReadPart& read = by_name.at(part.slug);
            CHECK(read.material == look(part.material).name);
            CHECK(read.path[read.path.size() - 2] ==
                  (part.group.empty() ? read.path.front() : part.group));
            check_part(turned_z_up(read.mesh), part, 1, true);
        }
    }
}

TEST_CASE("OBJ: the demo designs' models are watertight by their own indices") {
    for (const auto& [name, model] : demo_models()) {
        CAPTURE(name);
        const std::vector<OutputFile> files = write_obj(model, "m");
        const ReadObj read = read_by_tinyobj(files[0].bytes, files[1].bytes);
        CHECK(read.warnings.empty());
        REQUIRE(read.shapes.size() == model.parts.size());
        std::set<std::string> names;
        for (std::size_t k = 0; k < model.parts.size(); ++k) {
            names.insert(read.shapes[k].name);
            CHECK(read.shapes[k].name == model.parts[k].slug);
            CHECK(read.shapes[k].material == look(model.parts[k].material).name);
            check_part(read.shapes[k].mesh, model.parts[k], 1, false);
        }
        CHECK(names.size() == model.parts.size());
    }
}

TEST_CASE("STL: the demo designs' models weld into the solids they were") {
    for (const auto& [name, model] : demo_models()) {
        CAPTURE(name);
        const ReadStl read = read_stl(write_stl(model, "m")[0].bytes);
        std::size_t first = 0;
        for (const SolidPart& part : model.parts) {
            const std::size_t last = first + part.mesh.triangles.size();
            check_part(welded(some_triangles(read.mesh, first, last)), part, 1000, true);
            first = last;
        }
        CHECK(first == read.mesh.triangles.size());
    }
}

// ADMesh, the checker of STL files, on whole files as the package holds them.
TEST_CASE("STL: ADMesh finds nothing to mend in the demo designs' models at both depths") {
    const ScratchDirectory scratch;
    const std::string file = (scratch.path() / "m.stl").string();
    for (const auto& [name, whole] : demo_models()) {
        const SolidModel model = printed_model(whole);
        put_bytes(file, write_stl(model, "m")[0].bytes);
        const std::string report = output_of({"admesh", file});
        CAPTURE(name, report);
        const auto number = [&](const std::string& label) {
            const std::size_t at = report.find(label);
            REQUIRE(at != std::string::npos);
            return std::stod(report.substr(at + label.size()));
        };
        double made = 0;
        for (const SolidPart& part : model.parts)
            made += part.volume;
        CHECK(number("Number of parts       :") == static_cast<double>(model.parts.size()));
        CHECK(number("Volume   :") * 1e-9 == Approx(made).epsilon(1e-4));
        for (const char* const label :
             {"Degenerate facets     :", "Edges fixed           :", "Facets removed        :",
              "Facets added          :", "Facets reversed       :", "Backwards edges       :",
              "Normals fixed         :", "Total disconnected facets        :"})
            CHECK(number(label) == 0);
    }
}

TEST_CASE("PLY: the demo designs' models are the solids they were, part by part") {
    for (const auto& [name, model] : demo_models()) {
        CAPTURE(name);
        const ReadPly read = read_ply(write_ply(model, "m")[0].bytes);
        std::size_t first = 0;
        for (std::size_t k = 0; k < model.parts.size(); ++k) {
            const std::size_t last = first + model.parts[k].mesh.triangles.size();
            REQUIRE(last <= read.parts.size());
            CHECK((read.parts[first] == k && read.parts[last - 1] == k));
            check_part(welded(some_triangles(read.mesh, first, last)), model.parts[k], 1, false);
            first = last;
        }
        CHECK(first == read.mesh.triangles.size());
    }
}

// Two models in turn for every unit, one with each axis up: the reader turns and scales by what the
// file says of itself.
TEST_CASE(
    "DAE: the demo designs' models are whole, named and in true metres in any unit and axes") {
    std::set<std::pair<std::string, bool>> tried;
    for (std::size_t k = 0; k < demo_models().size(); ++k) {
        const auto& [name, model] = demo_models()[k];
        const FileUnit unit = file_units()[k / 2 % file_units().size()];
        const bool y_up = k / 2 / file_units().size() % 2 != k % 2;
        tried.insert({unit_word(unit), y_up});
        CAPTURE(name, unit_word(unit), y_up);
        std::map<std::string, ReadPart> by_name;
        const std::string bytes = write_dae(model, "m", {unit, y_up})[0].bytes;
        for (ReadPart& part : read_by_assimp(bytes, "dae", Placement::applied))
            by_name[part.path.back()] = std::move(part);
        REQUIRE(by_name.size() == model.parts.size());
        for (const SolidPart& part : model.parts) {
            CAPTURE(part.slug);
            const ReadPart& read = by_name.at(part.slug);
            CHECK(read.material == look(part.material).name);
            CHECK(read.mesh.triangles.size() == part.mesh.triangles.size());
            CHECK(welded(read.mesh).vertices.size() == part.mesh.vertices.size());
            CHECK(surface_area(read.mesh) == Approx(surface_area(part.mesh)).epsilon(1e-4));
            if (part.volume > 0)
                CHECK(volume(read.mesh) == Approx(part.volume).epsilon(1e-4));
            const Bounds box = bounds(turned_z_up(read.mesh)), wanted = bounds(part.mesh);
            CHECK((box.low - wanted.low).cwiseAbs().maxCoeff() < 1e-5);
            CHECK((box.high - wanted.high).cwiseAbs().maxCoeff() < 1e-5);
        }
    }
    CHECK(tried.size() == 2 * file_units().size());
}

TEST_CASE("3MF: lib3mf finds the demo designs' models clean, closed and named") {
    for (const auto& [name, whole] : demo_models()) {
        CAPTURE(name);
        const SolidModel model = printed_model(whole);
        const Read3mf read = read_3mf(write_3mf(model, "m")[0].bytes);
        CHECK(read.warnings.empty());
        REQUIRE(read.parts.size() == model.parts.size());
        std::map<std::string, const Read3mfPart*> by_name;
        for (const Read3mfPart& part : read.parts)
            by_name[part.path.back()] = &part;
        for (const SolidPart& part : model.parts) {
            const Read3mfPart& found = *by_name.at(part.slug);
            CHECK(found.closed);
            CHECK(found.material == look(part.material).name);
            check_part(found.mesh, part, 1000, true);
        }
    }
}

} // namespace coilwright
