// SPDX-License-Identifier: MIT
#include "layout/face/left_out.hpp"

#include "layout/face/flow.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace holdwater::layout {

namespace {

bool is_drawing(const card::Block& block) {
    return std::holds_alternative<card::DayBar>(block) || std::holds_alternative<card::Curve>(block) ||
           std::holds_alternative<card::Ruler>(block) || std::holds_alternative<card::Drawings>(block) ||
           std::holds_alternative<card::Staircase>(block) || std::holds_alternative<card::Bands>(block);
}

/// The card without its drawing at this place among the blocks; what is said of a ruler's use goes with it.
card::Card without(card::Card card, std::size_t drawing) {
    const auto at = card.blocks.begin() + static_cast<std::ptrdiff_t>(drawing);
    auto end = at + 1;
    while (std::holds_alternative<card::Ruler>(*at) && end != card.blocks.end() &&
           std::holds_alternative<card::Note>(*end)) {
        ++end;
    }
    card.blocks.erase(at, end);
    return card;
}

bool has_words(const card::Card& card) {
    return std::any_of(card.blocks.begin(), card.blocks.end(),
                       [](const auto& block) { return !std::holds_alternative<card::Turn>(block); });
}

class Leaving {
  public:
    Leaving(card::Deck& deck, const Format& format, const Measure& measure, const Phrases& phrases)
        : deck_(deck), format_(format), measure_(measure), phrases_(phrases), footer_(deck.footer) {}

    problem::Problems run();

  private:
    bool fits(const card::Card& card) const;
    /// True if the card fits now, without the drawings that it may do without.
    bool trim(card::Card& card);
    void name_in_the_foot();

    card::Deck& deck_;
    const Format& format_;
    const Measure& measure_;
    const Phrases& phrases_;
    std::string footer_;  // without what is said of cards left out
    std::vector<std::string> gone_;
    problem::Problems notes_;
};

bool Leaving::fits(const card::Card& card) const {
    return flow(card, FaceMaker(deck_, card, format_, measure_, phrases_), format_).ok();
}

bool Leaving::trim(card::Card& card) {
    if (fits(card)) {
        return true;
    }
    card::Card trial = card;
    std::vector<std::string> cut;
    for (std::size_t i = card.blocks.size(); i-- > 0;) {
        if (!is_drawing(card.blocks[i])) {
            continue;
        }
        // Only a drawing that has no room even on a face of its own.
        card::Card alone = card;
        alone.blocks = {card.blocks[i]};
        if (!fits(alone)) {
            cut.insert(cut.begin(), block_name(card.blocks[i]));
            trial = without(std::move(trial), i);
        }
    }
    if (cut.empty() || !has_words(trial) || !fits(trial)) {
        return false;
    }
    for (const std::string& drawing : cut) {
        notes_.push_back(
            problem::note("card-cut", fmt::format("card {} \"{}\" is printed without the {}, which finds no room in "
                                                  "the format {}",
                                                  card.number, card.name, drawing, format_.name)));
    }
    card = std::move(trial);
    return true;
}

void Leaving::name_in_the_foot() {
    std::string numbers;
    for (const std::string& one : gone_) {
        numbers += (numbers.empty() ? "" : ", ") + one;
    }
    deck_.footer = gone_.empty() ? footer_ : phrases_.left_out + " " + numbers + ". " + footer_;
}

problem::Problems Leaving::run() {
    // A longer foot may drive out one more card, which makes it longer again; it ends, since cards only go.
    for (bool again = true; again;) {
        again = false;
        for (auto card = deck_.cards.begin(); card != deck_.cards.end();) {
            if (!card->cautioned() || trim(*card)) {  // a card without its caution is refused elsewhere
                ++card;
                continue;
            }
            notes_.push_back(problem::note("card-left-out",
                                           fmt::format("card {} \"{}\" finds no room in the format {} and is left out",
                                                       card->number, card->name, format_.name),
                                           "print it in a larger format as well"));
            gone_.push_back(std::to_string(card->number));
            card = deck_.cards.erase(card);
            again = true;
        }
        name_in_the_foot();
    }
    if (deck_.cards.empty() && !gone_.empty()) {
        notes_.push_back(problem::error("nothing-fits",
                                        fmt::format("none of the cards finds room in the format {}", format_.name),
                                        "take a larger format"));
    }
    return std::move(notes_);
}

}  // namespace

problem::Problems leave_out(card::Deck& deck, const Format& format, const Measure& measure, const Phrases& phrases) {
    return Leaving(deck, format, measure, phrases).run();
}

}  // namespace holdwater::layout
