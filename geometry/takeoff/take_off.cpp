#include "geometry/takeoff/take_off.hpp"

#include "geometry/takeoff/ledger.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace coilwright {

std::string word(Phase phase) {
    switch (phase) {
    case Phase::trench:
        return "trench";
    case Phase::base:
        return "base";
    case Phase::walls:
        return "walls";
    case Phase::openings:
        return "openings";
    case Phase::plaster:
        return "plaster";
    case Phase::finish:
        return "finish";
    }
    return {};
}

std::string word(AmountUnit unit) {
    switch (unit) {
    case AmountUnit::metre:
        return "m";
    case AmountUnit::square_metre:
        return "m2";
    case AmountUnit::cubic_metre:
        return "m3";
    case AmountUnit::kilogram:
        return "kg";
    case AmountUnit::litre:
        return "l";
    case AmountUnit::piece:
        return "piece";
    case AmountUnit::day:
        return "day";
    }
    return {};
}

void Ledger::add(TakeOffLine line) const {
    if (line.amount > 0)
        take.lines.push_back(std::move(line));
}

namespace {

struct Kind {
    const char* name;
    AmountUnit unit;
    double WasteShares::*waste;
};

Kind kind_of(const std::string& code) {
    static const std::map<std::string, Kind> kinds{
        {"anchor-plate", {"Anchor plates", AmountUnit::piece, nullptr}},
        {"cement", {"Portland cement", AmountUnit::kilogram, &WasteShares::stabiliser}},
        {"door-leaf", {"Door leaves", AmountUnit::piece, nullptr}},
        {"drain-pipe", {"Drain pipe", AmountUnit::metre, &WasteShares::timber}},
        {"floor-fill", {"Floor build-up", AmountUnit::cubic_metre, &WasteShares::fill}},
        {"form-sheet", {"Sheet for forms", AmountUnit::square_metre, &WasteShares::timber}},
        {"form-timber",
         {"Battens of forms, laid close", AmountUnit::square_metre, &WasteShares::timber}},
        {"frame", {"Frame timber", AmountUnit::metre, &WasteShares::timber}},
        {"glass", {"Glass", AmountUnit::square_metre, nullptr}},
        {"gravel", {"Gravel", AmountUnit::cubic_metre, &WasteShares::fill}},
        {"hoop", {"Hoops of curbs", AmountUnit::metre, nullptr}},
        {"lime", {"Hydrated lime", AmountUnit::kilogram, &WasteShares::stabiliser}},
        {"lintel-timber", {"Lintel timber", AmountUnit::cubic_metre, &WasteShares::timber}},
        {"membrane", {"Damp-proof membrane", AmountUnit::square_metre, &WasteShares::membrane}},
        {"paint", {"Paint or limewash", AmountUnit::litre, &WasteShares::paint}},
        {"sand", {"Sand, loose", AmountUnit::cubic_metre, &WasteShares::plaster}},
        {"sleeve-pipe", {"Pipe for sleeves", AmountUnit::metre, &WasteShares::timber}},
        {"soil", {"Soil, loose", AmountUnit::cubic_metre, &WasteShares::fill}},
        {"straw", {"Chopped straw, loose", AmountUnit::cubic_metre, &WasteShares::plaster}},
        {"water", {"Water", AmountUnit::litre, nullptr}},
        {"wire", {"Barbed wire", AmountUnit::metre, &WasteShares::wire}}};
    const auto found = kinds.find(code);
    return found != kinds.end() ? found->second
                                : Kind{nullptr, AmountUnit::cubic_metre, &WasteShares::plaster};
}

/// What goes into a coat is lost with the coat, its binder as its sand.
double waste_of(const TakeOffLine& line, const WasteShares& waste) {
    const Kind kind = kind_of(line.item);
    if (!kind.waste)
        return 0;
    return line.phase == Phase::plaster ? waste.plaster : waste.*kind.waste;
}

void put_in_packs(TakeOffItem& item, const std::string& pack, double size) {
    item.pack = pack;
    item.pack_size = size;
    item.packs = whole_packs(item.to_buy, size);
    item.to_buy = item.packs * size;
    item.how += " In whole " + pack + "s.";
}

/// `waste`: of its lines together.
TakeOffItem make_item(const std::string& code, double amount, double waste, const Ledger& ledger) {
    const Works& works = ledger.works;
    TakeOffItem item;
    item.code = code;
    item.amount = amount;
    if (code.rfind("tube-", 0) == 0) {
        const std::string id = code.substr(5);
        item.name = "Tube '" + id + "'";
        item.unit = AmountUnit::metre;
        item.waste = works.waste.tube;
        item.to_buy = amount * (1 + item.waste);
        item.how =
            "Cut lengths and waste, or as many rolls as the cuts pack into, if that is more.";
        for (const RollTake& rolls : ledger.take.rolls)
            if (rolls.tube == id) {
                put_in_packs(item, "roll", rolls.roll);
                item.packs = std::max(item.packs, static_cast<int>(rolls.plan.rolls.size()));
                item.to_buy = item.packs * rolls.roll;
            }
        return item;
    }
    const Kind kind = kind_of(code);
    item.name = kind.name ? kind.name : code;
    item.unit = kind.unit;
    item.waste = waste;
    item.to_buy = amount * (1 + item.waste);
    item.how = item.waste > 0 ? "The sum of its lines and waste." : "The sum of its lines.";
    if (code == "cement")
        put_in_packs(item, "bag", works.packs.cement_bag);
    if (code == "lime")
        put_in_packs(item, "bag", works.packs.lime_bag);
    if (code == "wire") {
        // Where one spool ends the next is lapped on.
        const double lap = ledger.plan.design.wire.lap;
        const int joins = std::max(0, whole_packs(item.to_buy, works.packs.spool) - 1);
        item.to_buy += joins * lap;
        item.how += " A lap where a spool ends (" + std::to_string(joins) + ").";
        put_in_packs(item, "spool", works.packs.spool);
    }
    return item;
}

void sum_items(const Ledger& ledger) {
    struct Sum {
        double amount = 0, wasted = 0;
    };
    std::map<std::string, Sum> sums;
    for (const TakeOffLine& line : ledger.take.lines) {
        Sum& sum = sums[line.item];
        sum.amount += line.amount;
        sum.wasted += line.amount * waste_of(line, ledger.works.waste);
    }
    for (const auto& [code, sum] : sums)
        ledger.take.items.push_back(
            make_item(code, sum.amount, sum.amount > 0 ? sum.wasted / sum.amount : 0, ledger));
}

/// Whether any sheet tells the crew to set such a thing, a word as in SetNote.
bool crew_sets(const Ledger& ledger, const std::string& what) {
    const std::vector<Course>& courses = ledger.schedule().courses;
    return std::any_of(courses.begin(), courses.end(), [&](const Course& course) {
        const auto is_it = [&](const SetNote& note) { return note.what == what; };
        return std::any_of(course.before.begin(), course.before.end(), is_it) ||
               std::any_of(course.after.begin(), course.after.end(), is_it);
    });
}

void note_assumptions(const Ledger& ledger) {
    const Works& works = ledger.works;
    std::vector<std::string>& notes = ledger.take.notes;
    if (!works.stated)
        notes.push_back("There is no works file: soil, waste, packs, mixes and rates are those of "
                        "common practice, and nothing has a price.");
    if (ledger.plan.design.fills.empty())
        notes.push_back("The design says nothing of the fill: soil without stabiliser is assumed.");
    notes.push_back("Soil swells by " + trimmed_text(100 * works.soil.swell, 2) +
                    " % when dug and shrinks by " + trimmed_text(100 * works.soil.shrink, 2) +
                    " % of the bank when tamped: weigh a test bag.");
    notes.push_back("In no list: " +
                    std::string(crew_sets(ledger, "cap boards")
                                    ? "boards and prop under each cap, whose holes the crew's "
                                      "sheets measure, "
                                    : "") +
                    (crew_sets(ledger, "drip") ? "drips over the heads of openings, " : "") +
                    "poles, stakes and nails.");
    for (const Price& price : works.prices)
        if (price.item.rfind("tube-", 0) == 0 &&
            !find_tube(ledger.plan.design, price.item.substr(5)))
            notes.push_back("The works file has a price for tube '" + price.item.substr(5) +
                            "', which the design does not have.");
    if (!works.note.empty())
        notes.push_back(works.note);
}

} // namespace

TakeOff take_off(const BuildingPlan& plan, const Works& works, const DecideRegion& decide) {
    TakeOff take;
    take.name = plan.schedule.name;
    take.unit = plan.schedule.unit;
    const Ledger ledger{plan, works, take};
    note_assumptions(ledger);
    take_walls(ledger);
    take_ground(ledger, decide);
    take_openings(ledger);
    take_plaster(ledger, decide);
    std::stable_sort(take.lines.begin(), take.lines.end(),
                     [](const TakeOffLine& a, const TakeOffLine& b) {
                         return a.phase != b.phase ? a.phase < b.phase : a.item < b.item;
                     });
    sum_items(ledger);
    return take;
}

std::vector<ElementTake> element_totals(const TakeOff& take) {
    std::vector<ElementTake> totals;
    for (const CourseTake& course : take.courses) {
        auto found = std::find_if(totals.begin(), totals.end(), [&](const ElementTake& one) {
            return one.element == course.element;
        });
        if (found == totals.end()) {
            found = totals.insert(totals.end(), ElementTake{});
            found->element = course.element;
        }
        found->tube_net += course.tube_net;
        found->tube_cut += course.tube_cut;
        found->lining += course.lining;
        found->wire += course.wire;
        found->soil.tamped += course.soil.tamped;
        found->soil.bank += course.soil.bank;
        found->soil.loose += course.soil.loose;
        found->stabiliser_mass += course.stabiliser_mass;
        found->water += course.water;
        found->buckets += course.buckets;
        found->barrows += course.barrows;
    }
    return totals;
}

const TakeOffItem* find_item(const TakeOff& take, const std::string& code) {
    for (const TakeOffItem& item : take.items)
        if (item.code == code)
            return &item;
    return nullptr;
}

} // namespace coilwright
