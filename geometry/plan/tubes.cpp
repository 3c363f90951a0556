#include "geometry/plan/tubes.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <optional>

namespace coilwright {

namespace {

constexpr double lap_tie = 1e-9; // metres: a joint just at its lap keeps it

/// The run as a straight line of length L, with what its joints must keep away from.
struct Line {
    double length = 0;
    bool closed = false;
    std::vector<double> places; // to keep away from, 0 <= s <= length or just beyond an open end
};

/// Distance from a place on the line to the nearest of its places or, on an open line, to its ends.
double clearance(const Line& line, double s) {
    double nearest = line.closed ? line.length : std::min(s, line.length - s);
    for (const double place : line.places) {
        double apart = std::abs(s - place);
        if (line.closed)
            apart = std::min(apart, line.length - apart);
        nearest = std::min(nearest, apart);
    }
    return nearest;
}

double place_on(const Line& line, double s) {
    if (!line.closed)
        return s;
    s = std::fmod(s, line.length);
    return s < 0 ? s + line.length : s;
}

/// `pieces` equal tubes with all their joints moved by `shift`.
struct Pattern {
    int pieces = 1;
    double shift = 0;
    double clearance = 0;
};

/// The joints of an equal division move together. So what counts of a place is where it lies
/// within a piece, and one search among these places answers for all joints at once.
class Division {
public:
    Division(const Line& line, int pieces)
        : line_(line), pieces_(pieces), piece_(line.length / pieces) {
        for (const double place : line.places)
            places_.push_back(within_piece(place));
        std::sort(places_.begin(), places_.end());
    }

    double piece() const { return piece_; }

    /// The least distance of any joint to what it must keep away from, with all moved by `shift`:
    /// by at most a piece on an open line.
    double clearance(double shift) const {
        if (line_.closed)
            return std::min(line_.length, to_nearest_place(shift));
        if (pieces_ == 1)
            return line_.length;
        // The first and the last joint have the ends, and places beyond them, to themselves.
        double worst = std::min(coilwright::clearance(line_, piece_ + shift),
                                coilwright::clearance(line_, line_.length - piece_ + shift));
        for (auto it = std::lower_bound(line_.places.begin(), line_.places.end(), piece_ + shift);
             it != line_.places.end() && *it < line_.length - piece_ + shift; ++it) {
            const double off = within_piece(*it - shift);
            worst = std::min({worst, off, piece_ - off});
        }
        return worst;
    }

    /// The shifts from `low` to `high` at which some joint lies just `apart` before or after
    /// `place`.
    void add_shifts(double place, double apart, double low, double high,
                    std::vector<double>& shifts) const {
        for (const double at : {place - apart, place + apart}) {
            if (line_.closed) { // the others lie whole pieces away
                shifts.push_back(at);
                continue;
            }
            const int from = std::max(1, static_cast<int>(std::floor((at - high) / piece_)));
            const int to = std::min(pieces_ - 1, static_cast<int>(std::ceil((at - low) / piece_)));
            for (int i = from; i <= to; ++i)
                shifts.push_back(at - i * piece_);
        }
    }

private:
    const Line& line_;
    int pieces_;
    double piece_;
    std::vector<double> places_; // each within its piece

    double within_piece(double s) const {
        const double off = std::fmod(s, piece_);
        return off < 0 ? off + piece_ : off;
    }
    double to_nearest_place(double s) const {
        if (places_.empty())
            return line_.length;
        const double at = within_piece(s);
        const auto next = std::lower_bound(places_.begin(), places_.end(), at);
        const double up = next == places_.end() ? places_.front() + piece_ - at : *next - at;
        const double down =
            next == places_.begin() ? at - places_.back() + piece_ : at - *std::prev(next);
        return std::min(up, down);
    }
};

/// The pattern of that many pieces nearest to `nominal` that keeps the lap; else the one that keeps
/// the most of it. Where the lap is lost or kept, some joint lies at a lap from a neighbour, so the
/// shifts to try are a finite list.
Pattern best_pattern(const Line& line, int pieces, double nominal, double longest, double lap,
                     bool clockwise_first) {
    const Division division(line, pieces);
    const double piece = division.piece();
    double low = -piece / 2, high = piece / 2;
    if (!line.closed) {
        const double slack = std::max(0.0, std::min(longest - piece, piece));
        low = -slack;
        high = slack;
    }
    std::vector<double> shifts{nominal, low, high};
    for (const double place : line.places)
        division.add_shifts(place, lap, low, high, shifts);
    if (!line.closed) {
        division.add_shifts(0, lap, low, high, shifts);
        division.add_shifts(line.length, lap, low, high, shifts);
    }
    std::optional<Pattern> best;
    for (double shift : shifts) {
        if (line.closed) // turning by a whole piece changes nothing
            shift -= piece * std::round((shift - nominal) / piece);
        else if (shift < low - lap_tie || shift > high + lap_tie)
            continue;
        const double kept = std::min(lap, division.clearance(shift) + lap_tie);
        if (!best || kept > best->clearance + lap_tie) {
            best = Pattern{pieces, shift, kept};
            continue;
        }
        if (kept < best->clearance - lap_tie)
            continue;
        const double move = std::abs(shift - nominal), best_move = std::abs(best->shift - nominal);
        const bool preferred_side = (shift > best->shift) == clockwise_first;
        if (move < best_move - lap_tie || (move < best_move + lap_tie && preferred_side))
            best = Pattern{pieces, shift, kept};
    }
    return *best;
}

/// As few tubes as the longest allows, or one more where only that keeps the lap.
Pattern choose_pattern(const Line& line, double nominal, const CourseRules& rules, bool odd) {
    const int least =
        std::max(1, static_cast<int>(std::ceil(line.length / rules.longest_tube - 1e-9)));
    const Pattern pattern =
        best_pattern(line, least, nominal, rules.longest_tube, rules.joint_lap, odd);
    if (pattern.clearance >= rules.joint_lap - lap_tie || (least == 1 && !line.closed))
        return pattern;
    const Pattern one_more =
        best_pattern(line, least + 1, nominal, rules.longest_tube, rules.joint_lap, odd);
    return one_more.clearance >= rules.joint_lap - lap_tie ? one_more : pattern;
}

/// The first tube of several takes what the run's outer thread has at its start, the last at its
/// end.
void add_ends(std::vector<LaidTube>& tubes, OuterEnds outer) {
    tubes.front().outer_length += outer.start;
    tubes.back().outer_length += outer.end;
}

double to_cut(const LaidTube& tube, const CourseRules& rules) {
    const double laid =
        rules.curve == CutCurve::outer ? std::max(tube.outer_length, tube.length) : tube.length;
    return laid + 2 * rules.end_allowance;
}

} // namespace

void divide_run(Run& run, const Ring& ring, const CourseRules& rules,
                const std::vector<double>& keep_from, Bearing datum, int course_number,
                OuterEnds outer) {
    const double radius = ring.centre_radius;
    const double metres_per_degree = radius * radians_per_degree;
    Line line{run.length, run.closed, {}};
    // Places on the line count from the run's start; on a full ring from the datum.
    const double origin = run.closed ? datum.degrees : run.start_bearing;
    for (const double place : keep_from) {
        const double s = clockwise_degrees({origin}, {place}) * metres_per_degree;
        if (run.closed || s < run.length) // what lies beyond an end is farther off than the end
            line.places.push_back(s);
    }
    std::sort(line.places.begin(), line.places.end());

    const bool odd = course_number % 2 == 1;
    const double nominal =
        run.closed ? run.length / 2 + (odd ? -0.75 : 0.75) * rules.joint_lap : 0.0;
    const Pattern pattern = choose_pattern(line, nominal, rules, odd);

    // Ends of the tubes along the line.
    std::vector<double> ends;
    const double piece = run.length / pattern.pieces;
    double start = 0;
    if (run.closed) {
        start = pattern.shift;
        run.start_bearing = turned_into_circle(origin + start / metres_per_degree);
        run.end_bearing = run.start_bearing + 360;
    }
    for (int i = 1; i < pattern.pieces; ++i)
        ends.push_back(run.closed ? i * piece : i * piece + pattern.shift);
    ends.push_back(run.length);

    run.tubes.clear();
    double from = 0;
    for (const double to : ends) {
        LaidTube tube;
        tube.length = to - from;
        tube.start_bearing = run.start_bearing + from / metres_per_degree;
        tube.end_bearing =
            to == run.length ? run.end_bearing : run.start_bearing + to / metres_per_degree;
        tube.outer_length = tube.length * ring.outside_radius / radius;
        const bool joint = run.closed || to != run.length;
        tube.lap_short =
            joint && clearance(line, place_on(line, start + to)) < rules.joint_lap - 2 * lap_tie;
        run.tubes.push_back(tube);
        from = to;
    }
    if (!run.closed)
        add_ends(run.tubes, outer);
    for (LaidTube& tube : run.tubes)
        tube.cut_length = to_cut(tube, rules);
}

void divide_straight(Straight& straight, const CourseRules& rules,
                     const std::vector<double>& keep_from, int course_number, OuterEnds outer) {
    Line line{straight.length, false, {}};
    for (const double place : keep_from) {
        const double s = place - straight.start_distance;
        if (s > -rules.joint_lap && s < straight.length + rules.joint_lap)
            line.places.push_back(s);
    }
    std::sort(line.places.begin(), line.places.end());
    const Pattern pattern = choose_pattern(line, 0, rules, course_number % 2 == 1);
    straight.tubes.clear();
    double from = 0;
    for (int i = 1; i <= pattern.pieces; ++i) {
        const bool last = i == pattern.pieces;
        const double to =
            last ? straight.length : i * straight.length / pattern.pieces + pattern.shift;
        LaidTube tube;
        tube.length = tube.outer_length = to - from;
        tube.lap_short = !last && clearance(line, to) < rules.joint_lap - 2 * lap_tie;
        straight.tubes.push_back(tube);
        from = to;
    }
    add_ends(straight.tubes, outer);
    for (LaidTube& tube : straight.tubes)
        tube.cut_length = to_cut(tube, rules);
}

std::vector<double> joint_bearings(const Ring& ring) {
    std::vector<double> joints;
    if (ring.kind == RingKind::cap)
        return joints;
    for (const Run& run : ring.runs) {
        if (run.closed)
            joints.push_back(run.start_bearing);
        for (std::size_t i = 0; i + 1 < run.tubes.size(); ++i)
            joints.push_back(turned_into_circle(run.tubes[i].end_bearing));
    }
    return joints;
}

} // namespace coilwright
