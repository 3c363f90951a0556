#include "exporters/ifc_elements.hpp"

#include "geometry/base/slug.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <stdexcept>

namespace coilwright {
namespace {

struct Element {
    std::string id, word, tube;
    double springline = 0, width = 0;
    bool is_pier = false;
};

std::vector<Element> elements_of(const BuildingPlan& plan) {
    std::vector<Element> elements;
    const BuildingForm& building = plan.schedule.building;
    for (const DomeForm& form : building.domes) {
        const Dome* dome = find_dome(plan.design, form.id);
        elements.push_back(
            {form.id, "dome", dome ? dome->tube : "", form.springline, form.width, false});
    }
    for (const TunnelForm& form : building.tunnels) {
        const Tunnel* tunnel = find_tunnel(plan.design, form.id);
        elements.push_back(
            {form.id, "tunnel", tunnel ? tunnel->tube : "", form.springline, form.width, false});
    }
    for (const ButtressForm& form : building.buttresses) {
        const Dome* dome = find_dome(plan.design, form.dome);
        elements.push_back({form.id, form.reveal ? "reveal" : "buttress", dome ? dome->tube : "", 0,
                            2 * form.half_width, true});
    }
    return elements;
}

// The group at the top under which a part hangs, by its slug.
class Roots {
public:
    explicit Roots(const SolidModel& model) {
        for (const SolidGroup& group : model.groups)
            roots_[group.slug] = group.parent.empty() ? group.slug : roots_[group.parent];
    }
    std::string of(const SolidPart& part) const {
        const auto found = roots_.find(part.group);
        return found == roots_.end() ? std::string() : found->second;
    }

private:
    std::map<std::string, std::string> roots_;
};

WholeKind kind_of(const Element& element, const Course& course) {
    if (course.below_floor)
        return WholeKind::footing;
    if (element.is_pier)
        return WholeKind::pier;
    return course.middle < element.springline ? WholeKind::wall : WholeKind::roof;
}

void add_course(std::vector<Whole>& wholes, const Element& element, const Course& course,
                const CourseBodies& bodies) {
    const WholeKind kind = kind_of(element, course);
    if (wholes.empty() || wholes.back().of != element.id || wholes.back().kind != kind)
        wholes.push_back({kind,
                          element.id,
                          element.word,
                          element.tube,
                          element.width,
                          course.bottom,
                          course.top,
                          {},
                          {}});
    wholes.back().top = course.top;
    wholes.back().courses.push_back(bodies);
}

// The bags of fans are parts of no course: they stand in the wall or roof that their head springs
// from.
void add_fan_bags(std::vector<Whole>& wholes, const BuildingPlan& plan, const SolidModel& model) {
    for (const OpeningPlan& opening : plan.schedule.openings) {
        const OpeningForm& form = opening.form;
        if (form.fan_depth <= 0)
            continue;
        Whole* host = nullptr;
        for (Whole& whole : wholes)
            if (whole.of == form.in && whole.kind != WholeKind::footing &&
                (!host || whole.bottom <= form.springing + height_tie))
                host = &whole;
        const std::string beginning = slug(form.id + "_FAN");
        for (const SolidPart& part : model.parts)
            if (host && part.course == 0 && part.slug.rfind(beginning, 0) == 0)
                host->fan_bags.push_back(&part);
    }
}

/// Faces of the wall in a course, apart; a pier's own width.
double width_in(const BuildingPlan& plan, const Whole& whole, int course) {
    const DomeForm* dome = find_dome(plan.schedule.building, whole.of);
    if (!dome || whole.kind == WholeKind::pier)
        return whole.width;
    const double z = dome->course_middle(course);
    return outside_radius(*dome, z) - inside_radius(*dome, z);
}

/// The width that most courses of a dome's footing or wall have; of as many the lower ones'.
void set_width(const BuildingPlan& plan, Whole& whole) {
    if (whole.kind == WholeKind::roof)
        return;
    std::map<long, int> counts; // by tenths of a millimetre
    const auto key = [&](const CourseBodies& course) {
        return std::lround(1e4 * width_in(plan, whole, course.course));
    };
    for (const CourseBodies& course : whole.courses)
        ++counts[key(course)];
    double width = whole.width;
    int most = 0;
    for (const CourseBodies& course : whole.courses)
        if (const int count = counts[key(course)]; count > most) {
            most = count;
            width = width_in(plan, whole, course.course);
        }
    whole.width = width;
}

} // namespace

std::vector<Whole> wholes_of(const BuildingPlan& plan, const SolidModel& courses) {
    const Roots roots(courses);
    std::map<std::string, std::map<int, CourseBodies>> bodies; // by root, then by course
    std::size_t waiting = 0;
    for (const SolidPart& part : courses.parts)
        if (part.course > 0) {
            CourseBodies& course = bodies[roots.of(part)][part.course];
            course.course = part.course;
            course.parts.push_back(&part);
            ++waiting;
        }
    std::vector<Whole> wholes;
    for (const Element& element : elements_of(plan)) {
        const auto found = bodies.find(slug(element.id));
        if (found == bodies.end())
            continue;
        for (const auto& [number, course] : found->second) {
            add_course(wholes, element,
                       plan.schedule.courses.at(static_cast<std::size_t>(number - 1)), course);
            waiting -= course.parts.size();
        }
    }
    if (waiting > 0)
        throw std::logic_error("a part of a course belongs to no element of the building");
    for (Whole& whole : wholes)
        set_width(plan, whole);
    add_fan_bags(wholes, plan, courses);
    return wholes;
}

std::string tube_of_course(const BuildingPlan& plan, const Whole& whole, const Course& course) {
    const Dome* dome = find_dome(plan.design, whole.of);
    return dome && !dome->lower_tube.empty() && course.middle < dome->lower_height
               ? dome->lower_tube
               : whole.tube;
}

std::string fill_of_course(const Design& design, int course) {
    const auto words = [](const Fill& fill) {
        return fill.id + (fill.kind == FillKind::gravel ? ": gravel" : ": soil") +
               (fill.stabiliser == Stabiliser::cement ? " with cement"
                : fill.stabiliser == Stabiliser::lime ? " with lime"
                                                      : "");
    };
    const Fill* rest = nullptr;
    for (const Fill& fill : design.fills) {
        if (!fill.courses)
            rest = &fill;
        else if (course >= fill.courses->first && course <= fill.courses->second)
            return words(fill);
    }
    return rest ? words(*rest) : std::string();
}

} // namespace coilwright
