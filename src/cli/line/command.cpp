// SPDX-License-Identifier: MIT
#include "cli/line/command.hpp"

#include "problem/in_text.hpp"
#include "units/nearest.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace holdwater::cli {

const OptionRow* Command::find(std::string_view row) const {
    const auto found = std::find_if(rows.begin(), rows.end(), [&](const OptionRow& one) { return one.name == row; });
    return found != rows.end() ? &*found : nullptr;
}

std::string names_of(const std::vector<Command>& commands) {
    std::string all;
    for (const Command& command : commands) {
        all += fmt::format("{}{}", all.empty() ? "" : ", ", command.name);
    }
    return all;
}

problem::Result<const Command*> command_named(const std::vector<Command>& commands, std::string_view name) {
    std::vector<std::string_view> known;
    for (const Command& command : commands) {
        if (command.name == name) {
            return &command;
        }
        if (!command.formerly.empty() && command.formerly == name) {
            return problem::error("command-renamed", fmt::format("{} is called {} now", name, command.name),
                                  fmt::format("see `holdwater {} --help`", command.name));
        }
        known.push_back(command.name);
    }
    const std::string shown = problem::quoted(name);
    const auto meant = units::nearest(shown, known);
    return problem::error(
        "choice-unknown", fmt::format("command \"{}\" is not known", shown),
        fmt::format("{}One of: {}", meant ? fmt::format("did you mean {}? ", *meant) : "", names_of(commands)));
}

}  // namespace holdwater::cli
