#include "geometry/base/bearing.hpp"
#include "geometry/drawing/straight_shapes.hpp"
#include "geometry/views/role_strokes.hpp"
#include "geometry/views/tiles.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

constexpr double chord = 0.5; // mm, of arcs that bound a fill

class Clipper {
public:
    explicit Clipper(const PaperBox& box)
        : box_(box), low_(box.left, box.bottom), high_(box.right, box.top) {}

    void clip(const LineItem& item) {
        std::vector<Vec2> points = item.points;
        if (item.closed && !points.empty())
            points.push_back(points.front());
        std::vector<Vec2> run;
        const auto flush = [&] {
            if (run.size() > 1)
                made.push_back(LineItem{run, false, item.stroke});
            run.clear();
        };
        for (std::size_t i = 0; i + 1 < points.size(); ++i) {
            const auto parts = clipped(Segment{points[i], points[i + 1]}, low_, high_);
            if (parts.empty()) {
                flush();
                continue;
            }
            const Segment& part = parts.front();
            if (run.empty() || (run.back() - part.from).norm() > 1e-9) {
                flush();
                run.push_back(part.from);
            }
            run.push_back(part.to);
        }
        flush();
    }

    void clip(const ArcItem& item) {
        const double end = std::min(item.end, item.start + 2 * pi);
        for (const auto& [from, to] :
             clipped_arc(item.centre, item.radius, item.start, end, low_, high_))
            made.push_back(ArcItem{item.centre, item.radius, from, to, item.stroke});
    }

    void clip(const FillItem& item) {
        std::vector<std::vector<Vec2>> loops;
        for (const FillItem::Loop& loop : item.loops) {
            Outline outline{loop.from, {}};
            for (const FillItem::Edge& edge : loop.edges)
                outline.edges.push_back({edge.to, edge.bulge});
            loops.push_back(flattened(outline, chord));
        }
        if (item.hatch_spacing > 0) {
            hatch(item, loops);
            return;
        }
        FillItem kept = item;
        kept.loops.clear();
        for (const auto& loop : loops) {
            const std::vector<Vec2> inside = within(loop);
            if (inside.size() < 3)
                continue;
            FillItem::Loop made_loop{inside.front(), {}};
            for (std::size_t i = 1; i < inside.size(); ++i)
                made_loop.edges.push_back({inside[i], 0});
            kept.loops.push_back(std::move(made_loop));
        }
        if (!kept.loops.empty())
            made.emplace_back(std::move(kept));
    }

    void clip(const TextItem& item) {
        if (item.at.x() >= box_.left && item.at.x() <= box_.right && item.at.y() >= box_.bottom &&
            item.at.y() <= box_.top)
            made.emplace_back(item);
    }

    std::vector<PaperItem> made;

private:
    /// The hatch's own lines, x - y = k step, so that neighbouring tiles' meet.
    void hatch(const FillItem& item, const std::vector<std::vector<Vec2>>& loops) {
        const double step = item.hatch_spacing * std::sqrt(2.0);
        const double least = low_.x() - high_.y(), most = high_.x() - low_.y();
        for (double k = std::ceil(least / step); k * step <= most; ++k) {
            // Along the line, by y.
            std::vector<double> crossings;
            for (const auto& loop : loops)
                for (std::size_t i = 0; i < loop.size(); ++i) {
                    const Vec2 &a = loop[i], &b = loop[(i + 1) % loop.size()];
                    const double sa = a.x() - a.y() - k * step, sb = b.x() - b.y() - k * step;
                    if ((sa > 0) != (sb > 0))
                        crossings.push_back(a.y() + (b.y() - a.y()) * sa / (sa - sb));
                }
            std::sort(crossings.begin(), crossings.end());
            for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
                const double y0 = crossings[i], y1 = crossings[i + 1];
                clip(LineItem{{{k * step + y0, y0}, {k * step + y1, y1}}, false, item.hatch});
            }
        }
    }

    /// A polygon cut off at the box's four sides (Sutherland and Hodgman 1974).
    std::vector<Vec2> within(std::vector<Vec2> polygon) const {
        for (int side = 0; side < 4; ++side) {
            const auto inside = [&](const Vec2& p) {
                return side == 0   ? p.x() - box_.left
                       : side == 1 ? box_.right - p.x()
                       : side == 2 ? p.y() - box_.bottom
                                   : box_.top - p.y();
            };
            std::vector<Vec2> kept;
            for (std::size_t i = 0; i < polygon.size(); ++i) {
                const Vec2 &a = polygon[i], &b = polygon[(i + 1) % polygon.size()];
                const double da = inside(a), db = inside(b);
                if (da >= 0)
                    kept.push_back(a);
                if ((da >= 0) != (db >= 0))
                    kept.push_back(a + (b - a) * (da / (da - db)));
            }
            polygon = std::move(kept);
        }
        return polygon;
    }

    PaperBox box_;
    Vec2 low_, high_;
};

} // namespace

std::vector<PaperItem> clipped_item(const PaperItem& item, const PaperBox& box) {
    Clipper clipper(box);
    std::visit([&](const auto& one) { clipper.clip(one); }, item);
    return std::move(clipper.made);
}

} // namespace coilwright
