// SPDX-License-Identifier: MIT
// The model in plain words, each card number with its quantile and rounding, and what was assumed.
#include "card/basis/basis_parts.hpp"
#include "card/shared/numbers.hpp"
#include "facts/facts.hpp"
#include "heat/box.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace holdwater::card {
namespace {

constexpr double as_mm2 = 1e6;

/// "core_peak_c: pork loin" with 65.57 -> "core peak: pork loin" and "65.57 °C": the unit ends the name.
struct Named {
    Text name;
    Text unit;
};
Named named(const std::string& key) {
    const std::size_t colon = std::min(key.find(':'), key.size());
    std::string name = key.substr(0, colon);
    Text unit;
    constexpr std::pair<std::string_view, const char*> units[] = {{"_c", "\u00A0°C"},  {"_h", "\u00A0h"},
                                                                  {"_mm", "\u00A0mm"}, {"_l", "\u00A0L"},
                                                                  {"_kg", "\u00A0kg"}, {"_g", "\u00A0g"}};
    for (const auto& [ending, printed] : units) {
        if (name.ends_with(ending)) {
            name.resize(name.size() - ending.size());
            unit = printed;
            break;
        }
    }
    std::replace(name.begin(), name.end(), '_', ' ');
    return {name + key.substr(colon), unit};
}

/// "figures hand.touch.*" without the star, which would print bold.
Text starless(std::string text) {
    for (std::size_t at = text.find(".*"); at != std::string::npos; at = text.find(".*")) {
        text.erase(at, 2);
    }
    std::erase(text, '*');
    return text;
}

Text figure(double value) {
    return fmt::format("{:.4g}", value);
}

/// The name of a number without its own number and food: "top up 2", "core peak: pork loin".
Text told_name(const Text& name, const words::Words& words) {
    const std::size_t colon = std::min(name.find(':'), name.size());
    std::size_t end = colon;
    while (end > 0 && (name[end - 1] == ' ' || (name[end - 1] >= '0' && name[end - 1] <= '9'))) {
        --end;
    }
    return words.translated(name.substr(0, end)) + name.substr(end);
}

/// Where a number comes from: known words as a whole, else the first of them before keys.
Text told_source(const Text& source, const words::Words& words) {
    if (words.has("told." + words::Words::translation_key(source))) {
        return words.translated(source);
    }
    const std::size_t space = std::min(source.find(' '), source.size());
    return words.translated(source.substr(0, space)) + source.substr(space);
}

/// A remark in the language of the cards: by its code, without the figures that only the terminal tells.
Text remark(const problem::Problem& said, const words::Words& words) {
    const std::string key = "remark." + std::string(said.code.text());
    if (!words.has(key)) {
        return plain(said.message + (said.hint.empty() ? "" : " (" + said.hint + ")"));
    }
    if (!said.place || said.place->line == 0) {
        return words.text(key);
    }
    const std::string& file = said.place->file;
    return words.text(key) + plain(fmt::format(" ({}:{})", file.substr(file.rfind('/') + 1), said.place->line));
}

}  // namespace

void BasisMaker::verdict() {
    heading("verdict-heading");
    for (const plan::Plan& plan : plans_) {
        const CardWriter hand{plan, words_};
        const auto wakes =
            std::count_if(plan.top_ups.begin(), plan.top_ups.end(), [](const plan::TopUp& one) { return one.wakes; });
        note("verdict", {{"trip", plain(plan.trip->name)},
                         {"share", fmt::format("{:.0f}", std::floor(100.0 * plan.share_that_holds))},
                         {"food-in", hand.clock(plan.fill.food_in)},
                         {"serve", hand.clock(plan.trip->serve)},
                         {"top-ups", fmt::format("{}", plan.top_ups.size())},
                         {"wakes", fmt::format("{}", wakes)}});
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
    note("model-doubt", {{"scenarios", fmt::format("{}", plan.scenarios)},
                         {"error", fmt::format("{:.1f}", 100.0 * plan.share_error)}});
    note("model-rounding");
    note("model-limits");
}

void BasisMaker::numbers() {
    heading("numbers-heading");
    note("numbers-note");
    for (const plan::Plan& plan : plans_) {
        Table table;
        table.title = word("numbers-title", {{"trip", plain(plan.trip->name)}});
        table.columns = {{word("numbers-card"), Align::left, false},
                         {word("numbers-printed"), Align::left, true},
                         {word("numbers-value"), Align::left, false},
                         {word("numbers-how"), Align::left, false}};
        for (const CardNumber& number : card_numbers({plan, words_})) {
            const Named name = named(number.name);
            const Text value = figure(number.value) + name.unit;
            table.rows.push_back(
                {words_.text(number.card + ".name") + ": " + plain(told_name(name.name, words_)), number.printed,
                 number.error && *number.error > 0
                     ? word("numbers-error", {{"value", value}, {"error", fmt::format("{:.2g}", *number.error)}})
                     : value,
                 word("numbers-how-row", {{"quantile", words_.translated(number.quantile)},
                                          {"rounding", words_.translated(number.rounding)},
                                          {"source", told_source(starless(number.source), words_)}})});
            std::vector<Text>& row = table.rows.back();
            for (std::size_t i = 0; i + 1 < row.size(); ++i) {  // keys in the last cell keep their points
                set_decimal_mark(row[i], words_.decimal_mark());
            }
        }
        blocks_.emplace_back(Block{std::move(table)});
    }
}

void BasisMaker::readings(const plan::Plan& plan) {
    Table table;
    table.title = word("assumed-readings", {{"trip", plain(plan.trip->name)}});
    table.columns = {{word("assumed-what"), Align::left, false},
                     {word("assumed-low"), Align::right, false},
                     {word("assumed-likely"), Align::right, true},
                     {word("assumed-high"), Align::right, false}};
    const auto row = [&](const Text& what, double low, double likely, double high, const char* form = "{:.2f}") {
        const auto print = [&](double v) { return fmt::format(fmt::runtime(form), v); };
        table.rows.push_back({what, print(low), print(likely), print(high)});
    };
    const auto interval = [&](const Text& what, const auto& of, const auto& number) {
        row(what, number(of.low), number(of.likely), number(of.high));
    };
    const auto plain = [](double v) { return v; };
    const auto degrees = [](units::Temperature t) { return t.celsius(); };
    const auto hours = [](std::optional<units::Duration> d) { return units::in_hours(d.value()); };  // of a good plan
    for (const plan::FoodPlan& food : plan.foods) {
        const Text name = plain(food.food->name);
        const auto diffusivity = [&](heat::Bound r) { return answer::properties_of(food.piece, r).diffusivity.si(); };
        const auto film = [&](heat::Bound r) { return answer::film_of(food.piece, r).si(); };
        using heat::Bound;
        row(word("assumed-diffusivity", {{"food", name}}), diffusivity(Bound::slow) * as_mm2,
            diffusivity(Bound::likely) * as_mm2, diffusivity(Bound::fast) * as_mm2, "{:.3f}");
        row(word("assumed-film", {{"food", name}}), film(Bound::slow), film(Bound::likely), film(Bound::fast),
            "{:.0f}");
        interval(word("assumed-peak", {{"food", name}}), food.core_peak, degrees);
        interval(word("assumed-come-up",
                  {{"food", name}, {"to", units::print(facts::facts().temperature("come-up.to"), trip_.units, {0.1})}}),
             food.come_up, hours);
        interval(word("assumed-growth", {{"food", name}}), food.growth_with_lag, plain);
        interval(word("assumed-growth-no-lag", {{"food", name}}), food.growth_without_lag, plain);
    }
    interval(word("assumed-loss"), plan.loss, [](units::HeatLoss loss) { return loss.si(); });
    interval(word("assumed-settled"), plan.fill.after_food, degrees);
    table.rows.push_back({word("assumed-boiling"), "", fmt::format("{:.1f}", plan.fill.boiling.celsius()), ""});
    const units::HeatCapacity liner = heat::liner_of(plan.trip->boxes.front().inside);
    table.rows.push_back({word("assumed-liner"), "", fmt::format("{:.1f}", liner.si() * 1e-3), ""});
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
            list.steps.push_back({"", remark(one, words_)});
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
    table.columns = {{word("spreads-what"), Align::left, false},
                     {word("spreads-from"), Align::right, false},
                     {word("spreads-to"), Align::right, false},
                     {word("spreads-unit"), Align::left, false},
                     {word("spreads-seen"), Align::left, false}};
    for (const facts::Spread& spread : facts::facts().spreads()) {
        const bool tails = spread.shape == facts::SpreadShape::normal || spread.shape == facts::SpreadShape::lognormal;
        // Printed as people write them: mm²/s for what the facts hold in m2/s.
        const bool small = spread.unit == "m2/s";
        const double factor = small ? as_mm2 : 1.0;
        const std::string told = "spread." + words::Words::translation_key(spread.key);
        const Text own = words_.has(told) ? words_.text(told) : spread.meaning;
        const Text meaning = tails ? word("spreads-tail", {{"meaning", own}}) : own;
        table.rows.push_back({"*" + spread.key + "* " + meaning, fmt::format("{:g}", spread.low * factor),
                              fmt::format("{:g}", spread.high * factor),
                              small                     ? "mm²/s"
                              : spread.unit == "W/m2/K" ? "W/(m²\u00A0K)"
                                                        : spread.unit,
                              words_.translated(facts::to_text(spread.provenance))});
    }
    put(std::move(table));
}

}  // namespace holdwater::card
