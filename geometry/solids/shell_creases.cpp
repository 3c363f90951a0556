#include "geometry/solids/shell_creases.hpp"

#include "geometry/solids/curve_sampling.hpp"
#include "geometry/solids/section_trace.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace coilwright {

namespace {

constexpr double clear = 0.4;     // of an edge, between a crease and what bounds its face
constexpr double over_edge = 1.5; // a crease's first edge, over those of the curve it starts on
constexpr double growth = 0.4;    // of its edges, per metre

class CreaseFinder {
public:
    CreaseFinder(const WallFaces& faces, double tolerance, ShellPlan& plan)
        : faces_(faces), tolerance_(0.85 * tolerance), plan_(plan),
          creases_(plan.curves_of.size()) {}

    std::vector<std::vector<Chain>> run() {
        for (int face = 0; face < 2 * faces_.size(); ++face) {
            if (plan_.curves_of[static_cast<std::size_t>(face)].empty())
                continue;
            const Surface& surface = *plan_.surfaces[static_cast<std::size_t>(face_of(face))];
            for (const double z : surface.section()->kinks())
                add_creases(face, z);
        }
        return std::move(creases_);
    }

private:
    void add_creases(int face, double z) {
        const auto slab = std::find_if(plan_.slabs.begin(), plan_.slabs.end(),
                                       [&](const WallSlab& s) { return s.low < z && z < s.high; });
        if (slab == plan_.slabs.end())
            return;
        for (const WallEdge& edge : slab->topology.edges) {
            if (edge.patch != face)
                continue;
            const WallFace& form = faces_[face_of(face)];
            ShellCurve line;
            line.z = z;
            line.faces = {face};
            if (edge.from < 0) {
                line.way = circle_way(form.centre, form.offset(z), false);
            } else {
                line.from = vertex_on(slab->topology, edge.from, z);
                line.to = vertex_on(slab->topology, edge.to, z);
                if (line.from < 0 || line.to < 0)
                    continue;
                const Vec2 from =
                    plan_.mesh.vertices[static_cast<std::size_t>(line.from)].head<2>();
                const Vec2 to = plan_.mesh.vertices[static_cast<std::size_t>(line.to)].head<2>();
                line.way = form.circle
                               ? arc_way(form.centre, form.offset(z), from, to, walked_back(face))
                               : straight_way(from, to);
            }
            add_crease(face, line);
        }
    }

    /// The vertex of a swept corner at a height at which it bends; -1 if it has none there.
    int vertex_on(const WallTopology& topology, int corner, double z) const {
        const CornerKey& key = topology.corners[static_cast<std::size_t>(corner)];
        for (const int index : plan_.curves_of[static_cast<std::size_t>(patch_of(key.a, false))])
            if (const int vertex = break_vertex(index, key, z); vertex >= 0)
                return vertex;
        for (const int index : plan_.curves_of[static_cast<std::size_t>(patch_of(key.a, true))])
            if (const int vertex = break_vertex(index, key, z); vertex >= 0)
                return vertex;
        return -1;
    }

    int break_vertex(int index, const CornerKey& key, double z) const {
        const ShellCurve& curve = plan_.curves[static_cast<std::size_t>(index)];
        if (!curve.swept || curve.corner != key || z < curve.low || z > curve.high)
            return -1;
        for (std::size_t i = 0; i < curve.breaks.size(); ++i)
            if (curve.breaks[i] == z)
                return static_cast<int>(curve.break_vertices[i]);
        return -1;
    }

    void add_crease(int face, const ShellCurve& line) {
        const SectionTrace& section =
            *plan_.surfaces[static_cast<std::size_t>(face_of(face))]->section();
        double spacing = section.spacing_at(line.z);
        if (!std::isfinite(spacing))
            spacing = line.way.length();
        const double at_start = edge_at(face, line.from), at_end = edge_at(face, line.to);
        const auto edge_about = [&](double share) {
            const double way = share * line.way.length();
            return std::min({spacing, over_edge * at_start + growth * way,
                             over_edge * at_end + growth * (line.way.length() - way)});
        };
        const CurveStretch stretch{[&](double share) { return place_on(faces_, line, 0, share); },
                                   edge_about, 0, 1};
        const std::vector<double> shares = spaced_parameters(stretch, tolerance_);
        std::vector<Vec3> places;
        for (std::size_t i = 0; i < shares.size(); ++i)
            places.push_back(stretch.at(shares[i]));
        const double mean = line.way.length() / static_cast<double>(shares.size() - 1);
        if (!is_clear(face, line, places, clear * mean))
            return;
        Chain chain;
        chain.closed = line.from < 0;
        chain.element = faces_[face_of(face)].element;
        if (!chain.closed)
            chain.vertices.push_back(static_cast<std::uint32_t>(line.from));
        for (std::size_t i = chain.closed ? 0 : 1; i + 1 < places.size(); ++i) {
            chain.vertices.push_back(static_cast<std::uint32_t>(plan_.mesh.vertices.size()));
            plan_.mesh.vertices.push_back(places[i]);
        }
        if (!chain.closed)
            chain.vertices.push_back(static_cast<std::uint32_t>(line.to));
        creases_[static_cast<std::size_t>(face)].push_back(std::move(chain));
    }

    /// Shortest edge at a vertex of the curves that bound a face.
    double edge_at(int face, int vertex) const {
        double shortest = std::numeric_limits<double>::infinity();
        if (vertex < 0)
            return shortest;
        for (const int index : plan_.curves_of[static_cast<std::size_t>(face)])
            for (const auto& [a, b] : edges_of(plan_.curves[static_cast<std::size_t>(index)].chain))
                if (static_cast<int>(a) == vertex || static_cast<int>(b) == vertex)
                    shortest = std::min(shortest,
                                        (plan_.mesh.vertices[a] - plan_.mesh.vertices[b]).norm());
        return shortest;
    }

    /// Whether the curves that bound a face, but for those that a crease ends on, and its other
    /// creases keep away from it.
    bool is_clear(int face, const ShellCurve& line, const std::vector<Vec3>& places,
                  double distance) const {
        const auto near = [&](const Chain& chain) {
            const auto holds = [&](int vertex) {
                return vertex >= 0 &&
                       std::find(chain.vertices.begin(), chain.vertices.end(),
                                 static_cast<std::uint32_t>(vertex)) != chain.vertices.end();
            };
            if (holds(line.from) || holds(line.to))
                return false;
            for (const std::uint32_t vertex : chain.vertices) {
                const Vec3& at = plan_.mesh.vertices[vertex];
                if (std::abs(at.z() - line.z) > distance)
                    continue;
                for (std::size_t i = 1; i < places.size(); ++i) {
                    const Vec3 run = places[i] - places[i - 1];
                    const double share = std::clamp((at - places[i - 1]).dot(run) /
                                                        std::max(run.squaredNorm(), 1e-300),
                                                    0.0, 1.0);
                    if ((places[i - 1] + share * run - at).norm() < distance)
                        return true;
                }
            }
            return false;
        };
        for (const int index : plan_.curves_of[static_cast<std::size_t>(face)])
            if (near(plan_.curves[static_cast<std::size_t>(index)].chain))
                return false;
        return std::none_of(creases_[static_cast<std::size_t>(face)].begin(),
                            creases_[static_cast<std::size_t>(face)].end(), near);
    }

    const WallFaces& faces_;
    double tolerance_;
    ShellPlan& plan_;
    std::vector<std::vector<Chain>> creases_;
};

} // namespace

std::vector<std::vector<Chain>> shell_creases(const WallFaces& faces, double tolerance,
                                              ShellPlan& plan) {
    return CreaseFinder(faces, tolerance, plan).run();
}

} // namespace coilwright
