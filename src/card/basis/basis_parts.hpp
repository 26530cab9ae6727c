// SPDX-License-Identifier: MIT
// The parts of the basis sheets, one function each; basis.cpp puts them in order.
#pragma once

#include "card/basis/basis.hpp"
#include "facts/facts.hpp"

#include <initializer_list>

namespace holdwater::card {

class BasisMaker {
  public:
    BasisMaker(const trip::Trip& trip, const std::vector<plan::Plan>& plans, const problem::Problems& remarks,
               const Printing& printing, const words::Words& words, std::string stamp)
        : trip_(trip), plans_(plans), remarks_(remarks), printing_(printing), words_(words), stamp_(std::move(stamp)) {}

    SheetBlocks all();

  private:
    using Places = std::initializer_list<words::Place>;

    void verdict();
    void inputs();
    void model();
    void numbers();
    void assumed();
    void spreads();
    void cooling();
    void hand();
    void sources();
    void print();
    void film();
    void strips();

    void readings(const plan::Plan& plan);
    Steps print_steps() const;

    /// The text of a key of [basis].
    Text word(const std::string& key, Places places = {}) const { return words_.text("basis." + key, places); }
    template <class One>
    void put(One block) {
        blocks_.add(std::move(block));
    }
    void heading(const std::string& key) { put(Heading{word(key)}); }
    void note(const std::string& key, Places places = {}) { put(Note{word(key, places)}); }

    const trip::Trip& trip_;
    const std::vector<plan::Plan>& plans_;
    const problem::Problems& remarks_;
    const Printing& printing_;
    const words::Words& words_;
    std::string stamp_;
    SheetBlocks blocks_;
};

/// A trip as it was understood: a table for each of its parts, named as in the trip file.
std::vector<Table> trip_tables(const trip::Trip& trip, const words::Words& words);

/// Every source that the numbers of these plans rest on, with how far it was seen and what rests on it.
Table source_table(const trip::Trip& trip, const std::vector<plan::Plan>& plans, const words::Words& words);

/// "read", "from memory": how far a figure's source was seen.
Text provenance_text(facts::Provenance provenance, const words::Words& words);

/// What a dip can and cannot tell: from touch to sting and burn; and which baths a sting speaks for.
std::vector<Table> hand_tables(const trip::Trip& trip, const words::Words& words);

}  // namespace holdwater::card
