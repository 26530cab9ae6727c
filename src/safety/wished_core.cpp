// SPDX-License-Identifier: MIT
#include "safety/wished_core.hpp"

#include <algorithm>

namespace holdwater::safety {

std::optional<WishedCore> wished_core(const facts::FoodKind& kind, facts::Ruleset rules) {
    const facts::Rule* const rule = facts::facts().find_rule(rules, kind.category);
    if (rule == nullptr) {
        return std::nullopt;
    }
    const bool by_the_bath = kind.category == facts::Category::red_meat || kind.category == facts::Category::fish ||
                             kind.category == facts::Category::farmed_game;
    if (!by_the_bath) {
        return WishedCore{rule->lowest_target, true};
    }
    const units::Temperature whole = std::max(rule->consumer_core, rule->lowest_target);
    return WishedCore{kind.pork && rule->pork_core ? std::max(whole, *rule->pork_core) : whole, false};
}

}  // namespace holdwater::safety
