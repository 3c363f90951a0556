#include "geometry/takeoff/surfaces.hpp"

#include "geometry/plan/building_form.hpp"
#include "geometry/plan/lay.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>

namespace coilwright {

namespace {

constexpr double widest_panel = 0.6; // m

/// Nodes of a panel: Gauss-Legendre of ten points in theta, z = middle - half cos theta. Faces that
/// end level, where their slope grows as one over a square root, are smooth in theta too.
template <typename Visit>
void visit_panel(double from, double to, Visit visit) {
    constexpr double node[] = {0.1488743389816312, 0.4333953941292472, 0.6794095682990244,
                               0.8650633666889845, 0.9739065285171717};
    constexpr double weight[] = {0.2955242247147529, 0.2692667193099963, 0.2190863625159820,
                                 0.1494513491505806, 0.0666713443086881};
    const double middle = (from + to) / 2, half = (to - from) / 2;
    for (int i = 0; i < 5; ++i)
        for (const double side : {-1.0, 1.0}) {
            const double theta = pi / 2 * (1 + side * node[i]);
            visit(middle - half * std::cos(theta), weight[i] * pi / 2 * half * std::sin(theta));
        }
}

/// sqrt(1 + slope^2) of a width that is a function of height, from nearby heights on the same side.
double slant(const std::function<double(double)>& width, double z, double room) {
    const double step = std::min(1e-5, room / 4);
    const double slope = (width(z + step) - width(z - step)) / (2 * step);
    return std::sqrt(1 + slope * slope);
}

class Faces {
public:
    Faces(const BuildingForm& building, double ground, const DecideRegion& decide)
        : building_(building), relations_(make_relations(building)), ground_(ground),
          decide_(decide) {}

    std::vector<FaceArea> measured() {
        const std::vector<double> heights = bends();
        for (std::size_t i = 0; i + 1 < heights.size(); ++i) {
            const double span = heights[i + 1] - heights[i];
            const int panels = std::max(1, static_cast<int>(std::ceil(span / widest_panel)));
            for (int k = 0; k < panels; ++k)
                visit_panel(heights[i] + span * k / panels, heights[i] + span * (k + 1) / panels,
                            [&](double z, double weight) {
                                add_slice(z, weight, std::min(z - heights[i], heights[i + 1] - z));
                            });
        }
        add_flats();
        add_ledges();
        return listed();
    }

private:
    /// Heights between which every face is smooth.
    std::vector<double> bends() const {
        std::vector<double> all{0, ground_};
        for (const DomeForm& dome : building_.domes) {
            const auto last = dome.course_middle(dome.last_ring);
            const double top = dome.top();
            for (const double z :
                 {dome.springline, last, dome.ceiling(), top, dome.course_middle(dome.courses()),
                  dome.lower_top, dome.second_wythe_top, dome.apex(),
                  dome.course_middle(dome.last_ring + 1)})
                if (z <= top + height_tie)
                    all.push_back(z);
            // Above the last ring the room is held open by a least radius.
            const double held =
                dome.springline + height_at(dome.profile, dome.last_ring_radius / 2);
            all.push_back(std::min(held, top));
            for (const Profile::Knot& knot : dome.profile.knots)
                all.push_back(std::min(dome.springline + knot.height, top));
        }
        for (const TunnelForm& tunnel : building_.tunnels) {
            for (const double z : {tunnel.springline, tunnel.crown(), tunnel.top()})
                all.push_back(z);
            for (const Profile::Knot& knot : tunnel.profile.knots)
                all.push_back(tunnel.springline + knot.height);
        }
        for (const ButtressForm& pier : building_.buttresses) {
            all.push_back(pier.bottom);
            all.push_back(pier.top);
            if (pier.reveal) {
                all.push_back(pier.reveal->cap.line_z);
                all.push_back(pier.reveal->levels.course_middle(pier.last_course));
            }
        }
        for (const OpeningForm& opening : building_.openings)
            for (const double z : {opening.sill, opening.springing, opening.top})
                all.push_back(z);
        const double lowest = std::min(0.0, ground_);
        std::sort(all.begin(), all.end());
        std::vector<double> kept;
        for (const double z : all)
            if (z >= lowest && (kept.empty() || z - kept.back() > 2e-6))
                kept.push_back(z);
        return kept;
    }

    Region region_at(double z, std::vector<SectionTag>& tags) const {
        for (const double lift : {0.0, 3e-6, -3e-6, 1e-5, -1e-5}) {
            TaggedExpression wall = tagged_wall(building_, relations_, z + lift);
            std::optional<Region> region = fast_region(wall.plan);
            if (!region && decide_ && lift == 0)
                region = region_of(wall.plan, decide_);
            if (region && region->decided) {
                tags = std::move(wall.tags);
                return *region;
            }
        }
        return {};
    }

    /// True length over plan length of a face at a height.
    double steepness(const SectionTag& tag, double z, double room) const {
        const auto at = static_cast<std::size_t>(tag.element);
        switch (tag.role) {
        case SectionRole::dome_inside:
            return slant([&](double h) { return inside_radius(building_.domes[at], h); }, z, room);
        case SectionRole::dome_outside:
            return slant([&](double h) { return outside_radius(building_.domes[at], h); }, z, room);
        case SectionRole::tunnel_void:
            return slant([&](double h) { return inner_half_width(building_.tunnels[at], h); }, z,
                         room);
        case SectionRole::tunnel_body:
            return slant([&](double h) { return outer_half_width(building_.tunnels[at], h); }, z,
                         room);
        case SectionRole::pier:
            return slant(
                [&](double h) {
                    const ButtressForm& pier = building_.buttresses[at];
                    return pier.reveal ? pier_half_width(pier, h) : outer_face(pier, h);
                },
                z, room);
        case SectionRole::hole:
            return slant([&](double h) { return half_width(building_.openings[at], h); }, z, room);
        }
        return 1;
    }

    /// Whether an edge of a box runs along its axis, as the faces that lean do; ends stand plumb.
    /// Of a pier it is the end that leans, but not of a reveal.
    bool leans(const BoundaryEdge& edge, const SectionTag& tag) const {
        if (edge.bulge != 0)
            return true;
        Vec2 axis(0, 1);
        const auto at = static_cast<std::size_t>(tag.element);
        if (tag.role == SectionRole::hole)
            axis = building_.openings[at].axis;
        else if (tag.role == SectionRole::pier)
            axis = building_.buttresses[at].axis();
        else
            axis = building_.tunnels[at].axis();
        const bool along = std::abs((edge.to - edge.from).normalized().dot(axis)) > 0.7;
        return along != (tag.role == SectionRole::pier && !building_.buttresses[at].reveal);
    }

    void add_slice(double z, double weight, double room) {
        std::vector<SectionTag> tags;
        const Region region = region_at(z, tags);
        std::map<int, double> steep; // by tag
        for (const BoundaryLoop& loop : region.loops)
            for (const BoundaryEdge& edge : loop.edges) {
                const SectionTag& tag = tags[static_cast<std::size_t>(edge.shape)];
                double factor = 1;
                if (leans(edge, tag)) {
                    const auto known = steep.find(edge.shape);
                    factor = known != steep.end() ? known->second
                                                  : (steep[edge.shape] = steepness(tag, z, room));
                }
                add(tag, z, length_of(edge) * factor * weight);
            }
    }

    void add(const SectionTag& tag, double z, double area) {
        const bool inside =
            tag.role == SectionRole::dome_inside || tag.role == SectionRole::tunnel_void;
        if (tag.role == SectionRole::hole ? z < 0 && z < ground_ : z < (inside ? 0 : ground_))
            return;
        areas_[{static_cast<int>(tag.role), tag.element}] += area;
    }

    void add_flats() {
        for (std::size_t i = 0; i < building_.domes.size(); ++i) {
            const DomeForm& dome = building_.domes[i];
            if (dome.cap_courses == 0) {
                const double hole = inside_radius(dome, dome.top() - 1e-5);
                const double edge = outside_radius(dome, dome.top() - 1e-5);
                areas_[{static_cast<int>(SectionRole::dome_outside), static_cast<int>(i)}] +=
                    pi * (edge * edge - hole * hole);
                continue;
            }
            const double under = inside_radius(dome, dome.ceiling() - 1e-5);
            const double over = outside_radius(dome, dome.top() - 1e-5);
            areas_[{static_cast<int>(SectionRole::dome_inside), static_cast<int>(i)}] +=
                pi * under * under;
            areas_[{static_cast<int>(SectionRole::dome_outside), static_cast<int>(i)}] +=
                pi * over * over;
        }
        for (std::size_t i = 0; i < building_.openings.size(); ++i) {
            const OpeningForm& opening = building_.openings[i];
            double& area = areas_[{static_cast<int>(SectionRole::hole), static_cast<int>(i)}];
            const double sill = half_width(opening, opening.sill + 1e-9);
            if (opening.sill > std::max(0.0, ground_) + height_tie)
                area += depth_area(opening, sill, opening.sill);
            if (opening.head_kind == HeadKind::square)
                area += depth_area(opening, opening.half_width, opening.top);
        }
    }

    /// Where the lower courses of a dome end, and piers and tunnels: what they take of the plan
    /// that nothing else does, just below.
    void add_ledges() {
        const std::size_t domes = building_.domes.size(), tunnels = building_.tunnels.size();
        const std::vector<bool> all(domes + tunnels + building_.buttresses.size(), true);
        const auto add_ledge = [&](SectionRole role, std::size_t element, double top,
                                   const BuildingForm& above, std::size_t gone) {
            if (top <= ground_ + height_tie)
                return;
            std::vector<bool> wanted = all;
            if (gone < wanted.size())
                wanted[gone] = false;
            const double z = top - 1e-5;
            areas_[{static_cast<int>(role), static_cast<int>(element)}] +=
                std::max(0.0, plan_area(building_, z, all) - plan_area(above, z, wanted));
        };
        for (std::size_t i = 0; i < domes; ++i) {
            const DomeForm& dome = building_.domes[i];
            const double lower = dome.lower_width > 0 ? dome.lower_top : 0;
            const double second = dome.second_wythe ? dome.second_wythe_top : 0;
            const bool together = std::abs(lower - second) < height_tie;
            BuildingForm above = building_;
            if (dome.lower_width > 0) {
                above.domes[i].lower_width = 0;
                above.domes[i].second_wythe = dome.second_wythe && !together;
                add_ledge(SectionRole::dome_outside, i, lower, above, all.size());
            }
            if (dome.second_wythe && !(dome.lower_width > 0 && together)) {
                above.domes[i].lower_width = dome.lower_width;
                above.domes[i].second_wythe = false;
                add_ledge(SectionRole::dome_outside, i, second, above, all.size());
            }
        }
        for (std::size_t i = 0; i < tunnels; ++i)
            add_ledge(SectionRole::tunnel_body, i, building_.tunnels[i].top(), building_,
                      domes + i);
        for (std::size_t i = 0; i < building_.buttresses.size(); ++i)
            add_ledge(SectionRole::pier, i, building_.buttresses[i].top, building_,
                      domes + tunnels + i);
    }

    /// Of those of the wall's terms that are wanted; 0 where no arithmetic could tell.
    double plan_area(const BuildingForm& building, double z,
                     const std::vector<bool>& wanted) const {
        const TaggedExpression wall = tagged_wall(building, relations_, z, wanted);
        const Region region = region_of(wall.plan, decide_);
        return region.decided ? region.area : 0;
    }

    /// Plan area of the hole within its wall at a height.
    double depth_area(const OpeningForm& opening, double half, double z) const {
        if (const TunnelForm* tunnel = find_tunnel(building_, opening.in))
            return 2 * half * (opening.niche_depth > 0 ? opening.niche_depth : tunnel->width);
        const DomeForm* dome = find_dome(building_, opening.in);
        const double inside = dome ? inside_radius(*dome, z) : 0;
        const double outside = opening.niche_depth > 0 ? inside + opening.niche_depth
                               : dome                  ? outside_radius(*dome, z)
                                                       : 0;
        if (!dome || half >= inside)
            return 0;
        if (const ButtressForm* reveal = find_reveal(building_, opening.id, z)) {
            const double round = strip_area_in_ring(half, inside, half) + pi / 2 * half * half;
            return 2 * half * outer_face(*reveal, z) - round;
        }
        return strip_area_in_ring(inside, outside, half);
    }

    std::vector<FaceArea> listed() const {
        std::map<std::pair<int, std::string>, FaceArea> sums; // by place of the element, then face
        const auto put = [&](int kind, const std::string& id, FaceKind face, double area) {
            FaceArea& sum = sums[{kind * 100000 + static_cast<int>(face), id}];
            sum.element = id;
            sum.face = face;
            sum.area += area;
        };
        for (const auto& [key, area] : areas_) {
            const auto at = static_cast<std::size_t>(key.second);
            switch (static_cast<SectionRole>(key.first)) {
            case SectionRole::dome_inside:
                put(0, building_.domes[at].id, FaceKind::inside, area);
                break;
            case SectionRole::dome_outside:
                put(0, building_.domes[at].id, FaceKind::outside, area);
                break;
            case SectionRole::tunnel_void:
                put(1, building_.tunnels[at].id, FaceKind::inside, area);
                break;
            case SectionRole::tunnel_body:
                put(1, building_.tunnels[at].id, FaceKind::outside, area);
                break;
            case SectionRole::pier:
                put(2, building_.buttresses[at].id, FaceKind::outside, area);
                break;
            case SectionRole::hole:
                put(3, building_.openings[at].id, FaceKind::reveal, area);
                break;
            }
        }
        std::vector<FaceArea> list;
        for (const auto& [key, sum] : sums)
            if (sum.area > 0)
                list.push_back(sum);
        return list;
    }

    const BuildingForm& building_;
    WallRelations relations_;
    double ground_;
    const DecideRegion& decide_;
    std::map<std::pair<int, int>, double> areas_; // by role and element
};

} // namespace

std::vector<FaceArea> face_areas(const BuildingForm& building, double ground,
                                 const DecideRegion& decide) {
    return Faces(building, ground, decide).measured();
}

double hole_edge(const OpeningForm& opening) {
    if (!opening.head)
        return 2 * (opening.top - opening.sill) + 2 * opening.half_width;
    const double head = 2 * length_between(*opening.head, 0, opening.head->rise);
    return opening.head_kind == HeadKind::circle ? 2 * head
                                                 : 2 * (opening.springing - opening.sill) + head;
}

double inset_area(const OpeningForm& opening, double inset, bool sill) {
    if (!opening.head)
        return std::max(0.0, 2 * (opening.half_width - inset)) *
               std::max(0.0, opening.top - opening.sill - (sill ? 2 : 1) * inset);
    const double rise = opening.head->rise;
    const auto half = [&](double y) { return offset_half_width(*opening.head, inset, y); };
    // The head and its springing bend at y = 0; the width ends where nothing is left.
    double head = 0;
    const double end = offset_height_at(*opening.head, inset, 0);
    if (end > 0)
        visit_panel(0, std::min(end, rise),
                    [&](double y, double weight) { head += 2 * half(y) * weight; });
    if (opening.head_kind == HeadKind::circle)
        return 2 * head;
    const double jambs = opening.springing - opening.sill - (sill ? inset : 0);
    // Below the springing the edge is plumb but for the last of it under a head that meets it at an
    // angle.
    double below = 0;
    if (jambs > 0)
        visit_panel(-jambs, 0, [&](double y, double weight) { below += 2 * half(y) * weight; });
    return head + below;
}

} // namespace coilwright
