// COLLADA 1.4.1 by our own hand: Assimp's writer names nodes by numbers and stamps the time.
#include "exporters/bytes.hpp"
#include "exporters/materials.hpp"
#include "exporters/model_formats.hpp"
#include "exporters/model_tree.hpp"
#include "exporters/xml.hpp"

#include <cmath>

namespace coilwright {
namespace {

std::string four_decimals(double value) {
    std::string text;
    append_decimal(text, std::llround(value * 1e4), 4);
    return text;
}

std::string metres_text(FileUnit unit) {
    std::string text;
    append_decimal(text, std::llround(metres_in(unit) * 1e6), 6);
    return text;
}

std::string asset(const SolidModel& model, const FileFrame& frame) {
    // The schema asks for dates; files of the same design are to be the same.
    const std::string when = "1980-01-01T00:00:00Z";
    return "  <asset>\n    <contributor><authoring_tool>Coilwright " COILWRIGHT_VERSION
           "</authoring_tool></contributor>\n    <created>" +
           when + "</created>\n    <modified>" + when + "</modified>\n    <title>" +
           xml_text(model.name) + "</title>\n    <unit name=\"" + unit_name(frame.unit) +
           "\" meter=\"" + metres_text(frame.unit) + "\"/>\n    <up_axis>" +
           (frame.y_up ? "Y_UP" : "Z_UP") + "</up_axis>\n  </asset>\n";
}

// Colours as sRGB values: COLLADA does not say, and most readers show them as they stand.
std::string effect(const MaterialLook& looks) {
    std::string colour;
    for (const double linear : {looks.red, looks.green, looks.blue})
        colour += four_decimals(srgb_encoded(linear)) + " ";
    std::string text =
        "    <effect id=\"" + looks.name +
        "_fx\"><profile_COMMON><technique sid=\"common\"><lambert>\n      <diffuse><color>" +
        colour + "1</color></diffuse>\n";
    if (looks.opacity < 1)
        text += "      <transparent opaque=\"A_ONE\"><color>1 1 1 " + four_decimals(looks.opacity) +
                "</color></transparent>\n      <transparency><float>1</float></transparency>\n";
    return text + "    </lambert></technique></profile_COMMON></effect>\n";
}

std::string material_libraries(const SolidModel& model) {
    std::string effects, materials;
    for (const Material material : materials_of(model)) {
        const MaterialLook& looks = look(material);
        effects += effect(looks);
        materials += "    <material id=\"" + looks.name + "_material\" name=\"" + looks.name +
                     "\"><instance_effect url=\"#" + looks.name + "_fx\"/></material>\n";
    }
    if (effects.empty())
        return {};
    return "  <library_effects>\n" + effects + "  </library_effects>\n  <library_materials>\n" +
           materials + "  </library_materials>\n";
}

void append_geometry(std::string& text, const SolidPart& part, const std::string& name,
                     const FileFrame& frame, int decimals) {
    const std::string count = std::to_string(part.mesh.vertices.size());
    text += "    <geometry id=\"" + name + "_mesh\" name=\"" + name + "\"><mesh>\n";
    text += "      <source id=\"" + name + "_points\"><float_array id=\"" + name +
            "_numbers\" count=\"" + std::to_string(3 * part.mesh.vertices.size()) + "\">\n";
    for (const DecimalPoint& point : decimal_points(part.mesh, frame, decimals)) {
        append_point(text, point, decimals);
        text += '\n';
    }
    text += "      </float_array><technique_common><accessor source=\"#" + name +
            "_numbers\" count=\"" + count +
            "\" stride=\"3\"><param name=\"X\" type=\"float\"/><param name=\"Y\" type=\"float\"/>"
            "<param name=\"Z\" type=\"float\"/></accessor></technique_common></source>\n";
    text += "      <vertices id=\"" + name + "_corners\"><input semantic=\"POSITION\" source=\"#" +
            name + "_points\"/></vertices>\n";
    text += "      <triangles material=\"" + look(part.material).name + "\" count=\"" +
            std::to_string(part.mesh.triangles.size()) +
            "\"><input semantic=\"VERTEX\" source=\"#" + name + "_corners\" offset=\"0\"/><p>\n";
    for (const auto& [a, b, c] : part.mesh.triangles)
        text += std::to_string(a) + ' ' + std::to_string(b) + ' ' + std::to_string(c) + '\n';
    text += "      </p></triangles>\n    </mesh></geometry>\n";
}

std::string number_text(double value) {
    std::string text;
    append_decimal(text, std::llround(value * 1e6), 6);
    return text;
}

std::string extra(const std::string& title, const SolidPart* part) {
    std::string text =
        "<extra><technique profile=\"coilwright\"><title>" + xml_text(title) + "</title>";
    if (part && part->course > 0)
        text += "<course>" + std::to_string(part->course) + "</course>";
    if (part && part->compass_radius > 0)
        text += "<compass_radius>" + number_text(part->compass_radius) + "</compass_radius>";
    if (part && part->volume > 0)
        text += "<volume>" + number_text(part->volume) + "</volume>";
    else if (part)
        text += "<area>" + number_text(surface_area(part->mesh)) + "</area>";
    return text + "</technique></extra>";
}

std::string opened_node(const std::string& name) {
    return "<node id=\"" + name + "\" name=\"" + name + "\">";
}

class NodeWriter {
public:
    NodeWriter(const SolidModel& model, const ModelTree& tree) : model_(model), tree_(tree) {}

    std::string text() {
        out_ += "    " + opened_node(tree_.building) + "\n";
        hang(-1);
        out_ += "    " + extra(model_.name, nullptr) + "</node>\n";
        return std::move(out_);
    }

private:
    void hang(int parent) {
        for (std::size_t k = 0; k < model_.parts.size(); ++k)
            if (tree_.part_parents[k] == parent)
                add_part(model_.parts[k], tree_.parts[k]);
        for (std::size_t k = 0; k < model_.groups.size(); ++k)
            if (tree_.group_parents[k] == parent) {
                out_ += "    " + opened_node(tree_.groups[k]) + "\n";
                hang(static_cast<int>(k));
                out_ += "    " + extra(model_.groups[k].title, nullptr) + "</node>\n";
            }
    }

    void add_part(const SolidPart& part, const std::string& name) {
        out_ += "    " + opened_node(name);
        if (!part.mesh.triangles.empty()) {
            const std::string& material = look(part.material).name;
            out_ += "<instance_geometry url=\"#" + name +
                    "_mesh\"><bind_material><technique_common><instance_material symbol=\"" +
                    material + "\" target=\"#" + material +
                    "_material\"/></technique_common></bind_material></instance_geometry>";
        }
        out_ += extra(part.title, &part) + "</node>\n";
    }

    const SolidModel& model_;
    const ModelTree& tree_;
    std::string out_;
};

} // namespace

std::vector<OutputFile> write_dae(const SolidModel& model, const std::string& stem,
                                  const ModelOptions& options) {
    const FileFrame frame = frame_of(*find_model_format("dae"), options);
    const int decimals = decimals_for(model, frame);
    const ModelTree tree = model_tree(model);
    std::string geometries;
    for (std::size_t k = 0; k < model.parts.size(); ++k)
        if (!model.parts[k].mesh.triangles.empty())
            append_geometry(geometries, model.parts[k], tree.parts[k], frame, decimals);
    std::string text = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                       "<COLLADA xmlns=\"http://www.collada.org/2005/11/COLLADASchema\" "
                       "version=\"1.4.1\">\n" +
                       asset(model, frame) + material_libraries(model);
    if (!geometries.empty())
        text += "  <library_geometries>\n" + geometries + "  </library_geometries>\n";
    text += "  <library_visual_scenes><visual_scene id=\"scene\">\n" +
            NodeWriter(model, tree).text() +
            "  </visual_scene></library_visual_scenes>\n"
            "  <scene><instance_visual_scene url=\"#scene\"/></scene>\n</COLLADA>\n";
    return one_file(stem + ".dae", std::move(text));
}

} // namespace coilwright
