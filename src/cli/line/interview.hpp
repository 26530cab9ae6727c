// SPDX-License-Identifier: MIT
// Questions in plain words, one a line, on whatever stands at the other end of standard input.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>

namespace holdwater::cli {

/// What came of an answer.
struct Taken {
    bool right = true;
    std::string says;  // why it is not, or what follows from it; may be empty
};

struct Question {
    std::string words;                                     // "How thick is a piece?"
    std::string by_default;                                // what Enter takes, as one would write it
    std::string more;                                      // what "?" tells
    std::function<Taken(const std::string& answer)> take;  // called with what was written; again until it is right
    std::function<std::string()> unsaid = {};              // what is said where nobody knows; none: nothing
};

class Interview {
  public:
    Interview();
    ~Interview();
    Interview(const Interview&) = delete;
    Interview& operator=(const Interview&) = delete;

    /// Asks until there is an answer. Enter, "I don't know" and the end of the input take the default, without `take`.
    /// Nothing more is asked once it was broken off.
    void ask(const Question& question);
    /// Ctrl-C was pressed.
    bool broken_off() const;

  private:
    std::optional<std::string> line();

    std::string read_;  // behind the last line
    bool ended_ = false;
};

/// Enter, "?" and the ways of saying that one does not know.
bool is_unsaid(std::string_view answer);

}  // namespace holdwater::cli
