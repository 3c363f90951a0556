// How long the work takes: a plan day by day.
#pragma once

#include "geometry/takeoff/take_off.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace coilwright {

/// Part of a task that is done on a day.
struct DayWork {
    Phase phase = Phase::walls;
    std::string what; // "Course 7", "Coat 'base' outside"
    int course = 0;   // 0: no course
    double share = 0; // of the task
    double person_days = 0;
    bool ends = false; // the task is done
};

struct WorkDay {
    int number = 1;   // of working days
    int calendar = 0; // days after the first, rest days counted
    std::optional<Date> date;
    std::vector<DayWork> work;
    std::vector<std::string> set; // what to set, strike or leave before and after its courses
    double person_days = 0;       // used
    // To have on site for its courses.
    double fill_loose = 0, stabiliser_mass = 0, water = 0, tube_cut = 0, wire = 0, buckets = 0;
};

/// A bar of the chart: first and last day of a stage, counted on the calendar.
struct StageBar {
    std::string name;
    int from = 0, to = 0;
    double person_days = 0;
};

struct DayPlan {
    std::vector<WorkDay> days; // working days on which something is done
    std::vector<StageBar> stages;
    int working_days = 0, calendar_days = 0;
    double person_days = 0;         // of all tasks, those too that ten years do not reach
    std::map<Phase, double> labour; // the same by phase, none of 0
    std::map<Phase, std::vector<Figure>> labour_figures; // what it was worked out from
    bool ended = true;              // false: more than ten years
    std::vector<std::string> notes;
};

/// Lays the tasks into days, each as early as the crew, the order of work and the ages allow:
/// trench, courses (all elements of a course together), doors and windows, coats with their curing,
/// paint, floor. A course waits while `lift` courses lie on fill younger than its age_per_lift; no
/// more than `most_courses` end on one day. Coats on a side wait for the cure of the one before,
/// the first coat, or the paint or floor where there is none, for forms struck and frames fitted,
/// doors and windows for `strike_age` after the course that lets their form be struck. Rest days
/// count where a start is given. Rates are of one person and day.
DayPlan plan_days(const BuildingPlan& plan, const TakeOff& take, const Works& works);

/// Adds the person-days as lines of an item "labour".
void add_labour(TakeOff& take, const DayPlan& days);

/// 0 Monday ... 6 Sunday; 2027-04-05 -> 0.
int day_of_week(const Date& date);
Date days_after(const Date& date, int days);
/// "2027-04-05"
std::string date_text(const Date& date);

} // namespace coilwright
