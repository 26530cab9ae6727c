// SPDX-License-Identifier: MIT
#include "cli/app.hpp"

#include <CLI/CLI.hpp>

#include "card/deck.hpp"

namespace holdwater::cli {

Exit run(int argc, char** argv) {
    CLI::App app{"Plans a hot-water-bath meal in an insulated box and prints the plan as pocket cards.", "holdwater"};
    app.set_version_flag("--version", "holdwater " HOLDWATER_VERSION);
    app.require_subcommand(1);

    CardsOptions cards;
    CLI::App* cards_app = app.add_subcommand("cards", "print the deck of a trip (PDF, with --preview PNG too)");
    cards_app->add_option("TRIP", cards.trips, "trip files")->required();
    cards_app->add_option("--out", cards.out, "folder to write into")->capture_default_str();
    cards_app->add_option("--format", cards.format, "card format")
        ->check(CLI::IsMember({"hand", "pocket", "wallet", "large"}))
        ->capture_default_str();
    cards_app->add_option("--sheet", cards.sheet, "paper")->check(CLI::IsMember({"a4", "letter"}))->capture_default_str();
    cards_app->add_option("--sides", cards.sides, "how backs are printed")
        ->check(CLI::IsMember({"duplex", "single", "fold"}))
        ->capture_default_str();
    cards_app->add_option("--only", cards.only, "only these cards, comma between")
        ->delimiter(',')
        ->check(CLI::IsMember(card::trip_cards()));
    cards_app->add_option("--copies", cards.copies, "copies of the deck")->check(CLI::Range(1, 100))->capture_default_str();
    cards_app->add_flag("--preview", cards.preview, "write a PNG of every card face as well");

    PlanOptions plan;
    CLI::App* plan_app = app.add_subcommand("plan", "show verdict, timeline and curve on the terminal");
    plan_app->add_option("TRIP", plan.trip, "trip file")->required();
    plan_app->add_flag("--json", plan.json, "every number, unrounded, as JSON");
    plan_app->add_flag("--explain", plan.explain, "say how each card number was made safe");

    SourcesOptions sources;
    CLI::App* sources_app = app.add_subcommand("sources", "list every figure with its source and how far it was seen");
    sources_app->add_flag("--foods", sources.foods, "list the kinds of food");
    sources_app->add_flag("--rules", sources.rules, "list the rules and kill rows");
    sources_app->add_option("--search", sources.search, "only entries that contain this word");

    std::string new_trip = "trip.toml";
    CLI::App* new_app = app.add_subcommand("new", "write a trip file to fill in");
    new_app->add_option("TRIP", new_trip, "file to write")->capture_default_str();

    try {
        app.parse(argc, argv);
    } catch (const CLI::ParseError& stop) {
        return app.exit(stop) == 0 ? Exit::done : Exit::bad_input;
    }
    if (cards_app->parsed()) {
        return cards_command(cards);
    }
    if (plan_app->parsed()) {
        return plan_command(plan);
    }
    if (sources_app->parsed()) {
        return sources_command(sources);
    }
    return new_command(new_trip);
}

}  // namespace holdwater::cli
