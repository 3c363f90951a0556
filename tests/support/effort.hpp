// What a process has used so far: for tests that something ends, and stays within memory. How fast
// it is, benchmarks tell.
#pragma once

#include <sys/resource.h>

namespace coilwright::testing {

inline double processor_seconds() {
    rusage used{};
    getrusage(RUSAGE_SELF, &used);
    const auto seconds = [](const timeval& time) {
        return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_usec) * 1e-6;
    };
    return seconds(used.ru_utime) + seconds(used.ru_stime);
}

/// The most memory that it ever held.
inline double peak_megabytes() {
    rusage used{};
    getrusage(RUSAGE_SELF, &used);
    return static_cast<double>(used.ru_maxrss) / 1024;
}

/// A building that takes longer has hung (the slowest of 10,000 takes a few seconds, an order more
/// under the sanitizers), one that holds more runs away.
inline constexpr double most_seconds_a_building = 60;
inline constexpr double most_megabytes = 2000;

} // namespace coilwright::testing
