// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include "cli/app.hpp"
#include "cli/data.hpp"
#include "cli/files.hpp"
#include "cli/plan_text.hpp"
#include "cli/stamp.hpp"
#include "cli/trip_file.hpp"

namespace holdwater::cli {

Exit plan_command(const PlanOptions& options) {
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
    const auto words = layout_file("words/" + trip->language + ".toml");
    const auto format = layout_file("formats/hand.toml");
    const std::string stamp =
        words && format ? stamp_of(*trip, {*format, *words}) : std::string{};
    fmt::print("{}", options.json ? plan_json(*plan, stamp) : plan_text(*plan, options.explain));
    tell(plan->notes);
    problem::Problems remarks = trip.problems();
    remarks.insert(remarks.end(), plan->notes.begin(), plan->notes.end());
    return exit_with(remarks);
}

}  // namespace holdwater::cli
