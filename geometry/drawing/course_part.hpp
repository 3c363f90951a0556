// What one sheet of the crew book is for: what one dome or one tunnel lays in one course.
#pragma once

#include "geometry/plan/plan_building.hpp"

#include <optional>
#include <string>
#include <vector>

namespace coilwright {

/// One dome's rings and the piers that stand against them, or one tunnel's walls. Points into the
/// schedule.
struct CoursePart {
    const Course* course = nullptr;
    const DomeForm* dome = nullptr; // one of the two
    const TunnelForm* tunnel = nullptr;
    std::vector<const Ring*> rings;         // of the dome: the first, and a second wythe outside it
    std::vector<const Straight*> straights; // the tunnel's, or those of the dome's piers
    const std::string& id() const { return dome ? dome->id : tunnel->id; }
};

/// The parts of a course in the order in which the crew lays them: a kept wall before the rings
/// that stop against it, where two rings cross the one that runs through, a ring before the tunnel
/// that butts on it and after the one that runs in; else domes first, in the order of the building.
std::vector<CoursePart> parts_of(const Schedule& schedule, const Course& course);
/// The same dome or tunnel in the course of another number; none where it lays nothing there.
std::optional<CoursePart> part_in(const Schedule& schedule, int number, const std::string& id);
/// Whether a dome's ring runs through where it crosses another's in open plan: by turns.
bool runs_through(const DomeForm& dome, const DomeForm& other, int course);
/// Whether sheets must say whose they are: more than one dome, or a tunnel.
bool several_parts(const Schedule& schedule);

/// The course of that number, or nullptr.
const Course* course_numbered(const Schedule& schedule, int number);
/// The pier of that id, or nullptr.
const ButtressForm* find_pier(const Schedule& schedule, const std::string& id);

/// Whether a note is for the sheet of a dome or tunnel: notes on it, on its openings and sleeves,
/// and notes on what no one knows.
bool concerns(const BuildingPlan& plan, const SetNote& note, const std::string& part);
/// The sleeves of a part that are set with this course.
std::vector<const SleevePlan*> sleeves_of(const BuildingPlan& plan, const CoursePart& part);
/// The letter of a cut on the sheet: those of a second wythe bear a 2.
std::string cut_letter(const Ring& ring, const Cut& cut);
/// Whether the part's vault leans in this course, so that its form carries it.
bool form_carries(const CoursePart& part);

} // namespace coilwright
