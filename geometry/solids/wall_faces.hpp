// The faces of a building's wall: what each side of each shape in its plan sweeps as the height
// grows.
#pragma once

#include "geometry/plan/building_form.hpp"
#include "geometry/solids/surface.hpp"

#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace coilwright {

/// One face: a circle about a centre, or a line square to `outward`, whose distance from the centre
/// depends on the height without a jump. Walked with the shape on its left. What jumps is several
/// faces, one above the other; an opening's jamb and head are two.
struct WallFace {
    SectionTag tag;
    int side = 0; // of a box: right of its axis, far end, left, near end
    bool circle = false;
    Vec2 centre{0, 0};
    Vec2 outward{1, 0}; // of a line
    double low = 0, high = 0;
    std::vector<double> breaks; // heights inside at which it may bend
    std::function<double(double)> formula;
    std::string element; // "dome.vault"

    /// Also at both its ends; beyond them as there.
    double offset(double z) const { return formula(z < low ? low : z > high ? high : z); }
    Vec2 along() const { return {-outward.y(), outward.x()}; } // of a line
};

/// A height at which a formula starts or ends.
struct KnownHeight {
    double z = 0;
    std::string element;
};

class WallFaces {
public:
    /// Keeps a reference to the building.
    explicit WallFaces(const BuildingForm& building);

    const WallFace& operator[](int face) const { return faces_[static_cast<std::size_t>(face)]; }
    int size() const { return static_cast<int>(faces_.size()); }
    /// The face that a side of a shape lies on at a height.
    int find(const SectionTag& tag, int side, double z) const;
    /// Heights at which faces start or end, and the floor where tunnels open; ascending, those
    /// within height_tie one.
    const std::vector<KnownHeight>& heights() const { return heights_; }
    double bottom() const { return bottom_; }
    double top() const { return top_; }
    const BuildingForm& building() const { return building_; }
    const WallRelations& relations() const { return relations_; }

    /// The face as a surface; the front looks out of the shape.
    std::unique_ptr<Surface> surface(int face, double tolerance) const;

private:
    void add_dome(int index);
    void add_tunnel(int index);
    void add_pier(int index);
    void add_opening(int index, double bottom, const DomeForm* dome);
    void add_sides(const WallFace& like, const Vec2& origin, const Vec2& axis,
                   const std::vector<std::function<double(double)>>& offsets,
                   const std::vector<std::vector<double>>& breaks);
    void add(WallFace face);
    void tie_heights();
    std::vector<int>& faces_of(const SectionTag& tag);

    const BuildingForm& building_;
    WallRelations relations_;
    std::vector<WallFace> faces_;
    std::vector<std::vector<int>> by_tag_;
    std::vector<std::size_t> first_tag_;
    std::vector<KnownHeight> heights_;
    double bottom_ = 0, top_ = 0;
};

} // namespace coilwright
