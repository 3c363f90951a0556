// The figures of a crew's sheet as texts in the design's unit: what to set, fill and correct.
#pragma once

#include "geometry/drawing/course_part.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// 5 US gallons of 231 cubic inches: 0.66840 cu ft, 0.018927 m3.
inline constexpr double bucket_volume = 5 * 231 * 0.0254 * 0.0254 * 0.0254;
/// What builders' pails are filled to where litres are the measure.
inline constexpr double metric_bucket_volume = 0.010;

/// One way to set the compass: what is measured from where, and how far (metres).
struct CompassReading {
    std::string from; // "COMPASS, from the pole's axis"; of those after the first "from its axis"
    double metres = 0;
};

/// The readings of a ring, the one that the crew sets first: a chain's where the design says chain,
/// else a level arm's; of each from the pole's face where its diameter is stated, where the tape
/// lies, before that from its axis. Empty for a cap.
std::vector<CompassReading> compass_readings(const Ring& ring, const DomeForm& dome,
                                             const Design& design);

/// By how much the first reading changes if the course lies `off` metres above the rod (negative:
/// below), metres: |x(z + off) - x(z)| with its sign, on a chain the change of its slant.
double compass_change(const Ring& ring, const Course& course, const DomeForm& dome,
                      const Design& design, double off);

double part_fill(const CoursePart& part, double course_height);
/// Of the short bags beside the tubes of a part: wedges, backs of niches, bags of fans.
double pieces_fill(const CoursePart& part);
/// Wire on top of a part, all strands, metres.
double part_wire(const CoursePart& part);

/// By how far a course steps in: "2 1/8 in", "under 1 mm", "none, plumb".
std::string step_text(double step, DisplayUnit unit);

/// Sum of a ring's tubes along their centrelines, metres.
double ring_length(const Ring& ring);

std::string buckets_text(double cubic_metres, DisplayUnit unit); // "58.5"
std::string bucket_name(DisplayUnit unit);                       // "5 gal", "10 L"
/// In feet the buckets first, in metres the litres: "58.5 (1107 L)", "1107 L (110.7)".
std::string fill_text(double cubic_metres, DisplayUnit unit);
std::string litres_text(double cubic_metres); // "1107"
/// To the nearest 1/16 in or 0.1 mm... of small changes: "3/16 in", "4.8 mm".
std::string fine_length_text(double metres, DisplayUnit unit);
/// A length to buy or to have ready: whole feet or tenths of a metre, rounded up: "65 ft", "24.6
/// m".
std::string supply_text(double metres, DisplayUnit unit);
/// Degrees with two decimals: "17.25°".
std::string degrees_text(double degrees);
/// "3 ft 9 in", or below the floor "10 in below 0".
std::string rod_text(double metres, DisplayUnit unit);
std::string count_text(int count, const std::string& one, const std::string& many);

/// The openings of a dome, in the order of the schedule.
std::vector<const OpeningPlan*> openings_of(const Schedule& schedule, const std::string& dome);
/// The opening or tunnel that the datum lies on, or an empty id: north.
std::string datum_element(const BuildingPlan& plan, const DomeForm& dome);

} // namespace coilwright
