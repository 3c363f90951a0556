// Slices small enough to work by hand, and what must hold of every slice.
#include "geometry/statics/slice.hpp"
#include "geometry/statics/slice_program.hpp"
#include "geometry/statics/voussoirs.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;

namespace {

/// A wall of `count` equal blocks w wide and h high, each of weight 1, from the top down.
Slice wall(int count, double w, double h, double friction = unlimited) {
    Slice slice;
    slice.free_start = true;
    for (int i = 0; i <= count; ++i) {
        const double z = (count - i) * h;
        slice.joints.push_back({{0, z}, {w, z}, friction});
        if (i == count)
            break;
        SliceBlock block;
        block.centre = {w / 2, z - h / 2};
        block.weight = block.sway = 1;
        slice.blocks.push_back(block);
    }
    return slice;
}

/// Arches and leaning stacks at random: some stand, some do not.
Slice random_slice(std::uint64_t seed) {
    testing::Dice dice(seed);
    CircularArch arch;
    arch.radius = dice.between(0.5, 4);
    arch.thickness = arch.radius * dice.between(0.02, 0.3);
    arch.from = -dice.between(0.4, 1.7);
    arch.to = dice.between(0.4, 1.7);
    arch.voussoirs = dice.whole(3, 24);
    arch.unit_weight = dice.between(1e3, 2e4);
    arch.friction = dice.chance(0.4) ? dice.between(0.2, 1.2) : unlimited;
    Slice slice = circular_arch(arch);
    if (dice.chance(0.3)) { // a load on one block
        SliceBlock& block =
            slice.blocks[static_cast<std::size_t>(dice.whole(0, arch.voussoirs - 1))];
        block.push = dice.between(-0.3, 0.3) * block.weight;
        block.push_height = block.centre.y() + arch.thickness / 2;
    }
    if (dice.chance(0.3)) { // a ring that ties or props some blocks
        for (SliceBlock& block : slice.blocks) {
            block.hoop_bottom = block.centre.y() - 0.1;
            block.hoop_top = block.centre.y() + 0.1;
            block.hoop_limit = dice.chance(0.5) ? block.weight * dice.between(0, 1) : 0;
            block.tie_height = block.hoop_top;
            block.tie_limit = dice.chance(0.5) ? block.weight * dice.between(0, 1) : 0;
        }
    }
    return slice;
}

Slice scaled(Slice slice, double k) {
    for (SliceJoint& joint : slice.joints) {
        joint.inner *= k;
        joint.outer *= k;
    }
    for (SliceBlock& block : slice.blocks) {
        block.centre *= k;
        for (double* length :
             {&block.push_height, &block.hoop_bottom, &block.hoop_top, &block.tie_height})
            *length *= k;
        for (double* force :
             {&block.weight, &block.push, &block.sway, &block.hoop_limit, &block.tie_limit})
            *force *= k * k * k;
    }
    return slice;
}

int last_joint(const Slice& slice) {
    return static_cast<int>(slice.blocks.size());
}

Slice with_friction(Slice slice, double friction) {
    for (SliceJoint& joint : slice.joints)
        joint.friction = friction;
    return slice;
}

/// Forces and moments on every block sum to nothing; the LP has no part in this.
void check_equilibrium(const Slice& slice, const ThrustLine& line, double within) {
    for (std::size_t i = 0; i < slice.blocks.size(); ++i) {
        const SliceBlock& block = slice.blocks[i];
        Vec2 force(block.push + line.load_factor * block.sway, -block.weight);
        double turn = -(block.push_height - block.centre.y()) * block.push;
        const auto add = [&](const Vec2& f, const Vec2& at) {
            const Vec2 arm = at - block.centre;
            force += f;
            turn += arm.x() * f.y() - arm.y() * f.x();
        };
        add(line.joints[i + 1].force, line.joints[i + 1].point);
        if (i > 0 || !slice.free_start)
            add(-line.joints[i].force, line.joints[i].point);
        // Where in its course a hoop acts is free: only its greatest lever bounds the moment.
        force.x() += line.hoops[i] - line.ties[i];
        turn += (block.tie_height - block.centre.y()) * line.ties[i];
        const double high = (block.hoop_top - block.centre.y()) * line.hoops[i];
        const double low = (block.hoop_bottom - block.centre.y()) * line.hoops[i];
        CHECK(force.norm() < within);
        CHECK(turn > std::min(low, high) - within);
        CHECK(turn < std::max(low, high) + within);
    }
}

} // namespace

TEST_CASE("a wall on its own: weight above, no thrust, no friction") {
    const Slice slice = wall(4, 0.5, 0.2);
    const CentredThrust centred = centred_thrust(slice);
    REQUIRE(centred.line.stands);
    CHECK(centred.share == Approx(0).margin(1e-9));
    for (int j = 1; j <= 4; ++j)
        CHECK(centred.line.joints[static_cast<std::size_t>(j)].normal == Approx(j));
    CHECK(least_friction(slice).friction == Approx(0).margin(1e-9));
    CHECK(greatest_thrust(slice, 4).joints[4].thrust() == Approx(0).margin(1e-9));
}

TEST_CASE("a wall that is pushed tips about its edge") {
    // Width over height: a block of w 0.5 and height 4 x 0.2 bears 0.5 / 0.8 of its weight sideways
    // at its centre (any statics text); with friction 0.4 it slides first.
    const ThrustLine tips = greatest_sway(wall(4, 0.5, 0.2));
    REQUIRE(tips.stands);
    CHECK(tips.load_factor == Approx(0.5 / 0.8).epsilon(1e-9));
    CHECK(std::abs(tips.joints[4].reach) == Approx(1).epsilon(1e-8));
    CHECK(greatest_sway(wall(4, 0.5, 0.2, 0.4)).load_factor == Approx(0.4).epsilon(1e-9));
    // A load at the top: moment 0.3 x 0.8 on a weight of 4, so 0.06 off the middle of 0.5.
    Slice pushed = wall(4, 0.5, 0.2);
    pushed.blocks[0].push = 0.3;
    pushed.blocks[0].push_height = 0.8;
    const CentredThrust centred = centred_thrust(pushed);
    CHECK(centred.line.joints[4].offset == Approx(0.06).epsilon(1e-9));
    CHECK(centred.line.joints[4].shear == Approx(-0.3).epsilon(1e-9));
    CHECK(centred.line.joints[1].offset == Approx(0.06).epsilon(1e-9)); // 0.3 x 0.2 on 1
    CHECK(centred.share == Approx(0.06 / 0.25).epsilon(1e-9));
    CHECK(centred.safety() == Approx(0.25 / 0.06).epsilon(1e-9));
    CHECK(least_friction(pushed).friction == Approx(0.3).epsilon(1e-9)); // of the top joint
}

TEST_CASE("harmonic stack: four equal blocks reach 25/24 of a length over the edge") {
    // Overhangs 1/2, 1/4, 1/6, 1/8 from the top: 25/24 (any statics text; reckoned). Blocks tip
    // about the edge of what carries them, as in the corbel check.
    const auto stack = [](double last) {
        Slice slice;
        slice.free_start = true;
        double left = 0, z = 0;
        slice.joints.push_back({});
        for (const double out : {1 / 2.0, 1 / 4.0, 1 / 6.0, last}) {
            SliceBlock block;
            block.centre = {left + 0.5, z - 0.05};
            block.weight = 1;
            slice.blocks.push_back(block);
            // Rests on the next block, which lies `out` further right.
            slice.joints.push_back({{left + out, z - 0.1}, {left + 1, z - 0.1}, unlimited});
            left += out;
            z -= 0.1;
        }
        return slice;
    };
    CHECK(1 / 2.0 + 1 / 4.0 + 1 / 6.0 + 1 / 8.0 == Approx(25.0 / 24));
    CHECK(centred_thrust(stack(1 / 8.0)).share == Approx(1).epsilon(1e-8));
    CHECK(least_thrust(stack(1 / 8.0 - 1e-6), 4).stands);
    CHECK_FALSE(least_thrust(stack(1 / 8.0 + 1e-6), 4).stands);
    const Mechanism falls = collapse_mechanism(stack(1 / 8.0 + 1e-3));
    REQUIRE(falls.blocks.size() == 4);
    CHECK(falls.work > 0);
}

TEST_CASE("two blocks that lean on each other: thrust by hand") {
    // A three-hinged frame: two halves of weight 1 with the centre at half span: H = W a / (2 h)
    // between hinges. Contacts of the springings and the crown shrunk to nearly a point.
    const double a = 2, h = 3, e = 1e-7;
    Slice slice;
    slice.joints = {{{-a + e, 0}, {-a - e, 0}, unlimited},
                    {{0, h - e}, {0, h + e}, unlimited},
                    {{a - e, 0}, {a + e, 0}, unlimited}};
    for (const double side : {-1.0, 1.0}) {
        SliceBlock block;
        block.centre = {side * a / 2, h / 2};
        block.weight = 1;
        slice.blocks.push_back(block);
    }
    const double expected = 1 * (a / 2) / h;
    CHECK(least_thrust(slice, 2).joints[2].thrust() == Approx(expected).epsilon(1e-5));
    CHECK(greatest_thrust(slice, 2).joints[2].thrust() == Approx(expected).epsilon(1e-5));
    CHECK(greatest_thrust(slice, 0).joints[0].thrust() == Approx(expected).epsilon(1e-5));
    CHECK(least_thrust(slice, 2).joints[2].normal == Approx(1));
}

TEST_CASE("a leaning block stands by its ring, and the ring's limit counts") {
    // One block, weight 1, its centre 0.1 inside the edge that carries it; a hoop 0.5 above the
    // joint holds it with 0.1 / 0.5.
    Slice slice;
    slice.free_start = true;
    slice.joints = {{}, {{1, 0}, {1.4, 0}, unlimited}};
    SliceBlock block;
    block.centre = {0.9, 0.25};
    block.weight = 1;
    slice.blocks.push_back(block);
    CHECK_FALSE(least_thrust(slice, 1).stands);
    CHECK(collapse_mechanism(slice).work == Approx(0.1 * collapse_mechanism(slice).blocks[0].turn));

    slice.blocks[0].hoop_bottom = slice.blocks[0].hoop_top = 0.5;
    slice.blocks[0].hoop_limit = unlimited;
    CHECK(least_thrust(slice, 1).hoops[0] == Approx(0.2).epsilon(1e-9));
    CHECK(least_thrust(slice, 1).joints[1].thrust() == Approx(0.2).epsilon(1e-9));
    CHECK(greatest_thrust(slice, 1).joints[1].thrust() == Approx(1.0).epsilon(1e-9)); // 0.5 / 0.5
    slice.blocks[0].hoop_limit = 0.21;
    CHECK(greatest_thrust(slice, 1).joints[1].thrust() == Approx(0.21).epsilon(1e-9));
    slice.blocks[0].hoop_limit = 0.19;
    CHECK_FALSE(least_thrust(slice, 1).stands);
    // With the block leaning out a tie is what it needs.
    slice.blocks[0].centre = {1.5, 0.25};
    CHECK_FALSE(least_thrust(slice, 1).stands);
    slice.blocks[0].tie_height = 0.5;
    slice.blocks[0].tie_limit = 0.21;
    CHECK(greatest_thrust(slice, 1).joints[1].thrust() == Approx(-0.2).epsilon(1e-9));
    slice.blocks[0].tie_limit = 0.19;
    CHECK_FALSE(least_thrust(slice, 1).stands);
    // Turning about the joint's outer end the weight sinks 0.1 and the tie gives 0.5 for each
    // radian: 1 x 0.1 - 0.19 x 0.5 is left.
    const Mechanism out = collapse_mechanism(slice);
    REQUIRE(out.blocks.size() == 1);
    CHECK(out.blocks[0].turn < 0);
    CHECK(out.work == Approx(-0.005 * out.blocks[0].turn).epsilon(1e-4));
    // So does a hoop that gives way inward: 1 x 0.1 - 0.19 x 0.5.
    slice.blocks[0].centre = {0.9, 0.25};
    slice.blocks[0].tie_limit = 0;
    slice.blocks[0].hoop_limit = 0.19;
    const Mechanism in = collapse_mechanism(slice);
    REQUIRE(in.blocks.size() == 1);
    CHECK(in.blocks[0].turn > 0);
    CHECK(in.work == Approx(0.005 * in.blocks[0].turn).epsilon(1e-4));
}

TEST_CASE("every state found is one of equilibrium, pressed within its joints") {
    int stand = 0;
    for (std::uint64_t seed = 1; seed <= 150; ++seed) {
        CAPTURE(seed);
        const Slice slice = random_slice(seed);
        const ThrustLine least = least_thrust(slice, last_joint(slice));
        const ThrustLine greatest = greatest_thrust(slice, last_joint(slice));
        REQUIRE(least.stands == greatest.stands);
        if (!least.stands)
            continue;
        ++stand;
        double weight = 0;
        for (const SliceBlock& block : slice.blocks)
            weight += block.weight;
        for (const ThrustLine* line : {&least, &greatest}) {
            check_equilibrium(slice, *line, 1e-6 * weight * 4);
            for (std::size_t j = 0; j < line->joints.size(); ++j) {
                CHECK(line->joints[j].normal >= 0);
                CHECK(std::abs(line->joints[j].reach) < 1 + 1e-6);
                if (std::isfinite(slice.joints[j].friction))
                    CHECK(std::abs(line->joints[j].shear) <=
                          slice.joints[j].friction * line->joints[j].normal + 1e-6 * weight);
            }
        }
        CHECK(least.joints.back().thrust() <= greatest.joints.back().thrust() + 1e-7 * weight);
    }
    CHECK(stand > 30);
    CHECK(stand < 140);
}

TEST_CASE("what cannot stand has a motion of collapse: joints open, loads do work") {
    // Linear programming duality: no state of equilibrium, so a virtual motion in which no joint
    // closes and none of unlimited friction slides (Livesley 1978).
    int fall = 0;
    for (std::uint64_t seed = 1; seed <= 150; ++seed) {
        CAPTURE(seed);
        const Slice slice = random_slice(seed);
        const Mechanism motion = collapse_mechanism(slice);
        CHECK(motion.blocks.empty() == least_thrust(slice, last_joint(slice)).stands);
        if (motion.blocks.empty())
            continue;
        ++fall;
        CHECK(motion.work > 0);
        const auto moved = [&](int block, const Vec2& point) -> Vec2 {
            if (block < 0 || block >= last_joint(slice))
                return {0, 0}; // the ground
            const BlockMotion& m = motion.blocks[static_cast<std::size_t>(block)];
            const Vec2 arm = point - slice.blocks[static_cast<std::size_t>(block)].centre;
            return m.shift + m.turn * Vec2(-arm.y(), arm.x());
        };
        for (int j = 0; j <= last_joint(slice); ++j) {
            const SliceJoint& joint = slice.joints[static_cast<std::size_t>(j)];
            for (const Vec2& end : {joint.inner, joint.outer}) {
                const Vec2 apart = moved(j - 1, end) - moved(j, end);
                CHECK(apart.dot(square_to(joint)) > -1e-6);
                if (!std::isfinite(joint.friction))
                    CHECK(std::abs(apart.dot(along(joint))) < 1e-6);
            }
        }
    }
    CHECK(fall > 10);
}

TEST_CASE("scaling all lengths by k: shares and load factors stay, forces grow by k cubed") {
    int compared = 0;
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
        CAPTURE(seed);
        const Slice slice = random_slice(seed), large = scaled(slice, 3.7);
        const int last = last_joint(slice);
        const CentredThrust small_thrust = centred_thrust(slice),
                            large_thrust = centred_thrust(large);
        CHECK(large_thrust.share == Approx(small_thrust.share).epsilon(1e-5));
        const ThrustLine least = least_thrust(slice, last);
        REQUIRE(least_thrust(large, last).stands == least.stands);
        if (!least.stands)
            continue;
        ++compared;
        CHECK(least_thrust(large, last).joints.back().thrust() ==
              Approx(least.joints.back().thrust() * 3.7 * 3.7 * 3.7).epsilon(1e-5));
        CHECK(greatest_sway(large).load_factor ==
              Approx(greatest_sway(slice).load_factor).epsilon(1e-5));
    }
    CHECK(compared > 10);
}

TEST_CASE("the centred state has share 1 exactly where the slice begins to stand") {
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
        CAPTURE(seed);
        const Slice slice = random_slice(seed);
        const CentredThrust centred = centred_thrust(slice);
        const int last = last_joint(slice);
        CHECK(least_thrust(slice, last).stands == (centred.line.stands && centred.share <= 1));
        if (!centred.line.stands || centred.share < 1e-6)
            continue;
        CHECK(least_thrust(slice, last, centred.share * (1 + 1e-5)).stands);
        CHECK_FALSE(least_thrust(slice, last, centred.share * (1 - 1e-5)).stands);
    }
}

TEST_CASE("friction: none, some, without limit") {
    CircularArch arch;
    arch.radius = 2;
    arch.thickness = 0.4;
    arch.from = -1.2;
    arch.to = 1.2;
    arch.voussoirs = 12;
    arch.unit_weight = 1e4;
    const Slice slice = circular_arch(arch);
    const LeastFriction least = least_friction(slice);
    REQUIRE(least.line.stands);
    CHECK(least.friction > 0);
    CHECK_FALSE(least_thrust(with_friction(slice, 0), 12).stands);
    CHECK_FALSE(least_thrust(with_friction(slice, least.friction * 0.999), 12).stands);
    CHECK(least_thrust(with_friction(slice, least.friction * 1.001), 12).stands);
    // More friction never narrows the range; a great deal of it is as good as no limit.
    double low = unlimited, high = 0;
    for (const double friction : {least.friction * 1.01, 0.5, 1.0, 10.0, 1e4}) {
        CAPTURE(friction);
        const double least_now =
            least_thrust(with_friction(slice, friction), 12).joints[12].thrust();
        const double most_now =
            greatest_thrust(with_friction(slice, friction), 12).joints[12].thrust();
        CHECK(least_now <= low + 1e-3);
        CHECK(most_now >= high - 1e-3);
        low = least_now;
        high = most_now;
    }
    CHECK(low == Approx(least_thrust(slice, 12).joints[12].thrust()).epsilon(1e-6));
    CHECK(high == Approx(greatest_thrust(slice, 12).joints[12].thrust()).epsilon(1e-6));
}

TEST_CASE("of states that are as centred, the one that spares the rings") {
    // A plumb wall needs none: whatever ring forces it could bear are left at nothing.
    Slice slice = wall(5, 0.4, 0.3);
    for (SliceBlock& block : slice.blocks) {
        block.hoop_bottom = block.centre.y() - 0.15;
        block.hoop_top = block.tie_height = block.centre.y() + 0.15;
        block.hoop_limit = unlimited;
        block.tie_limit = 1;
    }
    for (const ThrustLine& line : {centred_thrust(slice).line, least_friction(slice).line}) {
        REQUIRE(line.stands);
        for (std::size_t i = 0; i < slice.blocks.size(); ++i) {
            CHECK(line.hoops[i] == Approx(0).margin(1e-6));
            CHECK(line.ties[i] == Approx(0).margin(1e-6));
        }
    }
}

TEST_CASE("ties never make it worse") {
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
        CAPTURE(seed);
        const Slice slice = random_slice(seed);
        Slice tied = slice;
        for (SliceBlock& block : tied.blocks) {
            block.tie_height = block.centre.y();
            block.tie_limit = std::max(block.tie_limit, 0.2 * block.weight);
        }
        for (std::size_t i = 0; i < slice.blocks.size(); ++i)
            if (slice.blocks[i].tie_limit > 0)
                tied.blocks[i].tie_height = slice.blocks[i].tie_height;
        const CentredThrust before = centred_thrust(slice), after = centred_thrust(tied);
        CHECK(after.share <= before.share * (1 + 1e-6) + 1e-9);
    }
}

TEST_CASE("the solver always decides: domes, arches and walls of every size and weight") {
    for (std::uint64_t seed = 1; seed <= 120; ++seed) {
        CAPTURE(seed);
        const Slice slice =
            scaled(random_slice(seed), std::pow(10.0, static_cast<double>(seed % 7) - 3));
        const int last = last_joint(slice);
        CHECK_FALSE(least_thrust(slice, last).undecided);
        CHECK_FALSE(greatest_thrust(slice, last, 0.7).undecided);
        CHECK_FALSE(centred_thrust(slice).line.undecided);
        CHECK_FALSE(least_friction(slice).line.undecided);
        CHECK_FALSE(greatest_sway(slice).undecided);
    }
}
