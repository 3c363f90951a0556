#include "tests/plan/layout_codes.hpp"

#include "geometry/plan/check_layout.hpp"

#include <catch2/catch.hpp>

namespace coilwright::testing {

Codes codes(const Design& design) {
    Codes result;
    for (const Diagnostic& diagnostic : check_layout(design)) {
        CHECK_FALSE(diagnostic.message.empty());
        CHECK_FALSE(diagnostic.allowed.empty());
        CHECK_FALSE(diagnostic.example.empty());
        result.push_back(diagnostic.code);
    }
    return result;
}

} // namespace coilwright::testing
