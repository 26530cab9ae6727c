// SPDX-License-Identifier: MIT
#include "safety/refusals.hpp"

#include "facts/published.hpp"
#include "safety/finish.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace holdwater::safety {
namespace {

using facts::Category;

Refusal refusal(std::string source, problem::Code code, std::string message, std::string hint) {
    return {problem::error(code, std::move(message), std::move(hint)), std::move(source)};
}

std::optional<Refusal> refuse_without_thermometer(const Request& request, bool needs_finish) {
    const std::string get_one = "Bring a thermometer that you have checked in ice water.";
    if (request.at_risk) {
        return refusal("judgement", "no-thermometer-refused",
                       "Without a thermometer there is no safe plan when someone who eats is pregnant, very young, old "
                       "or ill.",
                       get_one);
    }
    if (needs_finish) {
        return refusal("judgement", "no-thermometer-refused",
                       "This food has to be finished over the fire, and without a thermometer nobody can tell when it "
                       "is hot enough inside. Colour does not tell.",
                       get_one + " Or take a whole piece of red meat.");
    }
    if ((request.category == Category::poultry || request.category == Category::fish) && !request.has_wax_tell_tale) {
        return refusal(
            "judgement", "no-thermometer-refused",
            fmt::format("Without a thermometer, {} needs a beeswax tell-tale that stays clear all through: "
                        "it turns clear only at about {}, and as it cools it stays clear a few degrees lower.",
                        facts::to_text(request.category), in_both(facts::facts().temperature("wax.floor"))),
            get_one + " Or hang a crumb of pure beeswax, sealed in, at the depth of the food: wax = true in [[box]].");
    }
    return std::nullopt;
}

std::optional<Refusal> refuse_steak(const Request& request) {
    const facts::Facts& facts = facts::facts();
    const auto& steak = facts.rules_of(request.ruleset).steak;
    const auto no = [&](std::string message, std::string hint) {
        return refusal(steak ? facts.figure(steak->surface).source : "judgement", "steak-refused", std::move(message),
                       std::move(hint));
    };
    const std::string cook = "leave use out: it is cooked through the middle then, as a roast is";
    if (!steak) {
        return no(fmt::format("The rules \"{}\" have no rule for steaks of which only the faces are asked.",
                              facts::to_name(request.ruleset)),
                  cook);
    }
    if (!request.beef || request.cut != facts::Cut::intact) {
        return no("The steak rule is for whole-muscle, intact beef alone: germs are on its faces and not inside.",
                  "for other meat, and for what is tied, tenderised, injected, rolled, stuffed or minced, " + cook);
    }
    if (request.at_risk) {
        return no("The steak rule is not for anyone who is pregnant, very young, old or ill.", cook);
    }
    if (!request.has_thermometer) {
        return no("Without a thermometer nobody can tell that the faces were hot enough.",
                  "Bring a thermometer that you have checked in ice water.");
    }
    const auto thickest = units::millimetres(facts.value(steak->thickest));
    if (!request.flat || !request.thickness || *request.thickness > thickest) {
        return no(fmt::format("A steak is flat and up to {} thick; this is a roast.",
                              units::print(thickest, units::System::both)),
                  "cut it across into slabs, or " + cook);
    }
    return std::nullopt;
}

std::optional<Refusal> refuse_keep_hot(const Request& request) {
    const facts::Facts& facts = facts::facts();
    const auto& hot = facts.rules_of(request.ruleset).keep_hot;
    if (!hot) {
        return refusal(
            "judgement", "keep-hot-refused",
            fmt::format("The rules \"{}\" say nothing of keeping food hot.", facts::to_name(request.ruleset)),
            "Eat it from the fire.");
    }
    const std::string& source = facts.figure(hot->floor).source;
    if (!request.has_thermometer) {
        return refusal("judgement", "no-thermometer-refused",
                       "Without a thermometer nobody can tell whether cooked food stays hot enough.",
                       "Bring a thermometer that you have checked in ice water, or eat it from the fire.");
    }
    const units::Temperature floor = facts.temperature(hot->floor);
    if (request.start >= floor + units::kelvins(facts.spread("start").high)) {
        return std::nullopt;
    }
    const units::Duration hold = facts.duration(hot->reheat + ".hold");
    return refusal(
        source, "keep-hot-refused",
        fmt::format(
            "Cooked food goes in hot and stays at {} or more; at {} it is too cold, and a bath does not bring its "
            "middle to {}.",
            in_both(floor), in_both(request.start), in_both(facts.temperature(hot->reheat))),
        fmt::format("Boil it through over the fire first, to {}{} in the middle, then keep it hot in the box: start is "
                    "what it has when it goes in.",
                    in_both(facts.temperature(hot->reheat)),
                    hold.si() > 0 ? fmt::format(" for {}", units::print(hold)) : ""));
}

/// What the rules alone allow for this kind and cut, whoever eats.
units::Temperature lowest_of_rules(const Request& request, const facts::Rule& rule) {
    if (request.over_fire) {
        return lowest_over_fire(rule);
    }
    const bool whole_pork = request.category == Category::red_meat && request.pork && is_whole_muscle(request.cut);
    return whole_pork && rule.pork_core ? std::max(rule.lowest_target, *rule.pork_core) : rule.lowest_target;
}

std::string_view food_words(const Request& request) {
    const bool pork = request.category == Category::red_meat && request.pork;
    return pork ? "pork" : facts::to_text(request.category);
}

std::optional<Refusal> refuse_food(const Request& request) {
    const facts::GeneralRules& rules = facts::facts().rules_of(request.ruleset);
    switch (request.category) {
        case Category::boar_or_bear:
            return refusal("trichinella-wild", "category-refused",
                           "Wild boar and bear are not cooked in a bath: they carry parasites that can survive it, "
                           "and freezing does not kill these for sure.",
                           fmt::format("Braise it over the fire, to {} all through, or take farmed pork or beef.",
                                       in_both(facts::facts().temperature(rules.finish_full))));
        case Category::liver:
        case Category::bivalve:
            if (request.at_risk) {
                return refusal(finish_for(request)->source, "category-refused",
                               fmt::format("No {} from a bath when someone who eats is pregnant, very young, old or "
                                           "ill: viruses in it survive the bath.",
                                           facts::to_text(request.category)),
                               fmt::format("Take another food, such as whole beef to {} or more and {} there.",
                                           in_both(facts::facts().temperature(rules.at_risk_red_meat)),
                                           units::print(red_meat_hold_at_risk(request.ruleset))));
            }
            return std::nullopt;
        case Category::egg:
            return refusal("judgement", "no-rule", "There is no published table for eggs in a bath like this.",
                           "Boil or fry them over the fire until white and yolk are firm.");
        case Category::vegetable:
            return refusal(
                "judgement", "no-rule", "A bath for meat is too cool to cook vegetables.",
                "Cook them over the fire, as a side dish; cooked and hot, use = \"keep-hot\" keeps them so.");
        case Category::cooked_dish:
            return refusal("judgement", "no-rule", "This was cooked before: a bath cannot cook it again.",
                           "Boil it through over the fire, then use = \"keep-hot\" keeps it hot in the box.");
        case Category::red_meat:
        case Category::poultry:
        case Category::fish:
        case Category::farmed_game:
        case Category::wild_game:
            return std::nullopt;
    }
    return std::nullopt;
}

std::optional<Refusal> refuse_target(const Request& request, const facts::Rule& rule) {
    const units::Temperature lowest = lowest_target(request, rule);
    // Where the core itself has to reach the limit, the target may be its rounded Fahrenheit figure.
    const bool core_guards = lowest > rule.cook_floor;
    const units::TemperatureDifference rounding =
        core_guards ? facts::facts().difference("target.rounding") : units::kelvins(1e-9);
    if (request.target >= lowest - rounding) {
        return std::nullopt;
    }
    const std::string hint = fmt::format("The lowest target allowed here is {}.", in_both(lowest));
    const bool risk_decides = lowest > lowest_of_rules(request, rule);
    if (risk_decides && request.target >= rule.lowest_target) {
        const facts::Facts& facts = facts::facts();
        std::string stay;
        if (request.category == Category::red_meat) {
            stay =
                fmt::format(" The meat then stays there for {}.", units::print(red_meat_hold_at_risk(request.ruleset)));
        }
        return refusal(facts.figure(at_risk_figure(request)).source, "at-risk-target-too-low",
                       fmt::format("{} inside is too low when someone who eats is pregnant, very young, old or ill.",
                                   in_both(request.target)),
                       hint + stay);
    }
    // Only below the lowest row is it true that no stay in the bath would do.
    const bool no_kill = request.target < facts::facts().kill_standard(rule.kill_standard).rows.front().core;
    return refusal(
        rule.source, "target-too-low",
        fmt::format("{} inside is too low for {}: it is under the lowest that the rules \"{}\" allow here.{}",
                    in_both(request.target), food_words(request), facts::to_name(request.ruleset),
                    no_kill ? " Germs in it can live on or grow, however long it stays in the bath." : ""),
        hint);
}

}  // namespace

std::string_view at_risk_figure(const Request& request) {
    if (!request.at_risk || !is_whole_muscle(request.cut) || request.over_fire) {
        return {};
    }
    if (request.category == Category::red_meat) {
        return facts::facts().rules_of(request.ruleset).at_risk_red_meat;
    }
    return request.category == Category::fish ? facts::facts().rules_of(request.ruleset).at_risk_fish
                                              : std::string_view{};
}

units::Temperature lowest_over_fire(const facts::Rule& rule) {
    const units::Temperature credited = facts::facts().kill_standard(rule.kill_standard).rows.front().core;
    return std::min(rule.lowest_target, std::max(rule.cook_floor, credited));
}

units::Duration red_meat_hold_at_risk(facts::Ruleset ruleset) {
    const facts::Facts& facts = facts::facts();
    return facts.duration(facts.rules_of(ruleset).at_risk_red_meat + ".hold");
}

std::string in_both(units::Temperature t) {
    if (facts::printed_pair(t) != nullptr) {
        return units::written(facts::published(t, units::System::both));
    }
    const bool whole = std::abs(t.celsius() - std::round(t.celsius())) < 1e-9;
    return units::print(t, units::System::both, {whole ? 1.0 : 0.1});
}

units::Temperature lowest_target(const Request& request, const facts::Rule& rule) {
    const units::Temperature lowest = lowest_of_rules(request, rule);
    const std::string_view figure = at_risk_figure(request);
    return figure.empty() ? lowest : std::max(lowest, facts::facts().temperature(figure));
}

std::optional<Refusal> refusal_of(const Request& request) {
    if (request.use == facts::Use::keep_hot) {
        return refuse_keep_hot(request);
    }
    if (std::optional<Refusal> refusal = refuse_food(request)) {
        return refusal;
    }
    if (request.use == facts::Use::steak) {
        if (std::optional<Refusal> refusal = refuse_steak(request)) {
            return refusal;
        }
    }
    if (!request.has_thermometer) {
        if (std::optional<Refusal> refusal = refuse_without_thermometer(request, finish_for(request).has_value())) {
            return refusal;
        }
    }
    const facts::Rule* rule = facts::facts().find_rule(request.ruleset, request.category);
    if (rule == nullptr) {
        return refusal(
            "judgement", "no-rule", "There is no rule for this food, so there is no safe plan for it.",
            fmt::format("Cook it over the fire, to {} all through.",
                        in_both(facts::facts().temperature(facts::facts().rules_of(request.ruleset).finish_full))));
    }
    return refuse_target(request, *rule);
}

}  // namespace holdwater::safety
