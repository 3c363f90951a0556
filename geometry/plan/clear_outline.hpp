// What is left clear of an opening or a tunnel after plaster and frame, and what fits upright
// through it.
#pragma once

#include "geometry/plan/building_form.hpp"
#include "geometry/plan/schedule.hpp"

#include <optional>

namespace coilwright {

/// A clear outline, symmetric about its middle: plumb sides from `bottom` up to `springing`, then
/// the head's profile, both moved in by `lost`. A circle's lower half is the upper one turned over.
struct ClearOutline {
    double half_width = 0;         // of the rough hole
    double lost = 0;               // plaster and frame, square to the outline
    double bottom = 0;             // clear
    double springing = 0, top = 0; // of the rough hole
    std::optional<Profile> head;
    bool is_circle = false;
    double ceiling = 1e9; // a level face above which nothing is clear, whatever the head
};

/// Of an opening as it is planned: a door has nothing at its sill, everything else plaster and
/// frame.
ClearOutline clear_outline(const OpeningPlan& opening);
/// Of a tunnel: the plaster alone, from the floor up.
ClearOutline clear_outline(const TunnelForm& tunnel, double inside_plaster);

/// Clear half-width at a height above the floor; 0 outside.
double clear_half_width(const ClearOutline& outline, double z);
/// Upper and lower end of the upright strip of that width about the middle; the upper one lies
/// under the lower one where it does not fit. A pointed head of 24 in on a door of 32 by 80 in,
/// bare: 32 in fit up to 56 in.
double top_over_width(const ClearOutline& outline, double width);
double bottom_over_width(const ClearOutline& outline, double width);

/// An upright rectangle about the middle.
struct ClearRectangle {
    double width = 0, height = 0, bottom = 0;
    double area() const { return width * height; }
};
/// The largest by area that is at least so wide and high; none where nothing so large fits.
std::optional<ClearRectangle> largest_rectangle(const ClearOutline& outline, double least_width,
                                                double least_height);

/// Area within the outline, m2.
double clear_area(const ClearOutline& outline);

} // namespace coilwright
