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

std::vector<ExitRow> Command::exits() const {
    std::vector<ExitRow> all;
    for (const ExitRow& row : exit_rows) {
        const bool own = row.exit == Exit::refused || row.exit == Exit::check;
        const std::string_view means = row.exit == Exit::refused ? refuses
                                       : row.exit == Exit::check ? checks
                                                                 : row.means;
        if (!own || !means.empty()) {
            all.push_back({row.exit, means});
        }
    }
    return all;
}

std::vector<const OptionRow*> Command::others_for(const OptionRow& row) const {
    std::vector<const OptionRow*> others;
    for (const OptionRow& other : rows) {
        if (!row.one_of.empty() && other.one_of == row.one_of && other.name != row.name) {
            others.push_back(&other);
        }
    }
    return others;
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
