#include "geometry/solids/section_trace.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace coilwright {

namespace {

constexpr double growth = 0.3;       // of the spacing, per metre along the section
constexpr double least_kink = 0.005; // radians
constexpr double infinity = std::numeric_limits<double>::infinity();

} // namespace

SectionTrace::SectionTrace(const Section& section, double tolerance, const Spacing& spacing) {
    trace(section, tolerance);
    sign_ = nodes_.back().offset > nodes_.front().offset ? -1 : 1;
    set_spacings(spacing);
}

void SectionTrace::trace(const Section& section, double tolerance) {
    std::vector<double> heights{section.low, section.high};
    for (const double z : section.breaks)
        if (z > section.low + 1e-5 && z < section.high - 1e-5)
            heights.push_back(z);
    std::sort(heights.begin(), heights.end());
    const auto close = [](double a, double b) { return b - a < 1e-5; };
    heights.erase(std::unique(heights.begin(), heights.end(), close), heights.end());
    const auto node_at = [&](double z) { return Node{z, section.offset(z), 0, 0, true}; };
    const double longest =
        (section.high - section.low + std::abs(section.offset(section.low))) / 64;
    nodes_.push_back(node_at(heights.front()));
    for (std::size_t i = 1; i < heights.size(); ++i)
        refine(section, nodes_.back(), node_at(heights[i]), tolerance / 200, longest, 0);
    for (std::size_t i = 1; i < nodes_.size(); ++i)
        nodes_[i].arc = nodes_[i - 1].arc + std::hypot(nodes_[i].offset - nodes_[i - 1].offset,
                                                       nodes_[i].z - nodes_[i - 1].z);
}

// Appends nodes after `from` up to and with `to`. Halving the height also resolves the crown of a
// curve that ends level, where the offset runs away.
void SectionTrace::refine(const Section& section, const Node& from, const Node& to, double error,
                          double longest, int depth) {
    const double z = (from.z + to.z) / 2;
    const Node middle{z, section.offset(z), 0, 0, false};
    const Vec2 chord(to.offset - from.offset, to.z - from.z);
    const Vec2 off(middle.offset - from.offset, middle.z - from.z);
    const double length = chord.norm();
    const double deviation = std::abs(chord.x() * off.y() - chord.y() * off.x()) / length;
    if (depth < 30 && (length > longest || deviation > error || depth < 2)) {
        const Node start = from; // `from` may live in the vector that grows
        refine(section, start, middle, error, longest, depth + 1);
        refine(section, middle, to, error, longest, depth + 1);
    } else {
        nodes_.push_back(to);
    }
}

void SectionTrace::set_spacings(const Spacing& spacing) {
    const std::size_t count = nodes_.size();
    const auto direction = [&](std::size_t i) { // of the line that starts at node i
        return Vec2(nodes_[i + 1].offset - nodes_[i].offset, nodes_[i + 1].z - nodes_[i].z)
            .normalized();
    };
    std::vector<double> bend(count, 0), turns(count, 0); // curvature of the section
    for (std::size_t i = 1; i + 1 < count; ++i) {
        const Vec2 u = direction(i - 1), v = direction(i);
        turns[i] = std::abs(std::atan2(u.x() * v.y() - u.y() * v.x(), u.dot(v)));
        bend[i] = 2 * turns[i] / (nodes_[i + 1].arc - nodes_[i - 1].arc);
        if (turns[i] < 1e-9) // rounding of a straight line
            bend[i] = 0;
    }
    for (std::size_t i = 0; i < count; ++i) {
        if (!nodes_[i].is_break)
            continue;
        bend[i] = std::max(i > 0 ? bend[i - 1] : 0, i + 1 < count ? bend[i + 1] : 0);
        const bool inner = i > 0 && i + 1 < count;
        if (inner && turns[i] > least_kink + bend[i] * (nodes_[i + 1].arc - nodes_[i - 1].arc))
            kinks_.push_back(nodes_[i].z);
    }
    for (std::size_t i = 0; i < count; ++i)
        nodes_[i].spacing =
            spacing(bend[i], direction(std::min(i, count - 2)).y(), nodes_[i].offset);
    limit_between_kinks();
    const auto limit = [&](std::size_t i, std::size_t by) {
        const double apart = std::abs(nodes_[i].arc - nodes_[by].arc);
        nodes_[i].spacing = std::min(nodes_[i].spacing, nodes_[by].spacing + growth * apart);
    };
    for (std::size_t i = 1; i < count; ++i)
        limit(i, i - 1);
    for (std::size_t i = count - 1; i-- > 0;)
        limit(i, i + 1);
}

/// Lines that lie close together want edges not much longer than they are apart.
void SectionTrace::limit_between_kinks() {
    std::size_t last = 0;
    for (std::size_t i = 1; i < nodes_.size(); ++i) {
        if (i + 1 < nodes_.size() && !is_kink(nodes_[i].z))
            continue;
        const double apart = nodes_[i].arc - nodes_[last].arc;
        for (const std::size_t end : {last, i})
            if (std::isfinite(nodes_[end].spacing))
                nodes_[end].spacing =
                    std::min(nodes_[end].spacing, std::max(1.5 * apart, nodes_[end].spacing / 8));
        last = i;
    }
}

bool SectionTrace::is_kink(double z) const {
    return std::binary_search(kinks_.begin(), kinks_.end(), z);
}

std::size_t SectionTrace::above(double z) const {
    const auto found =
        std::upper_bound(nodes_.begin(), nodes_.end(), z,
                         [](double height, const Node& node) { return height < node.z; });
    return static_cast<std::size_t>(std::clamp(found, nodes_.begin() + 1, nodes_.end() - 1) -
                                    nodes_.begin());
}

double SectionTrace::between(double z, double Node::*value) const {
    const std::size_t i = above(z);
    const Node &low = nodes_[i - 1], &high = nodes_[i];
    const double share = std::clamp((z - low.z) / (high.z - low.z), 0.0, 1.0);
    if (share == 0 || low.*value == high.*value) // both may be infinite
        return low.*value;
    return share == 1 ? high.*value : low.*value + share * (high.*value - low.*value);
}

double SectionTrace::height_at_arc(double arc) const {
    auto found =
        std::upper_bound(nodes_.begin(), nodes_.end(), arc,
                         [](double wanted, const Node& node) { return wanted < node.arc; });
    found = std::clamp(found, nodes_.begin() + 1, nodes_.end() - 1);
    const Node &low = found[-1], &high = found[0];
    const double share = std::clamp((arc - low.arc) / (high.arc - low.arc), 0.0, 1.0);
    return low.z + share * (high.z - low.z);
}

double SectionTrace::way_to_kink(double z) const {
    double nearest = infinity;
    for (const double kink : kinks_)
        nearest = std::min(nearest, std::abs(arc_at(kink) - arc_at(z)));
    return nearest;
}

const double* SectionTrace::kink_near(double z, double reach) const {
    for (const double& kink : kinks_)
        if (std::abs(arc_at(kink) - arc_at(z)) < reach)
            return &kink;
    return nullptr;
}

double SectionTrace::kink_between(double from, double to) const {
    for (const double kink : kinks_)
        if ((from - kink) * (to - kink) < 0)
            return (kink - from) / (to - from);
    return -1;
}

double SectionTrace::distance(double offset, double z) const {
    auto found = std::upper_bound(
        nodes_.begin(), nodes_.end(), z - sign_ * offset,
        [this](double key, const Node& node) { return key < node.z - sign_ * node.offset; });
    found = std::clamp(found, nodes_.begin() + 1, nodes_.end() - 1);
    const Node &low = found[-1], &high = found[0];
    const Vec2 chord(high.offset - low.offset, high.z - low.z);
    const Vec2 off(offset - low.offset, z - low.z);
    return std::abs(chord.x() * off.y() - chord.y() * off.x()) / chord.norm();
}

std::vector<double> SectionTrace::rows() const {
    std::vector<double> heights;
    std::size_t start = 0;
    for (std::size_t end = 1; end < nodes_.size(); ++end) {
        const bool last = end + 1 == nodes_.size();
        if (!last && !is_kink(nodes_[end].z))
            continue;
        // Steps between rows: sqrt(3)/2 of an edge, added up along the stretch.
        std::vector<double> steps{0};
        for (std::size_t i = start; i < end; ++i)
            steps.push_back(steps.back() + (nodes_[i + 1].arc - nodes_[i].arc) /
                                               (std::sqrt(0.75) *
                                                (nodes_[i].spacing + nodes_[i + 1].spacing) / 2));
        const int rows = std::max(1, static_cast<int>(std::lround(steps.back())));
        for (int j = 1; j < rows + (last ? 0 : 1); ++j) {
            const double wanted = steps.back() * j / rows;
            const std::size_t i = static_cast<std::size_t>(
                std::lower_bound(steps.begin() + 1, steps.end() - 1, wanted) - steps.begin());
            const double share = (wanted - steps[i - 1]) / (steps[i] - steps[i - 1]);
            const Node &low = nodes_[start + i - 1], &high = nodes_[start + i];
            heights.push_back(j == rows ? nodes_[end].z : low.z + share * (high.z - low.z));
        }
        start = end;
    }
    return heights;
}

} // namespace coilwright
