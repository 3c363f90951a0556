#include "geometry/solids/horizontal_faces.hpp"
#include "geometry/solids/section_trace.hpp"
#include "geometry/solids/shell_curves.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace coilwright {

namespace {

class ShellPlanner {
public:
    ShellPlanner(const WallFaces& faces, double tolerance) : faces_(faces), tolerance_(tolerance) {}

    ShellPlan run() {
        WallSlabs found = find_slabs(faces_);
        plan_.slabs = std::move(found.slabs);
        if (found.fault)
            return fail(*found.fault, found.first, found.second);
        for (std::size_t k = 0; k <= plan_.slabs.size(); ++k) {
            const WallSlab* below = k > 0 ? &plan_.slabs[k - 1] : nullptr;
            const WallSlab* above = k < plan_.slabs.size() ? &plan_.slabs[k] : nullptr;
            levels_.push_back(make_level(faces_, below, above, above ? above->low : below->high));
            const Level& level = levels_.back();
            if (level.fault)
                return fail(*level.fault, level.first, level.second);
        }
        plan_.surfaces.resize(static_cast<std::size_t>(faces_.size()));
        plan_.curves_of.resize(2 * plan_.surfaces.size());
        for (std::size_t k = 0; k < levels_.size(); ++k) {
            numbered_.assign(levels_[k].vertices.size(), -1);
            sweep_corners(k);
            add_pieces(k);
        }
        return std::move(plan_);
    }

private:
    ShellPlan fail(ShapeFault fault, const std::string& first, const std::string& second) {
        plan_.fault = fault;
        plan_.first = first;
        plan_.second = second;
        return std::move(plan_);
    }

    int mesh_vertex(std::size_t level, int vertex) {
        if (vertex < 0)
            return -1;
        int& number = numbered_[static_cast<std::size_t>(vertex)];
        if (number < 0) {
            const Level& here = levels_[level];
            const Vec2& at = here.vertices[static_cast<std::size_t>(vertex)];
            number = static_cast<int>(plan_.mesh.vertices.size());
            plan_.mesh.vertices.emplace_back(at.x(), at.y(), here.z);
        }
        return number;
    }

    void add_curve(ShellCurve curve) {
        const int index = static_cast<int>(plan_.curves.size());
        for (const int face : curve.faces) {
            plan_.curves_of[static_cast<std::size_t>(face)].push_back(index);
            const int of_wall = face_of(face);
            if (of_wall < faces_.size() && !plan_.surfaces[static_cast<std::size_t>(of_wall)])
                plan_.surfaces[static_cast<std::size_t>(of_wall)] =
                    faces_.surface(of_wall, 0.86 * tolerance_);
        }
        plan_.curves.push_back(std::move(curve));
    }

    struct OpenCorner {
        double low;
        int from;
    };

    /// Ends the corners that stop at a level and starts those that rise from it.
    void sweep_corners(std::size_t k) {
        const Level& level = levels_[k];
        if (k > 0) {
            const WallTopology& below = plan_.slabs[k - 1].topology;
            for (std::size_t i = 0; i < below.corners.size(); ++i)
                if (level.below[i] >= 0)
                    close_corner(below, static_cast<int>(i), level.z,
                                 mesh_vertex(k, level.below[i]));
        }
        if (k < plan_.slabs.size()) {
            const WallTopology& above = plan_.slabs[k].topology;
            for (std::size_t i = 0; i < above.corners.size(); ++i)
                if (level.above[i] >= 0)
                    open_[above.corners[i]] = {level.z, mesh_vertex(k, level.above[i])};
        }
    }

    void close_corner(const WallTopology& below, int corner, double z, int vertex) {
        const CornerKey& key = below.corners[static_cast<std::size_t>(corner)];
        ShellCurve curve;
        curve.swept = true;
        curve.corner = key;
        curve.low = open_.at(key).low;
        curve.high = z;
        curve.from = open_.at(key).from;
        curve.to = vertex;
        for (const WallEdge& edge : below.edges)
            if (edge.from == corner || edge.to == corner)
                curve.faces.push_back(edge.patch);
        open_.erase(key);
        add_curve(std::move(curve));
    }

    void add_pieces(std::size_t k) {
        const Level& level = levels_[k];
        const std::size_t first = plan_.curves.size();
        for (const LevelPiece& piece : level.pieces) {
            ShellCurve curve;
            curve.way = piece.way;
            curve.z = level.z;
            curve.from = mesh_vertex(k, piece.from);
            curve.to = mesh_vertex(k, piece.to);
            curve.faces = piece.patches;
            add_curve(std::move(curve));
        }
        for (const HorizontalPieces& face : horizontal_faces(level)) {
            const int number = static_cast<int>(plan_.curves_of.size());
            plan_.curves_of.emplace_back();
            plan_.horizontals.push_back({level.z, face.under, element_of(level, face)});
            for (const std::size_t piece : face.pieces) {
                plan_.curves[first + piece].faces.push_back(number);
                plan_.curves_of.back().push_back(static_cast<int>(first + piece));
            }
        }
    }

    /// The element whose faces start or end at the level along most of a horizontal face.
    std::string element_of(const Level& level, const HorizontalPieces& face) const {
        std::map<std::string, double> lengths;
        for (const std::size_t index : face.pieces) {
            const LevelPiece& piece = level.pieces[index];
            for (const int patch : piece.patches) {
                const WallFace& wall = faces_[face_of(patch)];
                const bool ends = std::min(std::abs(wall.low - level.z),
                                           std::abs(wall.high - level.z)) < 2 * height_tie;
                lengths[wall.element] += piece.way.length() * (ends ? 1000 : 1);
            }
        }
        return std::max_element(lengths.begin(), lengths.end(),
                                [](const auto& a, const auto& b) { return a.second < b.second; })
            ->first;
    }

    const WallFaces& faces_;
    double tolerance_;
    ShellPlan plan_;
    std::vector<Level> levels_;
    std::map<CornerKey, OpenCorner> open_;
    std::vector<int> numbered_; // vertices of the mesh by those of the level
};

} // namespace

std::string ShellPlan::element(const WallFaces& faces, int face) const {
    const HorizontalFace* level = horizontal(face);
    return level ? level->element : faces[face_of(face)].element;
}

ShellPlan plan_shell(const WallFaces& faces, double tolerance) {
    return ShellPlanner(faces, tolerance).run();
}

} // namespace coilwright
