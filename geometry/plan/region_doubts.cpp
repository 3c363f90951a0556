#include "geometry/plan/region_pieces.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

/// Above this many shapes at one place nothing is tried: 2^k combinations of their sides.
constexpr std::size_t most_local_shapes = 10;

class DoubtJudge {
public:
    DoubtJudge(const PlanExpression& expression, const PlanOutline& outline,
               const Crossings& crossings, const PlanFormula& formula)
        : expression_(expression), outline_(outline), crossings_(crossings), formula_(formula),
          sides_(expression.shapes.size(), ShapeSide::out) {}

    bool is_idle(const Doubt& doubt) {
        for (const int index : {doubt.curve, doubt.other})
            if (!outline_.bounds_of(curve(index)).holds(doubt.at, doubt.reach))
                return true;
        const int a = curve(doubt.curve).shape, b = curve(doubt.other).shape;
        gather(doubt, a, b);
        const bool idle = local_.size() <= most_local_shapes &&
                          (doubt.touching ? touch_is_idle(a, b) : meeting_is_idle(doubt));
        for (const int shape : near_)
            sides_[static_cast<std::size_t>(shape)] = ShapeSide::out;
        return idle;
    }

private:
    const PlanCurve& curve(int index) const {
        return outline_.curves[static_cast<std::size_t>(index)];
    }

    /// All shapes that may hold the place, and those whose boundaries pass it.
    void gather(const Doubt& doubt, int a, int b) {
        near_.assign(formula_.around(a).begin(), formula_.around(a).end());
        near_.insert(near_.end(), formula_.around(b).begin(), formula_.around(b).end());
        std::sort(near_.begin(), near_.end());
        near_.erase(std::unique(near_.begin(), near_.end()), near_.end());
        local_.clear();
        for (const int shape : near_) {
            if (!formula_.uses(shape))
                continue;
            const double outside =
                distance_outside(expression_.shapes[static_cast<std::size_t>(shape)], doubt.at);
            if (std::abs(outside) <= doubt.reach || (doubt.touching && (shape == a || shape == b)))
                local_.push_back(shape);
            else if (outside < 0)
                sides_[static_cast<std::size_t>(shape)] = ShapeSide::in;
        }
    }

    bool value(unsigned combination) {
        for (std::size_t i = 0; i < local_.size(); ++i)
            sides_[static_cast<std::size_t>(local_[i])] =
                (combination >> i & 1U) != 0 ? ShapeSide::in : ShapeSide::out;
        return formula_.value(near_, sides_) == ShapeSide::in;
    }
    unsigned combinations() const { return 1U << local_.size(); }

    bool touch_is_idle(int a, int b) {
        if (!formula_.uses(a) || !formula_.uses(b))
            return true;
        const auto bit = [&](int shape) {
            return 1U << (std::find(local_.begin(), local_.end(), shape) - local_.begin());
        };
        const unsigned in_a = bit(a), in_b = bit(b);
        for (unsigned others = 0; others < combinations(); ++others) {
            if ((others & (in_a | in_b)) != 0)
                continue;
            const bool neither = value(others), only_a = value(others | in_a);
            const bool only_b = value(others | in_b), both = value(others | in_a | in_b);
            const bool on_a = neither != only_a || only_b != both;
            const bool on_b = neither != only_b || only_a != both;
            if (on_a && on_b)
                return false;
        }
        return true;
    }

    bool meeting_is_idle(const Doubt& doubt) {
        std::vector<bool> values;
        for (unsigned i = 0; i < combinations(); ++i)
            values.push_back(value(i));
        std::vector<int> met;
        for (std::size_t k = 0; k < local_.size(); ++k) {
            bool decides = false;
            for (unsigned i = 0; i < combinations() && !decides; ++i)
                decides = values[i] != values[i ^ (1U << k)];
            if (decides)
                add_curves_at(doubt, local_[k], met);
        }
        return met.size() <= 2;
    }

    /// The curves of a shape that pass the place, sides on one line once.
    void add_curves_at(const Doubt& doubt, int shape, std::vector<int>& met) const {
        const auto index = static_cast<std::size_t>(shape);
        for (int c = outline_.first_curve[index]; c < outline_.first_curve[index + 1]; ++c) {
            const auto [first, last] = shared_lines_of(crossings_, c);
            const bool had = std::any_of(met.begin(), met.end(), [&, f = first, l = last](int m) {
                for (std::size_t i = f; i < l; ++i)
                    if (crossings_.shared[i].other == m)
                        return true;
                return false;
            });
            if (!had && passes(curve(c), doubt))
                met.push_back(c);
        }
    }

    static bool passes(const PlanCurve& c, const Doubt& doubt) {
        if (c.circle)
            return true; // the shape's only curve
        const double along = c.direction.dot(doubt.at - c.start);
        return (doubt.at - c.at(std::clamp(along, 0.0, c.length))).norm() <= doubt.reach;
    }

    const PlanExpression& expression_;
    const PlanOutline& outline_;
    const Crossings& crossings_;
    const PlanFormula& formula_;
    std::vector<ShapeSide> sides_;
    std::vector<int> near_, local_;
};

} // namespace

bool doubts_are_idle(const PlanExpression& expression, const PlanOutline& outline,
                     const Crossings& crossings, const PlanFormula& formula) {
    if (crossings.doubts.empty())
        return true;
    DoubtJudge judge(expression, outline, crossings, formula);
    return std::all_of(crossings.doubts.begin(), crossings.doubts.end(),
                       [&](const Doubt& doubt) { return judge.is_idle(doubt); });
}

} // namespace coilwright
