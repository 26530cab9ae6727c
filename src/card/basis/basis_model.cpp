// SPDX-License-Identifier: MIT
// The model in plain words, each card number with its quantile and rounding, and what was assumed.
#include "card/basis/basis_parts.hpp"
#include "card/figures/numbers.hpp"
#include "card/shared/own_words.hpp"
#include "card/trip/acts.hpp"
#include "facts/facts.hpp"
#include "heat/box.hpp"
#include "plan/search/burden.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace holdwater::card {
namespace {

constexpr double as_mm2 = 1e6;

/// "figures hand.touch.*" without the star, which would print bold.
Text starless(std::string text) {
    for (std::size_t at = text.find(".*"); at != std::string::npos; at = text.find(".*")) {
        text.erase(at, 2);
    }
    std::erase(text, '*');
    return text;
}

/// A remark in the language of the cards: by its code, without the figures that only the terminal tells.
Text remark(const problem::Problem& said, const words::Words& words) {
    const auto own = words.find("remark." + std::string(said.code.text()));
    if (!own) {
        return plain(said.message + (said.hint.empty() ? "" : " (" + said.hint + ")"));
    }
    if (!said.place || said.place->line == 0) {
        return *own;
    }
    const std::string& file = said.place->file;
    return *own + plain(fmt::format(" ({}:{})", file.substr(file.rfind('/') + 1), said.place->line));
}

}  // namespace

Text provenance_text(facts::Provenance provenance, const words::Words& words) {
    switch (provenance) {
        case facts::Provenance::read:
            return words.text("provenance.read");
        case facts::Provenance::memory:
            return words.text("provenance.memory");
        case facts::Provenance::computed:
            return words.text("provenance.computed");
        case facts::Provenance::measured:
            return words.text("provenance.measured");
        case facts::Provenance::judgement:
            return words.text("provenance.judgement");
    }
    return {};
}

void BasisMaker::verdict() {
    heading("verdict-heading");
    for (const plan::Plan& plan : plans_) {
        const FigureList figures = trip_figures({plan, words_});
        const CardFigures of_plan = figures.of("plan");
        note("verdict", {{"trip", plain(plan.trip->name)},
                         {"share", units::figure(100.0 * plan.promise.share, 1.0, units::Toward::down)},
                         {"food-in", of_plan("act", act_at(plan, plan.fill.food_in))},
                         {"serve", of_plan("act", act_at(plan, plan.trip->serve))},
                         {"top-ups", static_cast<int>(plan.top_ups.size())},
                         {"wakes", static_cast<int>(plan::wakes_of(plan))}});
    }
}

void BasisMaker::inputs() {
    heading("inputs-heading");
    note("inputs-note");
    for (Table& table : trip_tables(trip_, words_)) {
        put(std::move(table));
    }
}

void BasisMaker::model() {
    heading("model-heading");
    for (const char* key : {"model-food", "model-bath", "model-safety"}) {
        note(key);
    }
    const plan::Plan& plan = plans_.front();
    note("model-doubt", {{"scenarios", static_cast<int>(plan.promise.scenarios)},
                         {"error", units::decimal(100.0 * plan.promise.error, 1)}});
    note("model-rounding");
    note("model-limits");
}

void BasisMaker::numbers() {
    heading("numbers-heading");
    note("numbers-note");
    for (const plan::Plan& plan : plans_) {
        Table table;
        table.title = word("numbers-title", {{"trip", plain(plan.trip->name)}});
        table.column(word("numbers-card"));
        table.column(word("numbers-printed"), Align::left, true);
        table.column(word("numbers-value"));
        table.column(word("numbers-how"));
        for (const CardNumber& number : card_numbers({plan, words_})) {
            if (number.detail) {
                continue;
            }
            const units::Amount value = units::significant(number.value, 4, number.unit);
            const bool sampled = number.error && *number.error > 0;
            table.row({words_.text(number.card + ".name") + ": " + plain(number.label), number.printed,
                       sampled
                           ? word("numbers-error", {{"value", value}, {"error", units::significant(*number.error, 2)}})
                           : words_.written(value),
                       word("numbers-how-row", {{"quantile", number.quantile},
                                                {"rounding", number.rounding},
                                                {"source", starless(number.source)}})});
        }
        put(std::move(table));
    }
}

void BasisMaker::readings(const plan::Plan& plan) {
    Table table;
    table.title = word("assumed-readings", {{"trip", plain(plan.trip->name)}});
    table.column(word("assumed-what"));
    table.column(word("assumed-low"), Align::right);
    table.column(word("assumed-likely"), Align::right, true);
    table.column(word("assumed-high"), Align::right);
    const auto row = [&](const Text& what, double low, double likely, double high, int decimals = 2) {
        const auto print = [&](double v) { return words_.written(units::decimal(v, decimals)); };
        table.row({what, print(low), print(likely), print(high)});
    };
    const auto interval = [&](const Text& what, const auto& of, const auto& number) {
        row(what, number(of.low), number(of.likely), number(of.high));
    };
    const auto as_it_is = [](double v) { return v; };
    const auto celsius = [](units::Temperature t) { return t.celsius(); };
    const auto hours = [](std::optional<units::Duration> d) { return units::in_hours(d.value()); };  // of a good plan
    for (const plan::FoodPlan& food : plan.foods) {
        const Text name = plain(food.food->name);
        const auto diffusivity = [&](heat::Bound r) { return answer::properties_of(food.piece, r).diffusivity.si(); };
        const auto film = [&](heat::Bound r) { return answer::film_of(food.piece, r).si(); };
        using heat::Bound;
        row(word("assumed-diffusivity", {{"food", name}}), diffusivity(Bound::slow) * as_mm2,
            diffusivity(Bound::likely) * as_mm2, diffusivity(Bound::fast) * as_mm2, 3);
        row(word("assumed-film", {{"food", name}}), film(Bound::slow), film(Bound::likely), film(Bound::fast), 0);
        interval(word("assumed-peak", {{"food", name}}), food.core_peak, celsius);
        interval(
            word("assumed-come-up",
                 {{"food", name}, {"to", units::amount(facts::facts().temperature("come-up.to"), trip_.units, {0.1})}}),
            food.come_up, hours);
        interval(word("assumed-growth", {{"food", name}}), food.growth_with_lag, as_it_is);
        interval(word("assumed-growth-left", {{"food", name}}), food.growth_left, as_it_is);
        table.row({word("assumed-net-growth", {{"food", name}}), "", "",
                   words_.written(units::decimal(food.net_growth(), 2))});
        interval(word("assumed-growth-no-lag", {{"food", name}}), food.growth_without_lag, as_it_is);
    }
    interval(word("assumed-loss"), plan.loss, [](units::HeatLoss loss) { return loss.si(); });
    interval(word("assumed-settled"), plan.fill.after_food, celsius);
    const auto alone = [&](const char* key, double value) {
        table.row({word(key), "", words_.written(units::decimal(value, 1)), ""});
    };
    alone("assumed-boiling", plan.levels.boiling.celsius());
    const units::HeatCapacity liner = heat::liner_of(plan.trip->boxes.front().inside);
    alone("assumed-liner", liner.si() * 1e-3);
    put(std::move(table));
}

void BasisMaker::assumed() {
    heading("assumed-heading");
    problem::Problems said = remarks_;
    for (const plan::Plan& plan : plans_) {
        said.insert(said.end(), plan.notes.begin(), plan.notes.end());
    }
    if (said.empty()) {
        note("assumed-no-remarks");
    } else {
        note("assumed-remarks");
        Steps list;
        for (const problem::Problem& one : said) {
            list.add(remark(one, words_));
        }
        put(std::move(list));
    }
    for (const plan::Plan& plan : plans_) {
        readings(plan);
    }
}

void BasisMaker::spreads() {
    heading("spreads-heading");
    note("spreads-note");
    Table table;
    table.column(word("spreads-what"));
    table.column(word("spreads-from"), Align::right);
    table.column(word("spreads-to"), Align::right);
    table.column(word("spreads-unit"));
    table.column(word("spreads-seen"));
    for (const facts::Spread& spread : facts::facts().spreads()) {
        const bool tails = spread.shape == facts::SpreadShape::normal || spread.shape == facts::SpreadShape::lognormal;
        // Printed as people write them: mm²/s for what the facts hold in m2/s.
        const bool small = spread.unit == "m2/s";
        const double factor = small ? as_mm2 : 1.0;
        const Text own = words_.find(words_key_of(spread)).value_or(spread.meaning);
        const Text meaning = tails ? word("spreads-tail", {{"meaning", own}}) : own;
        table.row({"*" + spread.key + "* " + meaning, words_.written(units::significant(spread.low * factor)),
                   words_.written(units::significant(spread.high * factor)),
                   small                     ? "mm²/s"
                   : spread.unit == "W/m2/K" ? "W/(m²\u00A0K)"
                                             : spread.unit,
                   provenance_text(spread.provenance, words_)});
    }
    put(std::move(table));
}

}  // namespace holdwater::card
