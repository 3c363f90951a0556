#include "geometry/drawing/key_plan.hpp"

#include <algorithm>

namespace coilwright {
namespace {

std::vector<Vec2> corners_of(const Box& box) {
    const Vec2 left(-box.axis.y(), box.axis.x());
    const auto at = [&](double x, double y) { return Vec2(box.origin + x * box.axis + y * left); };
    return {at(box.from, box.low), at(box.to, box.low), at(box.to, box.high),
            at(box.from, box.high)};
}

double base_radius(const DomeForm& dome) {
    return outside_radius(dome, dome.course_middle(1));
}

/// The tunnel between the outsides of its domes.
Box free_body(const BuildingForm& building, const TunnelForm& tunnel) {
    Box body = tunnel_body(tunnel, tunnel.course_middle(1));
    if (const DomeForm* from = find_dome(building, tunnel.from))
        body.from = base_radius(*from);
    if (const DomeForm* to = find_dome(building, tunnel.to))
        body.to -= base_radius(*to);
    return body;
}

Box pier_body(const ButtressForm& pier) {
    Box body = buttress_body(pier, 0);
    body.from = pier.base_outside;
    return body;
}

} // namespace

GroundBounds ground_bounds(const BuildingForm& building) {
    GroundBounds bounds{{1e9, 1e9}, {-1e9, -1e9}};
    const auto take = [&](Vec2 point) {
        bounds.low = bounds.low.cwiseMin(point);
        bounds.high = bounds.high.cwiseMax(point);
    };
    for (const DomeForm& dome : building.domes) {
        const Vec2 reach = Vec2::Constant(base_radius(dome));
        take(dome.at - reach);
        take(dome.at + reach);
    }
    for (const TunnelForm& tunnel : building.tunnels)
        for (const Vec2& corner : corners_of(free_body(building, tunnel)))
            take(corner);
    for (const ButtressForm& pier : building.buttresses)
        for (const Vec2& corner : corners_of(pier_body(pier)))
            if (!pier.reveal) // those stand within the base ring
                take(corner);
    return bounds;
}

void add_key_plan(Sheet& sheet, const PaperBox& box, const BuildingForm& building,
                  const std::string& part) {
    const GroundBounds ground = ground_bounds(building);
    const Vec2 size = ground.high - ground.low;
    const double scale = std::min(box.width() / size.x(), box.height() / size.y());
    const Vec2 middle = (ground.low + ground.high) / 2;
    const auto on_paper = [&](Vec2 point) { return Vec2(box.centre() + (point - middle) * scale); };
    const Stroke& pen = pens::seen;
    const auto body = [&](const Box& shape, bool black) {
        std::vector<Vec2> points;
        for (const Vec2& corner : corners_of(shape))
            points.push_back(on_paper(corner));
        add_fill(sheet, points, {black ? 0.0 : 1.0});
        sheet.items.push_back(LineItem{points, true, pen});
    };
    for (const ButtressForm& pier : building.buttresses)
        if (!pier.reveal)
            body(pier_body(pier), pier.dome == part);
    for (const TunnelForm& tunnel : building.tunnels)
        body(free_body(building, tunnel), tunnel.id == part);
    // The dome of the sheet last: it lies over those that it meets.
    std::vector<const DomeForm*> domes;
    for (const DomeForm& dome : building.domes)
        domes.push_back(&dome);
    std::stable_partition(domes.begin(), domes.end(),
                          [&](const DomeForm* dome) { return dome->id != part; });
    for (const DomeForm* dome : domes) {
        const double radius = base_radius(*dome) * scale;
        add_disc(sheet, on_paper(dome->at), radius, {dome->id == part ? 0.0 : 1.0});
        add_circle(sheet, on_paper(dome->at), radius, pen);
    }
}

} // namespace coilwright
