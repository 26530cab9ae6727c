// SPDX-License-Identifier: MIT
#include "cli/files/printing.hpp"

#include "cli/files/data.hpp"
#include "cli/files/trip_file.hpp"
#include "draw/draw.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

namespace holdwater::cli {
namespace {

layout::Phrases phrases_from(const words::Words& w) {
    layout::Phrases p;
    p.warning = w.text("layout.warning");
    p.caution = w.text("layout.caution");
    p.continued = w.text("layout.continued");
    p.turn_over = w.text("layout.turn-over");
    p.goes_on = w.text("layout.goes-on");
    p.of = w.text("layout.of");
    p.left_out = w.text("layout.left-out");
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

/// By what light the pictures show the cards.
draw::Light light_from(const PrintingOptions& options, const layout::Format& format) {
    draw::Light light;
    light.red_lamp = options.lamp == "red";
    if (options.dim) {
        light.dim = dim_light(format.distance);
    }
    return light;
}

}  // namespace

layout::Sides sides_from(const std::string& name) {
    return name == "single" ? layout::Sides::single : name == "fold" ? layout::Sides::fold : layout::Sides::duplex;
}

problem::Result<Style> style_of(const std::string& language, const PrintingOptions& options, const Stamping& stamping) {
    const auto words = load_words(language);
    const auto format_text = layout_file("formats/" + options.format + ".toml");
    const auto sheet_text = layout_file("sheets/" + options.sheet + ".toml");
    const auto words_text = layout_file("words/" + language + ".toml");
    if (!words || !format_text || !sheet_text || !words_text) {
        return !words ? words.problems() : !format_text ? format_text.problems() : sheet_text.problems();
    }
    auto format = layout::read_format(*format_text, layout_path("formats/" + options.format + ".toml"));
    auto sheet = layout::read_sheet(*sheet_text, layout_path("sheets/" + options.sheet + ".toml"));
    if (!format || !sheet) {
        return !format ? format.problems() : sheet.problems();
    }
    layout::Format worded = *format;
    worded.mark = words->find("format." + worded.mark).value_or(worded.mark);  // "daylight" on small cards
    auto measure = draw::open_measure(font_files());
    if (!measure) {
        return measure.problems();
    }
    return Style{*words, phrases_from(*words),       worded,
                 *sheet, std::move(measure).value(), stamping({*format_text, *words_text})};
}

void add_left_out(const problem::Problems& from_layout, problem::Problems& notes) {
    std::copy_if(from_layout.begin(), from_layout.end(), std::back_inserter(notes), [](const problem::Problem& one) {
        return one.code == problem::Code("card-cut") || one.code == problem::Code("card-left-out");
    });
}

problem::Result<std::string> cards_pdf(const std::vector<layout::CardFaces>& faces, const Style& style,
                                       const PrintingOptions& options, const std::string& title,
                                       const std::string& language) {
    const auto pages = layout::impose(faces, style.format, style.sheet, sides_from(options.sides), options.copies,
                                      title, *style.measure, style.phrases);
    if (!pages) {
        return pages.problems();
    }
    draw::PdfInfo info;
    info.title = title;
    info.language = language;
    info.creator = "Holdwater " + version();
    for (const layout::Page& page : *pages) {
        info.page_labels.push_back(page.name);
    }
    return draw::to_pdf(*pages, font_files(), info);
}

problem::Result<std::vector<Finished>> pictures_of(const std::vector<layout::CardFaces>& faces, const Style& style,
                                                   const PrintingOptions& options, const DeckFiles& deck) {
    if (!options.preview) {
        return std::vector<Finished>{};
    }
    return previews(faces, light_from(options, style.format), deck);
}

Exit write_deck(const DeckFiles& deck, const std::vector<Finished>& files) {
    const auto written = put_in_place(deck, files);
    if (!written) {
        tell(written.problems());
        return exit_for(written.problems());
    }
    for (const Finished& file : files) {
        fmt::print("{}\n", file.path);
    }
    say_superseded(*written);
    return Exit::done;
}

void say_superseded(const Superseded& earlier) {
    for (const std::string& file : earlier.renamed) {
        fmt::print("earlier cards no longer hold: {}\n", file);
    }
    tell(earlier.problems);
}

}  // namespace holdwater::cli
