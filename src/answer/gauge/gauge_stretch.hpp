// SPDX-License-Identifier: MIT
// Which readings of a box test belong to one bath that was left alone. For gauge.cpp.
#pragma once

#include "answer/gauge/gauge.hpp"

#include <cstddef>

namespace holdwater::answer {

struct Stretch {
    std::size_t first = 0;
    std::size_t last = 0;        // inclusive
    bool whole = true;           // no reading was left out
    problem::Problems problems;  // jumps, sudden falls, lids: warnings
    std::size_t count() const { return last - first + 1; }
};

/// The longest stretch (in time) of two readings or more without a jump, a sudden fall or a lid that a note tells of.
/// Error: no-clean-stretch, besides the warnings that say why.
problem::Result<Stretch> clean_stretch(const GaugeQuestion& question);

/// True if a note tells of an open lid or of water added: "lid open", "topped up".
bool tells_of_touching(const std::string& note);

}  // namespace holdwater::answer
