#include "geometry/solids/crossing.hpp"

#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/box_intersection_d.h>

#include <Eigen/Geometry>

#include <algorithm>

namespace coilwright {

namespace {

using Kernel = CGAL::Exact_predicates_inexact_constructions_kernel;
using Point = Kernel::Point_3;
using Corners = std::array<std::uint32_t, 3>;
using Box =
    CGAL::Box_intersection_d::Box_with_info_d<double, 3, std::uint32_t,
                                              CGAL::Box_intersection_d::ID_FROM_BOX_ADDRESS>;

class CrossingTest {
public:
    explicit CrossingTest(const Mesh& mesh) : mesh_(mesh), triangles_(mesh.triangles) {
        points_.reserve(mesh.vertices.size());
        for (const Vec3& v : mesh.vertices)
            points_.emplace_back(v.x(), v.y(), v.z());
        planes_.reserve(triangles_.size());
        for (const Corners& c : triangles_) {
            const Vec3& at = mesh.vertices[c[0]];
            const Vec3 e1 = mesh.vertices[c[1]] - at, e2 = mesh.vertices[c[2]] - at;
            planes_.push_back({at, e1.cross(e2),
                               doubt * std::sqrt(e1.squaredNorm()) * std::sqrt(e2.squaredNorm())});
        }
    }

    bool flat(std::uint32_t t) const {
        if (planes_[t].normal.lpNorm<1>() > planes_[t].error)
            return false;
        const Corners& c = triangles_[t];
        return CGAL::collinear(points_[c[0]], points_[c[1]], points_[c[2]]);
    }

    bool crosses(std::uint32_t s, std::uint32_t t) const {
        Corners a = triangles_[s], b = triangles_[t];
        const int shared = bring_shared_to_front(a, b);
        if (shared == 3)
            return true;
        if (clearly_beside(planes_[s], b, shared) || clearly_beside(planes_[t], a, shared))
            return false;
        if (clearly_apart(a, b, shared))
            return false;
        if (shared == 2)
            return folded_flat(a, b);
        return shared == 1 ? meet_beyond_corner(a, b)
                           : CGAL::do_intersect(triangle(a), triangle(b));
    }

    CGAL::Bbox_3 box(std::uint32_t t) const {
        const Corners& c = triangles_[t];
        return points_[c[0]].bbox() + points_[c[1]].bbox() + points_[c[2]].bbox();
    }

private:
    static int bring_shared_to_front(Corners& a, Corners& b) {
        int shared = 0;
        for (int i = 0; i < 3; ++i)
            for (int j = shared; j < 3; ++j)
                if (a[i] == b[j]) {
                    std::swap(a[i], a[shared]);
                    std::swap(b[j], b[shared]);
                    ++shared;
                    break;
                }
        return shared;
    }

    /// A triangle's plane. Plain arithmetic errs in a height over it, times |normal|, by less than
    /// `error` for each metre along.
    struct Plane {
        Vec3 at, normal;
        double error;
    };
    static constexpr double doubt = 1e-12; // over a hundred times the rounding of three products

    /// Whether the corners of a triangle that it does not share with another lie all on one side of
    /// the other's plane. So most pairs are told apart, at the price of a few products.
    bool clearly_beside(const Plane& plane, const Corners& other, int shared) const {
        int above = 0, below = 0;
        for (int i = shared; i < 3; ++i) {
            const Vec3 along = mesh_.vertices[other[static_cast<std::size_t>(i)]] - plane.at;
            const double height = plane.normal.dot(along);
            const double least = plane.error * along.lpNorm<1>();
            above += height > least;
            below += height < -least;
        }
        return above == 3 - shared || below == 3 - shared;
    }

    /// Most neighbours in one plane are told apart by a plane between them, found from their
    /// middles in plain arithmetic with a margin far over its errors. Exact signs are for the rest:
    /// they are slow where many triangles lie in one plane, as on flat faces.
    bool clearly_apart(const Corners& a, const Corners& b, int shared) const {
        constexpr double margin = 1e-6;
        const auto at = [&](std::uint32_t v) -> const Vec3& { return mesh_.vertices[v]; };
        const Vec3 middle_a = (at(a[0]) + at(a[1]) + at(a[2])) / 3;
        const Vec3 middle_b = (at(b[0]) + at(b[1]) + at(b[2])) / 3;
        Vec3 across = middle_b - middle_a;
        if (shared == 2) { // the plane is to hold the edge they share
            const Vec3 edge = at(a[1]) - at(a[0]);
            across -= across.dot(edge) / edge.squaredNorm() * edge;
        } else if (shared == 1) {
            const Vec3 to_a = middle_a - at(a[0]), to_b = middle_b - at(a[0]);
            across = to_b * std::sqrt(to_a.squaredNorm() / to_b.squaredNorm()) - to_a;
        }
        // Heights over the plane through what is shared, or through the middle between.
        const Vec3 foot = shared > 0 ? at(a[0]) : Vec3((middle_a + middle_b) / 2);
        double square = 0;
        for (int i = 0; i < 3; ++i)
            square = std::max(
                {square, (at(a[i]) - foot).squaredNorm(), (at(b[i]) - foot).squaredNorm()});
        const double least = margin * std::sqrt(across.squaredNorm()) *
                             (std::sqrt(square) + margin * std::sqrt(foot.squaredNorm()));
        for (int i = shared; i < 3; ++i)
            if (!(across.dot(at(a[i]) - foot) < -least && across.dot(at(b[i]) - foot) > least))
                return false;
        return true;
    }

    Kernel::Triangle_3 triangle(const Corners& c) const {
        return {points_[c[0]], points_[c[1]], points_[c[2]]};
    }

    /// Two triangles on one edge overlap only if they lie in one plane on the same side of it.
    bool folded_flat(const Corners& a, const Corners& b) const {
        return CGAL::coplanar(points_[a[0]], points_[a[1]], points_[a[2]], points_[b[2]]) &&
               CGAL::coplanar_orientation(points_[a[0]], points_[a[1]], points_[a[2]],
                                          points_[b[2]]) == CGAL::POSITIVE;
    }

    /// All but the pairs that do touch are settled by the first two orientation signs.
    bool meet_beyond_corner(const Corners& a, const Corners& b) const {
        if (all_on_one_side(a, b) || all_on_one_side(b, a))
            return false;
        const Kernel::Segment_3 far_a(points_[a[1]], points_[a[2]]);
        const Kernel::Segment_3 far_b(points_[b[1]], points_[b[2]]);
        return CGAL::do_intersect(triangle(a), far_b) || CGAL::do_intersect(triangle(b), far_a);
    }

    bool all_on_one_side(const Corners& plane, const Corners& other) const {
        const auto side = [&](std::uint32_t v) {
            return CGAL::orientation(points_[plane[0]], points_[plane[1]], points_[plane[2]],
                                     points_[v]);
        };
        const CGAL::Orientation first = side(other[1]);
        return first != CGAL::COPLANAR && first == side(other[2]);
    }

    const Mesh& mesh_;
    const std::vector<Corners>& triangles_;
    std::vector<Point> points_;
    std::vector<Plane> planes_;
};

} // namespace

std::optional<TrianglePair> first_crossing(const Mesh& mesh) {
    const CrossingTest test(mesh);
    std::vector<Box> boxes;
    boxes.reserve(mesh.triangles.size());
    for (std::uint32_t t = 0; t < mesh.triangles.size(); ++t)
        if (!test.flat(t))
            boxes.emplace_back(test.box(t), t);
    // The boxes' order is of no matter to the result, which is the lowest of all crossing pairs.
    std::vector<const Box*> pointers;
    pointers.reserve(boxes.size());
    for (const Box& box : boxes)
        pointers.push_back(&box);
    std::optional<TrianglePair> lowest;
    CGAL::box_self_intersection_d(
        pointers.begin(), pointers.end(),
        [&](const Box* first, const Box* second) {
            const TrianglePair pair = std::minmax(first->info(), second->info());
            if (lowest && *lowest <= pair)
                return;
            if (test.crosses(pair.first, pair.second))
                lowest = pair;
        },
        std::ptrdiff_t{300});
    return lowest;
}

std::vector<std::uint32_t> flat_triangles(const Mesh& mesh) {
    const CrossingTest test(mesh);
    std::vector<std::uint32_t> found;
    for (std::uint32_t t = 0; t < mesh.triangles.size(); ++t)
        if (test.flat(t))
            found.push_back(t);
    return found;
}

} // namespace coilwright
