// Messages on values that are each legal and do not go together. Texts in contradictions.cpp.
#pragma once

#include "geometry/design/faults.hpp"

namespace coilwright::faults {

/// `at` is the place of the second of the keys found.
Diagnostic exclusive_keys(const At& at, const std::string& first,
                          const std::vector<std::string>& of, const std::string& typed);
/// None of several keys; `at` is the first of them, with the place of its table.
Diagnostic none_of_keys(const At& at, const std::vector<std::string>& of, const std::string& typed);
/// A key that does not go with what another says: "kind = \"round\"".
Diagnostic key_out_of_place(const At& at, const std::string& because, const std::string& allowed,
                            const std::string& example);
/// `at` is the key left out, with the place of its table; `other` stands.
Diagnostic half_of_a_pair(const At& at, const std::string& other, const std::string& typed);

// Fitting.
Diagnostic fit_without_wish(const At& at, const std::string& wish, const std::string& example);
Diagnostic wish_without_fit(const At& at, const std::string& fitted);

// Tubes and courses: widths in metres.
Diagnostic impossible_tamped_width(const At& at, double width, double course, double lay_flat,
                                   DisplayUnit unit);
Diagnostic tube_too_narrow(const At& at, double lay_flat, double course, DisplayUnit unit);

// Domes.
Diagnostic profile_too_flat(const At& at, const std::string& found, const std::string& least,
                            const std::string& typed);
Diagnostic skylight_too_wide(const At& at, double diameter, double inside, DisplayUnit unit);
Diagnostic plaster_fills_dome(const At& at, double inside, double plaster, DisplayUnit unit);
Diagnostic drawn_points(const At& at, const std::string& message, const std::string& typed);

// Openings.
Diagnostic circle_not_round(const At& at, double width, double height, DisplayUnit unit);
Diagnostic head_too_high(const At& at, double rise, double height, DisplayUnit unit,
                         double example);
Diagnostic head_too_flat(const At& at, double rise, double half_width, double height,
                         DisplayUnit unit);
Diagnostic head_too_steep(const At& at, double rise, double half_width, DisplayUnit unit);

/// In a tunnel, whose wall looks on another bearing than the one written; degrees.
Diagnostic bearing_off_its_tunnel(const At& at, const std::string& tunnel, double found,
                                  double right);

// Tunnels, buttresses, joins.
Diagnostic same_dome_twice(const At& at, const std::string& id, const std::string& typed);
Diagnostic repeated_join(const At& at, const std::string& other, SourcePlace place);
Diagnostic domes_in_one_place(const At& at);
Diagnostic tunnel_off_its_line(const At& at, double found, double line);
Diagnostic projection_grows(const At& at, double top, double base, DisplayUnit unit);
/// The name of one of a buttress's piers is that of another element.
Diagnostic pier_name_taken(const At& at, const std::string& pier, SourcePlace other);
Diagnostic repeated_bearing(const At& at, double bearing);

// Materials and records.
Diagnostic density_order(const At& at, double dry, double moist, DisplayUnit unit);
Diagnostic stabiliser_without_ratio(const At& at, bool has_ratio);
Diagnostic backward_courses(const At& at, int first, int last);
Diagnostic overlapping_fills(const At& at, const std::string& other, int course, int free_course);
/// `layout`: where the layout has the upper top, from the lower one.
Diagnostic tops_not_rising(const At& at, int lower, int upper, double layout, DisplayUnit unit);
Diagnostic low_height_over_clear(const At& at, double low, double clear, DisplayUnit unit);

} // namespace coilwright::faults
