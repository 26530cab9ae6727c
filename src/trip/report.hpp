// SPDX-License-Identifier: MIT
// Collects every fault of one file with its place.
#pragma once

#include "problem/in_text.hpp"
#include "problem/problem.hpp"
#include "trip/name_check.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace holdwater::trip {

class Report {
  public:
    explicit Report(std::string file, NameCheck name_check = {})
        : file_(std::move(file)), name_check_(std::move(name_check)) {}

    /// What keeps a name from the cards.
    std::optional<problem::Problem> name_fault(std::string_view name) const {
        return name_check_ ? name_check_(name) : std::nullopt;
    }

    problem::Place place(int line, int column) const { return {file_, line, column}; }
    void error(problem::Place place, problem::Code code, std::string_view message, std::string_view hint = {});
    void warning(problem::Place place, problem::Code code, std::string_view message, std::string_view hint = {});
    void note(problem::Place place, problem::Code code, std::string_view message, std::string_view hint = {});
    /// A problem made elsewhere, put at a place of this file; `prefix` says what it is about.
    void add(const problem::Problem& problem, problem::Place place, std::string_view prefix);
    /// Problems of another file, which have their places.
    void add(const problem::Problems& problems);

    bool failed() const { return failed_ || problem::has_error(problems_); }
    /// In the order of the file, without repetitions, no more than bounds::listed_problems and a last one that counts
    /// the rest.
    problem::Problems take() &&;

  private:
    void put(problem::Problem problem, problem::Place place);

    std::string file_;
    NameCheck name_check_;
    problem::Problems problems_;
    std::size_t not_kept_ = 0;  // beyond bounds::kept_problems
    bool failed_ = false;       // by one of those
};

using problem::quoted;

/// Without the white space at both ends: blanks, tabs, and Unicode's other spaces, such as the no-break one.
std::string_view without_space_around(std::string_view text);

/// Index of the first byte that is no part of well-formed UTF-8 (RFC 3629: no overlong forms, no surrogates, at most
/// U+10FFFF); nothing if the text is well-formed.
std::optional<std::size_t> first_not_utf8(std::string_view text);

/// Number of letters (code points) in valid UTF-8.
std::size_t letters_in(std::string_view text);

/// Does it hold a character that no card can print: control characters, line and paragraph separators, marks that
/// turn the writing direction? Text must be valid UTF-8.
bool has_unprintable(std::string_view text);

}  // namespace holdwater::trip
