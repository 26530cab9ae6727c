// SPDX-License-Identifier: MIT
#include "cli/commands/commands.hpp"
#include "cli/commands/common_rows.hpp"
#include "cli/commands/replanning.hpp"
#include "cli/files/files.hpp"
#include "cli/files/progress.hpp"
#include "cli/files/stamp.hpp"
#include "cli/files/trip_file.hpp"
#include "cli/json/plan_json.hpp"
#include "cli/line/options.hpp"
#include "cli/text/plan_text.hpp"
#include "cli/text/provisions_text.hpp"
#include "cli/text/ways_text.hpp"
#include "cli/text/what_if_text.hpp"
#include "plan/result/boxes.hpp"

#include <fmt/format.h>

namespace holdwater::cli {
namespace {

const OptionRow plan_explain{.name = "--explain", .help = "say how each card number was made safe"};

struct PlanOptions {
    std::string trip;
    bool json = false;
    bool explain = false;
};

/// The boxes of a trip, each planned or refused; those that hold share one latest moment for their fire. The results
/// point into the plans.
struct Planned {
    std::vector<plan::Plan> plans;
    std::vector<BoxResult> boxes;
};

Planned plan_boxes(const std::vector<trip::Trip>& parts, const words::Words& words) {
    Planned planned;
    planned.plans.reserve(parts.size());
    for (const trip::Trip& part : parts) {
        auto made = plan::make_plan(part);
        BoxResult box{&part, nullptr, {}, made.problems()};
        if (made) {
            planned.plans.push_back(std::move(made).value());
            box.plan = &planned.plans.back();
        }
        planned.boxes.push_back(std::move(box));
    }
    plan::share_latest_fire(planned.plans);
    for (BoxResult& box : planned.boxes) {
        if (box.plan != nullptr) {
            box.numbers = card::card_numbers({*box.plan, words});
        }
    }
    return planned;
}

std::string box_text(const BoxResult& box, bool explain) {
    if (box.plan != nullptr) {
        return plan_text(*box.plan) + "\n" + around_text(*box.plan) + what_if_text(*box.plan) + ways_text(*box.plan) +
               (explain ? explain_text(*box.plan, box.numbers) : "");
    }
    if (exit_for(box.problems) != Exit::refused) {  // an input is wrong: that is no verdict
        return fmt::format("{}: no plan, an input is wrong\n", box.trip->name);
    }
    std::string text = fmt::format("{}: REFUSED\n\n", box.trip->name);
    for (const problem::Problem& p : box.problems) {
        text += problem::to_line(p) + "\n";
    }
    return text;
}

/// Notes, and faults of the input, go where they do not disturb the answer.
Exit exit_of(const BoxResult& box) {
    const problem::Problems& problems = box.plan != nullptr ? box.plan->notes : box.problems;
    const Exit exit = exit_for(problems);
    if (box.plan != nullptr || exit != Exit::refused) {
        tell(problems);
    }
    return exit;
}

Exit show_plan(const PlanOptions& options) {
    const auto trip = load_trip(options.trip);
    tell(trip.problems());
    if (!trip) {
        return exit_for(trip.problems());
    }
    const auto words = load_words(own_language);  // the terminal speaks English
    const auto stamp = own_stamp(*trip);
    if (!words || !stamp) {
        const problem::Problems& faults = !words ? words.problems() : stamp.problems();
        tell(faults);
        return exit_for(faults);
    }
    const std::vector<trip::Trip> parts = plan::one_trip_a_box(*trip);  // the plans point into them
    const Planned planned = [&] {
        const Progress waiting(!options.json);
        return plan_boxes(parts, *words);
    }();
    Exit exit = exit_for(trip.problems());
    for (const BoxResult& box : planned.boxes) {
        exit = worse(exit, exit_of(box));
    }
    if (options.json) {
        fmt::print("{}", boxes_json(*trip, planned.boxes, *stamp));
        return exit;
    }
    for (const BoxResult& box : planned.boxes) {
        fmt::print("{}{}", &box == &planned.boxes.front() ? "" : "\n", box_text(box, options.explain));
    }
    return exit;
}

std::vector<OptionRow> all_rows() {
    std::vector<OptionRow> rows{trip_row, json_row, plan_explain};
    const std::vector<OptionRow> from_here = replan_rows();
    rows.insert(rows.end(), from_here.begin(), from_here.end());
    return rows;
}

Act read_plan(Options& options) {
    if (const auto found = read_found(options)) {
        return [path = options.file(trip_row), found, json = options.has(json_row)] {
            return show_replan(path, *found, json);
        };
    }
    const PlanOptions given{options.file(trip_row), options.has(json_row), options.has(plan_explain)};
    return [given] { return show_plan(given); };
}

}  // namespace

Command plan_command() {
    return {.name = "plan",
            .group = headings::trip,
            .summary = "show verdict, timeline and curve on the terminal",
            .rows = all_rows(),
            .examples = {"plan my-trip.toml", "plan my-trip.toml --now 14:20 --reading \"58 C\""},
            .refuses = "the plan does not hold; what would mend it is said",
            .checks = "planned, but something in the trip should be checked or changed",
            .read = read_plan};
}

}  // namespace holdwater::cli
