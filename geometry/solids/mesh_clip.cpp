#include "geometry/solids/mesh_clip.hpp"

#include <Eigen/Geometry>

#include <map>

namespace coilwright {

namespace {

constexpr double least_area = 1e-10; // m2

class Clipper {
public:
    explicit Clipper(double z) : z_(z) {}

    void add(const Vec3& a, const Vec3& b, const Vec3& c) {
        const Vec3* const corners[] = {&a, &b, &c};
        std::vector<Vec3> kept;
        for (int i = 0; i < 3; ++i) {
            const Vec3 &from = *corners[i], &to = *corners[(i + 1) % 3];
            if (from.z() >= z_)
                kept.push_back(from);
            if ((from.z() >= z_) != (to.z() >= z_))
                kept.push_back(crossing(from, to));
        }
        for (std::size_t k = 2; k < kept.size(); ++k)
            if ((kept[k - 1] - kept[0]).cross(kept[k] - kept[0]).norm() > 2 * least_area)
                mesh_.triangles.push_back({vertex(kept[0]), vertex(kept[k - 1]), vertex(kept[k])});
    }

    Mesh take() { return std::move(mesh_); }

private:
    /// The same for both triangles of an edge.
    Vec3 crossing(const Vec3& from, const Vec3& to) const {
        const Vec3 &low = from.z() < to.z() ? from : to, &high = from.z() < to.z() ? to : from;
        Vec3 at = low + (z_ - low.z()) / (high.z() - low.z()) * (high - low);
        at.z() = z_;
        return at;
    }

    std::uint32_t vertex(const Vec3& at) {
        const auto [entry, is_new] = numbers_.try_emplace(
            {at.x(), at.y(), at.z()}, static_cast<std::uint32_t>(mesh_.vertices.size()));
        if (is_new)
            mesh_.vertices.push_back(at);
        return entry->second;
    }

    double z_;
    Mesh mesh_;
    std::map<std::array<double, 3>, std::uint32_t> numbers_;
};

} // namespace

Mesh clipped_below(const Mesh& mesh, double z) {
    Clipper clipper(z);
    for (const auto& [a, b, c] : mesh.triangles)
        clipper.add(mesh.vertices[a], mesh.vertices[b], mesh.vertices[c]);
    return clipper.take();
}

} // namespace coilwright
