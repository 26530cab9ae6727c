// SPDX-License-Identifier: MIT
#include "cli/commands/quick_meal.hpp"

#include "cli/commands/printing_rows.hpp"
#include "cli/commands/quick_rows.hpp"
#include "cli/line/kinds.hpp"
#include "problem/in_text.hpp"
#include "safety/wished_core.hpp"
#include "trip/large_piece.hpp"
#include "trip/moment.hpp"
#include "trip/written.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace holdwater::cli {
namespace {

/// Reads the options one after another and keeps each as the file will have it.
class MealReader {
  public:
    MealReader(Options& options, QuickMeal& meal) : options_(options), meal_(meal) {}

    template <class Q>
    std::optional<Q> quantity(const OptionRow& row, std::string_view table, std::string_view key) {
        const auto value = options_.maybe<Q>(row);
        keep(row, table, key, trip::in_toml(text(row)));
        return value;
    }
    std::optional<int> number(const OptionRow& row, std::string_view table, std::string_view key) {
        if (!options_.has(row)) {
            return std::nullopt;
        }
        const int value = options_.whole_number(row);
        keep(row, table, key, fmt::format("{}", value));
        return value;
    }
    void word(const OptionRow& row, std::string_view table, std::string_view key) {
        options_.choice(row);
        keep(row, table, key, trip::in_toml(text(row)));
    }
    void words(const OptionRow& row, std::string_view table, std::string_view key) {
        keep(row, table, key, trip::in_toml(text(row)));
    }
    std::optional<QuickTime> time(const OptionRow& row) {
        if (!options_.has(row)) {
            return std::nullopt;
        }
        if (const auto whole = trip::parse_moment(text(row))) {
            return *whole;
        }
        const auto clock = units::parse_clock(text(row));
        if (!clock) {
            options_.fault(row.name, "clock-unreadable", fmt::format("\"{}\" is no time", problem::quoted(text(row))),
                           "a clock such as 18:30, or a date and time such as 2027-10-16T18:30");
            return std::nullopt;
        }
        return *clock;
    }
    void keep(const OptionRow& row, std::string_view table, std::string_view key, std::string value) {
        if (options_.has(row)) {
            meal_.said.push_back({&row, table, key, std::move(value)});
        }
    }

  private:
    std::string text(const OptionRow& row) const { return options_.text(row).value_or(""); }

    Options& options_;
    QuickMeal& meal_;
};

units::LocalTime at(const QuickTime& time, units::LocalTime after) {
    const auto* const clock = std::get_if<units::ClockTime>(&time);
    return clock != nullptr ? units::next(*clock, after) : std::get<units::LocalTime>(time);
}

void put_times(trip::Form& form, const QuickMeal& meal, units::LocalTime now) {
    const units::LocalTime serve = at(meal.serve, now);
    form.put("trip", "serve", serve.iso());
    if (meal.from) {
        form.put("trip", "from", at(*meal.from, serve.after(-units::hours(24))).iso());
        return;
    }
    const units::LocalTime early = serve.after(-units::hours(10));
    form.suggest("trip", "from", (early < now && now < serve ? now : early).iso());
}

}  // namespace

QuickMeal read_meal(Options& options) {
    using namespace quick_rows;
    for (const OptionRow* row : {&kind, &thickness, &pieces, &water, &serve}) {
        if (!options.has(*row)) {
            options.missing(*row, "write it like " + written(*row));
        }
    }
    QuickMeal meal;
    MealReader read(options, meal);
    meal.path = options.file(file);
    read.words(kind, "food", "kind");
    if (const Given key = options.text(kind)) {
        meal.kind = facts::facts().find_food(*key);
        if (meal.kind == nullptr) {
            options.fault(kind.name, "kind-unknown", fmt::format("\"{}\" is not a known food", problem::quoted(*key)),
                          kinds_like(*key));
        }
    }
    meal.thickness = read.quantity<units::Length>(thickness, "food", "thickness").value_or(units::Length{});
    meal.pieces = read.number(pieces, "food", "pieces").value_or(1);
    meal.water = read.quantity<units::Volume>(water, "box", "water").value_or(units::Volume{});
    meal.serve = read.time(serve).value_or(units::ClockTime{});
    meal.from = read.time(from);
    read.words(name, "trip", "name");
    read.number(people, "trip", "people");
    read.keep(nobody_at_risk, "trip", "at_risk", "false");
    options.one_of<facts::Ruleset>(rules);
    read.words(rules, "trip", "rules");
    read.quantity<units::Length>(altitude, "trip", "altitude");
    read.word(cut, "food", "cut");
    read.word(shape, "food", "shape");
    meal.shape = options.one_of<facts::Shape>(shape).value_or(meal.shape);
    read.word(contact, "food", "contact");
    meal.mass = read.quantity<units::Mass>(mass, "food", "mass");
    read.quantity<units::Temperature>(start, "food", "start");
    read.quantity<units::Temperature>(target, "food", "target");
    read.quantity<units::TemperatureDifference>(thermometer, "box", "thermometer");
    read.quantity<units::HeatLoss>(loss, "box", "loss");
    options.maybe<units::Temperature>(air);
    read.keep(air, "weather", "hours",
              fmt::format("[{{ at = \"12:00\", air = {} }}]", trip::in_toml(options.text(air).value_or(""))));
    read.word(wind, "weather", "wind");
    read.number(pots, "fire", "pots");
    read.quantity<units::Volume>(pot, "fire", "pot");
    read.quantity<units::Duration>(boils_in, "fire", "boils_in");
    read.quantity<units::Temperature>(cold_water, "fire", "cold_water");
    read.word(quick_rows::units, "trip", "units");
    meal.printing = read_printing_of_one(options);
    return meal;
}

void fill_in(trip::Form& form, const QuickMeal& meal, units::LocalTime now) {
    const auto in_quotes = [](const auto& value) { return trip::in_toml(trip::written(value)); };
    std::string name = meal.kind->key;
    std::replace(name.begin(), name.end(), '-', ' ');
    form.put("food", "name", trip::in_toml(name));
    form.suggest("trip", "name", trip::in_toml(name));
    form.suggest("trip", "people", fmt::format("{}", meal.pieces));
    const units::Mass piece = meal.mass.value_or(trip::large_piece(meal.shape, meal.thickness));
    form.suggest("food", "mass", in_quotes(piece));
    const auto inside = trip::roomy_box(meal.water, piece * static_cast<double>(meal.pieces));
    form.suggest("box", "inside",
                 fmt::format("[{}, {}, {}]", in_quotes(inside[0]), in_quotes(inside[1]), in_quotes(inside[2])));
    for (const SaidValue& one : meal.said) {
        form.put(one.table, one.key, one.value);
    }
    const std::string& word = form.entry("trip", "rules").value;  // in quotes
    const auto rules = facts::from_name<facts::Ruleset>(word.substr(1, word.size() - 2));
    const auto core = safety::wished_core(*meal.kind, rules.value_or(facts::Ruleset{}));
    if (core && !meal.says(quick_rows::target)) {
        form.suggest("food", "target", in_quotes(core->target));
        if (core->over_fire) {
            form.suggest("food", "over_fire", "true");
        }
    }
    put_times(form, meal, now);
}

}  // namespace holdwater::cli
