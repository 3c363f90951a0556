#include "geometry/base/finding.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;

TEST_CASE("each verdict has its words") {
    CHECK(verdict_text(Verdict::holds) == "holds");
    CHECK(verdict_text(Verdict::advice) == "advice");
    CHECK(verdict_text(Verdict::fails) == "fails");
    CHECK(verdict_text(Verdict::not_judged) == "not judged");
}
