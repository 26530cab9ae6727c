// SPDX-License-Identifier: MIT
#include "cli/files/trip_deck.hpp"

#include "card/basis/basis.hpp"
#include "card/trip/deck.hpp"
#include "cli/files/deck_files.hpp"
#include "cli/files/files.hpp"
#include "cli/files/formats_that_do.hpp"
#include "cli/files/progress.hpp"
#include "cli/files/sheets_file.hpp"
#include "cli/files/stamp.hpp"
#include "cli/files/trip_file.hpp"
#include "layout/layout.hpp"
#include "plan/result/boxes.hpp"
#include "plan/result/effort.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace holdwater::cli {
namespace {

/// What exists instead of a card that this trip's deck has not.
std::string instead_of(const std::string& card, const trip::Trip& trip) {
    if (card == "reading" && !trip.boxes.front().thermometer) {
        return "no thermometer: what to do stands on the cards plan, trouble and touch";
    }
    if (card == "night") {
        return "nobody sleeps while food is in the bath: with a thermometer, see reading";
    }
    return "plan, which every deck has";
}

/// One for each card that was asked for and that the deck has not; an error if none is left.
problem::Problems not_in_deck(const card::Deck& deck, const std::vector<std::string>& only, const trip::Trip& trip) {
    problem::Problems problems;
    for (const std::string& key : only) {
        if (std::any_of(deck.cards.begin(), deck.cards.end(),
                        [&key](const card::Card& one) { return one.key == key; })) {
            continue;
        }
        const std::string what = fmt::format("this trip's deck has no card {}", key);
        problems.push_back(deck.cards.empty() ? problem::error("card-left-out", what, instead_of(key, trip))
                                              : problem::note("card-left-out", what, instead_of(key, trip)));
    }
    return problems;
}

/// Everything that the decks of a trip consist of, one deck a box, in memory: nothing is written before all of it is
/// right.
problem::Result<std::vector<Finished>> deck_files(const trip::Trip& trip, const std::vector<plan::Plan>& plans,
                                                  const problem::Problems& remarks, const PrintingOptions& to,
                                                  const DeckFiles& to_write) {
    const auto style =
        style_of(trip.language, to, [&](const std::vector<std::string>& texts) { return stamp_of(trip, texts); });
    if (!style) {
        return style.problems();
    }
    std::vector<layout::CardFaces> faces;
    problem::Problems notes;
    for (const plan::Plan& plan : plans) {
        const card::Deck deck = card::trip_deck(plan, style->words, style->stamp, to.only);
        const problem::Problems missing = not_in_deck(deck, to.only, trip);
        if (problem::has_error(missing)) {
            return missing;
        }
        notes.insert(notes.end(), missing.begin(), missing.end());
        const auto laid = layout::lay_out(deck, style->format, *style->measure, style->phrases);
        if (!laid) {
            return with_formats_that_do(laid.problems(), to, [&](const layout::Format& other) {
                return layout::lay_out(deck, other, *style->measure, style->phrases).ok();
            });
        }
        faces.insert(faces.end(), laid->begin(), laid->end());
        add_left_out(laid.problems(), notes);
    }
    auto pdf = cards_pdf(faces, *style, to, trip.name, trip.language);
    if (!pdf) {
        return pdf.problems();
    }
    notes.insert(notes.end(), pdf.problems().begin(), pdf.problems().end());
    const card::Printing printing{to.format, style->format.width.value(), style->format.height.value(), to.sheet,
                                  to.sides};
    auto basis = sheets_pdf(card::basis(trip, plans, remarks, printing, style->words, style->stamp), style->sheet,
                            *style->measure, style->phrases);
    if (!basis) {
        return basis.problems();
    }
    for (const problem::Problem& note : basis.problems()) {
        // What both files have to say is said once.
        if (std::none_of(notes.begin(), notes.end(), [&](const auto& said) { return said.code == note.code; })) {
            notes.push_back(note);
        }
    }
    const auto pictures = pictures_of(faces, *style, to, to_write);
    if (!pictures) {
        return pictures.problems();
    }
    std::vector<Finished> files{{to_write.path("cards.pdf"), std::move(pdf).value()},
                                {to_write.path("basis.pdf"), std::move(basis).value()}};
    files.insert(files.end(), pictures->begin(), pictures->end());
    return {std::move(files), notes};
}

DeckFiles deck_of(const std::string& trip_path, const PrintingOptions& to) {
    return {to.out, stem_of(trip_path), "basis"};
}

/// There are no cards, and earlier ones no longer hold: these are renamed before anything is said, since nothing that
/// happens to the words may keep them valid.
Exit without_cards(const trip::Trip& trip, const problem::Problems& problems, const DeckFiles& deck) {
    const Superseded earlier = supersede(deck);
    const Exit exit = exit_for(problems);
    for (const problem::Problem& p : problems) {
        if (p.severity == problem::Severity::error) {
            tell({p});
        } else {
            fmt::print("{}\n", problem::to_line(p));
        }
    }
    fmt::print("{}: {}\n", trip.name, exit == Exit::refused ? "refused, no cards" : "no cards, an input is wrong");
    say_superseded(earlier);
    return exit;
}

}  // namespace

Exit print_trip_deck(const std::string& path, const PrintingOptions& to) {
    const auto trip = load_trip(path);
    tell(trip.problems());
    if (!trip) {
        return exit_for(trip.problems());
    }
    const DeckFiles deck = deck_of(path, to);
    const std::vector<trip::Trip> parts = plan::one_trip_a_box(*trip);  // the plans point into them
    std::vector<plan::Plan> plans;
    Exit exit = exit_for(trip.problems());
    for (const trip::Trip& part : parts) {
        plan::Effort effort;
        effort.ways = false;  // no card prints them
        const auto plan = [&] {
            const Progress waiting(true);
            return plan::make_plan(part, effort);
        }();
        if (!plan) {
            return without_cards(part, plan.problems(), deck);
        }
        tell(plan->notes);
        exit = worse(exit, exit_for(plan->notes));
        plans.push_back(*plan);
    }
    plan::share_latest_fire(plans);
    const auto files = deck_files(*trip, plans, trip.problems(), to, deck);
    if (!files) {
        tell(files.problems());
        return exit_for(files.problems());
    }
    tell(files.problems());
    exit = worse(exit, exit_for(files.problems()));
    return worse(exit, write_deck(deck, *files));
}

}  // namespace holdwater::cli
