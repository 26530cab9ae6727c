// SPDX-License-Identifier: MIT
#include "cli/commands/commands.hpp"
#include "cli/commands/common_rows.hpp"
#include "cli/commands/new_asking.hpp"
#include "cli/files/data.hpp"
#include "cli/files/files.hpp"
#include "cli/line/options.hpp"

#include <fmt/format.h>

#include <unistd.h>

namespace holdwater::cli {
namespace {

const OptionRow new_trip{.name = "TRIP",
                         .help = "file to write; never over an existing one",
                         .by_default = "trip.toml",
                         .example = "trip.toml",
                         .holds = Holds::trip_file};

const OptionRow new_ask{
    .name = "--ask", .help = "ask what is needed, a question a line; without a name at a terminal that is done anyway"};
const OptionRow new_from{.name = "--from",
                         .value = "OLD",
                         .help = "ask only what is otherwise than in that trip",
                         .example = "last-year.toml",
                         .holds = Holds::trip_file};

Exit write_template(const std::string& trip) {
    const auto text = layout_file("trips/template.toml");
    if (!text) {
        tell(text.problems());
        return Exit::our_fault;
    }
    const auto written = write_file(trip, *text, false);
    if (!written) {
        tell(written.problems());
        return Exit::bad_input;
    }
    fmt::print("{}\nFill it in, then: holdwater plan {}\n", trip, trip);
    return Exit::done;
}

/// Somebody sits there, who can be asked.
bool at_a_terminal() {
    return ::isatty(STDIN_FILENO) == 1 && ::isatty(STDOUT_FILENO) == 1;
}

Act read_new(Options& options) {
    const std::string trip = options.file(new_trip);
    if (const Given old = options.text(new_from)) {
        return [trip, old_path = options.file(new_from)] { return ask_what_changes(old_path, trip); };
    }
    const bool asks = options.has(new_ask) || (!options.has(new_trip) && at_a_terminal());
    return [trip, asks] { return asks ? ask_for_trip(trip) : write_template(trip); };
}

}  // namespace

Command new_command() {
    return {.name = "new",
            .group = headings::trip,
            .summary = "write a trip file: by questions, or a commented one to fill in",
            .rows = {new_trip, new_ask, new_from},
            .examples = {"new", "new my-trip.toml", "new this-year.toml --from last-year.toml"},
            .checks = "broken off by Ctrl-C: what was said is kept, the rest was taken cautiously",
            .read = read_new};
}

}  // namespace holdwater::cli
