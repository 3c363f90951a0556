#include "geometry/plan/reveal_form.hpp"

namespace coilwright {

namespace {

/// The first course of the dome at whose foot the wall has leaned in; past the last ring: none.
int first_leaning(const DomeForm& dome) {
    int n = dome.foundation + 1;
    while (n <= dome.last_ring &&
           base_outside(dome) - outside_radius(dome, dome.course_bottom(n)) <= least_reveal)
        ++n;
    return n;
}

} // namespace

bool can_have_reveal(const OpeningForm& opening) {
    return opening.head && opening.fan_depth <= 0 && opening.niche_depth <= 0;
}

std::optional<ButtressForm> make_reveal(const OpeningForm& opening, const DomeForm& dome) {
    const int first = first_leaning(dome);
    int last = dome.last_ring;
    while (last >= first && !cuts_course(opening, dome, last))
        --last;
    if (last < first)
        return std::nullopt;
    RevealForm form;
    form.opening = opening;
    form.levels = dome;
    form.width = dome.width;
    // A head's last courses may be laid over.
    while (dome.course_middle(last + 1) < opening.top - height_tie)
        ++last;
    const double t = dome.course_height, middle = dome.course_middle(last);
    form.cap = make_cap_curve(*opening.head, opening.springing, middle, t, dome.width);
    int crown = count_cap_courses(*opening.head, opening.springing, form.cap, middle + t, t,
                                  dome.width, most_courses);
    if (crown == 0) { // as a vault's: one course still closes it
        crown = 1;
        form.cap = {false, middle, half_width(*opening.head, middle - opening.springing),
                    dome.width / 2 / t};
    }
    ButtressForm pier;
    pier.id = opening.id + "-reveal";
    pier.dome = dome.id;
    pier.origin = dome.at;
    pier.bearing = opening.bearing;
    pier.half_width = opening.half_width + dome.width;
    pier.tubes = 2;
    pier.bottom = dome.course_bottom(first);
    // Over a ledge its plane would touch the wide ring's circle in a point: it stands a little
    // proud.
    const bool on_ledge = outside_radius(dome, pier.bottom - height_tie * 2) -
                              outside_radius(dome, pier.bottom + height_tie * 2) >
                          least_reveal;
    form.first_course = first;
    form.last_course = last + crown;
    pier.last_course = form.last_course;
    pier.top = dome.course_bottom(form.last_course + 1);
    pier.height = pier.top;
    pier.base_outside = base_outside(dome) + (on_ledge ? least_reveal : 0);
    pier.reveal = std::move(form);
    return pier;
}

double reveal_half_width(const RevealForm& form, double z) {
    const OpeningForm& opening = form.opening;
    if (z <= opening.springing)
        return opening.half_width + form.width;
    const double last_middle = form.levels.course_middle(form.last_course);
    if (z <= last_middle)
        return extended_half_width(*opening.head, opening.springing, form.cap, z) + form.width;
    return cap_rim(*opening.head, opening.springing, form.cap, form.width, last_middle,
                   form.levels.course_bottom(form.last_course + 1), z);
}

} // namespace coilwright
