#include "geometry/plan/fit.hpp"

#include "geometry/plan/headroom.hpp"
#include "geometry/plan/section.hpp"

#include <algorithm>
#include <cmath>

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
    std::string area(double square_metres) const { return area_text(square_metres, design.unit); }
};

/// The greatest diameter, in whole 1/8 in or mm, whose floor or outside area stays within the wish.
void fit_diameter(Fitting& work) {
    Dome& dome = work.dome;
    const double step = work.design.unit == DisplayUnit::feet ? metres_per_inch / 8 : 0.001;
    const bool floor = dome.fit.floor_area.has_value();
    const double wish = floor ? *dome.fit.floor_area : *dome.fit.outside_area;
    const TubeType* tube = find_tube(work.design, dome.tube);
    const double beyond =
        floor ? -work.design.finish.inside_plaster
              : tamped_width(*tube, work.design.course.height) + work.design.finish.outside_plaster;
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
                  (floor ? " after plaster." : ", plaster included.");
    work.fitted.push_back(fitted);
}

/// The rise that brings the apex to its wished height; false where no arch of this kind has it.
bool fit_rise(Fitting& work) {
    Dome& dome = work.dome;
    const double rise = *dome.fit.apex - dome.springline;
    const double half_span = dome.inside_diameter / 2;
    const bool pointed = dome.profile.kind == ProfileKind::pointed;
    const double least = pointed ? half_span : 0.1 * half_span;
    if (rise < least - height_tie) {
        work.faults.push_back(wish_fault(
            dome, "fit-apex-too-low",
            "An apex at " + work.length(*dome.fit.apex) + " leaves a rise of " + work.length(rise) +
                " above the springline at " + work.length(dome.springline) + ".",
            "an apex at least " + work.length(least) + " above the springline",
            "apex = \"" + work.length(dome.springline + 2 * half_span) + "\""));
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
        const bool pointed = trial.profile.kind == ProfileKind::pointed;
        if (*trial.profile.rise < (pointed ? trial.inside_diameter / 2 : 0.01))
            return 0;
    }
    const DomeForm form = make_dome_form(work.design, trial);
    return form.last_ring == 0 ? 0
                               : clear_height_at(form, work.design.finish.inside_plaster, radius);
}

void fit_springline(Fitting& work) {
    Dome& dome = work.dome;
    const FitWish& wish = dome.fit;
    const bool square = wish.clear_square.has_value();
    const double size = square ? *wish.clear_square : wish.clear_circle.value_or(0.0);
    const double radius = square ? size / std::sqrt(2.0) : size / 2; // a square's corner governs
    const double room = dome.inside_diameter / 2 - work.design.finish.inside_plaster;
    const std::string place = work.length(size) + (square ? " square" : " circle");
    if (radius >= room) {
        const double most =
            std::floor((square ? std::sqrt(2.0) : 2.0) * room * 0.95 / 0.0254) * 0.0254;
        work.faults.push_back(wish_fault(dome, "fit-too-wide",
                                         "A clear " + place + " does not fit on a floor " +
                                             work.length(2 * room) + " across after plaster.",
                                         std::string("a ") + (square ? "square" : "circle") +
                                             " whose " + (square ? "corners lie" : "edge lies") +
                                             " within " + work.length(room) + " of the pole",
                                         std::string(square ? "clear_square" : "clear_circle") +
                                             " = \"" + work.length(most) + "\""));
        return;
    }
    const double height = *wish.clear_height;
    const double whole_stem = std::ceil(height / work.design.course.height) + 2;
    const int most = static_cast<int>(std::min<double>(whole_stem, most_courses));
    int k = 0;
    while (k <= most && clear_height_with(work, k, radius) < height - height_tie)
        ++k;
    if (k > most) {
        work.faults.push_back(wish_fault(
            dome, "fit-not-reached",
            "No springline gives " + work.length(height) + " clear over a " + place + ".",
            "a clear height that the dome can have under its apex and cap",
            "clear_height = \"6 ft 8 in\""));
        return;
    }
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
