#include "geometry/base/bearing.hpp"
#include "geometry/drawing/pen.hpp"
#include "geometry/drawing/plan_canvas.hpp"
#include "geometry/views/drawing_sheet.hpp"
#include "geometry/views/laid_view.hpp"
#include "geometry/views/role_strokes.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

const Stroke& stroke_of(LineRole role) {
    static const Stroke level{0.18, {0}, {4, 1.5}}, trench{0.25, {0}, {5, 1.5}};
    switch (role) {
    case LineRole::cut:
        return pens::cut;
    case LineRole::seen:
        return pens::seen;
    case LineRole::hidden:
        return pens::hidden;
    case LineRole::axis:
        return pens::axis;
    case LineRole::level:
        return level;
    case LineRole::ground:
        return pens::heavy;
    case LineRole::door:
    case LineRole::glazing:
        return pens::seen;
    case LineRole::trench:
        return trench;
    case LineRole::symbol:
        return pens::cut;
    }
    return pens::seen;
}

std::vector<Vec2> flattened(const Outline& outline, double chord) {
    std::vector<Vec2> points{outline.from};
    for (const OutlineEdge& edge : outline.edges) {
        if (const auto arc = arc_of(BoundaryEdge{0, points.back(), edge.to, edge.bulge})) {
            const double sweep = 4 * std::atan(edge.bulge);
            const int pieces =
                std::max(2, static_cast<int>(std::ceil(std::abs(sweep) * arc->radius / chord)));
            const Vec2 first = points.back() - arc->centre;
            const double start = std::atan2(first.y(), first.x());
            for (int i = 1; i < pieces; ++i) {
                const double angle = start + sweep * i / pieces;
                points.push_back(arc->centre +
                                 arc->radius * Vec2(std::cos(angle), std::sin(angle)));
            }
        }
        points.push_back(edge.to);
    }
    return points;
}

namespace {

constexpr double row_step = 7;  // mm between rows of dimensions
constexpr double first_row = 3; // mm from the rim to the first
constexpr double caption = 9;   // mm under a view

ViewMargins around(const View& view) {
    const auto side = [&](Vec2 left) {
        const int rows = rows_beside(view, left);
        return view.rim + (rows > 0 ? first_row + row_step * rows + 1 : 0);
    };
    return {side({-1, 0}), side({1, 0}), side({0, -1}), side({0, 1})};
}

/// The angles between which an arc runs anticlockwise.
std::pair<double, double> angles_of(Vec2 from, Vec2 to, double bulge, Vec2 centre) {
    const Vec2 first = (bulge > 0 ? from : to) - centre;
    const double start = std::atan2(first.y(), first.x());
    return {start, start + 4 * std::atan(std::abs(bulge))};
}

/// Finds a place for all that a view says, clear of what it draws.
class Layer {
public:
    Layer(const PaperBox& box, const View& view, const Scale& scale, const MeasureText& measure)
        : view_(view), placer_(box, measure), extent_(extent_of(view)) {
        laid_.view = &view;
        laid_.per_metre = scale.on_paper(1);
        laid_.extent_low = extent_.low;
        const ViewMargins margins = margins_of(view);
        const Vec2 size = extent_.size() * laid_.per_metre;
        // In the middle of what the margins leave.
        const double spare_x = box.width() - margins.left - margins.right - size.x();
        const double spare_y = box.height() - margins.bottom - margins.top - size.y();
        laid_.low = {box.left + margins.left + spare_x / 2,
                     box.bottom + margins.bottom + spare_y / 2};
    }

    void lay() {
        for (const ViewHatch& hatch : view_.hatches)
            take(hatch);
        for (const ViewPath& path : view_.paths)
            take(path);
        if (view_.north) {
            Sheet symbol;
            add_north(symbol, placer_);
            laid_.symbols = std::move(symbol.items);
        }
        std::vector<PaperDimension> dimensions;
        for (const ViewDimension& dimension : view_.dimensions)
            dimensions.push_back(on_paper(dimension));
        laid_.dimensions = lay_dimensions(placer_, dimensions);
        for (const ViewNote& note : view_.notes)
            put(note);
    }
    double bottom() const { return laid_.low.y() - around(view_).bottom; }
    double middle() const { return laid_.low.x() + extent_.size().x() * laid_.per_metre / 2; }
    Placer& placer() { return placer_; }
    LaidView& laid() { return laid_; }

private:
    Vec2 of(Vec2 metres) const { return laid_.on_paper(metres); }

    void take(const ViewHatch& hatch) {
        std::vector<std::vector<Vec2>> loops;
        for (const Outline& outline : hatch.loops) {
            loops.push_back(flattened(outline, 2 / laid_.per_metre));
            for (Vec2& point : loops.back())
                point = of(point);
        }
        keep_clear(loops);
    }

    /// Texts keep off the hatch: it counts as level lines.
    void keep_clear(const std::vector<std::vector<Vec2>>& loops) {
        constexpr double step = 2;
        const Vec2 high = of(extent_.high);
        for (double y = laid_.low.y() + step / 2; y < high.y(); y += step) {
            std::vector<double> crossings;
            for (const auto& loop : loops)
                for (std::size_t i = 0; i < loop.size(); ++i) {
                    const Vec2 &a = loop[i], &b = loop[(i + 1) % loop.size()];
                    if ((a.y() > y) != (b.y() > y))
                        crossings.push_back(a.x() +
                                            (b.x() - a.x()) * (y - a.y()) / (b.y() - a.y()));
                }
            std::sort(crossings.begin(), crossings.end());
            for (std::size_t i = 0; i + 1 < crossings.size(); i += 2)
                placer_.take_line({crossings[i], y}, {crossings[i + 1], y}, step);
        }
    }

    void take(const ViewPath& path) {
        Vec2 from = of(path.path.from);
        for (const OutlineEdge& edge : path.path.edges) {
            const Vec2 to = of(edge.to);
            if (const auto arc = arc_of(BoundaryEdge{0, from, to, edge.bulge})) {
                const auto [start, end] = angles_of(from, to, edge.bulge, arc->centre);
                placer_.take_arc(arc->centre, arc->radius, start, end);
            } else {
                placer_.take_line(from, to);
            }
            from = to;
        }
    }

    PaperDimension on_paper(const ViewDimension& dimension) const {
        double offset = dimension.offset;
        const Vec2 left(-dimension.along.y(), dimension.along.x());
        if (dimension.row >= 0) {
            const double farther = std::max(left.dot(dimension.from), left.dot(dimension.to));
            offset = (extent_.farthest(left) - farther) * laid_.per_metre + view_.rim + first_row +
                     row_step * dimension.row;
        }
        return {of(dimension.from), of(dimension.to),  dimension.along, offset,
                dimension.text,     dimension.optional};
    }

    static std::vector<TextItem> texts_at(const std::vector<Vec2>& places, const ViewNote& note,
                                          double size) {
        std::vector<TextItem> texts;
        for (const Vec2& place : places)
            texts.push_back(PlanCanvas::centred(place, note.text, size, note.bold));
        return texts;
    }
    static std::vector<TextItem> texts_at(const std::vector<Vec2>& places, const ViewNote& note) {
        return texts_at(places, note, size_of(note));
    }
    static double size_of(const ViewNote& note) {
        return note.bold ? sizes::strong * 0.85 : sizes::small;
    }

    /// Near its place, or it would seem to name something else; the name of a room within it, set
    /// smaller where it must be.
    bool put_near(const ViewNote& note, Vec2 target) {
        if (put_near(note, target, size_of(note)))
            return true;
        return note.room > 0 && note.bold &&
               (put_near(note, target, sizes::small) || put_near(note, target, sizes::least));
    }

    bool put_near(const ViewNote& note, Vec2 target, double size) {
        const double radius = note.room * laid_.per_metre;
        std::vector<TextItem> near =
            texts_at(places_about(target, note.outward.normalized(), note.nearest,
                                  std::max(note.nearest + 10, radius), pi),
                     note, size);
        if (radius > 0)
            near.erase(std::remove_if(near.begin(), near.end(),
                                      [&](const TextItem& text) {
                                          const Corners box = corners(text, placer_.measure());
                                          return std::any_of(
                                              box.begin(), box.end(), [&](const Vec2& corner) {
                                                  const Vec2 off = corner - target;
                                                  // A section's room is as wide at every height.
                                                  return (view_.kind == ViewKind::section
                                                              ? off.cwiseAbs().maxCoeff()
                                                              : off.norm()) > radius;
                                              });
                                      }),
                       near.end());
        const auto placed = placer_.place(near);
        if (placed)
            laid_.notes.push_back({*placed, {0, 0}, {0, 0}});
        return placed.has_value();
    }

    /// Whether a leader runs over a room of the plan that its target does not lie in: it would seem
    /// to come from there.
    bool over_a_room(Vec2 from, Vec2 to) const {
        for (const ViewNote& note : view_.notes) {
            const double radius = note.room * laid_.per_metre;
            const Vec2 centre = of(note.target);
            if (radius <= 0 || (to - centre).norm() < radius)
                continue;
            const Vec2 way = to - from;
            const double part =
                std::clamp((centre - from).dot(way) / std::max(way.squaredNorm(), 1e-12), 0.0, 1.0);
            if ((from + way * part - centre).norm() < radius)
                return true;
        }
        return false;
    }

    bool is_in_another_room(Vec2 at, Vec2 target) const {
        return std::any_of(view_.notes.begin(), view_.notes.end(), [&](const ViewNote& note) {
            const double radius = note.room * laid_.per_metre;
            const Vec2 centre = of(note.target);
            return (at - centre).norm() < radius && (target - centre).norm() >= radius;
        });
    }

    bool put_led(std::vector<TextItem> candidates, const ViewNote& note, Vec2 target,
                 bool over_rooms) {
        Placer::LeaderRule rule;
        if (!over_rooms) {
            if (view_.kind != ViewKind::section)
                rule = [&](Vec2 from, Vec2 to) { return !over_a_room(from, to); };
            const auto in_a_room = [&](const TextItem& text) {
                const Vec2 middle = bounds(text, placer_.measure()).centre();
                return is_in_another_room(middle, target);
            };
            candidates.erase(std::remove_if(candidates.begin(), candidates.end(), in_a_room),
                             candidates.end());
        }
        const auto led =
            placer_.place_led(candidates, target, note.room > 0 ? 0 : note.nearest + 3, rule);
        if (led) {
            laid_.notes.push_back({led->text, led->from, led->to});
            if (view_.kind == ViewKind::detail) // else two of its notes side by side read as one
                placer_.take(grown(corners(led->text, placer_.measure()), 1.5));
        }
        return led.has_value();
    }

    void put(const ViewNote& note) {
        const Vec2 target = of(note.target), outward = note.outward.normalized();
        if (!note.leader && put_near(note, target))
            return;
        if (note.room > 0 && note.optional)
            return;
        // Leaders run over rooms only where there is no other place.
        // What a schedule tells too is named close by or not at all.
        const bool close_by = note.optional && view_.kind != ViewKind::detail;
        const double farthest = note.nearest + (close_by ? 16 : 45);
        const std::vector<TextItem> about =
            texts_at(places_about(target, outward, note.nearest, farthest, pi), note);
        if (close_by) {
            put_led(about, note, target, false);
            return;
        }
        std::vector<TextItem> anywhere; // thousands of places: few notes come to need them
        for (const bool over_rooms : {false, true}) {
            if (over_rooms && note.optional)
                return;
            if (put_led(about, note, target, over_rooms))
                return;
            if (anywhere.empty())
                anywhere = texts_at(places_in_frame(placer_.frame(), target), note);
            if (put_led(anywhere, note, target, over_rooms))
                return;
        }
        if (const auto placed = placer_.place(anywhere)) {
            laid_.notes.push_back({*placed, {0, 0}, {0, 0}});
            return;
        }
        // Nowhere free: where it was wanted, on white, rather than not at all.
        TextItem over = about.front();
        over.on_white = true;
        placer_.take(corners(over, placer_.measure()));
        laid_.notes.push_back({over, {0, 0}, {0, 0}});
    }

    const View& view_;
    Placer placer_;
    ViewExtent extent_;
    LaidView laid_;
};

} // namespace

ViewMargins margins_of(const View& view) {
    ViewMargins margins = around(view);
    margins.bottom += caption;
    margins.top += view.north ? 4 : 0;
    return margins;
}

LaidView laid_view(const PaperBox& box, const View& view, const Scale& scale,
                   const MeasureText& measure) {
    const PaperBox free{box.left, box.bottom + caption, box.right, box.top};
    Layer layer(free, view, scale, measure);
    TextItem& title = layer.laid().title;
    title.size = sizes::body;
    title.bold = true;
    title.align = Align::centre;
    // What is too long loses its own end, never the scale.
    const std::string tail = scale.text.empty() ? "" : "   " + scale.text;
    const double room = box.width() - 2 - measure(tail, title.size, true).width;
    title.text = shortened(view.title, room, title.size, true, measure) + tail;
    const double half = measure(title.text, title.size, true).width / 2;
    title.at = {std::clamp(layer.middle(), box.left + half, box.right - half),
                std::max(box.bottom + 1.5, layer.bottom() - 6)};
    if (!title.text.empty())
        layer.placer().take(corners(title, measure));
    layer.lay();
    return std::move(layer.laid());
}

} // namespace coilwright
