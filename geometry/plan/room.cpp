#include "geometry/plan/room.hpp"

#include "geometry/plan/headroom.hpp"

#include <cmath>

namespace coilwright {
namespace {

constexpr int deepest = 14; // halvings of one stretch

class Sampler {
public:
    Sampler(const DomeForm& form, double plaster, double tolerance)
        : form_(form), plaster_(plaster), tolerance_(tolerance) {}

    // The edge at a height, by the room's own question.
    Vec2 at(double height) const { return {clear_radius_at(form_, plaster_, height), height}; }

    void fill(const Vec2& high, const Vec2& low, int depth, std::vector<Vec2>& chain) const {
        const Vec2 middle = at((high.y() + low.y()) / 2);
        const Vec2 chord = low - high;
        const double length = chord.norm();
        const Vec2 off = middle - high;
        const double away =
            length > 0 ? std::abs(chord.x() * off.y() - chord.y() * off.x()) / length : 0;
        if (depth < 3 || (away > tolerance_ / 2 && depth < deepest)) {
            fill(high, middle, depth + 1, chain);
            fill(middle, low, depth + 1, chain);
            return;
        }
        chain.push_back(low);
    }

private:
    const DomeForm& form_;
    double plaster_;
    double tolerance_;
};

} // namespace

std::vector<Vec2> clear_room_curve(const DomeForm& form, double inside_plaster, double tolerance) {
    const Sampler sampler(form, inside_plaster, tolerance);
    const double top = clear_height_at(form, inside_plaster, 0);
    // A little below the top, where the ceiling of a cap or the hole of a skylight begins.
    const Vec2 under(sampler.at(top - 1e-6).x(), top);
    std::vector<Vec2> chain{{0, top}};
    if (under.x() > 0)
        chain.push_back(under);
    sampler.fill(under, sampler.at(0), 0, chain);
    return chain;
}

double revolved_volume(const std::vector<Vec2>& chain) {
    double sum = 0;
    for (std::size_t k = 1; k < chain.size(); ++k) {
        const double a = chain[k - 1].x(), b = chain[k].x();
        sum += (chain[k - 1].y() - chain[k].y()) * (a * a + a * b + b * b) / 3;
    }
    return pi * sum;
}

} // namespace coilwright
