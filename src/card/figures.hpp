// SPDX-License-Identifier: MIT
// The one place where plan numbers become card numbers: each rounded to its safe side.
#pragma once

#include <string>

#include "card/content.hpp"
#include "plan/plan.hpp"
#include "words/words.hpp"

namespace holdwater::card {

/// What every card needs to write its figures.
struct Hand {
    const plan::Plan& plan;
    const words::Words& words;

    units::System system() const { return plan.trip->units; }

    /// A bath or core temperature that must be reached or not gone below: rounded up.
    std::string at_least(units::Temperature t) const;
    /// One that must not be passed: rounded down.
    std::string at_most(units::Temperature t) const;
    std::string about(units::Temperature t) const;
    /// Litres to half a litre.
    std::string litres(units::Volume v, units::Toward toward = units::Toward::nearest) const;
    /// Litres alone where the trip prints both systems: for lines that must stay short.
    std::string litres_short(units::Volume v, units::Toward toward = units::Toward::nearest) const;
    std::string short_degrees(units::Temperature t) const;
    /// A span that may be left: down to a quarter of an hour; a span that must be kept: up to five minutes.
    std::string may_leave(units::Duration d) const;
    std::string must_hold(units::Duration d) const;
    /// A clock time, with the day of the week when the trip runs over more than one day.
    std::string clock(units::LocalTime t) const;
    std::string clock_only(units::LocalTime t) const;

    /// A temperature as a key number: value, unit, and the other system in `aside` before the given text.
    KeyNumber key(const std::string& label, units::Temperature t, units::Toward toward, const std::string& aside) const;
};

}  // namespace holdwater::card
