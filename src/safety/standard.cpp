// SPDX-License-Identifier: MIT
#include "safety/standard.hpp"

#include "safety/finish.hpp"
#include "safety/refusals.hpp"

#include <algorithm>

namespace holdwater::safety {
namespace {

using facts::Category;

/// The floors of the bath: as the rules say, and higher where no reading or no credit guards them.
void set_floors(Standard& standard, const Request& request, const facts::Rule& rule) {
    const facts::Facts& facts = facts::facts();
    const units::TemperatureDifference margin = facts.difference("action-line.margin");
    standard.cook_floor = rule.cook_floor;
    standard.action_line = rule.action_line;
    standard.hold_floor = rule.hold_floor;
    // Only whole red roasts cooked by the published rows may be held from their lowest row on; a steak met none of
    // them.
    if (request.category == Category::red_meat &&
        (!is_whole_muscle(request.cut) || request.at_risk || request.use == facts::Use::steak)) {
        standard.hold_floor =
            std::max(standard.hold_floor, facts.temperature(facts.rules_of(request.ruleset).hold_floor_other_red_meat));
    }
    if (!request.has_thermometer) {
        standard.cook_floor = std::max(standard.cook_floor, rule.cook_floor_no_thermometer);
        standard.action_line = std::max(standard.action_line, standard.cook_floor + margin);
        standard.hold_floor = std::max(standard.hold_floor, rule.cook_floor_no_thermometer);
    }
    standard.hold_action_line = std::max(standard.action_line, standard.hold_floor + margin);
}

void set_core(Standard& standard, const Request& request, const facts::Rule& rule) {
    const facts::Facts& facts = facts::facts();
    standard.core_at_least =
        request.over_fire ? std::min(rule.core_at_least, lowest_over_fire(rule)) : rule.core_at_least;
    standard.core_at_least_for = rule.core_at_least_for;
    standard.consumer_core = rule.consumer_core;
    standard.consumer_hold = rule.consumer_hold;
    const bool whole_red_meat = request.category == Category::red_meat && is_whole_muscle(request.cut);
    if (whole_red_meat && request.pork && rule.pork_core && !request.over_fire) {
        standard.core_at_least = std::max(standard.core_at_least, *rule.pork_core);
        standard.consumer_core = std::max(standard.consumer_core, *rule.pork_core);
    }
    if (const std::string_view figure = at_risk_figure(request); !figure.empty()) {
        standard.core_at_least = std::max(standard.core_at_least, facts.temperature(figure));
    }
    if (whole_red_meat && request.at_risk && !request.over_fire) {
        standard.core_at_least_for = std::max(standard.core_at_least_for, red_meat_hold_at_risk(request.ruleset));
    }
}

/// Food that was cooked before: it stays over the floor, and nothing else is asked.
Standard keep_hot(const Request& request) {
    const facts::Facts& facts = facts::facts();
    const facts::KeepHotRule& hot = facts.rules_of(request.ruleset).keep_hot.value();
    Standard standard;
    standard.cook_floor = standard.hold_floor = facts.temperature(hot.floor);
    standard.action_line = standard.hold_action_line = standard.cook_floor + facts.difference("action-line.margin");
    standard.kill = &facts.kill_standard(hot.kill_standard);
    standard.growth = request.growth;
    standard.core_at_least = standard.consumer_core = standard.cook_floor;
    standard.kept_hot = true;
    standard.rule_source = facts.figure(hot.floor).source;
    return standard;
}

/// A steak: the floors of red meat that is no roast, and what comes up too slowly, stay; of the core nothing is asked.
void make_a_steak(Standard& standard, const facts::SteakRule& steak) {
    const facts::Facts& facts = facts::facts();
    standard.kill = &facts.kill_standard(steak.kill_standard);
    standard.sear = Sear{facts.temperature(steak.surface), units::millimetres(facts.value(steak.thickest)),
                         facts.figure(steak.surface).source};
    standard.rule_source = standard.sear->source;
}

}  // namespace

Request request_for(const facts::FoodKind& kind) {
    Request request;
    request.category = kind.category;
    request.pork = kind.pork;
    request.beef = kind.beef;
    request.growth = &facts::facts().growth(kind.growth);
    return request;
}

std::string refusal_source(const Request& request) {
    const std::optional<Refusal> refusal = refusal_of(request);
    return refusal ? refusal->source : std::string{};
}

problem::Result<Standard> standard_for(const Request& request) {
    if (const std::optional<Refusal> refusal = refusal_of(request)) {
        return refusal->problem;
    }
    if (request.use == facts::Use::keep_hot) {
        return keep_hot(request);
    }
    const facts::Rule* rule = facts::facts().find_rule(request.ruleset, request.category);
    Standard standard;
    standard.finish = finish_for(request);
    set_floors(standard, request, *rule);
    set_core(standard, request, *rule);
    standard.kill = &facts::facts().kill_standard(rule->kill_standard);
    standard.growth = request.growth;
    standard.below_consumer_advice =
        !standard.finish && request.target < std::max(standard.consumer_core, standard.core_at_least) -
                                                 facts::facts().difference("target.rounding");
    standard.rule_source = rule->source;
    if (request.use == facts::Use::steak) {
        make_a_steak(standard, facts::facts().rules_of(request.ruleset).steak.value());
    }
    return standard;
}

}  // namespace holdwater::safety
