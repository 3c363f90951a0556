#include "geometry/threads/side_by_side.hpp"

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

namespace coilwright {

void side_by_side(std::size_t count, const std::function<void(std::size_t)>& work, unsigned hands) {
    std::atomic<std::size_t> next{0};
    std::atomic<bool> broken{false};
    std::mutex one_at_a_time;
    std::size_t at_fault = count;
    std::exception_ptr fault;
    const auto hand = [&] {
        for (std::size_t i = next++; i < count && !broken; i = next++) {
            try {
                work(i);
            } catch (...) {
                const std::lock_guard<std::mutex> lock(one_at_a_time);
                broken = true;
                if (i < at_fault) {
                    at_fault = i;
                    fault = std::current_exception();
                }
            }
        }
    };
    if (hands == 0)
        hands = std::max(1U, std::thread::hardware_concurrency());
    {
        std::vector<std::jthread> others;
        for (std::size_t i = 1; i < std::min<std::size_t>(hands, count); ++i)
            others.emplace_back(hand);
        hand();
    }
    if (fault)
        std::rethrow_exception(fault);
}

} // namespace coilwright
