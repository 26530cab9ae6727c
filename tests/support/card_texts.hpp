// SPDX-License-Identifier: MIT
// All that is printed on a card, as it is read.
#pragma once

#include "card/content.hpp"

#include <string>
#include <vector>

namespace holdwater::support {

/// Every text of a card: blocks, then cautions, then name and question, with plain spaces and without stars. A key
/// number is "71 °C (160 °F, aside)", and "71 °C (160 °F)" too; a row of a table or ladder is one text, "62 °C | 14 L".
std::vector<std::string> texts_of(const card::Card& card);
std::vector<std::string> texts_of(const card::Deck& deck);
/// A line each.
std::string joined(const std::vector<std::string>& texts);

}  // namespace holdwater::support
