#include "geometry/solids/tube_body.hpp"

#include "geometry/base/bearing.hpp"
#include "geometry/solids/patch.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

constexpr double longest_chord = 7; // in widths of the facets beside it, so that none is a needle

/// Angle whose chord lies within `sag` of a circle.
double chord_angle(double radius, double sag) {
    return 2 * std::acos(std::max(0.5, 1 - sag / radius));
}

/// A stadium as columns from its inner tip to its outer one: a radius, and how far the outline lies
/// above and below the middle there.
struct Column {
    double radius, half_height;
};

std::vector<Column> stadium(double inside, double width, double height, int quarter_edges) {
    const double r = height / 2;
    std::vector<Column> columns;
    for (const bool outer : {false, true})
        for (int k = 0; k <= quarter_edges; ++k) {
            const double angle = pi / 2 * (outer ? quarter_edges - k : k) / quarter_edges;
            const double reach = r * std::cos(angle);
            columns.push_back(
                {outer ? inside + width - r + reach : inside + r - reach, r * std::sin(angle)});
        }
    columns.front().half_height = columns.back().half_height = 0;
    return columns;
}

int quarter_edges(double height, double sag) {
    return std::max(2, static_cast<int>(std::ceil(pi / 2 / chord_angle(height / 2, sag) - 1e-9)));
}

class TubeMesher {
public:
    TubeMesher(const TubeBody& body, double tolerance)
        : body_(body), edges_(quarter_edges(body.height, tolerance / 2)),
          columns_(stadium(body.inside_radius, body.width, body.height, edges_)),
          around_(2 * columns_.size() - 2) {
        double longest = 0;
        for (const Column& column : columns_)
            longest = std::max(longest, end_angle(column.radius) - start_angle(column.radius));
        // What the section leaves of the tolerance is the arc's: on the outer edge they add up.
        const double r = body.height / 2, outside = body.inside_radius + body.width;
        const double left = tolerance - r * (1 - std::cos(pi / 4 / edges_));
        const double facet = pi / 2 * r / edges_;
        const double step = std::min(chord_angle(outside, left), longest_chord * facet / outside);
        stations_ = std::max(body.endless ? 8 : 1, static_cast<int>(std::ceil(longest / step)));
    }

    /// Triangles that build() will make, but for those of the end faces.
    double skin_triangles() const { return 2.0 * static_cast<double>(around_) * stations_; }

    void build() {
        for (int j = 0; j < (body_.endless ? stations_ : stations_ + 1); ++j)
            for (std::size_t i = 0; i < around_; ++i)
                mesh_.vertices.push_back(place(j, i));
        for (int j = 0; j < stations_; ++j)
            for (std::size_t i = 0; i < around_; ++i)
                add_quad(vertex(j, i), vertex(j + 1, i), vertex(j + 1, i + 1), vertex(j, i + 1));
        skin_ = mesh_.triangles.size();
        if (!body_.endless) {
            add_end(0, false);
            add_end(stations_, true);
        }
    }

    Mesh take_mesh() { return std::move(mesh_); }

    /// Of facets and edges of the skin from the true body, at their middles.
    double greatest_deviation() const {
        double most = 0;
        for (std::size_t t = 0; t < skin_; ++t) {
            const auto& [i, j, k] = mesh_.triangles[t];
            const Vec3 &a = mesh_.vertices[i], &b = mesh_.vertices[j], &c = mesh_.vertices[k];
            for (const Vec3& at :
                 {Vec3((a + b + c) / 3), Vec3((a + b) / 2), Vec3((b + c) / 2), Vec3((c + a) / 2)})
                most = std::max(most, deviation(at));
        }
        return most;
    }

private:
    double deviation(const Vec3& at) const {
        const double r = body_.height / 2, radius = at.head<2>().norm();
        const double inner = body_.inside_radius + r;
        const double outer = body_.inside_radius + body_.width - r;
        const double off = radius - std::clamp(radius, inner, outer);
        return std::abs(std::hypot(off, at.z() - body_.bottom - r) - r);
    }

    double shift(const std::optional<double>& cut, double radius) const {
        const double centre = body_.inside_radius + body_.width / 2;
        return cut ? std::asin(*cut / radius) - std::asin(*cut / centre) : 0;
    }
    double start_angle(double radius) const { return body_.start + shift(body_.start_cut, radius); }
    double end_angle(double radius) const { return body_.end - shift(body_.end_cut, radius); }

    // Round the section: under the columns from the inner tip to the outer, back above them.
    std::size_t under(std::size_t column) const { return column; }
    std::size_t over(std::size_t column) const { return (around_ - column) % around_; }

    Vec3 place(int station, std::size_t i) const {
        const bool above = i >= columns_.size();
        const Column& column = columns_[above ? around_ - i : i];
        const double start = start_angle(column.radius);
        const double angle = start + (end_angle(column.radius) - start) * station / stations_;
        return {column.radius * std::cos(angle), column.radius * std::sin(angle),
                body_.bottom + body_.height / 2 +
                    (above ? column.half_height : -column.half_height)};
    }

    std::uint32_t vertex(int station, std::size_t i) const {
        const std::size_t ring = body_.endless ? station % stations_ : station;
        return static_cast<std::uint32_t>(ring * around_ + i % around_);
    }

    /// Corners anticlockwise from outside, divided along the shorter diagonal.
    void add_quad(std::uint32_t a, std::uint32_t b, std::uint32_t c, std::uint32_t d) {
        const auto& v = mesh_.vertices;
        if ((v[a] - v[c]).squaredNorm() <= (v[b] - v[d]).squaredNorm()) {
            mesh_.triangles.push_back({a, b, c});
            mesh_.triangles.push_back({a, c, d});
        } else {
            mesh_.triangles.push_back({a, b, d});
            mesh_.triangles.push_back({b, c, d});
        }
    }

    /// An end face, in strips from column to column.
    void add_end(int station, bool last) {
        const auto add = [&](std::size_t a, std::size_t b, std::size_t c) {
            if (last)
                std::swap(b, c);
            mesh_.triangles.push_back({vertex(station, a), vertex(station, b), vertex(station, c)});
        };
        for (std::size_t c = 0; c + 1 < columns_.size(); ++c) {
            if (c + 2 < columns_.size())
                add(under(c), under(c + 1), over(c + 1));
            if (c > 0)
                add(under(c), c + 2 < columns_.size() ? over(c + 1) : under(c + 1), over(c));
        }
    }

    TubeBody body_;
    int edges_;
    std::vector<Column> columns_;
    std::size_t around_; // vertices round the section
    int stations_ = 1;
    std::size_t skin_ = 0; // triangles but those of the end faces
    Mesh mesh_;
};

} // namespace

Mesh mesh_tube(const TubeBody& body, double tolerance) {
    TubeMesher mesher(body, tolerance);
    // Where a cut runs along the tube rather than across it, facets are drawn out: measured.
    double finer = tolerance;
    mesher.build();
    for (int trial = 0; trial < 12 && mesher.greatest_deviation() > tolerance; ++trial) {
        mesher = TubeMesher(body, finer *= 0.7);
        mesher.build();
    }
    return mesher.take_mesh();
}

double tube_triangles(const TubeBody& body, double tolerance) {
    return TubeMesher(body, tolerance).skin_triangles();
}

Mesh mesh_disc(double radius, double bottom, double height, double tolerance) {
    const double r = height / 2;
    const int edges = 2 * quarter_edges(height, tolerance / 2);
    const double left = tolerance - r * (1 - std::cos(pi / 2 / edges));
    const double facet = pi * r / edges;
    const double step = std::min(chord_angle(radius, left), longest_chord * facet / radius);
    const auto around = static_cast<std::uint32_t>(std::ceil(2 * pi / step));
    Mesh mesh;
    const auto vertex = [&](int ring, std::uint32_t i) { return ring * around + i % around; };
    for (int ring = 0; ring <= edges; ++ring)
        for (std::uint32_t i = 0; i < around; ++i) {
            const double up = pi * ring / edges - pi / 2,
                         angle = 2 * pi * (i + ring % 2 / 2.0) / around;
            const double at = radius - r + r * std::cos(up);
            mesh.vertices.emplace_back(at * std::cos(angle), at * std::sin(angle),
                                       bottom + r + r * std::sin(up));
        }
    for (int ring = 0; ring < edges; ++ring)
        for (std::uint32_t i = 0; i < around; ++i) {
            // Every other ring is turned by half a step.
            const std::uint32_t a = vertex(ring, i), b = vertex(ring, i + 1);
            const std::uint32_t c = vertex(ring + 1, i), d = vertex(ring + 1, i + 1);
            if (ring % 2 == 0) {
                mesh.triangles.push_back({a, b, c});
                mesh.triangles.push_back({b, d, c});
            } else {
                mesh.triangles.push_back({a, d, c});
                mesh.triangles.push_back({a, b, d});
            }
        }
    for (const bool top : {false, true}) {
        const LevelSurface level(top ? bottom + height : bottom);
        Chain rim{{}, true, {}};
        for (std::uint32_t i = 0; i < around; ++i)
            rim.vertices.push_back(vertex(top ? edges : 0, i));
        mesh_patch({&level, {rim}, {}, !top}, tolerance, mesh);
    }
    return mesh;
}

double disc_volume(double radius, double height) {
    const double r = height / 2, flat = radius - r;
    const double rim_centroid = flat + 4 * r / (3 * pi);
    return pi * flat * flat * height + 2 * pi * rim_centroid * (pi * r * r / 2);
}

} // namespace coilwright
