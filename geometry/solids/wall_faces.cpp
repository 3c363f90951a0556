#include "geometry/solids/wall_faces.hpp"

#include "geometry/solids/revolved_surface.hpp"
#include "geometry/solids/ruled_surface.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

constexpr double least_jump = 1e-4;   // metres, well over what a slope makes of `hair`
constexpr double least_piece = 1e-5;  // of an opening's outline
constexpr double out_of_reach = 1000; // of an opening's far end
constexpr double hair = 2 * height_tie;

using Formula = std::function<double(double)>;

Formula constant(double value) {
    return [value](double) { return value; };
}

/// Heights at which a formula jumps, of those that are given.
std::vector<double> jumps(const Formula& formula, double low, double high,
                          std::vector<double> heights) {
    std::erase_if(heights, [&](double z) {
        return z <= low + hair || z >= high - hair ||
               std::abs(formula(z - hair) - formula(z)) < least_jump;
    });
    std::sort(heights.begin(), heights.end());
    return heights;
}

} // namespace

WallFaces::WallFaces(const BuildingForm& building)
    : building_(building), relations_(make_relations(building)) {
    const std::size_t counts[] = {building.domes.size(),      building.domes.size(),
                                  building.tunnels.size(),    building.tunnels.size(),
                                  building.buttresses.size(), building.openings.size()};
    for (const std::size_t count : counts) {
        first_tag_.push_back(by_tag_.size());
        by_tag_.resize(by_tag_.size() + count);
    }
    bottom_ = building.domes.front().bottom();
    for (int i = 0; i < static_cast<int>(building.domes.size()); ++i) {
        const DomeForm& dome = building.domes[static_cast<std::size_t>(i)];
        bottom_ = std::min(bottom_, dome.bottom());
        top_ = std::max(top_, dome.top());
        add_dome(i);
        for (const int opening : relations_.dome_openings[static_cast<std::size_t>(i)])
            add_opening(opening, dome.bottom(), &dome);
    }
    for (int i = 0; i < static_cast<int>(building.tunnels.size()); ++i) {
        const TunnelForm& tunnel = building.tunnels[static_cast<std::size_t>(i)];
        bottom_ = std::min(bottom_, tunnel.bottom());
        top_ = std::max(top_, tunnel.top());
        add_tunnel(i);
        for (const int opening : relations_.tunnel_openings[static_cast<std::size_t>(i)])
            add_opening(opening, tunnel.bottom(), nullptr);
        heights_.push_back({0, "tunnel." + tunnel.id});
    }
    for (int i = 0; i < static_cast<int>(building.buttresses.size()); ++i)
        add_pier(i);
    tie_heights();
}

/// Heights within height_tie are one: faces that end there are drawn to it.
void WallFaces::tie_heights() {
    std::stable_sort(heights_.begin(), heights_.end(),
                     [](const KnownHeight& a, const KnownHeight& b) { return a.z < b.z; });
    const auto far = [](const KnownHeight& a, const KnownHeight& b) {
        return b.z - a.z <= height_tie;
    };
    heights_.erase(std::unique(heights_.begin(), heights_.end(), far), heights_.end());
    const auto tied = [&](double z) {
        const auto above = std::upper_bound(
            heights_.begin(), heights_.end(), z,
            [](double value, const KnownHeight& known) { return value < known.z; });
        return std::prev(above)->z;
    };
    for (WallFace& face : faces_) {
        const double low = tied(face.low), high = tied(face.high);
        if (low == face.low && high == face.high)
            continue;
        const double from = face.low, scale = (face.high - face.low) / (high - low);
        face.formula = [formula = face.formula, low, from, scale](double z) {
            return formula(from + (z - low) * scale);
        };
        face.low = low;
        face.high = high;
    }
    bottom_ = tied(bottom_);
    top_ = tied(top_);
}

std::vector<int>& WallFaces::faces_of(const SectionTag& tag) {
    return by_tag_[first_tag_[static_cast<std::size_t>(tag.role)] +
                   static_cast<std::size_t>(tag.element)];
}

void WallFaces::add(WallFace face) {
    if (face.high - face.low < hair)
        return;
    heights_.push_back({face.low, face.element});
    heights_.push_back({face.high, face.element});
    faces_of(face.tag).push_back(static_cast<int>(faces_.size()));
    faces_.push_back(std::move(face));
}

int WallFaces::find(const SectionTag& tag, int side, double z) const {
    const auto& faces = by_tag_[first_tag_[static_cast<std::size_t>(tag.role)] +
                                static_cast<std::size_t>(tag.element)];
    int found = -1;
    for (const int index : faces) {
        const WallFace& face = faces_[static_cast<std::size_t>(index)];
        if (face.side == side && (found < 0 || face.low <= z))
            found = index;
    }
    return found;
}

void WallFaces::add_dome(int index) {
    const DomeForm& dome = building_.domes[static_cast<std::size_t>(index)];
    WallFace face;
    face.circle = true;
    face.centre = dome.at;
    face.element = "dome." + dome.id;

    // The room ends a hair below the cap, where the radius drops to 0.
    const double last = dome.ceiling() - hair;
    const bool capped = dome.cap_courses > 0;
    face.tag = {SectionRole::dome_inside, index};
    face.low = dome.bottom();
    face.high = capped ? dome.ceiling() : dome.top();
    face.breaks = {dome.springline, dome.course_middle(dome.last_ring)};
    if (capped)
        face.breaks.push_back(dome.springline + height_at(dome.profile, dome.last_ring_radius / 2));
    face.formula = [&dome, last](double z) { return inside_radius(dome, std::min(z, last)); };
    add(face);

    const Formula outside = [&dome](double z) { return outside_radius(dome, z); };
    face.tag.role = SectionRole::dome_outside;
    face.breaks = {dome.springline, dome.course_middle(dome.last_ring), dome.cap.line_z,
                   dome.course_middle(dome.courses())};
    std::vector<double> ends =
        jumps(outside, dome.bottom(), dome.top(),
              {dome.lower_top, dome.second_wythe_top, dome.course_middle(dome.last_ring)});
    ends.push_back(dome.top());
    double low = dome.bottom();
    for (const double end : ends) {
        face.low = low;
        face.high = end;
        const double before = end == dome.top() ? end : end - hair;
        face.formula = [outside, before](double z) { return outside(std::min(z, before)); };
        add(face);
        low = end;
    }
}

/// The four sides of a box; each is divided at its breaks where the list after it says so.
void WallFaces::add_sides(const WallFace& like, const Vec2& origin, const Vec2& axis,
                          const std::vector<Formula>& offsets,
                          const std::vector<std::vector<double>>& breaks) {
    const Vec2 left(-axis.y(), axis.x());
    const Vec2 outward[] = {-left, axis, left, -axis};
    for (int side = 0; side < 4; ++side) {
        WallFace face = like;
        face.centre = origin;
        face.side = side;
        face.outward = outward[side];
        face.formula = offsets[static_cast<std::size_t>(side)];
        face.breaks = breaks[static_cast<std::size_t>(side)];
        add(std::move(face));
    }
}

void WallFaces::add_tunnel(int index) {
    const TunnelForm& tunnel = building_.tunnels[static_cast<std::size_t>(index)];
    WallFace face;
    face.element = "tunnel." + tunnel.id;
    face.low = tunnel.bottom();

    face.tag = {SectionRole::tunnel_void, index};
    face.high = tunnel.crown();
    const Formula inner = [&tunnel](double z) {
        return half_width(tunnel.profile, z - tunnel.springline);
    };
    const double end = tunnel.end_wall ? tunnel.reach - tunnel.width : tunnel.reach;
    add_sides(face, tunnel.origin, tunnel.axis(), {inner, constant(end), inner, constant(0)},
              {{tunnel.springline}, {}, {tunnel.springline}, {}});

    face.tag.role = SectionRole::tunnel_body;
    face.high = tunnel.top();
    const Formula outer = [&tunnel](double z) { return outer_half_width(tunnel, z); };
    const std::vector<double> bends{
        tunnel.springline, tunnel.cap.line_z,
        tunnel.course_middle(tunnel.side_courses + tunnel.crown_courses)};
    add_sides(face, tunnel.origin, tunnel.axis(),
              {outer, constant(tunnel.reach), outer, constant(0)}, {bends, {}, bends, {}});
}

void WallFaces::add_pier(int index) {
    const ButtressForm& pier = building_.buttresses[static_cast<std::size_t>(index)];
    WallFace face;
    face.element = "buttress." + pier.id;
    face.tag = {SectionRole::pier, index};
    face.low = pier.bottom;
    face.high = pier.top;
    const Formula half = [&pier](double z) { return pier_half_width(pier, z); };
    std::vector<double> bends;
    if (pier.reveal)
        bends = {pier.reveal->opening.springing, pier.reveal->cap.line_z,
                 pier.reveal->levels.course_middle(pier.last_course)};
    add_sides(face, pier.origin, pier.axis(),
              {half, [&pier](double z) { return outer_face(pier, z); }, half, constant(0)},
              {bends, {0.0, pier.height}, bends, {}});
}

void WallFaces::add_opening(int index, double bottom, const DomeForm* dome) {
    const OpeningForm& opening = building_.openings[static_cast<std::size_t>(index)];
    WallFace face;
    face.element = "opening." + opening.id;
    face.tag = {SectionRole::hole, index};
    const double low = std::max(opening.sill, bottom);
    Formula half = constant(opening.half_width);
    if (opening.head_kind == HeadKind::circle)
        half = [&opening](double z) {
            return half_width(*opening.head, std::abs(z - opening.springing));
        };
    else if (opening.head)
        half = [&opening](double z) { return half_width(*opening.head, z - opening.springing); };
    Formula far = constant(out_of_reach);
    std::vector<double> far_breaks;
    if (opening.niche_depth > 0 && dome) {
        const double last = dome->ceiling() - hair;
        far = [&opening, dome, last](double z) {
            return inside_radius(*dome, std::min(z, last)) + opening.niche_depth;
        };
        far_breaks = {dome->springline, dome->course_middle(dome->last_ring)};
    }
    // Jambs end where the head springs; a circle's lower half widens, its upper narrows.
    std::vector<double> ends{opening.top};
    if (opening.springing > low + least_piece && opening.springing < opening.top - least_piece)
        ends.insert(ends.begin(), opening.springing);
    const Vec2 left(-opening.axis.y(), opening.axis.x());
    face.centre = opening.origin;
    double start = low;
    for (const double end : ends) {
        face.low = start;
        face.high = end;
        face.formula = half;
        for (const int side : {0, 2}) {
            face.side = side;
            face.outward = side == 0 ? Vec2(-left) : left;
            add(face);
        }
        start = end;
    }
    face.low = low;
    face.high = opening.top;
    face.side = 1;
    face.outward = opening.axis;
    face.formula = far;
    face.breaks = far_breaks;
    add(face);
    face.side = 3;
    face.outward = -opening.axis;
    face.formula = constant(0);
    face.breaks.clear();
    add(face);
}

std::unique_ptr<Surface> WallFaces::surface(int index, double tolerance) const {
    const WallFace& face = (*this)[index];
    const Section section{[&face](double z) { return face.offset(z); }, face.low, face.high,
                          face.breaks};
    if (face.circle)
        return std::make_unique<RevolvedSurface>(section, tolerance, face.centre);
    return std::make_unique<RuledSurface>(section, tolerance, face.centre, face.outward);
}

} // namespace coilwright
