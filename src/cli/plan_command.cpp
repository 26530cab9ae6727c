// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>

#include "cli/app.hpp"
#include "cli/data.hpp"
#include "cli/files.hpp"
#include "cli/plan_text.hpp"
#include "cli/stamp.hpp"
#include "cli/trip_file.hpp"
#include "cli/what_if_text.hpp"

namespace holdwater::cli {
namespace {

struct PlanOptions {
    std::string trip;
    bool json = false;
    bool explain = false;
};

Exit show_plan(const PlanOptions& options) {
    const auto trip = load_trip(options.trip);
    tell(trip.problems());
    if (!trip) {
        return Exit::bad_input;
    }
    const auto plan = plan::make_plan(*trip);
    if (!plan) {
        if (options.json) {
            fmt::print("{}", refusal_json(*trip, plan.problems()));
            return exit_for(plan.problems());
        }
        fmt::print("{}: REFUSED\n\n", trip->name);
        for (const problem::Problem& p : plan.problems()) {
            fmt::print("{}\n", problem::to_line(p));
        }
        return exit_for(plan.problems());
    }
    const auto words = load_words(trip->language);
    const auto words_text = layout_file("words/" + trip->language + ".toml");
    const auto format = layout_file("formats/hand.toml");
    if (!words || !words_text || !format) {
        tell(!words ? words.problems() : !format ? format.problems() : words_text.problems());
        return Exit::our_fault;
    }
    const auto numbers = card::card_numbers({*plan, *words});
    if (options.json) {
        fmt::print("{}", plan_json(*plan, numbers, stamp_of(*trip, {*format, *words_text})));
    } else {
        fmt::print("{}{}{}", plan_text(*plan), what_if_text(*plan), options.explain ? explain_text(*plan, numbers) : "");
    }
    tell(plan->notes);
    problem::Problems remarks = trip.problems();
    remarks.insert(remarks.end(), plan->notes.begin(), plan->notes.end());
    return exit_with(remarks);
}

}  // namespace

Command add_plan(CLI::App& program) {
    const auto given = std::make_shared<PlanOptions>();
    CLI::App* line = program.add_subcommand("plan", "show verdict, timeline and curve on the terminal");
    line->add_option("TRIP", given->trip, "trip file")->required();
    line->add_flag("--json", given->json, "every number, unrounded, as JSON");
    line->add_flag("--explain", given->explain, "say how each card number was made safe");
    return {line, [given] { return show_plan(*given); }};
}

}  // namespace holdwater::cli
