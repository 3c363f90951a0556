#include "exporters/take_off_json.hpp"

#include "exporters/json_values.hpp"
#include "geometry/takeoff/orders.hpp"

namespace coilwright {
namespace {

constexpr int format_version = 1;

Json json_items(const TakeOff& take) {
    Json items = Json::array();
    for (const TakeOffItem& item : take.items)
        items.push_back({{"item", item.code},
                         {"name", item.name},
                         {"unit", word(item.unit)},
                         {"amount", json_number(item.amount)},
                         {"waste", json_number(item.waste)},
                         {"to_buy", json_number(item.to_buy)},
                         {"pack", item.pack},
                         {"pack_size", json_number(item.pack_size)},
                         {"packs", item.packs},
                         {"how", item.how}});
    return items;
}

Json json_lines(const TakeOff& take) {
    Json lines = Json::array();
    for (const TakeOffLine& line : take.lines) {
        Json figures = Json::array();
        for (const Figure& figure : line.figures)
            figures.push_back({{"name", figure.name},
                               {"value", json_number(figure.value)},
                               {"unit", figure.unit}});
        lines.push_back({{"item", line.item},
                         {"element", line.element},
                         {"phase", word(line.phase)},
                         {"what", line.what},
                         {"amount", json_number(line.amount)},
                         {"how", line.how},
                         {"figures", std::move(figures)}});
    }
    return lines;
}

std::string stabiliser_word(Stabiliser stabiliser) {
    return stabiliser == Stabiliser::none     ? "none"
           : stabiliser == Stabiliser::cement ? "cement"
                                              : "lime";
}

Json json_courses(const TakeOff& take) {
    Json courses = Json::array();
    std::size_t tube = 0;
    for (const CourseTake& course : take.courses) {
        Json tubes = Json::array();
        for (; tube < take.tubes.size() && take.tubes[tube].course <= course.course; ++tube) {
            const TubeTake& one = take.tubes[tube];
            if (one.course != course.course || one.element != course.element)
                break;
            tubes.push_back({{"id", one.tube},
                             {"cut_length", json_number(one.cut_length)},
                             {"tamped", json_number(one.tamped)},
                             {"buckets", json_number(one.buckets)},
                             {"barrows", json_number(one.barrows)}});
        }
        courses.push_back({{"course", course.course},
                           {"element", course.element},
                           {"phase", word(course.phase)},
                           {"fill", course.fill},
                           {"kind", course.kind == FillKind::gravel ? "gravel" : "soil"},
                           {"tube_length", json_number(course.tube_net)},
                           {"cut_length", json_number(course.tube_cut)},
                           {"lining_length", json_number(course.lining)},
                           {"wire_length", json_number(course.wire)},
                           {"tamped", json_number(course.soil.tamped)},
                           {"bank", json_number(course.soil.bank)},
                           {"loose", json_number(course.soil.loose)},
                           {"stabiliser", stabiliser_word(course.stabiliser)},
                           {"stabiliser_mass", json_number(course.stabiliser_mass)},
                           {"water", json_number(course.water)},
                           {"buckets", json_number(course.buckets)},
                           {"barrows", json_number(course.barrows)},
                           {"tubes", std::move(tubes)}});
    }
    return courses;
}

Json json_element_totals(const TakeOff& take, const Costs& costs) {
    Json elements = Json::array();
    for (const ElementTake& total : element_totals(take)) {
        Json cost = nullptr;
        for (const CostShare& share : costs.by_element)
            if (share.name == total.element)
                cost = json_number(share.likely);
        elements.push_back({{"element", total.element},
                            {"tube_length", json_number(total.tube_net)},
                            {"cut_length", json_number(total.tube_cut)},
                            {"lining_length", json_number(total.lining)},
                            {"wire_length", json_number(total.wire)},
                            {"tamped", json_number(total.soil.tamped)},
                            {"loose", json_number(total.soil.loose)},
                            {"stabiliser_mass", json_number(total.stabiliser_mass)},
                            {"water", json_number(total.water)},
                            {"buckets", json_number(total.buckets)},
                            {"barrows", json_number(total.barrows)},
                            {"cost", std::move(cost)}});
    }
    return elements;
}

Json json_rolls(const TakeOff& take) {
    Json all = Json::array();
    for (const RollTake& rolls : take.rolls) {
        Json list = Json::array();
        for (const RollCuts& one : rolls.plan.rolls) {
            Json pieces = Json::array();
            for (const std::size_t piece : one.pieces)
                pieces.push_back({{"of", rolls.pieces[piece]},
                                  {"cut_length", json_number(rolls.lengths[piece])}});
            list.push_back({{"offcut", json_number(one.offcut)}, {"cuts", std::move(pieces)}});
        }
        all.push_back({{"tube", rolls.tube},
                       {"roll", json_number(rolls.roll)},
                       {"tube_length", json_number(rolls.net)},
                       {"cut_length", json_number(rolls.cut)},
                       {"least", rolls.plan.least},
                       {"first_fit", rolls.plan.first_fit},
                       {"rolls", std::move(list)}});
    }
    return all;
}

Json json_faces(const TakeOff& take) {
    Json faces = Json::array();
    for (const FaceArea& face : take.faces)
        faces.push_back({{"element", face.element},
                         {"face", face.face == FaceKind::inside    ? "inside"
                                  : face.face == FaceKind::outside ? "outside"
                                                                   : "reveal"},
                         {"area", json_number(face.area)}});
    return faces;
}

Json json_bags(const TakeOff& take) {
    Json bags = Json::array();
    for (const char* material : {"cement", "lime"})
        if (const TakeOffItem* item = find_item(take, material))
            for (const BagCount& bag : bag_counts(material, item->amount * (1 + item->waste)))
                bags.push_back({{"of", material},
                                {"bag", bag.name},
                                {"mass", json_number(bag.mass)},
                                {"count", bag.count}});
    return bags;
}

Json json_range(const MoneyRange& range) {
    return {{"low", json_number(range.low)},
            {"likely", json_number(range.likely)},
            {"high", json_number(range.high)}};
}

Json json_shares(const std::vector<CostShare>& shares) {
    Json list = Json::array();
    for (const CostShare& one : shares)
        list.push_back({{"name", one.name},
                        {"likely", json_number(one.likely)},
                        {"share", json_number(one.share)}});
    return list;
}

Json json_costs(const Costs& costs) {
    if (costs.items.empty())
        return nullptr;
    Json items = Json::array();
    for (const ItemCost& item : costs.items)
        items.push_back({{"item", item.item},
                         {"quantity", json_number(item.quantity)},
                         {"per", item.per},
                         {"price", json_range(item.price)},
                         {"cost", json_range(item.cost)},
                         {"share", json_number(item.share)},
                         {"source", item.source},
                         {"date", item.date}});
    return {{"currency", costs.currency},
            {"items", std::move(items)},
            {"without_price", costs.unpriced},
            {"by_element", json_shares(costs.by_element)},
            {"by_phase", json_shares(costs.by_phase)},
            {"total", json_range(costs.total)},
            {"per_floor_area", json_number(costs.per_floor_area)},
            {"simulated",
             {{"tenth", json_number(costs.simulated.tenth)},
              {"middle", json_number(costs.simulated.middle)},
              {"nine_tenths", json_number(costs.simulated.nine_tenths)},
              {"mean", json_number(costs.simulated.mean)},
              {"draws", costs.simulated.draws},
              {"seed", costs.simulated.seed}}}};
}

Json json_orders(const TakeOff& take, const DayPlan& days) {
    Json groups = Json::array();
    for (const OrderGroup& group : order_list(take, days)) {
        Json items = Json::array();
        for (const OrderLine& line : group.lines)
            items.push_back(
                {{"item", line.item}, {"amount", json_number(line.amount)}, {"packs", line.packs}});
        groups.push_back(
            {{"phase", word(group.phase)},
             {"calendar_day", group.calendar ? Json(*group.calendar + 1) : Json(nullptr)},
             {"date", group.date ? Json(date_text(*group.date)) : Json(nullptr)},
             {"items", std::move(items)}});
    }
    return groups;
}

Json json_days(const DayPlan& plan) {
    Json days = Json::array();
    for (const WorkDay& day : plan.days) {
        Json work = Json::array();
        for (const DayWork& one : day.work)
            work.push_back({{"phase", word(one.phase)},
                            {"what", one.what},
                            {"course", one.course},
                            {"share", json_number(one.share)},
                            {"person_days", json_number(one.person_days)},
                            {"ends", one.ends}});
        days.push_back({{"day", day.number},
                        {"calendar_day", day.calendar + 1},
                        {"date", day.date ? Json(date_text(*day.date)) : Json(nullptr)},
                        {"work", std::move(work)},
                        {"set", day.set},
                        {"person_days", json_number(day.person_days)},
                        {"fill_loose", json_number(day.fill_loose)},
                        {"buckets", json_number(day.buckets)},
                        {"stabiliser_mass", json_number(day.stabiliser_mass)},
                        {"water", json_number(day.water)},
                        {"cut_length", json_number(day.tube_cut)},
                        {"wire_length", json_number(day.wire)}});
    }
    Json stages = Json::array();
    for (const StageBar& bar : plan.stages)
        stages.push_back({{"name", bar.name},
                          {"first_calendar_day", bar.from + 1},
                          {"last_calendar_day", bar.to + 1},
                          {"person_days", json_number(bar.person_days)}});
    return {{"working_days", plan.working_days},
            {"calendar_days", plan.calendar_days},
            {"person_days", json_number(plan.person_days)},
            {"ended", plan.ended},
            {"stages", std::move(stages)},
            {"days", std::move(days)},
            {"notes", plan.notes}};
}

} // namespace

std::string take_off_json(const TakeOff& take, const Costs& costs, const DayPlan& days) {
    Json pieces = Json::array();
    for (const PieceTake& piece : take.pieces)
        pieces.push_back({{"element", piece.element},
                          {"what", piece.what},
                          {"length", json_number(piece.length)},
                          {"width", json_number(piece.width)},
                          {"depth", json_number(piece.depth)},
                          {"count", piece.count}});
    return json_text({{"format", "coilwright-take-off"},
                      {"version", format_version},
                      {"name", take.name},
                      {"floor_area", json_number(take.floor_area)},
                      {"items", json_items(take)},
                      {"lines", json_lines(take)},
                      {"courses", json_courses(take)},
                      {"elements", json_element_totals(take, costs)},
                      {"rolls", json_rolls(take)},
                      {"faces", json_faces(take)},
                      {"pieces", std::move(pieces)},
                      {"bags", json_bags(take)},
                      {"costs", json_costs(costs)},
                      {"orders", json_orders(take, days)},
                      {"days", json_days(days)},
                      {"notes", take.notes}});
}

} // namespace coilwright
