// SPDX-License-Identifier: MIT
// Words on the command line that no option took, and numbers and names given as text: each fault with what would do.
#pragma once

#include "cli/line/options.hpp"
#include "facts/names.hpp"
#include "units/nearest.hpp"

#include <CLI/CLI.hpp>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace holdwater::cli {

/// A fault for every word that was not expected, with the nearest option. The command must allow extras. The word after
/// an unknown option is taken as its value and not told by itself.
void tell_unknown_words(const CLI::App& line, Options& options);

/// A plain number without a unit, within its range.
std::optional<double> plain_number(Options& options, std::string_view option, const Given& text, double low,
                                   double high);

/// One of these words; nothing, and a fault that names the nearest, if it is none of them.
bool known_word(Options& options, std::string_view option, std::string_view text,
                const std::vector<std::string_view>& known);

/// The fault for a word that is none of these; `besides` says what else would do.
void unknown_word(Options& options, std::string_view option, std::string_view text,
                  const std::vector<std::string_view>& known, std::string_view besides = {});

/// The same text with common spaces for no-break ones, as a terminal wants it.
std::string plain_spaces(std::string text);

/// One of the names of an enumeration.
template <class Enum>
std::optional<Enum> choice(Options& options, std::string_view option, const Given& text) {
    std::vector<std::string_view> known;
    for (const auto& name : facts::names<Enum>()) {
        known.push_back(name.text);
    }
    if (const auto now = text ? facts::renamed(*text) : std::nullopt) {
        if (const auto value = facts::from_name<Enum>(*now)) {
            return value;
        }
    }
    if (!text || !known_word(options, option, *text, known)) {
        return std::nullopt;
    }
    return facts::from_name<Enum>(*text);
}

}  // namespace holdwater::cli
