// The figures, tubes and cuts of a course's sheet as tables.
#pragma once

#include "geometry/drawing/page.hpp"
#include "geometry/drawing/scale.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// A figure with its name: "Step-in from course 11", "1-1/8 in".
struct Fact {
    std::string name;
    std::string value;
};

std::vector<Fact> course_facts(const Drafting& drafting, const Course& course, const Ring& ring,
                               const Ring* below, const DomeForm& dome);
/// Draws facts one below the other, the value bold at the right, its name beside it a little
/// smaller than `size`; returns the y where they end.
double add_facts(Sheet& sheet, Vec2 top_left, double width, const std::vector<Fact>& facts,
                 double size, const MeasureText& measure);
double facts_height(const std::vector<Fact>& facts, double width, double size,
                    const MeasureText& measure);

/// Tube, length along its centre, length to cut; "*" where a joint could not keep its lap.
Table tube_table(const Drafting& drafting, const Ring& ring);
/// The same rows in two columns side by side.
Table in_two(const Table& table);
/// What the cut lengths hold, and what "*" means where it stands.
std::vector<std::string> tube_remarks(const Drafting& drafting, const Ring& ring);

/// Letter, opening, side, way round, bearing from the datum, arc, chord, half-width.
Table cut_table(const Drafting& drafting, const Ring& ring, const DomeForm& dome);

/// The plan's scale and what its marks mean.
std::string plan_legend(const Ring& ring, const Ring* below, const Scale& scale);

} // namespace coilwright
