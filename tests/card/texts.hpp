// SPDX-License-Identifier: MIT
// Decks of the trips whose texts differ on cards.
#pragma once

#include "card/trip/deck.hpp"
#include "plan/result/plan.hpp"
#include "support/card_texts.hpp"
#include "trip/trip.hpp"

#include <memory>
#include <string>
#include <vector>

namespace holdwater::support {

/// A trip and its plan, which points into it.
struct Planned {
    trip::Trip trip;
    plan::Plan plan;
    explicit Planned(trip::Trip trip);
    Planned(const Planned&) = delete;
    Planned& operator=(const Planned&) = delete;
};

/// A trip with its plan and deck. The same trip is planned once in a test program, in whatever units and language; only
/// while another Dealt of it lives is it planned again.
struct Dealt {
  private:
    std::shared_ptr<Planned> planned_;

  public:
    const trip::Trip& trip;
    const plan::Plan& plan;
    card::Deck deck;
    explicit Dealt(const std::string& path);
    explicit Dealt(const trip::Trip& trip);
    Dealt(const Dealt&) = delete;
    Dealt& operator=(const Dealt&) = delete;

    /// The same plan on cards of another system or language.
    void deal(units::System system, const std::string& language);

    const card::Card& card(const std::string& key) const;
    bool reads() const { return trip.boxes.front().thermometer.has_value(); }
};

/// All but English that have a word file.
std::vector<std::string> other_languages();

/// Paths, from the top of the tree, of all trips with a deck: the demos and those of tests/card/trips.
std::vector<std::string> trip_paths();

/// The printed pairs of a deck as {°C, °F}, of running text, key numbers and table heads with °F in their first row.
std::vector<std::pair<int, int>> pairs_of(const card::Deck& deck);

}  // namespace holdwater::support
