// SPDX-License-Identifier: MIT
// The figures of the card Reading.
#include "card/figures/parts.hpp"
#include "card/figures/places.hpp"
#include "facts/facts.hpp"
#include "plan/result/reading_rows.hpp"

namespace holdwater::card {

using units::Toward;
using How = FigureMaker::How;

namespace {

/// Below the floor: readings that end a row.
void add_fallen(const FigureMaker& of) {
    int nth = 0;
    for (const plan::MorningRow& row : of.plan().night.morning) {
        of.degrees("fallen", row.reading, of.safe().at_least(row.reading),
                   {"chosen", "up-degree", of.source("cooling-law")}, ++nth);
    }
}

/// The floor as a reading, and where it is time to top up.
void add_levels(const FigureMaker& of) {
    const plan::Plan& plan = of.plan();
    const std::string rule = of.source(
        "rules", std::string(facts::to_name(plan.trip->rules)) + " [" + plan.foods.front().standard.rule_source + "]");
    of.acted_on().degrees("read-floor", plan.levels.read_floor, of.safe().at_least(plan.levels.read_floor),
                          {"rule-thermometer", "up-degree", rule});
    of.acted_on().degrees("action-line", plan.levels.action_line, of.safe().at_least(plan.levels.action_line),
                          {"rule", "up-degree", rule});
    add_read_floor(of);
    add_action_line(of);
}

}  // namespace

void add_reading_figures(FigureList& list) {
    const FigureMaker of(list, "reading");
    if (!of.reads()) {
        add_levels(of);
        return;
    }
    const FigureMaker act = of.acted_on();
    const SafeSide& safe = of.safe();
    const plan::Plan& plan = of.plan();
    act.degrees("mark", plan.levels.mark, safe.at_least(plan.levels.mark),
                {"chosen-fewest", "none-whole-degrees", of.source("heat-engine")});
    add_intervals(act);
    add_levels(of);
    add_full(of);
    add_ladder(of);
    add_fallen(of);
    if (const auto away = away_below(plan)) {
        of.brief().degrees("away", *away, safe.at_least(*away), {"chosen", "up-degree", of.source("cooling-law")});
    }
    const units::Volume batch = plan::pots_give(plan);
    of.litres("pots-give", batch, safe.measured(batch, Toward::down),
              {"as-given", "down-tenth", of.source("trip-file")});
    of.span("round", plan.round, units::print(plan.round, Toward::up), {"as-given", "none", of.source("trip-file")});
}

}  // namespace holdwater::card
