#include "geometry/solids/plaster.hpp"

#include "geometry/solids/mesh_clip.hpp"
#include "geometry/solids/wall_faces.hpp"

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <numeric>

namespace coilwright {

namespace {

enum class Coat { none, inside, outside, reveal };

constexpr double hair = 1e-6;        // metres: of height, for slopes
constexpr double floor_reach = 0.02; // above the floor: what is judged by where it stands
constexpr double off_the_wall = 0.002;
constexpr double smooth = 0.999; // cosine between normals that are one surface's
constexpr double longest_mitre = 4;

/// Triangles of one face that hang together.
struct Area {
    const ShellFace* face = nullptr;
    Coat coat = Coat::none;
    double thickness = 0;
    std::vector<std::uint32_t> triangles;
};

/// A plane that the plaster's face keeps a distance from.
struct Wanted {
    Vec3 normal;
    double distance = 0;
};

class Plasterer {
public:
    Plasterer(const BuildingShell& shell, const BuildingForm& building, const PlasterCoats& coats)
        : shell_(shell), building_(building), coats_(coats), faces_(building) {}

    PlasterFaces run() {
        find_areas();
        for (Area& area : areas_)
            judge(area);
        find_ridges();
        PlasterFaces result;
        result.inside = clipped_below(laid(Coat::inside), 0);
        result.outside = clipped_below(laid(Coat::outside), coats_.ground);
        result.reveals = clipped_below(laid(Coat::reveal), 0);
        return result;
    }

private:
    const Vec3& vertex(std::uint32_t index) const { return shell_.mesh.vertices[index]; }

    Vec3 facet(std::uint32_t triangle) const { // twice its area long
        const auto& [a, b, c] = shell_.mesh.triangles[triangle];
        return (vertex(b) - vertex(a)).cross(vertex(c) - vertex(a));
    }

    void find_areas() {
        const auto& triangles = shell_.mesh.triangles;
        std::vector<std::uint32_t> root(shell_.mesh.vertices.size());
        std::iota(root.begin(), root.end(), 0U);
        const auto find = [&](std::uint32_t v) {
            while (root[v] != v)
                v = root[v] = root[root[v]];
            return v;
        };
        area_of_.resize(triangles.size());
        for (std::size_t k = 0; k < shell_.faces.size(); ++k) {
            const std::uint32_t first = shell_.faces[k].first;
            const std::uint32_t end = k + 1 < shell_.faces.size()
                                          ? shell_.faces[k + 1].first
                                          : static_cast<std::uint32_t>(triangles.size());
            for (std::uint32_t t = first; t < end; ++t)
                for (const std::uint32_t v : triangles[t])
                    root[v] = v;
            for (std::uint32_t t = first; t < end; ++t)
                for (const std::uint32_t v : triangles[t])
                    root[find(v)] = find(triangles[t][0]);
            std::map<std::uint32_t, std::size_t> area_of_root;
            for (std::uint32_t t = first; t < end; ++t) {
                const auto [entry, is_new] =
                    area_of_root.try_emplace(find(triangles[t][0]), areas_.size());
                if (is_new) {
                    areas_.emplace_back();
                    areas_.back().face = &shell_.faces[k];
                }
                areas_[entry->second].triangles.push_back(t);
                area_of_[t] = entry->second;
            }
        }
    }

    bool in_room(const Vec3& point) const {
        return contains(room_expression(building_, point.z()), point.head<2>());
    }

    void judge(Area& area) const {
        const ShellFace& face = *area.face;
        double largest = 0, top = -std::numeric_limits<double>::infinity();
        Vec3 before(0, 0, 0); // a point before the wall
        for (const std::uint32_t t : area.triangles) {
            Vec3 middle(0, 0, 0);
            for (const std::uint32_t v : shell_.mesh.triangles[t]) {
                middle += vertex(v) / 3;
                top = std::max(top, vertex(v).z());
            }
            const Vec3 normal = facet(t);
            if (middle.z() > std::min(floor_reach, face.face < 0 ? face.z : floor_reach) - hair &&
                normal.norm() > largest) {
                largest = normal.norm();
                before = middle + off_the_wall * normal.normalized();
            }
        }
        if (largest == 0 || top <= 2 * height_tie)
            return; // in the ground, or a threshold
        const bool hole = face.face >= 0 ? faces_[face.face].tag.role == SectionRole::hole
                                         : face.element.rfind("opening.", 0) == 0;
        area.coat = hole ? Coat::reveal : in_room(before) ? Coat::inside : Coat::outside;
        area.thickness = area.coat == Coat::outside ? coats_.outside : coats_.inside;
        if (area.thickness <= 0)
            area.coat = Coat::none;
    }

    /// The true normals at a vertex of an area, away from the wall: two where the face bends.
    std::vector<Vec3> normals(const Area& area, const Vec3& at) const {
        const ShellFace& from = *area.face;
        if (from.face < 0)
            return {{0, 0, from.under ? -1.0 : 1.0}};
        const WallFace& face = faces_[from.face];
        const Vec2 way =
            face.circle ? Vec2((at.head<2>() - face.centre).normalized()) : face.outward;
        std::vector<Vec3> found;
        for (const double step : {-hair, hair}) {
            const double other = std::clamp(at.z() + step, face.low, face.high);
            const double here = std::clamp(at.z(), face.low, face.high);
            if (std::abs(other - here) < hair / 2)
                continue;
            const double slope = (face.offset(other) - face.offset(here)) / (other - here);
            Vec3 normal(way.x(), way.y(), -slope);
            normal *= (from.back ? -1 : 1) / normal.norm();
            if (found.empty() || found.front().dot(normal) < smooth)
                found.push_back(normal);
        }
        return found;
    }

    /// Where two areas meet in an edge that stands out, or smoothly: at its vertices each keeps the
    /// other's distance too.
    void find_ridges() {
        std::map<std::pair<std::uint32_t, std::uint32_t>, std::uint32_t> first_triangle;
        const auto& triangles = shell_.mesh.triangles;
        for (std::uint32_t t = 0; t < triangles.size(); ++t)
            for (int i = 0; i < 3; ++i) {
                const std::uint32_t a = triangles[t][static_cast<std::size_t>(i)];
                const std::uint32_t b = triangles[t][static_cast<std::size_t>((i + 1) % 3)];
                const auto [entry, is_new] = first_triangle.try_emplace(std::minmax(a, b), t);
                if (!is_new && area_of_[entry->second] != area_of_[t])
                    note_ridge(a, b, entry->second, t);
            }
    }

    void note_ridge(std::uint32_t a, std::uint32_t b, std::uint32_t one, std::uint32_t other) {
        const std::size_t i = area_of_[one], j = area_of_[other];
        if (areas_[i].coat == Coat::none && areas_[j].coat == Coat::none)
            return;
        const auto third = [&](std::uint32_t t) {
            for (const std::uint32_t v : shell_.mesh.triangles[t])
                if (v != a && v != b)
                    return v;
            return a;
        };
        for (const std::uint32_t v : {a, b}) {
            const Vec3 n = normals(areas_[i], vertex(v)).front();
            const Vec3 m = normals(areas_[j], vertex(v)).front();
            const bool out = m.dot(vertex(third(one)) - vertex(v)) < 0 &&
                             n.dot(vertex(third(other)) - vertex(v)) < 0;
            if (out || n.dot(m) > smooth) {
                beside_[{v, i}].push_back(j);
                beside_[{v, j}].push_back(i);
            }
        }
    }

    Vec3 offset(std::uint32_t v, std::size_t own) const {
        std::vector<std::size_t> kept{own};
        if (const auto found = beside_.find({v, own}); found != beside_.end())
            kept.insert(kept.end(), found->second.begin(), found->second.end());
        std::sort(kept.begin(), kept.end());
        kept.erase(std::unique(kept.begin(), kept.end()), kept.end());
        std::vector<Wanted> wanted;
        for (const std::size_t index : kept)
            for (const Vec3& normal : normals(areas_[index], vertex(v)))
                if (std::none_of(wanted.begin(), wanted.end(), [&](const Wanted& one) {
                        return one.normal.dot(normal) > smooth &&
                               std::abs(one.distance - areas_[index].thickness) < hair;
                    }))
                    wanted.push_back({normal, areas_[index].thickness});
        if (wanted.size() == 1)
            return vertex(v) + wanted.front().distance * wanted.front().normal;
        Eigen::MatrixXd planes(wanted.size(), 3);
        Eigen::VectorXd distances(wanted.size());
        for (std::size_t k = 0; k < wanted.size(); ++k) {
            planes.row(static_cast<Eigen::Index>(k)) = wanted[k].normal.transpose();
            distances[static_cast<Eigen::Index>(k)] = wanted[k].distance;
        }
        Eigen::CompleteOrthogonalDecomposition<Eigen::MatrixXd> solver;
        solver.setThreshold(0.02);
        solver.compute(planes);
        Vec3 way = solver.solve(distances);
        const double most = longest_mitre * std::max(coats_.inside, coats_.outside);
        if (way.norm() > most)
            way *= most / way.norm();
        return vertex(v) + way;
    }

    Mesh laid(Coat coat) const {
        Mesh mesh;
        for (std::size_t i = 0; i < areas_.size(); ++i) {
            if (areas_[i].coat != coat)
                continue;
            std::map<std::uint32_t, std::uint32_t> numbers;
            for (const std::uint32_t t : areas_[i].triangles) {
                std::array<std::uint32_t, 3> corners{};
                for (std::size_t c = 0; c < 3; ++c) {
                    const std::uint32_t v = shell_.mesh.triangles[t][c];
                    const auto [entry, is_new] =
                        numbers.try_emplace(v, static_cast<std::uint32_t>(mesh.vertices.size()));
                    if (is_new)
                        mesh.vertices.push_back(offset(v, i));
                    corners[c] = entry->second;
                }
                mesh.triangles.push_back(corners);
            }
        }
        return mesh;
    }

    const BuildingShell& shell_;
    const BuildingForm& building_;
    PlasterCoats coats_;
    WallFaces faces_;
    std::vector<Area> areas_;
    std::vector<std::size_t> area_of_; // per triangle
    std::map<std::pair<std::uint32_t, std::size_t>, std::vector<std::size_t>> beside_;
};

} // namespace

PlasterFaces plaster_faces(const BuildingShell& shell, const BuildingForm& building,
                           const PlasterCoats& coats) {
    return Plasterer(shell, building, coats).run();
}

} // namespace coilwright
