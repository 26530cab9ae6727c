// SPDX-License-Identifier: MIT
// What to do after a bath was below its floor: one decision and its table, for cards, terminal, JSON, class and review.
#pragma once

#include "facts/facts.hpp"
#include "units/history.hpp"
#include "units/quantity.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace holdwater::safety {

/// From mild to severe.
enum class FallAction { none, finish_and_eat_next, finish_and_eat_now, throw_away };

/// "none", "finish-and-eat-next", "finish-and-eat-now", "throw-away": as every JSON says it.
std::string_view to_word(FallAction action);

/// All that is known of a fall, read cautiously: what was not seen counts as the worst that can have been.
struct Fall {
    units::Duration below_floor;  // on the clock below the floor; no top-up stops or resets it
    units::Duration below_50;     // of the bath, below facts fall.deep
    double growth = 0.0;          // log10 of C. perfringens, cautious start of the cells
    int times = 1;                // how often it fell below
};

/// Whose rules, and who eats: what the decision asks besides the fall.
struct FallRules {
    units::Duration eat_next;       // so long below, and it may wait for the next meal
    units::Duration longest;        // so long below, and it may still be eaten at once
    bool under_longest = false;     // the longest time itself is too long already ("under 2 h")
    std::optional<int> most_falls;  // how often it may fall; nothing: falls only add up
    double growth = 0.0;            // log10, from which it is thrown away
    units::Temperature deep;        // a bath below this ...
    units::Duration deep_for;       // ... for so long is thrown away
    std::string eat_next_figure;    // keys of the figures behind the times
    std::string longest_figure;
    std::string once_figure;
};

/// People at risk: nothing that others must eat at once is a meal for them (judgement).
FallRules fall_rules(facts::Ruleset ruleset, bool at_risk);

struct Decision {
    FallAction action = FallAction::none;
    std::string figure;  // key of the figure that decided; empty for none
};

/// The decision. Longer, deeper, more growth and more falls never make it milder; a growth that is no number is thrown
/// away for. Growth counts even where no time below the floor was counted.
Decision decide(const Fall& fall, const FallRules& rules);

/// The table of a card: what to do after so long below the floor, nothing but the time being against the food.
struct FallRow {
    units::Duration from;  // above this, or from this on where `from_counts`
    bool from_counts = false;
    std::optional<units::Duration> to;  // nothing: however long
    bool to_counts = true;              // false: under `to`
    bool again = false;                 // the row is also for every further fall, however short
    FallAction action = FallAction::none;
};
/// Rising, without gaps; each action is what decide() says of the times in it.
std::vector<FallRow> rows(const FallRules& rules);

/// A bath seen at or below `lowest` is thrown away after `longest`, where that is sooner than the time rows say.
struct ColdBath {
    units::Temperature lowest;  // the bath itself: a reading has the thermometer's error on top
    units::Duration longest;
};
/// The steps of such baths, warmest first, each with less time than the one before; empty where none is needed. For
/// every bath T below the floor and every time t that no step names, decide() by time alone is what it says with the
/// growth of a bath that stayed at T all the time.
std::vector<ColdBath> cold_baths(const FallRules& rules, const std::vector<const facts::GrowthModel*>& foods);

/// The worst fall that ends in a bath which nobody warmed since it was last good, `since` ago. `slowest`: that bath as
/// it cooled at the slow end of the box, from the floor down to its lowest; whatever cooled faster was warmer at every
/// moment before the end. An empty history: nothing is known but the time, and the bath counts as at its worst for all
/// of it.
Fall worst_fall(const units::History& slowest, units::Duration since,
                const std::vector<const facts::GrowthModel*>& foods);

}  // namespace holdwater::safety
