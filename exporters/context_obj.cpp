#include "exporters/context_obj.hpp"

#include "geometry/base/slug.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <sstream>

#define TINYOBJLOADER_USE_DOUBLE
#include <tiny_obj_loader.h>

namespace coilwright {
namespace {

constexpr const char* context_group = "CONTEXT_OBJECTS";
constexpr double farthest = 1e6; // of a coordinate, in the file's unit

bool is_number(const std::string& word) {
    double value = 0;
    const char* const first = word.data() + (word.front() == '+' ? 1 : 0);
    const char* const last = word.data() + word.size();
    const auto [end, error] = std::from_chars(first, last, value);
    return error == std::errc() && end == last && std::abs(value) <= farthest;
}

// The vertex that a corner names, "7", "-1" or "7/1/2": 1 to count, or 0.
long vertex_of(const std::string& corner, long count) {
    const std::string word = corner.substr(0, corner.find('/'));
    long value = 0;
    const char* const last = word.data() + word.size();
    const auto [end, error] = std::from_chars(word.data(), last, value);
    if (error != std::errc() || end != last)
        return 0;
    if (value < 0)
        value += count + 1;
    return value >= 1 && value <= count ? value : 0;
}

// What is wrong with a line, or nothing. `count`: vertices so far.
std::string fault_of_line(const std::vector<std::string>& words, long count) {
    if (words[0] == "v") {
        if (words.size() < 4)
            return "a vertex has three numbers";
        for (std::size_t k = 1; k <= 3; ++k)
            if (!is_number(words[k]))
                return "a coordinate is no number from -1,000,000 to 1,000,000";
    }
    if (words[0] == "f") {
        if (words.size() < 4)
            return "a face has three corners or more";
        for (std::size_t k = 1; k < words.size(); ++k)
            if (vertex_of(words[k], count) == 0)
                return "a corner names no vertex above it";
    }
    return {};
}

ContextShape refused(int line, const std::string& fault) {
    ContextShape shape;
    shape.line = line;
    shape.fault = fault;
    return shape;
}

} // namespace

ContextShape read_context_obj(const std::string& text) {
    std::istringstream lines(text);
    lines.imbue(std::locale::classic());
    long vertices = 0, faces = 0;
    int number = 0;
    for (std::string line; std::getline(lines, line);) {
        ++number;
        std::istringstream stream(line);
        std::vector<std::string> words;
        for (std::string word; stream >> word && word.front() != '#';)
            words.push_back(word);
        if (words.empty())
            continue;
        const std::string fault = fault_of_line(words, vertices);
        if (!fault.empty())
            return refused(number, fault);
        vertices += words[0] == "v";
        faces += words[0] == "f";
    }
    if (faces == 0)
        return refused(0, "it has no face");

    tinyobj::ObjReaderConfig config;
    config.triangulate = true;
    tinyobj::ObjReader reader;
    if (!reader.ParseFromString(text, "", config))
        return refused(0, reader.Error());
    ContextShape shape;
    const auto& points = reader.GetAttrib().vertices;
    for (std::size_t k = 0; k + 2 < points.size(); k += 3)
        shape.mesh.vertices.emplace_back(points[k], points[k + 1], points[k + 2]);
    for (const tinyobj::shape_t& one : reader.GetShapes())
        for (std::size_t k = 0; k + 2 < one.mesh.indices.size(); k += 3) {
            std::array<std::uint32_t, 3> corners{};
            for (std::size_t c = 0; c < 3; ++c)
                corners[c] = static_cast<std::uint32_t>(one.mesh.indices[k + c].vertex_index);
            const auto [a, b, c] = corners;
            if (a != b && b != c && c != a)
                shape.mesh.triangles.push_back(corners);
        }
    if (shape.mesh.triangles.empty())
        return refused(0, "none of its faces has an area");
    return shape;
}

Mesh placed_mesh(const Mesh& mesh, const ContextObject& object) {
    const Vec2 north = along(object.bearing), east = right_of(object.bearing);
    Mesh placed{{}, mesh.triangles};
    for (const Vec3& vertex : mesh.vertices) {
        const Vec3 v =
            object.metres * (object.y_up ? Vec3(vertex.x(), -vertex.z(), vertex.y()) : vertex);
        const Vec2 plan = object.at + v.x() * east + v.y() * north;
        placed.vertices.emplace_back(plan.x(), plan.y(), v.z() + object.base);
    }
    return placed;
}

void add_context(SolidModel& model, const ContextObject& object, Mesh placed) {
    const bool has_group =
        std::any_of(model.groups.begin(), model.groups.end(),
                    [](const SolidGroup& group) { return group.slug == context_group; });
    if (!has_group)
        model.groups.push_back({context_group, "What stands in and about the building", ""});
    SolidPart part;
    part.slug = "CONTEXT_" + slug(object.id);
    part.group = context_group;
    part.title = object.id;
    part.material = Material::furnishing;
    part.printed = false;
    part.mesh = std::move(placed);
    model.parts.push_back(std::move(part));
}

} // namespace coilwright
