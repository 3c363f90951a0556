#include "cli/findings_text.hpp"

#include "geometry/checks/statics_finding.hpp"

#include <algorithm>
#include <ostream>

namespace coilwright {

namespace {

constexpr const char* hanging = "      ";

Colour colour_of(Verdict verdict) {
    switch (verdict) {
    case Verdict::fails:
        return Colour::red;
    case Verdict::advice:
        return Colour::yellow;
    case Verdict::holds:
        return Colour::green;
    case Verdict::not_judged:
        break;
    }
    return Colour::bold;
}

std::string verdict_word(Verdict verdict, const Console& console) {
    return painted(verdict_text(verdict), colour_of(verdict), console.colour_out);
}

std::string value_text(const Finding& finding, double value, DisplayUnit shown) {
    return finding.unit == FindingUnit::none || finding.unit == FindingUnit::ratio
               ? fixed_text(value, 2)
               : shown_value(finding, value, shown);
}

// What holds is told on one line; --json has the rest.
void print_held(const Finding& finding, DisplayUnit unit, Console& console) {
    console.out << "  " << verdict_word(finding.verdict, console) << "  " << finding.subject
                << "  (" << finding.code << ")  " << value_text(finding, *finding.value, unit)
                << "; limit " << value_text(finding, *finding.limit, unit) << '\n';
}

void print_whole(const Finding& finding, const SoughtChanges* sought, DisplayUnit unit,
                 Console& console) {
    if (finding.verdict == Verdict::holds && finding.value && finding.limit.value_or(0) != 0) {
        print_held(finding, unit, console);
        return;
    }
    console.out << "  " << verdict_word(finding.verdict, console) << "  " << finding.subject
                << "  (" << finding.code << ")\n"
                << wrapped(finding.message, hanging);
    if (finding.verdict != Verdict::holds && finding.value && finding.good) {
        console.out << hanging << value_text(finding, *finding.value, unit) << "; at least "
                    << value_text(finding, *finding.limit, unit) << ", good from "
                    << value_text(finding, *finding.good, unit) << '\n';
    }
    if (!finding.remedy.empty()) {
        console.out << wrapped("Remedy: " + finding.remedy, hanging);
    }
    for (const std::string& line : change_lines(sought, finding, unit)) {
        console.out << wrapped(line, hanging);
    }
    if (!finding.source.empty()) {
        console.out << wrapped("Source: " + finding.source, hanging);
    }
}

/// The subject of each, the same once: "dome.bath, dome.cook".
std::string subjects_of(const std::vector<const Finding*>& alike) {
    std::string names;
    const std::string* last = nullptr;
    for (const Finding* finding : alike) {
        if (!last || *last != finding->subject) {
            names += (last ? ", " : "") + finding->subject;
        }
        last = &finding->subject;
    }
    return names;
}

/// Findings in their order; those that say the same of several elements together, if wanted.
std::vector<std::vector<const Finding*>> unheld(const std::vector<Finding>& findings,
                                                bool alike_together) {
    std::vector<std::vector<const Finding*>> groups;
    for (const Finding& finding : findings) {
        if (finding.verdict == Verdict::holds) {
            continue;
        }
        const auto same = std::find_if(groups.begin(), groups.end(), [&](const auto& group) {
            const Finding& first = *group.front();
            return alike_together && first.verdict == finding.verdict &&
                   first.code == finding.code && !finding.remedy.empty() &&
                   first.remedy == finding.remedy;
        });
        if (same == groups.end()) {
            groups.push_back({&finding});
        } else {
            same->push_back(&finding);
        }
    }
    return groups;
}

/// What to change; why too where something fails or nothing is known to mend it.
std::string told_of(const Finding& finding) {
    if (finding.remedy.empty()) {
        return finding.message;
    }
    return finding.verdict == Verdict::fails ? finding.message + " " + finding.remedy
                                             : finding.remedy;
}

/// Of several the value that is farthest from what is asked, and that; empty where none has one.
std::string worst_value(const std::vector<const Finding*>& alike, DisplayUnit unit) {
    const Finding* worst = nullptr;
    for (const Finding* finding : alike) {
        if (finding->value && finding->limit.value_or(0) != 0 &&
            (!worst || (finding->unit == FindingUnit::ratio && *finding->value < *worst->value))) {
            worst = finding;
        }
    }
    if (!worst) {
        return {};
    }
    return "  " + value_text(*worst, *worst->value, unit) + " against " +
           value_text(*worst, *worst->limit, unit) +
           (worst->good ? ", good from " + value_text(*worst, *worst->good, unit) : "");
}

} // namespace

void print_short_findings(const std::vector<Finding>& findings,
                          const std::vector<SoughtChanges>& changes, DisplayUnit unit,
                          Console& console) {
    for (const std::vector<const Finding*>& alike : unheld(findings, changes.empty())) {
        const Finding& first = *alike.front();
        console.out << "  " << verdict_word(first.verdict, console) << "  " << first.code
                    << worst_value(alike, unit) << '\n'
                    << wrapped(subjects_of(alike), hanging) << wrapped(told_of(first), hanging);
        for (const std::string& line : change_lines(sought_for(changes, first), first, unit)) {
            console.out << wrapped(line, hanging);
        }
    }
    std::string held;
    for (const Finding& finding : findings) {
        if (finding.verdict == Verdict::holds) {
            held += (held.empty() ? "" : ", ") + finding.code + " of " + finding.subject;
        }
    }
    if (!held.empty()) {
        console.out << "  " << verdict_word(Verdict::holds, console) << '\n'
                    << wrapped(held, hanging);
    }
    console.out << "  --long tells each whole, with the source of its limit.\n";
}

void print_findings(const std::vector<Finding>& findings, const std::vector<SoughtChanges>& changes,
                    DisplayUnit unit, Console& console) {
    for (const Finding& finding : findings) {
        print_whole(finding, sought_for(changes, finding), unit, console);
    }
}

} // namespace coilwright
