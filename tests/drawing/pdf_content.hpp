// What is drawn on the pages of a PDF, read back by programs that share nothing with the writer:
// qpdf takes the file apart, a small reader here follows its path operators.
#pragma once

#include "geometry/base/vec.hpp"

#include <filesystem>
#include <string>
#include <vector>

namespace coilwright::testing {

/// A path as painted, in mm from the page's lower left corner. Curves are kept by their end points,
/// which lie on them.
struct DrawnPath {
    std::vector<Vec2> points;
    bool stroked = false, filled = false, curved = false;
    double width = 0; // mm, of the stroke
};

/// The paths of every page. Throws std::runtime_error on an operator that it does not follow.
std::vector<std::vector<DrawnPath>> drawn_paths(const std::filesystem::path& pdf,
                                                const std::filesystem::path& scratch);

/// Straight strokes of two points.
std::vector<DrawnPath> segments(const std::vector<DrawnPath>& paths);

/// Radius of the circle through the first, the middle and the last point of a curved path, mm.
double radius_of(const DrawnPath& path);

/// The text of one page (from 1), or of all (0), in reading order.
std::string text_of(const std::filesystem::path& pdf, int page = 0);

} // namespace coilwright::testing
