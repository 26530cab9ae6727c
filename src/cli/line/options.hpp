// SPDX-License-Identifier: MIT
// What stands on the command line, read by its rows. Every fault is kept, so that all of them are reported at once.
#pragma once

#include "cli/line/command_line.hpp"
#include "facts/names.hpp"
#include "problem/problem.hpp"
#include "units/parse.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace holdwater::cli {

/// A text given on the command line, or nothing.
using Given = std::optional<std::string>;

class Options {
  public:
    /// Words that no row took, rows that are missing or say nothing without another are faults from the start. Options
    /// that are missing are not yet: whoever needs one knows best what to say.
    Options(const Command& command, CommandLine line);

    // What was given, unread. A row is known by its name; its default and choices are those that the command handed
    // over. One that it did not hand over is our own fault (std::logic_error).
    bool has(const OptionRow& row) const;
    Given text(const OptionRow& row) const;
    std::vector<std::string> texts(const OptionRow& row) const;  // of a list: its parts

    // Values. What is unreadable or out of range is kept as a fault and comes back as nothing, or where a value must be
    // there as some value: it is not acted upon.
    template <class Q>
    Q need(const OptionRow& row);
    template <class Q>
    std::optional<Q> maybe(const OptionRow& row);
    /// Any other text that is to be a quantity; `name` is what the fault calls it.
    template <class Q>
    std::optional<Q> quantity(std::string_view name, std::string_view text, const Range& range);
    /// A plain number without a unit, within the row's range.
    std::optional<double> number(const OptionRow& row);
    /// The same without a fraction; the row's default if it is not given.
    int whole_number(const OptionRow& row);
    /// One of the row's choices; its default if it is not given.
    std::string choice(const OptionRow& row);
    /// All of a list, each one of the row's choices.
    std::vector<std::string> choices(const OptionRow& row);
    /// One of the names of an enumeration; nothing if it is not given.
    template <class Enum>
    std::optional<Enum> one_of(const OptionRow& row);
    template <class Enum>
    std::optional<Enum> one_of(const OptionRow& row, std::string_view text);
    /// A folder to write into, and a file to read or write: an empty name would be that of another place.
    std::string folder(const OptionRow& row);
    std::string file(const OptionRow& row);
    std::vector<std::string> files(const OptionRow& row);

    // Faults.
    void fault(std::string_view name, problem::Code code, std::string message, std::string hint = {});
    /// "--shape is missing", with what would do.
    void missing(const OptionRow& row, const std::string& hint, const std::string& why = {});
    /// A word that is none of these; `besides` says what else would do.
    void unknown(const OptionRow& row, std::string_view text, const std::vector<std::string_view>& known,
                 std::string_view besides = {});
    /// Faults found elsewhere, such as in a file that an option names.
    void add(const problem::Problems& faults);
    const problem::Problems& faults() const { return faults_; }

  private:
    const OptionRow& own(const OptionRow& row) const;
    const std::vector<std::string>* given(const OptionRow& row) const;
    bool known(const OptionRow& row, std::string_view text);
    std::string checked_file(const OptionRow& row, std::string name);
    void tell_missing_words();
    void tell_unknown_words();
    void tell_needs();
    void unreadable(std::string_view name, const problem::Problems& faults, const Range& range);
    void outside(std::string_view name, std::string_view text, const Range& range);

    const Command* command_;
    CommandLine line_;
    problem::Problems faults_;
};

/// As one writes it on a command line: in quotes if it has a space.
std::string quoted(std::string_view value);
/// `--bath "60 C"`: how an option is written, by its example.
std::string written(const OptionRow& row);

template <class Q>
Q Options::need(const OptionRow& row) {
    if (!has(row)) {
        missing(row, "write it like " + written(row));
        return Q{};
    }
    return maybe<Q>(row).value_or(Q{});
}

template <class Q>
std::optional<Q> Options::maybe(const OptionRow& row) {
    const Given given = text(row);
    return given ? quantity<Q>(row.name, *given, row.range) : std::nullopt;
}

template <class Q>
std::optional<Q> Options::quantity(std::string_view name, std::string_view text, const Range& range) {
    const auto value = units::parse<Q>(text);
    if (!value) {
        unreadable(name, value.problems(), range);
        return std::nullopt;
    }
    if (*value < *units::parse<Q>(range.low) || *value > *units::parse<Q>(range.high)) {
        outside(name, text, range);
        return std::nullopt;
    }
    return *value;
}

template <class Enum>
std::optional<Enum> Options::one_of(const OptionRow& row) {
    const Given given = text(row);
    return given ? one_of<Enum>(row, *given) : std::nullopt;
}

template <class Enum>
std::optional<Enum> Options::one_of(const OptionRow& row, std::string_view text) {
    const auto value = facts::from_name<Enum>(facts::renamed(text).value_or(text));
    if (!value) {
        unknown(row, text, names_of<Enum>());
    }
    return value;
}

}  // namespace holdwater::cli
