// Which values of a design bear on a check: what find_changes() tries.
#pragma once

#include "geometry/checks/trial.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace coilwright {

/// One word of parameters(), and which way it is tried.
struct Lever {
    std::string word;
    bool up = true, down = true;
};

struct Levers {
    Judge judge = Judge::plan;
    bool absent_holds = false; // the judge is silent where there is nothing to say
    bool by_code = false;      // it speaks of the worst element only, whichever that is
    std::vector<Lever> levers; // none: no one value mends it
};

/// What bears on the check of that code; nullptr for codes of which no single value is known to.
const Levers* levers_of(std::string_view code);

} // namespace coilwright
