#include "geometry/solids/patch.hpp"

#include <CGAL/Constrained_Delaunay_triangulation_2.h>
#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/Triangulation_face_base_with_info_2.h>
#include <CGAL/Triangulation_vertex_base_with_info_2.h>

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <limits>
#include <queue>

namespace coilwright {

namespace {

constexpr std::uint32_t no_vertex = std::numeric_limits<std::uint32_t>::max();
constexpr double growth = 0.35;       // of the edge length, per metre away from short edges
constexpr double coarsest = 0.75;     // circumradius over edge length above which a facet is split
constexpr double least_sine = 0.4226; // of 25 degrees
constexpr double fair = 0.45, close = 0.2, none = 0; // clearances of a point, in edge lengths
constexpr double reach_of_bends = 0.5; // in edge lengths: nearer points are moved onto a bend
constexpr std::size_t most_points = 2'000'000;

struct VertexNote {
    std::uint32_t index = no_vertex; // in the mesh
    double size = 0;                 // edge length wanted about it
};
struct FaceNote {
    bool inside = false;
    std::uint64_t serial = 0; // changes whenever the face does
};

using Kernel = CGAL::Exact_predicates_inexact_constructions_kernel;
using VertexBase = CGAL::Triangulation_vertex_base_with_info_2<VertexNote, Kernel>;
using FaceBase =
    CGAL::Triangulation_face_base_with_info_2<FaceNote, Kernel,
                                              CGAL::Constrained_triangulation_face_base_2<Kernel>>;
using Triangulation = CGAL::Constrained_Delaunay_triangulation_2<
    Kernel, CGAL::Triangulation_data_structure_2<VertexBase, FaceBase>,
    CGAL::No_constraint_intersection_tag>;
using Point = Triangulation::Point;
using Face = Triangulation::Face_handle;
using Vertex = Triangulation::Vertex_handle;

class PatchMesher {
public:
    PatchMesher(const Patch& patch, double tolerance, Mesh& mesh)
        : patch_(patch), surface_(*patch.surface), tolerance_(0.92 * tolerance), mesh_(mesh),
          chains_(patch.boundary), boundary_(sorted_edges(patch.boundary)) {
        chains_.insert(chains_.end(), patch.creases.begin(), patch.creases.end());
    }

    std::optional<PatchFault> run() {
        const std::size_t vertices_before = mesh_.vertices.size();
        if (auto fault = insert_chains())
            return fault;
        if (triangulation_.dimension() < 2) { // all in one line
            const std::string element = chains_.front().element;
            return PatchFault{ShapeFault::touching, element, element};
        }
        mark_inside();
        if (!fill() || !refine()) {
            mesh_.vertices.resize(vertices_before);
            const std::string element = chains_.front().element;
            return PatchFault{ShapeFault::too_many_triangles, element, element};
        }
        emit();
        return {};
    }

private:
    // Boundary.

    std::optional<PatchFault> insert_chains() {
        for (const Chain& chain : chains_)
            if (auto fault = insert_vertices(chain))
                return fault;
        std::sort(by_index_.begin(), by_index_.end(),
                  [](const auto& a, const auto& b) { return a.first < b.first; });
        if (const auto vertex = loose_end(boundary_)) {
            const std::string element = element_at(chains_, *vertex);
            return PatchFault{ShapeFault::open_boundary, element, element};
        }
        for (const Chain& chain : chains_)
            if (auto fault = insert_edges(chain))
                return fault;
        hint_ = by_index_.front().second->face(); // edges may have replaced the one remembered
        return {};
    }

    std::optional<PatchFault> insert_vertices(const Chain& chain) {
        for (const std::uint32_t index : chain.vertices) {
            const Vec2 flat = surface_.flatten(mesh_.vertices[index]);
            Vertex vertex = triangulation_.insert(Point(flat.x(), flat.y()), hint_);
            hint_ = vertex->face();
            if (vertex->info().index == no_vertex) {
                vertex->info() = {index, std::numeric_limits<double>::infinity()};
                by_index_.emplace_back(index, vertex);
            } else if (vertex->info().index != index) {
                return PatchFault{ShapeFault::touching, element_at(chains_, vertex->info().index),
                                  chain.element};
            }
        }
        return {};
    }

    std::optional<PatchFault> insert_edges(const Chain& chain) {
        for (const auto& [a, b] : edges_of(chain)) {
            const Vertex from = vertex_of(a), to = vertex_of(b);
            const double length = (mesh_.vertices[a] - mesh_.vertices[b]).norm();
            for (const Vertex& end : {from, to})
                end->info().size = std::min(end->info().size, length);
            try {
                triangulation_.insert_constraint(from, to);
            } catch (const Triangulation::Intersection_of_constraints_exception&) {
                const std::string other =
                    element_across(chains_, chain, {a, b}, [&](std::uint32_t vertex) {
                        return surface_.flatten(mesh_.vertices[vertex]);
                    });
                return PatchFault{ShapeFault::crossing, chain.element,
                                  other.empty() ? chain.element : other};
            }
        }
        return {};
    }

    Vertex vertex_of(std::uint32_t index) const {
        return std::lower_bound(by_index_.begin(), by_index_.end(), index,
                                [](const auto& a, std::uint32_t i) { return a.first < i; })
            ->second;
    }

    bool on_boundary(const Face& face, int i) const {
        if (!face->is_constrained(i))
            return false;
        const ChainEdge edge = std::minmax(face->vertex(Triangulation::cw(i))->info().index,
                                           face->vertex(Triangulation::ccw(i))->info().index);
        return std::binary_search(boundary_.begin(), boundary_.end(), edge);
    }

    void mark_inside() {
        std::vector<Face> open{triangulation_.infinite_face()};
        open.front()->info().serial = 1;
        for (std::size_t next = 0; next < open.size(); ++next) {
            const Face face = open[next];
            for (int i = 0; i < 3; ++i) {
                const Face beside = face->neighbor(i);
                if (beside->info().serial != 0)
                    continue;
                beside->info() = {face->info().inside != on_boundary(face, i), 1};
                open.push_back(beside);
            }
        }
        serial_ = 1;
    }

    // Points inside.

    static Vec2 flat_of(const Vertex& v) { return {v->point().x(), v->point().y()}; }
    const Vec3& space_of(const Vertex& v) const { return mesh_.vertices[v->info().index]; }

    /// Edge length wanted at a point in a face: the surface's, less beside short edges.
    double size_at(const Vec2& flat, const Vec3& space, const Face& face) const {
        double size = surface_.spacing(flat);
        for (int i = 0; i < 3; ++i) {
            const Vertex v = face->vertex(i);
            size = std::min(size, v->info().size + growth * (space_of(v) - space).norm());
        }
        return size;
    }

    double nearest_corner(const Vec3& space, const Face& face) const {
        double nearest = std::numeric_limits<double>::infinity();
        for (int i = 0; i < 3; ++i)
            nearest = std::min(nearest, (space_of(face->vertex(i)) - space).norm());
        return nearest;
    }

    /// Whether a point would stand so close before an undivided edge that it leaves a flat
    /// triangle.
    bool crowds_an_edge(const Point& at, const Face& face) {
        rim_.clear();
        triangulation_.get_boundary_of_conflicts(at, std::back_inserter(rim_), face);
        for (const auto& [beside, i] : rim_) {
            if (!beside->is_constrained(i))
                continue;
            const Vec2 centre(at.x(), at.y());
            const Vec2 u = flat_of(beside->vertex(Triangulation::cw(i))) - centre;
            const Vec2 v = flat_of(beside->vertex(Triangulation::ccw(i))) - centre;
            // Seen under more than 105 degrees.
            if (u.dot(v) < -0.26 * std::sqrt(u.squaredNorm() * v.squaredNorm()))
                return true;
        }
        return false;
    }

    /// The face inside the patch that a point may be put into, or none.
    Face place_for(const Point& at, Face near) {
        Triangulation::Locate_type type;
        int i = 0;
        const Face face = triangulation_.locate(at, type, i, near);
        if (type == Triangulation::VERTEX || triangulation_.is_infinite(face) ||
            !face->info().inside)
            return {};
        return type == Triangulation::EDGE && face->is_constrained(i) ? Face{} : face;
    }

    Vertex add(const Point& at, const Vec3& space, double size, const Face& face) {
        const Vertex vertex = triangulation_.insert(at, face);
        vertex->info() = {static_cast<std::uint32_t>(mesh_.vertices.size()), size};
        mesh_.vertices.push_back(space);
        auto around = triangulation_.incident_faces(vertex);
        const auto first = around;
        do
            around->info() = {true, ++serial_};
        while (++around != first);
        hint_ = vertex->face();
        return vertex;
    }

    bool fill() {
        Vec2 low = Vec2::Constant(std::numeric_limits<double>::infinity()), high = -low;
        for (const auto& [index, vertex] : by_index_) {
            low = low.cwiseMin(flat_of(vertex));
            high = high.cwiseMax(flat_of(vertex));
        }
        const std::vector<Vec2> pattern = surface_.pattern(low, high);
        if (pattern.size() > most_points)
            return false;
        for (const Vec2& flat : pattern) {
            const Point at(flat.x(), flat.y());
            const Face face = place_for(at, hint_);
            if (face == Face{})
                continue;
            hint_ = face;
            const Vec3 space = surface_.point(flat);
            const double wanted = surface_.spacing(flat);
            const double size = size_at(flat, space, face);
            if (size >= 0.8 * wanted && nearest_corner(space, face) >= 0.65 * wanted &&
                !crowds_an_edge(at, face))
                add(at, space, size, face);
        }
        return true;
    }

    // Refinement.

    struct Task {
        double urgency;
        std::uint64_t serial;
        Face face;
        bool must; // over the tolerance: a point has to be found
        bool operator<(const Task& other) const {
            return urgency != other.urgency ? urgency < other.urgency : serial > other.serial;
        }
    };

    Vec2 middle(const Face& face) const {
        return (flat_of(face->vertex(0)) + flat_of(face->vertex(1)) + flat_of(face->vertex(2))) / 3;
    }

    /// Greatest distance of the facet from the surface, at its middle and along its inner edges: at
    /// their middles and where they pass a bend.
    double facet_deviation(const Face& face) const {
        const Vec3* corner[3] = {&space_of(face->vertex(0)), &space_of(face->vertex(1)),
                                 &space_of(face->vertex(2))};
        double most = surface_.deviation((*corner[0] + *corner[1] + *corner[2]) / 3);
        for (int i = 0; i < 3; ++i) {
            if (face->is_constrained(i))
                continue;
            const Vec3 &a = *corner[(i + 1) % 3], &b = *corner[(i + 2) % 3];
            most = std::max(most, surface_.deviation((a + b) / 2));
            const double bend = surface_.bend_between(a, b);
            if (bend > 0)
                most = std::max(most, surface_.deviation(a + bend * (b - a)));
        }
        return most;
    }

    void judge(const Face& face) {
        if (triangulation_.is_infinite(face) || !face->info().inside)
            return;
        const Vec3 &a = space_of(face->vertex(0)), &b = space_of(face->vertex(1)),
                   &c = space_of(face->vertex(2));
        const double ab = (b - a).norm(), bc = (c - b).norm(), ca = (a - c).norm();
        const double twice_area = (b - a).cross(c - a).norm();
        const double circumradius = twice_area > 0 ? ab * bc * ca / (2 * twice_area) : ab + bc + ca;
        const Vec2 at = middle(face);
        const double size = size_at(at, surface_.point(at), face);
        const double deviation = facet_deviation(face) / tolerance_;
        const double coarse = circumradius / (coarsest * size);
        const double sine = std::min({ab, bc, ca}) / (2 * circumradius);
        double urgency = 0;
        if (deviation > 1)
            urgency = 2 + deviation;
        else if (coarse > 1)
            urgency = 1 + std::min(coarse, 1e6) / 1e6;
        else if (sine < least_sine && circumradius > 0.35 * size)
            urgency = 1 - sine;
        if (urgency > 0)
            tasks_.push({urgency, face->info().serial, face, deviation > 1});
    }

    static Vec2 circumcentre(const Vec2& a, const Vec2& b, const Vec2& c) {
        const Vec2 u = b - a, v = c - a;
        const double twice = 2 * (u.x() * v.y() - u.y() * v.x());
        const Vec2 w = v.y() * u.squaredNorm() * Vec2(1, 0) - u.y() * v.squaredNorm() * Vec2(1, 0) +
                       u.x() * v.squaredNorm() * Vec2(0, 1) - v.x() * u.squaredNorm() * Vec2(0, 1);
        return a + w / twice;
    }

    bool try_point(const Vec2& flat, const Task& task, double clearance) {
        if (!flat.allFinite())
            return false;
        const double reach = reach_of_bends * smallest_size(task.face);
        const Vec2 on_bend = surface_.drawn_to_bend(flat, reach);
        return (on_bend != flat && put_point(on_bend, task, std::max(clearance, close))) ||
               put_point(flat, task, clearance);
    }

    /// Puts a point in unless it comes nearer to another than that share of an edge length, or
    /// crowds an undivided edge; with no clearance asked for, anywhere.
    bool put_point(const Vec2& flat, const Task& task, double clearance) {
        const Point at(flat.x(), flat.y());
        const Face face = place_for(at, task.face);
        if (face == Face{})
            return false;
        const Vec3 space = surface_.point(flat);
        const double size = size_at(flat, space, face);
        if (clearance > none &&
            (nearest_corner(space, face) < clearance * size || crowds_an_edge(at, face)))
            return false;
        const Vertex vertex = add(at, space, size, face);
        auto around = triangulation_.incident_faces(vertex);
        const auto first = around;
        do
            judge(around);
        while (++around != first);
        return true;
    }

    bool still_there(const Task& task) const { return task.face->info().serial == task.serial; }

    static double smallest_size(const Face& face) {
        return std::min({face->vertex(0)->info().size, face->vertex(1)->info().size,
                         face->vertex(2)->info().size});
    }

    void settle(const Task& task) {
        const Vec2 a = flat_of(task.face->vertex(0)), b = flat_of(task.face->vertex(1)),
                   c = flat_of(task.face->vertex(2));
        try_point(circumcentre(a, b, c), task, fair);
        if (!task.must)
            return;
        // Over the tolerance, a point has to be found, if need be a worse one.
        const Vec2 corner[3] = {a, b, c};
        int longest = -1; // of the edges that may be divided
        const auto length = [&](int i) {
            return (corner[(i + 1) % 3] - corner[(i + 2) % 3]).norm();
        };
        for (int i = 0; i < 3; ++i)
            if (!task.face->is_constrained(i) && (longest < 0 || length(i) > length(longest)))
                longest = i;
        const Vec2 inside = (a + b + c) / 3;
        const Vec2 on_edge =
            longest < 0 ? inside : (corner[(longest + 1) % 3] + corner[(longest + 2) % 3]) / 2;
        for (const double clearance : {fair, close, none})
            for (const Vec2& flat : {on_edge, inside})
                if (still_there(task))
                    try_point(flat, task, clearance);
    }

    bool refine() {
        for (auto face = triangulation_.finite_faces_begin();
             face != triangulation_.finite_faces_end(); ++face) {
            face->info().serial = ++serial_;
            judge(face);
        }
        while (!tasks_.empty()) {
            const Task task = tasks_.top();
            tasks_.pop();
            if (still_there(task))
                settle(task);
            if (triangulation_.number_of_vertices() > most_points)
                return false;
        }
        return true;
    }

    void emit() {
        for (auto face = triangulation_.finite_faces_begin();
             face != triangulation_.finite_faces_end(); ++face) {
            if (!face->info().inside)
                continue;
            std::array<std::uint32_t, 3> corners{face->vertex(0)->info().index,
                                                 face->vertex(1)->info().index,
                                                 face->vertex(2)->info().index};
            if (patch_.flipped)
                std::swap(corners[1], corners[2]);
            mesh_.triangles.push_back(corners);
        }
    }

    const Patch& patch_;
    const Surface& surface_;
    double tolerance_;
    Mesh& mesh_;
    std::vector<Chain> chains_; // boundary, then creases
    std::vector<ChainEdge> boundary_;
    Triangulation triangulation_;
    Face hint_;
    std::vector<std::pair<std::uint32_t, Vertex>> by_index_;
    std::vector<Triangulation::Edge> rim_;
    std::priority_queue<Task> tasks_;
    std::uint64_t serial_ = 0;
};

} // namespace

std::optional<PatchFault> mesh_patch(const Patch& patch, double tolerance, Mesh& mesh) {
    return PatchMesher(patch, tolerance, mesh).run();
}

} // namespace coilwright
