// What a check found in a design that can be laid: one finding per check and subject.
#pragma once

#include "geometry/base/diagnostic.hpp"

#include <optional>
#include <string>
#include <vector>

namespace coilwright {

enum class Verdict { holds, advice, fails, not_judged };

/// "holds", "advice", "fails", "not judged".
std::string verdict_text(Verdict verdict);

/// What `value` and `limit` count. Lengths, areas, forces and pressures are shown in the design's
/// unit. ratio: of two values of one kind, such as a factor of safety.
enum class FindingUnit {
    none,
    metre,
    square_metre,
    cubic_metre,
    litre,
    degree,
    count,
    ratio,
    per_cent,
    day,
    newton,
    newton_metre,
    newton_per_metre,
    pascal
};
/// "m", "m2", "deg", "N/m", "Pa"; "none" for none.
std::string unit_word(FindingUnit unit);

struct Finding {
    std::string code;    // stable, kebab-case: "sill-misses-joint"
    std::string subject; // "opening.door", "dome.store", "dome.store course 27"
    SourcePlace place;   // of the element in the design file
    Verdict verdict = Verdict::not_judged;
    std::string message; // one plain sentence
    std::optional<double> value;
    std::optional<double> limit;
    std::optional<double> good; // from here on it holds; between limit and good it is an advice
    FindingUnit unit = FindingUnit::none;
    std::string formula; // how `value` is reckoned, in the words of docs; may be empty
    std::string source;  // published, with edition and section; or "common practice, no source"
    std::string remedy;  // with a number that would work; empty where none is needed
};

} // namespace coilwright
