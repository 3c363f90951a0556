#include "geometry/base/bearing.hpp"
#include "geometry/templates/forms.hpp"
#include "geometry/views/plan_views.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

constexpr double longest_piece = 1.2192; // 4 ft: half a board's length

bool is_circular(const Profile& profile) {
    return profile.kind == ProfileKind::pointed || profile.kind == ProfileKind::round;
}

/// Into the room, square to the profile.
Vec2 inward_at(const Profile& profile, double y) {
    return Vec2(-1, slope(profile, y)).normalized();
}

double height_at_length(const Profile& profile, double length, double top) {
    double low = 0, high = top;
    for (int i = 0; i < 60; ++i) {
        const double middle = (low + high) / 2;
        (length_between(profile, 0, middle) < length ? low : high) = middle;
    }
    return (low + high) / 2;
}

ProfileBoard make_board(const Profile& profile, double y0, double y1, double width) {
    ProfileBoard board;
    const auto on = [&](double y) { return Vec2(half_width(profile, y), y); };
    const auto inner = [&](double y) { return Vec2(on(y) + width * inward_at(profile, y)); };
    board.board.from = on(y0);
    if (is_circular(profile)) {
        const double sweep = std::asin(y1 / profile.radius) - std::asin(y0 / profile.radius);
        const double bulge = std::tan(sweep / 4);
        board.board.edges = {{on(y1), bulge}, {inner(y1), 0}, {inner(y0), -bulge}, {on(y0), 0}};
        return board;
    }
    constexpr int steps = 48;
    std::vector<double> heights;
    for (int i = 0; i <= steps; ++i)
        heights.push_back(y0 + (y1 - y0) * i / steps);
    for (int i = 1; i <= steps; ++i)
        board.board.edges.push_back({on(heights[static_cast<std::size_t>(i)]), 0});
    board.profile_edges = steps;
    for (int i = steps; i >= 0; --i)
        board.board.edges.push_back({inner(heights[static_cast<std::size_t>(i)]), 0});
    board.board.edges.push_back({on(y0), 0});
    return board;
}

} // namespace

std::vector<ProfileBoard> profile_boards(const Schedule& schedule, const DomeForm& dome,
                                         const FormStock& stock) {
    const Profile& profile = dome.profile;
    std::vector<ProfileBoard::Mark> marks;
    double top = 0;
    for (const Course& course : schedule.courses)
        for (const Ring& ring : course.rings) {
            if (ring.dome != dome.id || ring.kind != RingKind::ring || ring.curb ||
                ring.wythe != 1 || course.middle <= dome.springline)
                continue;
            const double y = course.middle - dome.springline;
            marks.push_back({course.number,
                             {ring.inside_radius, y},
                             inward_at(profile, y),
                             ring.inside_radius});
            top = std::max(top, std::min(course.top - dome.springline, 0.999 * profile.rise));
        }
    std::vector<ProfileBoard> boards;
    if (marks.empty())
        return boards;
    // A board no wider than a third of the tightest curve, or its inner edge would turn round.
    double width = stock.board_width;
    if (profile.radius > 0)
        width = std::min(width, profile.radius / 3);
    const double length = length_between(profile, 0, top);
    const int pieces = std::max(1, static_cast<int>(std::ceil(length / longest_piece - 1e-9)));
    double y0 = 0;
    for (int piece = 1; piece <= pieces; ++piece) {
        const double y1 =
            piece == pieces ? top : height_at_length(profile, length * piece / pieces, top);
        ProfileBoard board = make_board(profile, y0, y1, width);
        board.dome = dome.id;
        board.piece = piece;
        board.pieces = pieces;
        for (const ProfileBoard::Mark& mark : marks)
            if (mark.at.y() >= y0 && mark.at.y() < y1)
                board.marks.push_back(mark);
        boards.push_back(std::move(board));
        y0 = y1;
    }
    return boards;
}

SoffitStrip soffit_strip(const Schedule& schedule, const OpeningPlan& opening,
                         const ArchForm& form) {
    const OpeningForm& hole = opening.form;
    const bool closed = hole.head_kind == HeadKind::circle;
    const double bottom = closed ? 0 : (form.hole.edges.front().to - form.hole.from).norm();
    SoffitStrip strip;
    strip.of = hole.id;
    strip.length = length_of(form.hole) - bottom;
    strip.depth = form.depth;
    strip.crown = strip.length / 2;
    const auto place = [&](double u) { return place_along(form.hole, bottom + u).at; };
    const auto u_at = [&](double z) {
        double low = 0, high = strip.crown;
        for (int i = 0; i < 60; ++i) {
            const double middle = (low + high) / 2;
            (place(middle).y() < z ? low : high) = middle;
        }
        return (low + high) / 2;
    };
    // Every 10 mm, and at the bends.
    std::vector<double> places;
    const int steps = std::max(8, static_cast<int>(std::ceil(strip.length / 0.01)));
    for (int i = 0; i <= steps; ++i)
        places.push_back(strip.length * i / steps);
    strip.springing_right = closed ? strip.length / 4 : u_at(hole.springing);
    strip.springing_left = strip.length - strip.springing_right;
    for (const double bend : {strip.springing_right, strip.crown, strip.springing_left})
        places.push_back(bend);
    std::sort(places.begin(), places.end());
    for (const double u : places) {
        const Vec2 at = place(u);
        const double z = std::clamp(at.y(), hole.sill + height_tie, hole.top - height_tie);
        const HoleFaces faces = hole_faces(schedule.building, hole, std::abs(at.x()), z);
        strip.inner_face.emplace_back(u,
                                      hole.axis.dot(faces.inner_left - hole.origin) - form.start);
        strip.outer_face.emplace_back(u,
                                      hole.axis.dot(faces.outer_left - hole.origin) - form.start);
    }
    for (const Course& course : schedule.courses)
        if (course.top > place(0).y() + 1e-6 && course.top < hole.top - 1e-6)
            strip.joints.emplace_back(course.number, u_at(course.top));
    return strip;
}

} // namespace coilwright
