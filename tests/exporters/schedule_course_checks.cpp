#include "tests/exporters/schedule_checks.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

namespace coilwright {

bool same(const Json& written, double value) {
    return std::abs(written.get<double>() - value) <= 0.5e-6 + 1e-12;
}
bool same_bearing(const Json& written, double value) {
    const double turn = std::remainder(written.get<double>() - value, 360);
    return written.get<double>() >= 0 && std::abs(turn) <= 0.5e-6 + 1e-12;
}

bool same_point(const Json& written, const Vec2& point) {
    return same(written.at(0), point.x()) && same(written.at(1), point.y());
}

namespace {

void check_run(const Json& json, const Run& run, RingKind kind) {
    CHECK(json.at("id") == run.id);
    CHECK(same_bearing(json.at("start_bearing"), run.start_bearing));
    CHECK(json.at("start_bearing") < 360);
    CHECK(same_bearing(json.at("end_bearing"), run.end_bearing));
    const double turn =
        json.at("end_bearing").get<double>() - json.at("start_bearing").get<double>();
    CHECK(turn == Approx(run.end_bearing - run.start_bearing).margin(1.1e-6));
    CHECK(same(json.at("length"), run.length));
    CHECK(json.at("closed") == run.closed);
    CHECK(json.at("start_by") == run.start_by);
    CHECK(json.at("end_by") == run.end_by);
    REQUIRE(json.at("tubes").size() == run.tubes.size());
    for (std::size_t k = 0; k < run.tubes.size(); ++k) {
        const Json& tube = json.at("tubes")[k];
        CHECK(tube.at("id") == run.tubes[k].id);
        CHECK(same(tube.at("length"), run.tubes[k].length));
        CHECK(same(tube.at("outer_length"), run.tubes[k].outer_length));
        CHECK(same(tube.at("cut_length"), run.tubes[k].cut_length));
        if (kind == RingKind::cap) {
            CHECK(tube.at("start_bearing").is_null());
            CHECK(tube.at("end_bearing").is_null());
        } else {
            CHECK(same_bearing(tube.at("start_bearing"), run.tubes[k].start_bearing));
            CHECK(same_bearing(tube.at("end_bearing"), run.tubes[k].end_bearing));
            CHECK(tube.at("start_bearing") >= json.at("start_bearing"));
            CHECK(tube.at("end_bearing") <= json.at("end_bearing"));
        }
        CHECK(tube.at("lap_short") == run.tubes[k].lap_short);
    }
}

void check_cut(const Json& json, const Cut& cut) {
    CHECK(json.at("by") == cut.by);
    CHECK(json.at("letter") == cut.letter);
    CHECK(json.at("side") == (cut.side == Side::left ? "left" : "right"));
    CHECK(json.at("short_way") == (cut.short_way == Side::left ? "left" : "right"));
    CHECK(same(json.at("half_width"), cut.half_width));
    CHECK(same_bearing(json.at("inside_bearing"), cut.inside_bearing));
    CHECK(same_bearing(json.at("centre_bearing"), cut.centre_bearing));
    CHECK(same_bearing(json.at("outside_bearing"), cut.outside_bearing));
    CHECK(same(json.at("inside_arc_from_datum"), cut.inside_arc_from_datum));
    CHECK(same(json.at("short_arc"), cut.short_arc));
    CHECK(same(json.at("chord"), cut.chord));
}

void check_piece(const Json& json, const Piece& piece) {
    CHECK(json.at("id") == piece.id);
    CHECK(json.at("kind") == word(piece.kind));
    CHECK(json.at("of") == piece.of);
    CHECK(json.at("other") == piece.other);
    CHECK(same(json.at("length"), piece.length));
    CHECK(same(json.at("longest"), piece.longest));
    CHECK(same(json.at("cut_length"), piece.cut_length));
    CHECK(same(json.at("fill_volume"), piece.fill_volume));
    const bool of_fan = piece.kind == PieceKind::fan_bag || piece.kind == PieceKind::keystone;
    CHECK(json.at("start_bearing").is_null() == of_fan);
    CHECK(json.at("end_bearing").is_null() == of_fan);
    if (!of_fan) {
        CHECK(same_bearing(json.at("start_bearing"), piece.start_bearing));
        CHECK(same_bearing(json.at("end_bearing"), piece.end_bearing));
    }
}

void check_ring(const Json& json, const Ring& ring) {
    CHECK(json.at("dome") == ring.dome);
    CHECK(json.at("kind") == (ring.kind == RingKind::ring ? "ring" : "cap"));
    CHECK(json.at("curb") == ring.curb);
    CHECK(same(json.at("inside_radius"), ring.inside_radius));
    CHECK(same(json.at("centre_radius"), ring.centre_radius));
    CHECK(same(json.at("outside_radius"), ring.outside_radius));
    CHECK(same(json.at("chain"), ring.chain));
    CHECK(same(json.at("pole_face"), ring.pole_face));
    CHECK(same(json.at("chain_face"), ring.chain_face));
    CHECK(same(json.at("step_in"), ring.step_in));
    CHECK(same(json.at("bearing_width"), ring.bearing_width));
    CHECK(json.at("wythe") == ring.wythe);
    CHECK(json.at("tube") == ring.tube);
    CHECK(same(json.at("width"), ring.width));
    CHECK(same(json.at("fill_volume"), ring.fill_volume));
    if (std::isfinite(ring.radius_per_height))
        CHECK(same(json.at("radius_per_height"), ring.radius_per_height));
    else
        CHECK(json.at("radius_per_height").is_null());
    REQUIRE(json.at("runs").size() == ring.runs.size());
    for (std::size_t k = 0; k < ring.runs.size(); ++k)
        check_run(json.at("runs")[k], ring.runs[k], ring.kind);
    REQUIRE(json.at("pieces").size() == ring.pieces.size());
    for (std::size_t k = 0; k < ring.pieces.size(); ++k)
        check_piece(json.at("pieces")[k], ring.pieces[k]);
    REQUIRE(json.at("cuts").size() == ring.cuts.size());
    for (std::size_t k = 0; k < ring.cuts.size(); ++k)
        check_cut(json.at("cuts")[k], ring.cuts[k]);
}

void check_straight(const Json& json, const Straight& straight) {
    CHECK(json.at("of") == straight.of);
    CHECK(json.at("part") == word(straight.part));
    CHECK(same(json.at("length"), straight.length));
    CHECK(same_point(json.at("start"), straight.start));
    CHECK(same_point(json.at("end"), straight.end));
    CHECK(same(json.at("start_distance"), straight.start_distance));
    CHECK(same(json.at("end_distance"), straight.end_distance));
    CHECK(json.at("start_by") == straight.start_by);
    CHECK(json.at("end_by") == straight.end_by);
    CHECK(json.at("tube") == straight.tube);
    CHECK(same(json.at("width"), straight.width));
    REQUIRE(json.at("tubes").size() == straight.tubes.size());
    for (std::size_t k = 0; k < straight.tubes.size(); ++k) {
        CHECK(json.at("tubes")[k].at("id") == straight.tubes[k].id);
        CHECK(same(json.at("tubes")[k].at("length"), straight.tubes[k].length));
        CHECK(same(json.at("tubes")[k].at("cut_length"), straight.tubes[k].cut_length));
        CHECK(json.at("tubes")[k].at("lap_short") == straight.tubes[k].lap_short);
    }
}

// The area that the written outline holds, by Green's theorem with its own arcs: what a reader of
// the file would reckon, from nothing but the file.
double area_of(const Json& loop) {
    double twice = 0;
    for (const Json& edge : loop.at("edges")) {
        const Vec2 from(edge.at("from").at(0), edge.at("from").at(1));
        const Vec2 to(edge.at("to").at(0), edge.at("to").at(1));
        twice += from.x() * to.y() - to.x() * from.y();
        if (edge.at("kind") == "line")
            continue;
        // The segment between the chord and the arc.
        const Vec2 centre(edge.at("centre").at(0), edge.at("centre").at(1));
        const double radius = edge.at("radius");
        CHECK((from - centre).norm() == Approx(radius).margin(3e-6));
        CHECK((to - centre).norm() == Approx(radius).margin(3e-6));
        const double start = std::atan2(from.y() - centre.y(), from.x() - centre.x());
        const double end = std::atan2(to.y() - centre.y(), to.x() - centre.x());
        double sweep = edge.at("clockwise").get<bool>() ? start - end : end - start;
        while (sweep <= 0)
            sweep += 2 * pi;
        const double segment = radius * radius * (sweep - std::sin(sweep));
        twice += edge.at("clockwise").get<bool>() ? -segment : segment;
    }
    return twice / 2;
}

void check_region(const Json& json, const Region& region) {
    REQUIRE(json.size() == region.loops.size());
    double area = 0;
    for (std::size_t k = 0; k < region.loops.size(); ++k) {
        CHECK(same(json[k].at("area"), region.loops[k].area));
        REQUIRE(json[k].at("edges").size() == region.loops[k].edges.size());
        CHECK(area_of(json[k]) == Approx(region.loops[k].area).margin(2e-4));
        area += area_of(json[k]);
        const Json& edges = json[k].at("edges");
        for (std::size_t e = 0; e < edges.size(); ++e)
            CHECK(edges[e].at("to") == edges[(e + 1) % edges.size()].at("from"));
    }
    CHECK(area == Approx(region.area).margin(4e-4));
}

} // namespace

void check_course(const Json& json, const Course& course) {
    CAPTURE(course.number);
    CHECK(json.at("number") == course.number);
    CHECK(same(json.at("bottom"), course.bottom));
    CHECK(same(json.at("middle"), course.middle));
    CHECK(same(json.at("top"), course.top));
    CHECK(json.at("below_floor") == course.below_floor);
    CHECK(json.at("top_measured") == course.top_measured);
    REQUIRE(json.at("straights").size() == course.straights.size());
    for (std::size_t k = 0; k < course.straights.size(); ++k)
        check_straight(json.at("straights")[k], course.straights[k]);
    check_region(json.at("region"), course.wall);
    CHECK(same(json.at("wall_area"), course.wall_area));
    CHECK(same(json.at("fill_volume"), course.fill_volume));
    CHECK(same(json.at("tube_length"), course.tube_length));
    CHECK(same(json.at("cut_length"), course.cut_length));
    CHECK(same(json.at("wire_length"), course.wire_length));
    REQUIRE(json.at("rings").size() == course.rings.size());
    for (std::size_t k = 0; k < course.rings.size(); ++k)
        check_ring(json.at("rings")[k], course.rings[k]);
    const auto check_notes = [](const Json& notes, const std::vector<SetNote>& wanted) {
        REQUIRE(notes.size() == wanted.size());
        for (std::size_t k = 0; k < wanted.size(); ++k)
            CHECK(notes[k] == Json{{"element", wanted[k].element},
                                   {"what", wanted[k].what},
                                   {"text", wanted[k].text}});
    };
    check_notes(json.at("set").at("before"), course.before);
    check_notes(json.at("set").at("after"), course.after);
}

} // namespace coilwright
