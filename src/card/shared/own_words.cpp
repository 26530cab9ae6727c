// SPDX-License-Identifier: MIT
#include "card/shared/own_words.hpp"

#include <algorithm>

namespace holdwater::card {

std::string words_key_of(const facts::Spread& spread) {
    std::string key = "spread." + spread.key;
    std::replace(key.begin() + static_cast<std::ptrdiff_t>(std::string("spread.").size()), key.end(), '.', '-');
    return key;
}

std::vector<std::string> keys_of_other_languages() {
    std::vector<std::string> keys;
    for (const facts::Spread& spread : facts::facts().spreads()) {
        keys.push_back(words_key_of(spread));
    }
    return keys;
}

}  // namespace holdwater::card
