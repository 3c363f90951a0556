#include "geometry/plan/region_loops.hpp"

#include "geometry/base/bearing.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <tuple>

namespace coilwright {

namespace {

/// An arc whose ends come nearer than this share of its radius the long way round is halved: its
/// bulge would no longer tell the circle well.
constexpr double least_opening = 1e-3;

/// The curves that both may be said to lie on, in the order of the first.
std::vector<int> common_curves(const LoopPiece& a, const LoopPiece& b) {
    const auto in_b = [&](int curve) {
        return curve == b.curve || std::find(b.also.begin(), b.also.end(), curve) != b.also.end();
    };
    std::vector<int> common;
    if (in_b(a.curve))
        common.push_back(a.curve);
    std::copy_if(a.also.begin(), a.also.end(), std::back_inserter(common), in_b);
    return common;
}

bool go_on(const LoopPiece& a, const LoopPiece& b) {
    if (a.also.empty() && b.also.empty())
        return a.curve == b.curve;
    return !common_curves(a, b).empty();
}

/// Joins pieces of one curve. A loop of one circle becomes one piece from its westmost point.
LoopPieces joined(const PlanOutline& outline, const LoopPieces& pieces) {
    std::size_t start = 0;
    while (start < pieces.size() &&
           go_on(pieces[(start + pieces.size() - 1) % pieces.size()], pieces[start]))
        ++start;
    if (start == pieces.size()) {
        const PlanCurve& curve = outline.curves[static_cast<std::size_t>(pieces[0].curve)];
        if (!curve.circle)
            return {}; // back and forth along a side
        const Vec2 west = curve.start - Vec2(curve.length, 0);
        return {{pieces[0].curve, pieces[0].anticlockwise, west, west, {}}};
    }
    LoopPieces result;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const LoopPiece& piece = pieces[(start + i) % pieces.size()];
        if (result.empty() || !go_on(result.back(), piece)) {
            result.push_back(piece);
            continue;
        }
        LoopPiece& last = result.back();
        last.to = piece.to;
        if (last.also.empty() && piece.also.empty())
            continue;
        last.also = common_curves(last, piece);
        last.curve = last.also.front();
        last.also.erase(last.also.begin());
    }
    return result;
}

/// Angle walked about the centre, (0, 2 pi], negative clockwise; 0 on a side.
double sweep_of(const PlanCurve& curve, const LoopPiece& piece) {
    if (!curve.circle)
        return 0;
    const Vec2 from = piece.from - curve.start, to = piece.to - curve.start;
    if ((from - to).squaredNorm() <= plan_weld * plan_weld)
        return piece.anticlockwise ? 2 * pi : -2 * pi;
    const double turn = std::atan2(cross(from, to), from.dot(to));
    if (piece.anticlockwise)
        return turn <= 0 ? turn + 2 * pi : turn;
    return turn >= 0 ? turn - 2 * pi : turn;
}

class LoopWriter {
public:
    LoopWriter(const PlanOutline& outline, const Vec2& origin)
        : outline_(outline), origin_(origin) {}

    void add(const LoopPiece& piece) {
        const PlanCurve& curve = outline_.curves[static_cast<std::size_t>(piece.curve)];
        const double sweep = sweep_of(curve, piece), r = curve.length;
        // Green: the triangle to the origin, and the segment between chord and arc.
        loop_.area += cross(piece.from - origin_, piece.to - origin_) / 2;
        if (curve.circle)
            loop_.area += r * r * (sweep - std::sin(sweep)) / 2;
        if (std::abs(sweep) > pi &&
            (piece.from - piece.to).squaredNorm() < least_opening * least_opening * r * r) {
            const double half = sweep / 2;
            const Vec2 from = piece.from - curve.start;
            const Vec2 middle =
                curve.start + std::cos(half) * from + std::sin(half) * turned_left(from);
            put(curve, piece.from, middle, half);
            put(curve, middle, piece.to, half);
        } else {
            put(curve, piece.from, piece.to, sweep);
        }
    }

    /// Started at the westmost corner, the southmost of those.
    BoundaryLoop finish() {
        const auto before = [](const BoundaryEdge& a, const BoundaryEdge& b) {
            const double east = a.from.x() - b.from.x();
            return std::abs(east) > plan_weld ? east < 0 : a.from.y() < b.from.y() - plan_weld;
        };
        std::size_t first = 0;
        for (std::size_t i = 1; i < loop_.edges.size(); ++i)
            if (before(loop_.edges[i], loop_.edges[first]))
                first = i;
        std::rotate(loop_.edges.begin(), loop_.edges.begin() + static_cast<std::ptrdiff_t>(first),
                    loop_.edges.end());
        return std::move(loop_);
    }

private:
    void put(const PlanCurve& curve, const Vec2& from, const Vec2& to, double sweep) {
        loop_.edges.push_back({curve.shape, from, to, std::tan(sweep / 4)});
    }

    const PlanOutline& outline_;
    Vec2 origin_;
    BoundaryLoop loop_;
};

/// What loops are ordered by; rounded, so that neither turning a building nor the order of its
/// shapes shuffles equal ones.
auto order_key(const BoundaryLoop& loop) {
    const auto rounded = [](double value) { return std::llround(value / plan_weld); };
    const Vec2& first = loop.edges.front().from;
    return std::make_tuple(-rounded(std::abs(loop.area)), rounded(first.x()), rounded(first.y()));
}

} // namespace

Region region_of_loops(std::vector<BoundaryLoop> loops) {
    Region region;
    region.loops = std::move(loops);
    std::stable_sort(
        region.loops.begin(), region.loops.end(),
        [](const BoundaryLoop& a, const BoundaryLoop& b) { return order_key(a) < order_key(b); });
    for (const BoundaryLoop& loop : region.loops)
        region.area += loop.area;
    return region;
}

Region make_region(const PlanOutline& outline, const std::vector<LoopPieces>& loops) {
    std::vector<BoundaryLoop> written;
    for (const LoopPieces& pieces : loops) {
        const LoopPieces whole = joined(outline, pieces);
        if (whole.empty())
            continue;
        LoopWriter writer(outline, whole.front().from);
        for (const LoopPiece& piece : whole)
            writer.add(piece);
        BoundaryLoop loop = writer.finish();
        if (std::abs(loop.area) >= least_loop_area)
            written.push_back(std::move(loop));
    }
    return region_of_loops(std::move(written));
}

} // namespace coilwright
