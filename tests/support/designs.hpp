// Designs for the tests, built in code: no reader in between. Invented, as all demo data are.
#pragma once

#include "geometry/design/design.hpp"

#include <cstdint>
#include <string>

namespace coilwright::testing {

/// A pointed dome of 9 ft on a 20 in stem: 17 in tube tamped to 15 in, 5 in courses, 3 below the
/// floor.
Design store_design();
/// An opening of the store, in metres and degrees.
Opening opening(const char* id, double bearing, double width, double sill, double height,
                HeadKind head);

/// A tunnel from the store on bearing 330, 3 ft wide and 6 ft 9 in to its crown, its end 9 ft 6 in
/// from the pole.
Tunnel porch();
/// Piers of 30 in on bearings 60 and 240 of the store, 40 in high, projecting 30 in at the floor
/// and 15 in at the top.
Buttress flank();
Design store_with_porch(); // and its piers
/// The store and another like it, its pole `apart` metres east of it and joined to it; `keep`: id
/// of the one whose wall stays ("store", "store2"), or empty. The door looks west.
Design two_stores(double apart, const std::string& keep);
/// An opening in the porch's end wall (the tunnel must have one) or in a side, `along` it.
Opening in_porch(const char* id, TunnelSide side, double along, double width, double sill,
                 double height, HeadKind head);
Sleeve sleeve(const char* id, double bearing, double height, double diameter);

/// Random numbers that are the same on every machine.
class Dice {
public:
    explicit Dice(std::uint64_t seed) : state_(seed) {}
    std::uint64_t bits();
    double between(double low, double high);
    int whole(int low, int high); // both ends included
    bool chance(double share) { return between(0, 1) < share; }

private:
    std::uint64_t state_;
};

/// One or two domes far apart with random profiles, tubes, tops and openings. About half can be
/// laid.
Design random_design(std::uint64_t seed);

} // namespace coilwright::testing
