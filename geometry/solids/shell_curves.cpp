#include "geometry/solids/shell_curves.hpp"

#include "geometry/base/bearing.hpp"
#include "geometry/solids/curve_sampling.hpp"
#include "geometry/solids/near_lines.hpp"
#include "geometry/solids/section_trace.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace coilwright {

namespace {

constexpr double growth = 0.4;         // of edges, per metre away from a short stretch
constexpr double over_stretch = 1.5;   // edges beside a stretch, over its length
constexpr double least_feature = 2e-4; // metres: shorter stretches make nothing finer
constexpr double over_edge = 2;        // edges beside a curve's end, over those of that curve
constexpr double over_gap = 1.5;       // edges of a curve, over its distance from another
constexpr double far_apart = 0.15;     // metres
constexpr double beside_bend = 2;      // edges beside a bend, over the distance from it
constexpr double infinity = std::numeric_limits<double>::infinity();

class CurveSampler {
public:
    CurveSampler(const WallFaces& faces, double tolerance, ShellPlan& plan)
        : faces_(faces), plan_(plan), tolerance_(0.85 * tolerance), margin_(2 * tolerance),
          least_edge_(10 * tolerance), features_(plan.curves_of.size()) {}

    void run() {
        for (ShellCurve& curve : plan_.curves)
            if (curve.swept)
                find_breaks(curve);
        for (const ShellCurve& curve : plan_.curves)
            find_features(curve);
        find_near();
        spread_sizes();
        for (ShellCurve& curve : plan_.curves)
            sample(curve);
    }

private:
    struct Feature {
        Vec3 at;
        double size;
    };

    const SectionTrace* section_of(int face) const {
        return plan_.horizontal(face)
                   ? nullptr
                   : plan_.surfaces[static_cast<std::size_t>(face_of(face))]->section();
    }

    /// Kinks of the faces, clear of the curve's ends and of each other.
    void find_breaks(ShellCurve& curve) const {
        std::vector<double> kinks;
        for (const int face : curve.faces)
            kinks.insert(kinks.end(), section_of(face)->kinks().begin(),
                         section_of(face)->kinks().end());
        std::sort(kinks.begin(), kinks.end());
        double last = curve.low;
        for (const double z : kinks)
            if (z - last > margin_ && curve.high - z > margin_) {
                curve.breaks.push_back(z);
                last = z;
            }
    }

    double base_spacing(const ShellCurve& curve, double z) const {
        double least = infinity;
        for (const int face : curve.faces)
            if (const SectionTrace* section = section_of(face)) {
                const double edge = section->spacing_at(z), bend = section->way_to_kink(z);
                const double floor = std::isfinite(edge) ? edge / 4 : least_edge_;
                least = std::min({least, edge, std::max(beside_bend * bend, floor)});
            }
        return least;
    }

    void find_features(const ShellCurve& curve) {
        constexpr int parts = 8;
        RoughLine line{{place_on(faces_, curve, 0, 0)}, curve.from, curve.to};
        for (std::size_t k = 0; k < stretches_of(curve); ++k) {
            const Vec3 start = line.points.back();
            double length = 0;
            for (int i = 1; i <= (curve.from < 0 ? 4 * parts : parts); ++i) {
                const double share = static_cast<double>(i) / (curve.from < 0 ? 4 * parts : parts);
                const Vec3 next = place_on(faces_, curve, k, share);
                length += (next - line.points.back()).norm();
                line.points.push_back(next);
            }
            for (const int face : curve.faces)
                if (curve.from >= 0)
                    for (const Vec3& at : {start, line.points.back()})
                        features_[static_cast<std::size_t>(face)].push_back(
                            {at, std::max(over_stretch * length, least_feature)});
        }
        lines_.push_back(std::move(line));
    }

    /// Curves that run close beside each other want edges not much longer than they are apart.
    void find_near() {
        const std::size_t walls = 2 * plan_.surfaces.size();
        for (std::size_t face = 0; face < plan_.curves_of.size(); face += face < walls ? 2 : 1) {
            std::vector<int> curves = plan_.curves_of[face];
            if (face < walls) // both sides of a face
                curves.insert(curves.end(), plan_.curves_of[face + 1].begin(),
                              plan_.curves_of[face + 1].end());
            std::sort(curves.begin(), curves.end());
            curves.erase(std::unique(curves.begin(), curves.end()), curves.end());
            std::vector<const RoughLine*> lines;
            for (const int curve : curves)
                lines.push_back(&lines_[static_cast<std::size_t>(curve)]);
            for (const NearPlace& place : near_places(lines, far_apart)) {
                const ShellCurve& curve =
                    plan_.curves[static_cast<std::size_t>(curves[place.line])];
                const double base = base_spacing(curve, place.at.z());
                const double floor = std::isfinite(base) ? base / 8 : least_edge_;
                const double size = std::max(over_gap * place.distance, floor);
                if (size < base)
                    for (const int own : curve.faces)
                        features_[static_cast<std::size_t>(own)].push_back({place.at, size});
            }
        }
    }

    /// Edges that meet in a vertex are to be of like length: the finest of the curves there tells
    /// the others.
    void spread_sizes() {
        std::vector<std::vector<Feature>> ends(features_.size());
        for (const ShellCurve& curve : plan_.curves) {
            if (curve.from < 0)
                continue;
            const std::vector<Feature> near = features_near(curve);
            for (const int vertex : {curve.from, curve.to}) {
                const Vec3& at = plan_.mesh.vertices[static_cast<std::size_t>(vertex)];
                const double size = size_at(curve, near, at);
                for (const int face : curve.faces)
                    if (std::isfinite(size))
                        ends[static_cast<std::size_t>(face)].push_back({at, over_edge * size});
            }
        }
        for (std::size_t face = 0; face < ends.size(); ++face)
            features_[face].insert(features_[face].end(), ends[face].begin(), ends[face].end());
    }

    double size_at(const ShellCurve& curve, const std::vector<Feature>& features,
                   const Vec3& at) const {
        double size = base_spacing(curve, at.z());
        for (const Feature& feature : features)
            if (feature.size < size)
                size = std::min(size, feature.size + growth * (at - feature.at).norm());
        return size;
    }

    /// The features that can make a curve's edges shorter.
    std::vector<Feature> features_near(const ShellCurve& curve) const {
        const RoughLine& line = lines_[static_cast<std::size_t>(&curve - plan_.curves.data())];
        Vec3 low = line.points.front(), high = low;
        double largest = 0;
        for (const Vec3& point : line.points) {
            low = low.cwiseMin(point);
            high = high.cwiseMax(point);
            largest = std::max(largest, base_spacing(curve, point.z()));
        }
        std::vector<Feature> features;
        for (const int face : curve.faces)
            for (const Feature& feature : features_[static_cast<std::size_t>(face)]) {
                const double apart = (feature.at - feature.at.cwiseMax(low).cwiseMin(high)).norm();
                if (feature.size + growth * apart < largest)
                    features.push_back(feature);
            }
        return features;
    }

    std::uint32_t add_vertex(const Vec3& at) {
        plan_.mesh.vertices.push_back(at);
        return static_cast<std::uint32_t>(plan_.mesh.vertices.size() - 1);
    }

    void sample(ShellCurve& curve) {
        Chain& chain = curve.chain;
        chain.closed = curve.from < 0;
        const std::vector<Feature> near = features_near(curve);
        for (std::size_t k = 0; k < stretches_of(curve); ++k) {
            const CurveStretch stretch{
                [&](double share) { return place_on(faces_, curve, k, share); },
                [&](double share) {
                    return size_at(curve, near, place_on(faces_, curve, k, share));
                },
                0, 1};
            const std::vector<double> shares = spaced_parameters(stretch, tolerance_);
            if (k == 0)
                chain.vertices.push_back(curve.from < 0 ? add_vertex(stretch.at(0))
                                                        : static_cast<std::uint32_t>(curve.from));
            for (std::size_t i = 1; i + 1 < shares.size(); ++i)
                chain.vertices.push_back(add_vertex(stretch.at(shares[i])));
            if (k + 1 < stretches_of(curve)) {
                curve.break_vertices.push_back(add_vertex(stretch.at(1)));
                chain.vertices.push_back(curve.break_vertices.back());
            }
        }
        if (curve.to >= 0)
            chain.vertices.push_back(static_cast<std::uint32_t>(curve.to));
    }

    const WallFaces& faces_;
    ShellPlan& plan_;
    double tolerance_, margin_, least_edge_;
    std::vector<std::vector<Feature>> features_; // per face
    std::vector<RoughLine> lines_;               // per curve
};

} // namespace

Vec3 place_on(const WallFaces& faces, const ShellCurve& curve, std::size_t stretch, double share) {
    if (!curve.swept) {
        const Vec2 at = curve.way.at(share);
        return {at.x(), at.y(), curve.z};
    }
    const double low = stretch == 0 ? curve.low : curve.breaks[stretch - 1];
    const double high = stretch == curve.breaks.size() ? curve.high : curve.breaks[stretch];
    // Slow at both ends, where a corner that starts or ends in a tangent runs away.
    const double z = low + (high - low) * (1 - std::cos(pi * share)) / 2;
    const Vec2 at = corner_at(faces, curve.corner, z).at;
    return {at.x(), at.y(), z};
}

void sample_curves(const WallFaces& faces, double tolerance, ShellPlan& plan) {
    CurveSampler(faces, tolerance, plan).run();
}

} // namespace coilwright
