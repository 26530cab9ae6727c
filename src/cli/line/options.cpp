// SPDX-License-Identifier: MIT
#include "cli/line/options.hpp"

namespace holdwater::cli {

void Options::fault(std::string_view option, std::string code, std::string message, std::string hint) {
    problems_.push_back(
        problem::error(std::move(code), std::string(option) + " " + std::move(message), std::move(hint)));
}

void Options::take(std::string_view option, const problem::Problems& problems, const std::string& hint) {
    for (problem::Problem p : problems) {
        p.message = std::string(option) + ": " + p.message;
        // The reader of quantities knows only their kind, and would show a thickness for an altitude.
        if (p.hint.empty() || p.hint.starts_with("write it like") || p.code == "unit-of-another-kind") {
            p.hint = hint;
        }
        problems_.push_back(p);
    }
}

std::string Options::example(std::string_view option, const Range& range) {
    return std::string(option) + " \"" + std::string(range.example) + "\"";
}

}  // namespace holdwater::cli
