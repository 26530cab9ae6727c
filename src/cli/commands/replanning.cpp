// SPDX-License-Identifier: MIT
#include "cli/commands/replanning.hpp"

#include "card/figures/numbers.hpp"
#include "cli/commands/common_rows.hpp"
#include "cli/files/files.hpp"
#include "cli/files/stamp.hpp"
#include "cli/files/trip_file.hpp"
#include "cli/json/plan_json.hpp"
#include "cli/text/plan_text.hpp"
#include "cli/text/told.hpp"
#include "plan/replan/replan.hpp"
#include "problem/in_text.hpp"
#include "trip/moment.hpp"
#include "units/parse.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

namespace holdwater::cli {
namespace {

const OptionRow now_row{.name = "--now",
                        .value = "TIME",
                        .help = "plan on from here: the clock, or a date and time, at which the box was looked at",
                        .example = "14:20",
                        .needs = "--reading"};
const OptionRow reading_row{.name = "--reading",
                            .value = "T",
                            .help = "what the bath reads then",
                            .range = {"30 C", "95 C", "58 C"},
                            .needs = "--now"};
const OptionRow food_in_row{.name = "--food-in",
                            .value = "TIME",
                            .help = "when the food went in, if not as planned",
                            .example = "12:10",
                            .needs = "--now"};
const OptionRow level_row{.name = "--level",
                          .value = "D",
                          .help = "how far below the rim the water stands, if it was measured",
                          .range = {"0 mm", "1000 mm", "60 mm"},
                          .needs = "--now"};
const OptionRow core_row{.name = "--core",
                         .value = "T",
                         .help = "centre of the first food, if it was measured",
                         .range = {"-2 C", "95 C", "41 C"},
                         .needs = "--now"};

/// "14:20", or "2027-10-16T14:20".
std::optional<FoundGiven::Moment> moment(Options& options, const OptionRow& row) {
    const Given text = options.text(row);
    if (!text) {
        return std::nullopt;
    }
    if (const auto whole = trip::parse_moment(*text)) {
        return *whole;
    }
    const auto clock = units::parse_clock(*text);
    if (!clock) {
        options.fault(row.name, "clock-unreadable", fmt::format("\"{}\" is no time", problem::quoted(*text)),
                      "a clock such as 14:20, or a date and time such as 2027-10-16T14:20");
        return std::nullopt;
    }
    return *clock;
}

units::LocalTime on_the_trip(const FoundGiven::Moment& moment, units::LocalTime from) {
    const auto* const clock = std::get_if<units::ClockTime>(&moment);
    return clock != nullptr ? units::next(*clock, from) : std::get<units::LocalTime>(moment);
}

/// When each food is surely ready, and whether the meal holds.
std::string outcome(const plan::Replanned& replanned) {
    std::string ready;
    for (const plan::FoodPlan& food : replanned.plan.foods) {
        ready += fmt::format("{}: {} at {}.\n", food.food->name, food.standard.finish ? "ready for the fire" : "ready",
                             day_time(food.ready()));
    }
    return ready + (replanned.later > units::Duration{0}
                        ? fmt::format("The meal is {} later than planned, at {}.\n", units::print(replanned.later),
                                      day_time(replanned.plan.trip->serve))
                        : fmt::format("The meal holds, at {}.\n", day_time(replanned.plan.trip->serve)));
}

}  // namespace

std::vector<OptionRow> replan_rows() {
    return {now_row, reading_row, food_in_row, level_row, core_row};
}

std::optional<FoundGiven> read_found(Options& options) {
    if (!options.has(now_row) || !options.has(reading_row)) {
        return std::nullopt;
    }
    FoundGiven found;
    found.now = moment(options, now_row).value_or(units::ClockTime{});
    found.reading_text = options.text(reading_row).value_or("");
    found.reading = options.need<units::Temperature>(reading_row);
    found.food_in = moment(options, food_in_row);
    found.level = options.maybe<units::Length>(level_row);
    found.core = options.maybe<units::Temperature>(core_row);
    return found;
}

Exit show_replan(const std::string& trip_path, const FoundGiven& given, bool json) {
    const auto trip = load_trip(trip_path);
    tell(trip.problems());
    if (!trip) {
        return exit_for(trip.problems());
    }
    if (trip->boxes.size() != 1) {
        const problem::Problem two = problem::error(
            "replan-two-boxes", "a trip of two boxes is not planned on from here", "write a trip file for each box");
        tell({two});
        return exit_for({two});
    }
    plan::Found found;
    found.now = on_the_trip(given.now, trip->from);
    found.reading = given.reading;
    found.food_in = given.food_in ? std::optional(on_the_trip(*given.food_in, trip->from)) : std::nullopt;
    found.below_rim = given.level;
    found.core = given.core;
    const auto replanned = plan::replan(*trip, found);
    if (!replanned) {
        if (json) {
            fmt::print("{}", boxes_json(*trip, {BoxResult{&*trip, nullptr, {}, replanned.problems()}}, ""));
        }
        tell(replanned.problems());
        return exit_for(replanned.problems());
    }
    if (json) {
        const auto words = load_words(own_language);
        const auto stamp = own_stamp(*trip);
        if (!words || !stamp) {
            const problem::Problems& faults = !words ? words.problems() : stamp.problems();
            tell(faults);
            return exit_for(faults);
        }
        const BoxResult box{&*trip, &replanned->plan, card::card_numbers({replanned->plan, *words}), {}};
        fmt::print("{}", replan_json(*replanned, box, *stamp));
        return exit_for(trip.problems());
    }
    fmt::print("From {}, where the bath reads {}:\n{}{}", day_time(found.now), given.reading_text, outcome(*replanned),
               plan_text(replanned->plan, found.now));
    return exit_for(trip.problems());
}

}  // namespace holdwater::cli
