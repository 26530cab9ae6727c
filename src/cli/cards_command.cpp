// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <memory>

#include "card/basis.hpp"
#include "card/deck.hpp"
#include "cli/app.hpp"
#include "cli/data.hpp"
#include "cli/files.hpp"
#include "cli/preview.hpp"
#include "cli/sheets_file.hpp"
#include "cli/stamp.hpp"
#include "cli/trip_file.hpp"
#include "draw/draw.hpp"
#include "layout/layout.hpp"
#include "plan/boxes.hpp"

namespace holdwater::cli {
namespace {

struct CardsOptions {
    std::vector<std::string> trips;
    std::string out = "out";
    std::string format = "hand";
    std::string sheet = "a4";
    std::string sides = "duplex";
    std::vector<std::string> only;
    int copies = 1;
    bool preview = false;
    std::string lamp;  // "red" or empty
    bool dim = false;
};

layout::Phrases phrases_from(const words::Words& w) {
    layout::Phrases p;
    p.warning = w.text("layout.warning");
    p.caution = w.text("layout.caution");
    p.continued = w.text("layout.continued");
    p.turn_over = w.text("layout.turn-over");
    p.goes_on = w.text("layout.goes-on");
    p.of = w.text("layout.of");
    p.likely = w.text("layout.likely");
    p.range = w.text("layout.range");
    p.longer = w.text("layout.longer");
    p.sheet = w.text("layout.sheet");
    p.front = w.text("layout.front");
    p.back = w.text("layout.back");
    p.print_rule = w.text("layout.print-rule");
    p.bar_rule = w.text("layout.bar-rule");
    return p;
}

layout::Sides sides_from(const std::string& name) {
    return name == "single" ? layout::Sides::single : name == "fold" ? layout::Sides::fold : layout::Sides::duplex;
}

/// By what light the pictures show the cards.
draw::Light light_from(const CardsOptions& options, const layout::Format& format) {
    draw::Light light;
    light.red_lamp = options.lamp == "red";
    if (options.dim) {
        light.dim = dim_light(format.distance);
    }
    return light;
}

/// What all decks of a run are laid out with.
struct Style {
    words::Words words;
    layout::Format format;
    layout::Sheet sheet;
    std::string stamp;
};

problem::Result<Style> style_of(const trip::Trip& trip, const CardsOptions& options) {
    const auto words = load_words(trip.language);
    const auto format_text = layout_file("formats/" + options.format + ".toml");
    const auto sheet_text = layout_file("sheets/" + options.sheet + ".toml");
    const auto words_text = layout_file("words/" + trip.language + ".toml");
    if (!words || !format_text || !sheet_text || !words_text) {
        return !words ? words.problems() : !format_text ? format_text.problems() : sheet_text.problems();
    }
    const auto format = layout::read_format(*format_text, layout_path("formats/" + options.format + ".toml"));
    const auto sheet = layout::read_sheet(*sheet_text, layout_path("sheets/" + options.sheet + ".toml"));
    if (!format || !sheet) {
        return !format ? format.problems() : sheet.problems();
    }
    return Style{*words, *format, *sheet, stamp_of(trip, {*format_text, *words_text})};
}

/// Everything that the decks of a trip consist of, one deck a box, in memory: nothing is written before all of it is
/// right.
problem::Result<std::vector<Finished>> deck_files(const trip::Trip& trip, const std::vector<plan::Plan>& plans,
                                                  const problem::Problems& remarks, const CardsOptions& options,
                                                  const std::string& name) {
    const auto style = style_of(trip, options);
    if (!style) {
        return style.problems();
    }
    const auto measure = draw::open_measure(font_files());
    if (!measure) {
        return measure.problems();
    }
    const layout::Phrases phrases = phrases_from(style->words);
    std::vector<layout::CardFaces> faces;
    for (const plan::Plan& plan : plans) {
        const card::Deck deck = card::trip_deck(plan, style->words, style->stamp, options.only);
        const auto laid = layout::lay_out(deck, style->format, **measure, phrases);
        if (!laid) {
            return laid.problems();
        }
        faces.insert(faces.end(), laid->begin(), laid->end());
    }
    const auto pages = layout::impose(faces, style->format, style->sheet, sides_from(options.sides), options.copies,
                                      trip.name, **measure, phrases);
    if (!pages) {
        return pages.problems();
    }
    draw::PdfInfo info;
    info.title = trip.name;
    info.language = trip.language;
    info.creator = "Holdwater " + version();
    for (const layout::Page& page : *pages) {
        info.page_labels.push_back(page.name);
    }
    auto pdf = draw::to_pdf(*pages, font_files(), info);
    if (!pdf) {
        return pdf.problems();
    }
    const problem::Problems notes = pdf.problems();
    const card::Printing printing{options.format, style->format.width, style->format.height, options.sheet,
                                  options.sides};
    auto basis = sheets_pdf(card::basis(trip, plans, remarks, printing, style->words, style->stamp), style->sheet,
                            **measure, phrases);
    if (!basis) {
        return basis.problems();
    }
    std::vector<Finished> files{{fmt::format("{}/{}-cards.pdf", options.out, name), std::move(pdf).value()},
                                {fmt::format("{}/{}-basis.pdf", options.out, name), std::move(basis).value()}};
    if (options.preview) {
        const auto pictures =
            previews(faces, light_from(options, style->format), fmt::format("{}/{}", options.out, name));
        if (!pictures) {
            return pictures.problems();
        }
        files.insert(files.end(), pictures->begin(), pictures->end());
    }
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
        for (const std::string& file : supersede(options.out, name)) {
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
    Exit exit = exit_with(trip.problems());
    for (const trip::Trip& part : parts) {
        const auto plan = plan::make_plan(part);
        if (!plan) {
            return tell_refusal(part, plan.problems(), options, name);
        }
        tell(plan->notes);
        exit = worse(exit, exit_with(plan->notes));
        plans.push_back(*plan);
    }
    const auto files = deck_files(*trip, plans, trip.problems(), options, name);
    if (!files) {
        tell(files.problems());
        return Exit::our_fault;
    }
    tell(files.problems());
    exit = worse(exit, exit_with(files.problems()));
    for (const Finished& file : *files) {
        const auto written = write_file(file.path, file.bytes);
        if (!written) {
            tell(written.problems());
            return Exit::bad_input;
        }
        fmt::print("{}\n", file.path);
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
    line->add_option("--out", given->out, "folder to write into")->capture_default_str();
    line->add_option("--format", given->format, "card format")
        ->check(CLI::IsMember({"hand", "pocket", "wallet", "large"}))
        ->capture_default_str();
    line->add_option("--sheet", given->sheet, "paper")->check(CLI::IsMember({"a4", "letter"}))->capture_default_str();
    line->add_option("--sides", given->sides, "how backs are printed")
        ->check(CLI::IsMember({"duplex", "single", "fold"}))
        ->capture_default_str();
    line->add_option("--only", given->only, "only these cards, comma between")
        ->delimiter(',')
        ->check(CLI::IsMember(card::trip_cards()));
    line->add_option("--copies", given->copies, "copies of the deck")
        ->check(CLI::Range(1, 100))
        ->capture_default_str();
    CLI::Option* preview =
        line->add_flag("--preview", given->preview, "write a PNG of every card face as well, and one of all");
    line->add_option("--lamp", given->lamp, "with --preview: as seen by a lamp of this colour (a simulation)")
        ->check(CLI::IsMember({"red"}))
        ->needs(preview);
    line->add_flag("--dim", given->dim, "with --preview: as seen in a dark camp (a simulation)")->needs(preview);
    return {line, [given] { return print_decks(*given); }};
}

}  // namespace holdwater::cli
