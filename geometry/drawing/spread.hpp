// Labels on a line, moved apart as little as can be.
#pragma once

#include <vector>

namespace coilwright {

struct SpreadLabel {
    double wanted = 0; // where its middle would stand
    double width = 0;
};

/// Middles of the labels in the order given (wanted places must not decrease), none overlapping,
/// all between `low` and `high`, the sum of squared moves least. Empty if they are wider than the
/// room.
std::vector<double> spread(const std::vector<SpreadLabel>& labels, double low, double high);

} // namespace coilwright
