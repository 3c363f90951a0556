// A drawing as a DXF file of release 2000 (AC1015): the few kinds of entity that drawings need,
// with the tables, blocks and objects without which readers refuse a file or drop its dimensions.
// Coordinates are in the file's unit. What would be empty (no length, no text, no area) is left
// out.
#pragma once

#include "geometry/drawing/paper.hpp"
#include "geometry/drawing/straight_shapes.hpp"

#include <cstdint>
#include <map>
#include <string>
#include <vector>

namespace coilwright {

enum class DxfUnit { inches, millimetres };

/// A layer: everything on it is drawn by it.
struct DxfLayer {
    std::string name;
    int colour = 7;             // of the colour index: 7 black or white, 1 red, 3 green, 5 blue ...
    double weight = 0.25;       // mm
    std::vector<double> dashes; // mm on paper: on, off, ...; empty: continuous
};

/// A linear dimension, its line and figure as they are drawn.
struct DxfDimension {
    Vec2 from{0, 0}, to{0, 0};           // what is measured
    Vec2 line_from{0, 0}, line_to{0, 0}; // ends of the dimension line
    double angle = 0;                    // of it, radians
    double measured = 0;                 // in the file's unit
    std::vector<std::pair<Vec2, Vec2>> lines;
    TextItem figure; // sizes in the file's unit
    double per = 1;  // units of the file for a millimetre on paper
    std::string of;  // what it measures, kept as data of the program
};

class DxfFile {
public:
    /// `per`: units of the file for a millimetre on paper.
    DxfFile(DxfUnit unit, double per, MeasureText measure);

    void add_line(const DxfLayer& layer, Vec2 from, Vec2 to);
    /// Anticlockwise, radians; a full circle where end - start >= 2 pi.
    void add_arc(const DxfLayer& layer, Vec2 centre, double radius, double start, double end);
    /// A line, an arc, a circle or a polyline with arcs, whichever it is.
    void add_outline(const DxfLayer& layer, const Outline& outline);
    /// Lines at 45 degrees, `spacing` apart; 0: solid. Even-odd.
    void add_hatch(const DxfLayer& layer, const std::vector<Outline>& loops, double spacing);
    /// Position and size in the file's unit.
    void add_text(const DxfLayer& layer, const TextItem& text);
    void add_dimension(const DxfLayer& layer, const DxfDimension& dimension);

    /// The file. Throws std::runtime_error where a number is not finite.
    std::string finish() &&;

private:
    std::string handle() { return hex(++last_handle_); }
    static std::string hex(std::uint32_t number);
    std::string start(const char* kind, const DxfLayer& layer, const char* subclass);
    void put_line(std::string& into, const DxfLayer& layer, Vec2 from, Vec2 to);
    void put_text(std::string& into, const DxfLayer& layer, const TextItem& text);
    void see(Vec2 point);
    std::string header() const;
    std::string tables(const std::string& model_layout, const std::string& paper_layout);
    std::string dimension_style(const std::string& table, const std::string& text_style);
    std::string blocks();
    std::string objects(const std::string& model_layout, const std::string& paper_layout);

    struct Block {
        std::string name, record, begin, end, entities;
    };

    DxfUnit unit_;
    double per_;
    MeasureText measure_;
    std::uint32_t last_handle_ = 0;
    std::string owner_, model_, paper_; // block records
    std::string entities_;
    std::vector<Block> dimension_blocks_;
    std::map<std::string, DxfLayer> layers_;
    bool any_ = false;
    Vec2 low_{0, 0}, high_{0, 0};
};

} // namespace coilwright
