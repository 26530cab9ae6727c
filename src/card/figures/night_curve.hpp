// SPDX-License-Identifier: MIT
// The curve of the Night card with the figures at its axes.
#pragma once

#include "card/content.hpp"
#include "card/shared/telling.hpp"

namespace holdwater::card {

/// Lines, floor and labels of both axes, in the unit that the cards print first; titles are left empty.
Curve night_curve(const Telling& telling);

}  // namespace holdwater::card
