// SPDX-License-Identifier: MIT
#include "layout/face/flow.hpp"
#include "layout/layout.hpp"

#include <fmt/format.h>

#include <utility>

namespace holdwater::layout {

problem::Result<std::vector<CardFaces>> lay_out(const card::Deck& deck, const Format& format, const Measure& measure,
                                                const Phrases& phrases) {
    std::vector<CardFaces> made;
    problem::Problems problems;
    for (const auto& card : deck.cards) {
        if (card.cautions.empty()) {
            problems.push_back(problem::error("caution-missing",
                                              fmt::format("card {} \"{}\" has no caution", card.number, card.name),
                                              "every card carries the caution that belongs to its content"));
            continue;
        }
        const FaceMaker maker(deck, card, format, measure, phrases);
        auto faces = flow(card, maker, format);
        problems.insert(problems.end(), faces.problems().begin(), faces.problems().end());
        if (!faces.ok()) {
            continue;
        }
        CardFaces one{card.key, {}};
        const int count = static_cast<int>(faces->size());
        for (int i = 0; i < count; ++i) {
            const auto& pieces = (*faces)[static_cast<std::size_t>(i)];
            one.faces.push_back(maker.draw(pieces, {i, count}));
            if (const double end = maker.ruler_cut_off(pieces); end > 0.0) {
                problems.push_back(problem::note(
                    "ruler-cut-off", fmt::format("card {} \"{}\": the ruler ends at {:g} mm in the format {}",
                                                 card.number, card.name, end, format.name)));
            }
        }
        made.push_back(std::move(one));
    }
    const auto found = check_faces(made, format, measure);
    problems.insert(problems.end(), found.begin(), found.end());
    if (problem::has_error(problems)) {
        return problems;
    }
    return {std::move(made), std::move(problems)};
}

}  // namespace holdwater::layout
