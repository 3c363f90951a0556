#include "geometry/design/rules.hpp"

namespace coilwright {

std::string word(Standing standing) {
    switch (standing) {
    case Standing::read:
        return "read";
    case Standing::memory:
        return "memory";
    case Standing::reckoned:
        return "reckoned";
    case Standing::practice:
        return "practice";
    case Standing::judgement:
        return "judgement";
    case Standing::stated:
        return "stated";
    }
    return {};
}

const Limit* find_limit(const Limits& limits, const std::string& name) {
    const auto found = limits.find(name);
    return found == limits.end() ? nullptr : &found->second;
}

std::string source_text(const Limit& limit) {
    std::string text = limit.source;
    for (const std::string& part : {limit.edition, limit.section})
        if (!part.empty())
            text += ", " + part;
    return text + (limit.standing == Standing::memory ? " (from memory)" : "");
}

} // namespace coilwright
