// SPDX-License-Identifier: MIT
#include "problem/problem.hpp"

#include "problem/in_text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace holdwater::problem {
namespace {

const char* name(Severity severity) {
    switch (severity) {
        case Severity::error:
            return "error";
        case Severity::warning:
            return "warning";
        case Severity::note:
            return "note";
    }
    return "error";
}

}  // namespace

Problem error(Code code, std::string message, std::string hint) {
    return {Severity::error, code, std::move(message), std::move(hint), std::nullopt};
}

Problem warning(Code code, std::string message, std::string hint) {
    return {Severity::warning, code, std::move(message), std::move(hint), std::nullopt};
}

Problem note(Code code, std::string message, std::string hint) {
    return {Severity::note, code, std::move(message), std::move(hint), std::nullopt};
}

Problem placed(Problem problem, std::optional<Place> place) {
    problem.place = std::move(place);
    return problem;
}

bool has_error(const Problems& problems) {
    return std::any_of(problems.begin(), problems.end(),
                       [](const Problem& p) { return p.severity == Severity::error; });
}

std::string to_line(const Problem& problem) {
    std::string line;
    if (problem.place) {
        line = problem.place->line > 0
                   ? fmt::format("{}:{}:{}: ", problem.place->file, problem.place->line, problem.place->column)
                   : fmt::format("{}: ", problem.place->file);
    }
    line += fmt::format("{}: {}", name(problem.severity), problem.message);
    if (!problem.hint.empty()) {
        line += fmt::format(" ({})", problem.hint);
    }
    // File names, words of the command line and libraries may bring anything with them.
    return one_line(line);
}

}  // namespace holdwater::problem
