// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include "cli/app.hpp"
#include "cli/data.hpp"
#include "cli/files.hpp"

namespace holdwater::cli {

Exit new_command(const std::string& trip) {
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

}  // namespace holdwater::cli
