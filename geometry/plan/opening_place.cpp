#include "geometry/plan/opening_place.hpp"

#include "geometry/base/shown_step.hpp"
#include "geometry/plan/heads.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace coilwright {

namespace {

/// Where widths are compared: often enough that no facet of the model finds a wider place.
std::vector<double> compared_heights(const OpeningForm& opening, double top, const DomeForm& dome) {
    std::vector<double> heights;
    const double step = dome.course_height / 4;
    for (double z = opening.sill; z < top; z += step)
        heights.push_back(z);
    heights.push_back(std::clamp(opening.springing - 2 * height_tie, opening.sill, top));
    for (int n = 1; n <= dome.last_ring; ++n) {
        const double z = dome.course_middle(n);
        if (z >= opening.sill && z < top)
            heights.push_back(z);
    }
    return heights;
}

/// Tries measures of one opening against one wall.
class MeasureTrial {
public:
    MeasureTrial(const Opening& opening, const OpeningForm& form, const DomeForm& dome,
                 DisplayUnit unit)
        : opening_(opening), form_(form), dome_(dome), step_(shown_step(unit)) {}

    std::optional<OtherMeasures> lower_head(double sill) const {
        const int most = courses_in(opening_.height);
        for (int k = most; k >= 1; k -= stride(most)) {
            OtherMeasures measures;
            measures.height = shown(k * dome_.course_height);
            if (sill != opening_.sill)
                measures.sill = sill;
            if (*measures.height < opening_.height && works(measures))
                return measures;
        }
        return std::nullopt;
    }

    std::optional<OtherMeasures> lower_sill() const {
        const int most = courses_in(opening_.sill);
        for (int k = most; k >= 0; k -= stride(most)) {
            OtherMeasures measures;
            measures.sill = shown(k * dome_.course_height);
            if (*measures.sill < opening_.sill && works(measures))
                return measures;
        }
        return std::nullopt;
    }

    std::optional<OtherMeasures> narrower(double sill) const {
        for (int tenths = 9; tenths >= 1; --tenths) {
            OtherMeasures measures;
            measures.width = shown(tenths * opening_.width / 10);
            if (opening_.head.kind == HeadKind::circle)
                measures.height = measures.width;
            if (sill != opening_.sill)
                measures.sill = sill;
            if (works(measures))
                return measures;
        }
        return std::nullopt;
    }

    /// The least change that brings the middle of a course within it: of its width or height, on a
    /// joint or not, to one to three courses.
    std::optional<OtherMeasures> larger() const {
        const double t = dome_.course_height;
        const double joint = shown(std::floor(opening_.sill / t + 1e-6) * t);
        const bool is_circle = opening_.head.kind == HeadKind::circle;
        for (const bool on_joint : {false, true})
            for (int wide = 0; wide <= 3; ++wide)
                for (int high = is_circle ? wide : 0; high <= (is_circle ? wide : 3); ++high) {
                    OtherMeasures measures;
                    if (on_joint)
                        measures.sill = joint;
                    if (wide > 0 && shown_up(wide * t) > opening_.width)
                        measures.width = shown_up(wide * t);
                    if (high > 0 && shown_up(high * t) > opening_.height)
                        measures.height = shown_up(high * t);
                    if (works(measures))
                        return measures;
                }
        return std::nullopt;
    }

private:
    const Opening& opening_;
    const OpeningForm& form_;
    const DomeForm& dome_;
    double step_;

    int courses_in(double metres) const {
        return static_cast<int>(std::floor(metres / dome_.course_height + 1e-9));
    }
    /// Of a tall wall not every joint is tried.
    static int stride(int courses) { return std::max(1, courses / 24); }
    /// As it is written: whole eighths or millimetres.
    double shown(double metres) const { return std::floor(metres / step_ + 1e-6) * step_; }
    double shown_up(double metres) const { return std::ceil(metres / step_ - 1e-6) * step_; }

    bool works(const OtherMeasures& measures) const {
        Opening trial = opening_;
        trial.width = measures.width.value_or(opening_.width);
        trial.sill = measures.sill.value_or(opening_.sill);
        trial.height = measures.height.value_or(opening_.height);
        if (trial.width < step_ || !head_stands(trial))
            return false;
        OpeningForm form = make_opening_form(trial);
        form.fan_depth = form_.fan_depth;
        return place_in_wall(form, dome_).misfit == Misfit::none;
    }

    /// What the reader asks of a head's rise: a pointed one not flatter than round, a segmental one
    /// not steeper, none higher than its opening; a circle as high as wide.
    static bool head_stands(const Opening& trial) {
        const double half = trial.width / 2;
        const double rise = trial.head.rise.value_or(
            trial.head.kind == HeadKind::pointed ? trial.width * std::sqrt(3.0) / 2 : half);
        switch (trial.head.kind) {
        case HeadKind::square:
            return true;
        case HeadKind::round:
            return half <= trial.height + height_tie;
        case HeadKind::pointed:
            return rise >= half - height_tie && rise <= trial.height + height_tie;
        case HeadKind::segmental:
            return rise <= half + height_tie && rise <= trial.height + height_tie;
        case HeadKind::circle:
            return std::abs(trial.width - trial.height) <= height_tie;
        }
        return false;
    }
};

} // namespace

double rings_end(const DomeForm& dome) {
    return dome.course_bottom(dome.last_ring + 1);
}

double highest_head(const DomeForm& dome) {
    return rings_end(dome) - dome.course_height;
}

OpeningPlace place_in_wall(const OpeningForm& opening, const DomeForm& dome) {
    if (opening.sill < -height_tie)
        return {Misfit::below_floor};
    const double top = taken_top(opening, dome);
    if (top > rings_end(dome) - height_tie)
        return {Misfit::too_high};
    const std::optional<LintelBand> band = lintel_band(opening, dome);
    for (const double z : compared_heights(opening, top, dome)) {
        const double half = taken_half_width(opening, band, z), room = inside_radius(dome, z);
        if (half >= widest_share * room)
            return {z >= opening.top - height_tie ? Misfit::lintel_too_long : Misfit::too_wide, z,
                    half, room};
    }
    if (opening.head_kind == HeadKind::circle &&
        opening.sill < dome.bottom() + dome.course_height / 2)
        return {Misfit::at_foot};
    if (opening.fan_depth > 0 &&
        std::abs(opening.springing - nearest_joint(dome, opening.springing)) > joint_slack)
        return {Misfit::fan_off_joint};
    bool cuts = false;
    for (int n = 1; n <= dome.last_ring && !cuts; ++n)
        cuts = cuts_course(opening, dome, n);
    if (!cuts)
        return {Misfit::cuts_nothing};
    if (opening.niche_depth > 2 * dome.width / 3 + height_tie)
        return {Misfit::niche_too_deep};
    return {};
}

std::optional<OtherMeasures> workable_measures(const Opening& opening, const OpeningForm& form,
                                               const DomeForm& dome, DisplayUnit unit,
                                               bool width_first) {
    const MeasureTrial trial(opening, form, dome, unit);
    const double sill = opening.sill;
    std::optional<OtherMeasures> found;
    if (width_first)
        found = trial.narrower(sill);
    if (!found)
        found = trial.lower_head(sill);
    if (!found)
        found = trial.lower_sill();
    if (!found)
        found = trial.narrower(sill);
    if (!found && sill > 0)
        found = trial.lower_head(0);
    if (!found && sill > 0)
        found = trial.narrower(0);
    return found;
}

std::optional<OtherMeasures> cutting_measures(const Opening& opening, const OpeningForm& form,
                                              const DomeForm& dome, DisplayUnit unit) {
    return MeasureTrial(opening, form, dome, unit).larger();
}

} // namespace coilwright
