// What tube to order: all that takes tube, by element of the building and by tube type.
#pragma once

#include <string>
#include <vector>

namespace coilwright {

struct Design;
struct Schedule;

enum class OrderedFor { dome, tunnel, buttress };
/// "dome", "tunnel", "buttress".
std::string word(OrderedFor kind);

/// Cut lengths in metres, of one tube type for one dome, tunnel or table of buttresses.
struct TubeOrder {
    std::string element;
    OrderedFor kind = OrderedFor::dome;
    std::string tube;        // id of the type
    int tubes = 0, bags = 0; // of runs; short bags of caps, fans, niches, wedges
    double rings = 0;        // tubes of rings and curbs
    double straights = 0;    // tubes of tunnels and buttresses
    double cap_bags = 0;
    double fan_bags = 0; // keystones too
    double niche_backs = 0;
    double wedges = 0;  // short pieces where a ring stops against another, or beside a jamb
    double linings = 0; // courses of gravel lie in two tubes, one in the other: all of that again
    double cut_length = 0; // of all of it; no waste
};

/// One line an element and tube type that it takes, domes first, then tunnels and buttresses, each
/// in the order of the building. Without linings, fans, niches and wedges the cut lengths add up to
/// those of the courses. A dome of 200 ft of cut ring tubes, 4 cap bags of 3 ft each and nothing
/// else: rings 60.96, cap_bags 3.6576, cut_length 64.6176.
std::vector<TubeOrder> tube_order(const Design& design, const Schedule& schedule);

} // namespace coilwright
