// SPDX-License-Identifier: MIT
// A drawing of layouts/drawings for a card, with what it shows in the language of the words.
#pragma once

#include "card/content.hpp"
#include "words/words.hpp"

#include <string_view>

namespace holdwater::card {

/// The drawing "box-in-section" is read out as the words say under drawing.box-in-section; `label` stands below it.
Drawings::Shown shown_drawing(const words::Words& words, std::string_view name, Text label = {});

}  // namespace holdwater::card
