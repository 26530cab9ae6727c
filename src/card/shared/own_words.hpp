// SPDX-License-Identifier: MIT
// The meaning of a spread stands in the facts, in English; other languages bring their own, under [spread].
#pragma once

#include "facts/facts.hpp"

#include <string>
#include <vector>

namespace holdwater::card {

/// "spread.box-loss".
std::string words_key_of(const facts::Spread& spread);

/// What every language but the program's own must have beside the keys of English.
std::vector<std::string> keys_of_other_languages();

}  // namespace holdwater::card
