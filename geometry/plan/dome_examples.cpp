#include "geometry/plan/dome_examples.hpp"

#include "geometry/base/shown_step.hpp"
#include "geometry/plan/section.hpp"
#include "geometry/plan/wall_form.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace coilwright {

namespace {

constexpr double widest_dome = 30; // metres that a design may ask for
constexpr double highest_course = 0.4;

/// Other measures of one dome, as they would be written.
class DomeTrial {
public:
    DomeTrial(const Design& design, const Dome& dome)
        : design_(design), dome_(dome), step_(shown_step(design.unit)) {}

    Design design() const { return design_; }
    Dome dome() const { return dome_; }
    double shown(double metres) const { return std::ceil(metres / step_ - 1e-6) * step_; }
    std::string written(const char* key, double metres) const {
        return key + std::string(" = \"") + length_text(metres, design_.unit) + '"';
    }
    /// Whether the curve's height is written as a rise, which another can replace.
    bool has_rise() const { return dome_.profile.rise.has_value(); }
    double least_rise(double diameter) const {
        return dome_.profile.kind == ProfileKind::pointed ? diameter / 2 : diameter / 20;
    }

    bool can_be_laid(const Design& design, const Dome& dome) const {
        const TubeType* tube = find_tube(design, dome.tube);
        if (!tube || tamped_width(*tube, design.course.height) <= 1.1 * design.course.height)
            return false;
        if (dome.profile.rise && *dome.profile.rise < least_rise(dome.inside_diameter) - height_tie)
            return false;
        const DomeForm form = make_dome_form(design, dome);
        return form.last_ring > 0 && form.courses() < most_courses &&
               form.course_middle(form.last_ring) >= 0;
    }
    bool can_be_laid(const Dome& dome) const { return can_be_laid(design_, dome); }

private:
    const Design& design_;
    const Dome& dome_;
    double step_;
};

double least_ring(const Design& design, const Dome& dome) {
    const TubeType* tube = find_tube(design, dome.tube);
    const double width = tube ? tamped_width(*tube, design.course.height) : 0;
    return design.course.least_inside_radius.value_or(width / 2);
}
double skylight_radius(const Dome& dome) {
    return dome.top.kind == TopKind::skylight ? dome.top.diameter / 2 : 0;
}

std::optional<std::string> lower_rise(const DomeTrial& trial, const Dome& from) {
    if (!trial.has_rise())
        return std::nullopt;
    for (const double share : {0.75, 0.5, 0.25, 0.1}) {
        Dome dome = from;
        const double least = trial.shown(trial.least_rise(dome.inside_diameter));
        dome.profile.rise = std::max(least, trial.shown(share * *from.profile.rise));
        if (*dome.profile.rise < *from.profile.rise && trial.can_be_laid(dome))
            return trial.written("rise", *dome.profile.rise);
    }
    return std::nullopt;
}

std::optional<std::string> lower_springline(const DomeTrial& trial) {
    for (const double share : {0.75, 0.5, 0.25, 0.0}) {
        Dome dome = trial.dome();
        const double t = trial.design().course.height;
        dome.springline = trial.shown(std::floor(share * dome.springline / t) * t);
        const std::string springline = trial.written("springline", dome.springline);
        if (dome.springline >= trial.dome().springline)
            continue;
        if (trial.can_be_laid(dome))
            return springline;
        if (const auto rise = lower_rise(trial, dome); share == 0 && rise)
            return springline + ", " + *rise;
    }
    return std::nullopt;
}

} // namespace

std::string why_no_ring(const Design& design, const Dome& dome) {
    const auto length = [&](double metres) { return length_text(metres, design.unit); };
    const double radius = dome.inside_diameter / 2, least = least_ring(design, dome);
    if (radius <= skylight_radius(dome))
        return "which is not more than its skylight's " + length(skylight_radius(dome));
    if (radius < least)
        return design.course.least_inside_radius
                   ? "which is less than the least_inside_radius of " + length(least)
                   : "which is less than half a tamped tube, " + length(least);
    return "whose curve comes in to less than " + length(std::max(least, skylight_radius(dome))) +
           " by the middle of its first course";
}

std::string example_with_ring(const Design& design, const Dome& dome) {
    const DomeTrial trial(design, dome);
    if (dome.top.kind == TopKind::skylight)
        for (const double share : {0.75, 0.5, 0.25}) {
            Dome other = dome;
            other.top.diameter =
                trial.shown(share * std::min(dome.top.diameter, dome.inside_diameter));
            if (other.top.diameter >= 0.1 && trial.can_be_laid(other))
                return "top = { kind = \"skylight\", " +
                       trial.written("diameter", other.top.diameter) + " }";
        }
    if (design.course.least_inside_radius) {
        Design other = design;
        other.course.least_inside_radius.reset();
        other.course.least_inside_radius = trial.shown(least_ring(other, dome));
        if (trial.can_be_laid(other, dome))
            return "[course] " +
                   trial.written("least_inside_radius", *other.course.least_inside_radius);
    }
    const bool drawn = dome.profile.kind == ProfileKind::drawn;
    for (double diameter =
             trial.shown(2.2 * std::max(least_ring(design, dome), skylight_radius(dome)));
         diameter <= widest_dome && !drawn; diameter = trial.shown(1.15 * diameter)) {
        Dome other = dome;
        other.inside_diameter = diameter;
        if (diameter > dome.inside_diameter && trial.can_be_laid(other))
            return trial.written("inside_diameter", diameter);
        if (!trial.has_rise())
            continue;
        other.profile.rise = diameter;
        if (trial.can_be_laid(other))
            return trial.written("inside_diameter", diameter) + ", " +
                   trial.written("rise", diameter);
    }
    return "springline = \"" + length_text(4 * design.course.height, design.unit) + "\"";
}

std::string example_with_fewer_courses(const Design& design, const Dome& dome) {
    const DomeTrial trial(design, dome);
    if (const auto rise = lower_rise(trial, dome))
        return *rise;
    if (const auto springline = lower_springline(trial))
        return *springline;
    for (const double share : {0.75, 0.5, 0.25}) {
        Dome other = dome;
        other.inside_diameter = trial.shown(share * dome.inside_diameter);
        if (dome.profile.kind != ProfileKind::drawn && trial.can_be_laid(other))
            return trial.written("inside_diameter", other.inside_diameter);
    }
    Design other = design;
    while (other.course.height < highest_course) {
        other.course.height = std::min(highest_course, trial.shown(1.2 * other.course.height));
        if (trial.can_be_laid(other, dome))
            return "[course] " + trial.written("height", other.course.height);
    }
    return "rise = \"" + length_text(dome.inside_diameter / 2, design.unit) + "\"";
}

} // namespace coilwright
