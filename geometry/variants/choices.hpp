// What is to be chosen between: values of the design file's keys.
#pragma once

#include "geometry/design/read_changed_design.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// One value of a choice: as tables show it, and what it changes in the design.
struct ChoiceValue {
    std::string label;
    double number = 0; // metres, or as written; of words their place in the list
    std::vector<KeyChange> changes;
};

/// A key with its values, in the order given.
struct Choice {
    std::string name; // as asked: "diameter", "dome.store.profile.kind"
    bool numeric = false;
    std::vector<ChoiceValue> values;
};

/// A choice as read, or why it could not be (one sentence without a stop; empty: it was read).
struct ChoiceReading {
    Choice choice;
    std::string fault;
};

/// The short names: diameter, springline, rise, lay-flat, course.
const std::vector<std::string>& short_choices();

/// Reads "KEY=VALUE,VALUE,..." or "KEY=FIRST to LAST by STEP". KEY is a path of the design file
/// ("dome.store.profile.rise"), or a short name, which needs a design of one dome or one tube:
/// `diameter`, `springline`, `rise`, `lay-flat` (a stated tamped_width is left out but at the design's own), `course`
/// (its height). Values are written as in the design file, text without quotes; a range is of
/// lengths, or of bare numbers, and includes its last value where a step meets it within a
/// nanometre. "diameter=8 ft to 10 ft by 6 in" -> 8 ft 0 in, 8 ft 6 in, 9 ft 0 in, 9 ft 6 in, 10 ft
/// 0 in. At most 10,000 values, each once.
ChoiceReading read_choice(const std::string& text, const Design& design);

} // namespace coilwright
