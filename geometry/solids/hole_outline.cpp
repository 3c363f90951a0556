#include "geometry/solids/hole_outline.hpp"

#include "geometry/base/bearing.hpp"

#include <cmath>

namespace coilwright {

namespace {

constexpr double least_piece = 1e-5;

/// The head from the left springing point over the crest to the right one.
void add_head(std::vector<SectionPiece>& pieces, const OpeningForm& form) {
    const double a = form.half_width, springing = form.springing;
    if (!form.head) {
        pieces.push_back(straight_piece({a, form.top}, {-a, form.top}));
        return;
    }
    const double rho = form.head->radius, rise = form.head->rise;
    if (form.head->kind == ProfileKind::pointed) {
        const double off = rho - a; // each arc's centre lies that far beyond the middle
        const double sweep = std::atan2(rise, off);
        pieces.push_back(arc_piece({-off, springing}, rho, 0, sweep));
        pieces.push_back(arc_piece({off, springing}, rho, pi - sweep, sweep));
    } else {
        const double start = std::atan2(rho - rise, a);
        pieces.push_back(arc_piece({0, form.top - rho}, rho, start, pi - 2 * start));
    }
}

} // namespace

HoleOutline hole_outline(const OpeningForm& form, double foot) {
    const double a = form.half_width;
    HoleOutline outline;
    if (form.head_kind == HeadKind::circle) {
        const Vec2 centre(0, form.springing);
        outline.pieces = {arc_piece(centre, a, 0, pi), arc_piece(centre, a, pi, pi)};
        return outline;
    }
    outline.open = form.sill <= foot + height_tie;
    const double low = outline.open ? foot : form.sill;
    if (!outline.open)
        outline.pieces.push_back(straight_piece({-a, low}, {a, low}));
    const bool jambs = form.springing - low > least_piece;
    if (jambs)
        outline.pieces.push_back(straight_piece({a, low}, {a, form.springing}));
    add_head(outline.pieces, form);
    if (jambs)
        outline.pieces.push_back(straight_piece({-a, form.springing}, {-a, low}));
    return outline;
}

} // namespace coilwright
