// SPDX-License-Identifier: MIT
// How a published limit is printed: as its publishers pair the two systems. Only worked-out figures are rounded.
#pragma once

#include "units/print.hpp"

namespace holdwater::facts {

struct PrintedPair;

/// The pair of a limit in °C; nothing where none is published. A limit is told by either of its figures: 62.8 °C in a
/// table that was written in °F, and a target that a user writes as "145 F", are both the 145 °F that stand beside
/// 63 °C.
const PrintedPair* printed_pair(units::Temperature limit);

/// "63 °C (145 °F)"; 57.2 °C, read from a table in °F, as "57.2 °C (135 °F)". A limit that no publisher pairs is
/// rounded `otherwise` to a whole degree of the system that is printed first, the second beside it from that, to the
/// same side. Never for what was worked out: a reading that happens to be 63 °C is rounded to its safe side.
units::Amount published(units::Temperature limit, units::System system, units::Toward otherwise = units::Toward::up);

}  // namespace holdwater::facts
