// Labels put where nothing else is.
#pragma once

#include "geometry/drawing/boxes.hpp"

#include <functional>
#include <optional>
#include <vector>

namespace coilwright {

/// Knows what is taken inside a frame, and finds a free place among candidates. All in mm.
class Placer {
public:
    Placer(const PaperBox& frame, MeasureText measure)
        : frame_(frame), measure_(std::move(measure)) {}

    /// Nothing may be put there any more: texts, symbols.
    void take(const Corners& corners) { taken_.push_back(corners); }
    void take(const PaperBox& box) { taken_.push_back(corners(box)); }
    /// Lines may be crossed by leaders but not by texts.
    void take_line(Vec2 from, Vec2 to, double width = 0.6);
    void take_arc(Vec2 centre, double radius, double start, double end);

    /// Whether the rectangle, with `clearance` mm around it, lies in the frame and on nothing.
    bool free(const Corners& corners, double clearance = usual_clearance) const;
    /// Whether a leader may run there: over lines, not over texts and symbols.
    bool free_for_leader(Vec2 from, Vec2 to) const;

    /// The first of the candidates at which the text is free; it is taken from then on. None:
    /// empty.
    std::optional<TextItem> place(const std::vector<TextItem>& candidates,
                                  double clearance = usual_clearance);
    /// The same for a name that a leader joins to `target` where it stands over `near` mm away: the
    /// leader must be free as well, and `allowed` if that is asked. Its ends come with it (equal
    /// ends: no leader).
    struct Led {
        TextItem text;
        Vec2 from{0, 0}, to{0, 0};
    };
    using LeaderRule = std::function<bool(Vec2 from, Vec2 to)>;
    std::optional<Led> place_led(const std::vector<TextItem>& candidates, Vec2 target, double near,
                                 const LeaderRule& allowed = {});
    /// The first free centre for a symbol of that radius whose leader to `target` is free too,
    /// unless it may run `leader_over_all`.
    std::optional<Vec2> place_disc(const std::vector<Vec2>& centres, double radius, Vec2 target,
                                   bool leader_over_all = false);

    static constexpr double usual_clearance = 0.7;

    const PaperBox& frame() const { return frame_; }
    const MeasureText& measure() const { return measure_; }

private:
    PaperBox frame_;
    MeasureText measure_;
    std::vector<Corners> taken_, lines_;
};

/// The corners moved outwards by `by` along both sides.
Corners grown(const Corners& corners, double by);

/// Candidates for a text about a point: centred on rays of growing length, first along `outward`
/// (unit vector), then turning away from it by up to `widest` radians either side.
std::vector<Vec2> places_about(Vec2 point, Vec2 outward, double nearest, double farthest,
                               double widest);

} // namespace coilwright
