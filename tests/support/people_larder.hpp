// SPDX-License-Identifier: MIT
// What people bring to cook outdoors, how big they buy or cut it, and how done they want it.
#pragma once

#include "facts/facts.hpp"
#include "support/people_chance.hpp"
#include "support/people_pen.hpp"

#include <optional>
#include <string>
#include <vector>

namespace holdwater::support {

/// One [[food]] before it is written down.
struct Bought {
    std::string name;
    std::string kind;
    std::string shape;
    std::string cut;
    std::string use;  // empty: as a rule
    Written thickness;
    std::optional<Written> width;
    std::optional<Written> length;
    Written mass;
    int pieces = 1;
    double start_c = 4;
    double target_c = 63;  // of what is kept hot: none
    double tolerance_k = 2;
    bool bone = false;

    /// All pieces together.
    double litres() const;
};

/// A piece of that kind for so many eaters, or as much of it as goes into `room_l` litres: one at least. With `steak`
/// a cut to be eaten as one; with `hot` cooked before and only kept hot.
Bought buy(Chance& chance, const Pen& pen, const facts::FoodKind& kind, int people, double room_l, bool steak,
           bool hot);

/// A kind by one of these beginnings of its key; any kind at all where none of them is known.
const facts::FoodKind& kind_like(Chance& chance, const std::vector<std::string>& beginnings);

}  // namespace holdwater::support
