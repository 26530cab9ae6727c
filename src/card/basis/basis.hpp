// SPDX-License-Identifier: MIT
// What stands behind the cards, on plain sheets for the instructor: inputs, model, numbers, assumptions, sources, how
// to print, and what to cut out.
#pragma once

#include "card/content.hpp"
#include "plan/result/plan.hpp"
#include "problem/problem.hpp"
#include "words/words.hpp"

#include <string>
#include <vector>

namespace holdwater::card {

/// How the deck is printed.
struct Printing {
    std::string format = "hand";
    double paper_width_mm = 0.0;  // of one card
    double paper_height_mm = 0.0;
    std::string sheet = "a4";
    std::string sides = "duplex";
};

/// One plan a box, in the order of the trip's boxes. `remarks` are those of the trip file; each plan brings its own.
Sheets basis(const trip::Trip& trip, const std::vector<plan::Plan>& plans, const problem::Problems& remarks,
             const Printing& printing, const words::Words& words, const std::string& stamp);

}  // namespace holdwater::card
