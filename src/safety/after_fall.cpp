// SPDX-License-Identifier: MIT
#include "safety/after_fall.hpp"

#include "safety/growth.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::safety {
namespace {

using units::Duration;
using units::History;
using units::Temperature;

/// Shortest time in which the fastest of the foods' germs grow too much in a bath at or above `bath`.
std::optional<Duration> soonest(double growth, Temperature bath, const std::vector<const facts::GrowthModel*>& foods) {
    std::optional<Duration> least;
    for (const facts::GrowthModel* model : foods) {
        const double rate = FastestAbove(*model)(bath);
        if (rate > 0.0) {
            const Duration time = units::hours(exponent_for(growth, model->q0_cautious) / rate);
            least = std::min(least.value_or(time), time);
        }
    }
    return least;
}

}  // namespace

std::string_view to_word(FallAction action) {
    switch (action) {
        case FallAction::none:
            return "none";
        case FallAction::finish_and_eat_next:
            return "finish-and-eat-next";
        case FallAction::finish_and_eat_now:
            return "finish-and-eat-now";
        case FallAction::throw_away:
            return "throw-away";
    }
    return "throw-away";
}

FallRules fall_rules(facts::Ruleset ruleset, bool at_risk) {
    const facts::Facts& facts = facts::facts();
    const facts::GeneralRules& general = facts.rules_of(ruleset);
    FallRules rules;
    rules.eat_next_figure = general.eat_next;
    rules.eat_next = facts.duration(general.eat_next);
    rules.growth = facts.value("fall.growth");
    rules.deep = facts.temperature("fall.deep");
    rules.deep_for = facts.duration("fall.deep-for");
    rules.longest_figure = general.eat_now;
    rules.longest = facts.duration(general.eat_now);
    if (at_risk && facts.duration(general.fall_at_risk) <= rules.longest) {
        rules.longest_figure = general.fall_at_risk;
        rules.longest = facts.duration(general.fall_at_risk);
    }
    if (general.fall_once) {
        rules.once_figure = *general.fall_once;
        rules.most_falls = 1;
        if (facts.duration(rules.once_figure) <= rules.longest) {
            rules.longest_figure = rules.once_figure;
            rules.longest = facts.duration(rules.once_figure);
            rules.under_longest = true;
        }
    }
    return rules;
}

Decision decide(const Fall& fall, const FallRules& rules) {
    const bool grown = !(fall.growth < rules.growth);
    if (!grown && !(fall.below_floor > Duration{0}) && !(fall.below_50 > Duration{0})) {
        return {};
    }
    // In the order in which a cook would say it.
    const bool too_long = rules.under_longest ? fall.below_floor >= rules.longest : fall.below_floor > rules.longest;
    if (too_long) {
        return {FallAction::throw_away, rules.longest_figure};
    }
    if (grown) {
        return {FallAction::throw_away, "fall.growth"};
    }
    if (fall.below_50 >= rules.deep_for) {
        return {FallAction::throw_away, "fall.deep-for"};
    }
    if (rules.most_falls && fall.times > *rules.most_falls) {
        return {FallAction::throw_away, rules.once_figure};
    }
    return fall.below_floor <= rules.eat_next ? Decision{FallAction::finish_and_eat_next, rules.eat_next_figure}
                                              : Decision{FallAction::finish_and_eat_now, rules.longest_figure};
}

std::vector<FallRow> rows(const FallRules& rules) {
    std::vector<FallRow> all;
    const Duration first = std::min(rules.eat_next, rules.longest);
    const bool one_step = rules.longest <= rules.eat_next;
    all.push_back(
        {Duration{0}, false, first, !(one_step && rules.under_longest), false, FallAction::finish_and_eat_next});
    if (!one_step) {
        all.push_back({first, false, rules.longest, !rules.under_longest, false, FallAction::finish_and_eat_now});
    }
    all.push_back(
        {rules.longest, rules.under_longest, std::nullopt, true, rules.most_falls.has_value(), FallAction::throw_away});
    return all;
}

std::vector<ColdBath> cold_baths(const FallRules& rules, const std::vector<const facts::GrowthModel*>& foods) {
    std::vector<ColdBath> steps;
    // Above the deep line growth alone can be sooner than the clock: from the warmest bath where it is, at the rate of
    // the coolest of these baths. Below the line at the fastest rate of all.
    std::optional<Temperature> warmest;
    for (const facts::GrowthModel* model : foods) {
        const auto under = warmest_growth(*model, rules.growth, model->q0_cautious, rules.longest);
        if (under) {
            warmest = std::max(warmest.value_or(*under), *under);
        }
    }
    if (warmest && *warmest > rules.deep) {
        const auto time = soonest(rules.growth, rules.deep, foods);
        if (time && *time < rules.longest) {
            steps.push_back({*warmest, *time});
        }
    }
    Duration deepest = rules.deep_for;
    for (const facts::GrowthModel* model : foods) {
        const auto time = fastest_growth(*model, rules.growth, model->q0_cautious, rules.deep);
        deepest = std::min(deepest, time.value_or(deepest));
    }
    const Duration before = steps.empty() ? rules.longest : steps.back().longest;
    if (deepest < before) {
        steps.push_back({rules.deep, deepest});
    }
    return steps;
}

Fall worst_fall(const History& slowest, Duration since, const std::vector<const facts::GrowthModel*>& foods) {
    Fall fall;
    if (slowest.empty()) {
        fall.below_floor = fall.below_50 = since;
        for (const facts::GrowthModel* model : foods) {
            const double rate = FastestAbove(*model).peak();
            fall.growth = std::max(fall.growth, lagged_growth(rate * units::in_hours(since), model->q0_cautious));
        }
        return fall;
    }
    const Duration end = slowest.points.back().at;
    const Duration start = std::max(end - since, slowest.points.front().at);
    fall.below_floor = end - start;
    fall.below_50 = slowest.time_below(facts::facts().temperature("fall.deep"), start, end);
    for (const facts::GrowthModel* model : foods) {
        const FastestAbove fastest(*model);
        double exponent = 0.0;
        for (std::size_t i = 1; i < slowest.points.size(); ++i) {
            const History::Point& a = slowest.points[i - 1];
            const History::Point& b = slowest.points[i];
            // The cooler end of each stretch stands for all of it.
            const Duration span = b.at - std::max(a.at, start);
            if (span > Duration{0}) {
                exponent += fastest(std::min(a.value, b.value)) * units::in_hours(span);
            }
        }
        fall.growth = std::max(fall.growth, lagged_growth(exponent, model->q0_cautious));
    }
    return fall;
}

}  // namespace holdwater::safety
