// OBJ by our own hand: the writer of Assimp 5.2 splits vertices, rounds to single precision and
// adds smoothed normals.
#include "exporters/bytes.hpp"
#include "exporters/materials.hpp"
#include "exporters/model_formats.hpp"

#include <array>
#include <cmath>
#include <set>

namespace coilwright {
namespace {

using Point = std::array<std::int64_t, 3>; // in 10^-decimals metres

std::vector<Point> rounded_points(const Mesh& mesh, double per_metre) {
    std::vector<Point> points;
    points.reserve(mesh.vertices.size());
    for (const Vec3& vertex : mesh.vertices)
        points.push_back({std::llround(vertex.x() * per_metre),
                          std::llround(vertex.y() * per_metre),
                          std::llround(vertex.z() * per_metre)});
    return points;
}

__extension__ using Wide = __int128;

// Exact: the products fit in 128 bits for any building under 10^9 units of 10^-9 m.
bool has_area(const Point& a, const Point& b, const Point& c) {
    for (int i = 0; i < 3; ++i) {
        const int j = (i + 1) % 3;
        const Wide left = static_cast<Wide>(b[i] - a[i]) * (c[j] - a[j]);
        const Wide right = static_cast<Wide>(b[j] - a[j]) * (c[i] - a[i]);
        if (left != right)
            return true;
    }
    return false;
}

bool keeps_every_face(const SolidModel& model, double per_metre) {
    for (const SolidPart& part : model.parts) {
        const std::vector<Point> points = rounded_points(part.mesh, per_metre);
        for (const auto& [a, b, c] : part.mesh.triangles)
            if (!has_area(points[a], points[b], points[c]))
                return false;
    }
    return true;
}

// Micrometres, or nanometres where a face would vanish in micrometres.
int least_decimals(const SolidModel& model) {
    return keeps_every_face(model, 1e6) ? 6 : 9;
}

std::string heading(const SolidModel& model) {
    return "# Coilwright " COILWRIGHT_VERSION "\n# " + comment_line(model.name) + "\n";
}

std::string material_library(const SolidModel& model) {
    std::set<Material> used;
    for (const SolidPart& part : model.parts)
        used.insert(part.material);
    std::string text = heading(model) + "# Kd: sRGB values\n";
    for (const Material material : used) {
        const MaterialLook& looks = look(material);
        text += "\nnewmtl " + looks.name + "\nKd";
        for (const double linear : {looks.red, looks.green, looks.blue}) {
            text += ' ';
            append_decimal(text, std::llround(srgb_encoded(linear) * 1e4), 4);
        }
        text += "\nKs 0 0 0\nd ";
        append_decimal(text, std::llround(looks.opacity * 100), 2);
        text += "\nillum 1\n";
    }
    return text;
}

} // namespace

std::vector<OutputFile> write_obj(const SolidModel& model, const std::string& stem) {
    const int decimals = least_decimals(model);
    const double per_metre = decimals == 6 ? 1e6 : 1e9;
    std::string text = heading(model) +
                       "# Unit: metre. Axes: x east, y north, z up; z = 0 is the finished floor.\n"
                       "mtllib " +
                       stem + ".mtl\ns off\n";
    std::size_t before = 1; // vertices count through the whole file, from 1
    for (const SolidPart& part : model.parts) {
        text += "\no " + part.slug + "\ng " + part.slug + "\n";
        text += "usemtl " + look(part.material).name + "\n";
        for (const Point& point : rounded_points(part.mesh, per_metre)) {
            text += 'v';
            for (const std::int64_t value : point) {
                text += ' ';
                append_decimal(text, value, decimals);
            }
            text += '\n';
        }
        for (const auto& triangle : part.mesh.triangles) {
            text += 'f';
            for (const std::uint32_t corner : triangle) {
                text += ' ';
                text += std::to_string(before + corner);
            }
            text += '\n';
        }
        before += part.mesh.vertices.size();
    }
    return {{stem + ".obj", std::move(text)}, {stem + ".mtl", material_library(model)}};
}

} // namespace coilwright
