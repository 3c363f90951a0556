// The vertical section of a surface: how far it lies from an axis at every height.
#pragma once

#include "geometry/base/vec.hpp"

#include <functional>
#include <vector>

namespace coilwright {

/// Offset from an axis as a function of height; it only grows or only shrinks with height.
struct Section {
    std::function<double(double)> offset;
    double low = 0, high = 0;   // heights between which the surface reaches
    std::vector<double> breaks; // heights inside at which its direction or curvature may jump
};

/// A section as places along it, close enough for a straight line between two to be taken for the
/// curve itself when distances from it are measured.
class SectionTrace {
public:
    struct Node {
        double z = 0, offset = 0;
        double arc = 0;     // along the section from its low end
        double spacing = 0; // edge length wanted there
        bool is_break = false;
    };
    /// Edge length for the tolerance at a place, from the section's curvature, the rise of its
    /// direction (1: upright) and the offset; may be infinite.
    using Spacing = std::function<double(double bend, double upright, double offset)>;

    SectionTrace(const Section& section, double tolerance, const Spacing& spacing);

    const std::vector<Node>& nodes() const { return nodes_; }
    /// The breaks at which the direction does jump, upward.
    const std::vector<double>& kinks() const { return kinks_; }
    bool is_kink(double z) const;

    /// The node at or above a height, never the first.
    std::size_t above(double z) const;
    double between(double z, double Node::*value) const;
    double spacing_at(double z) const { return between(z, &Node::spacing); }
    double arc_at(double z) const { return between(z, &Node::arc); }
    double height_at_arc(double arc) const;
    /// Way along the section from a height to the nearest kink; infinite if there is none.
    double way_to_kink(double z) const;
    /// The kink within reach of a height, along the section.
    const double* kink_near(double z, double reach) const;
    /// Where on the way between two heights a kink is passed (0..1); negative if none is.
    double kink_between(double from, double to) const;
    /// Distance of a point of the section's plane that lies near it.
    double distance(double offset, double z) const;
    /// Heights of rows of points at the spacing, one on every kink, none at the ends; rows of an
    /// even number are to be shifted by half a step.
    std::vector<double> rows() const;

private:
    void trace(const Section& section, double tolerance);
    void refine(const Section& section, const Node& from, const Node& to, double error,
                double longest, int depth);
    void set_spacings(const Spacing& spacing);
    void limit_between_kinks();

    std::vector<Node> nodes_;
    std::vector<double> kinks_;
    double sign_ = 1; // height less this times the offset grows all along the section
};

} // namespace coilwright
