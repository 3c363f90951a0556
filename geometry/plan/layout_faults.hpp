// What the layout checks share: a place to put faults, and lengths as the design shows them.
#pragma once

#include "geometry/plan/building_form.hpp"
#include "geometry/plan/opening_place.hpp"

#include <algorithm>
#include <map>
#include <string>
#include <utility>
#include <vector>

namespace coilwright {

class LayoutFaults {
public:
    explicit LayoutFaults(const Design& design) : design_(design) {}

    const Design& design() const { return design_; }
    std::string length(double metres) const { return length_text(metres, design_.unit); }

    /// The caller fills `allowed` and `example`.
    Diagnostic& add(const std::string& code, SourcePlace place, const std::string& subject,
                    const std::string& message) {
        Diagnostic diagnostic;
        diagnostic.code = code;
        diagnostic.place = place;
        diagnostic.subject = subject;
        diagnostic.message = message;
        faults_.push_back(diagnostic);
        return faults_.back();
    }

    bool has(const std::string& subject) const {
        return std::any_of(faults_.begin(), faults_.end(),
                           [&](const Diagnostic& fault) { return fault.subject == subject; });
    }
    void add(const Diagnostic& diagnostic) { faults_.push_back(diagnostic); }

    bool empty() const { return faults_.empty(); }
    std::vector<Diagnostic> take() { return std::move(faults_); }

private:
    const Design& design_;
    std::vector<Diagnostic> faults_;
};

/// What is wrong with the measured tops of courses.
struct TopFaults {
    std::map<int, double> sound;      // the tops that can be
    std::map<int, Diagnostic> faults; // one for each of the others that rises with its number
};
/// A top must lie over the course below it, as measured or as reckoned from the last one measured,
/// and no more than a course off where that puts it. Each is judged as if those below it that
/// cannot be had not been measured.
TopFaults check_tops(const Design& design);
/// Tells them, and those of courses that the building does not have (nullptr: not known) instead.
void report_tops(const Design& written, const TopFaults& tops, const BuildingForm* building,
                 LayoutFaults& faults);

Diagnostic& report_below_floor(const Opening& opening, LayoutFaults& faults);
Diagnostic& report_at_foot(const Opening& opening, const CourseLevels& wall, LayoutFaults& faults);
void check_openings(const BuildingForm& building, LayoutFaults& faults);
/// The openings of one dome, each taken alone, where the tube's width is not known: what holds
/// whatever it is.
void check_openings_of_any_tube(const BuildingForm& building, const DomeForm& dome,
                                LayoutFaults& faults);
/// Wall between an opening of a dome and whatever else takes its ring. `openings`: those that each
/// have their place in it.
void check_gaps(const BuildingForm& building, const DomeForm& dome,
                const std::vector<OpeningForm>& openings, LayoutFaults& faults);
void check_tunnel_openings(const BuildingForm& building, LayoutFaults& faults);
void check_tunnels(const BuildingForm& building, LayoutFaults& faults);
void check_buttresses(const BuildingForm& building, LayoutFaults& faults);
void check_domes_apart(const BuildingForm& building, LayoutFaults& faults);
/// Every pair of elements that must not meet in plan, and what stands before openings.
void check_meetings(const BuildingForm& building, LayoutFaults& faults);
void check_reveals(const BuildingForm& building, LayoutFaults& faults);
void check_sleeves(const BuildingForm& building, LayoutFaults& faults);

/// The stretch along a tunnel's side in which an opening or a sleeve may lie: a tube's width of
/// wall is left at each end.
std::pair<double, double> free_wall(const BuildingForm& building, const TunnelForm& tunnel);

} // namespace coilwright
