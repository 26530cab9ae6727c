// SPDX-License-Identifier: MIT
// What a food must reach to be safe, under whose rules and for which eaters; or why it is refused.
#pragma once

#include "facts/facts.hpp"
#include "problem/problem.hpp"
#include "units/quantity.hpp"

#include <optional>
#include <string>

namespace holdwater::safety {

/// What decides: the food, who eats, whose rules, what the cook can measure.
struct Request {
    facts::Category category = facts::Category::red_meat;
    facts::Cut cut = facts::Cut::intact;
    facts::Use use = facts::Use::cook;
    facts::Ruleset ruleset{};
    units::Temperature target;
    bool at_risk = false;
    bool has_thermometer = true;
    bool has_wax_tell_tale = false;
    bool over_fire = false;  // finished over the fire after the bath by choice: then the bath need not bring the core
                             // to what the country tells its consumers, only as far as its own kill table begins
    const facts::GrowthModel* growth = nullptr;  // of C. perfringens in this food; nothing: not known
    bool pork = true;   // red meat only; some countries ask more of pork, so "not known" is taken as pork
    bool beef = false;  // known to be of cattle: only that is a steak
    std::optional<units::Length> thickness;  // a steak is refused where it is not known
    bool flat = true;                        // a steak has two faces
    units::Temperature start;                // of what is kept hot
};

/// A request with what the kind of food settles; the rest is for the caller to fill in.
Request request_for(const facts::FoodKind& kind);

/// The full temperature to which a food is finished over the fire after the bath.
struct Finish {
    units::Temperature core;
    units::Duration hold;
    std::string why;     // one line for the card
    std::string source;  // key
};

/// A steak's faces in the pan.
struct Sear {
    units::Temperature surface;  // top and bottom reach this, and every outer face changes colour
    units::Length thickest;      // a thicker piece is a roast
    std::string source;          // key
};

/// All that the plan has to keep for one food.
struct Standard {
    units::Temperature cook_floor;        // bath never below, as the food sees it, while it cooks
    units::Temperature action_line;       // top up before a reading falls to this
    units::Temperature hold_floor;        // bath never below, after done
    units::Temperature hold_action_line;  // after done: top up before a reading falls to this
    const facts::KillStandard* kill = nullptr;
    const facts::GrowthModel* growth = nullptr;  // of C. perfringens in it; nothing: not known
    units::Temperature core_at_least;
    units::Duration core_at_least_for;
    std::optional<Finish> finish;        // set: never served from the bath alone
    std::optional<Sear> sear;            // set: a steak, of which only the faces are asked
    bool kept_hot = false;               // cooked through before: never below the hold floor, nothing else
    bool below_consumer_advice = false;  // say so on the Plan card in one line
    units::Temperature consumer_core;
    units::Duration consumer_hold;
    std::string rule_source;
};

/// Errors, each with a reason that a cook understands and a hint with the nearest allowed choice:
/// category-refused (boar and bear; liver and shellfish for people at risk), target-too-low, at-risk-target-too-low,
/// no-thermometer-refused, no-rule (eggs, vegetables), steak-refused, keep-hot-refused (too cold, or no such rule).
problem::Result<Standard> standard_for(const Request& request);

/// Key of the source behind the refusal of this request; empty if it is not refused.
std::string refusal_source(const Request& request);

}  // namespace holdwater::safety
