#include "geometry/checks/find_changes.hpp"

#include "geometry/checks/building_statics.hpp"
#include "geometry/checks/levers.hpp"
#include "geometry/checks/parameters.hpp"
#include "geometry/checks/statics_finding.hpp"
#include "geometry/threads/side_by_side.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <tuple>

namespace coilwright {

namespace {

constexpr int most_steps = 400;
constexpr std::size_t weighed = 4; // changes of a finding whose effect on all checks is looked at

/// "dome.store course 27" -> "dome.store": the course may be another.
std::string element(const std::string& subject) {
    return subject.substr(0, std::min(subject.find(" course "), subject.size()));
}

bool is_poor(const Finding& finding) {
    return finding.verdict == Verdict::fails || finding.verdict == Verdict::advice;
}

bool fails_another(const DesignChange& change) {
    return std::any_of(change.worsens.begin(), change.worsens.end(),
                       [](const SideEffect& effect) { return effect.verdict == Verdict::fails; });
}

class Search {
public:
    Search(const BuildingPlan& plan, const std::vector<Finding>& findings, DecideRegion decide)
        : plan_(plan), findings_(findings), decide_(std::move(decide)) {
        for (Dome& dome : plan_.design.domes) {
            dome.fit_springline = dome.fit_diameter = dome.profile.fit_rise = false;
            dome.fit = {};
        }
        before_ = checked_elements(plan_);
    }

    std::vector<DesignChange> changes_for(const Finding& finding) {
        const Levers* levers = levers_of(finding.code);
        if (!levers)
            return {};
        std::vector<Tried> found = reach(finding, *levers, Verdict::holds);
        if (found.empty() && finding.verdict == Verdict::fails)
            found = reach(finding, *levers, Verdict::advice);
        std::stable_sort(found.begin(), found.end(), [](const Tried& a, const Tried& b) {
            return a.change.share < b.change.share;
        });
        weigh(found);
        std::vector<DesignChange> told;
        for (Tried& one : found)
            if (told.size() < most_changes)
                told.push_back(std::move(one.change));
        return told;
    }

private:
    struct Tried {
        DesignChange change;
        std::shared_ptr<Trial> trial;
    };
    /// What a check says of a trial; none of a design that cannot be laid.
    struct Said {
        Verdict verdict = Verdict::holds;
        std::optional<double> value;
    };

    BuildingPlan plan_;
    const std::vector<Finding>& findings_;
    DecideRegion decide_;
    CheckedElements before_;
    std::mutex mutex_;
    std::map<std::tuple<std::string, std::string, double>, std::shared_ptr<Trial>> trials_;

    std::shared_ptr<Trial> trial(const Parameter& parameter, double value) {
        const std::lock_guard lock(mutex_);
        std::shared_ptr<Trial>& one = trials_[{parameter.table, parameter.key, value}];
        if (!one) {
            Design changed = plan_.design;
            parameter.set(changed, value);
            one = std::make_shared<Trial>(std::move(changed), decide_, parameter.table, before_);
        }
        return one;
    }

    static std::optional<Said> said(Trial& trial, const Finding& finding, const Levers& levers,
                                    const std::string& of) {
        const std::vector<Finding>& all = trial.findings(levers.judge, of);
        if (!trial.can_be_laid())
            return std::nullopt;
        std::optional<Said> worst;
        for (const Finding& other : all)
            if (other.code == finding.code &&
                (levers.by_code || element(other.subject) == element(finding.subject)) &&
                (!worst || badness(other.verdict) > badness(worst->verdict)))
                worst = Said{other.verdict, other.value};
        if (!worst && levers.absent_holds)
            worst = Said{};
        return worst;
    }

    std::vector<Tried> reach(const Finding& finding, const Levers& levers, Verdict wanted) {
        std::vector<Tried> found;
        const Elements elements = elements_of(finding.subject, plan_);
        const std::string of = levers.judge == Judge::tunnel
                                   ? (elements.tunnels.empty() ? "" : elements.tunnels.front())
                                   : (elements.domes.empty() ? "" : elements.domes.front());
        for (const Lever& lever : levers.levers)
            for (const Parameter& parameter : parameters(lever.word, elements, plan_)) {
                std::optional<Tried> best; // of both ways
                for (const int way : {1, -1})
                    if (way > 0 ? lever.up : lever.down)
                        if (auto one = smallest(finding, levers, of, parameter, way, wanted);
                            one && (!best || one->change.share < best->change.share))
                            best = std::move(one);
                if (best)
                    found.push_back(std::move(*best));
            }
        return found;
    }

    /// The smallest step of one parameter, one way.
    std::optional<Tried> smallest(const Finding& finding, const Levers& levers,
                                  const std::string& of, const Parameter& parameter, int way,
                                  Verdict wanted) {
        const auto value = [&](int k) { return parameter.value_at(way * k, plan_.design.unit); };
        const auto within = [&](int k) {
            return value(k) >= parameter.least - 1e-9 && value(k) <= parameter.most + 1e-9 &&
                   std::abs(value(k) - parameter.now) > 1e-9;
        };
        const auto lies = [&](int k) { return trial(parameter, value(k))->can_be_laid(); };
        const auto does = [&](int k) {
            const auto what = said(*trial(parameter, value(k)), finding, levers, of);
            return what && badness(what->verdict) <= badness(wanted) &&
                   what->verdict != Verdict::not_judged;
        };
        int bad = 0, good = 0;
        for (int k = 1; k <= most_steps && good == 0;) {
            if (!within(k) || !lies(k)) {
                int last = bad, beyond = k; // the last step that can be laid
                while (beyond - last > 1) {
                    const int middle = (last + beyond) / 2;
                    (within(middle) && lies(middle) ? last : beyond) = middle;
                }
                if (last > bad && does(last))
                    good = last;
                break;
            }
            (does(k) ? good : bad) = k;
            k *= 2;
        }
        if (good == 0)
            return std::nullopt;
        while (good - bad > 1) {
            const int middle = (bad + good) / 2;
            (does(middle) ? good : bad) = middle;
        }
        // What looks at the layout alone is quick, and may hold, fail and hold again.
        if (levers.judge == Judge::plan)
            for (int k = 1; k < good; ++k)
                if (within(k) && lies(k) && does(k))
                    good = k;
        Tried tried;
        tried.trial = trial(parameter, value(good));
        const Said then = *said(*tried.trial, finding, levers, of);
        tried.change = {parameter.table,
                        parameter.key,
                        parameter.replaces,
                        parameter.now,
                        value(good),
                        parameter.unit,
                        std::abs(value(good) - parameter.now) / parameter.scale,
                        then.verdict,
                        then.value,
                        {}};
        return tried;
    }

    /// Looks at what the smallest of them do to all other checks; those that worsen none go first.
    /// What makes another check fail is told only where nothing else is left.
    void weigh(std::vector<Tried>& found) {
        std::size_t mends = 0, seen = 0;
        for (; seen < found.size() && (seen < weighed || mends == 0); ++seen) {
            found[seen].change.worsens = worsened(found[seen].trial->all());
            mends += fails_another(found[seen].change) ? 0 : 1;
        }
        found.resize(seen);
        std::stable_partition(found.begin(), found.end(),
                              [](const Tried& one) { return one.change.worsens.empty(); });
        if (std::any_of(found.begin(), found.end(),
                        [](const Tried& one) { return !fails_another(one.change); }))
            found.erase(std::remove_if(found.begin(), found.end(),
                                       [](const Tried& one) { return fails_another(one.change); }),
                        found.end());
    }

    std::vector<SideEffect> worsened(const std::vector<Finding>& then) const {
        std::vector<SideEffect> effects;
        for (const Finding& finding : then) {
            int before = 0;
            for (const Finding& old : findings_)
                if (old.code == finding.code && element(old.subject) == element(finding.subject))
                    before = std::max(before, badness(old.verdict));
            const auto told = [&](const SideEffect& effect) {
                return effect.code == finding.code && effect.subject == element(finding.subject);
            };
            if (badness(finding.verdict) > before &&
                std::none_of(effects.begin(), effects.end(), told))
                effects.push_back({finding.code, element(finding.subject), finding.verdict});
        }
        return effects;
    }
};

std::string value_text(double value, FindingUnit unit, DisplayUnit shown) {
    switch (unit) {
    case FindingUnit::metre:
        return length_text(value, shown);
    case FindingUnit::square_metre:
        return area_text(value, shown);
    case FindingUnit::count:
    case FindingUnit::degree:
        return fixed_text(value, 0);
    case FindingUnit::pascal:
        return pressure_text(value, shown);
    default:
        return three_digits(value);
    }
}

} // namespace

std::vector<SoughtChanges> find_changes(const BuildingPlan& plan,
                                        const std::vector<Finding>& findings,
                                        const DecideRegion& decide, unsigned threads) {
    Search search(plan, findings, decide);
    std::vector<SoughtChanges> found;
    std::vector<const Finding*> poor;
    for (const Finding& finding : findings)
        if (is_poor(finding)) {
            poor.push_back(&finding);
            found.push_back({finding.code, finding.subject, {}});
        }
    side_by_side(
        poor.size(), [&](std::size_t i) { found[i].changes = search.changes_for(*poor[i]); },
        threads);
    return found;
}

std::string change_text(const DesignChange& change, const Finding& finding, DisplayUnit unit) {
    const bool quoted = change.unit == FindingUnit::metre;
    const auto written = [&](double value) { return value_text(value, change.unit, unit); };
    std::string text = "[" + change.table + "] " + change.key + " = " +
                       (quoted ? "\"" + written(change.to) + "\"" : written(change.to)) + " (now " +
                       written(change.from);
    if (!change.replaces.empty())
        text += ", in place of " + change.replaces;
    text += ")";
    if (change.verdict != Verdict::holds)
        text += ": fails no more";
    if (change.value)
        text += ": then " + value_text(*change.value, finding.unit, unit);
    for (std::size_t i = 0; i < change.worsens.size(); ++i) {
        const SideEffect& effect = change.worsens[i];
        text += (i == 0 ? "; but " : ", ") + effect.subject + " " + effect.code + " " +
                (effect.verdict == Verdict::fails    ? "then fails"
                 : effect.verdict == Verdict::advice ? "becomes an advice"
                                                     : "is no longer judged");
    }
    return text;
}

std::vector<std::string> change_lines(const SoughtChanges* sought, const Finding& finding,
                                      DisplayUnit unit) {
    if (!sought)
        return {};
    if (sought->changes.empty())
        return {"No change of one value within bounds was found that mends it."};
    std::vector<std::string> lines;
    for (const DesignChange& change : sought->changes)
        lines.push_back(
            (fails_another(change) ? "No mend, another check then fails: " : "Change: ") +
            change_text(change, finding, unit));
    return lines;
}

} // namespace coilwright
