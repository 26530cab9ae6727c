// SPDX-License-Identifier: MIT
#include "cli/commands/commands.hpp"
#include "cli/commands/common_rows.hpp"
#include "cli/files/data.hpp"
#include "cli/files/files.hpp"
#include "cli/line/options.hpp"

#include <fmt/format.h>

namespace holdwater::cli {
namespace {

const OptionRow new_trip{.name = "TRIP",
                         .help = "file to write; never over an existing one",
                         .by_default = "trip.toml",
                         .example = "trip.toml",
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

Act read_new(Options& options) {
    return [trip = options.file(new_trip)] { return write_template(trip); };
}

}  // namespace

Command new_command() {
    return {.name = "new",
            .group = headings::trip,
            .summary = "write a trip file to fill in",
            .rows = {new_trip},
            .examples = {"new", "new my-trip.toml"},
            .read = read_new};
}

}  // namespace holdwater::cli
