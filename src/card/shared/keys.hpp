// SPDX-License-Identifier: MIT
// The names of a list of card makers. Inside card/ only.
#pragma once

#include <string>
#include <vector>

namespace holdwater::card {

/// The member `key` of each, in order.
template <class Makers>
std::vector<std::string> keys_of(const Makers& makers) {
    std::vector<std::string> keys;
    for (const auto& maker : makers) {
        keys.emplace_back(maker.key);
    }
    return keys;
}

}  // namespace holdwater::card
