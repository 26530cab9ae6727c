// SPDX-License-Identifier: MIT
// The same thing said in several places: cards, terminal, JSON, `hold`, `review`, class deck. Each place is read as its
// reader reads it, and what it says is kept as a row.
#pragma once

#include "plan/result/plan.hpp"
#include "words/words.hpp"

#include <string>
#include <vector>

namespace holdwater::support {

/// One thing as one place says it.
struct Said {
    std::string what;    // "top-up 2", "cold water"
    std::string where;   // "card plan", "terminal", "json"
    std::string says;    // for people
    double value = 0.0;  // to compare: seconds since the fire, litres, degrees C; 0 for words
    double step = 0.0;   // an unrounded value may lie this far from a printed one; 0: it is a printed one itself
};
using AllSaid = std::vector<Said>;

/// A clock time, a figure, a word.
Said said_at(std::string what, std::string where, units::LocalTime from, units::LocalTime at);
Said said_figure(std::string what, std::string where, double value, const std::string& unit, double step = 0.0);
Said said_word(std::string what, std::string where, std::string word);

struct Disagreement {
    std::string what;
    std::string first;   // place
    std::string second;  // place
    std::string text;    // both, with what they say
};

/// Every two places that say another thing of the same. Numbers in `what` count: "top-up 2" is not "top-up 1".
std::vector<Disagreement> disagreements(const AllSaid& all);

/// A plan with its trip, and the words of the trip's language.
struct Case {
    const trip::Trip& trip;
    const plan::Plan& plan;
    const words::Words& words;
};

/// True where what is taken out before a pour is said by a line on the wall, not in litres.
bool says_lines(const words::Words& words);

void say_cards(const Case& one, AllSaid& all);
void say_terminal(const Case& one, AllSaid& all);
void say_json(const Case& one, AllSaid& all);
/// Every number of `--explain` and JSON that is said to stand on a card: on it or not.
void say_card_numbers(const Case& one, AllSaid& all);
/// What if, rows of the morning, people at risk.
void say_decisions(const Case& one, AllSaid& all);
/// The Hold card's own cells and the hold time worked out afresh; `hold` and the same.
void say_hold(const Case& one, AllSaid& all);
/// Logs of histories that this plan makes itself, and of one that is surely lost.
void say_review(const Case& one, AllSaid& all);
/// Floor and rows after a fall, on the cards of the class deck for the same food.
void say_class(const Case& one, AllSaid& all);

}  // namespace holdwater::support
