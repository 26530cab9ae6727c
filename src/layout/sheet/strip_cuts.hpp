// SPDX-License-Identifier: MIT
// Where a strip that is longer than the sheet is cut into pieces.
#pragma once

#include "card/content.hpp"
#include "layout/page.hpp"

#include <vector>

namespace holdwater::layout {

/// A piece of a strip: from here to there on the whole of it, and what the paper has beyond.
struct Stretch {
    Millimetres from;  // mm from the strip's foot
    Millimetres to;
    Millimetres head;  // beyond `to`: room for the last label, or a tab to glue the next piece on
    bool first = false;
    bool last = false;
};

/// As few pieces as leave every joint some choice, none higher than `room` with its head. Joints lie on whole
/// millimetres, as far from labelled marks as they can.
std::vector<Stretch> stretches(const card::Strip& strip, Millimetres room);

}  // namespace holdwater::layout
