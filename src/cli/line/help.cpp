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

std::string heading(std::string_view text) {
    return fmt::format("\n{}\n", text);
}

std::string_view group_of(const OptionRow& row) {
    return row.group.empty() ? "Options" : row.group;
}

/// Each heading once, in the order in which they come first.
template <class Rows, class HeadingOf>
std::vector<std::string_view> in_order(const Rows& rows, HeadingOf heading_of) {
    std::vector<std::string_view> all;
    for (const auto& row : rows) {
        if (std::find(all.begin(), all.end(), heading_of(row)) == all.end()) {
            all.push_back(heading_of(row));
        }
    }
    return all;
}

std::string exit_codes(const std::vector<ExitRow>& rows) {
    std::string text = heading("Exit codes");
    for (const ExitRow& row : rows) {
        text += entry(fmt::format("{}", static_cast<int>(row.exit)), std::string(row.means), command_column);
    }
    return text;
}

}  // namespace

std::string shown(const OptionRow& row) {
    const std::string name = row.value.empty() ? std::string(row.name) : fmt::format("{} {}", row.name, row.value);
    return row.takes == Takes::several ? name + " ..." : name;
}

std::string meaning(const Command& command, const OptionRow& row) {
    std::vector<std::string> more;
    if (row.required) {
        more.emplace_back("required");
    }
    std::string others;
    for (const OptionRow* other : command.others_for(row)) {
        others += fmt::format(" or {}", other->name);
    }
    if (!others.empty()) {
        more.push_back(fmt::format("required: this{}", others));
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

std::vector<std::string_view> headings_of(const std::vector<Command>& commands) {
    return in_order(commands, [](const Command& command) { return command.group; });
}

std::vector<std::string_view> headings_of(const Command& command) {
    return in_order(command.rows, group_of);
}

bool stands_under(const OptionRow& row, std::string_view heading) {
    return group_of(row) == heading;
}

std::string usage_of(const Command& command) {
    std::string usage(command.name);
    std::string_view told;  // the set of which one is required that stands there already
    bool optional = false;
    for (const OptionRow& row : command.rows) {
        if (row.required) {
            usage += " " + shown(row);
        } else if (!row.one_of.empty() && row.one_of != told) {
            told = row.one_of;
            usage += " (" + shown(row);
            for (const OptionRow* other : command.others_for(row)) {
                usage += " | " + shown(*other);
            }
            usage += ")";
        } else if (row.one_of.empty() && !row.is_option()) {
            usage += fmt::format(" [{}]", shown(row));
        }
        optional = optional || (row.is_option() && !row.required && row.one_of.empty());
    }
    return optional ? usage + " [options]" : usage;
}

std::string program_help(const std::vector<Command>& commands) {
    std::string text = wrap(what_it_is);
    text += "\nholdwater COMMAND [options]\n";
    for (const std::string_view group : headings_of(commands)) {
        text += heading(group);
        for (const Command& command : commands) {
            if (command.group == group) {
                text += entry(std::string(command.name), std::string(command.summary), command_column);
            }
        }
    }
    return text + exit_codes({exit_rows.begin(), exit_rows.end()}) + "\n" +
           wrap("`holdwater help COMMAND` tells its options, `holdwater --version` the version. " +
                std::string(about_dashes));
}

std::string command_help(const Command& command) {
    std::string text = fmt::format("holdwater {}\n{}", usage_of(command), wrap(command.summary));
    for (const std::string_view group : headings_of(command)) {
        text += heading(group);
        for (const OptionRow& row : command.rows) {
            if (stands_under(row, group)) {
                text += entry(shown(row), meaning(command, row), option_column);
            }
        }
    }
    text += heading("For example");
    for (const std::string_view example : command.examples) {
        text += fmt::format("  holdwater {}\n", example);
    }
    return text + exit_codes(command.exits());
}

}  // namespace holdwater::cli
