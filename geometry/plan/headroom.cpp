#include "geometry/plan/headroom.hpp"

#include "geometry/base/shown_step.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

double clear_height_at(const DomeForm& form, double inside_plaster, double from_pole) {
    const double d = std::abs(from_pole);
    if (d >= form.profile.half_span - inside_plaster)
        return 0;
    if (form.cap_courses == 0 && d <= form.last_ring_radius - inside_plaster)
        return form.ceiling(); // under the skylight, up to its frame
    const double face = form.springline + offset_height_at(form.profile, inside_plaster, d);
    const double lid = form.ceiling() - (form.cap_courses > 0 ? inside_plaster : 0);
    return std::max(0.0, std::min(face, lid));
}

double clear_radius_at(const DomeForm& form, double inside_plaster, double height) {
    const double lid = form.ceiling() - (form.cap_courses > 0 ? inside_plaster : 0);
    if (height > lid)
        return 0;
    const double face =
        height <= 0 ? std::max(0.0, form.profile.half_span - inside_plaster)
                    : offset_half_width(form.profile, inside_plaster, height - form.springline);
    if (form.cap_courses > 0)
        return face;
    return std::max(face, form.last_ring_radius - inside_plaster);
}

namespace {

/// Area that two discs share, their centres `apart`.
double shared_area(double r, double other, double apart) {
    if (r <= 0 || other <= 0 || apart >= r + other)
        return 0;
    if (apart <= std::abs(r - other))
        return pi * std::min(r, other) * std::min(r, other);
    // Each disc gives the segment beyond the common chord.
    const auto segment = [](double radius, double to_chord) {
        return radius * radius * std::acos(std::clamp(to_chord / radius, -1.0, 1.0)) -
               to_chord * std::sqrt(std::max(0.0, radius * radius - to_chord * to_chord));
    };
    const double to_chord = (apart * apart + r * r - other * other) / (2 * apart);
    return segment(r, to_chord) + segment(other, apart - to_chord);
}

/// How far from the pole the nearest wall in the room stands, at most `reach`.
double free_reach(double reach, const DomeForm& form, const std::vector<Disc>& walls) {
    for (const Disc& wall : walls)
        reach = std::min(reach, (wall.centre - form.at).norm() - wall.radius);
    return std::max(0.0, reach);
}

} // namespace

std::vector<Disc> walls_in_room(const BuildingForm& building, const DomeForm& form,
                                double inside_plaster) {
    std::vector<Disc> walls;
    for (const JoinForm& join : building.joins) {
        if (join.keep.empty() || join.keep == form.id ||
            (join.first != form.id && join.second != form.id))
            continue;
        if (const DomeForm* kept = find_dome(building, join.keep))
            walls.push_back({kept->at, outside_radius(*kept, 0) + inside_plaster});
    }
    return walls;
}

double floor_area_at(const DomeForm& form, double inside_plaster, double height,
                     const std::vector<Disc>& walls) {
    const double r = clear_radius_at(form, inside_plaster, height);
    double area = pi * r * r;
    for (const Disc& wall : walls)
        area -= shared_area(r, wall.radius, (wall.centre - form.at).norm());
    return std::max(0.0, area);
}

double clear_square_at(const DomeForm& form, double inside_plaster, double height,
                       const std::vector<Disc>& walls) {
    return std::sqrt(2.0) * free_reach(clear_radius_at(form, inside_plaster, height), form, walls);
}

namespace {

constexpr double most_across = 15; // m: no remedy is sought beyond

/// One number that a rule asks for, against what the dome has.
struct Demand {
    double have = 0, need = 0;
    FindingUnit unit = FindingUnit::metre;
    std::string text;
    bool met() const { return have >= need - (unit == FindingUnit::metre ? height_tie : 1e-9); }
    double ratio() const { return need > 0 ? have / need : 1; }
};

struct Words {
    DisplayUnit unit;
    std::string length(double metres) const { return length_text(metres, unit); }
    /// Not shown less than it is: for a length that someone is to build at least so high.
    std::string length_up(double metres) const {
        const double step = shown_step(unit);
        return length_text(std::ceil(metres / step - 1e-6) * step, unit);
    }
    std::string area(double square_metres) const { return area_text(square_metres, unit); }
};

/// Where a height is had, against where it is needed.
Demand area_demand(const DomeForm& form, const std::vector<Disc>& walls, double plaster,
                   double height, double area, Words words) {
    Demand demand{floor_area_at(form, plaster, height, walls), area, FindingUnit::square_metre, {}};
    demand.text = words.length(height) + " clear over " + words.area(demand.have) + " (" +
                  words.area(area) + " needed)";
    return demand;
}

std::vector<Demand> demands(const HeadroomRule& rule, const DomeForm& form,
                            const std::vector<Disc>& walls, double plaster, Words words) {
    std::vector<Demand> list;
    Demand pole{free_reach(1, form, walls) > 0 ? clear_height_at(form, plaster, 0) : 0.0,
                rule.clear_height,
                FindingUnit::metre,
                {}};
    pole.text = words.length(pole.have) + " clear beside the pole (" +
                words.length(rule.clear_height) + " needed)";
    list.push_back(pole);
    if (rule.clear_square) {
        Demand square{clear_square_at(form, plaster, rule.clear_height, walls),
                      *rule.clear_square,
                      FindingUnit::metre,
                      {}};
        square.text = words.length(rule.clear_height) + " clear over a square of " +
                      words.length(square.have) + " (" + words.length(*rule.clear_square) +
                      " needed)";
        list.push_back(square);
    }
    if (rule.required_area) {
        // Floor under the low height does not count towards the area that the rule asks for.
        list.push_back(area_demand(form, walls, plaster, rule.low_height.value_or(0.0),
                                   *rule.required_area, words));
        if (!rule.low_height)
            list.back().text = words.area(list.back().have) + " of clear floor (" +
                               words.area(*rule.required_area) + " needed)";
        list.push_back(area_demand(form, walls, plaster, rule.clear_height,
                                   rule.share * *rule.required_area, words));
    }
    if (rule.least_dimension) {
        const double low = rule.low_height.value_or(0.0);
        const double reach = clear_radius_at(form, plaster, low);
        Demand across{
            reach + free_reach(reach, form, walls), *rule.least_dimension, FindingUnit::metre, {}};
        across.text = words.length(across.have) + " across" +
                      (low > 0 ? " where it has " + words.length(low) : std::string()) + " (" +
                      words.length(*rule.least_dimension) + " needed)";
        list.push_back(across);
    }
    return list;
}

bool all_met(const std::vector<Demand>& list) {
    return std::all_of(list.begin(), list.end(), [](const Demand& demand) { return demand.met(); });
}

/// Solves for a dome that the rule would pass: the springline by whole courses, then the diameter.
class Remedy {
public:
    Remedy(const Design& design, const HeadroomRule& rule, const std::vector<Disc>& walls)
        : design_(design), rule_(rule), walls_(walls), words_{design.unit} {}

    std::string sentence(const Dome& dome) const {
        if (const int courses = courses_needed(dome); courses >= 0) {
            const double springline = dome.springline + courses * design_.course.height;
            return "Raise the springline by " + std::to_string(courses) +
                   (courses == 1 ? " course to " : " courses to ") + words_.length_up(springline) +
                   ".";
        }
        const Dome wider = widened(dome);
        const int courses = courses_needed(wider);
        if (courses < 0)
            return farther_apart(dome);
        return "Widen the dome to an inside diameter of " + words_.length(wider.inside_diameter) +
               ", its profile in proportion, with the springline at " +
               words_.length_up(wider.springline + courses * design_.course.height) + ".";
    }

private:
    /// One joined wall moved away, in whole inches or centimetres, while the two still meet.
    std::string farther_apart(const Dome& dome) const {
        if (walls_.size() != 1)
            return {};
        const DomeForm form = make_dome_form(design_, dome);
        const double step = design_.unit == DisplayUnit::feet ? metres_per_inch : 0.01;
        const Vec2 off = walls_[0].centre - form.at;
        const double meet = form.profile.half_span + walls_[0].radius - off.norm();
        for (int steps = 1; steps * step < meet; ++steps) {
            const Disc moved{form.at + off * (1 + steps * step / off.norm()), walls_[0].radius};
            if (all_met(demands(rule_, form, {moved}, design_.finish.inside_plaster, words_)))
                return "Set the two domes " + words_.length(steps * step) + " farther apart.";
        }
        return {};
    }

    bool passes(Dome dome, int courses_more) const {
        dome.springline += courses_more * design_.course.height;
        const DomeForm form = make_dome_form(design_, dome);
        return form.last_ring > 0 &&
               all_met(demands(rule_, form, walls_, design_.finish.inside_plaster, words_));
    }

    /// Fewest whole courses more that pass; -1 if not even walls plumb to the full height do.
    int courses_needed(const Dome& dome) const {
        const double t = design_.course.height;
        const double most = std::ceil(std::max(0.0, rule_.clear_height - dome.springline) / t) + 1;
        if (!(most <= most_courses) || !passes(dome, static_cast<int>(most)))
            return -1;
        int fails = -1, works = static_cast<int>(most);
        while (works - fails > 1) {
            const int middle = fails + (works - fails) / 2;
            (passes(dome, middle) ? works : fails) = middle;
        }
        return works;
    }

    /// The dome with the diameter, in whole inches or centimetres, that the floor needs by itself.
    Dome widened(Dome dome) const {
        double across = rule_.least_dimension.value_or(0.0);
        if (rule_.clear_square)
            across = std::max(across, std::sqrt(2.0) * *rule_.clear_square);
        if (rule_.required_area)
            across = std::max(across, 2 * std::sqrt(*rule_.required_area / pi));
        const double step = design_.unit == DisplayUnit::feet ? metres_per_inch : 0.01;
        // What a wall in the room takes is made good by width as well.
        const auto short_of_floor = [&] {
            double area = pi * across * across / 4;
            for (const Disc& wall : walls_)
                area -= shared_area(across / 2, wall.radius, (wall.centre - dome.at).norm());
            return rule_.required_area && area < *rule_.required_area;
        };
        while (short_of_floor() && across < most_across)
            across *= 1.01;
        const double least = across + 2 * design_.finish.inside_plaster;
        const double diameter = std::max(dome.inside_diameter, std::ceil(least / step) * step);
        const double scale = diameter / dome.inside_diameter;
        const double rise = make_profile(dome.profile, dome.inside_diameter / 2).rise;
        dome.inside_diameter = diameter;
        dome.profile.arc_radius.reset();
        dome.profile.rise_to_span.reset();
        dome.profile.rise = rise * scale;
        for (auto& [height, half_width] : dome.profile.points) {
            height *= scale;
            half_width *= scale;
        }
        return dome;
    }

    const Design& design_;
    const HeadroomRule& rule_;
    const std::vector<Disc>& walls_;
    Words words_;
};

std::string joined(const std::vector<Demand>& list, bool only_failing) {
    std::string text;
    for (const Demand& demand : list)
        if (!only_failing || !demand.met())
            text += (text.empty() ? "" : "; ") + demand.text;
    return text;
}

const Demand& governing(const std::vector<Demand>& list) {
    return *std::min_element(list.begin(), list.end(), [](const Demand& a, const Demand& b) {
        return a.ratio() < b.ratio();
    });
}

void judge(Finding& finding, const HeadroomRule& rule, const Design& design, const DomeForm& form,
           const std::vector<Disc>& walls) {
    const Words words{design.unit};
    const double plaster = design.finish.inside_plaster;
    const std::vector<Demand> list = demands(rule, form, walls, plaster, words);
    const Demand& tightest = governing(list);
    finding.value = tightest.have;
    finding.limit = tightest.need;
    finding.unit = tightest.unit;
    finding.source = rule.source + (rule.section.empty() ? "" : ", " + rule.section);
    const std::string use = "as \"" + word(form.use) + "\"";
    const std::string beside = walls.empty() ? "" : ", less the joined wall that stands in it";
    const Dome* dome = find_dome(design, form.id);
    const Remedy remedy(design, rule, walls);
    if (!all_met(list)) {
        finding.verdict = Verdict::fails;
        finding.message =
            "Headroom " + use + " falls short" + beside + ": " + joined(list, true) + ".";
        if (dome)
            finding.remedy = remedy.sentence(*dome);
        return;
    }
    finding.verdict = Verdict::holds;
    finding.message = "Headroom " + use + " meets the rule" + beside + ": " + joined(list, false);
    if (!rule.clear_square && !rule.required_area) {
        const double r = clear_radius_at(form, plaster, rule.clear_height);
        finding.message += "; " + words.length(rule.clear_height) + " is had within " +
                           words.length(r) + " of the pole, where " +
                           "whoever stands or uses a fixture must be";
        const Limit* square = find_limit(design.limits, "standing.square");
        HeadroomRule standing = rule;
        standing.clear_square = square ? square->value : 0;
        if (square &&
            clear_square_at(form, plaster, rule.clear_height, walls) < square->value - height_tie) {
            finding.verdict = Verdict::advice;
            finding.message += ": less than the " + words.length(square->value) +
                               " square that one person needs (" + source_text(*square) + ")";
            if (dome)
                finding.remedy = Remedy(design, standing, walls).sentence(*dome);
        }
    }
    HeadroomRule higher = rule;
    const Limit* tolerance = find_limit(design.limits, "standing.tolerance");
    higher.clear_height += tolerance ? tolerance->value : 0;
    if (higher.low_height && tolerance)
        *higher.low_height += tolerance->value;
    if (tolerance && finding.verdict == Verdict::holds &&
        !all_met(demands(higher, form, walls, plaster, words)))
        finding.message += "; by less than the " + words.length(tolerance->value) +
                           " that the finished face may come out lower on site";
    finding.message += ".";
}

Finding verdict_for(const Design& design, const DomeForm& form, const std::vector<Disc>& walls) {
    Finding finding;
    finding.code = "headroom";
    finding.subject = "dome." + form.id;
    if (const Dome* dome = find_dome(design, form.id))
        finding.place = dome->place;
    const auto rule = design.rules.find(word(form.use));
    if (rule != design.rules.end()) // a design may set a rule of its own for a store
        judge(finding, rule->second, design, form, walls);
    else if (form.use == Use::store)
        finding.message = "A store has no headroom rule; if people will live or wash in it, name "
                          "that use and it is judged.";
    else
        finding.message = "No headroom rule is set for the use \"" + word(form.use) + "\".";
    if (rule == design.rules.end())
        finding.source = "no source: no rule of clear heights for this use, nor in [rules." +
                         word(form.use) + "]";
    return finding;
}

} // namespace

std::vector<Headroom> headroom(const Design& design, const Schedule& schedule) {
    const double plaster = design.finish.inside_plaster;
    std::vector<Headroom> rooms;
    for (const DomeForm& form : schedule.building.domes) {
        Headroom room;
        room.dome = form.id;
        const std::vector<Disc> walls = walls_in_room(schedule.building, form, plaster);
        room.at_pole = clear_height_at(form, plaster, 0);
        room.floor_area = floor_area_at(form, plaster, 0, walls);
        for (const double height : shown_heights)
            room.rows.push_back({height, clear_radius_at(form, plaster, height),
                                 floor_area_at(form, plaster, height, walls),
                                 clear_square_at(form, plaster, height, walls)});
        room.verdict = verdict_for(design, form, walls);
        rooms.push_back(std::move(room));
    }
    return rooms;
}

} // namespace coilwright
