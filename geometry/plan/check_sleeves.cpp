#include "geometry/plan/heads.hpp"
#include "geometry/plan/layout_faults.hpp"
#include "geometry/plan/ring_gaps.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace coilwright {

namespace {

/// What comes nearest to a sleeve in its courses: wall between the two, metres.
struct Neighbour {
    std::string id;
    double apart = 0;
    bool is_sleeve = false;
};

class SleeveCheck {
public:
    SleeveCheck(const BuildingForm& building, const WallRelations& relations, LayoutFaults& faults)
        : building_(building), relations_(relations), faults_(faults) {}

    void run() {
        for (std::size_t i = 0; i < building_.domes.size(); ++i)
            for (const int sleeve : relations_.dome_sleeves[i])
                check_in_dome(building_.sleeves[static_cast<std::size_t>(sleeve)],
                              static_cast<int>(i));
        for (std::size_t i = 0; i < building_.tunnels.size(); ++i)
            for (const int sleeve : relations_.tunnel_sleeves[i])
                check_in_tunnel(building_.sleeves[static_cast<std::size_t>(sleeve)],
                                static_cast<int>(i));
    }

private:
    const BuildingForm& building_;
    const WallRelations& relations_;
    LayoutFaults& faults_;

    std::string length(double metres) const { return faults_.length(metres); }

    const Sleeve& written(const SleeveForm& sleeve) const {
        const auto& all = faults_.design().sleeves;
        return *std::find_if(all.begin(), all.end(),
                             [&](const Sleeve& one) { return one.id == sleeve.id; });
    }
    bool is_sleeve(const std::string& id) const {
        return std::any_of(building_.sleeves.begin(), building_.sleeves.end(),
                           [&](const SleeveForm& sleeve) { return sleeve.id == id; });
    }

    /// Whether its axis lies in one of the courses 1 to `last`.
    static bool lies_in(const SleeveForm& sleeve, const CourseLevels& levels, int last) {
        return sleeve.height >= levels.bottom() - height_tie &&
               sleeve.height < levels.course_bottom(last + 1) - height_tie;
    }

    /// The courses up to `last` that it lies in or between.
    static SleeveCourses reach(const SleeveForm& sleeve, const CourseLevels& levels, int last) {
        SleeveCourses courses = courses_of(sleeve, levels);
        courses.first = std::min(courses.first, last);
        courses.last = std::min(courses.last, last);
        return courses;
    }

    Diagnostic& off_wall(const SleeveForm& sleeve, SourcePlace place, const std::string& where) {
        return faults_.add("sleeve-off-wall", place, "sleeve." + sleeve.id,
                           "The sleeve '" + sleeve.id + "' " + where + ".");
    }

    bool has_course(const SleeveForm& sleeve, const CourseLevels& levels, int last,
                    const std::string& wall) {
        if (lies_in(sleeve, levels, last))
            return true;
        Diagnostic& found = off_wall(sleeve, written(sleeve).height_place,
                                     "at " + length(sleeve.height) + " lies outside " + wall);
        found.allowed = length(levels.bottom()) + " to " + length(levels.course_bottom(last + 1));
        found.example = "height = \"" + length(levels.course_height) + "\"";
        return false;
    }

    void report(const SleeveForm& sleeve, const Neighbour& near, double least, SourcePlace place,
                const std::string& example) {
        Diagnostic& found =
            faults_.add(near.is_sleeve ? "sleeves-too-close" : "sleeve-by-opening", place,
                        "sleeve." + sleeve.id,
                        "The sleeve '" + sleeve.id + "' comes within " +
                            length(std::max(0.0, near.apart)) + " of '" + near.id + "'.");
        found.allowed = "at least a tube's width (" + length(least) + ") of wall between them";
        found.example = example;
    }

    // In a ring: angles at the inside face, where the gaps are narrowest.

    using GapsOfCourse = std::map<int, std::vector<RingGap>>;

    /// What the ring of a course leaves open, and the piers that stand before it.
    GapsOfCourse gaps_along(const SleeveForm& sleeve, int index) const {
        const DomeForm& dome = building_.domes[static_cast<std::size_t>(index)];
        const SleeveCourses courses = reach(sleeve, dome, dome.last_ring);
        GapsOfCourse result;
        for (int n = courses.first; n <= courses.last; ++n) {
            std::vector<RingGap>& gaps = result[n];
            for (RingGap& gap : gaps_in_ring(building_, relations_, index, n, Bond::laid))
                if (gap.by != sleeve.id && !is_pier(gap.by))
                    gaps.push_back(std::move(gap));
            for (const int i : relations_.dome_piers[static_cast<std::size_t>(index)]) {
                const ButtressForm& pier = building_.buttresses[static_cast<std::size_t>(i)];
                if (dome.course_bottom(n) >= pier.top - height_tie ||
                    dome.course_middle(n) < pier.bottom)
                    continue; // a plumb reveal starts where the wall has leaned in
                RingGap gap;
                gap.by = pier.id;
                gap.middle = clockwise_degrees(dome.datum, pier.bearing);
                gap.half_width = pier.half_width;
                gaps.push_back(gap);
            }
        }
        return result;
    }

    std::optional<Neighbour> nearest_in_rings(const SleeveForm& sleeve, const DomeForm& dome,
                                              const GapsOfCourse& all, double bearing) const {
        std::optional<Neighbour> nearest;
        const double middle = clockwise_degrees(dome.datum, {bearing});
        for (const auto& [n, gaps] : all) {
            const double r = inside_radius(dome, dome.course_middle(n));
            const double half = half_angle_degrees(std::min(sleeve.diameter / 2, r), r);
            for (const RingGap& gap : gaps) {
                const auto ends = gap_ends(gap, r);
                if (!ends)
                    continue;
                const double gap_middle = (ends->first + ends->second) / 2;
                const double turn = std::abs(std::remainder(middle - gap_middle, 360));
                const double apart =
                    r * radians_per_degree * (turn - half - (ends->second - ends->first) / 2);
                if (!nearest || apart < nearest->apart)
                    nearest = Neighbour{gap.by, apart, is_sleeve(gap.by)};
            }
        }
        return nearest;
    }
    bool is_pier(const std::string& id) const {
        return std::any_of(building_.buttresses.begin(), building_.buttresses.end(),
                           [&](const ButtressForm& pier) { return pier.id == id; });
    }

    void check_in_dome(const SleeveForm& sleeve, int index) {
        const DomeForm& dome = building_.domes[static_cast<std::size_t>(index)];
        if (!has_course(sleeve, dome, dome.last_ring, "the rings of '" + dome.id + "'"))
            return;
        const GapsOfCourse gaps = gaps_along(sleeve, index);
        const auto near = nearest_in_rings(sleeve, dome, gaps, sleeve.bearing.degrees);
        if (!near || near->apart >= dome.width - height_tie)
            return;
        std::string example = "height = \"" + length(sleeve.height + dome.course_height) + "\"";
        for (int turn = 1; turn <= 180; ++turn)
            for (const int side : {-1, 1}) {
                const double bearing =
                    turned_into_circle(std::round(sleeve.bearing.degrees) + side * turn);
                if (nearest_in_rings(sleeve, dome, gaps, bearing)->apart >= dome.width) {
                    report(sleeve, *near, dome.width, written(sleeve).bearing_place,
                           "bearing = " + fixed_text(bearing, 0));
                    return;
                }
            }
        report(sleeve, *near, dome.width, written(sleeve).bearing_place, example);
    }

    // In a side of a tunnel: distances along it.

    void check_in_tunnel(const SleeveForm& sleeve, int index) {
        const TunnelForm& tunnel = building_.tunnels[static_cast<std::size_t>(index)];
        if (!has_course(sleeve, tunnel, tunnel.side_courses, "the walls of '" + tunnel.id + "'"))
            return;
        const double w = tunnel.width, half = sleeve.diameter / 2;
        const auto [from, to] = free_wall(building_, tunnel);
        if (sleeve.along - half < from - height_tie || sleeve.along + half > to + height_tie) {
            Diagnostic& found = off_wall(sleeve, written(sleeve).along_place,
                                         "lies " + length(sleeve.along) + " along '" + tunnel.id +
                                             "', whose free wall reaches from " + length(from) +
                                             " to " + length(to));
            found.allowed = "a tube's width of wall on each side";
            found.example = "along = \"" + length((from + to) / 2) + "\"";
            return;
        }
        const SleeveCourses courses = reach(sleeve, tunnel, tunnel.side_courses);
        for (const int i : relations_.tunnel_openings[static_cast<std::size_t>(index)]) {
            const OpeningForm& opening = building_.openings[static_cast<std::size_t>(i)];
            double taken = 0;
            for (int n = courses.first; n <= courses.last; ++n)
                taken = std::max(taken, laid_half_width(opening, tunnel, tunnel.side_courses, n));
            if (opening.side != sleeve.side || taken <= 0)
                continue;
            const double apart = std::abs(opening.along - sleeve.along) - taken - half;
            if (apart < w - height_tie)
                report(sleeve, {opening.id, apart, false}, w, written(sleeve).along_place,
                       "along = \"" +
                           length(opening.along +
                                  (taken + half + w) * (sleeve.along < opening.along ? -1 : 1)) +
                           "\"");
        }
        for (const int i : relations_.tunnel_sleeves[static_cast<std::size_t>(index)]) {
            const SleeveForm& other = building_.sleeves[static_cast<std::size_t>(i)];
            const SleeveCourses others = reach(other, tunnel, tunnel.side_courses);
            const double t = tunnel.course_height;
            if (other.id >= sleeve.id || other.side != sleeve.side || others.last < courses.first ||
                courses.last < others.first || !stops_tubes(other, t) || !stops_tubes(sleeve, t))
                continue;
            const double apart = std::abs(other.along - sleeve.along) - half - other.diameter / 2;
            if (apart < w - height_tie)
                report(sleeve, {other.id, apart, true}, w, written(sleeve).along_place,
                       "along = \"" + length(other.along + half + other.diameter / 2 + w) + "\"");
        }
    }
};

} // namespace

void check_sleeves(const BuildingForm& building, LayoutFaults& faults) {
    SleeveCheck(building, make_relations(building), faults).run();
}

} // namespace coilwright
