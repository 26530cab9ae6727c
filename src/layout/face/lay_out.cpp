// SPDX-License-Identifier: MIT
#include "layout/face/flow.hpp"
#include "layout/face/left_out.hpp"
#include "layout/layout.hpp"
#include "layout/text/memory.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace holdwater::layout {

namespace {

problem::Problem caution_missing(const card::Card& card) {
    return problem::error("caution-missing", fmt::format("card {} \"{}\" has no caution", card.number, card.name),
                          "every card carries the caution that belongs to its content");
}

class DeckMaker {
  public:
    DeckMaker(const Format& format, const Measure& measure, const Phrases& phrases)
        : format_(format), measure_(measure), phrases_(phrases) {}

    /// The deck's faces, every card of it; in a format that leaves out, `deck` loses what finds no room.
    problem::Result<std::vector<CardFaces>> run(card::Deck& deck);

  private:
    /// A card's faces; none if it could not be laid out, which was then put among the problems.
    std::vector<Page> faces_of(const card::Deck& deck, const card::Card& card);

    const Format& format_;
    const Measure& measure_;
    const Phrases& phrases_;
    problem::Problems problems_;
};

std::vector<Page> DeckMaker::faces_of(const card::Deck& deck, const card::Card& card) {
    const FaceMaker maker(deck, card, format_, measure_, phrases_);
    const auto flowed = flow(card, maker, format_);
    problems_.insert(problems_.end(), flowed.problems().begin(), flowed.problems().end());
    std::vector<Page> faces;
    if (!flowed.ok()) {
        return faces;
    }
    const int count = static_cast<int>(flowed->size());
    for (int i = 0; i < count; ++i) {
        const auto& pieces = (*flowed)[static_cast<std::size_t>(i)];
        faces.push_back(maker.draw(pieces, {i, count}));
        if (const Millimetres end = maker.ruler_cut_off(pieces); end > 0.0_mm) {
            problems_.push_back(
                problem::note("ruler-cut-off", fmt::format("card {} \"{}\": the ruler ends at {:g} mm in the format {}",
                                                           card.number, card.name, end.value(), format_.name)));
        }
    }
    return faces;
}

problem::Result<std::vector<CardFaces>> DeckMaker::run(card::Deck& deck) {
    if (format_.leaves_out) {
        auto gone = leave_out(deck, format_, measure_, phrases_);
        problems_.insert(problems_.end(), gone.begin(), gone.end());
        if (problem::has_error(gone)) {
            return problems_;
        }
    }
    std::vector<CardFaces> made;
    for (const auto& card : deck.cards) {
        if (!card.cautioned()) {
            problems_.push_back(caution_missing(card));
            continue;
        }
        if (auto faces = faces_of(deck, card); !faces.empty()) {
            made.push_back({card.key, std::move(faces), card.harmless});
        }
    }
    const auto found = check_faces(made, format_, measure_);
    problems_.insert(problems_.end(), found.begin(), found.end());
    if (problem::has_error(problems_)) {
        return problems_;
    }
    return {std::move(made), std::move(problems_)};
}

}  // namespace

problem::Result<std::vector<CardFaces>> lay_out(const card::Deck& deck, const Format& format, const Measure& measure,
                                                const Phrases& phrases) {
    const CachedMeasure kept(measure);
    card::Deck printed = deck;
    return DeckMaker(format, kept, phrases).run(printed);
}

}  // namespace holdwater::layout
