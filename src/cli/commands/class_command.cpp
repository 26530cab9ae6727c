// SPDX-License-Identifier: MIT
#include "card/class/class_deck.hpp"
#include "card/class/class_sheets.hpp"
#include "cli/app.hpp"
#include "cli/files/deck_files.hpp"
#include "cli/files/files.hpp"
#include "cli/line/kinds.hpp"
#include "cli/files/printing.hpp"
#include "cli/files/sheets_file.hpp"
#include "cli/files/stamp.hpp"
#include "cli/line/unknown_words.hpp"
#include "cli/files/trip_file.hpp"
#include "trip/ranges.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <memory>

namespace holdwater::cli {
namespace {

struct ClassOptions {
    Given rules, altitude, thermometer, units, language, kind;
    std::vector<std::string> shapes;
    PrintingOptions printing;
};

Range as_in_trips(const trip::Range& range) {
    return {range.low, range.high, range.example};
}

/// A deck without rules would be right somewhere and wrong elsewhere: nothing is taken for granted.
void read_rules(const ClassOptions& given, Options& options, card::ClassWish& wish) {
    if (!given.rules) {
        options.fault("--rules", "option-missing", "is missing: whose food-safety rules",
                      fmt::format("write it like --rules {}; one of: {}", facts::to_name(facts::Ruleset{}),
                                  rules_listed()));
    } else if (const auto rules = choice<facts::Ruleset>(options, "--rules", given.rules)) {
        wish.rules = *rules;
    }
}

void read_shapes(const ClassOptions& given, Options& options, card::ClassWish& wish) {
    if (given.shapes.empty()) {
        return;
    }
    wish.shapes.clear();
    for (const std::string& text : given.shapes) {
        const auto shape = choice<facts::Shape>(options, "--shape", text);
        if (shape && std::find(wish.shapes.begin(), wish.shapes.end(), *shape) == wish.shapes.end()) {
            wish.shapes.push_back(*shape);
        }
    }
}

card::ClassWish wish_from(const ClassOptions& given, const CLI::App& line, Options& options) {
    tell_unknown_words(line, options);
    card::ClassWish wish;
    read_rules(given, options, wish);
    read_shapes(given, options, wish);
    wish.altitude = options.maybe<units::Length>("--altitude", given.altitude, as_in_trips(trip::ranges::altitude))
                        .value_or(units::Length{0});
    wish.thermometer = options
                           .maybe<units::TemperatureDifference>("--thermometer", given.thermometer,
                                                                as_in_trips(trip::ranges::thermometer))
                           .value_or(facts::facts().difference("class.thermometer"));
    if (given.units && known_word(options, "--units", *given.units, units::system_names())) {
        wish.units = units::system_named(*given.units);
    }
    if (given.language) {
        const std::vector<std::string> all = languages();
        if (known_word(options, "--language", *given.language, {all.begin(), all.end()})) {
            wish.language = *given.language;
        }
    }
    if (given.kind) {
        wish.kind = *given.kind;
        if (facts::facts().find_food(wish.kind) == nullptr) {
            options.fault("--kind", "kind-unknown", "\"" + wish.kind + "\" is not a known food", kinds_like(wish.kind));
        }
    }
    return wish;
}

/// All files of the class in memory: nothing is written before all of it is right.
problem::Result<std::vector<Finished>> class_files(const card::ClassFrame& frame, const Style& style,
                                                   const PrintingOptions& to, const DeckFiles& to_write) {
    const card::Deck deck = card::class_deck(frame, style.words, style.stamp, to.only);
    const auto faces = layout::lay_out(deck, style.format, *style.measure, style.phrases);
    if (!faces) {
        return faces.problems();
    }
    auto pdf = cards_pdf(*faces, style, to, deck.title, deck.language);
    if (!pdf) {
        return pdf.problems();
    }
    auto sheets =
        sheets_pdf(card::class_sheets(frame, style.words, style.stamp), style.sheet, *style.measure, style.phrases);
    if (!sheets) {
        return sheets.problems();
    }
    const auto pictures = pictures_of(*faces, style, to, to_write);
    if (!pictures) {
        return pictures.problems();
    }
    problem::Problems notes = pdf.problems();
    add_left_out(faces.problems(), notes);
    std::vector<Finished> files{{to_write.path("cards.pdf"), std::move(pdf).value()},
                                {to_write.path("sheets.pdf"), std::move(sheets).value()}};
    files.insert(files.end(), pictures->begin(), pictures->end());
    return {std::move(files), notes};
}

Exit print_class(const ClassOptions& given, const CLI::App& line) {
    Options options;
    const card::ClassWish wish = wish_from(given, line, options);
    if (!options.problems().empty()) {
        tell(options.problems());
        return Exit::bad_input;
    }
    auto style = style_of(wish.language, given.printing, [&](const std::vector<std::string>& texts) {
        return stamp_of_text(card::canonical(wish), texts);
    });
    if (!style) {
        tell(style.problems());
        return exit_for(style.problems());
    }
    // Its rulers have no table beside them to go on with.
    style.value().phrases.longer = style->words.text("class-hold.thicker");
    const auto frame = card::ClassFrame::made(wish, style->words.text("class-deck.name"));
    if (!frame) {
        tell(frame.problems());
        return exit_for(frame.problems());
    }
    const DeckFiles deck{given.printing.out, "class", "sheets"};
    const auto files = class_files(**frame, *style, given.printing, deck);
    tell(files.problems());
    if (!files) {
        return exit_for(files.problems());
    }
    const Exit written = write_deck(deck, *files);
    return worse(exit_for(files.problems()), written);
}

}  // namespace

Command add_class(CLI::App& program) {
    const auto given = std::make_shared<ClassOptions>();
    ClassOptions& to = *given;
    CLI::App* line = program.add_subcommand(
        "class", "print a deck and sheets for teaching: class-cards.pdf and class-sheets.pdf, for no trip");
    line->add_option("--rules", to.rules, "whose food-safety rules: " + rules_listed() + " (must be given)");
    line->add_option("--altitude", to.altitude, "where you teach, for the boiling point; \"0 m\" if not given");
    line->add_option("--thermometer", to.thermometer, "how far a thermometer may be off; \"1 K\" if not given");
    line->add_option("--kind", to.kind, "food of the hold rulers: pork-loin if not given; `holdwater sources --foods`");
    line->add_option("--shape", to.shapes, "shapes of the hold rulers, comma between: slab,round if not given; ball")
        ->delimiter(',');
    line->add_option("--units", to.units, "metric, us, both (if not given) or us-first");
    line->add_option("--language", to.language, "of the texts: en if not given");
    add_printing_options(*line, to.printing, card::class_cards());
    return {line, [given, line] { return print_class(*given, *line); }, true};
}

}  // namespace holdwater::cli
