// The figures, tubes and cuts of a course's sheet as tables.
#pragma once

#include "geometry/drawing/course_part.hpp"
#include "geometry/drawing/facts.hpp"
#include "geometry/drawing/page.hpp"
#include "geometry/drawing/scale.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// Of a dome's course, and of a tunnel's.
std::vector<Fact> course_facts(const Drafting& drafting, const CoursePart& part,
                               const CoursePart* below);
std::vector<Fact> tunnel_facts(const Drafting& drafting, const CoursePart& part);
/// A short bag as tables name it: "F1L bed", "N1 shelf", "W1"; of a second wythe with "outer".
std::string piece_name(const Ring& ring, const Piece& piece);
/// Tube or bag, length along its centre, length to cut; "*" where a joint could not keep its lap.
Table tube_table(const Drafting& drafting, const CoursePart& part);
/// The same rows in two columns side by side.
Table in_two(const Table& table);
/// What to do with tubes shorter than a tube is wide; empty where there are none.
std::string short_tube_remark(const CoursePart& part);
/// What the cut lengths hold, and what "*" means where it stands.
std::vector<std::string> tube_remarks(const Drafting& drafting, const CoursePart& part);

/// Letter, opening, side, way round, bearing from the datum, arc, chord, half-width.
Table cut_table(const Drafting& drafting, const CoursePart& part);

/// The plan's scale and what its marks mean.
std::string plan_legend(const Drafting& drafting, const CoursePart& part, const CoursePart* below,
                        const Scale& scale);

} // namespace coilwright
