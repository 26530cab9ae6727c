// SPDX-License-Identifier: MIT
// How uncertain things are drawn: evenly spread points, and what a share of a spread of the facts stands for.
#pragma once

#include "facts/facts.hpp"

#include <cstddef>
#include <vector>

namespace holdwater::answer {

/// Value of a spread at a share 0 to 1 of its distribution, both ends excluded. Normal and log-normal spreads give
/// their 5 and 95 % points as low and high, so that their median lies in the (geometric) middle; uniform ones their
/// ends; triangular ones peak in the middle.
double value_at(const facts::Spread& spread, double share);

/// Place between the ends of a spread, -1 at low and 1 at high, 0 at the median; on the logarithm for a log-normal one.
double place_at(const facts::Spread& spread, double share);

/// A low-discrepancy set (Sobol) of `points` rows of `dimensions` shares, once for each of the shifts: the set as it
/// is, then moved by a random step in every direction, wrapped around (Cranley-Patterson rotation). The seed is fixed:
/// the same call gives the same rows. Every share lies inside 0 to 1, never on an end.
std::vector<std::vector<double>> even_shares(std::size_t dimensions, std::size_t points, std::size_t shifts = 1);

}  // namespace holdwater::answer
