// One small change of the sound design for every fault that a design can have.
#pragma once

#include <string>
#include <vector>

namespace coilwright {

// `with` replaces `part` in the whole design (an empty part: appended to it). The fault is expected
// where '^' stands in `with`, else where `where` first stands.
struct FaultCase {
    std::string code;
    std::string subject;
    std::string part, with, where;
};

const std::vector<FaultCase>& fault_cases();

} // namespace coilwright
