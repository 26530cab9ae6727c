// SPDX-License-Identifier: MIT
// The list of all figures that a deck prints. It is made before the cards, once for a plan and its words; cards,
// terminal, JSON and basis sheet look up in it, by card, key and number, what they print. So no two of them can differ.
#pragma once

#include "card/content.hpp"
#include "card/figures/number.hpp"
#include "card/shared/telling.hpp"

#include <deque>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace holdwater::card {

/// Which of several figures of one key: the nth, from 1, or that of a name that the user gave; and where one key has
/// figures in two units, in which.
struct Which {
    std::optional<int> nth;
    std::string_view of;
    std::optional<ValueUnit> unit;

    Which() = default;
    Which(int number) : nth(number) {}
    Which(std::optional<int> number, std::string_view name) : nth(number), of(name) {}
    Which in(ValueUnit one) const {
        Which which = *this;
        which.unit = one;
        return which;
    }
};

/// A figure with all that it may be printed as.
struct Figure {
    CardNumber number;
    std::optional<units::Amount> amount;     // in all systems of the trip; of a quantity that has a unit or is a number
    std::optional<units::LocalTime> moment;  // of a clock time
    Text brief;                              // where there is room for one system, or the day goes without saying
    std::string brief_name;                  // its name so: "read_floor_short_c", "act_clock_3_h"
    bool stands_briefly = false;             // on its card, as `brief`
};

/// An amount as a key number: value, unit, and the other system in `aside` before the given text.
KeyNumber key_number(const words::Words& words, Text label, const units::Amount& amount, const Text& aside = "");

class CardFigures;

class FigureList {
  public:
    explicit FigureList(const Telling& telling) : telling_(telling) {}

    const Telling& telling() const { return telling_; }

    /// A figure under a name that it does not have yet; std::logic_error else.
    void add(std::string_view card, std::string_view key, const Which& which, Figure figure);

    /// The figures of one card, for that card: what it looks up stands on it.
    CardFigures on(std::string_view card);
    /// For whatever prints them besides the card.
    CardFigures of(std::string_view card) const;

    /// Those that one acts on, and those of the others that stand on a card; a figure that stands there briefly too is
    /// told once more as it is printed there.
    std::vector<CardNumber> numbers() const;

  private:
    friend class CardFigures;
    /// Where it is among the figures. Two in different units, of which `which` names none, are std::logic_error.
    std::optional<std::size_t> find(std::string_view card, std::string_view key, const Which& which) const;

    Telling telling_;
    std::deque<Figure> figures_;
    std::map<std::string, std::vector<std::size_t>, std::less<>> by_name_;
};

/// Looks up the figures of one card. All of these throw std::logic_error, with the name, for a figure that is not
/// there: a card that asks for one that nobody made is our own fault, and prints nothing.
class CardFigures {
  public:
    /// As it is printed: "71 °C (160 °F)", "Thu 16:00", "2 h 15".
    const Text& operator()(std::string_view key, const Which& which = {}) const;
    /// In the first of two systems; a clock time without its day.
    const Text& brief(std::string_view key, const Which& which = {}) const;
    /// In all systems of the trip, also where its card has room for one: for the terminal.
    Text full(std::string_view key, const Which& which = {}) const;
    /// A whole number.
    int count(std::string_view key, const Which& which = {}) const;
    units::LocalTime moment(std::string_view key, const Which& which = {}) const;
    /// As a key number: value, unit, and the other system in `aside` before the given text.
    KeyNumber key(Text label, std::string_view key, const Which& which = {}, const Text& aside = "") const;

    bool has(std::string_view key, const Which& which = {}) const;
    /// The figure itself; it does not stand on the card by that.
    const Figure& look_at(std::string_view key, const Which& which = {}) const;

    std::string_view card() const { return card_; }

  private:
    friend class FigureList;
    CardFigures(const FigureList& list, FigureList* notes, std::string_view card)
        : list_(list), notes_(notes), card_(card) {}
    std::size_t place_of(std::string_view key, const Which& which) const;
    const Figure& standing(std::string_view key, const Which& which, bool briefly = false) const;

    const FigureList& list_;
    FigureList* notes_;  // where it is noted what stands on the card; nullptr: nowhere
    std::string_view card_;
};

}  // namespace holdwater::card
