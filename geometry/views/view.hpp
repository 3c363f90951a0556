// A drawing in metres of the building, before it is laid on paper or written as DXF: lines by role,
// hatches, dimensions and names. Frame: x right, y up as the drawing is seen.
#pragma once

#include "geometry/drawing/straight_shapes.hpp"
#include "geometry/plan/region.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// What a line stands for. Each has its line weight on paper and its layer in a DXF file.
enum class LineRole {
    cut,    // what the plan or section cuts
    seen,   // edges beyond
    hidden, // edges behind or above, the ground's inside
    axis,   // poles, centrelines
    level,  // springlines, headroom
    ground,
    door,    // frames of doors
    glazing, // frames and panes of windows and vents
    trench,
    symbol // marks of sections
};

/// What a view shows.
enum class ViewKind { floor_plan, foundation, roof, section, elevation, detail, form };

/// A line; closed where it ends at its start.
struct ViewPath {
    LineRole role = LineRole::seen;
    Outline path;
};

/// A cut face: loops, even-odd.
struct ViewHatch {
    std::vector<Outline> loops;
};

/// A measure between two points along a direction. In a row, its line stands outside the view to
/// the left of `along`, the rows counted outwards from 0; else `offset` mm (on paper) to the left
/// of the farther point.
struct ViewDimension {
    Vec2 from{0, 0}, to{0, 0};
    Vec2 along{1, 0};
    int row = -1;
    double offset = 0;
    std::string text;
    std::string of;        // what is measured: "opening.door.width"
    bool optional = false; // left out of a sheet that has no room for it: a schedule tells it
    double measured() const { return along.dot(to - from); }
};

/// A name beside a point, put where nothing else stands.
struct ViewNote {
    std::string text;
    Vec2 target{0, 0};
    Vec2 outward{0, 1};
    double nearest = 4; // mm on paper, of the text's middle from the target
    bool bold = false;
    bool leader = true;
    bool optional = false; // as for dimensions
    double room = 0;       // metres: the name of a room of that radius about the target. It stands
                     // within, or elsewhere with a leader; what is optional, within or not at all
};

struct View {
    ViewKind kind = ViewKind::floor_plan;
    std::string id;    // "floor-plan"
    std::string title; // "Floor plan, cut 4 ft 0 in above the floor"
    bool north = false;
    double rim = 6; // mm on paper around the lines, before the first row of dimensions, for names
    std::vector<ViewHatch> hatches;
    std::vector<ViewPath> paths;
    std::vector<ViewDimension> dimensions;
    std::vector<ViewNote> notes;
};

void add_segment(View& view, LineRole role, Vec2 from, Vec2 to);
void add_whole_circle(View& view, LineRole role, Vec2 centre, double radius);
/// The boundary of a region as closed lines; hatched where it is cut.
void add_region(View& view, const Region& region, LineRole role, bool hatched);
/// A cross of two lines at a pole.
void add_pole(View& view, Vec2 at, double arm);

/// What the lines cover, metres. {0, 0} twice for a view without lines.
struct ViewExtent {
    Vec2 low{0, 0}, high{0, 0};
    Vec2 size() const { return high - low; }
    /// The greatest place along a direction.
    double farthest(Vec2 direction) const;
};
ViewExtent extent_of(const View& view);

/// Rows of dimensions left of a direction, of those that stand in rows.
int rows_beside(const View& view, Vec2 left);

} // namespace coilwright
