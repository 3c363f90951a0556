// Who builds, how fast and when: the table [crew] of the works file.
#pragma once

#include <optional>
#include <vector>

namespace coilwright {

/// A day of the calendar of Gregory.
struct Date {
    int year = 2000, month = 1, day = 1;
    bool operator==(const Date&) const = default;
};

/// [crew]. Rates are of one person in one day.
struct Crew {
    int size = 4;
    double hours = 8;
    double fill_rate = 0.13; // m3 tamped; a dome of 4 m built by ten learners, 0.23 m a day (2018)
    double plaster_rate = 8; // m2 of one coat
    double paint_rate = 30;  // m2 of one coat
    double dig_rate = 1.5;   // m3 of trench
    double floor_rate = 1;   // m3 of floor build-up
    double fit_rate = 1;     // doors or windows
    int most_courses = 4;    // that one element rises in a day
    int lift = 4;            // courses that may be laid before the fill's age_per_lift counts
    std::optional<Date> start;
    std::vector<int> rest_days; // 0 Monday ... 6 Sunday
};

} // namespace coilwright
