// Figures with their names, one below the other.
#pragma once

#include "geometry/drawing/paper.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// A figure with its name: "Step-in from course 11", "1-1/8 in".
struct Fact {
    std::string name;
    std::string value;
};

/// Draws facts, the value bold at the right, its name beside it a little smaller than `size`;
/// returns the y where they end.
double add_facts(Sheet& sheet, Vec2 top_left, double width, const std::vector<Fact>& facts,
                 double size, const MeasureText& measure);
double facts_height(const std::vector<Fact>& facts, double width, double size,
                    const MeasureText& measure);

} // namespace coilwright
