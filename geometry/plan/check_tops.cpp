// Measured tops of courses against the layout.
#include "geometry/plan/layout_faults.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

SourcePlace place_of_top(const Design& design, int course) {
    const auto place = design.as_laid_places.find(course);
    return place == design.as_laid_places.end() ? SourcePlace{} : place->second;
}

std::string subject_of_top(int course) {
    return "as_laid.top." + std::to_string(course);
}

class TopCheck {
public:
    explicit TopCheck(const Design& design) : design_(design) {
        levels_.course_height = design.course.height;
        levels_.foundation = design.course.foundation;
    }

    TopFaults run() {
        double last = 0;
        bool first = true;
        for (const auto& [course, top] : design_.as_laid_tops) {
            const bool rises = first || top > last;
            last = top;
            first = false;
            if (rises && judge(course, top)) // the reader told those that do not rise
                levels_.measured_tops[course] = top;
        }
        return {levels_.measured_tops, std::move(faults_)};
    }

private:
    const Design& design_;
    CourseLevels levels_;
    std::map<int, Diagnostic> faults_;

    std::string length(double metres) const { return length_text(metres, design_.unit); }

    bool judge(int course, double top) {
        const double t = levels_.course_height, bottom = levels_.course_bottom(course);
        if (top <= bottom + height_tie) {
            Diagnostic& found =
                add("top-below-course", course,
                    length(top) + ", is not above that of course " + std::to_string(course - 1) +
                        under(course) + ", " + length(bottom) + ".");
            found.hint = "measure both again; 0 is the finished floor";
            return false;
        }
        if (top > bottom + 2 * t + height_tie) {
            Diagnostic& found = add("top-off-layout", course,
                                    length(top) + ", lies " + length(top - bottom - t) +
                                        " over where the layout has it, at " + length(bottom + t) +
                                        ": more than a course.");
            const std::string meant = in_smaller_unit(top, bottom, bottom + 2 * t);
            found.hint = meant.empty() ? "is it the top of a later course?"
                                       : "did you mean \"" + meant + "\"?";
            return false;
        }
        return true;
    }

    Diagnostic& add(const char* code, int course, const std::string& rest) {
        const double t = levels_.course_height, bottom = levels_.course_bottom(course);
        Diagnostic& found = faults_[course];
        found.code = code;
        found.place = place_of_top(design_, course);
        found.subject = subject_of_top(course);
        found.message = "The measured top of course " + std::to_string(course) + ", " + rest;
        found.allowed = "over " + length(bottom) + ", up to " + length(bottom + 2 * t) +
                        "; a course is " + length(t) + " high";
        found.example = std::to_string(course) + " = \"" + length(bottom + t) + "\"";
        return found;
    }

    /// How the height under a course is known, where it was not measured.
    std::string under(int course) const {
        if (levels_.measured_tops.count(course - 1) > 0)
            return {};
        const auto above = levels_.measured_tops.lower_bound(course);
        if (above == levels_.measured_tops.begin())
            return " as the layout has it";
        return " as reckoned from course " + std::to_string(std::prev(above)->first);
    }

    /// A bare number whose unit was forgotten: where it would fit in inches, or cm, or mm.
    std::string in_smaller_unit(double top, double low, double high) const {
        struct Unit {
            DisplayUnit file;
            const char* word;
            double metres;
        };
        for (const Unit& unit :
             {Unit{DisplayUnit::feet, "in", metres_per_inch}, Unit{DisplayUnit::metres, "cm", 0.01},
              Unit{DisplayUnit::metres, "mm", 0.001}}) {
            const double number = top / metres_of(1, design_.unit);
            const double meant = number * unit.metres;
            if (unit.file != design_.unit || meant <= low || meant > high)
                continue;
            return trimmed_text(number, 3) + " " + unit.word;
        }
        return {};
    }
};

} // namespace

TopFaults check_tops(const Design& design) {
    return TopCheck(design).run();
}

void report_tops(const Design& written, const TopFaults& tops, const BuildingForm* building,
                 LayoutFaults& faults) {
    const int count = building ? course_count(*building) : most_courses;
    for (const auto& [course, top] : written.as_laid_tops) {
        if (course <= count) {
            if (const auto fault = tops.faults.find(course); fault != tops.faults.end())
                faults.add(fault->second);
            continue;
        }
        Diagnostic& found = faults.add(
            "top-of-no-course", place_of_top(written, course), subject_of_top(course),
            "A top of course " + std::to_string(course) + " was measured, but the building has " +
                std::to_string(count) + " courses.");
        found.allowed =
            "courses 1 to " + std::to_string(count) + ", counted from the bottom of the trench";
        const CourseLevels& levels = building->domes.front();
        found.example = std::to_string(count) + " = \"" +
                        faults.length(levels.course_bottom(count) + levels.course_height) + "\"";
    }
}

} // namespace coilwright
