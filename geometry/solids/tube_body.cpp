#include "geometry/solids/tube_body.hpp"

#include "geometry/base/bearing.hpp"
#include "geometry/solids/patch.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace coilwright {

namespace {

constexpr double longest_chord = 7; // in widths of the facets beside it, so that none is a needle

/// Angle whose chord lies within `sag` of a circle.
double chord_angle(double radius, double sag) {
    return 2 * std::acos(std::max(0.5, 1 - sag / radius));
}

/// A stadium as columns from its inner tip to its outer one: a place across the tube, and how far
/// the outline lies above and below the middle there.
struct Column {
    double across, half_height;
};

/// The way a section is carried. Across is the distance from the pole on an arc, from the
/// centreline (to the right) on a line; along is an angle or a length.
struct Way {
    double inner = 0, width = 0; // across, of the inner tip; from tip to tip
    double bottom = 0, height = 0;
    double radius = 0; // of the outer tip's arc; 0: straight
    bool endless = false;
    std::function<double(double)> start, end; // along, by the place across

    Vec2 plan(double across, double along) const {
        return radius > 0 ? Vec2(across * std::cos(along), across * std::sin(along))
                          : Vec2(along, -across);
    }
    double across(const Vec2& plan) const { return radius > 0 ? plan.norm() : -plan.y(); }
    double metres(double along) const { return radius > 0 ? along * radius : along; }
};

constexpr double blunt = 0.004; // metres: two ends that run into each other leave this much

/// How much more than at the centreline a gap takes of a ring on another circle, radians. A gap
/// that does not reach that circle still keeps the two ends apart.
double shift(const std::optional<RingGap>& gap, double centre, double radius) {
    if (!gap)
        return 0;
    const double half = half_gap_degrees(*gap, radius) * radians_per_degree;
    return std::max(half, blunt / 2 / radius) - half_gap_degrees(*gap, centre) * radians_per_degree;
}

Way way_of(const TubeBody& body) {
    const double centre = body.inside_radius + body.width / 2;
    return {body.inside_radius,
            body.width,
            body.bottom,
            body.height,
            body.inside_radius + body.width,
            body.endless,
            [=](double r) { return body.start + shift(body.start_gap, centre, r); },
            [=](double r) { return body.end - shift(body.end_gap, centre, r); }};
}

/// Where a line beside the centreline leaves a round wall, ahead of its pole or behind it.
double wall_face(const std::optional<Disc>& wall, double across, double side, double square) {
    if (!wall)
        return square;
    const double off = -across - wall->centre.y();
    return wall->centre.x() +
           side * std::sqrt(std::max(0.0, wall->radius * wall->radius - off * off));
}

Way way_of(const StraightBody& body) {
    return {-body.width / 2,
            body.width,
            body.bottom,
            body.height,
            0,
            false,
            [=](double across) { return wall_face(body.start_wall, across, 1, 0); },
            [=](double across) { return wall_face(body.end_wall, across, -1, body.length); }};
}

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

/// What is left of a section where the tube's two ends run into each other on its inside or
/// outside: from where they stand `blunt` apart. Precondition: at its middle they do not meet.
std::vector<Column> clipped(const Way& way, std::vector<Column> columns) {
    const double middle = way.inner + way.width / 2, r = way.height / 2;
    const auto length = [&](double across) {
        return (way.end(across) - way.start(across)) * (way.radius > 0 ? across : 1);
    };
    const double least = std::min(blunt, length(middle) / 2);
    const auto limit = [&](double tip) {
        constexpr int steps = 64;
        double sound = middle;
        for (int i = 1; i <= steps; ++i) {
            double here = middle + (tip - middle) * i / steps;
            if (length(here) >= least) {
                sound = here;
                continue;
            }
            for (int halving = 0; halving < 40; ++halving)
                (length((sound + here) / 2) >= least ? sound : here) = (sound + here) / 2;
            return sound;
        }
        return tip;
    };
    const auto half_height = [&](double across) {
        const double in = std::min(across - way.inner, way.inner + way.width - across);
        return in >= r ? r : std::sqrt(std::max(0.0, r * r - (r - in) * (r - in)));
    };
    constexpr double apart = 1e-4; // metres between columns
    const double low = limit(way.inner), high = limit(way.inner + way.width);
    const auto drop = [&](const Column& column) {
        return (low > way.inner && column.across < low + apart) ||
               (high < way.inner + way.width && column.across > high - apart);
    };
    columns.erase(std::remove_if(columns.begin(), columns.end(), drop), columns.end());
    if (low > way.inner)
        columns.insert(columns.begin(), {low, half_height(low)});
    if (high < way.inner + way.width)
        columns.push_back({high, half_height(high)});
    return columns;
}

int quarter_edges(double height, double sag) {
    return std::max(2, static_cast<int>(std::ceil(pi / 2 / chord_angle(height / 2, sag) - 1e-9)));
}

class TubeMesher {
public:
    TubeMesher(const Way& way, double tolerance)
        : way_(way), edges_(quarter_edges(way.height, tolerance / 2)),
          columns_(clipped(way, stadium(way.inner, way.width, way.height, edges_))),
          blunt_inside_(columns_.front().half_height > 0),
          around_(2 * columns_.size() - (blunt_inside_ ? 0 : 1) -
                  (columns_.back().half_height > 0 ? 0 : 1)) {
        double longest = 0;
        for (const Column& column : columns_)
            longest =
                std::max(longest, way_.metres(way_.end(column.across) - way_.start(column.across)));
        // What the section leaves of the tolerance is the arc's: on the outer edge they add up.
        const double r = way_.height / 2;
        const double left = tolerance - r * (1 - std::cos(pi / 4 / edges_));
        double step = longest_chord * pi / 2 * r / edges_;
        if (way_.radius > 0)
            step = std::min(step, way_.radius * chord_angle(way_.radius, left));
        stations_ = std::max(way_.endless ? 8 : 1, static_cast<int>(std::ceil(longest / step)));
    }

    /// Triangles that build() will make, but for those of the end faces.
    double skin_triangles() const { return 2.0 * static_cast<double>(around_) * stations_; }

    void build() {
        for (int j = 0; j < (way_.endless ? stations_ : stations_ + 1); ++j)
            for (std::size_t i = 0; i < around_; ++i)
                mesh_.vertices.push_back(place(j, i));
        for (int j = 0; j < stations_; ++j)
            for (std::size_t i = 0; i < around_; ++i)
                add_quad(vertex(j, i), vertex(j + 1, i), vertex(j + 1, i + 1), vertex(j, i + 1));
        skin_ = mesh_.triangles.size();
        if (!way_.endless) {
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
        const double r = way_.height / 2, across = way_.across(at.head<2>());
        const double off = across - std::clamp(across, way_.inner + r, way_.inner + way_.width - r);
        return std::abs(std::hypot(off, at.z() - way_.bottom - r) - r);
    }

    // Round the section: under the columns from the inner tip to the outer, back above them.
    std::size_t under(std::size_t column) const { return column; }
    std::size_t over(std::size_t column) const {
        return (around_ - column - (blunt_inside_ ? 1 : 0)) % around_;
    }

    Vec3 place(int station, std::size_t i) const {
        const bool above = i >= columns_.size();
        const Column& column = columns_[above ? around_ - i - (blunt_inside_ ? 1 : 0) : i];
        const double start = way_.start(column.across);
        const double along = start + (way_.end(column.across) - start) * station / stations_;
        const Vec2 plan = way_.plan(column.across, along);
        return {plan.x(), plan.y(),
                way_.bottom + way_.height / 2 + (above ? column.half_height : -column.half_height)};
    }

    std::uint32_t vertex(int station, std::size_t i) const {
        const std::size_t ring = way_.endless ? station % stations_ : station;
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
        // A tip is one vertex, over and under at once.
        for (std::size_t c = 0; c + 1 < columns_.size(); ++c) {
            if (under(c + 1) != over(c + 1))
                add(under(c), under(c + 1), over(c + 1));
            if (under(c) != over(c))
                add(under(c), over(c + 1), over(c));
        }
    }

    Way way_;
    int edges_;
    std::vector<Column> columns_;
    bool blunt_inside_;  // the section has no inner tip, but an edge
    std::size_t around_; // vertices round the section
    int stations_ = 1;
    std::size_t skin_ = 0; // triangles but those of the end faces
    Mesh mesh_;
};

Mesh mesh_way(const Way& way, double tolerance) {
    TubeMesher mesher(way, tolerance);
    // Where a cut runs along the tube rather than across it, facets are drawn out: measured.
    double finer = tolerance;
    mesher.build();
    for (int trial = 0; trial < 12 && mesher.greatest_deviation() > tolerance; ++trial) {
        mesher = TubeMesher(way, finer *= 0.7);
        mesher.build();
    }
    return mesher.take_mesh();
}

} // namespace

Mesh mesh_tube(const TubeBody& body, double tolerance) {
    return mesh_way(way_of(body), tolerance);
}
Mesh mesh_straight(const StraightBody& body, double tolerance) {
    return mesh_way(way_of(body), tolerance);
}

double tube_triangles(const TubeBody& body, double tolerance) {
    return TubeMesher(way_of(body), tolerance).skin_triangles();
}
double straight_triangles(const StraightBody& body, double tolerance) {
    return TubeMesher(way_of(body), tolerance).skin_triangles();
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
