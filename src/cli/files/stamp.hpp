// SPDX-License-Identifier: MIT
#pragma once

#include "problem/problem.hpp"
#include "trip/trip.hpp"

#include <string>
#include <vector>

namespace holdwater::cli {

/// Eight characters over canonical trip, facts, the given layout texts and the version: a stale card shows a stamp that
/// differs from the deck printed today.
std::string stamp_of(const trip::Trip& trip, const std::vector<std::string>& layout_texts);

/// That of the trip's own deck in hand, which plan, review and log name, so that a log and a card are known to belong
/// together. Errors: data-missing, data-unreadable.
problem::Result<std::string> own_stamp(const trip::Trip& trip);

/// The same for a deck without a trip: over all that it was asked for, as text.
std::string stamp_of_text(const std::string& canonical, const std::vector<std::string>& layout_texts);

}  // namespace holdwater::cli
