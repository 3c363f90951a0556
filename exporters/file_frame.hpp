// The unit and the axes of a model file, and its coordinates as decimal numbers.
#pragma once

#include "geometry/solids/solid_model.hpp"

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace coilwright {

enum class FileUnit { metre, centimetre, millimetre, foot, inch };

/// Every unit, in the order above, and its words: "m" as `--unit` takes it, "metre" for people.
const std::vector<FileUnit>& file_units();
std::string unit_word(FileUnit unit);
std::string unit_name(FileUnit unit);
/// Length of a unit in metres, exact: inch -> 0.0254.
double metres_in(FileUnit unit);

/// Where a point of the model lies in a file: x east, y north, z up; or turned for readers whose up
/// is +y: x east, y up, -z north. A turn, no mirror: faces keep looking outward.
struct FileFrame {
    FileUnit unit = FileUnit::metre;
    bool y_up = false;
    /// (1, 2, 3) m in millimetres, y up -> (1000, 3000, -2000).
    Vec3 placed(const Vec3& metres) const;
    /// One line for a comment: "Unit: metre. Axes: x east, y north, z up; ..."
    std::string sentence() const;
};

/// Coordinates as whole counts of 10^-decimals of the unit.
using DecimalPoint = std::array<std::int64_t, 3>;
std::vector<DecimalPoint> decimal_points(const Mesh& mesh, const FileFrame& frame, int decimals);
/// Decimals that keep a coordinate to 0.5 um or better, or three more (0.5 nm) where some face of
/// the model would lose its area: metre -> 6 or 9. Exact, in whole numbers.
int decimals_for(const SolidModel& model, const FileFrame& frame);
/// "1.500000 -2.000000 0.000000"
void append_point(std::string& text, const DecimalPoint& point, int decimals);

} // namespace coilwright
