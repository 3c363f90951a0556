// The bottom of the wall: how deep, how dry.
#include "geometry/checks/held_against.hpp"
#include "geometry/checks/trade_findings.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

class GroundCheck {
public:
    explicit GroundCheck(const BuildingPlan& plan)
        : design_(plan.design), schedule_(plan.schedule), wording_{plan.design.unit} {}

    std::vector<Finding> run() {
        check_foundation();
        check_depth();
        check_frost();
        check_base();
        return std::move(findings_);
    }

private:
    const Design& design_;
    const Schedule& schedule_;
    Wording wording_;
    std::vector<Finding> findings_;

    const Limit* limit(const char* name) const { return find_limit(design_.limits, name); }
    bool is_stated() const { return design_.ground.place.line > 0; }
    double bottom() const {
        return schedule_.courses.empty() ? 0 : schedule_.courses.front().bottom;
    }

    void check_foundation() {
        const Limit *least = limit("foundation.least_courses"),
                    *most = limit("foundation.most_courses");
        if (!least || !most)
            return;
        const int courses = design_.course.foundation;
        Finding found =
            held_against("foundation-courses", {"course", design_.course.place}, courses,
                         FindingUnit::count, Bound::at_least, *least, Verdict::advice);
        found.message = std::to_string(courses) + (courses == 1 ? " course lies" : " courses lie") +
                        " below the floor; " + fixed_text(least->value, 0) + " to " +
                        fixed_text(most->value, 0) + " are usual.";
        if (found.verdict != Verdict::holds)
            found.remedy = "Set foundation = " + fixed_text(std::ceil(least->value), 0) + ".";
        findings_.push_back(std::move(found));
    }

    void check_depth() {
        const Limit* least = limit("footing.depth");
        if (!least)
            return;
        const double depth = design_.ground.level - bottom();
        Finding found = held_against("footing-depth", {"ground", design_.ground.place}, depth,
                                     FindingUnit::metre, Bound::at_least, *least,
                                     is_stated() ? Verdict::fails : Verdict::advice);
        found.message = "The wall starts " + wording_.length(depth) + " below the ground (" +
                        wording_.length(least->value) + " at least)" +
                        (is_stated() ? "."
                                     : "; the ground is taken to lie " +
                                           wording_.length(-design_.ground.level) +
                                           " below the floor, as no [ground] says.");
        if (found.verdict != Verdict::holds)
            found.remedy =
                "Set foundation = " +
                fixed_text(
                    std::ceil((least->value - design_.ground.level) / design_.course.height - 1e-6),
                    0) +
                ", or [ground] level = " + wording_.length_up(least->value + bottom()) + ".";
        findings_.push_back(std::move(found));
    }

    void check_frost() {
        const Limit* rule = limit("footing.depth");
        if (!rule)
            return;
        const Subject subject{"ground", design_.ground.place};
        if (!design_.ground.frost_depth) {
            findings_.push_back(not_judged("frost-depth", subject, *rule,
                                           "No frost_depth is stated: whether the trench reaches "
                                           "below frost is not judged."));
            return;
        }
        Limit frost = *rule;
        frost.value = *design_.ground.frost_depth;
        const double trench = design_.ground.level - bottom() + design_.trench.gravel_depth;
        Finding found = held_against("frost-depth", subject, trench, FindingUnit::metre,
                                     Bound::at_least, frost, Verdict::fails);
        found.message = "The trench with its gravel reaches " + wording_.length(trench) +
                        " below the ground; frost reaches " + wording_.length(frost.value) + ".";
        if (found.verdict != Verdict::holds)
            found.remedy = "Set [trench] gravel_depth = " +
                           wording_.length_up(design_.trench.gravel_depth + frost.value - trench) +
                           ".";
        findings_.push_back(std::move(found));
    }

    /// The fill of a course: one that names it, else one that names none.
    const Fill* fill_of(int course) const {
        const Fill* rest = nullptr;
        for (const Fill& fill : design_.fills) {
            if (!fill.courses)
                rest = rest ? rest : &fill;
            else if (fill.courses->first <= course && course <= fill.courses->second)
                return &fill;
        }
        return rest;
    }

    void check_base() {
        const Limit* above = limit("base.above_ground");
        if (!above)
            return;
        const double wet = design_.ground.level + above->value;
        int base = 0, dry = 0;
        for (const Course& course : schedule_.courses) {
            if (course.top > wet + 1e-6)
                break;
            base = course.number;
            const Fill* fill = fill_of(course.number);
            if (fill && (fill->kind == FillKind::gravel || fill->stabiliser != Stabiliser::none))
                ++dry;
        }
        if (base == 0)
            return;
        const std::string which =
            base == 1 ? "Course 1 ends" : "Courses 1 to " + std::to_string(base) + " end";
        const std::string why =
            which + " less than " + wording_.length(above->value) + " above the ground";
        const Subject subject{"fill",
                              design_.fills.empty() ? SourcePlace{} : design_.fills.front().place};
        if (design_.fills.empty()) {
            Finding found =
                not_judged("base-courses", subject, *above,
                           why + ": gravel in double tubes or stabilised fill keeps damp "
                                 "out; the design names no fill.");
            found.remedy = base_remedy(base);
            findings_.push_back(std::move(found));
            return;
        }
        Limit all = *above;
        all.value = base;
        Finding found = held_against("base-courses", subject, dry, FindingUnit::count,
                                     Bound::at_least, all, Verdict::advice);
        found.message = why + "; " + std::to_string(dry) + " of them " + (dry == 1 ? "is" : "are") +
                        " of gravel or stabilised.";
        if (found.verdict != Verdict::holds)
            found.remedy = base_remedy(base);
        findings_.push_back(std::move(found));
    }

    static std::string base_remedy(int base) {
        return "Add [fill.base] with kind = \"gravel\" and courses = [1, " + std::to_string(base) +
               "].";
    }
};

} // namespace

std::vector<Finding> ground_practice_findings(const BuildingPlan& plan) {
    return GroundCheck(plan).run();
}

} // namespace coilwright
