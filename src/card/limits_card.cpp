// SPDX-License-Identifier: MIT
#include "card/cards.hpp"
#include "units/print.hpp"

namespace holdwater::card {

Card limits_card(const Hand& hand) {
    const plan::Plan& plan = hand.plan;
    const words::Words& w = hand.words;
    const std::string floor = hand.at_least(plan.read_floor);
    const std::string full = hand.about(facts::facts().temperature("reheat"));
    Card card;
    card.blocks.emplace_back(hand.key(w.text("limits.key-label"), plan.read_floor, units::Toward::up, w.text("limits.key-aside")));
    Table below;
    below.title = w.text("limits.table-title", {{"floor", floor}});
    below.columns = {{w.text("limits.col-time"), Align::left, true}, {w.text("limits.col-do"), Align::left, false}};
    const std::string do_short = w.text("limits.do-short", {{"full", full}});
    if (plan.trip->rules == facts::Ruleset::uk) {
        below.rows = {{w.text("limits.row-uk-short"), do_short}, {w.text("limits.row-uk-long"), w.text("limits.do-long")}};
    } else {
        below.rows = {{w.text("limits.row-short"), do_short},
                      {w.text("limits.row-middle"), w.text("limits.do-middle", {{"full", full}})},
                      {w.text("limits.row-long"), w.text("limits.do-long")}};
    }
    if (plan.cold_bath) {
        // The deadliest row first: it cuts the others short.
        below.rows.insert(below.rows.begin(),
                          {w.text("limits.row-cold", {{"cold", hand.at_least(plan.cold_bath->under)},
                                                      {"longest", units::print(units::Duration{units::round_to(
                                                                      plan.cold_bath->longest.si(), 300.0, units::Toward::down)})}}),
                           w.text("limits.do-cold")});
    }
    card.blocks.emplace_back(below);
    card.blocks.emplace_back(Turn{});
    Table other;
    other.title = w.text("limits.table-other");
    other.columns = {{"", Align::left, true}, {w.text("limits.col-do"), Align::left, false}};
    other.rows = {{w.text("limits.other-leak"), w.text("limits.do-leak", {{"full", full}})},
                  {w.text("limits.other-slow"), w.text("limits.do-slow")},
                  {w.text("limits.other-risk"), w.text("limits.do-risk", {{"full", full}})},
                  {w.text("limits.other-late"), w.text("limits.do-late")}};
    card.blocks.emplace_back(other);
    card.blocks.emplace_back(Note{w.text("limits.unsure")});
    card.blocks.emplace_back(Note{w.text("limits.clock", {{"floor", floor}})});
    card.cautions.push_back({SignalWord::warning, w.text("limits.caution")});
    return card;
}

}  // namespace holdwater::card
