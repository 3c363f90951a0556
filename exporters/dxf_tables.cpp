// What a DXF file holds besides its entities: header, tables, blocks, objects.
#include "exporters/dxf_file.hpp"
#include "exporters/dxf_groups.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

std::string section(const char* name, const std::string& inside) {
    return dxf_group(0, "SECTION") + dxf_group(2, name) + inside + dxf_group(0, "ENDSEC");
}

std::string variable(const char* name, const std::string& value) {
    return dxf_group(9, name) + value;
}

std::string table(const char* name, const std::string& handle, int count,
                  const std::string& records) {
    return dxf_group(0, "TABLE") + dxf_group(2, name) + dxf_group(5, handle) + dxf_group(330, "0") +
           dxf_group(100, "AcDbSymbolTable") + dxf_group(70, count) +
           (std::string(name) == "DIMSTYLE" ? dxf_group(100, "AcDbDimStyleTable") : "") + records +
           dxf_group(0, "ENDTAB");
}

std::string record_head(const char* kind, const std::string& handle, const std::string& owner,
                        const char* subclass, const std::string& name) {
    return dxf_group(0, kind) + dxf_group(std::string(kind) == "DIMSTYLE" ? 105 : 5, handle) +
           dxf_group(330, owner) + dxf_group(100, "AcDbSymbolTableRecord") +
           dxf_group(100, subclass) + dxf_group(2, name);
}

std::string line_type(const std::string& handle, const std::string& owner, const std::string& name,
                      const std::vector<double>& dashes) {
    double length = 0;
    std::string elements;
    for (std::size_t i = 0; i < dashes.size(); ++i) {
        length += dashes[i];
        elements += dxf_real(49, i % 2 == 0 ? dashes[i] : -dashes[i]) + dxf_group(74, 0);
    }
    return record_head("LTYPE", handle, owner, "AcDbLinetypeTableRecord", name) + dxf_group(70, 0) +
           dxf_group(3, "") + dxf_group(72, 65) + dxf_group(73, static_cast<int>(dashes.size())) +
           dxf_real(40, length) + elements;
}

/// "DASH_40_15": of its lengths in tenths of a millimetre on paper.
std::string line_type_name(const DxfLayer& layer) {
    if (layer.dashes.empty())
        return "Continuous";
    std::string name = "DASH";
    for (const double length : layer.dashes)
        name += "_" + std::to_string(std::lround(length * 10));
    return name;
}

std::string text_style(const std::string& handle, const std::string& owner, const char* name,
                       const char* font) {
    return record_head("STYLE", handle, owner, "AcDbTextStyleTableRecord", name) +
           dxf_group(70, 0) + dxf_real(40, 0) + dxf_real(41, 1) + dxf_real(50, 0) +
           dxf_group(71, 0) + dxf_real(42, 2.5) + dxf_group(3, font) + dxf_group(4, "");
}

std::string dictionary(const std::string& handle, const std::string& owner,
                       const std::vector<std::pair<std::string, std::string>>& entries) {
    std::string text = dxf_group(0, "DICTIONARY") + dxf_group(5, handle) + dxf_group(330, owner) +
                       dxf_group(100, "AcDbDictionary") + dxf_group(281, 1);
    for (const auto& [name, of] : entries)
        text += dxf_group(3, name) + dxf_group(350, of);
    return text;
}

std::string layout(const std::string& handle, const std::string& owner, const std::string& record,
                   const char* name, int tab, Vec2 low, Vec2 high) {
    std::string text = dxf_group(0, "LAYOUT") + dxf_group(5, handle) + dxf_group(330, owner) +
                       dxf_group(100, "AcDbPlotSettings") + dxf_group(1, "") + dxf_group(2, "") +
                       dxf_group(4, "") + dxf_group(6, "");
    for (const int code : {40, 41, 42, 43, 44, 45, 46, 47, 48, 49, 140, 141})
        text += dxf_real(code, 0);
    text += dxf_real(142, 1) + dxf_real(143, 1) + dxf_group(70, tab == 0 ? 1024 : 0) +
            dxf_group(72, 1) + dxf_group(73, 0) + dxf_group(74, 5) + dxf_group(7, "") +
            dxf_group(75, 16) + dxf_real(147, 1) + dxf_real(148, 0) + dxf_real(149, 0);
    text += dxf_group(100, "AcDbLayout") + dxf_group(1, name) + dxf_group(70, 1) +
            dxf_group(71, tab) + dxf_real(10, low.x()) + dxf_real(20, low.y()) +
            dxf_real(11, high.x()) + dxf_real(21, high.y()) + dxf_point(12, {0, 0}) +
            dxf_point(14, low) + dxf_point(15, high) + dxf_real(146, 0) + dxf_point(13, {0, 0}) +
            dxf_point(16, {1, 0}) + dxf_point(17, {0, 1}) + dxf_group(76, 0) +
            dxf_group(330, record);
    return text;
}

std::string block(const std::string& name, const std::string& record, const std::string& begin,
                  const std::string& end, int flags, const std::string& entities) {
    const bool paper = name == "*Paper_Space";
    const std::string space = paper ? dxf_group(67, 1) : "";
    return dxf_group(0, "BLOCK") + dxf_group(5, begin) + dxf_group(330, record) +
           dxf_group(100, "AcDbEntity") + space + dxf_group(8, "0") +
           dxf_group(100, "AcDbBlockBegin") + dxf_group(2, name) + dxf_group(70, flags) +
           dxf_point(10, {0, 0}) + dxf_group(3, name) + dxf_group(1, "") + entities +
           dxf_group(0, "ENDBLK") + dxf_group(5, end) + dxf_group(330, record) +
           dxf_group(100, "AcDbEntity") + space + dxf_group(8, "0") +
           dxf_group(100, "AcDbBlockEnd");
}

/// Weights of lines that the format knows, in hundredths of a millimetre.
int weight_code(double weight) {
    int best = 0;
    for (const int code : {0, 5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100})
        if (std::abs(code - weight * 100) < std::abs(best - weight * 100))
            best = code;
    return best;
}

} // namespace

std::string DxfFile::header() const {
    const bool inches = unit_ == DxfUnit::inches;
    std::string text =
        variable("$ACADVER", dxf_group(1, "AC1015")) +
        variable("$DWGCODEPAGE", dxf_group(3, "ANSI_1252")) +
        variable("$INSBASE", dxf_point(10, {0, 0})) + variable("$EXTMIN", dxf_point(10, low_)) +
        variable("$EXTMAX", dxf_point(10, high_)) +
        variable("$LIMMIN", dxf_real(10, low_.x()) + dxf_real(20, low_.y())) +
        variable("$LIMMAX", dxf_real(10, high_.x()) + dxf_real(20, high_.y())) +
        variable("$LTSCALE", dxf_real(40, per_)) +
        variable("$TEXTSTYLE", dxf_group(7, "Standard")) + variable("$CLAYER", dxf_group(8, "0")) +
        variable("$DIMSTYLE", dxf_group(2, "COILWRIGHT")) +
        variable("$LUNITS", dxf_group(70, inches ? 4 : 2)) +
        variable("$LUPREC", dxf_group(70, inches ? 3 : 0)) +
        variable("$INSUNITS", dxf_group(70, inches ? 1 : 4)) +
        variable("$MEASUREMENT", dxf_group(70, inches ? 0 : 1));
    // No handle in the file is as high.
    return text + variable("$HANDSEED", dxf_group(5, hex(last_handle_ + 1)));
}

std::string DxfFile::dimension_style(const std::string& owner, const std::string& style) {
    // In mm on paper, as the sheets are drawn, times what a millimetre on paper is.
    const bool inches = unit_ == DxfUnit::inches;
    std::string text =
        record_head("DIMSTYLE", handle(), owner, "AcDbDimStyleTableRecord", "COILWRIGHT") +
        dxf_group(70, 0) + dxf_real(40, per_);
    for (const auto& [code, value] : {std::pair{41, 2.0},
                                      {42, 1.2},
                                      {43, 7.0},
                                      {44, 1.5},
                                      {45, 0.0},
                                      {46, 0.0},
                                      {140, 2.3},
                                      {141, 0.0},
                                      {142, 0.9},
                                      {143, inches ? 25.4 : 0.03937},
                                      {144, 1.0},
                                      {147, 0.8}})
        text += dxf_real(code, value);
    for (const auto& [code, value] : {std::pair{71, 0},
                                      {72, 0},
                                      {73, 0},
                                      {74, 0},
                                      {75, 0},
                                      {76, 0},
                                      {77, 1},
                                      {78, inches ? 3 : 8},
                                      {170, 0},
                                      {171, 2},
                                      {172, 1},
                                      {173, 0},
                                      {174, 0},
                                      {175, 0},
                                      {271, inches ? 3 : 0},
                                      {272, inches ? 3 : 0},
                                      {275, 0},
                                      {276, 2},
                                      {277, inches ? 4 : 2},
                                      {278, 46},
                                      {279, 2},
                                      {280, 0},
                                      {371, 25},
                                      {372, 18}})
        text += dxf_group(code, value);
    return text + dxf_group(340, style);
}

std::string DxfFile::tables(const std::string& model_layout, const std::string& paper_layout) {
    std::string text;
    // What is shown on opening: all of it.
    const std::string ports = handle();
    const Vec2 size = high_ - low_;
    text += table("VPORT", ports, 1,
                  record_head("VPORT", handle(), ports, "AcDbViewportTableRecord", "*Active") +
                      dxf_group(70, 0) + dxf_real(10, 0) + dxf_real(20, 0) + dxf_real(11, 1) +
                      dxf_real(21, 1) + dxf_real(12, (low_.x() + high_.x()) / 2) +
                      dxf_real(22, (low_.y() + high_.y()) / 2) + dxf_real(13, 0) + dxf_real(23, 0) +
                      dxf_real(14, 1) + dxf_real(24, 1) + dxf_real(15, 1) + dxf_real(25, 1) +
                      dxf_real(16, 0) + dxf_real(26, 0) + dxf_real(36, 1) + dxf_point(17, {0, 0}) +
                      dxf_real(40, std::max(1.0, 1.05 * std::max(size.y(), size.x() / 1.6))) +
                      dxf_real(41, 1.6) + dxf_real(42, 50) + dxf_real(43, 0) + dxf_real(44, 0) +
                      dxf_real(50, 0) + dxf_real(51, 0) + dxf_group(71, 0) + dxf_group(72, 1000) +
                      dxf_group(73, 1) + dxf_group(74, 3) + dxf_group(75, 0) + dxf_group(76, 0) +
                      dxf_group(77, 0) + dxf_group(78, 0));
    std::map<std::string, std::vector<double>> types;
    for (const auto& [name, layer] : layers_)
        if (!layer.dashes.empty())
            types[line_type_name(layer)] = layer.dashes;
    const std::string lines = handle();
    std::string records;
    for (const char* const name : {"ByBlock", "ByLayer", "Continuous"})
        records += line_type(handle(), lines, name, {});
    for (const auto& [name, dashes] : types)
        records += line_type(handle(), lines, name, dashes);
    text += table("LTYPE", lines, static_cast<int>(types.size() + 3), records);

    const std::string layer_table = handle();
    records.clear();
    std::map<std::string, DxfLayer> layers = layers_;
    layers.emplace("0", DxfLayer{"0", 7, 0.25, {}});
    for (const auto& [name, layer] : layers)
        records += record_head("LAYER", handle(), layer_table, "AcDbLayerTableRecord", name) +
                   dxf_group(70, 0) + dxf_group(62, layer.colour) +
                   dxf_group(6, line_type_name(layer)) + dxf_group(370, weight_code(layer.weight));
    text += table("LAYER", layer_table, static_cast<int>(layers.size()), records);

    const std::string styles = handle(), standard = handle();
    text += table("STYLE", styles, 2,
                  text_style(standard, styles, "Standard", "DejaVuSans.ttf") +
                      text_style(handle(), styles, "BOLD", "DejaVuSans-Bold.ttf"));
    text += table("VIEW", handle(), 0, "") + table("UCS", handle(), 0, "");
    const std::string programs = handle();
    records.clear();
    for (const char* const name : {"ACAD", "COILWRIGHT"})
        records += record_head("APPID", handle(), programs, "AcDbRegAppTableRecord", name) +
                   dxf_group(70, 0);
    text += table("APPID", programs, 2, records);
    const std::string dimensions = handle();
    text += table("DIMSTYLE", dimensions, 1, dimension_style(dimensions, standard));

    const std::string block_table = handle();
    const auto block_record = [&](const std::string& of, const std::string& name,
                                  const std::string& its_layout) {
        return record_head("BLOCK_RECORD", of, block_table, "AcDbBlockTableRecord", name) +
               dxf_group(340, its_layout);
    };
    records = block_record(model_, "*Model_Space", model_layout) +
              block_record(paper_, "*Paper_Space", paper_layout);
    for (const Block& one : dimension_blocks_)
        records += block_record(one.record, one.name, "0");
    text +=
        table("BLOCK_RECORD", block_table, static_cast<int>(dimension_blocks_.size() + 2), records);
    return text;
}

std::string DxfFile::blocks() {
    const auto space = [&](const char* name, const std::string& record) {
        const std::string begin = handle();
        return block(name, record, begin, handle(), 0, "");
    };
    std::string text = space("*Model_Space", model_);
    text += space("*Paper_Space", paper_);
    for (const Block& one : dimension_blocks_)
        text += block(one.name, one.record, one.begin, one.end, 1, one.entities);
    return text;
}

std::string DxfFile::objects(const std::string& model_layout, const std::string& paper_layout) {
    const std::string root = handle(), groups = handle(), layouts = handle();
    return dictionary(root, "0", {{"ACAD_GROUP", groups}, {"ACAD_LAYOUT", layouts}}) +
           dictionary(groups, root, {}) +
           dictionary(layouts, root, {{"Layout1", paper_layout}, {"Model", model_layout}}) +
           layout(model_layout, layouts, model_, "Model", 0, low_, high_) +
           layout(paper_layout, layouts, paper_, "Layout1", 1, {0, 0}, {420, 297});
}

std::string DxfFile::finish() && {
    const std::string model_layout = handle(), paper_layout = handle();
    // In the order in which they take handles; the header, which tells the next free one, last.
    const std::string all_tables = tables(model_layout, paper_layout);
    const std::string all_blocks = blocks();
    const std::string all_objects = objects(model_layout, paper_layout);
    return section("HEADER", header()) + section("CLASSES", "") + section("TABLES", all_tables) +
           section("BLOCKS", all_blocks) + section("ENTITIES", entities_) +
           section("OBJECTS", all_objects) + dxf_group(0, "EOF");
}

} // namespace coilwright
