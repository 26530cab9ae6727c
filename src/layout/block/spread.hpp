// SPDX-License-Identifier: MIT
// Labels that want to stand at given places, pushed apart as little as possible.
#pragma once

#include "layout/page.hpp"

#include <vector>

namespace holdwater::layout {

struct Spread {
    std::vector<Millimetres> at;
    Millimetres missing;  // by which the room from `low` to `high` is too short for all
};

/// Places in ascending order at least `slot` apart and between `low` and `high`, with the least sum of squared moves.
Spread spread_apart(const std::vector<Millimetres>& wanted, Millimetres slot, Millimetres low, Millimetres high);

/// A label above a bar, with one or more leaders straight down to it.
struct FlagWish {
    Millimetres first;  // leader
    Millimetres last;   // leader; the same for a label with one
    Millimetres width;
};

/// Which row a label takes (0 next to the bar) and where it starts.
struct Flag {
    int row = 0;
    Millimetres left;
};

/// Rows for labels whose leaders stand at ascending places, inside [low, high]: labels of a row keep `gap`, and no
/// leader crosses another label. As few rows as possible; empty if `most_rows` do not do.
std::vector<Flag> flag_rows(const std::vector<FlagWish>& labels, Millimetres low, Millimetres high, Millimetres gap,
                            int most_rows);

}  // namespace holdwater::layout
