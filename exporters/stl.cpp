#include "exporters/bytes.hpp"
#include "exporters/model_formats.hpp"

#include <Eigen/Geometry>
#include <limits>
#include <stdexcept>

namespace coilwright {
namespace {

using Vec3f = Eigen::Vector3f;

void append_vector(std::string& bytes, const Vec3f& vector) {
    for (int axis = 0; axis < 3; ++axis)
        append_f32(bytes, vector[axis] + 0.0f); // no -0
}

void append_facet(std::string& bytes, const Vec3f& a, const Vec3f& b, const Vec3f& c) {
    const Vec3 across =
        (b.cast<double>() - a.cast<double>()).cross(c.cast<double>() - a.cast<double>());
    const double length = across.norm();
    append_vector(bytes, length > 0 ? Vec3f((across / length).cast<float>()) : Vec3f::Zero());
    append_vector(bytes, a);
    append_vector(bytes, b);
    append_vector(bytes, c);
    append_u16(bytes, 0);
}

} // namespace

std::vector<OutputFile> write_stl(const SolidModel& model, const std::string& stem,
                                  const ModelOptions& options) {
    const FileFrame frame = frame_of(*find_model_format("stl"), options);
    std::uint64_t count = 0;
    for (const SolidPart& part : model.parts)
        count += part.mesh.triangles.size();
    if (count > std::numeric_limits<std::uint32_t>::max())
        throw std::length_error("an STL file holds at most 2^32 - 1 triangles");

    // Readers take a file that begins with "solid" for the text form of STL.
    std::string bytes = "Coilwright " COILWRIGHT_VERSION ", binary STL, unit " +
                        unit_name(frame.unit) + (frame.y_up ? ", y up" : ", z up");
    bytes.resize(80, ' ');
    bytes.reserve(84 + 50 * count);
    append_u32(bytes, static_cast<std::uint32_t>(count));
    for (const SolidPart& part : model.parts) {
        std::vector<Vec3f> points;
        points.reserve(part.mesh.vertices.size());
        for (const Vec3& vertex : part.mesh.vertices)
            points.push_back(frame.placed(vertex).cast<float>());
        for (const auto& [a, b, c] : part.mesh.triangles)
            append_facet(bytes, points[a], points[b], points[c]);
    }
    return one_file(stem + ".stl", std::move(bytes));
}

} // namespace coilwright
