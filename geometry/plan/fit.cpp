#include "geometry/plan/fit.hpp"

#include "geometry/base/shown_step.hpp"
#include "geometry/plan/headroom.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace coilwright {

namespace {

Diagnostic wish_fault(const Dome& dome, const std::string& code, const std::string& message,
                      const std::string& allowed, const std::string& example) {
    Diagnostic fault;
    fault.code = code;
    fault.place = dome.fit.place;
    fault.subject = "dome." + dome.id + ".fit";
    fault.message = message;
    fault.allowed = allowed;
    fault.example = example;
    return fault;
}

/// One dome on its way through the fits.
struct Fitting {
    const Design& design;
    Dome dome;
    std::vector<Fitted> fitted;
    std::vector<Diagnostic> faults;

    std::string length(double metres) const { return length_text(metres, design.unit); }
    double step() const { return shown_step(design.unit); }
    /// A length written as a value of a key, not more than it is.
    std::string written(const char* key, double metres) const {
        return key + std::string(" = \"") + length(std::floor(metres / step() + 1e-6) * step()) +
               '"';
    }
    std::string area(double square_metres) const { return area_text(square_metres, design.unit); }
};

/// From the inside face of the base ring to the outside of all that stands on the ground with it: a
/// lower tube's width in place of the tube's, and a second wythe. It is the same at every diameter,
/// so a round dome serves whose springline, rise and diameter are known.
double base_wall(const Design& design, const Dome& dome) {
    Dome trial = dome;
    trial.inside_diameter = 10;
    trial.springline = 0;
    trial.profile = {};
    trial.profile.kind = ProfileKind::round;
    return base_outside(make_dome_form(design, trial)) - trial.inside_diameter / 2;
}

/// The greatest diameter, in whole 1/8 in or mm, whose floor or outside area stays within the wish.
void fit_diameter(Fitting& work) {
    Dome& dome = work.dome;
    const double step = work.step();
    const bool floor = dome.fit.floor_area.has_value();
    const double wish = floor ? *dome.fit.floor_area : *dome.fit.outside_area;
    const double beyond = floor ? -work.design.finish.inside_plaster
                                : base_wall(work.design, dome) + work.design.finish.outside_plaster;
    const double exact = 2 * (std::sqrt(wish / pi) - beyond);
    const double diameter = std::floor(exact / step + 1e-9) * step;
    if (diameter < 0.5) {
        work.faults.push_back(wish_fault(
            dome, "fit-no-diameter",
            "An area of " + work.area(wish) + " leaves no room inside the wall.",
            "an area that holds the wall and a room of at least " + work.length(0.5) + " across",
            floor ? "floor_area = \"50 sq ft\"" : "outside_area = \"120 sq ft\""));
        return;
    }
    const auto area_of = [&](double d) { return pi * std::pow(d / 2 + beyond, 2); };
    dome.inside_diameter = diameter;
    dome.fit_diameter = false;
    Fitted fitted;
    fitted.dome = dome.id;
    fitted.key = "inside_diameter";
    fitted.value = diameter;
    fitted.wish =
        work.area(wish) + (floor ? " of clear floor" : " by the outside of the base ring");
    fitted.reached = area_of(diameter);
    fitted.reached_one_less = area_of(diameter - step);
    fitted.text = "Inside diameter of '" + dome.id + "' fitted to " + work.length(diameter) +
                  " for at most " + fitted.wish + ": it has " + work.area(fitted.reached) +
                  (floor ? " after plaster" : ", plaster included") + "; " + work.length(step) +
                  " less would have " + work.area(fitted.reached_one_less) + ", " +
                  work.length(step) + " more too much.";
    work.fitted.push_back(fitted);
}

/// The least rise that a fit may end at: a pointed arch is never lower than a round one, and
/// flatter than a tenth of its half-span no curve can be laid.
double least_rise(const Dome& dome) {
    const double half_span = dome.inside_diameter / 2;
    return dome.profile.kind == ProfileKind::pointed ? half_span : 0.1 * half_span;
}

/// The rise that brings the apex to its wished height; false where no arch of this kind has it.
bool fit_rise(Fitting& work) {
    Dome& dome = work.dome;
    const double rise = *dome.fit.apex - dome.springline;
    const double least = least_rise(dome);
    if (rise < least - height_tie) {
        work.faults.push_back(wish_fault(
            dome, "fit-apex-too-low",
            "An apex at " + work.length(*dome.fit.apex) + " leaves a rise of " + work.length(rise) +
                " above the springline at " + work.length(dome.springline) + ".",
            "an apex at least " + work.length(least) + " above the springline",
            "apex = \"" + work.length(dome.springline + dome.inside_diameter) + "\""));
        return false;
    }
    dome.profile.rise = rise;
    dome.profile.fit_rise = false;
    Fitted fitted;
    fitted.dome = dome.id;
    fitted.key = "profile.rise";
    fitted.value = rise;
    fitted.wish = "an apex " + work.length(*dome.fit.apex) + " above the floor";
    fitted.reached = dome.springline + rise;
    fitted.reached_one_less = fitted.reached - work.design.course.height;
    fitted.text = "Rise of '" + dome.id + "' fitted to " + work.length(rise) + " for " +
                  fitted.wish + "; one course less would bring it to " +
                  work.length(fitted.reached_one_less) + ".";
    work.fitted.push_back(fitted);
    return true;
}

/// Clear height over the wished place with the springline at k courses, the rise following.
double clear_height_with(const Fitting& work, int k, double radius) {
    Dome trial = work.dome;
    trial.springline = k * work.design.course.height;
    if (trial.profile.fit_rise) {
        trial.profile.rise = *trial.fit.apex - trial.springline;
        if (*trial.profile.rise < least_rise(trial))
            return 0;
    }
    const DomeForm form = make_dome_form(work.design, trial);
    return form.last_ring == 0 ? 0
                               : clear_height_at(form, work.design.finish.inside_plaster, radius);
}

/// The wished place about the pole.
struct Place {
    bool square = false;
    double size = 0; // side of a square, diameter of a circle

    const char* word() const { return square ? "square" : "circle"; }
    const char* key() const { return square ? "clear_square" : "clear_circle"; }
    /// From the pole to its furthest point: a square's corner governs.
    double radius() const { return square ? size / std::sqrt(2.0) : size / 2; }
};

/// The springline, in courses, that is the first to give the wished height, and the greatest height
/// that any gives.
struct Search {
    std::optional<int> courses;
    double best = 0;
};
Search search_springline(const Fitting& work, double radius) {
    const double height = *work.dome.fit.clear_height;
    const double whole_stem = std::ceil(height / work.design.course.height) + 2;
    const int most = static_cast<int>(std::min<double>(whole_stem, most_courses));
    Search search;
    for (int k = 0; k <= most && !search.courses; ++k) {
        const double reached = clear_height_with(work, k, radius);
        search.best = std::max(search.best, reached);
        if (reached >= height - height_tie)
            search.courses = k;
    }
    return search;
}

/// A smaller place that the dome has the wished height over, or else the largest that the floor
/// holds.
std::string smaller_place(const Fitting& work, const Place& wished, double room) {
    Place largest = wished;
    for (const double share : {0.95, 0.75, 0.5, 0.25}) {
        Place place = wished;
        place.size =
            std::floor((wished.square ? std::sqrt(2.0) : 2.0) * room * share / 0.0254) * 0.0254;
        if (share == 0.95)
            largest = place;
        if (place.size < wished.size && search_springline(work, place.radius()).courses)
            return work.written(wished.key(), place.size);
    }
    return work.written(wished.key(), largest.size);
}

void fit_springline(Fitting& work) {
    Dome& dome = work.dome;
    const FitWish& wish = dome.fit;
    const bool square = wish.clear_square.has_value();
    const Place wished{square, square ? *wish.clear_square : wish.clear_circle.value_or(0.0)};
    const double radius = wished.radius();
    const double room = dome.inside_diameter / 2 - work.design.finish.inside_plaster;
    const std::string place = work.length(wished.size) + " " + wished.word();
    if (radius >= room) {
        work.faults.push_back(wish_fault(dome, "fit-too-wide",
                                         "A clear " + place + " does not fit on a floor " +
                                             work.length(2 * room) + " across after plaster.",
                                         std::string("a ") + wished.word() + " whose " +
                                             (square ? "corners lie" : "edge lies") + " within " +
                                             work.length(room) + " of the pole",
                                         smaller_place(work, wished, room)));
        return;
    }
    const double height = *wish.clear_height;
    const Search search = search_springline(work, radius);
    if (!search.courses) {
        constexpr double least_height = 0.3; // that a design may wish for
        // The greatest height that there is, else a higher apex, else a smaller place.
        const std::string example =
            search.best > least_height + work.step() ? work.written("clear_height", search.best)
            : dome.profile.fit_rise ? work.written("apex", height + dome.inside_diameter)
                                    : smaller_place(work, wished, radius);
        work.faults.push_back(
            wish_fault(dome, "fit-not-reached",
                       "No springline gives " + work.length(height) + " clear over a " + place +
                           "; the most is " + work.length(search.best) + ".",
                       "a clear height that the dome can have under its apex and cap", example));
        return;
    }
    const int k = *search.courses;
    dome.springline = k * work.design.course.height;
    dome.fit_springline = false;
    Fitted fitted;
    fitted.dome = dome.id;
    fitted.key = "springline";
    fitted.value = dome.springline;
    fitted.courses = k;
    fitted.wish = work.length(height) + " clear over a " + place + " about the pole";
    fitted.reached = clear_height_with(work, k, radius);
    fitted.reached_one_less = k > 0 ? clear_height_with(work, k - 1, radius) : 0;
    fitted.text = "Springline of '" + dome.id + "' fitted to " + work.length(dome.springline) +
                  " (" + std::to_string(k) + (k == 1 ? " course" : " courses") +
                  " above the floor) for " + fitted.wish + ": it has " +
                  work.length(fitted.reached) + " after plaster";
    fitted.text +=
        k > 0 ? "; one course less would give " + work.length(fitted.reached_one_less) + "."
              : " with no stem at all.";
    work.fitted.push_back(fitted);
}

void fit_dome(Fitting& work) {
    if (work.dome.fit_diameter)
        fit_diameter(work);
    if (work.dome.fit_springline && work.faults.empty())
        fit_springline(work);
    if (work.dome.profile.fit_rise && work.faults.empty())
        fit_rise(work);
    work.dome.sound = work.dome.sound && work.faults.empty();
}

} // namespace

Fit fit(const Design& design) {
    Fit result{design, {}, {}};
    for (Dome& dome : result.design.domes) {
        const TubeType* tube = find_tube(design, dome.tube);
        if (!dome.sound || !design.course.sound || !tube || !tube->sound)
            continue;
        Fitting work{design, dome, {}, {}};
        fit_dome(work);
        dome = work.dome;
        result.fitted.insert(result.fitted.end(), work.fitted.begin(), work.fitted.end());
        result.diagnostics.insert(result.diagnostics.end(), work.faults.begin(), work.faults.end());
    }
    return result;
}

} // namespace coilwright
