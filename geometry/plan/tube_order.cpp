#include "geometry/plan/tube_order.hpp"

#include "geometry/plan/schedule.hpp"

#include <algorithm>
#include <map>

namespace coilwright {

namespace {

/// Whether the design has a course laid in gravel, which takes two tubes.
bool laid_double(const Design& design, int course) {
    const Fill* rest = nullptr;
    for (const Fill& fill : design.fills) {
        if (!fill.courses)
            rest = &fill;
        else if (course >= fill.courses->first && course <= fill.courses->second)
            return fill.kind == FillKind::gravel;
    }
    return rest && rest->kind == FillKind::gravel;
}

double& share_of(TubeOrder& order, PieceKind kind) {
    switch (kind) {
    case PieceKind::fan_bag:
    case PieceKind::keystone:
        return order.fan_bags;
    case PieceKind::niche_back:
        return order.niche_backs;
    case PieceKind::wedge:
        break;
    }
    return order.wedges;
}

class OrderBook {
public:
    OrderBook(const Design& design, const Schedule& schedule)
        : design_(design), schedule_(schedule) {}

    std::vector<TubeOrder> lines() {
        for (const Course& course : schedule_.courses) {
            const double lining = laid_double(design_, course.number) ? 1 : 0;
            for (const Ring& ring : course.rings)
                take_ring(ring, lining);
            for (const Straight& straight : course.straights)
                take_straight(straight, lining);
        }
        std::vector<TubeOrder> all;
        for (auto& [key, line] : lines_) {
            line.cut_length = line.rings + line.straights + line.cap_bags + line.fan_bags +
                              line.niche_backs + line.wedges + line.linings;
            all.push_back(line);
        }
        return all;
    }

private:
    const Design& design_;
    const Schedule& schedule_;
    std::map<std::pair<int, std::string>, TubeOrder> lines_; // by rank of the element, tube type

    TubeOrder& line(int rank, OrderedFor kind, const std::string& element,
                    const std::string& tube) {
        TubeOrder& line = lines_[{rank, tube}];
        line.kind = kind;
        line.element = element;
        line.tube = tube;
        return line;
    }

    template <typename Form>
    static int place(const std::vector<Form>& forms, const std::string& id) {
        const auto found = std::find_if(forms.begin(), forms.end(),
                                        [&](const Form& form) { return form.id == id; });
        return static_cast<int>(found - forms.begin());
    }

    void take_ring(const Ring& ring, double lining) {
        TubeOrder& to = line(place(schedule_.building.domes, ring.dome), OrderedFor::dome,
                             ring.dome, ring.tube);
        const bool cap = ring.kind == RingKind::cap;
        for (const Run& run : ring.runs)
            for (const LaidTube& tube : run.tubes) {
                (cap ? to.bags : to.tubes) += 1;
                (cap ? to.cap_bags : to.rings) += tube.cut_length;
                to.linings += lining * tube.cut_length;
            }
        for (const Piece& piece : ring.pieces) {
            to.bags += 1;
            share_of(to, piece.kind) += piece.cut_length;
            to.linings += lining * piece.cut_length;
        }
    }

    void take_straight(const Straight& straight, double lining) {
        const BuildingForm& building = schedule_.building;
        const int domes = static_cast<int>(building.domes.size());
        const int tunnels = static_cast<int>(building.tunnels.size());
        TubeOrder* to = nullptr;
        if (find_tunnel(building, straight.of)) {
            to = &line(domes + place(building.tunnels, straight.of), OrderedFor::tunnel,
                       straight.of, straight.tube);
        } else {
            const int pier = place(building.buttresses, straight.of);
            const auto named = [](const ButtressForm& form) -> const std::string& {
                return form.reveal ? form.id : form.table;
            };
            const std::string& table = named(building.buttresses[static_cast<std::size_t>(pier)]);
            const auto first =
                std::find_if(building.buttresses.begin(), building.buttresses.end(),
                             [&](const ButtressForm& form) { return named(form) == table; });
            to = &line(domes + tunnels + static_cast<int>(first - building.buttresses.begin()),
                       OrderedFor::buttress, table, straight.tube);
        }
        for (const LaidTube& tube : straight.tubes) {
            to->tubes += 1;
            to->straights += tube.cut_length;
            to->linings += lining * tube.cut_length;
        }
    }
};

} // namespace

std::string word(OrderedFor kind) {
    switch (kind) {
    case OrderedFor::dome:
        return "dome";
    case OrderedFor::tunnel:
        return "tunnel";
    case OrderedFor::buttress:
        return "buttress";
    }
    return {};
}

std::vector<TubeOrder> tube_order(const Design& design, const Schedule& schedule) {
    return OrderBook(design, schedule).lines();
}

} // namespace coilwright
