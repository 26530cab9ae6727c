// SPDX-License-Identifier: MIT
#include "cli/commands/commands.hpp"
#include "cli/commands/common_rows.hpp"
#include "cli/files/data.hpp"
#include "cli/files/files.hpp"
#include "cli/line/options.hpp"

#include <fmt/format.h>

namespace holdwater::cli {
namespace {

const OptionRow schema_answer{.name = "ANSWER",
                              .help = "of which command",
                              .required = true,
                              .choices = {"plan", "mend", "review", "gauge", "hold", "mix", "boil", "fingertip"}};

Exit print_schema(const std::string& answer) {
    const auto text = layout_file(fmt::format("schemas/{}.json", answer));
    if (!text) {
        tell(text.problems());
        return Exit::our_fault;
    }
    fmt::print("{}", *text);
    return Exit::done;
}

Act read_schema(Options& options) {
    return [answer = options.choice(schema_answer)] { return print_schema(answer); };
}

}  // namespace

Command schema_command() {
    return {.name = "schema",
            .group = headings::program,
            .summary = "the JSON Schema of what a command says with --json",
            .rows = {schema_answer},
            .examples = {"schema plan", "schema hold"},
            .read = read_schema};
}

}  // namespace holdwater::cli
