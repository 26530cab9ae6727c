// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>
#include <string>

#include "cli/app.hpp"
#include "cli/files/data.hpp"
#include "cli/files/files.hpp"

namespace holdwater::cli {
namespace {

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

}  // namespace

Command add_new(CLI::App& program) {
    const auto trip = std::make_shared<std::string>("trip.toml");
    CLI::App* line = program.add_subcommand("new", "write a trip file to fill in");
    line->add_option("TRIP", *trip, "file to write")->capture_default_str();
    return {line, [trip] { return write_template(*trip); }};
}

}  // namespace holdwater::cli
