#include "geometry/takeoff/orders.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace coilwright {

namespace {

void set_start(OrderGroup& group, const DayPlan& days) {
    for (const WorkDay& day : days.days)
        for (const DayWork& work : day.work)
            if (work.phase == group.phase) {
                group.calendar = day.calendar;
                group.date = day.date;
                return;
            }
    // Nothing is done in this stage: its things lie ready once all else is done.
    if (days.ended && !days.days.empty()) {
        const WorkDay& last = days.days.back();
        group.calendar = last.calendar + 1;
        if (last.date)
            group.date = days_after(*last.date, 1);
    }
}

} // namespace

std::vector<OrderGroup> order_list(const TakeOff& take, const DayPlan& days) {
    std::map<std::pair<Phase, std::string>, double> amounts;
    for (const TakeOffLine& line : take.lines)
        amounts[{line.phase, line.item}] += line.amount;
    std::map<std::string, double> so_far; // of each item's amount
    std::map<std::string, int> packs_so_far;
    std::vector<OrderGroup> groups;
    for (const Phase phase : all_phases) {
        OrderGroup group;
        group.phase = phase;
        for (const TakeOffItem& item : take.items) {
            const auto found = amounts.find({phase, item.code});
            if (item.code == "labour" || found == amounts.end() || item.amount <= 0)
                continue;
            OrderLine line{item.code, item.name, item.to_buy * found->second / item.amount, 0};
            double& sum = so_far[item.code];
            sum += found->second;
            if (!item.pack.empty()) {
                int& had = packs_so_far[item.code];
                const int all = static_cast<int>(
                    std::min<double>(item.packs, std::ceil(item.packs * sum / item.amount - 1e-6)));
                line.packs = all - had;
                line.amount = line.packs * item.pack_size;
                had = all;
                if (line.packs == 0) // there is enough left of an earlier stage
                    continue;
            }
            group.lines.push_back(std::move(line));
        }
        if (group.lines.empty())
            continue;
        set_start(group, days);
        groups.push_back(std::move(group));
    }
    return groups;
}

} // namespace coilwright
