// SPDX-License-Identifier: MIT
#include "cli/line/options.hpp"

#include "problem/bounds.hpp"
#include "problem/in_text.hpp"
#include "units/nearest.hpp"
#include "units/plain_number.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <utility>

namespace holdwater::cli {
namespace {

std::vector<std::string> parted(const std::string& list) {
    std::vector<std::string> parts;
    std::size_t from = 0;
    for (std::size_t comma = list.find(','); comma != std::string::npos; comma = list.find(',', from)) {
        parts.push_back(list.substr(from, comma - from));
        from = comma + 1;
    }
    parts.push_back(list.substr(from));
    return parts;
}

/// The option that somebody may have meant: that of today for an old name, else the nearest.
std::optional<std::string_view> meant_by(const Command& command, std::string_view name) {
    std::vector<std::string_view> names{"--help"};
    for (const OptionRow& row : command.rows) {
        if (row.formerly == name) {
            return row.name;
        }
        if (row.is_option()) {
            names.push_back(row.name);
        }
    }
    return units::nearest(name, names);
}

}  // namespace

std::string quoted(std::string_view value) {
    const bool one_word = value.find(' ') == std::string_view::npos;
    return one_word ? std::string(value) : fmt::format("\"{}\"", value);
}

std::string written(const OptionRow& row) {
    return fmt::format("{} {}", row.name, quoted(row.example_value()));
}

Options::Options(const Command& command, CommandLine line) : command_(&command), line_(std::move(line)) {
    tell_missing_words();
    tell_unknown_words();
    tell_needs();
}

bool Options::has(const OptionRow& row) const {
    return given(row) != nullptr;
}

Given Options::text(const OptionRow& row) const {
    const auto* all = given(row);
    return all != nullptr && !all->empty() ? Given(all->front()) : std::nullopt;
}

std::vector<std::string> Options::texts(const OptionRow& row) const {
    const auto* all = given(row);
    if (all == nullptr) {
        return {};
    }
    if (row.takes != Takes::list) {
        return *all;
    }
    std::vector<std::string> parts;
    for (const std::string& list : *all) {
        const auto more = parted(list);
        parts.insert(parts.end(), more.begin(), more.end());
    }
    return parts;
}

std::optional<double> Options::number(const OptionRow& row) {
    const Given given = text(row);
    if (!given) {
        return std::nullopt;
    }
    const auto value = units::plain_number(*given);
    if (!value) {
        fault(row.name, "number-unreadable", fmt::format("\"{}\" is not a plain number", problem::quoted(*given)),
              fmt::format("a number without a unit, {} to {}", row.range.low, row.range.high));
        return std::nullopt;
    }
    if (*value < *units::plain_number(row.range.low) || *value > *units::plain_number(row.range.high)) {
        outside(row.name, *given, row.range);
        return std::nullopt;
    }
    return value;
}

int Options::whole_number(const OptionRow& row) {
    const double value = has(row) ? number(row).value_or(0.0) : units::plain_number(own(row).by_default).value_or(0.0);
    if (value != std::floor(value)) {
        fault(row.name, "number-unreadable", problem::quoted(*text(row)) + " is not a whole number",
              fmt::format("{} to {}", row.range.low, row.range.high));
    }
    return static_cast<int>(value);
}

std::string Options::choice(const OptionRow& row) {
    const std::string& usual = own(row).by_default;
    const Given word = text(row);
    return word && known(row, *word) ? *word : usual;
}

std::vector<std::string> Options::choices(const OptionRow& row) {
    std::vector<std::string> words = texts(row);
    for (const std::string& word : words) {
        known(row, word);
    }
    return words;
}

std::string Options::folder(const OptionRow& row) {
    std::string name = text(row).value_or(own(row).by_default);
    if (name.empty()) {
        // That of the root folder, once a file name is put behind it.
        fault(row.name, "folder-missing", "names no folder",
              fmt::format("{} . is the folder that you are in", row.name));
    }
    return name;
}

std::string Options::file(const OptionRow& row) {
    const Given name = text(row);
    return name ? checked_file(row, *name) : own(row).by_default;  // a missing one was reported before
}

std::vector<std::string> Options::files(const OptionRow& row) {
    std::vector<std::string> names;
    for (const std::string& name : texts(row)) {
        names.push_back(checked_file(row, name));
    }
    return names;
}

std::string Options::checked_file(const OptionRow& row, std::string name) {
    if (name.empty()) {
        fault(row.name, "value-missing", "names no file", fmt::format("such as {}", row.example_value()));
    }
    return name;
}

void Options::fault(std::string_view name, problem::Code code, std::string message, std::string hint) {
    if (faults_.size() < bounds::listed_problems) {  // who has mended these runs it again
        faults_.push_back(problem::error(code, std::string(name) + " " + std::move(message), std::move(hint)));
    }
}

void Options::missing(const OptionRow& row, const std::string& hint, const std::string& why) {
    fault(row.name, "option-missing", why.empty() ? "is missing" : "is missing: " + why, hint);
}

void Options::unknown(const OptionRow& row, std::string_view text, const std::vector<std::string_view>& known,
                      std::string_view besides) {
    const std::string shown = problem::quoted(text);
    const auto meant = units::nearest(shown, known);
    fault(row.name, "choice-unknown", fmt::format("\"{}\" is not known", shown),
          fmt::format("{}One of: {}{}{}", meant ? fmt::format("did you mean {}? ", *meant) : "", fmt::join(known, ", "),
                      besides.empty() ? "" : ", ", besides));
}

void Options::add(const problem::Problems& faults) {
    faults_.insert(faults_.end(), faults.begin(), faults.end());
}

const OptionRow& Options::own(const OptionRow& row) const {
    const OptionRow* found = command_->find(row.name);
    if (found == nullptr) {
        throw std::logic_error(fmt::format("{} is read by {}, which has no such row", row.name, command_->name));
    }
    return *found;
}

const std::vector<std::string>* Options::given(const OptionRow& row) const {
    const auto found = line_.given.find(own(row).name);
    return found != line_.given.end() ? &found->second : nullptr;
}

bool Options::known(const OptionRow& row, std::string_view text) {
    const auto& words = own(row).choices;
    if (std::find(words.begin(), words.end(), text) != words.end()) {
        return true;
    }
    unknown(row, text, words);
    return false;
}

void Options::tell_missing_words() {
    for (const OptionRow& row : command_->rows) {
        if (row.required && !row.is_option() && !line_.given.contains(row.name)) {
            missing(row, fmt::format("holdwater {0} {1}; see `holdwater {0} --help`", command_->name, row.name));
        }
    }
}

void Options::tell_unknown_words() {
    const auto unexpected = [&](const std::string& word) {
        fault(fmt::format("\"{}\"", problem::quoted(word)), "word-unexpected", "belongs to no option",
              "write option and value together, the value with its unit in quotes");
    };
    bool value_may_follow = false;  // the word after an unknown option is taken as its value
    for (const std::string& word : line_.unknown) {
        if (!word.starts_with("-")) {
            if (!value_may_follow) {
                unexpected(word);
            }
            value_may_follow = false;
            continue;
        }
        const std::string name = problem::quoted(word.substr(0, word.find('=')));
        value_may_follow = word.find('=') == std::string::npos;
        const auto meant = meant_by(*command_, name);
        fault(
            name, "option-unknown", "is not an option of this command",
            meant ? fmt::format("did you mean {}?", *meant) : fmt::format("see `holdwater {} --help`", command_->name));
    }
    for (const std::string& word : line_.unexpected) {
        unexpected(word);
    }
}

void Options::tell_needs() {
    for (const OptionRow& row : command_->rows) {
        if (!row.needs.empty() && line_.given.contains(row.name) && !line_.given.contains(row.needs)) {
            fault(row.name, "option-needs", fmt::format("says nothing without {}", row.needs),
                  fmt::format("add {}, or leave it out", row.needs));
        }
    }
}

void Options::unreadable(std::string_view name, const problem::Problems& faults, const Range& range) {
    for (problem::Problem p : faults) {
        p.message = fmt::format("{}: {}", name, p.message);
        // Where the reader of quantities shows an example, it knows only the kind: a thickness for an altitude.
        if (p.hint.empty() || p.code == "number-unreadable" || p.code == "unit-of-another-kind") {
            // A name with a blank is the option with all that stands behind it, of which this is a part.
            p.hint = name.find(' ') == std::string_view::npos
                         ? fmt::format("write it like {} \"{}\"", name, range.example)
                         : fmt::format("such as \"{}\"", range.example);
        }
        faults_.push_back(p);
    }
}

void Options::outside(std::string_view name, std::string_view text, const Range& range) {
    fault(name, "out-of-range", problem::quoted(text) + " is outside what can be worked with",
          fmt::format("{} to {}{}{}", range.low, range.high, range.why.empty() ? "" : "; ", range.why));
}

}  // namespace holdwater::cli
