#include "geometry/plan/check_layout.hpp"

#include "geometry/plan/dome_examples.hpp"
#include "geometry/plan/layout_faults.hpp"

#include <algorithm>

namespace coilwright {

namespace {

/// Whether its courses are known: a fault may be of its tube only, and none waits for a fit.
bool has_inside(const Dome& dome) {
    return dome.itself_sound && !dome.fit_springline && !dome.fit_diameter &&
           !dome.profile.fit_rise;
}

bool judged(const Design& design, const Dome& dome) {
    const TubeType* tube = find_tube(design, dome.tube);
    return has_inside(dome) && dome.sound && design.course.sound && tube && tube->sound;
}

/// Whether a dome can be laid at all.
void check_dome(const Dome& dome, LayoutFaults& faults) {
    const Design& design = faults.design();
    const std::string subject = "dome." + dome.id;
    const DomeForm form = make_dome_form(design, dome);
    if (form.last_ring == 0) {
        Diagnostic& found = faults.add(
            "dome-without-ring", dome.place, subject,
            "No course of '" + dome.id + "' can be laid as a ring of its inside radius, " +
                faults.length(dome.inside_diameter / 2) + ", " + why_no_ring(design, dome) + ".");
        found.allowed = "an inside radius of at least half a tamped tube (" +
                        faults.length(form.width / 2) +
                        "), or least_inside_radius where it is given, and more than the skylight's";
        found.example = example_with_ring(design, dome);
    } else if (form.courses() >= most_courses) {
        Diagnostic& found = faults.add("too-many-courses", dome.place, subject,
                                       "'" + dome.id + "' needs " + std::to_string(most_courses) +
                                           " courses or more, or its profile never closes.");
        found.allowed = "fewer than " + std::to_string(most_courses) + " courses";
        found.example = example_with_fewer_courses(design, dome);
    } else if (form.lower_width > 0 && form.lower_width < form.width - height_tie) {
        Diagnostic& found = faults.add(
            "lower-tube-narrower", dome.lower_tube_place, subject,
            "The lower tube of '" + dome.id + "', " + faults.length(form.lower_width) +
                " tamped, is narrower than the one above it, " + faults.length(form.width) + ".");
        found.allowed = "a lower tube at least as wide as the dome's own";
        found.example = "lower_tube = \"" + dome.tube + "\"";
    } else if (std::max(form.lower_width > 0 ? form.lower_top : form.bottom(),
                        form.second_wythe ? form.second_wythe_top : form.bottom()) >
               form.course_bottom(form.last_ring) + height_tie) {
        const bool wythe =
            form.second_wythe && form.second_wythe_top > form.course_bottom(form.last_ring);
        Diagnostic& found =
            faults.add(wythe ? "wythe-too-high" : "lower-tube-too-high",
                       wythe ? dome.second_wythe_place : dome.lower_height_place, subject,
                       std::string(wythe ? "The second wythe" : "The lower tube") + " of '" +
                           dome.id + "' is to be laid up to " +
                           faults.length(wythe ? dome.second_wythe : dome.lower_height) +
                           ", beyond the last ring but one, which starts at " +
                           faults.length(form.course_bottom(form.last_ring)) + ".");
        found.allowed = "at most " + faults.length(form.course_bottom(form.last_ring));
        found.example = std::string(wythe ? "second_wythe" : "lower_height") + " = \"" +
                        faults.length(std::min(std::max(dome.springline, form.course_height),
                                               form.course_bottom(form.last_ring))) +
                        "\"";
    } else if (form.course_middle(form.last_ring) < 0) {
        Diagnostic& found = faults.add("dome-below-floor", dome.place, subject,
                                       "'" + dome.id + "' ends below the floor.");
        found.allowed = "a springline and rise that bring rings above the floor";
        found.example = "springline = \"" + faults.length(4 * form.course_height) + "\"";
    }
}

/// Openings of domes whose tube is at fault. Their inside is known: an opening that is too wide or
/// too high for it is so with any tube, and is told with the tube's fault. A thin tube stands in.
void check_openings_with_any_tube(const Design& design, LayoutFaults& faults) {
    Design stand_in = design;
    TubeType thin;
    thin.id = "*"; // no design can name it
    thin.lay_flat = 2 * design.course.height;
    stand_in.tubes.push_back(thin);
    stand_in.domes.clear();
    for (Dome dome : design.domes)
        if (has_inside(dome) && !judged(design, dome)) {
            dome.sound = true;
            dome.tube = thin.id;
            dome.lower_tube.clear();
            stand_in.domes.push_back(dome);
        }
    if (stand_in.domes.empty())
        return;
    stand_in.tunnels.clear();
    for (Opening& opening : stand_in.openings)
        opening.sound = opening.itself_sound;
    const BuildingForm building = make_building_form(stand_in);
    for (const DomeForm& dome : building.domes)
        if (dome.courses() < most_courses)
            check_openings_of_any_tube(building, dome, faults);
}

} // namespace

std::vector<Diagnostic> check_layout(const Design& design) {
    // All else is judged by the tops that can be.
    const TopFaults tops = design.course.sound ? check_tops(design) : TopFaults{};
    Design meant = design;
    meant.as_laid_tops = tops.sound;
    LayoutFaults faults(meant);
    bool all_judged = design.course.sound;
    for (const Dome& dome : design.domes)
        if (judged(meant, dome))
            check_dome(dome, faults);
        else
            all_judged = false;
    // What stands on a dome that cannot be laid is judged when the dome is mended.
    const bool laid = faults.empty() && design.course.sound;
    if (laid)
        check_openings_with_any_tube(meant, faults);
    const BuildingForm building = laid ? make_building_form(meant) : BuildingForm{};
    const bool counted = all_judged && !building.domes.empty();
    report_tops(design, tops, counted ? &building : nullptr, faults);
    if (building.domes.empty())
        return faults.take();
    check_domes_apart(building, faults);
    check_tunnels(building, faults);
    check_buttresses(building, faults);
    check_openings(building, faults);
    check_meetings(building, faults);
    check_reveals(building, faults);
    check_sleeves(building, faults);
    return faults.take();
}

} // namespace coilwright
