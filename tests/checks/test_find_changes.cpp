// What would mend a check, put into the text of the design, read, laid and checked again.
#include "geometry/checks/check_building.hpp"
#include "geometry/checks/find_changes.hpp"
#include "tests/checks/laid.hpp"
#include "tests/support/files.hpp"

#include <catch2/catch.hpp>

#include <regex>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

/// Where a table's lines stand; npos twice where there is none.
std::pair<std::size_t, std::size_t> lines_of(const std::string& text, const std::string& table) {
    const std::size_t head = text.find("\n[" + table + "]");
    if (head == std::string::npos)
        return {head, head};
    const std::size_t from = text.find('\n', head + 1) + 1;
    return {from, std::min(text.find("\n[", from - 1), text.size())};
}

/// Takes a key of a table out; "profile.rise" is in braces.
std::string without(const std::string& lines, const std::string& key) {
    const std::size_t dot = key.find('.');
    if (dot == std::string::npos)
        return std::regex_replace(lines, std::regex("(^|\n)" + key + " *=[^\n]*"), "$1");
    const std::string last = key.substr(key.rfind('.') + 1);
    return std::regex_replace(lines, std::regex(",? *\\b" + last + " *= *(\"[^\"]*\"|[0-9.]+)"),
                              "");
}

/// The design's text with a change as a person would type it.
std::string typed(std::string text, const DesignChange& change) {
    const std::string value = change.unit == FindingUnit::metre
                                  ? "\"" + fixed_text(change.to, 7) + " m\""
                                  : fixed_text(change.to, 0);
    auto [from, to] = lines_of(text, change.table);
    if (from == std::string::npos)
        return text + "\n[" + change.table + "]\n" + change.key + " = " + value + "\n";
    std::string lines = without(text.substr(from, to - from), change.key);
    for (std::size_t at = 0; at < change.replaces.size(); at += 2) {
        const std::size_t end = std::min(change.replaces.find(", ", at), change.replaces.size());
        lines = without(lines, change.replaces.substr(at, end - at));
        at = end;
    }
    const std::size_t dot = change.key.find('.');
    if (dot == std::string::npos)
        lines = change.key + " = " + value + "\n" + lines;
    else { // into the innermost braces of `profile = { kind = ... }`
        const std::string first = change.key.substr(0, dot);
        const std::string last = change.key.substr(change.key.rfind('.') + 1);
        const std::size_t brace = lines.find(
            '{', change.key.find('.', dot + 1) == std::string::npos
                     ? lines.find(first + " ")
                     : lines.find(change.key.substr(dot + 1, change.key.rfind('.') - dot - 1)));
        REQUIRE(brace != std::string::npos);
        const bool empty = lines.find_first_not_of(' ', brace + 1) == lines.find('}', brace);
        lines.insert(brace + 1, " " + last + " = " + value + (empty ? "" : ","));
        lines = std::regex_replace(lines, std::regex(", *,"), ",");
        lines = std::regex_replace(lines, std::regex(", *\\}"), " }");
    }
    return text.substr(0, from) + lines + text.substr(to);
}

std::string element(const std::string& subject) {
    return subject.substr(0, std::min(subject.find(" course "), subject.size()));
}

/// What the checks say of a finding's code and element: the worst; holds where they say nothing.
Verdict verdict_of(const std::vector<Finding>& findings, const Finding& of) {
    const auto badness = [](Verdict v) {
        return v == Verdict::fails        ? 3
               : v == Verdict::advice     ? 2
               : v == Verdict::not_judged ? 1
                                          : 0;
    };
    Verdict worst = Verdict::holds;
    for (const Finding& finding : findings)
        if (finding.code == of.code && element(finding.subject) == element(of.subject) &&
            badness(finding.verdict) > badness(worst))
            worst = finding.verdict;
    return worst;
}

struct Mended {
    std::vector<Finding> findings;
    std::vector<SoughtChanges> sought;
};

Mended mended(const BuildingPlan& plan, unsigned threads = 2) {
    Mended all{all_findings(plan), {}};
    all.sought = find_changes(plan, all.findings, {}, threads);
    return all;
}

const std::vector<DesignChange>& changes_of(const Mended& all, const Finding& finding) {
    CAPTURE(finding.code, finding.subject);
    REQUIRE(sought_for(all.sought, finding));
    return sought_for(all.sought, finding)->changes;
}

const DesignChange& change_of(const Mended& all, const std::string& code, const std::string& table,
                              const std::string& key) {
    const std::vector<DesignChange>& changes = changes_of(all, the(all.findings, code));
    const auto found = std::find_if(changes.begin(), changes.end(), [&](const DesignChange& one) {
        return one.table == table && one.key == key;
    });
    CAPTURE(code, table, key);
    REQUIRE(found != changes.end());
    return *found;
}

} // namespace

TEST_CASE("every change that is told mends its check when it is typed into the design") {
    int changes = 0;
    for (const char* const demo : {"retreat", "cabin-metric", "workshop"}) {
        const std::string text = whole_building_text(demo);
        const Mended all = mended(laid(text));
        for (const Finding& finding : all.findings) {
            if (!sought_for(all.sought, finding))
                continue;
            for (const DesignChange& change : changes_of(all, finding)) {
                CAPTURE(demo, finding.subject,
                        finding.code + ": " + change_text(change, finding, DisplayUnit::metres));
                ++changes;
                const std::vector<Finding> then = all_findings(laid(typed(text, change)));
                CHECK(verdict_of(then, finding) == change.verdict);
                CHECK(change.verdict != finding.verdict);
                for (const SideEffect& effect : change.worsens) {
                    Finding other;
                    other.code = effect.code;
                    other.subject = effect.subject;
                    CHECK(verdict_of(then, other) == effect.verdict);
                }
            }
        }
    }
    CHECK(changes > 20);
}

TEST_CASE("the change that is told is the least step that does") {
    // 14 ft across asks for a rise of 0.85 x 168 = 142.8 in: 143 whole ones.
    const Mended flat = mended(laid(with(room_design, "rise = \"14 ft\"", "rise = \"11 ft\"")));
    const DesignChange& rise = change_of(flat, "dome-rise", "dome.room", "profile.rise");
    CHECK(rise.to == Approx(143 * inch));
    CHECK(rise.from == Approx(132 * inch));
    // 0.85 D <= 132 in up to 155.29 in.
    CHECK(change_of(flat, "dome-rise", "dome.room", "inside_diameter").to == Approx(155 * inch));

    // 32 in clear, 1-1/2 in of plaster and of frame each side.
    const Mended narrow = mended(laid(with(room_design, "width = \"38 in\"", "width = \"33 in\"")));
    CHECK(the(narrow.findings, "egress-door").verdict == Verdict::fails);
    CHECK(change_of(narrow, "egress-door", "opening.door", "width").to == Approx(38 * inch));
}

TEST_CASE("what holds is not looked at, and what nothing mends has no change") {
    const Mended all = mended(laid(room_design));
    int held = 0;
    for (const Finding& finding : all.findings)
        if (finding.verdict == Verdict::holds || finding.verdict == Verdict::not_judged) {
            ++held;
            CHECK_FALSE(sought_for(all.sought, finding));
        }
    CHECK(held > 5);
    const Finding corbel = the(all.findings, "free-corbel"); // so does every ordinary dome
    CHECK(changes_of(all, corbel).empty());
    CHECK(change_lines(sought_for(all.sought, corbel), corbel, DisplayUnit::feet).size() == 1);
    CHECK(change_lines(nullptr, corbel, DisplayUnit::feet).empty());
}

TEST_CASE("one thread and many find the same changes in the same order") {
    const BuildingPlan plan = laid(whole_building_text("cabin-metric"));
    const auto texts = [&](unsigned threads) {
        const Mended all = mended(plan, threads);
        std::vector<std::string> lines;
        for (const Finding& finding : all.findings)
            for (const std::string& line :
                 change_lines(sought_for(all.sought, finding), finding, DisplayUnit::metres))
                lines.push_back(finding.code + line);
        return lines;
    };
    const std::vector<std::string> one = texts(1);
    CHECK(one.size() > 5);
    CHECK(texts(3) == one);
}

TEST_CASE("what a fit found counts as written") {
    const BuildingPlan plan = laid(whole_building_text("washroom"));
    for (const SoughtChanges& sought : mended(plan).sought)
        for (const DesignChange& change : sought.changes)
            if (change.key == "springline") {
                CHECK(change.from == Approx(plan.design.domes.front().springline));
                CHECK(change.to != Approx(change.from));
            }
}

TEST_CASE("changes keep within what people would build, and within what mends") {
    for (const char* const demo : {"retreat", "grain-store", "workshop", "washroom"}) {
        const BuildingPlan plan = laid(whole_building_text(demo));
        const Mended all = mended(plan);
        for (const SoughtChanges& sought : all.sought) {
            int fail = 0;
            for (const DesignChange& change : sought.changes) {
                CAPTURE(demo, sought.code, change.table, change.key, change.from, change.to);
                const bool door = change.table == "opening.door";
                const double slack = 1e-6;
                // Common practice, no source: 30 in, 6 ft 2 in, 24 in, a third, a quarter.
                if (door && change.key == "width")
                    CHECK(change.to > std::min(30 * inch, change.from) - slack);
                if (door && change.key == "height")
                    CHECK(change.to > std::min(74 * inch, change.from) - slack);
                if (change.key == "lay_flat")
                    CHECK(change.to < std::max(24 * inch, change.from) + slack);
                if (change.key == "inside_diameter") {
                    CHECK(change.to > 0.75 * change.from - slack);
                    CHECK(change.to < 1.25 * change.from + slack);
                }
                if (change.key == "top.diameter")
                    CHECK(change.to <
                          std::max(change.from, plan.design.domes[0].inside_diameter / 3) + slack);
                if (change.key == "level")
                    CHECK(change.to < std::max(0.0, change.from) + slack);
                if (change.key == "profile.rise" && change.table.rfind("dome.", 0) == 0) {
                    const double across =
                        find_dome(plan.design, change.table.substr(5))->inside_diameter;
                    CHECK(change.to < std::max(1.15 * across, change.from) + slack);
                }
                for (const SideEffect& effect : change.worsens)
                    fail += effect.verdict == Verdict::fails;
            }
            // What breaks another check stands only where all that is left does.
            CHECK((fail == 0 || std::all_of(sought.changes.begin(), sought.changes.end(),
                                            [](const DesignChange& change) {
                                                return !change.worsens.empty();
                                            })));
        }
    }
}

TEST_CASE("a remedy and its change name one rise") {
    int told = 0;
    for (const char* const demo : {"home", "grain-store", "retreat", "washroom"}) {
        const BuildingPlan plan = laid(whole_building_text(demo));
        for (const SoughtChanges& sought : find_changes(plan, plan.findings, {}, 2))
            for (const DesignChange& change : sought.changes)
                if (sought.code == "step-in-over-quarter" && change.key == "profile.rise") {
                    CAPTURE(demo, sought.subject);
                    CHECK(taken(the(plan.findings, sought.code, sought.subject),
                                "a rise of (.*?) no course") ==
                          length_text(change.to, plan.design.unit));
                    ++told;
                }
    }
    CHECK(told > 0);
}
