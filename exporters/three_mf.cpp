// 3MF, core specification 1.x, as a ZIP archive: Assimp's writer loses nested scenes.
#include "exporters/bytes.hpp"
#include "exporters/materials.hpp"
#include "exporters/model_formats.hpp"
#include "exporters/model_tree.hpp"
#include "exporters/xml.hpp"
#include "exporters/zip.hpp"

#include <cmath>

namespace coilwright {
namespace {

// The specification spells it so.
std::string unit_attribute(FileUnit unit) {
    switch (unit) {
    case FileUnit::metre:
        return "meter";
    case FileUnit::centimetre:
        return "centimeter";
    case FileUnit::millimetre:
        return "millimeter";
    case FileUnit::foot:
        return "foot";
    case FileUnit::inch:
        return "inch";
    }
    return "millimeter";
}

void append_hex(std::string& text, double share) {
    const long value = std::lround(255 * share);
    const char* const digits = "0123456789ABCDEF";
    text += digits[value / 16];
    text += digits[value % 16];
}

std::string base_materials(const std::vector<Material>& materials) {
    std::string text = "  <basematerials id=\"1\">\n";
    for (const Material material : materials) {
        const MaterialLook& looks = look(material);
        text += "   <base name=\"" + looks.name + "\" displaycolor=\"#";
        for (const double linear : {looks.red, looks.green, looks.blue})
            append_hex(text, srgb_encoded(linear));
        append_hex(text, looks.opacity);
        text += "\"/>\n";
    }
    return text + "  </basematerials>\n";
}

void append_mesh(std::string& text, const Mesh& mesh, const FileFrame& frame, int decimals) {
    text += "   <mesh><vertices>\n";
    for (const DecimalPoint& point : decimal_points(mesh, frame, decimals)) {
        const char* const names[] = {"<vertex x=\"", "\" y=\"", "\" z=\""};
        for (std::size_t axis = 0; axis < 3; ++axis) {
            text += names[axis];
            append_decimal(text, point[axis], decimals);
        }
        text += "\"/>\n";
    }
    text += "   </vertices><triangles>\n";
    for (const auto& [a, b, c] : mesh.triangles)
        text += "<triangle v1=\"" + std::to_string(a) + "\" v2=\"" + std::to_string(b) +
                "\" v3=\"" + std::to_string(c) + "\"/>\n";
    text += "   </triangles></mesh>\n";
}

// Objects come after what they are made of: parts, then groups from the innermost out, then the
// building. A group without a part has no object: the format knows no empty one.
class ObjectWriter {
public:
    ObjectWriter(const SolidModel& model, const FileFrame& frame)
        : model_(model), frame_(frame), tree_(model_tree(model)), materials_(materials_of(model)),
          decimals_(decimals_for(model, frame)), children_(model.groups.size() + 1) {}

    /// Called once.
    std::string text() {
        if (!materials_.empty())
            out_ += base_materials(materials_);
        for (std::size_t k = 0; k < model_.parts.size(); ++k)
            if (!model_.parts[k].mesh.triangles.empty())
                add_part(k);
        for (std::size_t k = model_.groups.size(); k-- > 0;)
            add_group(k + 1, tree_.groups[k], tree_.group_parents[k]);
        add_group(0, tree_.building, -1);
        out_ += " </resources>\n <build>";
        if (!children_[0].empty())
            out_ += "<item objectid=\"" + std::to_string(last_id_) + "\"/>";
        out_ += "</build>\n</model>\n";
        return std::move(out_);
    }

private:
    std::string opened(const std::string& name) {
        return "  <object id=\"" + std::to_string(++last_id_) + "\" type=\"model\" name=\"" + name +
               "\"";
    }

    std::vector<int>& children_of(int group) {
        return children_[static_cast<std::size_t>(group + 1)];
    }

    void add_part(std::size_t k) {
        std::size_t place = 0;
        while (materials_[place] != model_.parts[k].material)
            ++place;
        out_ += opened(tree_.parts[k]) + " pid=\"1\" pindex=\"" + std::to_string(place) + "\">\n";
        append_mesh(out_, model_.parts[k].mesh, frame_, decimals_);
        out_ += "  </object>\n";
        children_of(tree_.part_parents[k]).push_back(last_id_);
    }

    void add_group(std::size_t place, const std::string& name, int parent) {
        const std::vector<int> children = children_[place];
        if (children.empty())
            return;
        out_ += opened(name) + ">\n   <components>\n";
        for (const int child : children)
            out_ += "    <component objectid=\"" + std::to_string(child) + "\"/>\n";
        out_ += "   </components>\n  </object>\n";
        if (place > 0)
            children_of(parent).push_back(last_id_);
    }

    const SolidModel& model_;
    const FileFrame& frame_;
    ModelTree tree_;
    std::vector<Material> materials_;
    int decimals_;
    std::vector<std::vector<int>> children_; // ids; of the building, then of each group
    std::string out_ = " <resources>\n";
    int last_id_ = 1; // the materials
};

} // namespace

std::vector<OutputFile> write_3mf(const SolidModel& model, const std::string& stem,
                                  const ModelOptions& options) {
    const FileFrame frame = frame_of(*find_model_format("3mf"), options);
    const std::string xml = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
    const std::string package = "http://schemas.openxmlformats.org/package/2006/";
    const std::string core = "http://schemas.microsoft.com/3dmanufacturing/";
    std::string document = xml + "<model unit=\"" + unit_attribute(frame.unit) +
                           "\" xml:lang=\"en-US\" xmlns=\"" + core +
                           "core/2015/02\">\n <metadata name=\"Title\">" + xml_text(model.name) +
                           "</metadata>\n <metadata name=\"Application\">Coilwright " +
                           COILWRIGHT_VERSION "</metadata>\n";
    document += ObjectWriter(model, frame).text();
    const std::string types =
        xml + "<Types xmlns=\"" + package +
        "content-types\"><Default Extension=\"rels\" "
        "ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/>"
        "<Default Extension=\"model\" "
        "ContentType=\"application/vnd.ms-package.3dmanufacturing-3dmodel+xml\"/></Types>\n";
    const std::string relations = xml + "<Relationships xmlns=\"" + package +
                                  "relationships\"><Relationship Id=\"model\" Type=\"" + core +
                                  "2013/01/3dmodel\" Target=\"/3D/3dmodel.model\"/>"
                                  "</Relationships>\n";
    std::vector<OutputFile> files{{"[Content_Types].xml", types}, {"_rels/.rels", relations}};
    files.push_back({"3D/3dmodel.model", std::move(document)}); // large: not copied
    return one_file(stem + ".3mf", zip_archive(files));
}

} // namespace coilwright
