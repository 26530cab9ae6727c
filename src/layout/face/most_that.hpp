// SPDX-License-Identifier: MIT
// How much finds room, without trying every amount.
#pragma once

#include <optional>

namespace holdwater::layout {

/// The largest whole number from `least` to `most` that has room, where whatever is less than one that has room has it
/// as well; nothing if not even `least` has. The last call of `has_room` that says yes is for the answer.
template <class HasRoom>
std::optional<int> most_that(int least, int most, HasRoom has_room) {
    if (least > most || !has_room(least)) {
        return std::nullopt;
    }
    int good = least;
    int bad = most + 1;
    while (bad - good > 1) {
        // The most first: much that is tried has all the room it asks for.
        const int middle = bad > most ? most : good + (bad - good) / 2;
        (has_room(middle) ? good : bad) = middle;
    }
    return good;
}

}  // namespace holdwater::layout
