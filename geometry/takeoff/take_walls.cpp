#include "geometry/takeoff/ledger.hpp"

#include "geometry/plan/section.hpp"
#include "geometry/plan/wire.hpp"

#include <algorithm>
#include <map>

namespace coilwright {

bool is_base_course(const Design& design, const Course& course) {
    return course.top < design.ground.level + 0.15 - height_tie;
}

const Fill* fill_of(const Design& design, int course) {
    const Fill* rest = nullptr;
    for (const Fill& fill : design.fills) {
        if (!fill.courses)
            rest = &fill;
        else if (course >= fill.courses->first && course <= fill.courses->second)
            return &fill;
    }
    return rest;
}

namespace {

using Key = std::pair<Phase, std::string>; // phase, element

class Walls {
public:
    explicit Walls(const Ledger& ledger) : ledger_(ledger) {}

    void take() {
        for (const Course& course : ledger_.schedule().courses)
            take_course(course);
        write_lines();
        write_rolls();
    }

private:
    struct Sum {
        std::map<std::string, double> net, cut, lining, bags; // by tube type
        double wire = 0, wire_strands = 0;
        SoilVolumes soil, gravel;
        double dry_mass = 0, cement = 0, lime = 0, water = 0;
    };

    const Design& design() const { return ledger_.plan.design; }

    /// The take of one element in a course, begun where it has none yet.
    CourseTake& entry(std::vector<CourseTake>& takes, const Course& course,
                      const std::string& element) const {
        for (CourseTake& one : takes)
            if (one.element == element)
                return one;
        CourseTake take;
        take.course = course.number;
        take.element = element;
        take.phase = is_base_course(design(), course) ? Phase::base : Phase::walls;
        if (const Fill* fill = fill_of(design(), course.number)) {
            take.fill = fill->id;
            take.kind = fill->kind;
            take.stabiliser = fill->stabiliser;
        }
        return takes.emplace_back(take);
    }

    /// Gravel comes loose and only settles.
    SoilVolumes volumes_of(FillKind kind, double tamped) const {
        SoilVolumes volumes = soil_volumes(tamped, ledger_.works.soil);
        if (kind == FillKind::gravel)
            volumes.loose = volumes.bank;
        return volumes;
    }

    void add_tube(const CourseTake& take, const std::string& name, double cut, double tamped) {
        const double loose = volumes_of(take.kind, tamped).loose;
        ledger_.take.tubes.push_back({take.course, take.element, name, cut, tamped,
                                      loose / ledger_.works.packs.bucket,
                                      loose / ledger_.works.packs.barrow});
    }
    /// "F1L (eye)": unique in its ring.
    static std::string piece_name(const Piece& piece) { return piece.id + " (" + piece.of + ")"; }

    void take_tubes(CourseTake& take, const std::string& type, const std::vector<LaidTube>& tubes,
                    double tamped, double length) {
        Sum& sum = sums_[{take.phase, take.element}];
        for (const LaidTube& tube : tubes) {
            add_tube(take, tube.id, tube.cut_length,
                     length > 0 ? tamped * tube.length / length : 0);
            take.tube_net += tube.length;
            take.tube_cut += tube.cut_length;
            sum.net[type] += tube.length;
            sum.cut[type] += tube.cut_length;
            RollTake& rolls = rolls_[type];
            const int layers = take.kind == FillKind::gravel ? 2 : 1;
            for (int layer = 0; layer < layers; ++layer) {
                rolls.pieces.push_back("course " + std::to_string(take.course) + " " +
                                       take.element + " " + tube.id + (layer > 0 ? " lining" : ""));
                rolls.lengths.push_back(tube.cut_length);
                rolls.net += tube.length;
                rolls.cut += tube.cut_length;
            }
            if (layers > 1) {
                sum.lining[type] += tube.cut_length;
                take.lining += tube.cut_length;
            }
        }
        take.soil.tamped += tamped;
    }

    /// The short bags beside a ring's runs, those of fans too: in no sum of the schedule, but laid
    /// and filled with the course.
    void take_pieces(CourseTake& take, const Ring& ring) {
        Sum& sum = sums_[{take.phase, take.element}];
        for (const Piece& piece : ring.pieces) {
            take.soil.tamped += piece.fill_volume;
            take.tube_net += piece.length;
            take.tube_cut += piece.cut_length;
            add_tube(take, piece_name(piece), piece.cut_length, piece.fill_volume);
            sum.bags[ring.tube] += piece.cut_length;
            const int layers = take.kind == FillKind::gravel ? 2 : 1;
            for (int layer = 0; layer < layers; ++layer) {
                RollTake& rolls = rolls_[ring.tube];
                rolls.pieces.push_back("course " + std::to_string(take.course) + " " +
                                       take.element + " " + piece_name(piece) +
                                       (layer > 0 ? " lining" : ""));
                rolls.lengths.push_back(piece.cut_length);
                rolls.net += piece.length;
                rolls.cut += piece.cut_length;
            }
            if (layers > 1) {
                sum.lining[ring.tube] += piece.cut_length;
                take.lining += piece.cut_length;
            }
        }
    }

    void take_course(const Course& course) {
        std::vector<CourseTake> takes;
        for (const Ring& ring : course.rings) {
            CourseTake& take = entry(takes, course, ring.dome);
            std::vector<LaidTube> tubes;
            double length = 0;
            for (const Run& run : ring.runs)
                for (const LaidTube& tube : run.tubes) {
                    tubes.push_back(tube);
                    length += tube.length;
                }
            take_tubes(take, ring.tube, tubes, ring.fill_volume, length);
            take.wire += ring.wire_length;
            take_pieces(take, ring);
        }
        for (const Straight& straight : course.straights) {
            CourseTake& take = entry(takes, course, straight.of);
            double length = 0;
            for (const LaidTube& tube : straight.tubes)
                length += tube.length;
            take_tubes(take, straight.tube, straight.tubes,
                       stadium_area(straight.width, ledger_.schedule().course_height) *
                           straight.length,
                       length);
            take.wire += straight.wire_length;
        }
        for (CourseTake& take : takes) {
            add_fill(take, fill_of(design(), take.course));
            ledger_.take.courses.push_back(take);
        }
    }

    /// Bank and loose volume, stabiliser and water of what is tamped.
    void add_fill(CourseTake& take, const Fill* fill) {
        const SoilData& soil = ledger_.works.soil;
        Sum& sum = sums_[{take.phase, take.element}];
        take.soil = volumes_of(take.kind, take.soil.tamped);
        take.buckets = take.soil.loose / ledger_.works.packs.bucket;
        take.barrows = take.soil.loose / ledger_.works.packs.barrow;
        sum.wire += take.wire;
        SoilVolumes& to = take.kind == FillKind::gravel ? sum.gravel : sum.soil;
        to.tamped += take.soil.tamped;
        to.bank += take.soil.bank;
        to.loose += take.soil.loose;
        if (take.kind == FillKind::gravel)
            return;
        const double density = fill && fill->dry_density ? *fill->dry_density : soil.dry_density;
        const double dry = take.soil.tamped * density;
        if (fill && fill->stabiliser != Stabiliser::none) {
            const bool cement = fill->stabiliser == Stabiliser::cement;
            const double loose_density =
                find_material(ledger_.works, cement ? "cement" : "lime")->density;
            take.stabiliser_mass =
                fill->by == StabiliserBy::dry_mass
                    ? stabiliser_by_dry_mass(take.soil.tamped, density, fill->ratio)
                    : stabiliser_by_volume(take.soil.loose, fill->ratio, loose_density);
            (cement ? sum.cement : sum.lime) += take.stabiliser_mass;
        }
        take.water = soil.moisture * (dry + take.stabiliser_mass); // 1 kg is 1 l
        sum.dry_mass += dry;
        sum.water += take.water;
    }

    void write_lines() const {
        const SoilData& soil = ledger_.works.soil;
        for (const auto& [key, sum] : sums_) {
            const auto& [phase, element] = key;
            const auto line = [&, &phase = phase, &element = element](
                                  const std::string& item, const std::string& what, double amount,
                                  const std::string& how, std::vector<Figure> figures) {
                ledger_.add({item, element, phase, what, amount, how, std::move(figures)});
            };
            for (const auto& [tube, cut] : sum.cut)
                line("tube-" + tube, "Cut lengths of tube '" + tube + "'", cut,
                     "The cut lengths of the schedule: the thread that decides, and an allowance "
                     "at both ends.",
                     {{"along the centreline", sum.net.at(tube), "m"}});
            for (const auto& [tube, bags] : sum.bags)
                line("tube-" + tube, "Short bags of tube '" + tube + "'", bags,
                     "Bags of fans, backs of niches and wedges beside the rings, with an allowance "
                     "at "
                     "both ends.",
                     {});
            for (const auto& [tube, lining] : sum.lining)
                line("tube-" + tube, "Second tube of gravel courses", lining,
                     "Gravel is laid in two tubes, one in the other: the cut lengths once more.",
                     {});
            line("wire", "Barbed wire", sum.wire,
                 "Wire on top of each course, all strands, with the lap of closed rings and a tail "
                 "at each cut.",
                 {{"lap", design().wire.lap, "m"}});
            line("soil", "Fill, loose", sum.soil.loose,
                 "Tamped volume of the tubes, over 1 less the shrinkage, times 1 and the swell.",
                 {{"tamped", sum.soil.tamped, "m3"},
                  {"bank", sum.soil.bank, "m3"},
                  {"shrinkage", soil.shrink, ""},
                  {"swell", soil.swell, ""}});
            line("gravel", "Gravel fill", sum.gravel.loose,
                 "Volume of the tubes over 1 less what it settles.",
                 {{"placed", sum.gravel.tamped, "m3"}, {"settling", soil.shrink, ""}});
            for (const auto& [name, mass] :
                 {std::pair("cement", sum.cement), std::pair("lime", sum.lime)})
                line(name, "Stabiliser of the fill", mass,
                     "Share of the dry soil's mass, or of the loose soil's volume, as each fill "
                     "says, course by course.",
                     {{"dry soil", sum.dry_mass, "kg"}, {"loose soil", sum.soil.loose, "m3"}});
            line("water", "Water of the fill", sum.water,
                 "Share of the dry mass of soil and stabiliser; less where the soil is damp "
                 "already.",
                 {{"share", soil.moisture, ""}, {"dry soil", sum.dry_mass, "kg"}});
        }
    }

    void write_rolls() {
        for (const TubeType& type : design().tubes) {
            const auto found = rolls_.find(type.id);
            if (found == rolls_.end())
                continue;
            RollTake take = std::move(found->second);
            take.tube = type.id;
            take.roll = type.roll;
            take.plan = pack_rolls(take.lengths, type.roll);
            if (!take.plan.too_long.empty())
                report_too_long(type, take);
            ledger_.take.rolls.push_back(std::move(take));
        }
    }

    void report_too_long(const TubeType& type, const RollTake& take) const {
        std::size_t longest = take.plan.too_long.front();
        for (const std::size_t piece : take.plan.too_long)
            if (take.lengths[piece] > take.lengths[longest])
                longest = piece;
        const auto length = [&](double metres) { return length_text(metres, design().unit); };
        // The outer thread is longer than the centreline by as much as it is here.
        double share = 1;
        const double ends = 2 * design().course.end_allowance;
        for (const Course& course : ledger_.schedule().courses)
            for (const Ring& ring : course.rings)
                for (const Run& run : ring.runs)
                    for (const LaidTube& tube : run.tubes)
                        if (tube.length > 0 && tube.cut_length > type.roll)
                            share = std::max(share, (tube.cut_length - ends) / tube.length);
        const double works = std::max(0.5, (type.roll - ends) / share * 0.98);
        ledger_.take.diagnostics.push_back(
            {"cut-longer-than-roll", type.place, "tube." + type.id + ".roll",
             "Tube '" + type.id + "' comes in rolls of " + length(type.roll) + ", and " +
                 take.pieces[longest] + " is to be cut " + length(take.lengths[longest]) + " long.",
             "no cut longer than the roll: shorter tubes, or longer rolls",
             type.roll > ends + 0.5 ? "longest_tube = \"" + length(works) + "\""
                                    : "roll = \"" + length(take.lengths[longest] * 1.02) + "\"",
             ""});
    }

    const Ledger& ledger_;
    std::map<Key, Sum> sums_;
    std::map<std::string, RollTake> rolls_;
};

} // namespace

void take_walls(const Ledger& ledger) {
    Walls(ledger).take();
}

} // namespace coilwright
