// What the crew does at heads and sleeves, course by course. Included by set_notes.cpp.
#pragma once

#include "geometry/plan/schedule.hpp"

namespace coilwright {

/// The course of that number to write notes on; nullptr where the building has none.
Course* course_numbered(Schedule& schedule, int n);

/// Fans, their bags on each course, lintels and what is filled behind them.
void note_heads(Schedule& schedule);
/// Where each sleeve lies, from the datum mark and on the rod.
void note_sleeves(Schedule& schedule);

} // namespace coilwright
