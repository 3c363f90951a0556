#include "geometry/plan/clear_outline.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

ClearOutline clear_outline(const OpeningPlan& opening) {
    const OpeningForm& form = opening.form;
    ClearOutline outline;
    outline.half_width = form.half_width;
    outline.lost = opening.frame_inset + opening.frame_width;
    outline.springing = form.springing;
    outline.top = form.top;
    outline.head = form.head;
    outline.is_circle = form.head_kind == HeadKind::circle;
    outline.bottom = form.sill + (form.use == OpeningUse::door ? 0 : outline.lost);
    return outline;
}

ClearOutline clear_outline(const TunnelForm& tunnel, double inside_plaster) {
    ClearOutline outline;
    outline.half_width = tunnel.profile.half_span;
    outline.lost = inside_plaster;
    outline.springing = tunnel.springline;
    outline.top = tunnel.crown();
    outline.head = tunnel.profile;
    outline.ceiling = tunnel.ceiling() - inside_plaster;
    return outline;
}

double clear_half_width(const ClearOutline& outline, double z) {
    if (z < outline.bottom || z >= std::min(outline.top, outline.ceiling))
        return 0;
    if (!outline.head)
        return z < outline.top - outline.lost ? std::max(0.0, outline.half_width - outline.lost)
                                              : 0;
    const double y = z - outline.springing;
    return std::max(
        0.0, offset_half_width(*outline.head, outline.lost, outline.is_circle ? std::abs(y) : y));
}

double top_over_width(const ClearOutline& outline, double width) {
    if (width / 2 > outline.half_width - outline.lost + 1e-9)
        return outline.bottom - 1;
    if (!outline.head)
        return outline.top - outline.lost;
    const double half = std::min(width / 2, outline.half_width - outline.lost);
    return std::min(outline.ceiling,
                    outline.springing + offset_height_at(*outline.head, outline.lost, half));
}

double bottom_over_width(const ClearOutline& outline, double width) {
    if (!outline.is_circle)
        return outline.bottom;
    return std::max(outline.bottom, 2 * outline.springing - top_over_width(outline, width));
}

std::optional<ClearRectangle> largest_rectangle(const ClearOutline& outline, double least_width,
                                                double least_height) {
    const double widest = 2 * (outline.half_width - outline.lost);
    if (widest < least_width - 1e-9)
        return std::nullopt;
    const auto at_width = [&](double width) {
        const double bottom = bottom_over_width(outline, width);
        return ClearRectangle{width, top_over_width(outline, width) - bottom, bottom};
    };
    std::optional<ClearRectangle> best;
    constexpr int steps = 400;
    for (int i = 0; i <= steps; ++i) {
        const ClearRectangle one = at_width(least_width + (widest - least_width) * i / steps);
        if (one.height >= least_height - 1e-9 && (!best || one.area() > best->area()))
            best = one;
    }
    return best;
}

double clear_area(const ClearOutline& outline) {
    if (!outline.head)
        return 2 * std::max(0.0, outline.half_width - outline.lost) *
               std::max(0.0, outline.top - outline.lost - outline.bottom);
    const double top = outline.springing + offset_height_at(*outline.head, outline.lost, 0);
    constexpr int rows = 2000; // midpoints: within 1 part in 10000 for any head
    const double step = (top - outline.bottom) / rows;
    double sum = 0;
    for (int i = 0; i < rows; ++i)
        sum += 2 * clear_half_width(outline, outline.bottom + (i + 0.5) * step);
    return step > 0 ? sum * step : 0;
}

} // namespace coilwright
