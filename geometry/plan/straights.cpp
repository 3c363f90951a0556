#include "geometry/plan/straights.hpp"

#include "geometry/plan/ring_gaps.hpp"
#include "geometry/plan/tubes.hpp"

#include <algorithm>
#include <cmath>

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
    StraightLayer(const Design& design, const BuildingForm& building, int n,
                  const std::vector<Straight>& below)
        : design_(design), building_(building), n_(n), below_(below),
          z_(building.domes.front().course_middle(n)), even_(n % 2 == 0) {}

    std::vector<Straight> lay() {
        for (const TunnelForm& tunnel : building_.tunnels)
            lay_tunnel(tunnel);
        for (const ButtressForm& pier : building_.buttresses)
            lay_pier(pier);
        int count = 0;
        for (Straight& straight : straights_)
            for (LaidTube& tube : straight.tubes)
                tube.id = "S" + std::to_string(++count);
        return std::move(straights_);
    }

private:
    const Design& design_;
    const BuildingForm& building_;
    int n_;
    const std::vector<Straight>& below_;
    double z_;
    bool even_;
    std::vector<Straight> straights_;

    /// Where a line parallel to an axis through a dome's pole leaves the ring: its inside face where
    /// this course runs in, else its outside face. 0 above the dome.
    double ring_face(const DomeForm& dome, double y, bool runs_in) const {
        const double r = inside_radius(dome, z_);
        const double face = runs_in && r > std::abs(y) ? r : outside_radius(dome, z_);
        return face > std::abs(y) ? std::sqrt(face * face - y * y) : 0;
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
        divide_straight(straight, design_.course, joints_below(straight, line), n_);
        straights_.push_back(straight);
    }

    /// Joints of the course below on the same line, as distances along it.
    std::vector<double> joints_below(const Straight& straight, const Line& line) const {
        std::vector<double> joints;
        for (const Straight& under : below_) {
            if (under.of != straight.of || under.part != straight.part)
                continue;
            const Vec2 off = under.start - line.origin;
            const double y = line.axis.x() * off.y() - line.axis.y() * off.x();
            if (std::abs(y - line.y) > straight.width / 2)
                continue;
            double at = under.start_distance;
            for (std::size_t i = 0; i + 1 < under.tubes.size(); ++i)
                joints.push_back(at += under.tubes[i].length);
        }
        return joints;
    }

    double hole(const OpeningForm& opening, double course_height) const {
        const double a = half_width(opening, z_);
        return 2 * a >= course_height - height_tie ? a : 0;
    }

    bool in_side(const OpeningForm& opening, const TunnelForm& tunnel, double sign) const {
        return opening.in == tunnel.id && std::abs(opening.axis.dot(tunnel.axis())) < 0.5 &&
               opening.axis.dot(left_of(tunnel)) * sign > 0.5;
    }
    static Vec2 left_of(const TunnelForm& tunnel) { return -right_of(tunnel.bearing); }

    std::vector<Stop> side_stops(const TunnelForm& tunnel, double sign) const {
        std::vector<Stop> stops;
        for (const OpeningForm& opening : building_.openings) {
            if (!in_side(opening, tunnel, sign))
                continue;
            const double a = hole(opening, tunnel.course_height);
            const double at = (opening.origin - tunnel.origin).dot(tunnel.axis());
            if (a > 0)
                stops.push_back({at - a, at + a, opening.id});
        }
        return stops;
    }

    Line tunnel_line(const TunnelForm& tunnel, double y) const {
        Line line{tunnel.origin, tunnel.axis(), y, 0, tunnel.reach, tunnel.from, tunnel.to};
        if (const DomeForm* from = find_dome(building_, tunnel.from))
            line.from = ring_face(*from, y, tunnel_runs_in(tunnel, *from, n_));
        if (const DomeForm* to = find_dome(building_, tunnel.to))
            line.to = tunnel.reach - ring_face(*to, y, tunnel_runs_in(tunnel, *to, n_));
        return line;
    }

    void lay_tunnel(const TunnelForm& tunnel) {
        if (n_ > tunnel.side_courses + tunnel.crown_courses)
            return;
        const double w = tunnel.width;
        const double b = inner_half_width(tunnel, z_);
        if (n_ > tunnel.side_courses) {
            const double outer = outer_half_width(tunnel, z_);
            const int count = std::max(1, static_cast<int>(std::lround(2 * outer / w)));
            for (int i = 0; i < count; ++i)
                lay_line(tunnel_line(tunnel, (i - (count - 1) / 2.0) * 2 * outer / count), {},
                         {tunnel.id, StraightPart::crown, w, tunnel.tube});
            return;
        }
        const bool wall_across = tunnel.end_wall && even_;
        for (const double sign : {1.0, -1.0}) {
            Line line = tunnel_line(tunnel, sign * (b + w / 2));
            if (wall_across)
                line.to = tunnel.reach - w;
            lay_line(line, side_stops(tunnel, sign),
                     {tunnel.id, sign > 0 ? StraightPart::left : StraightPart::right, w,
                      tunnel.tube});
        }
        if (tunnel.end_wall)
            lay_end_wall(tunnel, wall_across ? b + w : b);
    }

    /// Across the axis, from left to right as seen walking away.
    void lay_end_wall(const TunnelForm& tunnel, double half) {
        Line line;
        line.axis = -left_of(tunnel);
        line.origin = tunnel.origin + (tunnel.reach - tunnel.width / 2) * tunnel.axis();
        line.from = -half;
        line.to = half;
        std::vector<Stop> stops;
        for (const OpeningForm& opening : building_.openings)
            if (opening.in == tunnel.id && opening.axis.dot(tunnel.axis()) > 0.5) {
                const double a = hole(opening, tunnel.course_height);
                if (a > 0)
                    stops.push_back({-a, a, opening.id});
            }
        lay_line(line, stops, {tunnel.id, StraightPart::end, tunnel.width, tunnel.tube});
    }

    void lay_pier(const ButtressForm& pier) {
        const DomeForm* dome = find_dome(building_, pier.dome);
        if (!dome || n_ > pier.last_course)
            return;
        const double width = 2 * pier.half_width;
        const bool runs_in = pier_runs_in(building_, pier, *dome, n_);
        for (int i = 0; i < pier.tubes; ++i) {
            const double y = (i - (pier.tubes - 1) / 2.0) * width / pier.tubes;
            Line line{pier.origin, pier.axis(), y, ring_face(*dome, y, runs_in), outer_face(pier, z_),
                      pier.dome, ""};
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

std::vector<Straight> lay_straights(const Design& design, const BuildingForm& building, int n,
                                    const std::vector<Straight>& below) {
    if (building.domes.empty())
        return {};
    return StraightLayer(design, building, n, below).lay();
}

} // namespace coilwright
