#include "geometry/plan/set_notes.hpp"

#include <algorithm>
#include <cmath>
#include <set>

namespace coilwright {

namespace {

constexpr double form_margin = 0.05; // metres a form sticks out beyond its courses
constexpr int unbroken_courses = 3;  // over a head before its form is struck (judged)
constexpr int most_courses_between_plates = 4;
constexpr int plumb_check_every = 4; // courses between two checks of the pole

/// Numbers of the courses on whose top an anchor plate lies: the joints nearest to 1/8, 3/8, 5/8
/// and 7/8 of the jamb, and more where two lie too far apart.
std::set<int> plate_courses(const OpeningForm& form, const DomeForm& dome) {
    std::set<int> numbers;
    const double t = dome.course_height;
    const double jamb = form.springing - form.sill;
    if (jamb < 2 * t)
        return numbers;
    for (const double part : {0.125, 0.375, 0.625, 0.875}) {
        const double joint = std::round((form.sill + part * jamb) / t);
        const int number = static_cast<int>(joint) + dome.foundation;
        if (joint * t > form.sill + height_tie && joint * t < form.springing - height_tie)
            numbers.insert(number);
    }
    std::set<int> between;
    for (auto it = numbers.begin(); it != numbers.end() && std::next(it) != numbers.end(); ++it)
        for (int n = *it + most_courses_between_plates; n < *std::next(it);
             n += most_courses_between_plates)
            between.insert(n);
    numbers.merge(between);
    return numbers;
}

std::string days_text(double days) {
    return fixed_text(days, days == std::floor(days) ? 0 : 1) + (days == 1 ? " day" : " days");
}

void note_opening(Schedule& schedule, const Design& design, const OpeningPlan& opening,
                  const DomeForm& dome) {
    const OpeningForm& form = opening.form;
    const auto length = [&](double metres) { return length_text(metres, schedule.unit); };
    const auto course = [&](int n) -> Course& {
        return schedule.courses[static_cast<std::size_t>(n) - 1];
    };
    const std::string called = word(form.use) + " '" + form.id + "'";
    course(opening.first_course)
        .before.push_back({form.id, "form",
                           "Set the form of " + called + ": " + length(2 * form.half_width) +
                               " wide, its foot at " + length(form.sill) +
                               " above the floor, at least " + length(opening.least_form_depth) +
                               " deep. Plumb it, brace it, wedge it so that it can be eased."});
    if (form.use == OpeningUse::door || form.use == OpeningUse::window)
        for (const int n : plate_courses(form, dome))
            if (n <= dome.last_ring)
                course(n).after.push_back({form.id, "anchor plates",
                                           "Nail an anchor plate into the tube on each jamb of " +
                                               called + ", its block flush with the form."});
    const int strike = opening.strike_after_course;
    for (int n = opening.last_course; n < strike; ++n)
        course(n).after.push_back({form.id, "form stays",
                                   "DO NOT STRIKE the form of " + called +
                                       ": it stays until course " + std::to_string(strike) +
                                       " is laid."});
    course(strike).after.push_back(
        {form.id, "strike rule",
         "The form of " + called + " may be STRUCK when this course and the two below it are " +
             days_text(design.course.strike_age) +
             " old and the ring is closed. Ease the wedges at the foot first; leave one form of "
             "the "
             "building standing until the dome is closed."});
}

void note_dome(Schedule& schedule, const DomeForm& dome) {
    const auto course = [&](int n) -> Course& {
        return schedule.courses[static_cast<std::size_t>(n) - 1];
    };
    for (int n = plumb_check_every; n < dome.last_ring; n += plumb_check_every)
        course(n).after.push_back(
            {dome.id, "pole check",
             "Check that the pole of '" + dome.id + "' stands plumb and its guys are tight."});
    Course& last = course(dome.last_ring);
    if (dome.curb_courses > 0)
        last.after.push_back({dome.id, "curb hoop",
                              "Set a closed hoop on this ring of '" + dome.id +
                                  "' (loops of wire, or a ring of steel or timber) before the "
                                  "curb: it ties the eye."});
    if (dome.cap_courses > 0)
        last.after.push_back({dome.id, "pole",
                              "Last ring of '" + dome.id +
                                  "': take the pole out now, before the cap closes the dome."});
}

} // namespace

OpeningPlan plan_opening(const Design& design, const Opening& opening, const DomeForm& dome) {
    OpeningPlan plan;
    plan.form = make_opening_form(opening);
    plan.frame_depth = opening.frame_depth;
    const double lost = design.finish.inside_plaster + opening.frame;
    plan.clear_width = std::max(0.0, 2 * plan.form.half_width - 2 * lost);
    const bool has_sill_board = opening.use != OpeningUse::door;
    plan.clear_height =
        std::max(0.0, plan.form.top - plan.form.sill - lost * (has_sill_board ? 2 : 1));
    double outermost = 0, innermost = 0, band_start = 0, band_end = 0;
    for (int n = 1; n <= dome.last_ring; ++n) {
        if (!cuts_course(plan.form, dome, n))
            continue;
        const double z = dome.course_middle(n);
        const double r = inside_radius(dome, z), outside = outside_radius(dome, z);
        const double a = half_width(plan.form, z);
        const double corner = std::sqrt(std::max(0.0, r * r - a * a));
        const double outer_corner = std::sqrt(std::max(0.0, outside * outside - a * a));
        const bool first = plan.first_course == 0;
        if (first)
            plan.first_course = n;
        plan.last_course = n;
        outermost = first ? outside : std::max(outermost, outside);
        innermost = first ? corner : std::min(innermost, corner);
        band_start = first ? r : std::max(band_start, r);
        band_end = first ? outer_corner : std::min(band_end, outer_corner);
    }
    plan.least_form_depth = outermost - innermost + form_margin;
    plan.frame_band_start = band_start;
    plan.frame_band_end = std::max(band_start, band_end);
    // The first course that runs unbroken over the head lies wholly above its top.
    int over = plan.last_course + 1;
    while (over < dome.courses() && dome.course_bottom(over) < plan.form.top - height_tie)
        ++over;
    plan.strike_after_course = std::min(over + unbroken_courses - 1, dome.courses());
    return plan;
}

void write_set_notes(Schedule& schedule, const Design& design) {
    for (const DomeForm& dome : schedule.domes) {
        for (const OpeningPlan& opening : schedule.openings)
            if (opening.form.in == dome.id && opening.first_course > 0)
                note_opening(schedule, design, opening, dome);
        note_dome(schedule, dome);
    }
}

} // namespace coilwright
