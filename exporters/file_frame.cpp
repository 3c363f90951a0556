#include "exporters/file_frame.hpp"

#include "exporters/bytes.hpp"

#include <cmath>

namespace coilwright {
namespace {

struct UnitRow {
    FileUnit unit;
    const char* word;
    const char* name;
    double metres;
    int micrometre_decimals; // a step of 1 um or less
};

const UnitRow& row(FileUnit unit) {
    static const UnitRow rows[] = {
        {FileUnit::metre, "m", "metre", 1, 6},
        {FileUnit::centimetre, "cm", "centimetre", 0.01, 4},
        {FileUnit::millimetre, "mm", "millimetre", 0.001, 3},
        {FileUnit::foot, "ft", "foot", 0.3048, 6},
        {FileUnit::inch, "in", "inch", 0.0254, 5},
    };
    return rows[static_cast<std::size_t>(unit)];
}

__extension__ using Wide = __int128;

// Exact: the products fit in 128 bits for any building under 10^9 of the least steps.
bool has_area(const DecimalPoint& a, const DecimalPoint& b, const DecimalPoint& c) {
    for (std::size_t i = 0; i < 3; ++i) {
        const std::size_t j = (i + 1) % 3;
        const Wide left = static_cast<Wide>(b[i] - a[i]) * (c[j] - a[j]);
        const Wide right = static_cast<Wide>(b[j] - a[j]) * (c[i] - a[i]);
        if (left != right)
            return true;
    }
    return false;
}

bool keeps_every_face(const SolidModel& model, const FileFrame& frame, int decimals) {
    for (const SolidPart& part : model.parts) {
        const std::vector<DecimalPoint> points = decimal_points(part.mesh, frame, decimals);
        for (const auto& [a, b, c] : part.mesh.triangles)
            if (!has_area(points[a], points[b], points[c]))
                return false;
    }
    return true;
}

} // namespace

const std::vector<FileUnit>& file_units() {
    static const std::vector<FileUnit> units{FileUnit::metre, FileUnit::centimetre,
                                             FileUnit::millimetre, FileUnit::foot, FileUnit::inch};
    return units;
}

std::string unit_word(FileUnit unit) {
    return row(unit).word;
}

std::string unit_name(FileUnit unit) {
    return row(unit).name;
}

double metres_in(FileUnit unit) {
    return row(unit).metres;
}

Vec3 FileFrame::placed(const Vec3& metres) const {
    // A product by 1000 is rounded once, a quotient by 0.001 twice.
    const bool decimal = unit == FileUnit::centimetre || unit == FileUnit::millimetre;
    const double scale = metres_in(unit);
    const Vec3 scaled = decimal ? Vec3(metres * std::round(1 / scale)) : Vec3(metres / scale);
    // Adding 0 turns -0 into 0.
    return y_up ? Vec3(scaled.x() + 0.0, scaled.z() + 0.0, 0.0 - scaled.y())
                : Vec3(scaled + Vec3::Zero());
}

std::string FileFrame::sentence() const {
    return "Unit: " + unit_name(unit) +
           (y_up ? ". Axes: x east, y up, -z north; y = 0 is the finished floor."
                 : ". Axes: x east, y north, z up; z = 0 is the finished floor.");
}

std::vector<DecimalPoint> decimal_points(const Mesh& mesh, const FileFrame& frame, int decimals) {
    const double steps = std::pow(10, decimals);
    std::vector<DecimalPoint> points;
    points.reserve(mesh.vertices.size());
    for (const Vec3& vertex : mesh.vertices) {
        const Vec3 placed = frame.placed(vertex) * steps;
        points.push_back(
            {std::llround(placed.x()), std::llround(placed.y()), std::llround(placed.z())});
    }
    return points;
}

int decimals_for(const SolidModel& model, const FileFrame& frame) {
    const int decimals = row(frame.unit).micrometre_decimals;
    return keeps_every_face(model, frame, decimals) ? decimals : decimals + 3;
}

void append_point(std::string& text, const DecimalPoint& point, int decimals) {
    for (std::size_t axis = 0; axis < 3; ++axis) {
        if (axis > 0)
            text += ' ';
        append_decimal(text, point[axis], decimals);
    }
}

} // namespace coilwright
