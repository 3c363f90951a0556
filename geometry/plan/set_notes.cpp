#include "geometry/plan/set_notes.hpp"

#include "geometry/plan/element_notes.hpp"
#include "geometry/plan/opening_place.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <optional>
#include <set>

namespace coilwright {

namespace {

constexpr double form_margin = 0.05; // metres a form sticks out beyond its courses
constexpr int unbroken_courses = 3;  // over a head before its form is struck (judged)
constexpr int most_courses_between_plates = 4;
constexpr int plumb_check_every = 4; // courses between two checks of the pole

/// Numbers of the courses on whose top an anchor plate lies: the joints nearest to 1/8, 3/8, 5/8
/// and 7/8 of the jamb, and more where two lie too far apart.
std::set<int> plate_courses(const OpeningForm& form, const CourseLevels& levels) {
    std::set<int> numbers;
    const double jamb = form.springing - form.sill;
    if (jamb < 2 * levels.course_height)
        return numbers;
    for (const double part : {0.125, 0.375, 0.625, 0.875}) {
        const double wanted = form.sill + part * jamb;
        const int number = course_over_joint(levels, wanted) - 1;
        const double joint = levels.course_bottom(number + 1);
        if (joint > form.sill + height_tie && joint < form.springing - height_tie)
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

/// The faces of the wall that an opening goes through in course n, as distances along its axis: on
/// the axis, and where its sides meet the wall. None where it does not cut.
struct WallFaces {
    double inside, inside_corner, outside, outside_corner;
};

std::optional<WallFaces> faces_at(const BuildingForm& building, const OpeningForm& form, int n) {
    if (const DomeForm* dome = find_dome(building, form.in)) {
        if (!cuts_course(form, *dome, n))
            return std::nullopt;
        const double z = dome->course_middle(n), a = half_width(form, z);
        const double r = inside_radius(*dome, z), outside = outside_radius(*dome, z);
        const double inside_corner = std::sqrt(std::max(0.0, r * r - a * a));
        if (form.niche_depth > 0) { // its back is flat
            const double back = r + form.niche_depth;
            return WallFaces{r, inside_corner, back, back};
        }
        if (const ButtressForm* reveal = find_reveal(building, form.id, z))
            return WallFaces{r, inside_corner, outer_face(*reveal, z), outer_face(*reveal, z)};
        return WallFaces{r, inside_corner, outside,
                         std::sqrt(std::max(0.0, outside * outside - a * a))};
    }
    const TunnelForm* tunnel = find_tunnel(building, form.in);
    if (!tunnel || n > tunnel->side_courses)
        return std::nullopt;
    const double z = tunnel->course_middle(n);
    if (2 * half_width(form, z) < tunnel->course_height - height_tie)
        return std::nullopt;
    if (form.axis.dot(tunnel->axis()) > 0.5) // the end wall
        return WallFaces{tunnel->reach - tunnel->width, tunnel->reach - tunnel->width,
                         tunnel->reach, tunnel->reach};
    const double b = inner_half_width(*tunnel, z);
    return WallFaces{b, b, b + tunnel->width, b + tunnel->width};
}

/// How far the wall's outside at an opening's head lies inside that at its sill; 0 in a plumb wall
/// or reveal, and of a niche.
double rained_on(const BuildingForm& building, const OpeningForm& form) {
    const double head = form.top - 2 * height_tie; // below a joint that it ends on
    if (form.niche_depth > 0 || find_reveal(building, form.id, head))
        return 0;
    double in = 0;
    if (const DomeForm* dome = find_dome(building, form.in))
        in = outside_radius(*dome, form.sill) - outside_radius(*dome, head);
    else if (const TunnelForm* tunnel = find_tunnel(building, form.in);
             tunnel && form.side != TunnelSide::end)
        in = outer_half_width(*tunnel, form.sill) - outer_half_width(*tunnel, head);
    return in > height_tie ? in : 0;
}

int last_course_of(const BuildingForm& building, const std::string& id) {
    if (const DomeForm* dome = find_dome(building, id))
        return dome->courses();
    const TunnelForm* tunnel = find_tunnel(building, id);
    return tunnel ? tunnel->side_courses + tunnel->crown_courses : 0;
}

std::string days_text(double days) {
    return fixed_text(days, days == std::floor(days) ? 0 : 1) + (days == 1 ? " day" : " days");
}

/// Whether a folded bag makes a jamb of an opening in a course.
bool wedge_at(const Course& course, const std::string& opening) {
    return std::any_of(course.rings.begin(), course.rings.end(), [&](const Ring& ring) {
        return std::any_of(ring.pieces.begin(), ring.pieces.end(), [&](const Piece& piece) {
            return piece.kind == PieceKind::wedge &&
                   (piece.of == opening || piece.other == opening);
        });
    });
}

void note_opening(Schedule& schedule, const Design& design, const OpeningPlan& opening) {
    const OpeningForm& form = opening.form;
    const auto length = [&](double metres) { return length_text(metres, schedule.unit); };
    const auto course = [&](int n) -> Course& {
        return schedule.courses[static_cast<std::size_t>(n) - 1];
    };
    const std::string called = word(form.use) + " '" + form.id + "'";
    if (opening.rained_on > 0) {
        const DomeForm& levels = schedule.building.domes.front();
        const std::optional<LintelCourses> lintel = lintel_courses(form, levels);
        int over = lintel ? lintel->last : opening.last_course;
        // A fan's crown stands higher than what the opening cuts.
        over = std::max(over, std::min(course_from(levels, fan_top(form)) - 1,
                                       last_course_of(schedule.building, form.in)));
        course(over).after.push_back(
            {form.id, "drip", "Set a drip over the head of " + called + "."});
    }
    course(opening.first_course)
        .before.push_back({form.id, "form",
                           "Set the form of " + called + ": " + length(2 * form.half_width) +
                               " wide, at least " + length(opening.least_form_depth) +
                               " deep, its foot at " + length(form.sill) +
                               " above the floor. Plumb and brace it, on wedges that can be "
                               "eased." +
                               (form.use == OpeningUse::door && form.niche_depth <= 0
                                    ? " Leave it open between its sides: it is the way in and out."
                                    : "")});
    if (form.use == OpeningUse::door || form.use == OpeningUse::window)
        for (int n : plate_courses(form, schedule.building.domes.front())) {
            // A folded bag holds no nail: the course over or under it has a tube at the jamb.
            if (n <= opening.last_course && wedge_at(course(n), form.id))
                n = n < opening.last_course && !wedge_at(course(n + 1), form.id) ? n + 1 : n - 1;
            if (n >= opening.first_course && n <= opening.last_course)
                course(n).after.push_back({form.id, "anchor plates",
                                           "Nail an anchor plate on each jamb of " + called +
                                               ", block flush with the form."});
        }
    const int strike = opening.strike_after_course;
    for (int n = opening.last_course; n < strike; ++n)
        course(n).after.push_back({form.id, "form stays",
                                   "DO NOT STRIKE the form of " + called +
                                       ": it stays. The sheet of course " + std::to_string(strike) +
                                       " says when it comes out."});
    const std::string old = days_text(design.course.strike_age_days) + " old";
    course(strike).after.push_back(
        {form.id, "strike rule",
         "The form of " + called + " may be STRUCK when this course and the two below it are " +
             old +
             (opening.last_form
                  ? "; it is the last form of '" + form.in + "', which this course closes or ties."
              : find_dome(schedule.building, form.in) ? " and the ring is closed."
                                                      : ", with nobody under the wall over it.") +
             " Ease the wedges at the foot first."});
    if (opening.rained_on > 0) // until then the form stands level on it
        course(strike).after.push_back(
            {form.id, "sill",
             "When the form of " + called +
                 " is out slope its sill outward, at least 1:10 (common practice): the outside at "
                 "its head lies " +
                 length(opening.rained_on) + " inside that at its sill."});
}

/// The bags of the cap's first disc have nothing under them but their ends, and green tubes do not
/// span: boards and a prop carry them (common practice, no source).
void note_cap(Schedule& schedule, const Design& design, const DomeForm& dome) {
    const int first = dome.last_ring + dome.curb_courses + 1;
    const auto length = [&](double metres) { return length_text(metres, schedule.unit); };
    const double hole = 2 * inside_radius(dome, dome.course_middle(first - 1));
    schedule.courses[static_cast<std::size_t>(first) - 1].before.push_back(
        {dome.id, "cap boards",
         "Lay boards across the hole of '" + dome.id + "', " + length(hole) +
             " wide, level with the top of the ring, on a prop that stands on the floor: they "
             "carry the bags until the cap is " +
             days_text(design.course.strike_age_days) +
             " old. Each end of a bag must rest on the ring."});
    schedule.courses[static_cast<std::size_t>(dome.courses()) - 1].after.push_back(
        {dome.id, "cap boards stay",
         "Boards and prop under the cap of '" + dome.id + "' stay until this course is " +
             days_text(design.course.strike_age_days) + " old."});
}

/// What a skylight's frame is held by, and the pole's end (common practice, no source).
void note_skylight(Schedule& schedule, const DomeForm& dome) {
    Course& top = schedule.courses[static_cast<std::size_t>(dome.courses()) - 1];
    top.before.push_back({dome.id, "skylight plates",
                          "Nail four anchor plates for the skylight's frame on the course below, a "
                          "quarter of the ring apart, blocks flush with the inside face."});
    top.after.push_back(
        {dome.id, "pole",
         "The pole of '" + dome.id + "' and its guys may come out: nothing more is set by it."});
    top.after.push_back(
        {dome.id, "skylight frame",
         "Measure the hole, planned " + length_text(2 * dome.last_ring_radius, schedule.unit) +
             " wide, before the skylight is made. Bed its frame on this course, screw it to the "
             "anchor plates, and lap it over the plaster outside so that water runs off. Until "
             "then rail it and keep rain out."});
}

void note_dome(Schedule& schedule, const Design& design, const DomeForm& dome) {
    const auto course = [&](int n) -> Course& {
        return schedule.courses[static_cast<std::size_t>(n) - 1];
    };
    course(1).before.push_back(
        {dome.id, "trench",
         "Check that the trench is level and tamped, and that the pole of '" + dome.id +
             "' stands plumb, guyed, with 0 marked on it." +
             (design.course.foundation > 0
                  ? " In the trench swing the level setting over the ground and carry it down with "
                    "a plumb line, or dig the floor out first as far as it swings."
                  : "")});
    for (int n = plumb_check_every; n < dome.last_ring; n += plumb_check_every)
        course(n).after.push_back(
            {dome.id, "pole check",
             "Check that the pole of '" + dome.id + "' stands plumb and its guys are tight."});
    Course& last = course(dome.last_ring);
    if (dome.curb_courses > 0)
        last.after.push_back({dome.id, "curb hoop",
                              "Set a closed hoop on this ring of '" + dome.id +
                                  "' (loops of wire, or a ring of steel or timber) before the "
                                  "curb: it ties the hole."});
    if (dome.cap_courses == 0) {
        note_skylight(schedule, dome);
        return;
    }
    last.after.push_back({dome.id, "pole",
                          "Last ring of '" + dome.id +
                              "': carry the pole's axis over to two strings across it, then take "
                              "the pole out, before the cap closes the dome."});
    note_cap(schedule, design, dome);
}

/// A vault has no rings to hold it: each leaning course lies on a full-length form until the crown
/// is laid, tamped and old enough.
void note_tunnel(Schedule& schedule, const Design& design, const TunnelForm& tunnel,
                 const VaultForm& form) {
    const auto length = [&](double metres) { return length_text(metres, schedule.unit); };
    const int first = form.set_before_course, strike = form.strike_after_course;
    const int last = tunnel.side_courses + tunnel.crown_courses;
    const std::string age = days_text(design.course.strike_age_days) + " old";
    if (Course* course = course_numbered(schedule, first))
        course->before.push_back({tunnel.id, "vault form",
                                  "Set the full-length form of the vault of '" + tunnel.id +
                                      "': springing at " + length(tunnel.springline) + ", " +
                                      length(2 * tunnel.profile.half_span) + " wide, rising " +
                                      length(tunnel.profile.rise) + "."});
    for (int n = first; n <= last; ++n)
        if (Course* course = course_numbered(schedule, n))
            course->before.push_back(
                {tunnel.id, "form carries", "FORM CARRIES THIS COURSE of '" + tunnel.id + "'."});
    const std::string ease = " Ease the wedges along its whole length a little at a time.";
    if (strike <= last) {
        if (Course* course = course_numbered(schedule, last))
            course->after.push_back({tunnel.id, "strike rule",
                                     "The vault's form of '" + tunnel.id +
                                         "' stays until this crown is " + age + "." + ease});
        return;
    }
    // Ends of the domes' rings lean on it at the hole, and the rings over it: whichever is laid
    // last lets it go, so the sheets of both tell the whole rule.
    std::vector<std::pair<const DomeForm*, int>> over; // and the last course it waits for
    std::string rings, sheets;
    for (const std::string& id : {tunnel.from, tunnel.to})
        if (const DomeForm* dome = find_dome(schedule.building, id)) {
            const int waits_for = std::min(strike, dome->courses());
            over.emplace_back(dome, waits_for);
            const std::string joined = rings.empty() ? "" : " and ";
            rings += joined + "courses " +
                     std::to_string(std::max(1, waits_for - unbroken_courses + 1)) + " to " +
                     std::to_string(waits_for) + " of '" + id + "'";
            sheets += joined + "course " + std::to_string(waits_for) + " of '" + id + "'";
        }
    if (Course* course = course_numbered(schedule, last))
        course->after.push_back({tunnel.id, "form stays",
                                 "DO NOT STRIKE the vault's form of '" + tunnel.id + "': the " +
                                     (over.size() > 1 ? "sheets" : "sheet") + " of " + sheets +
                                     (over.size() > 1 ? " say" : " says") + " when it comes out."});
    for (const auto& [dome, waits_for] : over) {
        for (int n = first; n < waits_for; ++n)
            schedule.courses[static_cast<std::size_t>(n) - 1].after.push_back(
                {dome->id, "form stays",
                 "DO NOT STRIKE the vault's form of '" + tunnel.id +
                     "': the rings at its hole and over it lean on it."});
        schedule.courses[static_cast<std::size_t>(waits_for) - 1].after.push_back(
            {dome->id, "strike rule",
             "The vault's form of '" + tunnel.id + "' may be STRUCK when " + rings +
                 " and the crown are " + age + " and these rings are closed." + ease});
    }
}

void note_reveal(Schedule& schedule, const ButtressForm& pier) {
    const std::string& opening = pier.reveal->opening.id;
    schedule.courses[static_cast<std::size_t>(pier.reveal->first_course) - 1].before.push_back(
        {opening, "reveal",
         "From this course to course " + std::to_string(pier.last_course) +
             " build out the plumb reveal of '" + opening +
             "': its tubes butt against the ring and "
             "run out to " +
             length_text(pier.base_outside, schedule.unit) +
             " from the pole's axis, over the outside of the base ring. Hold the plane by a plumb "
             "line."});
}

} // namespace

OpeningPlan plan_opening(const Design& design, const Opening& opening, const OpeningForm& form,
                         const BuildingForm& building) {
    OpeningPlan plan;
    plan.form = form;
    const bool has_frame = form.niche_depth <= 0;
    plan.frame_depth = has_frame ? opening.frame_depth : 0;
    plan.frame_width = has_frame ? opening.frame : 0;
    plan.frame_inset = design.finish.inside_plaster;
    const double lost = design.finish.inside_plaster + plan.frame_width;
    plan.clear_width = std::max(0.0, 2 * form.half_width - 2 * lost);
    const bool has_sill_board = opening.use != OpeningUse::door;
    plan.clear_height = std::max(0.0, form.top - form.sill - lost * (has_sill_board ? 2 : 1));
    double outermost = 0, innermost = 0, band_start = 0, band_end = 0;
    const DomeForm& any = building.domes.front(); // all share their courses' heights
    int n = 1;
    for (; n <= most_courses && any.course_middle(n) < form.top; ++n) {
        const std::optional<WallFaces> faces = faces_at(building, form, n);
        if (!faces)
            continue;
        const bool first = plan.first_course == 0;
        if (first)
            plan.first_course = n;
        plan.last_course = n;
        outermost = first ? faces->outside : std::max(outermost, faces->outside);
        innermost = first ? faces->inside_corner : std::min(innermost, faces->inside_corner);
        band_start = first ? faces->inside : std::max(band_start, faces->inside);
        band_end = first ? faces->outside_corner : std::min(band_end, faces->outside_corner);
    }
    plan.rained_on = rained_on(building, form);
    const bool through = form.niche_depth <= 0;
    // The form of a niche can stand out on the room's side alone, and no frame goes through the
    // wall.
    plan.innermost = innermost - (through ? form_margin / 2 : form_margin);
    plan.least_form_depth = outermost - innermost + form_margin;
    plan.frame_band_start = through ? band_start : outermost;
    plan.frame_band_end = through ? std::max(band_start, band_end) : outermost;
    // The first course that runs unbroken over the head, or over its fan, lies wholly above its
    // top.
    const double head = fan_top(form);
    const int last = last_course_of(building, form.in);
    int over = plan.last_course + 1;
    if (const auto lintel = lintel_courses(form, any)) // whose courses stop at its ends
        over = std::max(over, lintel->last + 1);
    over = std::max(over, std::min(course_from(any, head), last));
    plan.strike_after_course = std::min(over + unbroken_courses - 1, last);
    return plan;
}

void keep_last_forms(std::vector<OpeningPlan>& openings, const BuildingForm& building) {
    const auto later = [](const OpeningPlan& a, const OpeningPlan& b) {
        if (a.strike_after_course != b.strike_after_course)
            return a.strike_after_course > b.strike_after_course;
        if (std::abs(a.form.top - b.form.top) > height_tie)
            return a.form.top > b.form.top;
        return a.form.id < b.form.id;
    };
    for (const DomeForm& dome : building.domes) {
        OpeningPlan* last = nullptr;
        for (OpeningPlan& opening : openings)
            if (opening.form.in == dome.id && opening.first_course > 0 &&
                (!last || later(opening, *last)))
                last = &opening;
        if (!last)
            continue;
        last->last_form = true;
        last->strike_after_course = std::max(
            last->strike_after_course, dome.curb_courses > 0 ? dome.last_ring + 1 : dome.courses());
    }
}

SleevePlan plan_sleeve(const SleeveForm& sleeve, const BuildingForm& building) {
    const DomeForm& any = building.domes.front(); // all share their courses' heights
    SleevePlan plan;
    plan.form = sleeve;
    plan.course = course_at(any, sleeve.height);
    plan.stops_tubes = stops_tubes(sleeve, any.course_height);
    plan.joint = nearest_joint(any, sleeve.height);
    plan.set_before_course = plan.stops_tubes ? plan.course : course_over_joint(any, sleeve.height);
    return plan;
}

VaultForm plan_vault_form(const TunnelForm& tunnel, const BuildingForm& building) {
    VaultForm form;
    form.tunnel = tunnel.id;
    form.set_before_course = 1;
    while (form.set_before_course <= tunnel.side_courses &&
           tunnel.course_middle(form.set_before_course) < tunnel.springline)
        ++form.set_before_course;
    form.strike_after_course = tunnel.side_courses + tunnel.crown_courses;
    for (const DomeForm& dome : building.domes) {
        if (tunnel.wall_stays || (dome.id != tunnel.from && dome.id != tunnel.to))
            continue;
        int over = form.set_before_course; // the first that runs unbroken over the hole
        while (over < dome.courses() && stops_ring(tunnel, dome.course_middle(over)))
            ++over;
        form.strike_after_course = std::max(form.strike_after_course,
                                            std::min(over + unbroken_courses - 1, dome.courses()));
    }
    return form;
}

void write_set_notes(Schedule& schedule, const Design& design) {
    for (const OpeningPlan& opening : schedule.openings)
        if (opening.first_course > 0)
            note_opening(schedule, design, opening);
    for (const ButtressForm& pier : schedule.building.buttresses)
        if (pier.reveal)
            note_reveal(schedule, pier);
    for (const DomeForm& dome : schedule.building.domes)
        note_dome(schedule, design, dome);
    for (std::size_t i = 0; i < schedule.vault_forms.size(); ++i)
        note_tunnel(schedule, design, schedule.building.tunnels[i], schedule.vault_forms[i]);
    note_heads(schedule);
    note_sleeves(schedule);
}

} // namespace coilwright
