// A design with some of its values replaced: one of many choices.
#pragma once

#include "geometry/design/read_design.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace coilwright {

/// A key of the design file and what is to stand there: "dome.store.inside_diameter", "9 ft". What
/// reads as a TOML number, true or false is one; all else is text. Without a value the key is
/// taken out. Tables on the way are made where they are missing.
struct KeyChange {
    std::string path;
    std::string value = {};
    bool take_out = false;
};

/// As read_design, of the changed text. Faults of a replaced value have its path as subject and no
/// place in the file. A path through something that is no table is the diagnostic "wrong-type".
DesignReading read_changed_design(std::string_view text, const std::vector<KeyChange>& changes);

} // namespace coilwright
