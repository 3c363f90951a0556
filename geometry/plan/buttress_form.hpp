// A buttress: a radial pier against a dome's wall, as a function of height.
#pragma once

#include "geometry/plan/region.hpp"
#include "geometry/plan/wall_form.hpp"

#include <optional>
#include <string>
#include <vector>

namespace coilwright {

/// What a plumb reveal builds out (reveal_form.hpp).
struct RevealForm {
    OpeningForm opening;
    CourseLevels levels;
    double width = 0; // of its tubes, tamped
    int first_course = 0, last_course = 0;
    CapCurve cap; // the outside over the head
};

/// One pier. Positions along its axis count from the dome's pole.
struct ButtressForm {
    std::string id;    // of the pier: "flank-1", or the table's own id if it makes one
    std::string table; // id of the [buttress] table
    std::string dome;
    Vec2 origin{0, 0};
    Bearing bearing;
    double half_width = 0;
    double bottom = 0, top = 0; // top: of the last course whose middle lies below `height`
    double height = 0;          // as asked for
    double base_outside = 0;    // R + w of the dome's base ring
    double projection = 0, projection_top = 0;
    int last_course = 0;
    int tubes = 1;                    // side by side in a course
    std::optional<RevealForm> reveal; // none of a buttress

    Vec2 axis() const { return along(bearing); }
};

/// The piers of a [buttress] table, by bearing in the order written. Preconditions: the table and
/// its dome are sound; `beside`, if any, is an opening of the dome or a tunnel from it.
std::vector<ButtressForm> make_buttress_forms(const Design& design, const Buttress& buttress,
                                              const DomeForm& dome);

/// Distance of the outer face from the pole: base_outside + p(z), p linear from the floor to
/// `height`, constant below the floor.
double outer_face(const ButtressForm& form, double z);

/// Half of its width across its axis: the same at every height but for a reveal's.
double pier_half_width(const ButtressForm& form, double z);

/// The pier in plan from the pole out; the dome's inside is cut from it. Zero width above its top.
Box buttress_body(const ButtressForm& form, double z);

/// The tubes of course n side by side, the rightmost first: the middle of each across the pier's
/// axis, to the left, and the width that it takes.
struct PierTube {
    double across = 0, width = 0;
};
std::vector<PierTube> pier_tubes(const ButtressForm& form, int n);

/// Degrees between the bearing of an opening of half-width a and that of a pier beside it, whose
/// near side clears the jamb by `gap` at the inside face of the base ring (radius R): asin((a +
/// gap) / sqrt(R^2 + (width/2)^2)) + atan((width/2) / R). a 16, R 54, width 30, gap 0 (any unit)
/// -> 32.112.
double beside_degrees(double half_width, double gap, double inside_radius, double width);

} // namespace coilwright
