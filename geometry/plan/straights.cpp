#include "geometry/plan/straights.hpp"

#include "geometry/plan/heads.hpp"
#include "geometry/plan/ring_gaps.hpp"
#include "geometry/plan/tubes.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace coilwright {

namespace {

constexpr double least_length = 1e-6; // metres

/// A stretch of a line that an opening or a dome leaves out.
struct Stop {
    double from, to;
    std::string by;
};

/// A line parallel to an axis, y to its left, from one distance along it to another.
struct Line {
    Vec2 origin{0, 0}, axis{1, 0};
    double y = 0, from = 0, to = 0;
    OuterEnds outer; // beyond from and to
    std::string from_by, to_by;

    Vec2 point(double x) const { return origin + x * axis + y * Vec2(-axis.y(), axis.x()); }
};

/// What is laid along a line.
struct Kind {
    std::string of;
    StraightPart part;
    double width;
    std::string tube;
};

class StraightLayer {
public:
    StraightLayer(const Design& design, const BuildingForm& building,
                  const WallRelations& relations, int n, std::span<const Straight> below,
                  std::span<const Straight> above)
        : design_(design), building_(building), relations_(relations), n_(n),
          z_(building.domes.front().course_middle(n)), even_(n % 2 == 0), below_(by_element(below)),
          above_(by_element(above)) {}

    std::vector<Straight> lay() {
        for (std::size_t i = 0; i < building_.tunnels.size(); ++i)
            lay_tunnel(i);
        for (std::size_t i = 0; i < building_.buttresses.size(); ++i)
            lay_pier(i);
        int count = 0;
        for (Straight& straight : straights_)
            for (LaidTube& tube : straight.tubes)
                tube.id = "S" + std::to_string(++count);
        return std::move(straights_);
    }

private:
    const Design& design_;
    const BuildingForm& building_;
    const WallRelations& relations_;
    int n_;
    double z_;
    bool even_;
    using ByElement = std::map<std::string, std::span<const Straight>>;
    ByElement below_, above_;
    std::vector<Straight> straights_;

    /// Those of one element follow each other.
    static ByElement by_element(std::span<const Straight> straights) {
        ByElement groups;
        for (std::size_t i = 0, next = 0; i < straights.size(); i = next) {
            while (next < straights.size() && straights[next].of == straights[i].of)
                ++next;
            groups[straights[i].of] = straights.subspan(i, next - i);
        }
        return groups;
    }

    const DomeForm* dome(int index) const {
        return index < 0 ? nullptr : &building_.domes[static_cast<std::size_t>(index)];
    }

    /// Where a line parallel to an axis through a dome's pole leaves the ring: its inside face
    /// where this course runs in, else its outside face. 0 above the dome.
    double ring_face(const DomeForm& dome, double y, bool runs_in) const {
        const double r = inside_radius(dome, z_);
        const double face = runs_in && r > std::abs(y) ? r : outside_radius(dome, z_);
        return face > std::abs(y) ? std::sqrt(face * face - y * y) : 0;
    }

    /// How much farther than its centreline the edge of a tube reaches that lies farther from the
    /// axis, where it butts against the round face of a ring.
    double beyond_face(const DomeForm& dome, double y, double width, bool runs_in) const {
        const double beyond = ring_face(dome, std::abs(y), runs_in) -
                              ring_face(dome, std::abs(y) + width / 2, runs_in);
        return std::clamp(beyond, 0.0, width);
    }

    /// Lays what the stops leave of a line.
    void lay_line(const Line& line, std::vector<Stop> stops, const Kind& kind) {
        std::sort(stops.begin(), stops.end(),
                  [](const Stop& a, const Stop& b) { return a.from < b.from; });
        double from = line.from;
        std::string from_by = line.from_by;
        for (const Stop& stop : stops) {
            if (stop.to <= from || stop.from >= line.to)
                continue;
            add(line, from, stop.from, from_by, stop.by, kind);
            from = stop.to;
            from_by = stop.by;
        }
        add(line, from, line.to, from_by, line.to_by, kind);
    }

    void add(const Line& line, double from, double to, const std::string& from_by,
             const std::string& to_by, const Kind& kind) {
        if (to - from <= least_length)
            return;
        Straight straight;
        straight.of = kind.of;
        straight.part = kind.part;
        straight.length = to - from;
        straight.start_distance = from;
        straight.end_distance = to;
        straight.start = line.point(from);
        straight.end = line.point(to);
        straight.start_by = from_by;
        straight.end_by = to_by;
        straight.width = kind.width;
        straight.tube = kind.tube;
        const OuterEnds outer{from == line.from ? line.outer.start : 0,
                              to == line.to ? line.outer.end : 0};
        divide_straight(straight, design_.course, places_to_keep_from(straight, line), n_, outer);
        straights_.push_back(straight);
    }

    /// What joints keep away from, as distances along the line: joints and ends of the course
    /// below, ends of the course above.
    std::vector<double> places_to_keep_from(const Straight& straight, const Line& line) const {
        std::vector<double> places;
        for (const ByElement* course : {&below_, &above_}) {
            const auto found = course->find(straight.of);
            if (found == course->end())
                continue;
            for (const Straight& other : found->second) {
                if (other.part != straight.part)
                    continue;
                const Vec2 off = other.start - line.origin;
                const double y = line.axis.x() * off.y() - line.axis.y() * off.x();
                if (std::abs(y - line.y) > straight.width / 2)
                    continue;
                places.insert(places.end(), {other.start_distance, other.end_distance});
                if (course == &above_)
                    continue; // its joints give way to ours
                double at = other.start_distance;
                for (std::size_t i = 0; i + 1 < other.tubes.size(); ++i)
                    places.push_back(at += other.tubes[i].length);
            }
        }
        return places;
    }

    static Vec2 left_of(const TunnelForm& tunnel) { return -right_of(tunnel.bearing); }

    /// What openings with their lintels, and sleeves, leave out of one of a tunnel's walls: along
    /// the axis, or across it in the end wall.
    std::vector<Stop> stops_in(std::size_t index, TunnelSide side) const {
        const TunnelForm& tunnel = building_.tunnels[index];
        std::vector<Stop> stops;
        const auto stop = [&](double middle, double half, const std::string& by) {
            if (half > 0)
                stops.push_back({middle - half, middle + half, by});
        };
        for (const int i : relations_.tunnel_openings[index]) {
            const OpeningForm& opening = building_.openings[static_cast<std::size_t>(i)];
            if (opening.side == side)
                stop(side == TunnelSide::end ? 0 : opening.along,
                     laid_half_width(opening, tunnel, tunnel.side_courses, n_), opening.id);
        }
        for (const int i : relations_.tunnel_sleeves[index]) {
            const SleeveForm& sleeve = building_.sleeves[static_cast<std::size_t>(i)];
            if (sleeve.side == side)
                stop(sleeve.along, laid_half_width(sleeve, tunnel, n_), sleeve.id);
        }
        return stops;
    }

    Line tunnel_line(std::size_t index, double y) const {
        const TunnelForm& tunnel = building_.tunnels[index];
        const auto [from, to] = relations_.tunnel_domes[index];
        Line line{tunnel.origin, tunnel.axis(), y, 0, tunnel.reach, {}, tunnel.from, tunnel.to};
        if (const DomeForm* first = dome(from)) {
            const bool runs_in = tunnel_runs_in(tunnel, *first, n_);
            line.from = ring_face(*first, y, runs_in);
            line.outer.start = beyond_face(*first, y, tunnel.width, runs_in);
        }
        if (const DomeForm* last = dome(to)) {
            const bool runs_in = tunnel_runs_in(tunnel, *last, n_);
            line.to = tunnel.reach - ring_face(*last, y, runs_in);
            line.outer.end = beyond_face(*last, y, tunnel.width, runs_in);
        }
        return line;
    }

    void lay_tunnel(std::size_t index) {
        const TunnelForm& tunnel = building_.tunnels[index];
        if (n_ > tunnel.side_courses + tunnel.crown_courses)
            return;
        const double w = tunnel.width;
        const double b = inner_half_width(tunnel, z_);
        if (n_ > tunnel.side_courses) {
            const double outer = outer_half_width(tunnel, z_);
            // No tube can lie wider than it is tamped, as in a dome's cap.
            const int count = std::max(1, static_cast<int>(std::ceil(2 * outer / w - 1e-6)));
            for (int i = 0; i < count; ++i)
                lay_line(tunnel_line(index, (i - (count - 1) / 2.0) * 2 * outer / count), {},
                         {tunnel.id, StraightPart::crown, w, tunnel.tube});
            return;
        }
        const bool wall_across = tunnel.end_wall && even_;
        for (const TunnelSide side : {TunnelSide::left, TunnelSide::right}) {
            const bool left = side == TunnelSide::left;
            Line line = tunnel_line(index, (left ? 1 : -1) * (b + w / 2));
            if (wall_across)
                line.to = tunnel.reach - w;
            lay_line(line, stops_in(index, side),
                     {tunnel.id, left ? StraightPart::left : StraightPart::right, w, tunnel.tube});
        }
        if (tunnel.end_wall)
            lay_end_wall(index, wall_across ? b + w : b);
    }

    /// Across the axis, from left to right as seen walking away.
    void lay_end_wall(std::size_t index, double half) {
        const TunnelForm& tunnel = building_.tunnels[index];
        Line line;
        line.axis = -left_of(tunnel);
        line.origin = tunnel.origin + (tunnel.reach - tunnel.width / 2) * tunnel.axis();
        line.from = -half;
        line.to = half;
        lay_line(line, stops_in(index, TunnelSide::end),
                 {tunnel.id, StraightPart::end, tunnel.width, tunnel.tube});
    }

    void lay_pier(std::size_t index) {
        const ButtressForm& pier = building_.buttresses[index];
        const DomeForm* dome = this->dome(relations_.pier_domes[index]);
        if (!dome || z_ < pier.bottom || n_ > pier.last_course)
            return;
        const bool runs_in = pier_runs_in(building_, relations_, static_cast<int>(index), n_);
        for (const PierTube& tube : pier_tubes(pier, n_)) {
            const double y = tube.across;
            Line line{pier.origin,
                      pier.axis(),
                      y,
                      ring_face(*dome, y, runs_in),
                      outer_face(pier, z_),
                      {beyond_face(*dome, y, dome->width, runs_in), 0},
                      pier.dome,
                      ""};
            lay_line(line, {}, {pier.id, StraightPart::pier, dome->width, dome->tube});
        }
    }
};

} // namespace

std::string word(StraightPart part) {
    switch (part) {
    case StraightPart::left:
        return "left";
    case StraightPart::right:
        return "right";
    case StraightPart::crown:
        return "crown";
    case StraightPart::end:
        return "end";
    case StraightPart::pier:
        return "pier";
    }
    return {};
}

std::vector<Straight> lay_straights(const Design& design, const BuildingForm& building,
                                    const WallRelations& relations, int n,
                                    std::span<const Straight> below) {
    if (building.domes.empty())
        return {};
    const std::vector<Straight> above =
        StraightLayer(design, building, relations, n + 1, {}, {}).lay();
    return StraightLayer(design, building, relations, n, below, above).lay();
}

} // namespace coilwright
