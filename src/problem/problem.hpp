// SPDX-License-Identifier: MIT
// What went wrong, or what needs care: where, what, and what would be right.
#pragma once

#include "problem/codes.hpp"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace holdwater::problem {

enum class Severity {
    error,    // the work cannot go on
    warning,  // the work is done, but the reader must change or check an input
    note      // worth knowing; nothing to do
};

/// A place in an input file; line and column count from 1, 0 means "the file as a whole".
struct Place {
    std::string file;
    int line = 0;
    int column = 0;
};

struct Problem {
    Severity severity = Severity::error;
    Code code;                   // such as "unit-missing"
    std::string message;         // what is wrong
    std::string hint;            // what would be right; may be empty
    std::optional<Place> place;  // where, if it comes from a file
};

using Problems = std::vector<Problem>;

Problem error(Code code, std::string message, std::string hint = {});
Problem warning(Code code, std::string message, std::string hint = {});
Problem note(Code code, std::string message, std::string hint = {});

/// The same problem at a place of an input file.
Problem placed(Problem problem, std::optional<Place> place);

bool has_error(const Problems& problems);

/// One line as compilers print it, "file:line:column: error: message (hint)", without a line feed.
std::string to_line(const Problem& problem);

/// A value, or the problems that prevented it. A value may come with warnings and notes.
template <class T>
class [[nodiscard]] Result {
  public:
    Result(T value) : value_(std::move(value)) {}
    Result(T value, Problems problems) : value_(std::move(value)), problems_(std::move(problems)) {}
    Result(Problem problem) : problems_{std::move(problem)} {}
    Result(Problems problems) : problems_(std::move(problems)) {}

    bool ok() const { return value_.has_value(); }
    explicit operator bool() const { return ok(); }

    const T& value() const& { return value_.value(); }
    T& value() & { return value_.value(); }
    T&& value() && { return std::move(value_).value(); }
    const T& operator*() const& { return *value_; }
    const T* operator->() const { return &*value_; }

    const Problems& problems() const { return problems_; }

  private:
    std::optional<T> value_;
    Problems problems_;
};

}  // namespace holdwater::problem
