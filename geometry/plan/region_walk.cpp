#include "geometry/plan/region_loops.hpp"

#include "geometry/plan/vertex_weld.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

/// Directions at a vertex nearer to each other than this (of 4 for the full turn) are one.
constexpr double least_turn = 1e-6;

class Walker {
public:
    Walker(const PlanOutline& outline, const Crossings& crossings,
           const std::vector<BoundaryPiece>& pieces)
        : outline_(outline), crossings_(crossings), pieces_(pieces),
          first_out_(crossings.vertices.size() + 1, 0), walked_(pieces.size(), false) {
        for (const BoundaryPiece& piece : pieces)
            if (piece.from >= 0)
                ++first_out_[static_cast<std::size_t>(piece.from) + 1];
        for (std::size_t i = 1; i < first_out_.size(); ++i)
            first_out_[i] += first_out_[i - 1];
        out_.resize(first_out_.back());
        std::vector<std::size_t> next(first_out_.begin(), first_out_.end() - 1);
        for (std::size_t i = 0; i < pieces.size(); ++i)
            if (pieces[i].from >= 0)
                out_[next[static_cast<std::size_t>(pieces[i].from)]++] = i;
    }

    std::optional<std::vector<LoopPieces>> walk() {
        for (std::size_t start = 0; start < pieces_.size(); ++start) {
            if (walked_[start])
                continue;
            if (pieces_[start].from < 0) { // a whole circle
                loops_.push_back({placed(pieces_[start])});
                continue;
            }
            std::vector<std::size_t> path;
            for (std::size_t at = start; !walked_[at];) {
                walked_[at] = true;
                path.push_back(at);
                cut_off_loop(path);
                const std::optional<std::size_t> next = after(at);
                if (!next)
                    return std::nullopt;
                at = *next;
            }
            if (!path.empty())
                return std::nullopt;
        }
        return std::move(loops_);
    }

private:
    const Vec2& vertex(int index) const {
        return crossings_.vertices[static_cast<std::size_t>(index)];
    }

    LoopPiece placed(const BoundaryPiece& piece) const {
        if (piece.from >= 0)
            return {piece.curve, piece.anticlockwise, vertex(piece.from), vertex(piece.to),
                    piece.also};
        const PlanCurve& circle = outline_.curves[static_cast<std::size_t>(piece.curve)];
        const Vec2 west = circle.start - Vec2(circle.length, 0);
        return {piece.curve, piece.anticlockwise, west, west, {}};
    }

    /// Takes the end of a path that comes back to a vertex of it as a loop of its own.
    void cut_off_loop(std::vector<std::size_t>& path) {
        const int back_at = pieces_[path.back()].to;
        const bool one_way = out_count(back_at) == 1;
        for (std::size_t i = one_way ? 1 : path.size(); i > 0; --i) {
            if (pieces_[path[i - 1]].from != back_at)
                continue;
            LoopPieces loop;
            for (std::size_t k = i - 1; k < path.size(); ++k)
                loop.push_back(placed(pieces_[path[k]]));
            loops_.push_back(std::move(loop));
            path.resize(i - 1);
            return;
        }
    }

    std::size_t out_count(int vertex) const {
        return first_out_[static_cast<std::size_t>(vertex) + 1] -
               first_out_[static_cast<std::size_t>(vertex)];
    }

    /// Direction along a piece at one of its ends.
    Vec2 heading(const BoundaryPiece& piece, int at) const {
        const PlanCurve& curve = outline_.curves[static_cast<std::size_t>(piece.curve)];
        if (!curve.circle)
            return vertex(piece.to) - vertex(piece.from);
        const Vec2 along = turned_left(vertex(at) - curve.start);
        return piece.anticlockwise ? along : -along;
    }

    std::optional<std::size_t> after(std::size_t index) const {
        const BoundaryPiece& piece = pieces_[index];
        const auto v = static_cast<std::size_t>(piece.to);
        const std::size_t first = first_out_[v], last = first_out_[v + 1];
        if (last == first)
            return std::nullopt;
        if (last == first + 1)
            return out_[first];
        const double back = turn_order(-heading(piece, piece.to));
        std::size_t best = 0;
        double best_turn = 8, second_turn = 8;
        for (std::size_t i = first; i < last; ++i) {
            double turn = back - turn_order(heading(pieces_[out_[i]], piece.to)); // clockwise
            if (turn <= 0)
                turn += 4;
            if (turn < best_turn) {
                second_turn = best_turn;
                best_turn = turn;
                best = out_[i];
            } else {
                second_turn = std::min(second_turn, turn);
            }
        }
        if (best_turn < least_turn || second_turn - best_turn < least_turn)
            return std::nullopt;
        return best;
    }

    const PlanOutline& outline_;
    const Crossings& crossings_;
    const std::vector<BoundaryPiece>& pieces_;
    std::vector<std::size_t> first_out_, out_;
    std::vector<bool> walked_;
    std::vector<LoopPieces> loops_;
};

} // namespace

std::optional<std::vector<LoopPieces>> walk_loops(const PlanOutline& outline,
                                                  const Crossings& crossings,
                                                  const std::vector<BoundaryPiece>& pieces) {
    return Walker(outline, crossings, pieces).walk();
}

} // namespace coilwright
