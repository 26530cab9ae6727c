// SPDX-License-Identifier: MIT
#include "safety/finish.hpp"

#include <algorithm>
#include <string>
#include <string_view>

namespace holdwater::safety {
namespace {

using facts::Category;
using facts::Cut;

/// `figure` names the temperature in facts; its hold is "<figure>.hold", its source the figure's.
Finish finish(std::string_view figure, std::string why) {
    const facts::Facts& facts = facts::facts();
    const std::string key{figure};
    return {facts.temperature(key), facts.duration(key + ".hold"), std::move(why), facts.figure(key).source};
}

std::string why_cut(Cut cut) {
    switch (cut) {
        case Cut::minced:
            return "Minced: germs from the outside are all through it.";
        case Cut::tenderised:
            return "Tenderised: blades or needles carried germs inside.";
        case Cut::injected:
            return "Injected: needles carried germs inside.";
        case Cut::rolled:
            return "Rolled: the outside with its germs is now inside.";
        case Cut::stuffed:
            return "Stuffed: the middle was never one whole piece of meat.";
        case Cut::intact:
        case Cut::tied:
            return {};
    }
    return {};
}

std::string_view figure_for_cut(const Request& request, const facts::GeneralRules& rules) {
    if (request.cut == Cut::stuffed) {
        return rules.finish_stuffed;
    }
    return request.category == Category::poultry ? rules.finish_cut_poultry : rules.finish_cut;
}

}  // namespace

bool is_whole_muscle(Cut cut) {
    return cut == Cut::intact || cut == Cut::tied;
}

Finish finish_after_growth(facts::Ruleset ruleset) {
    return finish(facts::facts().rules_of(ruleset).finish_full,
                  "It warms slowly: germs that grew in it meanwhile are not all dead before the meal.");
}

std::optional<Finish> finish_for(const Request& request) {
    const facts::GeneralRules& rules = facts::facts().rules_of(request.ruleset);
    std::optional<Finish> hottest;
    // The hottest asked for, held for the longest asked for.
    const auto take = [&hottest](Finish one) {
        if (!hottest) {
            hottest = std::move(one);
            return;
        }
        const units::Duration hold = std::max(hottest->hold, one.hold);
        if (one.core > hottest->core) {
            hottest = std::move(one);
        }
        hottest->hold = hold;
    };
    if (request.category == Category::bivalve) {
        take(finish(rules.finish_bivalve, "Shellfish carry viruses that the bath does not kill."));
    }
    if (request.category == Category::liver) {
        take(finish(rules.finish_liver, "Liver carries viruses that the bath does not kill."));
    }
    if (request.category == Category::wild_game) {
        take(finish(rules.finish_full, "Game carries parasites and germs that no bath table covers."));
    }
    if (!is_whole_muscle(request.cut)) {
        take(finish(figure_for_cut(request, rules), why_cut(request.cut)));
    }
    if (request.category == Category::farmed_game && !is_whole_muscle(request.cut)) {
        take(finish(rules.finish_full, why_cut(request.cut)));  // some countries ask this of all game
    }
    if (request.over_fire) {
        take(finish(rules.finish_full, "The trip finishes it over the fire."));
    }
    const bool whole_red_meat = request.category == Category::red_meat && is_whole_muscle(request.cut);
    const bool whole_fish = request.category == Category::fish && is_whole_muscle(request.cut);
    if (request.at_risk && !whole_red_meat && !whole_fish) {
        take(finish(rules.finish_full, "Someone at risk eats: the bath alone is not enough for this food."));
    }
    return hottest;
}

}  // namespace holdwater::safety
