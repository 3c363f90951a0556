#include "geometry/solids/wall_slabs.hpp"

#include "geometry/solids/slab_search.hpp"
#include "geometry/solids/wall_zones.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

constexpr std::size_t few_terms = 24; // of so small a building every plan is looked at whole
constexpr double hair = 2 * height_tie;

/// An edge by the keys of its corners, so that topologies of parts and of the whole compare.
struct KeyedEdge {
    int patch = 0;
    bool whole = false;
    CornerKey from, to;
    auto operator<=>(const KeyedEdge&) const = default;
};
using KeyedEdges = std::vector<KeyedEdge>; // ascending

KeyedEdges keyed(const WallTopology& topology) {
    KeyedEdges edges;
    for (const WallEdge& edge : topology.edges) {
        if (edge.from < 0)
            edges.push_back({edge.patch, true, {}, {}});
        else
            edges.push_back({edge.patch, false,
                             topology.corners[static_cast<std::size_t>(edge.from)],
                             topology.corners[static_cast<std::size_t>(edge.to)]});
    }
    std::sort(edges.begin(), edges.end());
    return edges;
}

WallTopology topology_of(const KeyedEdges& edges) {
    WallTopology topology;
    for (const KeyedEdge& edge : edges)
        if (!edge.whole)
            topology.corners.push_back(edge.from);
    std::sort(topology.corners.begin(), topology.corners.end());
    const auto place = [&](const CornerKey& key) {
        return static_cast<int>(
            std::lower_bound(topology.corners.begin(), topology.corners.end(), key) -
            topology.corners.begin());
    };
    for (const KeyedEdge& edge : edges)
        topology.edges.push_back(
            {edge.patch, edge.whole ? -1 : place(edge.from), edge.whole ? -1 : place(edge.to)});
    std::sort(topology.edges.begin(), topology.edges.end());
    return topology;
}

KeyedEdges without(const KeyedEdges& all, const KeyedEdges& some) {
    KeyedEdges rest;
    std::set_difference(all.begin(), all.end(), some.begin(), some.end(), std::back_inserter(rest));
    return rest;
}

/// What an event takes away and brings.
struct Change {
    double z;
    KeyedEdges gone, come;
};

Change change_at(double z, const KeyedEdges& below, const KeyedEdges& above) {
    return {z, without(below, above), without(above, below)};
}

/// Of a large building: what changes at a known height is looked at in the neighbourhood of the
/// faces that start or end there; the whole plan is only looked at every so often, and where it is
/// not what these changes make of it the search goes on about the faces that differ.
class ZonedFinder {
public:
    ZonedFinder(const WallFaces& faces, const std::vector<double>& known, double step)
        : faces_(faces), known_(known), step_(step), zones_(faces) {}

    SlabSearch run() {
        SlabSearch search;
        const double top = known_.back();
        double low = known_.front();
        const std::optional<WallTopology> first = wall_topology(faces_, low + hair);
        if (!first)
            return search;
        search.slabs.push_back({low, low, *first});
        KeyedEdges edges = keyed(*first);
        while (low < top) {
            const double high = checkpoint(low);
            search.failed_at = low;
            if (!add_range(low, high, edges, search.slabs))
                return search;
            low = high;
        }
        search.slabs.back().high = top;
        search.done = true;
        return search;
    }

private:
    /// A height about a step above that stands clear of the known ones; at last the top.
    double checkpoint(double low) const {
        const double wanted = low + step_;
        if (wanted >= known_.back() - step_ / 4)
            return known_.back();
        const auto above = std::lower_bound(known_.begin(), known_.end(), wanted);
        const double clear = std::min(0.0171, 0.3 * (above[0] - above[-1]));
        return std::clamp(wanted, above[-1] + clear, above[0] - clear);
    }

    std::vector<double> known_within(double low, double high) const {
        std::vector<double> heights;
        std::copy_if(known_.begin(), known_.end(), std::back_inserter(heights),
                     [&](double z) { return z > low + hair && z < high - hair; });
        return heights;
    }

    static void append(std::vector<WallSlab>& slabs, double z, const KeyedEdges& edges) {
        WallTopology topology = topology_of(edges);
        if (topology == slabs.back().topology)
            return;
        slabs.back().high = z;
        slabs.push_back({z, z, std::move(topology)});
    }

    /// Takes the slabs on from one checkpoint to the next.
    bool add_range(double low, double high, KeyedEdges& edges, std::vector<WallSlab>& slabs) {
        const std::vector<double> known = known_within(low, high);
        const std::optional<WallTopology> at_high = wall_topology(faces_, high - hair);
        if (!at_high)
            return false;
        const KeyedEdges wanted = keyed(*at_high);
        std::optional<std::vector<Change>> changes = known_changes(known);
        if (changes && !leads_to(edges, *changes, wanted)) {
            const std::optional<KeyedEdges> led = applied(edges, *changes);
            if (!led ||
                !find_others(low, high, without(*led, wanted), without(wanted, *led), *changes) ||
                !leads_to(edges, *changes, wanted))
                changes.reset();
        }
        if (!changes)
            return search_whole(low, high, known, edges, slabs);
        for (const Change& change : *changes) {
            edges = *applied(edges, {change});
            append(slabs, change.z, edges);
        }
        return true;
    }

    std::optional<std::vector<Change>> known_changes(const std::vector<double>& known) const {
        std::vector<Change> changes;
        for (const double z : known) {
            const std::vector<bool> zone = zones_.around(zones_.changed_at(z));
            const auto below = wall_topology(faces_, z - hair, zone);
            const auto above = wall_topology(faces_, z + hair, zone);
            if (!below || !above)
                return std::nullopt;
            changes.push_back(change_at(z, keyed(*below), keyed(*above)));
        }
        return changes;
    }

    static std::optional<KeyedEdges> applied(KeyedEdges edges, const std::vector<Change>& changes) {
        for (const Change& change : changes) {
            if (!std::includes(edges.begin(), edges.end(), change.gone.begin(), change.gone.end()))
                return std::nullopt;
            const KeyedEdges rest = without(edges, change.gone);
            edges.clear();
            std::set_union(rest.begin(), rest.end(), change.come.begin(), change.come.end(),
                           std::back_inserter(edges));
        }
        return edges;
    }

    static bool leads_to(const KeyedEdges& edges, const std::vector<Change>& changes,
                         const KeyedEdges& wanted) {
        const std::optional<KeyedEdges> reached = applied(edges, changes);
        return reached && *reached == wanted;
    }

    /// Adds the changes between known heights, about the faces of the edges in which what was led
    /// to and what is there differ.
    bool find_others(double low, double high, const KeyedEdges& gone, const KeyedEdges& come,
                     std::vector<Change>& changes) const {
        std::vector<int> involved;
        for (const KeyedEdges* side : {&gone, &come})
            for (const KeyedEdge& edge : *side) {
                involved.push_back(face_of(edge.patch));
                if (!edge.whole)
                    for (const CornerKey& key : {edge.from, edge.to}) {
                        involved.push_back(key.a);
                        involved.push_back(key.b);
                    }
            }
        const std::vector<bool> zone = zones_.around(involved);
        std::vector<double> heights{low};
        for (const Change& change : changes)
            heights.push_back(change.z);
        heights.push_back(high);
        const SlabSearch found = search_slabs(faces_, heights, zone, step_);
        if (!found.done)
            return false;
        for (std::size_t i = 1; i < found.slabs.size(); ++i) {
            const double z = found.slabs[i].low;
            const bool is_known = std::any_of(heights.begin(), heights.end(), [&](double known) {
                return std::abs(known - z) < hair;
            });
            if (!is_known)
                changes.push_back(change_at(z, keyed(found.slabs[i - 1].topology),
                                            keyed(found.slabs[i].topology)));
        }
        std::stable_sort(changes.begin(), changes.end(),
                         [](const Change& a, const Change& b) { return a.z < b.z; });
        return true;
    }

    bool search_whole(double low, double high, std::vector<double> known, KeyedEdges& edges,
                      std::vector<WallSlab>& slabs) const {
        known.insert(known.begin(), low);
        known.push_back(high);
        const SlabSearch found = search_slabs(faces_, known, {}, step_);
        if (!found.done)
            return false;
        for (const WallSlab& slab : found.slabs) {
            edges = keyed(slab.topology);
            append(slabs, slab.low, edges);
        }
        return true;
    }

    const WallFaces& faces_;
    const std::vector<double>& known_;
    double step_;
    WallZones zones_;
};

} // namespace

WallSlabs find_slabs(const WallFaces& faces, double step) {
    std::vector<double> known;
    for (const KnownHeight& height : faces.heights())
        if (height.z >= faces.bottom() && height.z <= faces.top())
            known.push_back(height.z);
    const BuildingForm& building = faces.building();
    const bool few =
        building.domes.size() + building.tunnels.size() + building.buttresses.size() <= few_terms;
    SlabSearch search =
        few ? search_slabs(faces, known, {}, step) : ZonedFinder(faces, known, step).run();
    WallSlabs result;
    result.slabs = std::move(search.slabs);
    if (search.done)
        return result;
    result.fault = ShapeFault::undecided;
    for (const KnownHeight& height : faces.heights()) {
        if (height.z <= search.failed_at || result.first.empty())
            result.first = height.element;
        result.second = height.element;
        if (height.z > search.failed_at)
            break;
    }
    return result;
}

} // namespace coilwright
