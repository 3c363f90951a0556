#include "exporters/schedule_xlsx.hpp"

#include "exporters/listing_sheet.hpp"
#include "geometry/base/quantity.hpp"
#include "geometry/drawing/words.hpp"
#include "geometry/plan/section.hpp"

namespace coilwright {
namespace {

/// Numbers in the design's unit.
class Shown {
public:
    explicit Shown(DisplayUnit unit) : feet_(unit == DisplayUnit::feet) {}

    std::string setting_unit() const { return feet_ ? "in" : "mm"; }
    std::string length_unit() const { return feet_ ? "ft" : "m"; }
    std::string volume_unit() const { return feet_ ? "cu ft" : "m³"; }
    /// To an eighth of an inch as the crew sets it, or a millimetre; the cell holds it in full.
    SheetCell setting(double metres) const {
        return feet_ ? SheetCell{metres / metres_per_inch, "# ?/8"} : SheetCell{metres * 1000, "0"};
    }
    double length(double metres) const { return feet_ ? metres / metres_per_foot : metres; }
    double volume(double cubic_metres) const {
        return feet_ ? cubic_metres / (metres_per_foot * square_metres_per_square_foot)
                     : cubic_metres;
    }

private:
    bool feet_;
};

SheetCell whole(std::size_t value) {
    return {static_cast<double>(value), "0"};
}

std::string kind_of(const Ring& ring) {
    return ring.kind == RingKind::cap ? "cap" : ring.curb ? "curb" : "ring";
}

const std::string lengths = "0.00", volumes = "0.000", bearings = "0.00";

class Listing {
public:
    explicit Listing(const Schedule& schedule) : schedule_(schedule), shown_(schedule.unit) {}

    WorkSheet courses() {
        const std::string setting = ", " + shown_.setting_unit(),
                          length = ", " + shown_.length_unit();
        WorkSheet sheet = listing_sheet("Courses", schedule_.name + ": courses",
                                        {{"course", 8},
                                         {"element", 14},
                                         {"kind", 9},
                                         {"bottom" + setting, 10},
                                         {"top" + setting, 10},
                                         {"compass" + setting, 10},
                                         {"outside" + setting, 10},
                                         {"chain" + setting, 10},
                                         {"step-in" + setting, 10},
                                         {"tubes", 7},
                                         {"tube laid" + length, 11},
                                         {"tube to cut" + length, 11},
                                         {"wire" + length, 10},
                                         {"fill, " + shown_.volume_unit(), 10}});
        double sums[4] = {};
        for (const Course& course : schedule_.courses) {
            for (const Ring& ring : course.rings) {
                double laid = 0, cut = 0;
                std::size_t tubes = 0;
                for (const Run& run : ring.runs)
                    for (const LaidTube& tube : run.tubes) {
                        laid += tube.length;
                        cut += tube.cut_length;
                        ++tubes;
                    }
                std::vector<SheetCell> cells = head_of(course, ring.dome, kind_of(ring));
                if (ring.kind == RingKind::ring)
                    for (const double radius :
                         {ring.inside_radius, ring.outside_radius, ring.chain, ring.step_in})
                        cells.push_back(shown_.setting(radius));
                else
                    cells.insert(cells.end(), {SheetCell{}, shown_.setting(ring.outside_radius),
                                               SheetCell{}, SheetCell{}});
                add_amounts(cells, tubes, {laid, cut, ring.wire_length, ring.fill_volume}, sums);
                sheet.rows.push_back(std::move(cells));
            }
            for (const Straight& straight : course.straights) {
                double laid = 0, cut = 0;
                for (const LaidTube& tube : straight.tubes) {
                    laid += tube.length;
                    cut += tube.cut_length;
                }
                std::vector<SheetCell> cells = head_of(course, straight.of, word(straight.part));
                cells.resize(cells.size() + 4);
                const double fill =
                    stadium_area(straight.width, schedule_.course_height) * straight.length;
                add_amounts(cells, straight.tubes.size(), {laid, cut, straight.wire_length, fill},
                            sums);
                sheet.rows.push_back(std::move(cells));
            }
        }
        const std::size_t entries = sheet.rows.size() - first_entry;
        std::vector<SheetCell> all(10);
        all[0] = text_cell("all", CellLook::strong);
        for (std::size_t i = 0; i < std::size(sums); ++i)
            all.push_back(entries_sum(10 + i, entries, sums[i], i < 3 ? lengths : volumes));
        sheet.rows.push_back(std::move(all));
        sheet.rows.push_back({text_cell("CAUTION. " + words::caution(), CellLook::note)});
        return sheet;
    }

    WorkSheet tubes() {
        const std::string length = ", " + shown_.length_unit();
        WorkSheet sheet = listing_sheet("Tubes", "Every tube",
                                        {{"course", 8},
                                         {"element", 14},
                                         {"kind", 9},
                                         {"run", 8},
                                         {"tube", 8},
                                         {"type", 10},
                                         {"from bearing, °", 10},
                                         {"to bearing, °", 10},
                                         {"laid" + length, 10},
                                         {"outer face" + length, 10},
                                         {"to cut" + length, 10}});
        double sums[3] = {};
        const auto add = [&](std::vector<SheetCell> cells, const LaidTube& tube) {
            const double values[] = {tube.length, tube.outer_length, tube.cut_length};
            for (std::size_t i = 0; i < std::size(values); ++i) {
                cells.push_back({shown_.length(values[i]), lengths});
                sums[i] += shown_.length(values[i]);
            }
            sheet.rows.push_back(std::move(cells));
        };
        for (const Course& course : schedule_.courses) {
            const SheetCell number = whole(static_cast<std::size_t>(course.number));
            for (const Ring& ring : course.rings)
                for (const Run& run : ring.runs)
                    for (const LaidTube& tube : run.tubes) {
                        const bool turned = ring.kind == RingKind::ring;
                        const auto bearing = [&](double degrees) {
                            return turned ? SheetCell{degrees, bearings} : SheetCell{};
                        };
                        add({number, text_cell(ring.dome), text_cell(kind_of(ring)),
                             text_cell(run.id), text_cell(tube.id), text_cell(ring.tube),
                             bearing(tube.start_bearing), bearing(tube.end_bearing)},
                            tube);
                    }
            for (const Straight& straight : course.straights)
                for (const LaidTube& tube : straight.tubes)
                    add({number, text_cell(straight.of), text_cell(word(straight.part)),
                         SheetCell{}, text_cell(tube.id), text_cell(straight.tube), SheetCell{},
                         SheetCell{}},
                        tube);
        }
        const std::size_t entries = sheet.rows.size() - first_entry;
        std::vector<SheetCell> all(8);
        all[0] = text_cell("all", CellLook::strong);
        for (std::size_t i = 0; i < std::size(sums); ++i)
            all.push_back(entries_sum(8 + i, entries, sums[i], lengths));
        sheet.rows.push_back(std::move(all));
        return sheet;
    }

    WorkSheet cuts() {
        WorkSheet sheet =
            listing_sheet("Cuts", "Cuts on the inside face; arc and chord from the datum mark",
                          {{"course", 8},
                           {"dome", 14},
                           {"cut", 6},
                           {"by", 14},
                           {"side", 8},
                           {"bearing, °", 10},
                           {"arc, " + shown_.setting_unit(), 10},
                           {"way round", 10},
                           {"chord, " + shown_.setting_unit(), 10}});
        const auto side = [](Side one) { return text_cell(one == Side::left ? "left" : "right"); };
        for (const Course& course : schedule_.courses)
            for (const Ring& ring : course.rings)
                for (const Cut& cut : ring.cuts)
                    sheet.rows.push_back({whole(static_cast<std::size_t>(course.number)),
                                          text_cell(ring.dome),
                                          text_cell(cut.letter),
                                          text_cell(cut.by),
                                          side(cut.side),
                                          {cut.inside_bearing, bearings},
                                          shown_.setting(cut.short_arc),
                                          side(cut.short_way),
                                          shown_.setting(cut.chord)});
        return sheet;
    }

private:
    std::vector<SheetCell> head_of(const Course& course, const std::string& element,
                                   const std::string& kind) const {
        return {whole(static_cast<std::size_t>(course.number)), text_cell(element), text_cell(kind),
                shown_.setting(course.bottom), shown_.setting(course.top)};
    }

    /// Laid, to cut, wire, fill.
    void add_amounts(std::vector<SheetCell>& cells, std::size_t tubes,
                     const std::vector<double>& values, double (&sums)[4]) const {
        cells.push_back(whole(tubes));
        for (std::size_t i = 0; i < 4; ++i) {
            const double value = i < 3 ? shown_.length(values[i]) : shown_.volume(values[i]);
            cells.push_back({value, i < 3 ? lengths : volumes});
            sums[i] += value;
        }
    }

    const Schedule& schedule_;
    Shown shown_;
};

} // namespace

std::string schedule_xlsx(const BuildingPlan& plan) {
    Listing listing(plan.schedule);
    return xlsx_bytes(plan.schedule.name, {listing.courses(), listing.tubes(), listing.cuts()});
}

} // namespace coilwright
