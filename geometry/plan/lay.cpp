#include "geometry/plan/lay.hpp"

#include "geometry/plan/rings.hpp"
#include "geometry/plan/section.hpp"
#include "geometry/plan/set_notes.hpp"
#include "geometry/plan/straights.hpp"
#include "geometry/plan/wire.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <span>

namespace coilwright {

namespace {

void add_lengths(Course& course, const std::vector<LaidTube>& tubes) {
    for (const LaidTube& tube : tubes) {
        course.tube_length += tube.length;
        course.cut_length += tube.cut_length;
    }
}

void measure_tubes(Course& course, double t) {
    for (Ring& ring : course.rings) {
        double length = 0;
        for (const Run& run : ring.runs) {
            length += run.length;
            add_lengths(course, run.tubes);
        }
        ring.fill_volume = ring.kind == RingKind::cap ? rounded_disc_volume(ring.outside_radius, t)
                                                      : stadium_area(ring.width, t) * length;
        course.fill_volume += ring.fill_volume;
    }
    for (const Straight& straight : course.straights) {
        add_lengths(course, straight.tubes);
        course.fill_volume += stadium_area(straight.width, t) * straight.length;
    }
}

void plan_openings(Schedule& schedule, const Design& design) {
    for (const OpeningForm& form : schedule.building.openings) {
        const Opening& written = *find_opening(design, form.id);
        schedule.openings.push_back(plan_opening(design, written, form, schedule.building));
        const DomeForm* dome = find_dome(schedule.building, form.in);
        const TunnelForm* tunnel = find_tunnel(schedule.building, form.in);
        const std::optional<Lintel> lintel = dome     ? make_lintel(form, *dome)
                                             : tunnel ? make_lintel(form, *tunnel)
                                                      : std::nullopt;
        if (lintel)
            schedule.lintels.push_back(*lintel);
        if (!dome)
            continue;
        int springing = 1;
        while (dome->course_middle(springing) < form.springing - height_tie)
            ++springing;
        if (const auto fan = make_fan(form, ring_width(*dome, form.springing), springing))
            schedule.fans.push_back(*fan);
    }
    keep_last_forms(schedule.openings, schedule.building);
}

/// The wall of course n. Where doubles cannot decide and no one else can, a slice a few micrometres
/// off: its area differs by less than 1e-5 m2 a metre of wall.
Region wall_region(const BuildingForm& building, const WallRelations& relations, int n,
                   const DecideRegion& decide) {
    Region region = region_of(course_expression(building, relations, n), decide);
    for (int step = 1; !region.decided && step <= 5; ++step)
        for (const double side : {1.0, -1.0})
            if (Region off = region_of(
                    course_expression(building, relations, n, side * step * 2e-6), decide);
                off.decided && !region.decided)
                region = off;
    return region;
}

} // namespace

double strip_area_in_ring(double inside_radius, double outside_radius, double half_width) {
    const auto half_strip = [&](double r) {
        return half_width * std::sqrt(r * r - half_width * half_width) +
               r * r * std::asin(half_width / r);
    };
    return half_strip(outside_radius) - half_strip(inside_radius);
}

Schedule lay(const Design& design, const DecideRegion& decide) {
    Schedule schedule;
    schedule.name = design.name;
    schedule.unit = design.unit;
    schedule.course_height = design.course.height;
    schedule.building = make_building_form(design);
    plan_openings(schedule, design);
    for (const SleeveForm& sleeve : schedule.building.sleeves)
        schedule.sleeves.push_back(plan_sleeve(sleeve, schedule.building));
    for (const TunnelForm& tunnel : schedule.building.tunnels)
        schedule.vault_forms.push_back(plan_vault_form(tunnel, schedule.building));

    const BuildingForm& building = schedule.building;
    const WallRelations relations = make_relations(building);
    const int count = course_count(building);
    for (int n = 1; n <= count; ++n) {
        const DomeForm& any = building.domes.front(); // all share their courses' heights
        Course course;
        course.number = n;
        course.bottom = any.course_bottom(n);
        course.middle = any.course_middle(n);
        course.top = any.course_bottom(n + 1);
        course.below_floor = n <= design.course.foundation;
        course.top_measured = design.as_laid_tops.count(n) > 0;
        const Course* below = schedule.courses.empty() ? nullptr : &schedule.courses.back();
        std::span<const Ring> rings_below; // those of later domes too: each dome takes its own
        if (below)
            rings_below = below->rings;
        for (std::size_t i = 0; i < building.domes.size(); ++i) {
            std::size_t own = 0;
            while (own < rings_below.size() && rings_below[own].dome == building.domes[i].id)
                ++own;
            for (Ring& ring : lay_rings(design, building, relations, static_cast<int>(i), n,
                                        rings_below.first(own)))
                course.rings.push_back(std::move(ring));
            rings_below = rings_below.subspan(own);
        }
        course.straights = lay_straights(design, building, relations, n,
                                         below ? std::span<const Straight>(below->straights)
                                               : std::span<const Straight>());
        measure_tubes(course, design.course.height);
        course.wall = wall_region(building, relations, n, decide);
        course.wall_area = course.wall.area;
        schedule.courses.push_back(std::move(course));
    }
    schedule.ground = plan_ground(building, decide);
    measure_wire(schedule, design);
    write_set_notes(schedule, design);

    schedule.totals.order = tube_order(design, schedule);
    for (const Course& course : schedule.courses) {
        schedule.totals.tube_length += course.tube_length;
        schedule.totals.cut_length += course.cut_length;
        schedule.totals.fill_volume += course.fill_volume;
        schedule.totals.wire_length += course.wire_length;
        schedule.totals.wall_volume += course.wall_area * (course.top - course.bottom);
    }
    schedule.totals.courses = count;
    return schedule;
}

} // namespace coilwright
