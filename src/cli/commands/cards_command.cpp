// SPDX-License-Identifier: MIT
#include "card/trip/deck.hpp"
#include "cli/commands/commands.hpp"
#include "cli/commands/common_rows.hpp"
#include "cli/commands/printing_rows.hpp"
#include "cli/files/files.hpp"
#include "cli/files/formats_that_do.hpp"
#include "cli/files/many_trips.hpp"
#include "cli/files/trip_deck.hpp"
#include "cli/files/trip_file.hpp"
#include "cli/line/options.hpp"

#include <fmt/format.h>

#include <map>

namespace holdwater::cli {
namespace {

const OptionRow cards_trips{.name = "TRIP",
                            .help = "trip file",
                            .takes = Takes::several,
                            .required = true,
                            .example = "trip.toml",
                            .holds = Holds::trip_file};

/// Trips of one name would print over each other: nothing is written then.
problem::Problems faults_of_names(const std::vector<std::string>& trips) {
    problem::Problems faults;
    std::map<std::string, std::string> first;
    for (const std::string& path : trips) {
        const auto [known, is_new] = first.emplace(stem_of(path), path);
        if (!is_new) {
            faults.push_back(problem::error(
                "deck-twice",
                fmt::format("{} and {} would both be printed as {}-cards.pdf", known->second, path, known->first),
                "print them one at a time, each with its own --out, or rename one"));
        }
    }
    return faults;
}

const OptionRow cards_jobs{.name = "--jobs",
                           .value = "N",
                           .help = "trips planned at one time, where there are several",
                           .by_default = "1",
                           .range = {"1", "64", "4"}};

struct CardsOptions {
    std::vector<std::string> trips;
    int jobs = 1;
    PrintingOptions printing;
};

Exit print_decks(const CardsOptions& options) {
    for (const problem::Problems& faults : {faults_of_names(options.trips), paper_faults(options.printing)}) {
        if (!faults.empty()) {
            tell(faults);
            return exit_for(faults);
        }
    }
    if (options.trips.size() == 1) {
        return print_trip_deck(options.trips.front(), options.printing);
    }
    return each_trip(options.trips, options.jobs,
                     [&](const std::string& path) { return print_trip_deck(path, options.printing); });
}

Act read_cards(Options& options) {
    const CardsOptions given{options.files(cards_trips), options.whole_number(cards_jobs), read_printing(options)};
    return [given] { return print_decks(given); };
}

}  // namespace

Command cards_command() {
    Command command{
        .name = "cards",
        .group = headings::trip,
        .summary = "print the deck of a trip and what stands behind it (PDF, with --preview PNG too)",
        .rows = {cards_trips, cards_jobs},
        .examples = {"cards my-trip.toml", "cards my-trip.toml --format pocket --only plan,fill --sheet letter"},
        .refuses = "a plan does not hold: no cards, and those of before are renamed *.superseded",
        .checks = "printed, but something in a trip should be checked or changed",
        .read = read_cards};
    const auto printing = printing_rows(card::trip_cards());
    command.rows.insert(command.rows.end(), printing.begin(), printing.end());
    return command;
}

}  // namespace holdwater::cli
