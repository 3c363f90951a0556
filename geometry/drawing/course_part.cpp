#include "geometry/drawing/course_part.hpp"

#include "geometry/plan/ring_gaps.hpp"

#include <algorithm>

namespace coilwright {

const Course* course_numbered(const Schedule& schedule, int number) {
    for (const Course& course : schedule.courses)
        if (course.number == number)
            return &course;
    return nullptr;
}

const ButtressForm* find_pier(const Schedule& schedule, const std::string& id) {
    for (const ButtressForm& pier : schedule.building.buttresses)
        if (pier.id == id)
            return &pier;
    return nullptr;
}

namespace {

const Cut* cut_by(const CoursePart& part, const std::string& id) {
    for (const Ring* ring : part.rings)
        for (const Cut& cut : ring->cuts)
            if (cut.by == id)
                return &cut;
    return nullptr;
}

/// Whether the tubes of `later` stop against those of `first`, so that `first` is laid before it.
bool stops_at(const BuildingForm& building, const CoursePart& later, const CoursePart& first) {
    const int n = later.course->number;
    if (later.dome && first.dome) {
        if (!cut_by(later, first.id()))
            return false;
        switch (join_effect(building, later.id(), first.id())) {
        case JoinEffect::stops_at_wall:
            return !ring_runs_in(building, *later.dome, *first.dome, n);
        case JoinEffect::opens_to_room:
            return !runs_through(*later.dome, *first.dome, n);
        case JoinEffect::none: // its ring is bonded into this one
            return true;
        }
    }
    if (later.dome && first.tunnel) // the tunnel runs in to the ring's inside face
        return (first.tunnel->from == later.id() || first.tunnel->to == later.id()) &&
               tunnel_runs_in(*first.tunnel, *later.dome, n);
    if (later.tunnel && first.dome)
        return (later.tunnel->from == first.id() || later.tunnel->to == first.id()) &&
               !stops_at(building, first, later);
    return false;
}

/// As the crew lays them: each after all that it stops against; else as they stand. Three that stop
/// against one another in a ring keep their order.
void put_in_laying_order(const BuildingForm& building, std::vector<CoursePart>& parts) {
    std::vector<CoursePart> laid;
    while (!parts.empty()) {
        const auto ready = std::find_if(parts.begin(), parts.end(), [&](const CoursePart& part) {
            return std::none_of(parts.begin(), parts.end(), [&](const CoursePart& other) {
                return &other != &part && stops_at(building, part, other);
            });
        });
        const auto next = ready == parts.end() ? parts.begin() : ready;
        laid.push_back(std::move(*next));
        parts.erase(next);
    }
    parts = std::move(laid);
}

} // namespace

bool runs_through(const DomeForm& dome, const DomeForm& other, int course) {
    return (course % 2 == 1) == (dome.id < other.id);
}

/// Domes first, each in the order of the building.
static std::vector<CoursePart> gather_parts(const Schedule& schedule, const Course& course) {
    std::vector<CoursePart> parts;
    const auto add = [&](CoursePart part, const auto& is_of_it) {
        part.course = &course;
        for (const Straight& straight : course.straights)
            if (is_of_it(straight))
                part.straights.push_back(&straight);
        if (!part.rings.empty() || (part.tunnel && !part.straights.empty()))
            parts.push_back(std::move(part));
    };
    for (const DomeForm& dome : schedule.building.domes) {
        CoursePart part;
        part.dome = &dome;
        for (const Ring& ring : course.rings)
            if (ring.dome == dome.id)
                part.rings.push_back(&ring);
        add(std::move(part), [&](const Straight& straight) {
            const ButtressForm* pier = find_pier(schedule, straight.of);
            return pier && pier->dome == dome.id;
        });
    }
    for (const TunnelForm& tunnel : schedule.building.tunnels) {
        CoursePart part;
        part.tunnel = &tunnel;
        add(std::move(part), [&](const Straight& straight) { return straight.of == tunnel.id; });
    }
    return parts;
}

std::vector<CoursePart> parts_of(const Schedule& schedule, const Course& course) {
    std::vector<CoursePart> parts = gather_parts(schedule, course);
    put_in_laying_order(schedule.building, parts);
    return parts;
}

std::optional<CoursePart> part_in(const Schedule& schedule, int number, const std::string& id) {
    if (const Course* course = course_numbered(schedule, number))
        for (CoursePart& part : gather_parts(schedule, *course))
            if (part.id() == id)
                return std::move(part);
    return std::nullopt;
}

bool several_parts(const Schedule& schedule) {
    return schedule.building.domes.size() + schedule.building.tunnels.size() > 1;
}

bool concerns(const BuildingPlan& plan, const SetNote& note, const std::string& part) {
    const BuildingForm& building = plan.schedule.building;
    if (find_dome(building, note.element) || find_tunnel(building, note.element))
        return note.element == part;
    for (const OpeningPlan& opening : plan.schedule.openings)
        if (opening.form.id == note.element)
            return opening.form.in == part;
    for (const Sleeve& sleeve : plan.design.sleeves)
        if (sleeve.id == note.element)
            return sleeve.in == part;
    if (const ButtressForm* pier = find_pier(plan.schedule, note.element))
        return pier->dome == part;
    return true; // of no one part: on the sheet of each
}

std::vector<const SleevePlan*> sleeves_of(const BuildingPlan& plan, const CoursePart& part) {
    std::vector<const SleevePlan*> sleeves;
    for (const SleevePlan& sleeve : plan.schedule.sleeves)
        if (sleeve.form.in == part.id() && sleeve.set_before_course == part.course->number)
            sleeves.push_back(&sleeve);
    return sleeves;
}

std::string cut_letter(const Ring& ring, const Cut& cut) {
    return ring.wythe > 1 ? cut.letter + std::to_string(ring.wythe) : cut.letter;
}

bool form_carries(const CoursePart& part) {
    return part.tunnel && std::any_of(part.course->before.begin(), part.course->before.end(),
                                      [&](const SetNote& note) {
                                          return note.element == part.tunnel->id &&
                                                 note.what == "form carries";
                                      });
}

} // namespace coilwright
