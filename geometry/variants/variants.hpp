// Many variants of one design, worked out side by side: floor, headroom, materials, money, days,
// and how well a line of thrust fits the wall. Closed forms, plan regions and small linear
// programs; nothing is meshed.
#pragma once

#include "geometry/design/works.hpp"
#include "geometry/plan/plan_building.hpp"
#include "geometry/variants/choices.hpp"

#include <atomic>
#include <cstddef>
#include <functional>
#include <string>
#include <vector>

namespace coilwright {

struct VariantStudy {
    std::string text; // of the design
    Works works;
    std::vector<Choice> choices; // each with a value
};

/// What is compared, in SI. All 0 where the variant cannot be laid.
struct VariantFigures {
    double floor_area = 0;   // between the bags' faces, m2
    double clear_height = 0; // beside the pole of the highest dome, after plaster, m
    double headroom = 0;     // floor with 7 ft (2.134 m) over it in all domes, m2
    double tube = 0;         // to cut, all types and linings, m
    double fill = 0;         // tamped, m3
    double cost = 0;         // likely, in the currency of the works; 0 without prices
    double person_days = 0;
    double working_days = 0, calendar_days = 0;
    bool ended = true; // false: the plan of days does not within ten years; no column of its own
    /// Least geometric factor of safety of the domes and tunnels as finished, beside openings too;
    /// 0 where no line of thrust is found, or a course finds nothing to lie on.
    double safety = 0;
    /// Checks that fail: of the plan (headroom and practice), and one more for each dome and tunnel
    /// in which the line of thrust leaves the wall. Loads, ground and buttresses are for check.
    double failing = 0;
};

enum class FigureKind { height, area, length, volume, money, days, ratio, count };

/// A figure as outputs tell it.
struct FigureColumn {
    std::string word;  // "floor_area"
    std::string title; // "Floor between the bags"
    FigureKind kind = FigureKind::count;
    double VariantFigures::*value = nullptr;
};
/// All figures, in the order in which they are told.
const std::vector<FigureColumn>& figure_columns();

struct VariantResult {
    bool laid = false;
    std::string fault; // why not: the first fault, one sentence
    VariantFigures figures;
};

/// The product of the numbers of values.
std::size_t variant_count(const VariantStudy& study);
/// The place of each choice's value: the first choice changes slowest. Choices of 2 and 3 values,
/// index 4 -> 1, 1. Precondition: index < variant_count.
std::vector<std::size_t> variant_places(const VariantStudy& study, std::size_t index);

/// Precondition: index < variant_count(study).
VariantResult work_out_variant(const VariantStudy& study, std::size_t index);

/// The geometric factor of each dome, then of each tunnel, of a laid building (checks call them
/// geometric-safety and tunnel-safety): see VariantFigures.
std::vector<double> geometric_safeties(const BuildingPlan& plan);
/// The least of them.
double least_geometric_safety(const BuildingPlan& plan);

/// Works out those variants of which `wanted` is true (all where it is empty) on so many threads
/// (0: as many as the machine has cores), and tells each result as it comes: one call at a time, on
/// any thread, in any order. Stops early once `stop` is true. An exception ends all and comes out.
void run_variants(const VariantStudy& study, const std::vector<bool>& wanted, unsigned threads,
                  const std::atomic<bool>& stop,
                  const std::function<void(std::size_t index, VariantResult result)>& tell);

} // namespace coilwright
