// SPDX-License-Identifier: MIT
// A plan with the figures of its cards in the program's own English: what a card prints too is looked up there, so that
// terminal and card cannot differ.
#pragma once

#include "card/figures/numbers.hpp"

#include <string>
#include <string_view>

namespace holdwater::cli {

/// "Sat 16:30".
std::string day_time(units::LocalTime t);

class Told {
  public:
    explicit Told(const plan::Plan& plan);

    const plan::Plan& plan;

    const card::Telling& telling() const { return figures_.telling(); }
    bool reads() const { return telling().reads(); }
    card::CardFigures of(std::string_view card) const { return figures_.of(card); }

    /// In all systems of the trip.
    std::string operator()(std::string_view card, std::string_view key, const card::Which& which = {}) const;
    std::string when(std::string_view card, std::string_view key, const card::Which& which = {}) const;
    /// Without its day.
    std::string clock(std::string_view card, std::string_view key, const card::Which& which = {}) const;
    units::LocalTime moment(std::string_view card, std::string_view key, const card::Which& which = {}) const;
    bool has(std::string_view card, std::string_view key, const card::Which& which = {}) const;
    /// " for 3 min", where a time is asked for.
    std::string for_hold(std::string_view card, std::string_view key, const card::Which& which = {}) const;

  private:
    card::FigureList figures_;
};

}  // namespace holdwater::cli
