// SPDX-License-Identifier: MIT
#include "safety/refusals.hpp"

#include <fmt/format.h>

#include <cmath>

#include "safety/finish.hpp"
#include "units/print.hpp"

namespace holdwater::safety {
namespace {

using facts::Category;
using problem::error;
using problem::Problem;

bool stricter_for_risk(const Request& request) {
    return request.at_risk && request.category == Category::red_meat && is_whole_muscle(request.cut);
}

std::optional<Problem> refuse_without_thermometer(const Request& request, bool needs_finish) {
    const std::string get_one = "Bring a thermometer that you have checked in ice water.";
    if (request.at_risk) {
        return error("no-thermometer-refused",
                     "Without a thermometer there is no safe plan when someone who eats is pregnant, very young, old "
                     "or ill.",
                     get_one);
    }
    if (needs_finish) {
        return error("no-thermometer-refused",
                     "This food has to be finished over the fire, and without a thermometer nobody can tell when it "
                     "is hot enough inside. Colour does not tell.",
                     get_one + " Or take a whole piece of red meat.");
    }
    if ((request.category == Category::poultry || request.category == Category::fish) && !request.has_wax_tell_tale) {
        return error("no-thermometer-refused",
                     fmt::format("Without a thermometer, {} needs a beeswax tell-tale that stays clear all the time: "
                                 "it shows that the water is above {}.",
                                 facts::to_text(request.category), in_both(facts::facts().temperature("wax.floor"))),
                     get_one + " Or hang a crumb of pure beeswax, sealed in, at the depth of the food.");
    }
    return std::nullopt;
}

}  // namespace

std::string in_both(units::Temperature t) {
    const bool whole = std::abs(t.celsius() - std::round(t.celsius())) < 1e-9;
    return units::print(t, units::System::both, {whole ? 1.0 : 0.1});
}

std::optional<Problem> refuse_food(const Request& request, bool needs_finish) {
    switch (request.category) {
        case Category::boar_or_bear:
            return error("category-refused",
                         "Wild boar and bear are not cooked in a bath: they carry parasites that survive it, and "
                         "freezing does not kill these for sure.",
                         "Boil or braise it over the fire, hot all through, or take farmed pork or beef.");
        case Category::liver:
        case Category::bivalve:
            if (request.at_risk) {
                return error("category-refused",
                             fmt::format("No {} from a bath when someone who eats is pregnant, very young, old or "
                                         "ill: they carry viruses that the bath does not kill.",
                                         facts::to_text(request.category)),
                             "Cook another food, such as whole beef or pork to 63 °C (145 °F) or more.");
            }
            break;
        case Category::egg:
            return error("no-rule", "There is no published table for eggs in a bath like this.",
                         "Boil or fry them over the fire until white and yolk are firm.");
        case Category::vegetable:
            return error("no-rule", "A bath for meat is too cool to cook vegetables.",
                         "Cook them over the fire, as a side dish.");
        case Category::red_meat:
        case Category::poultry:
        case Category::fish:
        case Category::wild_game:
            break;
    }
    return request.has_thermometer ? std::nullopt : refuse_without_thermometer(request, needs_finish);
}

units::Temperature lowest_target(const Request& request, const facts::Rule& rule) {
    units::Temperature lowest = rule.lowest_target;
    if (request.category == Category::red_meat && request.pork && rule.pork_core && is_whole_muscle(request.cut)) {
        lowest = std::max(lowest, *rule.pork_core);
    }
    if (stricter_for_risk(request)) {
        lowest = std::max(lowest, facts::facts().temperature("at-risk.red-meat"));
    }
    return lowest;
}

std::optional<Problem> refuse_target(const Request& request, const facts::Rule& rule) {
    const units::Temperature lowest = lowest_target(request, rule);
    // Where the core itself has to reach the limit, the target may be its rounded Fahrenheit figure.
    const bool core_guards = lowest > rule.cook_floor;
    const units::TemperatureDifference rounding =
        core_guards ? facts::facts().difference("target.rounding") : units::kelvins(1e-9);
    if (request.target >= lowest - rounding) {
        return std::nullopt;
    }
    const std::string hint = fmt::format("The lowest target allowed here is {}.", in_both(lowest));
    if (request.at_risk && request.target >= rule.lowest_target) {
        return error("at-risk-target-too-low",
                     fmt::format("{} inside is too low when someone who eats is pregnant, very young, old or ill.",
                                 in_both(request.target)),
                     fmt::format("{} The meat then stays there for {}.", hint,
                                 units::print(facts::facts().duration("at-risk.red-meat.hold"))));
    }
    return error("target-too-low",
                 fmt::format("{} inside is too low for {} under the rules \"{}\": germs in it can live on or grow, "
                             "however long it stays in the bath.",
                             in_both(request.target), facts::to_text(request.category),
                             facts::to_name(request.ruleset)),
                 hint);
}

}  // namespace holdwater::safety
