// A plan in the making: what is drawn at once, and labels that are written last, where nothing else
// is.
#pragma once

#include "geometry/drawing/pen.hpp"
#include "geometry/drawing/placer.hpp"
#include "geometry/drawing/straight_shapes.hpp"
#include "geometry/plan/region.hpp"

#include <string>
#include <vector>

namespace coilwright {

namespace inks {
inline constexpr Ink tube{0.88};  // a tube of the sheet's own dome or tunnel
inline constexpr Ink other{0.96}; // a tube that another sheet lays
} // namespace inks

class PlanCanvas {
public:
    PlanCanvas(Sheet& sheet, Placer& placer, const PlanFrame& frame)
        : sheet_(sheet), placer_(placer), frame_(frame) {}

    Sheet& sheet() { return sheet_; }
    Placer& placer() { return placer_; }
    const PlanFrame& frame() const { return frame_; }

    /// A line between two points of the paper that labels keep clear of.
    void line(Vec2 from, Vec2 to, const Stroke& stroke);
    /// An arc about the pole from one bearing clockwise to another, at a distance in metres.
    void arc(double from, double to, double metres, const Stroke& stroke);
    /// A filled outline with its edges.
    void outline(const Outline& outline, Ink ink, const Stroke& stroke);
    /// A hatched outline with its edges: not of tubes.
    void hatched(const Outline& outline, const Stroke& stroke);
    /// The boundary of a region, as far as it lies in the placer's frame.
    void boundary(const Region& region, const Stroke& stroke);

    /// A letter in a circle with a leader to a point of the paper, as near to it as can be: first
    /// along `wanted` (unit vector), then along `other` from `beyond`, then up to `farthest` mm
    /// away, then anywhere.
    struct LetterPlace {
        Vec2 target{0, 0}, wanted{0, 1};
        Vec2 beyond{0, 0}, other{0, 1};
        double farthest = 20;
    };
    void letter(const std::string& text, const LetterPlace& place);

    /// Places a label at the first free candidate; false where none is.
    bool name(const std::vector<TextItem>& candidates, double clearance = Placer::usual_clearance);
    /// The same with a leader to a point where the label stands over `near` mm off.
    bool led_name(const std::vector<TextItem>& candidates, Vec2 target, double near);
    /// A name of a thing between two points of the paper that face `outward`: beyond the outer
    /// point, before the inner one, then farther out with a leader.
    void name_between(const std::string& text, Vec2 inner, Vec2 outer, Vec2 outward);
    /// A name in a band at `middle`, level or along `ahead` (unit vector).
    TextItem in_band(Vec2 middle, Vec2 ahead, const std::string& text, double size,
                     bool turned) const;
    /// A label that stands where it is put.
    void put(const TextItem& label);
    /// A label that is placed when all others are; where no candidate is free, at one of `led` with
    /// a leader to `target`.
    void later(std::vector<TextItem> candidates, std::vector<TextItem> led = {},
               Vec2 target = {0, 0}) {
        later_.push_back({std::move(candidates), std::move(led), target});
    }
    void write_labels();

    static TextItem centred(Vec2 middle, const std::string& text, double size, bool bold);

private:
    std::vector<Vec2> frame_places(Vec2 target) const;
    void edges(const Outline& outline, const Stroke& stroke);

    Sheet& sheet_;
    Placer& placer_;
    const PlanFrame& frame_;
    std::vector<TextItem> labels_;
    struct LateLabel {
        std::vector<TextItem> candidates, led;
        Vec2 target{0, 0};
    };
    std::vector<LateLabel> later_;
};

/// North, pointing up, in the upper left corner of the placer's frame.
void add_north(Sheet& sheet, Placer& placer);

} // namespace coilwright
