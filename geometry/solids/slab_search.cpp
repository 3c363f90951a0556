#include "geometry/solids/slab_search.hpp"

#include "geometry/plan/plan_outline.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace coilwright {

namespace {

constexpr double least_slab = 1e-12; // how far halving goes on
constexpr double one_event = 1e-7;   // events nearer than this are one
constexpr int deepest = 6;           // of searches within searches

struct Sample {
    double z;
    WallTopology topology;
};

double off_face(const WallFace& face, const Vec2& at, double z) {
    return face.circle ? (at - face.centre).norm() - face.offset(z)
                       : face.outward.dot(at - face.centre) - face.offset(z);
}

/// Where a function changes its sign between two heights, to the last digit.
std::optional<double> root(const std::function<double(double)>& value, double low, double high) {
    double at_low = value(low), at_high = value(high);
    if (!(at_low * at_high < 0))
        return std::nullopt;
    for (int i = 0; i < 200 && high - low > 4e-16 * (std::abs(low) + std::abs(high)); ++i) {
        // Secant and halving by turns.
        double z = (low + high) / 2;
        if (i % 2 == 0 && i < 40) {
            const double secant = low + (high - low) * at_low / (at_low - at_high);
            if (secant > low && secant < high)
                z = secant;
        }
        const double at = value(z);
        if (at == 0)
            return z;
        if ((at < 0) == (at_low < 0)) {
            low = z;
            at_low = at;
        } else {
            high = z;
            at_high = at;
        }
    }
    return (low + high) / 2;
}

class SlabFinder {
public:
    SlabFinder(const WallFaces& faces, const std::vector<bool>& wanted, double step)
        : faces_(faces), wanted_(wanted), step_(step) {}

    bool run(const std::vector<double>& known) {
        for (std::size_t i = 1; i < known.size(); ++i)
            if (!add_between(known[i - 1], known[i])) {
                failed_at_ = known[i - 1];
                return false;
            }
        return true;
    }
    std::vector<WallSlab> slabs() && { return std::move(slabs_); }
    double failed_at() const { return failed_at_; }

private:
    bool add_between(double low, double high) {
        // Formulas end within height_tie of a known height.
        const double height = high - low, near = 2 * height_tie;
        std::vector<double> heights;
        const int count = std::max(1, static_cast<int>(std::ceil(height / step_)));
        for (int i = 0; i < count; ++i) // off the middle: nothing stands there by design
            heights.push_back(low + height * (i + 0.4719) / count);
        if (height > 5 * near) {
            heights.insert(heights.begin(), low + near);
            heights.push_back(high - near);
        }
        std::vector<Sample> samples;
        for (const double z : heights)
            if (!take(z, samples))
                return false;
        std::vector<double> events;
        std::vector<WallTopology> between{samples.front().topology};
        for (std::size_t i = 1; i < samples.size(); ++i)
            if (!resolve(samples[i - 1], samples[i], events, between, 0))
                return false;
        double start = low;
        for (std::size_t i = 0; i < between.size(); ++i) {
            const double end = i < events.size() ? events[i] : high;
            add_slab(start, end, between[i]);
            start = end;
        }
        return true;
    }

    bool take(double z, std::vector<Sample>& samples) const {
        auto topology = wall_topology(faces_, z, wanted_);
        if (topology)
            samples.push_back({z, std::move(*topology)});
        return topology.has_value();
    }

    void add_slab(double low, double high, const WallTopology& topology) {
        if (high - low < one_event) // what happens within so little happens at once
            return;
        if (!slabs_.empty())
            slabs_.back().high = low;
        if (!slabs_.empty() && slabs_.back().topology == topology)
            slabs_.back().high = high;
        else
            slabs_.push_back({low, high, topology});
    }

    /// Appends the events between two samples, and after each the topology above it.
    bool resolve(const Sample& low, const Sample& high, std::vector<double>& events,
                 std::vector<WallTopology>& between, int depth) {
        if (low.topology == high.topology)
            return true;
        std::vector<double> roots = candidates(low, high);
        if (roots.empty() || depth > deepest)
            return halve(low, high, events, between);
        // Samples between the roots, so that between two neighbours there is one event or none.
        std::vector<Sample> samples{low};
        for (std::size_t i = 1; i < roots.size(); ++i)
            if (!take((roots[i - 1] + roots[i]) / 2, samples))
                return false;
        samples.push_back(high);
        for (std::size_t i = 1; i < samples.size(); ++i) {
            const Sample &below = samples[i - 1], &above = samples[i];
            if (below.topology == above.topology)
                continue;
            // Just below and above the root nothing else may have changed.
            const double at = roots[i - 1];
            std::vector<Sample> beside;
            const double room = std::min(at - below.z, above.z - at) / 4;
            if (!take(at - std::min(room, 1e-5), beside) ||
                !take(at + std::min(room, 1e-5), beside))
                return false;
            if (beside[0].topology == below.topology && beside[1].topology == above.topology) {
                events.push_back(at);
                between.push_back(above.topology);
                continue;
            }
            if (roots.size() == 1 && depth > 0)
                return halve(below, above, events, between);
            if (!resolve(below, beside[0], events, between, depth + 1))
                return false;
            if (!(beside[0].topology == beside[1].topology)) {
                events.push_back(at);
                between.push_back(beside[1].topology);
            }
            if (!resolve(beside[1], above, events, between, depth + 1))
                return false;
        }
        return true;
    }

    /// By halving alone, as far as the plan can be told.
    bool halve(const Sample& low, const Sample& high, std::vector<double>& events,
               std::vector<WallTopology>& between) {
        if (high.z - low.z < least_slab) {
            events.push_back((low.z + high.z) / 2);
            between.push_back(high.topology);
            return true;
        }
        std::vector<Sample> middle;
        if (!take((low.z + high.z) / 2, middle))
            return false;
        const Sample& half = middle.front();
        return (low.topology == half.topology || halve(low, half, events, between)) &&
               (half.topology == high.topology || halve(half, high, events, between));
    }

    /// Heights at which two of the faces that have to do with the difference touch, or three meet.
    std::vector<double> candidates(const Sample& low, const Sample& high) const {
        std::vector<int> involved;
        const auto note = [&](const WallTopology& own, const WallTopology& other) {
            const auto has_corner = [&](const CornerKey& key) {
                return std::binary_search(other.corners.begin(), other.corners.end(), key);
            };
            for (const WallEdge& edge : own.edges) {
                const bool same =
                    std::any_of(other.edges.begin(), other.edges.end(), [&](const WallEdge& known) {
                        return known.patch == edge.patch && (known.from < 0) == (edge.from < 0) &&
                               (edge.from < 0 ||
                                (own.corners[at(edge.from)] == other.corners[at(known.from)] &&
                                 own.corners[at(edge.to)] == other.corners[at(known.to)]));
                    });
                if (same)
                    continue;
                involved.push_back(face_of(edge.patch));
                for (const int corner : {edge.from, edge.to})
                    if (corner >= 0) {
                        involved.push_back(own.corners[at(corner)].a);
                        involved.push_back(own.corners[at(corner)].b);
                    }
            }
            for (const CornerKey& key : own.corners)
                if (!has_corner(key)) {
                    involved.push_back(key.a);
                    involved.push_back(key.b);
                }
        };
        note(low.topology, high.topology);
        note(high.topology, low.topology);
        std::sort(involved.begin(), involved.end());
        involved.erase(std::unique(involved.begin(), involved.end()), involved.end());
        std::vector<double> roots;
        const auto offer = [&](const std::function<double(double)>& value, double from, double to) {
            if (const auto z = root(value, from, to))
                roots.push_back(*z);
        };
        for (std::size_t i = 0; i < involved.size(); ++i)
            for (std::size_t j = i + 1; j < involved.size(); ++j) {
                const CornerKey pair{involved[i], involved[j], 0};
                const auto depth = [&](double z) { return corner_at(faces_, pair, z).depth; };
                double from = low.z, to = high.z;
                if (const auto z = root(depth, from, to)) {
                    roots.push_back(*z);
                    (depth(from) < 0 ? from : to) = *z;
                }
                for (const int branch : {-1, 1})
                    for (const int third : involved) {
                        if (third == pair.a || third == pair.b)
                            continue;
                        const CornerKey key{pair.a, pair.b, branch};
                        offer(
                            [&](double z) {
                                return off_face(faces_[third], corner_at(faces_, key, z).at, z);
                            },
                            from, to);
                    }
            }
        std::sort(roots.begin(), roots.end());
        const auto one = [](double a, double b) { return b - a < one_event; };
        roots.erase(std::unique(roots.begin(), roots.end(), one), roots.end());
        return roots;
    }

    static std::size_t at(int index) { return static_cast<std::size_t>(index); }

    const WallFaces& faces_;
    const std::vector<bool>& wanted_;
    double step_;
    std::vector<WallSlab> slabs_;
    double failed_at_ = 0;
};

} // namespace

SlabSearch search_slabs(const WallFaces& faces, const std::vector<double>& known,
                        const std::vector<bool>& wanted, double step) {
    SlabFinder finder(faces, wanted, step);
    SlabSearch search;
    search.done = finder.run(known);
    search.failed_at = finder.failed_at();
    search.slabs = std::move(finder).slabs();
    return search;
}

} // namespace coilwright
