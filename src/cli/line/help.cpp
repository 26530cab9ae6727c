// SPDX-License-Identifier: MIT
#include "cli/line/help.hpp"

#include "cli/line/options.hpp"
#include "cli/text/wrap.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace holdwater::cli {
namespace {

constexpr std::size_t command_column = 14;
constexpr std::size_t option_column = 24;

/// A name on the left, what it means in lines beside it; below it if the name is too long.
std::string entry(const std::string& name, const std::string& means, std::size_t column) {
    const std::string left = "  " + name;
    const std::string right = wrap(means, column);
    if (left.size() + 2 > column) {
        return left + "\n" + right;
    }
    return left + right.substr(std::min(left.size(), right.size()));
}

std::string shown(const OptionRow& row) {
    const std::string name = row.value.empty() ? std::string(row.name) : fmt::format("{} {}", row.name, row.value);
    return row.takes == Takes::several ? name + " ..." : name;
}

/// What help says of a row: what it is, its words, and in brackets what holds for it.
std::string meaning(const OptionRow& row) {
    std::vector<std::string> more;
    if (row.required) {
        more.emplace_back("required");
    }
    if (!row.by_default.empty()) {
        more.push_back(fmt::format("if not given: {}", row.by_default));
    }
    if (!row.needs.empty()) {
        more.push_back(fmt::format("with {}", row.needs));
    }
    if (!row.example_value().empty() && row.example_value() != row.by_default) {
        more.push_back(fmt::format("such as {}", quoted(row.example_value())));
    }
    if (!row.range.low.empty()) {
        more.push_back(fmt::format("{} to {}", row.range.low, row.range.high));
    }
    return fmt::format("{}{}{}{}", row.help, row.choices.empty() ? "" : ": ", fmt::join(row.choices, ", "),
                       more.empty() ? "" : fmt::format(" ({})", fmt::join(more, "; ")));
}

std::string heading(std::string_view text) {
    return fmt::format("\n{}\n", text);
}

/// The headings in the order in which they come first.
template <class Rows, class HeadingOf>
std::vector<std::string_view> headings(const Rows& rows, HeadingOf heading_of) {
    std::vector<std::string_view> all;
    for (const auto& row : rows) {
        if (std::find(all.begin(), all.end(), heading_of(row)) == all.end()) {
            all.push_back(heading_of(row));
        }
    }
    return all;
}

}  // namespace

std::string usage_of(const Command& command) {
    std::string usage(command.name);
    for (const OptionRow& row : command.rows) {
        if (row.required) {
            usage += " " + shown(row);
        } else if (!row.is_option()) {
            usage += fmt::format(" [{}]", shown(row));
        }
    }
    return usage;
}

std::string program_help(const std::vector<Command>& commands) {
    std::string text = wrap("Plans a hot-water-bath meal in an insulated box and prints the plan as pocket cards.");
    text += "\nholdwater COMMAND [options]\n";
    for (const std::string_view group : headings(commands, [](const Command& c) { return c.group; })) {
        text += heading(group);
        for (const Command& command : commands) {
            if (command.group == group) {
                text += entry(std::string(command.name), std::string(command.summary), command_column);
            }
        }
    }
    text += heading("Exit codes");
    for (const ExitRow& row : exit_rows) {
        text += entry(fmt::format("{}", static_cast<int>(row.exit)), std::string(row.means), command_column);
    }
    return text + "\n" +
           wrap(
               "`holdwater help COMMAND` tells its options, `holdwater --version` the version. What stands behind a "
               "lone -- is a file, even if it begins with a dash.");
}

std::string command_help(const Command& command) {
    const bool optional = std::any_of(command.rows.begin(), command.rows.end(),
                                      [](const OptionRow& row) { return row.is_option() && !row.required; });
    std::string text =
        fmt::format("holdwater {}{}\n{}", usage_of(command), optional ? " [options]" : "", wrap(command.summary));
    for (const std::string_view group : headings(command.rows, [](const OptionRow& r) { return r.group; })) {
        text += heading(group.empty() ? "Options" : group);
        for (const OptionRow& row : command.rows) {
            if (row.group == group) {
                text += entry(shown(row), meaning(row), option_column);
            }
        }
    }
    if (!command.examples.empty()) {
        text += heading("For example");
    }
    for (const std::string_view example : command.examples) {
        text += fmt::format("  holdwater {}\n", example);
    }
    return text;
}

}  // namespace holdwater::cli
