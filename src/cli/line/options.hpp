// SPDX-License-Identifier: MIT
// Options that carry a quantity, such as --bath "60 C": read all of them, then tell every fault at once.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "problem/problem.hpp"
#include "units/parse.hpp"
#include "units/print.hpp"

namespace holdwater::cli {

/// A text given on the command line, or nothing. CLI11 fills std::optional<std::string> by itself.
using Given = std::optional<std::string>;

/// The range of an option and an example, as one writes them: {"-5 C", "100 C", "60 C"}.
struct Range {
    std::string_view low;
    std::string_view high;
    std::string_view example;
    std::string_view why = {};  // behind the limits, to whoever is outside them
};

class Options {
  public:
    /// The value of an option that must be there. If it is missing, unreadable or out of range, that is kept as a
    /// problem and some value comes back: look at problems() before using any.
    template <class Q>
    Q need(std::string_view option, const Given& text, const Range& range) {
        if (!text) {
            fault(option, "option-missing", "is missing", "write it like " + example(option, range));
            return Q{};
        }
        return read<Q>(option, *text, range).value_or(Q{});
    }

    /// The value of an option that may be left out.
    template <class Q>
    std::optional<Q> maybe(std::string_view option, const Given& text, const Range& range) {
        return text ? read<Q>(option, *text, range) : std::nullopt;
    }

    void fault(std::string_view option, problem::Code code, std::string message, std::string hint = {});
    const problem::Problems& problems() const { return problems_; }

  private:
    template <class Q>
    std::optional<Q> read(std::string_view option, std::string_view text, const Range& range) {
        const auto value = units::parse<Q>(text);
        if (!value) {
            take(option, value.problems(), "write it like " + example(option, range));
            return std::nullopt;
        }
        if (*value < *units::parse<Q>(range.low) || *value > *units::parse<Q>(range.high)) {
            fault(option, "out-of-range", std::string(text) + " is outside what can be worked with",
                  std::string(range.low) + " to " + std::string(range.high) +
                      (range.why.empty() ? "" : "; " + std::string(range.why)));
            return std::nullopt;
        }
        return *value;
    }
    void take(std::string_view option, const problem::Problems& problems, const std::string& hint);
    static std::string example(std::string_view option, const Range& range);

    problem::Problems problems_;
};

}  // namespace holdwater::cli
