// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <memory>

#include "card/basis/basis.hpp"
#include "card/trip/deck.hpp"
#include "cli/app.hpp"
#include "cli/files/files.hpp"
#include "cli/files/printing.hpp"
#include "cli/files/sheets_file.hpp"
#include "cli/files/stamp.hpp"
#include "cli/files/trip_file.hpp"
#include "layout/layout.hpp"
#include "plan/result/boxes.hpp"

namespace holdwater::cli {
namespace {

struct CardsOptions {
    std::vector<std::string> trips;
    PrintingOptions printing;
};

/// Everything that the decks of a trip consist of, one deck a box, in memory: nothing is written before all of it is
/// right.
problem::Result<std::vector<Finished>> deck_files(const trip::Trip& trip, const std::vector<plan::Plan>& plans,
                                                  const problem::Problems& remarks, const CardsOptions& options,
                                                  const std::string& name) {
    const PrintingOptions& to = options.printing;
    const auto style = style_of(trip.language, to, [&](const std::vector<std::string>& texts) {
        return stamp_of(trip, texts);
    });
    if (!style) {
        return style.problems();
    }
    std::vector<layout::CardFaces> faces;
    for (const plan::Plan& plan : plans) {
        const card::Deck deck = card::trip_deck(plan, style->words, style->stamp, to.only);
        const auto laid = layout::lay_out(deck, style->format, *style->measure, style->phrases);
        if (!laid) {
            return laid.problems();
        }
        faces.insert(faces.end(), laid->begin(), laid->end());
    }
    auto pdf = cards_pdf(faces, *style, to, trip.name, trip.language);
    if (!pdf) {
        return pdf.problems();
    }
    problem::Problems notes = pdf.problems();
    const card::Printing printing{to.format, style->format.width, style->format.height, to.sheet, to.sides};
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
    const auto pictures = pictures_of(faces, *style, to, fmt::format("{}/{}", to.out, name));
    if (!pictures) {
        return pictures.problems();
    }
    std::vector<Finished> files{{fmt::format("{}/{}-cards.pdf", to.out, name), std::move(pdf).value()},
                                {fmt::format("{}/{}-basis.pdf", to.out, name), std::move(basis).value()}};
    files.insert(files.end(), pictures->begin(), pictures->end());
    return {std::move(files), notes};
}

/// Says why there are no cards, and that earlier ones no longer hold.
Exit tell_refusal(const trip::Trip& trip, const problem::Problems& problems, const CardsOptions& options,
                  const std::string& name) {
    const Exit exit = exit_for(problems);
    for (const problem::Problem& p : problems) {
        fmt::print(p.severity == problem::Severity::error ? stderr : stdout, "{}\n", problem::to_line(p));
    }
    if (exit == Exit::refused) {
        fmt::print("{}: refused, no cards\n", trip.name);
        for (const std::string& file : supersede(options.printing.out, name)) {
            fmt::print("earlier cards no longer hold: {}\n", file);
        }
    }
    return exit;
}

Exit one_trip(const std::string& path, const CardsOptions& options) {
    const auto trip = load_trip(path);
    tell(trip.problems());
    if (!trip) {
        return Exit::bad_input;
    }
    const std::string name = stem_of(path);
    const std::vector<trip::Trip> parts = plan::one_trip_a_box(*trip);  // the plans point into them
    std::vector<plan::Plan> plans;
    Exit exit = exit_for(trip.problems());
    for (const trip::Trip& part : parts) {
        const auto plan = plan::make_plan(part);
        if (!plan) {
            return tell_refusal(part, plan.problems(), options, name);
        }
        tell(plan->notes);
        exit = worse(exit, exit_for(plan->notes));
        plans.push_back(*plan);
    }
    plan::share_latest_fire(plans);
    const auto files = deck_files(*trip, plans, trip.problems(), options, name);
    if (!files) {
        tell(files.problems());
        return exit_for(files.problems());
    }
    tell(files.problems());
    exit = worse(exit, exit_for(files.problems()));
    if (!write_all(*files)) {
        return Exit::bad_input;
    }
    return exit;
}

Exit print_decks(const CardsOptions& options) {
    Exit worst = Exit::done;
    for (const std::string& path : options.trips) {
        worst = worse(worst, one_trip(path, options));
    }
    return worst;
}

}  // namespace

Command add_cards(CLI::App& program) {
    const auto given = std::make_shared<CardsOptions>();
    CLI::App* line = program.add_subcommand("cards", "print the deck of a trip and what stands behind it (PDF, with --preview PNG too)");
    line->add_option("TRIP", given->trips, "trip files")->required();
    add_printing_options(*line, given->printing, card::trip_cards());
    return {line, [given] { return print_decks(*given); }};
}

}  // namespace holdwater::cli
