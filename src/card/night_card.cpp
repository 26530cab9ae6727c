// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "card/cards.hpp"
#include "units/print.hpp"

namespace holdwater::card {
namespace {

using units::Toward;

/// The full temperature over the fire after a fall.
units::Temperature full() { return facts::facts().temperature("reheat"); }

std::string action_text(const Hand& hand, safety::FallAction action) {
    switch (action) {
        case safety::FallAction::none:
            return hand.words.text("night.action-none");
        case safety::FallAction::finish_and_eat_next:
            return hand.words.text("night.action-next");
        case safety::FallAction::finish_and_eat_now:
            return hand.words.text("night.action-now");
        case safety::FallAction::throw_away:
            return hand.words.text("night.action-away");
    }
    return {};
}

Curve curve_of(const Hand& hand) {
    const plan::Plan& plan = hand.plan;
    const plan::Night& night = plan.night;
    const words::Words& w = hand.words;
    Curve curve;
    units::Temperature coldest = plan.trip->weather.air_at(night.from);
    for (double h = 0; h <= night.curve_hours.back(); h += 0.5) {
        coldest = std::min(coldest, plan.trip->weather.air_at(night.from.after(units::hours(h))));
    }
    curve.title = w.text("night.curve-title", {{"mark", hand.about(night.reading)}, {"air", hand.at_most(coldest)}});
    for (std::size_t i = 0; i < night.curve.size(); ++i) {
        const double x = night.curve_hours[i];
        curve.low.push_back({x, night.curve[i].low});
        curve.likely.push_back({x, night.curve[i].likely});
        curve.high.push_back({x, night.curve[i].high});
    }
    curve.floor = plan.floor.celsius();
    curve.floor_label = w.text("night.curve-floor");
    for (double h = 0; h <= night.curve_hours.back() + 1e-9; h += 2.0) {
        curve.x_labels.push_back({h, fmt::format("{:.0f}", h)});
    }
    const double top = std::ceil(night.curve.front().high / 5.0) * 5.0;
    const double bottom = std::floor(std::min(night.curve.back().low, curve.floor) / 5.0) * 5.0;
    for (double t = bottom; t <= top; t += 5.0) {
        curve.y_labels.push_back({t, fmt::format("{:.0f}", t)});
    }
    curve.x_title = w.text("night.curve-x");
    curve.y_title = w.text("night.curve-y");
    return curve;
}

}  // namespace

Card night_card(const Hand& hand) {
    const plan::Plan& plan = hand.plan;
    const plan::Night& night = plan.night;
    const words::Words& w = hand.words;
    Card card;
    if (night.wake) {
        card.blocks.emplace_back(KeyRow{
            {KeyNumber{w.text("night.wake-label"), hand.clock_only(night.wake->after(-plan.trip->fire.boils_in)), "", ""},
             KeyNumber{w.text("night.key-label"), hand.may_leave(night.longest), "",
                       w.text("night.key-aside", {{"mark", hand.about(night.reading)}})}}});
    } else {
        card.blocks.emplace_back(KeyNumber{w.text("night.key-label"), hand.may_leave(night.longest), "",
                                           w.text("night.key-aside", {{"mark", hand.about(night.reading)}})});
    }
    Table alone;
    alone.title = w.text("night.table-title");
    alone.columns = {{w.text("night.table-read"), Align::right, false}, {w.text("night.table-alone"), Align::right, true}};
    for (const plan::Unattended& row : night.unattended) {
        if (row.longest >= units::minutes(45) && alone.rows.size() < 4) {
            alone.rows.push_back({hand.about(row.reading), hand.may_leave(row.longest)});
        }
    }
    card.blocks.emplace_back(alone);
    card.blocks.emplace_back(Turn{});
    Table morning;
    morning.title = w.text("night.morning-title", {{"full", hand.about(full())}});
    morning.columns = {{w.text("night.table-read"), Align::right, false},
                       {w.text("night.morning-2"), Align::left, false},
                       {w.text("night.morning-4"), Align::left, false},
                       {w.text("night.morning-8"), Align::left, false}};
    for (const plan::MorningRow& row : night.morning) {
        const bool last = &row == &night.morning.back();
        std::vector<Text> cells{last ? w.text("night.or-less", {{"reading", hand.short_degrees(row.reading)}})
                                     : hand.about(row.reading)};
        for (const plan::MorningRow::Cell& cell : row.cells) {
            cells.push_back(action_text(hand, cell.action));
        }
        morning.rows.push_back(std::move(cells));
    }
    card.blocks.emplace_back(morning);
    card.blocks.emplace_back(Note{w.text("night.morning-note", {{"action", hand.at_least(plan.action_line)}})});
    if (plan.trip->rules == facts::Ruleset::uk) {
        card.blocks.emplace_back(Note{w.text("night.morning-uk")});  // no second time there
    }
    card.blocks.emplace_back(Turn{});
    card.blocks.emplace_back(curve_of(hand));
    card.blocks.emplace_back(Note{w.text("night.curve-note")});
    card.cautions.push_back({SignalWord::warning, w.text("night.caution")});
    return card;
}

}  // namespace holdwater::card
