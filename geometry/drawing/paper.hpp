// The paper drawing model: what is drawn, in millimetres on paper, whoever writes the file.
// Origin at the lower left of the sheet, x right, y up.
#pragma once

#include "geometry/base/vec.hpp"

#include <functional>
#include <string>
#include <variant>
#include <vector>

namespace coilwright {

struct Ink {
    double grey = 0; // 0 black .. 1 white
};

struct Stroke {
    double width = 0.25; // mm
    Ink ink;
    std::vector<double> dashes; // mm, empty: solid
};

struct LineItem {
    std::vector<Vec2> points; // at least two
    bool closed = false;
    Stroke stroke;
};

/// A circular arc, anticlockwise from start to end (radians, mathematical); a full circle when
/// end - start >= 2 pi.
struct ArcItem {
    Vec2 centre{0, 0};
    double radius = 0, start = 0, end = 0;
    Stroke stroke;
};

/// A filled region bounded by straight edges and arcs; several loops, even-odd.
struct FillItem {
    struct Edge {
        Vec2 to{0, 0};    // an edge ends here...
        double bulge = 0; // ...straight, or an arc with tan(sweep / 4), positive anticlockwise
    };
    struct Loop {
        Vec2 from{0, 0};
        std::vector<Edge> edges;
    };
    std::vector<Loop> loops;
    Ink ink{0.85};
    double hatch_spacing = 0; // mm; 0: flat fill, else 45 degree hatch lines of `hatch`
    Stroke hatch;
};

enum class Align { left, centre, right };
/// One line of text; `at` is on the baseline. Sizes in mm of capital height * 1.4 (the em).
struct TextItem {
    std::string text; // UTF-8
    Vec2 at{0, 0};
    double size = 3.5; // mm, the em
    bool bold = false;
    Align align = Align::left;
    double turn = 0; // radians anticlockwise about `at`
    Ink ink;
    bool on_white = false; // a white box behind it, for text on lines
};

using PaperItem = std::variant<LineItem, ArcItem, FillItem, TextItem>;

struct Sheet {
    std::string title;                    // for the outline of the PDF
    double width = 215.9, height = 279.4; // mm
    std::vector<PaperItem> items;
};

struct PaperSize {
    std::string name;             // "letter", "a4"
    double width = 0, height = 0; // mm, portrait
};

/// Size of a line of text in mm: advance width, ascent above and descent below the baseline.
struct TextExtent {
    double width = 0, ascent = 0, descent = 0;
};
/// Measures text as the writer will set it; handed in so that layout needs no font library.
using MeasureText = std::function<TextExtent(const std::string& text, double size, bool bold)>;

} // namespace coilwright
