// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>

#include "cli/app.hpp"
#include "cli/text/provisions_text.hpp"
#include "cli/files/data.hpp"
#include "cli/files/files.hpp"
#include "cli/text/plan_text.hpp"
#include "cli/files/stamp.hpp"
#include "cli/files/trip_file.hpp"
#include "cli/text/what_if_text.hpp"
#include "plan/result/boxes.hpp"

namespace holdwater::cli {
namespace {

struct PlanOptions {
    std::string trip;
    bool json = false;
    bool explain = false;
};

/// One box planned: what to print, and what it means for the exit code.
struct Shown {
    Exit exit = Exit::our_fault;
    std::string text;
    Json json;
};

/// Refused, or not to be planned since an input is wrong: that is no verdict.
Shown show_refusal(const trip::Trip& trip, const problem::Problems& problems) {
    Shown shown;
    shown.exit = exit_for(problems);
    shown.json = refusal_json(trip, problems);
    if (shown.exit != Exit::refused) {
        tell(problems);
        shown.text = fmt::format("{}: no plan, an input is wrong\n", trip.name);
        return shown;
    }
    shown.text = fmt::format("{}: REFUSED\n\n", trip.name);
    for (const problem::Problem& p : problems) {
        shown.text += problem::to_line(p) + "\n";
    }
    return shown;
}

Shown show_box(const plan::Plan& plan, const std::string& stamp, const words::Words& words, const PlanOptions& options) {
    Shown shown;
    const auto numbers = card::card_numbers({plan, words});
    shown.exit = exit_for(plan.notes);
    shown.json = plan_json(plan, numbers, stamp);
    shown.text = plan_text(plan) + "\n" + around_text(plan.around, *plan.trip) + what_if_text(plan) +
                  (options.explain ? explain_text(plan, numbers) : "");
    tell(plan.notes);
    return shown;
}

/// Each box of the trip; boxes that hold share one latest moment for their fire.
std::vector<Shown> show_boxes(const std::vector<trip::Trip>& parts, const std::string& stamp, const words::Words& words,
                              const PlanOptions& options) {
    std::vector<problem::Result<plan::Plan>> made;
    std::vector<plan::Plan> plans;
    for (const trip::Trip& part : parts) {
        made.push_back(plan::make_plan(part));
        if (made.back()) {
            plans.push_back(*made.back());
        }
    }
    plan::share_latest_fire(plans);
    std::vector<Shown> boxes;
    std::size_t held = 0;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        boxes.push_back(made[i] ? show_box(plans[held++], stamp, words, options)
                                : show_refusal(parts[i], made[i].problems()));
    }
    return boxes;
}

/// Two boxes in one object: the verdict of the worse, then each as it would stand alone.
Json both(const trip::Trip& trip, Exit exit, const std::vector<Shown>& boxes) {
    Json all{{"schema", 1},
             {"verdict", exit == Exit::refused     ? Json("refused")
                         : exit == Exit::bad_input ? Json(nullptr)
                                                   : Json("holds")},
             {"trip", trip.name},
             {"boxes", Json::array()}};
    for (const Shown& box : boxes) {
        all["boxes"].push_back(box.json);
    }
    return all;
}

Exit show_plan(const PlanOptions& options) {
    const auto trip = load_trip(options.trip);
    tell(trip.problems());
    if (!trip) {
        return exit_for(trip.problems());
    }
    const auto words = load_words(own_language);  // the terminal speaks English
    const auto words_text = layout_file("words/" + trip->language + ".toml");
    const auto format = layout_file("formats/hand.toml");
    if (!words || !words_text || !format) {
        const problem::Problems& faults = !words ? words.problems() : !format ? format.problems() : words_text.problems();
        tell(faults);
        return exit_for(faults);
    }
    const std::string stamp = stamp_of(*trip, {*format, *words_text});
    const std::vector<trip::Trip> parts = plan::one_trip_a_box(*trip);  // the plans point into them
    const std::vector<Shown> boxes = show_boxes(parts, stamp, *words, options);
    Exit exit = exit_for(trip.problems());
    for (const Shown& box : boxes) {
        exit = worse(exit, box.exit);
    }
    if (options.json) {
        fmt::print("{}\n", (boxes.size() == 1 ? boxes.front().json : both(*trip, exit, boxes)).dump(2));
        return exit;
    }
    for (const Shown& box : boxes) {
        fmt::print("{}{}", &box == &boxes.front() ? "" : "\n", box.text);
    }
    return exit;
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
