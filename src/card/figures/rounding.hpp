// SPDX-License-Identifier: MIT
// The one place where plan numbers become card numbers: each rounded to its safe side. For the lists of figures of
// trips and classes alone: a card looks its figures up there.
#pragma once

#include "card/shared/telling.hpp"
#include "units/print.hpp"

#include <string>

namespace holdwater::card {

/// A temperature as every card and the plan text print it: a whole degree of the first system, the second beside it
/// rounded up from that.
units::Amount degrees(units::Temperature t, units::System system, units::Toward toward);
/// A time at a core temperature: "2 min", "90 s".
std::string hold_time(units::Duration hold);

/// A time that must be kept, as it is printed: up to five minutes.
units::Duration to_five_minutes(units::Duration d);

/// A mass of less than a few kilograms: grams to 5, ounces to a half.
units::Amount small_mass(units::Mass mass, units::System system, units::Toward toward);

/// The step in which litres are printed: half a litre, or half a quart where the trip's first system is the US one.
units::Volume step_of_litres(units::System system);

/// Litres to that step, and to a tenth: what a pot gives, or what must be poured as it was planned.
units::Amount half_litres(units::Volume v, units::System system, units::Toward toward = units::Toward::nearest);
units::Amount tenth_litres(units::Volume v, units::System system, units::Toward toward = units::Toward::nearest);

/// How many times the kill that is asked a core has at the least: to a tenth, down.
units::Figure kill_margin(const plan::FoodPlan& food);

/// Rounds by the units of a trip and writes by a language. A figure is an Amount until it is `written`, so that the
/// language decides how it looks.
struct SafeSide : Telling {
    std::string written(const units::Amount& amount) const { return words.written(amount); }

    /// How late a pour may be: what the plan has allowed for.
    std::string latest_pour() const;

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
    /// Litres to the step above.
    units::Amount litres(units::Volume v, units::Toward toward = units::Toward::nearest) const;
    /// In the first system alone where the trip prints two: for lines that must stay short.
    units::Amount litres_short(units::Volume v, units::Toward toward = units::Toward::nearest) const;
    /// Litres to a tenth, in the first system: what a pot gives, or what must be poured as it was planned.
    units::Amount measured(units::Volume v, units::Toward toward = units::Toward::nearest) const;
    /// What a top-up pours, in the first system: a reading trims it, so up to half a litre, though never more than the
    /// pots give at once; without a reading what the plan was tried with.
    units::Amount one_boil(units::Volume v) const;
    units::Amount short_degrees(units::Temperature t, units::Toward toward = units::Toward::nearest) const;
    /// How far below the rim water must stand, as a ruler shows it, in the first system: further down rather than
    /// higher up.
    units::Amount water_line(units::Length below_rim) const;
    /// A span that may be left: down to a quarter of an hour; a span that must be kept: up to five minutes.
    std::string may_leave(units::Duration d) const;
    /// Down to 5 minutes.
    std::string read_again(units::Duration d) const;
    std::string must_hold(units::Duration d) const;
    std::string must_hold_tight(units::Duration d) const;
    /// A clock time, with the day of the week when the trip runs over more than one day.
    std::string clock(units::LocalTime t) const;
    std::string clock_only(units::LocalTime t) const;
};

}  // namespace holdwater::card
