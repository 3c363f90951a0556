#include "geometry/plan/lay.hpp"

#include "geometry/plan/section.hpp"
#include "geometry/plan/set_notes.hpp"
#include "geometry/plan/tubes.hpp"
#include "geometry/plan/wire.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

/// One hole in one course of a dome, seen from the datum.
struct Gap {
    const OpeningForm* opening;
    double half_width;
    double middle; // degrees clockwise from the datum, [0, 360)
};

std::vector<Gap> gaps_in_course(const DomeForm& dome, const std::vector<OpeningPlan>& openings,
                                int n) {
    std::vector<Gap> gaps;
    for (const OpeningPlan& opening : openings)
        if (opening.form.in == dome.id && cuts_course(opening.form, dome, n))
            gaps.push_back({&opening.form, half_width(opening.form, dome.course_middle(n)),
                            clockwise_degrees(dome.datum, opening.form.bearing)});
    std::sort(gaps.begin(), gaps.end(), [](const Gap& a, const Gap& b) {
        return a.middle != b.middle ? a.middle < b.middle : a.opening->id < b.opening->id;
    });
    return gaps;
}

std::string letter(std::size_t index) {
    std::string text;
    for (++index; index > 0; index = (index - 1) / 26)
        text.insert(text.begin(), static_cast<char>('A' + (index - 1) % 26));
    return text;
}

Cut make_cut(const Gap& gap, Side side, const Ring& ring, Bearing datum) {
    const double sign = side == Side::right ? 1 : -1;
    const auto bearing_at = [&](double radius) {
        return turned(gap.opening->bearing, sign * half_angle_degrees(gap.half_width, radius));
    };
    Cut cut;
    cut.by = gap.opening->id;
    cut.side = side;
    cut.half_width = gap.half_width;
    cut.inside_bearing = bearing_at(ring.inside_radius).degrees;
    cut.centre_bearing = bearing_at(ring.centre_radius).degrees;
    cut.outside_bearing = bearing_at(ring.outside_radius).degrees;
    const double degrees = clockwise_degrees(datum, {cut.inside_bearing});
    const double shorter = std::min(degrees, 360 - degrees);
    cut.inside_arc_from_datum = ring.inside_radius * degrees * radians_per_degree;
    cut.short_arc = ring.inside_radius * shorter * radians_per_degree;
    cut.short_way = degrees <= 180 ? Side::right : Side::left;
    cut.chord = 2 * ring.inside_radius * std::sin(shorter * radians_per_degree / 2);
    return cut;
}

/// Cuts clockwise from the datum, and the runs between them.
void cut_ring(Ring& ring, const std::vector<Gap>& gaps, const DomeForm& dome) {
    const double metres_per_degree = ring.centre_radius * radians_per_degree;
    if (gaps.empty()) {
        Run run;
        run.id = "R1";
        run.closed = true;
        run.length = 360 * metres_per_degree;
        ring.runs.push_back(run);
        return;
    }
    for (const Gap& gap : gaps)
        for (const Side side : {Side::left, Side::right})
            ring.cuts.push_back(make_cut(gap, side, ring, dome.datum));
    std::stable_sort(ring.cuts.begin(), ring.cuts.end(), [&](const Cut& a, const Cut& b) {
        return clockwise_degrees(dome.datum, {a.centre_bearing}) <
               clockwise_degrees(dome.datum, {b.centre_bearing});
    });
    for (std::size_t i = 0; i < ring.cuts.size(); ++i)
        ring.cuts[i].letter = letter(i);
    for (std::size_t i = 0; i < gaps.size(); ++i) {
        const Gap& gap = gaps[i];
        const Gap& next = gaps[(i + 1) % gaps.size()];
        const double half = half_angle_degrees(gap.half_width, ring.centre_radius);
        const double next_half = half_angle_degrees(next.half_width, ring.centre_radius);
        const double between =
            gaps.size() == 1 ? 360 : turned_into_circle(next.middle - gap.middle);
        Run run;
        run.id = "R" + std::to_string(i + 1);
        run.start_bearing = turned(gap.opening->bearing, half).degrees;
        run.end_bearing = run.start_bearing + between - half - next_half;
        run.length = (between - half - next_half) * metres_per_degree;
        run.start_by = gap.opening->id;
        run.end_by = next.opening->id;
        ring.runs.push_back(run);
    }
}

/// The disc of a cap course as short bags side by side, each one tamped width or a little less.
void lay_cap_bags(Ring& ring, const DomeForm& dome, const CourseRules& rules) {
    const double radius = ring.outside_radius;
    const int count = std::max(1, static_cast<int>(std::lround(2 * radius / dome.width)));
    Run run;
    run.id = "R1";
    run.closed = true;
    run.start_bearing = turned_into_circle(dome.datum.degrees);
    run.end_bearing = run.start_bearing + 360;
    for (int i = 0; i < count; ++i) {
        const double y = (i - (count - 1) / 2.0) * 2 * radius / count;
        LaidTube bag;
        bag.length = bag.outer_length = 2 * std::sqrt(radius * radius - y * y);
        bag.cut_length = bag.length + 2 * rules.end_allowance;
        run.length += bag.length;
        run.tubes.push_back(bag);
    }
    ring.runs.push_back(run);
}

void number_tubes(Ring& ring) {
    int count = 0;
    for (Run& run : ring.runs)
        for (LaidTube& tube : run.tubes)
            tube.id = "T" + std::to_string(++count);
}

/// Radii, steps and contact of course n of a dome (a ring, a curb ring or a cap disc).
Ring ring_of_course(const DomeForm& dome, const Design& design, int n, const Ring* below) {
    const double t = dome.course_height;
    const double z = dome.course_middle(n);
    Ring ring;
    ring.dome = dome.id;
    ring.kind = n > dome.last_ring + dome.curb_courses ? RingKind::cap : RingKind::ring;
    ring.curb = ring.kind == RingKind::ring && n > dome.last_ring;
    ring.inside_radius = inside_radius(dome, z);
    ring.outside_radius = outside_radius(dome, z);
    ring.centre_radius = (ring.inside_radius + ring.outside_radius) / 2;
    ring.chain = std::hypot(ring.inside_radius, z - dome.chain_height);
    ring.pole_face = std::max(0.0, ring.inside_radius - design.compass.pole_diameter / 2);
    if (ring.kind == RingKind::ring && !ring.curb)
        ring.radius_per_height = slope(dome.profile, z - dome.springline);
    ring.bearing_width = ring.kind == RingKind::cap ? ring.outside_radius : dome.width;
    double flat_from = ring.inside_radius, flat_to = ring.outside_radius;
    if (below) {
        ring.step_in = below->inside_radius - ring.inside_radius;
        flat_from = std::max(flat_from, below->inside_radius);
        flat_to = std::min(flat_to, below->outside_radius);
        ring.bearing_width = std::max(0.0, flat_to - flat_from);
    }
    // The rounded edges do not touch: only the overlap of the flats carries.
    double contact = ring.bearing_width;
    if (design.course.edge == TubeEdge::round)
        contact -= flat_from > 0 ? t : t / 2; // two discs have no inner edge
    ring.contact_width = std::max(0.0, contact);
    return ring;
}

/// A disc of radius R and height t with a rounded rim (half a circle of diameter t), by Pappus.
double rounded_disc_volume(double radius, double t) {
    const double flat = radius - t / 2;
    const double rim_centroid = flat + 2 * t / (3 * pi);
    return pi * flat * flat * t + 2 * pi * rim_centroid * pi * t * t / 8;
}

void measure_course(Course& course, const Ring& ring, const DomeForm& dome,
                    const std::vector<Gap>& gaps) {
    const double t = dome.course_height;
    double length = 0;
    for (const Run& run : ring.runs) {
        length += run.length;
        for (const LaidTube& tube : run.tubes)
            course.cut_length += tube.cut_length;
    }
    course.tube_length += length;
    if (ring.kind == RingKind::cap) {
        course.wall_area += pi * ring.outside_radius * ring.outside_radius;
        course.fill_volume += rounded_disc_volume(ring.outside_radius, t);
        return;
    }
    course.fill_volume += stadium_area(dome.width, t) * length;
    double area =
        pi * (ring.outside_radius * ring.outside_radius - ring.inside_radius * ring.inside_radius);
    for (const Gap& gap : gaps)
        area -= strip_area_in_ring(ring.inside_radius, ring.outside_radius, gap.half_width);
    course.wall_area += area;
}

} // namespace

double strip_area_in_ring(double inside_radius, double outside_radius, double half_width) {
    const auto half_strip = [&](double r) {
        return half_width * std::sqrt(r * r - half_width * half_width) +
               r * r * std::asin(half_width / r);
    };
    return half_strip(outside_radius) - half_strip(inside_radius);
}

Schedule lay(const Design& design) {
    Schedule schedule;
    schedule.name = design.name;
    schedule.unit = design.unit;
    schedule.course_height = design.course.height;
    int count = 0;
    for (const Dome& dome : design.domes) {
        schedule.domes.push_back(make_dome_form(design, dome));
        count = std::max(count, schedule.domes.back().courses());
    }
    for (const Opening& opening : design.openings)
        for (const DomeForm& dome : schedule.domes)
            if (opening.in == dome.id)
                schedule.openings.push_back(plan_opening(design, opening, dome));

    for (int n = 1; n <= count; ++n) {
        Course course;
        course.number = n;
        const DomeForm& any = schedule.domes.front(); // all share their courses' heights
        course.bottom = any.course_bottom(n);
        course.middle = any.course_middle(n);
        course.top = any.course_bottom(n + 1);
        course.below_floor = n <= design.course.foundation;
        for (const DomeForm& dome : schedule.domes) {
            if (n > dome.courses())
                continue;
            const Ring* below = nullptr;
            if (n > 1)
                for (const Ring& ring : schedule.courses.back().rings)
                    if (ring.dome == dome.id)
                        below = &ring;
            Ring ring = ring_of_course(dome, design, n, below);
            const std::vector<Gap> gaps = gaps_in_course(dome, schedule.openings, n);
            if (ring.kind == RingKind::cap) {
                lay_cap_bags(ring, dome, design.course);
            } else {
                cut_ring(ring, gaps, dome);
                const BondBelow bond{below ? joint_bearings(*below) : std::vector<double>{}};
                for (Run& run : ring.runs)
                    divide_run(run, ring, design.course, bond, dome.datum, n);
            }
            number_tubes(ring);
            measure_course(course, ring, dome, gaps);
            course.rings.push_back(std::move(ring));
        }
        schedule.courses.push_back(std::move(course));
    }
    measure_wire(schedule, design);
    write_set_notes(schedule, design);

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
