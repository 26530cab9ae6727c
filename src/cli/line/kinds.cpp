// SPDX-License-Identifier: MIT
#include "cli/line/kinds.hpp"

#include "facts/facts.hpp"
#include "problem/in_text.hpp"
#include "units/nearest.hpp"

#include <fmt/format.h>

#include <string_view>
#include <vector>

namespace holdwater::cli {

std::string kinds_like(const std::string& word) {
    std::vector<std::string_view> known;
    for (const facts::FoodKind& food : facts::facts().foods()) {
        known.push_back(food.key);
    }
    const auto like = units::containing(word, known);
    if (!like.empty() && like.front().size() == word.size()) {
        return fmt::format("did you mean {}?", like.front());
    }
    if (!like.empty()) {
        return fmt::format("one of: {}", fmt::join(like, ", "));
    }
    const std::string shown = problem::quoted(word);
    const auto meant = units::nearest(shown, known);
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
