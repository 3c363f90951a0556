#include "geometry/plan/context_fit.hpp"

#include "geometry/plan/headroom.hpp"
#include "geometry/plan/room.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace coilwright {
namespace {

constexpr double room_tolerance = 0.0005;
constexpr double touch = 0.001;

struct Room {
    const DomeForm* dome;
    std::vector<Vec2> edge;
};

std::vector<Room> rooms_of(const std::vector<DomeForm>& domes, double plaster) {
    std::vector<Room> rooms;
    for (const DomeForm& dome : domes)
        rooms.push_back({&dome, clear_room_curve(dome, plaster, room_tolerance)});
    return rooms;
}

double distance_to_segment(const Vec2& point, const Vec2& a, const Vec2& b) {
    const Vec2 along = b - a;
    const double length = along.squaredNorm();
    const double share = length > 0 ? std::clamp((point - a).dot(along) / length, 0.0, 1.0) : 0.0;
    return (a + share * along - point).norm();
}

// Distance to the plaster, negative outside of the room. The floor is no plaster.
double depth_in(const Room& room, const Vec3& point, double plaster) {
    const double r = (point.head<2>() - room.dome->at).norm();
    const Vec2 at(r, std::max(0.0, point.z()));
    double nearest = std::numeric_limits<double>::max();
    for (std::size_t k = 1; k < room.edge.size(); ++k)
        nearest = std::min(nearest, distance_to_segment(at, room.edge[k - 1], room.edge[k]));
    const bool inside = at.y() <= clear_height_at(*room.dome, plaster, r) &&
                        r <= clear_radius_at(*room.dome, plaster, at.y());
    return inside ? nearest : -nearest;
}

struct BodyBox {
    Vec3 low, high;
};

BodyBox box_of(const std::vector<Vec3>& corners) {
    BodyBox box{corners.front(), corners.front()};
    for (const Vec3& corner : corners) {
        box.low = box.low.cwiseMin(corner);
        box.high = box.high.cwiseMax(corner);
    }
    return box;
}

bool meet(const BodyBox& a, const BodyBox& b) {
    return ((a.high.cwiseMin(b.high) - a.low.cwiseMax(b.low)).array() > touch).all();
}

std::string what_it_hits(std::size_t index, const std::vector<BodyBox>& boxes,
                         const std::vector<PlacedObject>& objects) {
    std::string names;
    for (std::size_t k = 0; k < boxes.size(); ++k)
        if (k != index && meet(boxes[index], boxes[k]))
            names += (names.empty() ? "" : ", ") + objects[k].id;
    return names;
}

} // namespace

ObjectFit object_fit(const PlacedObject& object, const std::vector<DomeForm>& domes,
                     double inside_plaster) {
    const std::vector<Room> rooms = rooms_of(domes, inside_plaster);
    const BodyBox box = box_of(object.corners);
    const Vec3 middle = (box.low + box.high) / 2;
    ObjectFit fit;
    // Its room is where its middle is deepest, or else a corner.
    double deepest = 0;
    const auto try_point = [&](const Vec3& point) {
        for (const Room& room : rooms)
            if (const double depth = depth_in(room, point, inside_plaster); depth > deepest) {
                deepest = depth;
                fit.dome = room.dome->id;
            }
    };
    try_point(middle);
    if (fit.dome.empty())
        for (const Vec3& corner : object.corners)
            try_point(corner);
    if (fit.dome.empty())
        return fit;
    fit.nearest = fit.headroom = std::numeric_limits<double>::max();
    for (const Vec3& corner : object.corners) {
        double depth = std::numeric_limits<double>::lowest(), above = 0;
        for (const Room& room : rooms) {
            depth = std::max(depth, depth_in(room, corner, inside_plaster));
            const double r = (corner.head<2>() - room.dome->at).norm();
            above = std::max(above, clear_height_at(*room.dome, inside_plaster, r) - corner.z());
        }
        fit.nearest = std::min(fit.nearest, depth);
        fit.headroom = std::min(fit.headroom, above);
    }
    return fit;
}

std::vector<Finding> context_findings(const std::vector<PlacedObject>& objects,
                                      const Schedule& schedule, double inside_plaster) {
    std::vector<BodyBox> boxes;
    for (const PlacedObject& object : objects)
        boxes.push_back(box_of(object.corners));
    std::vector<Finding> findings;
    for (std::size_t k = 0; k < objects.size(); ++k) {
        const PlacedObject& object = objects[k];
        const ObjectFit fit = object_fit(object, schedule.building.domes, inside_plaster);
        const std::string hits = what_it_hits(k, boxes, objects);
        Finding finding;
        finding.code = "context-fit";
        finding.subject = "context." + object.id;
        finding.place = object.place;
        finding.source = "geometry";
        if (fit.dome.empty()) {
            finding.verdict = Verdict::not_judged;
            finding.message = "It stands in no room.";
        } else {
            const bool in_wall = fit.nearest < 0;
            finding.verdict = in_wall || !hits.empty() ? Verdict::fails : Verdict::holds;
            finding.value = fit.nearest;
            finding.limit = 0;
            finding.unit = FindingUnit::metre;
            const std::string by = length_text(std::abs(fit.nearest), schedule.unit);
            finding.message = in_wall ? "Stands " + by + " into the plaster of " + fit.dome
                                      : "Stands " + by + " clear of the plaster of " + fit.dome +
                                            ", with " + length_text(fit.headroom, schedule.unit) +
                                            " above it at the least";
            if (!hits.empty())
                finding.message += ", and meets the box about " + hits;
            finding.message += ".";
            if (in_wall)
                finding.remedy = "Move it " + by + " or a little more towards the pole of " +
                                 fit.dome + ", or make it lower.";
            else if (!hits.empty())
                finding.remedy = "Move one of them.";
        }
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace coilwright
