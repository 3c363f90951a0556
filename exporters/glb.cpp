// GLB by our own hand: the writer of Assimp 5.2 leaves out the nodes' extras and adds extensions
// that the Khronos validator does not know. Assimp reads the files back in the tests.
#include "exporters/bytes.hpp"
#include "exporters/json_values.hpp"
#include "exporters/materials.hpp"
#include "exporters/model_formats.hpp"
#include "exporters/model_tree.hpp"

#include <algorithm>
#include <limits>
#include <map>
#include <stdexcept>

namespace coilwright {
namespace {

// Numbers of the glTF 2.0 specification (ISO/IEC 12113:2022).
constexpr int float_component = 5126, u16_component = 5123, u32_component = 5125;
constexpr int vertex_target = 34962, index_target = 34963;
constexpr std::uint32_t glb_magic = 0x46546c67, json_chunk = 0x4e4f534a, binary_chunk = 0x004e4942;

// One buffer view: accessors of one kind, end to end.
struct View {
    std::string bytes;
    Json accessors = Json::array();
};

struct Buffers {
    View positions, short_indices, long_indices;
};

void add_positions(const Mesh& mesh, View& view) {
    constexpr FileFrame frame{FileUnit::metre, true}; // as the format fixes it
    const float big = std::numeric_limits<float>::max();
    float low[3] = {big, big, big}, high[3] = {-big, -big, -big};
    Json accessor{{"bufferView", 0},
                  {"byteOffset", view.bytes.size()},
                  {"componentType", float_component},
                  {"count", mesh.vertices.size()},
                  {"type", "VEC3"}};
    for (const Vec3& vertex : mesh.vertices) {
        const Vec3 placed = frame.placed(vertex);
        for (int axis = 0; axis < 3; ++axis) {
            const float value = static_cast<float>(placed[axis]);
            append_f32(view.bytes, value);
            low[axis] = std::min(low[axis], value);
            high[axis] = std::max(high[axis], value);
        }
    }
    accessor["min"] = low;
    accessor["max"] = high;
    view.accessors.push_back(std::move(accessor));
}

void add_indices(const Mesh& mesh, View& view, bool is_short) {
    view.accessors.push_back({{"bufferView", is_short ? 1 : 2},
                              {"byteOffset", view.bytes.size()},
                              {"componentType", is_short ? u16_component : u32_component},
                              {"count", 3 * mesh.triangles.size()},
                              {"type", "SCALAR"}});
    for (const auto& triangle : mesh.triangles)
        for (const std::uint32_t corner : triangle) {
            if (is_short)
                append_u16(view.bytes, static_cast<std::uint16_t>(corner));
            else
                append_u32(view.bytes, corner);
        }
}

Json material_json(const MaterialLook& look) {
    Json json{{"name", look.name},
              {"pbrMetallicRoughness",
               {{"baseColorFactor", {look.red, look.green, look.blue, look.opacity}},
                {"metallicFactor", 0},
                {"roughnessFactor", look.roughness}}}};
    if (look.opacity < 1)
        json["alphaMode"] = "BLEND";
    return json;
}

Json part_extras(const SolidPart& part) {
    Json extras{{"title", part.title}};
    if (part.course > 0)
        extras["course"] = part.course;
    if (part.compass_radius > 0)
        extras["compass_radius"] = json_number(part.compass_radius);
    if (part.volume > 0)
        extras["volume"] = json_number(part.volume);
    else
        extras["area"] = json_number(surface_area(part.mesh));
    return extras;
}

// Nodes: the building, its groups, its parts. The meshes name their accessors by view for now:
// [view, place within it].
struct Scene {
    Json nodes = Json::array(), meshes = Json::array(), materials = Json::array();
};

class SceneMaker {
public:
    Scene scene;
    Buffers buffers;

    void add(const SolidModel& model) {
        const ModelTree tree = model_tree(model);
        scene.nodes.push_back({{"name", tree.building}, {"extras", {{"title", model.name}}}});
        for (std::size_t k = 0; k < model.groups.size(); ++k) {
            Json node{{"name", tree.groups[k]}, {"extras", {{"title", model.groups[k].title}}}};
            hang(std::move(node), tree.group_parents[k]);
        }
        for (std::size_t k = 0; k < model.parts.size(); ++k) {
            const SolidPart& part = model.parts[k];
            Json node{{"name", tree.parts[k]}};
            if (!part.mesh.triangles.empty())
                node["mesh"] = add_mesh(part, tree.parts[k]);
            node["extras"] = part_extras(part);
            hang(std::move(node), tree.part_parents[k]);
        }
    }

private:
    // Nodes: the building, then the groups in their order, then the parts.
    void hang(Json node, int group) {
        scene.nodes[static_cast<std::size_t>(group + 1)]["children"].push_back(scene.nodes.size());
        scene.nodes.push_back(std::move(node));
    }

    std::size_t add_mesh(const SolidPart& part, const std::string& name) {
        const bool is_short = part.mesh.vertices.size() <= 0xffff; // 65535 itself is reserved
        View& indices = is_short ? buffers.short_indices : buffers.long_indices;
        add_positions(part.mesh, buffers.positions);
        add_indices(part.mesh, indices, is_short);
        scene.meshes.push_back(
            {{"name", name},
             {"primitives",
              {{{"attributes", {{"POSITION", {0, buffers.positions.accessors.size() - 1}}}},
                {"indices", {is_short ? 1 : 2, indices.accessors.size() - 1}},
                {"material", material_index(part.material)}}}}});
        return scene.meshes.size() - 1;
    }

    std::size_t material_index(Material material) {
        const auto [entry, is_new] = materials_.emplace(material, scene.materials.size());
        if (is_new)
            scene.materials.push_back(material_json(look(material)));
        return entry->second;
    }

    std::map<Material, std::size_t> materials_;
};

void pad(std::string& bytes, char with) {
    while (bytes.size() % 4 != 0)
        bytes += with;
}

// Lays the views end to end, without the empty ones, and puts final numbers to views and accessors.
std::string join(Buffers& buffers, Scene& scene, Json& document) {
    std::string binary;
    Json views = Json::array(), accessors = Json::array();
    std::size_t first_accessor[3] = {};
    View* const all[3] = {&buffers.positions, &buffers.short_indices, &buffers.long_indices};
    for (int k = 0; k < 3; ++k) {
        first_accessor[k] = accessors.size();
        if (all[k]->bytes.empty())
            continue;
        for (Json& accessor : all[k]->accessors) {
            accessor["bufferView"] = views.size();
            accessors.push_back(std::move(accessor));
        }
        Json view{
            {"buffer", 0}, {"byteOffset", binary.size()}, {"byteLength", all[k]->bytes.size()}};
        if (k == 0)
            view["byteStride"] = 12;
        view["target"] = k == 0 ? vertex_target : index_target;
        views.push_back(std::move(view));
        binary += all[k]->bytes;
        pad(binary, '\0');
    }
    const auto final_number = [&](Json& place) {
        place = first_accessor[place[0].get<int>()] + place[1].get<std::size_t>();
    };
    for (Json& mesh : scene.meshes) {
        Json& primitive = mesh["primitives"][0];
        final_number(primitive["attributes"]["POSITION"]);
        final_number(primitive["indices"]);
    }
    document["nodes"] = std::move(scene.nodes);
    if (scene.meshes.empty())
        return binary;
    document["meshes"] = std::move(scene.meshes);
    document["materials"] = std::move(scene.materials);
    document["accessors"] = std::move(accessors);
    document["bufferViews"] = std::move(views);
    document["buffers"] = {{{"byteLength", binary.size()}}};
    return binary;
}

} // namespace

std::vector<OutputFile> write_glb(const SolidModel& model, const std::string& stem,
                                  const ModelOptions&) {
    SceneMaker maker;
    maker.add(model);
    Json document{{"asset", {{"version", "2.0"}, {"generator", "Coilwright " COILWRIGHT_VERSION}}},
                  {"scene", 0},
                  {"scenes", {{{"nodes", {0}}}}}};
    const std::string binary = join(maker.buffers, maker.scene, document);
    std::string text = document.dump(-1, ' ', false, Json::error_handler_t::replace);
    pad(text, ' ');

    const std::uint64_t size = 12 + 8 + text.size() + (binary.empty() ? 0 : 8 + binary.size());
    if (size > std::numeric_limits<std::uint32_t>::max())
        throw std::length_error("a GLB file holds at most 4 GiB");
    std::string bytes;
    bytes.reserve(size);
    append_u32(bytes, glb_magic);
    append_u32(bytes, 2);
    append_u32(bytes, static_cast<std::uint32_t>(size));
    append_u32(bytes, static_cast<std::uint32_t>(text.size()));
    append_u32(bytes, json_chunk);
    bytes += text;
    if (!binary.empty()) {
        append_u32(bytes, static_cast<std::uint32_t>(binary.size()));
        append_u32(bytes, binary_chunk);
        bytes += binary;
    }
    return one_file(stem + ".glb", std::move(bytes));
}

} // namespace coilwright
