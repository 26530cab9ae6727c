// SPDX-License-Identifier: MIT
#include "card/class/class_deck.hpp"
#include "card/class/class_sheets.hpp"
#include "cli/commands/commands.hpp"
#include "cli/commands/common_rows.hpp"
#include "cli/commands/printing_rows.hpp"
#include "cli/files/deck_files.hpp"
#include "cli/files/files.hpp"
#include "cli/files/formats_that_do.hpp"
#include "cli/files/printing.hpp"
#include "cli/files/sheets_file.hpp"
#include "cli/files/stamp.hpp"
#include "cli/files/trip_file.hpp"
#include "cli/line/kinds.hpp"
#include "cli/line/options.hpp"
#include "trip/ranges.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace holdwater::cli {
namespace {

const OptionRow class_rules{.name = "--rules", .value = "R", .help = "whose food-safety rules", .required = true};
const OptionRow class_altitude{.name = "--altitude",
                               .value = "H",
                               .help = "where you teach, for the boiling point",
                               .by_default = "0 m",
                               .range = as_in(trip::ranges::altitude)};
const OptionRow class_thermometer{.name = "--thermometer",
                                  .value = "K",
                                  .help = "how far a thermometer may be off",
                                  .range = as_in(trip::ranges::thermometer)};
const OptionRow class_kind{.name = "--kind",
                           .value = "K",
                           .help = "food of the hold rulers, a key of `holdwater sources --foods`",
                           .example = "pork-loin",
                           .holds = Holds::food_kind};
const OptionRow class_shape{.name = "--shape",
                            .value = "S,..",
                            .help = "shapes of the hold rulers, comma between",
                            .takes = Takes::list,
                            .choices = names_of<facts::Shape>()};
const OptionRow class_units{
    .name = "--units", .value = "U", .help = "units of the cards", .choices = units::system_names()};
const OptionRow class_language{.name = "--language", .value = "L", .help = "language of the cards"};

/// As if nothing was asked for.
const card::ClassWish& usual() {
    static const card::ClassWish wish;
    return wish;
}

/// A deck without rules would be right somewhere and wrong elsewhere: nothing is taken for granted.
void read_rules(Options& options, card::ClassWish& wish) {
    if (!options.has(class_rules)) {
        options.missing(class_rules,
                        fmt::format("write it like {} {}; one of: {}", class_rules.name,
                                    facts::to_name(facts::Ruleset{}), rules_listed()),
                        "whose food-safety rules");
    }
    wish.rules = options.one_of<facts::Ruleset>(class_rules).value_or(wish.rules);
}

void read_shapes(Options& options, card::ClassWish& wish) {
    if (!options.has(class_shape)) {
        return;
    }
    wish.shapes.clear();
    for (const std::string& text : options.texts(class_shape)) {
        const auto shape = options.one_of<facts::Shape>(class_shape, text);
        if (shape && std::find(wish.shapes.begin(), wish.shapes.end(), *shape) == wish.shapes.end()) {
            wish.shapes.push_back(*shape);
        }
    }
}

void read_language(Options& options, card::ClassWish& wish) {
    const std::vector<std::string> all = languages();
    const std::string language = options.text(class_language).value_or(wish.language);
    if (std::find(all.begin(), all.end(), language) != all.end()) {
        wish.language = language;
    } else {
        options.unknown(class_language, language, {all.begin(), all.end()});
    }
}

card::ClassWish read_wish(Options& options) {
    card::ClassWish wish = usual();
    read_rules(options, wish);
    read_shapes(options, wish);
    wish.altitude = options.maybe<units::Length>(class_altitude).value_or(units::Length{0});
    wish.thermometer = options.maybe<units::TemperatureDifference>(class_thermometer)
                           .value_or(facts::facts().difference("class.thermometer"));
    wish.units = units::system_named(options.choice(class_units));
    read_language(options, wish);
    wish.kind = options.text(class_kind).value_or(wish.kind);
    if (facts::facts().find_food(wish.kind) == nullptr) {
        options.fault(class_kind.name, "kind-unknown", "\"" + wish.kind + "\" is not a known food",
                      kinds_like(wish.kind));
    }
    return wish;
}

/// All files of the class in memory: nothing is written before all of it is right.
problem::Result<std::vector<Finished>> class_files(const card::ClassFrame& frame, const Style& style,
                                                   const PrintingOptions& to, const DeckFiles& to_write) {
    const card::Deck deck = card::class_deck(frame, style.words, style.stamp, to.only);
    const auto faces = layout::lay_out(deck, style.format, *style.measure, style.phrases);
    if (!faces) {
        return with_formats_that_do(faces.problems(), to, [&](const layout::Format& other) {
            return layout::lay_out(deck, other, *style.measure, style.phrases).ok();
        });
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

Exit print_class(const card::ClassWish& wish, const PrintingOptions& printing) {
    if (const problem::Problems faults = paper_faults(printing); !faults.empty()) {
        tell(faults);
        return exit_for(faults);
    }
    auto style = style_of(wish.language, printing, [&](const std::vector<std::string>& texts) {
        return stamp_of_text(card::canonical(wish), texts);
    });
    if (!style) {
        tell(style.problems());
        return exit_for(style.problems());
    }
    const auto frame = card::ClassFrame::made(wish, style->words.text("class-deck.name"));
    if (!frame) {
        tell(frame.problems());
        return exit_for(frame.problems());
    }
    const DeckFiles deck{printing.out, "class", "sheets"};
    const auto files = class_files(**frame, *style, printing, deck);
    tell(files.problems());
    if (!files) {
        return exit_for(files.problems());
    }
    const Exit written = write_deck(deck, *files);
    return worse(exit_for(files.problems()), written);
}

Act read_class(Options& options) {
    const card::ClassWish wish = read_wish(options);
    return [wish, printing = read_printing(options)] { return print_class(wish, printing); };
}

std::string joined(const std::vector<facts::Shape>& shapes) {
    std::string all;
    for (const facts::Shape shape : shapes) {
        all += fmt::format("{}{}", all.empty() ? "" : ",", facts::to_name(shape));
    }
    return all;
}

}  // namespace

Command class_command() {
    const auto degree = units::print(facts::facts().difference("class.thermometer"), units::System::metric, {0.1});
    Command command{
        .name = "class",
        .group = headings::teaching,
        .summary = "print a deck and sheets for teaching: class-cards.pdf and class-sheets.pdf, for no trip",
        .rows = {with_rules(class_rules), class_altitude, with_default(class_thermometer, degree),
                 with_default(class_kind, usual().kind), with_default(class_shape, joined(usual().shapes)),
                 with_default(class_units, std::string(units::name_of(usual().units))),
                 with_default(class_language, usual().language)},
        .examples = {"class --rules us", "class --rules uk --altitude \"300 m\" --only hold,mix"},
        .checks = "printed, but as a plain PDF: without tags for those who hear it",
        .read = read_class};
    const auto printing = printing_rows(card::class_cards());
    command.rows.insert(command.rows.end(), printing.begin(), printing.end());
    return command;
}

}  // namespace holdwater::cli
