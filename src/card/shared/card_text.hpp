// SPDX-License-Identifier: MIT
// All that a card says, as one text: to see whether a figure stands on it.
#pragma once

#include "card/content.hpp"

namespace holdwater::card {

/// Every text of the blocks and cautions, a line each; a key number as it is seen, "71 °C (160 °F, stirred)". What only
/// scales a drawing is left out.
Text text_of(const Card& card);

}  // namespace holdwater::card
