// SPDX-License-Identifier: MIT
// The figures of the card If something goes wrong.
#include "card/figures/parts.hpp"
#include "facts/facts.hpp"
#include "safety/after_fall.hpp"

namespace holdwater::card {

using units::Toward;
using How = FigureMaker::How;

namespace {

void add_cold_baths(const FigureMaker& of) {
    const SafeSide& safe = of.safe();
    const FigureMaker act = of.acted_on();
    int nth = 0;
    for (const safety::ColdBath& cold : of.plan().cold_baths) {
        const Which which = ++nth > 1 ? Which(nth) : Which();  // the first goes without a number
        const units::Temperature read =
            cold.lowest + of.plan().trip->boxes.front().thermometer.value_or(units::kelvins(0));
        act.degrees("cold-bath", read, safe.at_least(read),
                    {"growth-clock", "up-degree", of.source("figures", "fall.growth, fall.deep")}, which);
        const units::Duration longest{units::round_to(cold.longest.si(), 300.0, Toward::down)};
        act.span("cold-bath", cold.longest, units::print(longest),
                 {"growth-worst", "down-5-min", of.source("figures", "fall.growth, fall.deep-for")}, which);
    }
}

/// Without a thermometer.
void add_late_pour(const FigureMaker& of) {
    if (const auto& saved = of.plan().late_pour) {
        of.span("boil-until", saved->until, units::print(saved->until, Toward::down),
                {"rule", "none", of.source("figure", "top-up.late")});
        of.span("boil", saved->boil, of.safe().must_hold(saved->boil),
                {"cautious-ends", "up-5-min", of.source("heat-engine")});
    }
}

}  // namespace

void add_falls(const FigureMaker& of) {
    const plan::Plan& plan = of.plan();
    const SafeSide& safe = of.safe();
    const std::string rule = of.source(
        "rules", std::string(facts::to_name(plan.trip->rules)) + " [" + plan.foods.front().standard.rule_source + "]");
    of.acted_on().degrees("read-floor", plan.levels.read_floor, safe.at_least(plan.levels.read_floor),
                          {"rule-thermometer", "up-degree", rule});
    add_cold_baths(of);
    of.acted_on().degrees("action-line", plan.levels.action_line, safe.at_least(plan.levels.action_line),
                          {"rule", "up-degree", rule});
    add_full(of);
    add_top_up_mark(of);
    const How hours{"rule", "none", std::string(facts::to_name(plan.trip->rules))};
    int nth = 0;
    for (const safety::FallRow& row : safety::rows(safety::fall_rules(plan.trip->rules, plan.trip->at_risk))) {
        of.span("row-from", row.from, units::print(row.from), hours, ++nth);
        if (row.to) {
            of.span("row-to", *row.to, units::print(*row.to), hours, nth);
        }
    }
}

void add_come_up(const FigureMaker& of) {
    const facts::Facts& facts = facts::facts();
    of.span("come-up", facts.duration("come-up.refuse"), units::print(facts.duration("come-up.refuse")),
            {"rule", "none", of.source("figure", "come-up.refuse")});
    of.degrees("come-up-to", facts.temperature("come-up.to"), of.safe().limit(facts.temperature("come-up.to")),
               {"rule", "up-degree", of.source("figure", "come-up.to")});
}

void add_trouble_figures(FigureList& list) {
    const FigureMaker of(list, "trouble");
    add_full(of);
    add_come_up(of);
    add_late(of);
    of.at("latest-fire", of.plan().fill.latest_fire, {"share-95", "down-15-min", of.source("hold-times")});
    add_waits_until(of);
    add_late_pour(of);
    add_what_ifs(of);
}

}  // namespace holdwater::card
