// SPDX-License-Identifier: MIT
#include "cli/line/kinds.hpp"

#include "facts/facts.hpp"
#include "units/nearest.hpp"

#include <algorithm>
#include <string_view>
#include <vector>

namespace holdwater::cli {

std::string kinds_like(std::string word) {
    std::transform(word.begin(), word.end(), word.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    std::vector<std::string_view> known;
    std::string beginning;
    std::string containing;
    for (const facts::FoodKind& food : facts::facts().foods()) {
        known.push_back(food.key);
        if (word.empty() || food.key.find(word) == std::string::npos) {
            continue;
        }
        if (food.key == word) {
            return "did you mean " + food.key + "?";
        }
        std::string& into = food.key.starts_with(word) ? beginning : containing;
        into += (into.empty() ? "" : ", ") + food.key;
    }
    containing = beginning + (beginning.empty() || containing.empty() ? "" : ", ") + containing;
    if (!containing.empty()) {
        return "one of: " + containing;
    }
    const auto meant = units::nearest(word, known);
    return (meant ? "did you mean " + std::string(*meant) + "? " : "") + "See `holdwater sources --foods`";
}

std::string rules_listed() {
    const auto names = facts::names<facts::Ruleset>();
    std::string list;
    for (std::size_t i = 0; i < names.size(); ++i) {
        list += i == 0 ? "" : i + 1 == names.size() ? " or " : ", ";
        list += names[i].text;
    }
    return list;
}

}  // namespace holdwater::cli
