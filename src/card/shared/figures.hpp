// SPDX-License-Identifier: MIT
// The one place where plan numbers become card numbers: each rounded to its safe side.
#pragma once

#include "card/content.hpp"
#include "plan/result/plan.hpp"
#include "units/amount.hpp"
#include "units/print.hpp"
#include "words/words.hpp"

#include <string>

namespace holdwater::card {

/// A temperature as every card and the plan text print it: a whole degree of the first system, the second beside it
/// rounded up from that.
units::Amount degrees(units::Temperature t, units::System system, units::Toward toward);
/// A time at a core temperature: "2 min", "90 s".
std::string hold_time(units::Duration hold);

/// A mass of less than a few kilograms: grams to 5, ounces to a half.
units::Amount small_mass(units::Mass mass, units::System system, units::Toward toward);

/// Litres to half a litre, and to a tenth: what a pot gives, or what must be poured as it was planned.
units::Amount half_litres(units::Volume v, units::System system, units::Toward toward = units::Toward::nearest);
units::Amount tenth_litres(units::Volume v, units::System system, units::Toward toward = units::Toward::nearest);

/// How many times the kill that is asked a core has at the least: to a tenth, down.
units::Figure kill_margin(const plan::FoodPlan& food);

/// False for what would print as no litres at all.
bool worth_a_pour(units::Volume litres);

/// What every card needs to write its figures. A figure is an Amount until it fills a {place} of the wording or is
/// `written`, so that the language decides how it looks.
struct CardWriter {
    const plan::Plan& plan;
    const words::Words& words;

    units::System system() const { return plan.trip->units; }

    std::string written(const units::Amount& amount) const { return words.written(amount); }

    /// False: nobody can read a bath or a core; such cards go by the clock and by wax alone.
    bool reads() const { return plan.trip->boxes.front().thermometer.has_value(); }
    bool wax() const { return plan.trip->boxes.front().wax_tell_tale; }
    bool any_finish() const;
    /// The hottest core asked for over the fire after a fall, with its time if it has one: "75 °C (167 °F) for 2 min".
    std::string full() const;
    /// " for 3 min" by the words of a key with {hold}; empty without a time.
    std::string for_hold(units::Duration hold) const;
    /// How late a pour may be: what the plan has allowed for.
    std::string latest_pour() const;
    /// The ring around fire and box in which no child may be, in the first system.
    std::string children_away() const;

    /// A bath or core temperature that must be reached or not gone below: rounded up. Here and in `about` the second
    /// system follows from the printed first, rounded up, so that one °C has one °F in a whole deck, and never on the
    /// unsafe side.
    units::Amount at_least(units::Temperature t) const;
    /// A limit that was published, or a target that is one: as its publisher pairs the two systems. Never for what was
    /// worked out.
    units::Amount limit(units::Temperature t, units::Toward otherwise = units::Toward::up) const;
    units::Amount limit_short(units::Temperature t, units::Toward otherwise = units::Toward::up) const;
    /// Of air, which may be colder: rounded down.
    units::Amount at_most(units::Temperature t) const;
    units::Amount about(units::Temperature t) const;
    /// A thickness that a hold time goes by: eighths of an inch rounded down, since they may be a millimetre and a half
    /// off and a thicker piece needs longer.
    units::Amount thickness(units::Length l) const;
    /// Litres to half a litre.
    units::Amount litres(units::Volume v, units::Toward toward = units::Toward::nearest) const;
    /// In the first system alone where the trip prints two: for lines that must stay short.
    units::Amount litres_short(units::Volume v, units::Toward toward = units::Toward::nearest) const;
    /// Litres to a tenth, in the first system: what a pot gives, or what must be poured as it was planned.
    units::Amount measured(units::Volume v, units::Toward toward = units::Toward::nearest) const;
    /// What a top-up pours, in the first system: a reading trims it, so up to half a litre, though never more than the
    /// pots give at once; without a reading what the plan was tried with.
    units::Amount one_boil(units::Volume v) const;
    units::Amount short_degrees(units::Temperature t, units::Toward toward = units::Toward::nearest) const;
    /// How long the box may be left: with no reading and no pour, no longer than the meal may wait.
    units::Duration alone() const;
    /// A span that may be left: down to a quarter of an hour; a span that must be kept: up to five minutes.
    std::string may_leave(units::Duration d) const;
    std::string must_hold(units::Duration d) const;
    std::string must_hold_tight(units::Duration d) const;
    /// A clock time, with the day of the week when the trip runs over more than one day.
    std::string clock(units::LocalTime t) const;
    std::string clock_only(units::LocalTime t) const;

    /// A figure as a key number: value, unit, and the other system in `aside` before the given text.
    KeyNumber key(std::string label, const units::Amount& amount, const std::string& aside = "") const;
    /// A temperature as a key number.
    KeyNumber key(std::string label, units::Temperature t, units::Toward toward, const std::string& aside) const;
};

}  // namespace holdwater::card
