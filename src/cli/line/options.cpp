// SPDX-License-Identifier: MIT
#include "cli/line/options.hpp"

namespace holdwater::cli {

void Options::fault(std::string_view option, problem::Code code, std::string message, std::string hint) {
    problems_.push_back(
        problem::error(code, std::string(option) + " " + std::move(message), std::move(hint)));
}

void Options::take(std::string_view option, const problem::Problems& problems, const std::string& hint) {
    for (problem::Problem p : problems) {
        p.message = std::string(option) + ": " + p.message;
        // Where the reader of quantities shows an example, it knows only the kind: a thickness for an altitude.
        if (p.hint.empty() || p.code == "number-unreadable" || p.code == "unit-of-another-kind") {
            p.hint = hint;
        }
        problems_.push_back(p);
    }
}

std::string Options::example(std::string_view option, const Range& range) {
    return std::string(option) + " \"" + std::string(range.example) + "\"";
}

}  // namespace holdwater::cli
