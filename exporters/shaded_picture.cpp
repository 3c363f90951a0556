#include "exporters/shaded_picture.hpp"

#include "exporters/materials.hpp"
#include "exporters/raster.hpp"
#include "geometry/views/mesh_edges.hpp"
#include "geometry/views/sight_block.hpp"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <limits>

namespace coilwright {
namespace {

constexpr int fine = 3;           // samples a side of a pixel
constexpr int sun_map = 2048;     // samples a side, of the sun's own view
constexpr double margin = 0.03;   // of the picture, left free
constexpr double sun_turn = 55;   // degrees from the viewer, to the left...
constexpr double sun_height = 42; // ...and above the level
constexpr double sunlight = 0.95, skylight = 0.55, groundlight = 0.22;
constexpr double edge_light = 0.12; // of a face's light is left on its edges
constexpr double lift = 0.02;       // m: a face does not shade itself

struct Face {
    std::array<Vec3, 3> corners; // in the building's frame
    std::array<Vec3, 3> normals; // of the round surface
    Vec3 flat{0, 0, 1};
    const MaterialLook* look = nullptr;
    bool backed = false; // by its own solid: it shows from its front alone
    bool shows_to(const Vec3& viewer) const { return !backed || flat.dot(viewer) > 0; }
};

void add_faces(std::vector<Face>& faces, const SolidPart& part) {
    const Mesh& mesh = part.mesh;
    const SmoothNormals normals = smooth_normals(mesh);
    for (std::size_t i = 0; i < mesh.triangles.size(); ++i) {
        if (!(normals.facets[i].norm() > 0.5))
            continue;
        Face face;
        face.flat = normals.facets[i];
        face.look = &look(part.material);
        face.backed = part.volume > 0;
        for (std::size_t k = 0; k < 3; ++k)
            face.corners[k] = mesh.vertices[mesh.triangles[i][k]];
        face.normals = normals.corners[i];
        faces.push_back(face);
    }
}

/// A parallel view of all faces on a raster: what is seen lies `per` samples to the metre from its
/// upper left corner, rows downwards.
struct Screen {
    SightFrame frame;
    double per = 1;
    Vec2 low{0, 0}, high{0, 0}; // of what is seen, metres in the view
    Vec2 shift{0, 0};           // samples
    Vec3 of(const Vec3& point) const {
        const Vec3 seen = frame.of(point);
        return {(seen.x() - low.x()) * per + shift.x(), (high.y() - seen.y()) * per + shift.y(),
                seen.z()};
    }
    std::array<Vec3, 3> of(const Face& face) const {
        return {of(face.corners[0]), of(face.corners[1]), of(face.corners[2])};
    }
};

Screen fit_screen(const std::vector<Face>& faces, const SightFrame& frame, double width,
                  double height, double free) {
    Screen screen;
    screen.frame = frame;
    screen.low = Vec2::Constant(std::numeric_limits<double>::infinity());
    screen.high = -screen.low;
    for (const Face& face : faces)
        for (const Vec3& corner : face.corners) {
            const Vec2 seen = frame.of(corner).head<2>();
            screen.low = screen.low.cwiseMin(seen);
            screen.high = screen.high.cwiseMax(seen);
        }
    const Vec2 size = (screen.high - screen.low).cwiseMax(1e-6);
    screen.per = std::min(width * (1 - 2 * free) / size.x(), height * (1 - 2 * free) / size.y());
    screen.shift = (Vec2(width, height) - screen.per * size) / 2;
    return screen;
}

/// How near to the sun the first face lies, along each of its rays.
class Shadows {
public:
    Shadows(const std::vector<Face>& faces, const SightFrame& sun)
        : screen_(fit_screen(faces, sun, sun_map, sun_map, 0.005)),
          nearest_(static_cast<std::size_t>(sun_map) * sun_map,
                   -std::numeric_limits<float>::infinity()) {
        for (const Face& face : faces) {
            if (!face.shows_to(sun.toward))
                continue;
            scan(screen_.of(face), sun_map, 0, sun_map,
                 [&](int column, int row, double depth, double, double) {
                     float& nearest = nearest_[index(column, row)];
                     nearest = std::max(nearest, static_cast<float>(depth));
                 });
        }
    }

    /// The share of the sun that reaches a point: the mean of four rays about it.
    double light(const Vec3& point) const {
        const Vec3 at = screen_.of(point);
        double sum = 0;
        for (const double dx : {-0.75, 0.75})
            for (const double dy : {-0.75, 0.75}) {
                const int column = static_cast<int>(std::floor(at.x() + dx));
                const int row = static_cast<int>(std::floor(at.y() + dy));
                const bool off = column < 0 || row < 0 || column >= sun_map || row >= sun_map;
                sum += off || nearest_[index(column, row)] < at.z() + lift ? 0.25 : 0;
            }
        return sum;
    }

private:
    static std::size_t index(int column, int row) {
        return static_cast<std::size_t>(row) * sun_map + static_cast<std::size_t>(column);
    }
    Screen screen_;
    std::vector<float> nearest_;
};

struct Sample {
    int face = -1;
    float depth = -std::numeric_limits<float>::infinity();
    float u = 0, v = 0;
};

/// A band of the raster: its rows, and one above them for the edges.
class Band {
public:
    /// `seen`: every face on the screen; `crossing`: which of them reach the band's rows.
    Band(const std::vector<std::array<Vec3, 3>>& seen, const std::vector<int>& crossing, int width,
         int first, int rows)
        : width_(width), first_(first - 1),
          samples_(static_cast<std::size_t>(width) * static_cast<std::size_t>(rows + 1)) {
        for (const int face : crossing)
            scan(seen[static_cast<std::size_t>(face)], width, first_, first + rows,
                 [&](int column, int row, double depth, double u, double v) {
                     if (row < first_)
                         return;
                     Sample& sample = samples_[index(column, row)];
                     if (const auto near = static_cast<float>(depth); near > sample.depth)
                         sample = {face, near, static_cast<float>(u), static_cast<float>(v)};
                 });
    }
    const Sample& at(int column, int row) const { return samples_[index(column, row)]; }

private:
    std::size_t index(int column, int row) const {
        return static_cast<std::size_t>(row - first_) * static_cast<std::size_t>(width_) +
               static_cast<std::size_t>(column);
    }
    int width_, first_;
    std::vector<Sample> samples_;
};

class Painter {
public:
    Painter(const std::vector<Face>& faces, const Screen& screen, const SightFrame& sun)
        : faces_(faces), screen_(screen), sun_(sun.toward), shadows_(faces, sun) {}

    Vec3 normal(const Sample& sample) const {
        const Face& face = faces_[static_cast<std::size_t>(sample.face)];
        const Vec3 sum = face.normals[0] * (1.0 - sample.u - sample.v) +
                         face.normals[1] * sample.u + face.normals[2] * sample.v;
        Vec3 unit = sum.norm() > 1e-6 ? Vec3(sum.normalized()) : face.flat;
        return unit.dot(screen_.frame.toward) < 0 ? Vec3(-unit) : unit;
    }

    /// Linear light that comes back from a sample.
    Vec3 colour(const Sample& sample) const {
        const Face& face = faces_[static_cast<std::size_t>(sample.face)];
        const Vec3 point = face.corners[0] +
                           static_cast<double>(sample.u) * (face.corners[1] - face.corners[0]) +
                           static_cast<double>(sample.v) * (face.corners[2] - face.corners[0]);
        const Vec3 unit = normal(sample);
        const double facing = unit.dot(sun_);
        const double sun = facing > 0 ? facing * shadows_.light(point + lift * unit) : 0;
        const double sky = groundlight + (skylight - groundlight) * (1 + unit.z()) / 2;
        const Vec3 albedo(face.look->red, face.look->green, face.look->blue);
        return albedo * (sunlight * sun + sky);
    }

    /// Whether an edge runs between two neighbouring samples.
    bool edge(const Sample& a, const Sample& b) const {
        if (a.face == b.face)
            return false;
        if (a.face < 0 || b.face < 0)
            return true;
        const Face &one = faces_[static_cast<std::size_t>(a.face)],
                   &other = faces_[static_cast<std::size_t>(b.face)];
        if (one.look != other.look)
            return true;
        const Vec3 n1 = normal(a), n2 = normal(b);
        if (n1.dot(n2) < crease_cosine)
            return true;
        // A step in depth that the slope of neither face explains.
        const double slope = std::max(0.05, std::min(std::abs(n1.dot(screen_.frame.toward)),
                                                     std::abs(n2.dot(screen_.frame.toward))));
        return std::abs(a.depth - b.depth) > 0.03 + 4 / (screen_.per * slope);
    }

private:
    const std::vector<Face>& faces_;
    const Screen& screen_;
    Vec3 sun_;
    Shadows shadows_;
};

/// lround(255 srgb_encoded(linear)), by the values at which it steps.
std::uint8_t encoded(double linear) {
    static const std::array<double, 255> steps = [] {
        std::array<double, 255> found{};
        for (std::size_t k = 0; k < found.size(); ++k)
            found[k] = srgb_decoded((static_cast<double>(k) + 0.5) / 255);
        return found;
    }();
    return static_cast<std::uint8_t>(std::upper_bound(steps.begin(), steps.end(), linear) -
                                     steps.begin());
}

std::size_t count(const Pixels& pixels) {
    return static_cast<std::size_t>(pixels.width) * static_cast<std::size_t>(pixels.height) * 3;
}

/// Takes off what would stay white: the margin is the same all round.
void crop(Screen& screen, Pixels& pixels) {
    const Vec2 size = screen.per * (screen.high - screen.low) / fine; // pixels
    const Vec2 whole(pixels.width, pixels.height);
    const double free = margin * whole.maxCoeff();
    pixels.width = std::min(pixels.width, static_cast<int>(std::ceil(size.x() + 2 * free)));
    pixels.height = std::min(pixels.height, static_cast<int>(std::ceil(size.y() + 2 * free)));
    screen.shift =
        (fine * Vec2(pixels.width, pixels.height) - screen.per * (screen.high - screen.low)) / 2;
}

/// A face that shows in a pixel, and the light that comes back from it there.
struct Lit {
    Sample middle; // of its samples in the pixel
    int samples = 0;
    Vec3 light{1, 1, 1}; // of what is no face: white
};

/// The faces in the pixel whose first sample is (column, row), each lit once, at the middle of its
/// samples: outlines are as fine as the samples, and shade is within its map's own softness.
void light_faces(std::vector<Lit>& lit, const Band& band, const Painter& painter, int column,
                 int row) {
    lit.clear();
    for (int i = 0; i < fine * fine; ++i) {
        const Sample& sample = band.at(column + i % fine, row + i / fine);
        auto known = std::find_if(lit.begin(), lit.end(),
                                  [&](const Lit& one) { return one.middle.face == sample.face; });
        if (known == lit.end())
            known = lit.insert(lit.end(), {{sample.face, 0, 0, 0}, 0, Vec3(1, 1, 1)});
        known->middle.u += sample.u;
        known->middle.v += sample.v;
        ++known->samples;
    }
    for (Lit& one : lit) {
        if (one.middle.face < 0)
            continue;
        one.middle.u /= static_cast<float>(one.samples);
        one.middle.v /= static_cast<float>(one.samples);
        one.light = painter.colour(one.middle);
    }
}

const Vec3& light_of(const std::vector<Lit>& lit, int face) {
    return std::find_if(lit.begin(), lit.end(),
                        [&](const Lit& one) { return one.middle.face == face; })
        ->light;
}

/// Whether a pixel's samples, and those left of and above it, are all of one face: then no edge
/// runs through it.
bool of_one_face(const Band& band, int column, int row) {
    const int face = band.at(column, row).face;
    for (int y = std::max(0, row - 1); y < row + fine; ++y)
        for (int x = std::max(0, column - 1); x < column + fine; ++x)
            if (band.at(x, y).face != face)
                return false;
    return true;
}

/// Linear light of the pixel whose first sample is (column, row). `lit` is kept for its memory.
Vec3 pixel_light(std::vector<Lit>& lit, const Band& band, const Painter& painter, int column,
                 int row) {
    const bool whole = of_one_face(band, column, row);
    if (whole && band.at(column, row).face < 0)
        return Vec3(1, 1, 1);
    light_faces(lit, band, painter, column, row);
    if (whole)
        return lit.front().light;
    Vec3 sum(0, 0, 0);
    for (int y = row; y < row + fine; ++y)
        for (int x = column; x < column + fine; ++x) {
            const Sample& sample = band.at(x, y);
            const bool drawn = (x > 0 && painter.edge(band.at(x - 1, y), sample)) ||
                               (y > 0 && painter.edge(band.at(x, y - 1), sample));
            sum += (drawn ? edge_light : 1.0) * light_of(lit, sample.face);
        }
    return sum / (fine * fine);
}

constexpr int band_rows = 8; // pixels: a band stays in the cache

/// The faces that may show in each band, or in the row of samples above it.
std::vector<std::vector<int>> sorted_into_bands(const std::vector<Face>& faces,
                                                const std::vector<std::array<Vec3, 3>>& seen,
                                                const Vec3& viewer, int height) {
    constexpr double band = band_rows * fine; // samples
    const int bands = (height + band_rows - 1) / band_rows;
    std::vector<std::vector<int>> sorted(static_cast<std::size_t>(bands));
    for (std::size_t i = 0; i < seen.size(); ++i) {
        if (!faces[i].shows_to(viewer))
            continue;
        const auto [low, high] = std::minmax({seen[i][0].y(), seen[i][1].y(), seen[i][2].y()});
        const int first = std::max(0, static_cast<int>(std::floor((low - 1) / band)));
        const int last = std::min(bands - 1, static_cast<int>(std::floor((high + 1) / band)));
        for (int k = first; k <= last; ++k)
            sorted[static_cast<std::size_t>(k)].push_back(static_cast<int>(i));
    }
    return sorted;
}

} // namespace

Pixels shaded_picture(const SolidModel& model, const PictureView& view) {
    Pixels pixels{view.width, view.height, {}};
    std::vector<Face> faces;
    for (const SolidPart& part : model.parts)
        add_faces(faces, part);
    if (faces.empty()) {
        pixels.values.assign(count(pixels), 255);
        return pixels;
    }
    Screen screen = fit_screen(faces, sight_from(view.from, view.pitch), view.width * fine,
                               view.height * fine, margin);
    crop(screen, pixels);
    pixels.values.resize(count(pixels));
    const int width = pixels.width * fine;
    // Who faces the building has the sun over the left shoulder: west of a viewer who stands south.
    const SightFrame sun = sight_from(turned(view.from, sun_turn), sun_height);
    const Painter painter(faces, screen, sun);
    std::vector<std::array<Vec3, 3>> seen;
    seen.reserve(faces.size());
    for (const Face& face : faces)
        seen.push_back(screen.of(face));
    const std::vector<std::vector<int>> bands =
        sorted_into_bands(faces, seen, screen.frame.toward, pixels.height);
    std::vector<Lit> lit; // of one pixel; kept for its memory
    for (int top = 0; top < pixels.height; top += band_rows) {
        const int rows = std::min(band_rows, pixels.height - top) * fine;
        const Band band(seen, bands[static_cast<std::size_t>(top / band_rows)], width, top * fine,
                        rows);
        for (int y = top; y < top + rows / fine; ++y)
            for (int x = 0; x < pixels.width; ++x) {
                const Vec3 light = pixel_light(lit, band, painter, x * fine, y * fine);
                const std::size_t at =
                    3 * (static_cast<std::size_t>(y) * static_cast<std::size_t>(pixels.width) +
                         static_cast<std::size_t>(x));
                for (int channel = 0; channel < 3; ++channel)
                    pixels.values[at + static_cast<std::size_t>(channel)] = encoded(light[channel]);
            }
    }
    return pixels;
}

} // namespace coilwright
