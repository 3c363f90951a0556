#include "geometry/drawing/spread.hpp"

#include <algorithm>

namespace coilwright {

std::vector<double> spread(const std::vector<SpreadLabel>& labels, double low, double high) {
    // Measured from the left edge of the row they would form when packed, every label wants to
    // stand no further left than the one before: isotonic regression, by pooling adjacent
    // violators.
    std::vector<double> before; // widths left of each label's middle
    double total = 0;
    for (const SpreadLabel& label : labels) {
        before.push_back(total + label.width / 2);
        total += label.width;
    }
    if (total > high - low + 1e-9)
        return {};
    struct Pool {
        double sum = 0;
        int count = 0;
        double mean() const { return sum / count; }
    };
    std::vector<Pool> pools;
    for (std::size_t i = 0; i < labels.size(); ++i) {
        pools.push_back({labels[i].wanted - before[i], 1});
        while (pools.size() > 1 && pools[pools.size() - 2].mean() > pools.back().mean()) {
            pools[pools.size() - 2].sum += pools.back().sum;
            pools[pools.size() - 2].count += pools.back().count;
            pools.pop_back();
        }
    }
    std::vector<double> middles;
    for (const Pool& pool : pools)
        for (int k = 0; k < pool.count; ++k) {
            const double start = std::clamp(pool.mean(), low, std::max(low, high - total));
            middles.push_back(start + before[middles.size()]);
        }
    return middles;
}

} // namespace coilwright
