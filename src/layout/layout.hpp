// SPDX-License-Identifier: MIT
// Content + formats -> card faces -> imposed sheets, checked for fit and legibility before anything is drawn.
#pragma once

#include "card/content.hpp"
#include "layout/page.hpp"
#include "layout/text/measure.hpp"
#include "problem/problem.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace holdwater::layout {

/// A card format, from layouts/formats/NAME.toml.
struct Format {
    std::string name;  // "hand"
    Millimetres width;
    Millimetres height;
    Millimetres margin = 4.0_mm;      // quiet zone at every cut
    Millimetres distance = 450.0_mm;  // at which it must be read
    Points body_pt = 10.0_pt;
    Points figure_pt = 11.0_pt;  // cautions and table figures
    Points key_pt = 28.0_pt;     // key number
    Points heading_pt = 12.0_pt;
    Points small_pt = 7.5_pt;      // footer only
    Points key_max_pt = 44.0_pt;   // the key number grows up to this where its face has room
    Points question_pt = 14.0_pt;  // the card's question
    std::string mark;              // "daylight", printed at the head; may be empty
    bool compact = false;     // a small card: a warning has a black tag in its first line instead of a bar above it
    bool leaves_out = false;  // a card that finds no room is left out and named, instead of being an error
};

/// A sheet, from layouts/sheets/NAME.toml.
struct Sheet {
    std::string name;  // "a4"
    Millimetres width;
    Millimetres height;
    Millimetres margin_sides = 5.0_mm;
    Millimetres margin_top = 5.0_mm;
    Millimetres margin_bottom = 8.0_mm;
};

enum class Sides { duplex, single, fold };

/// The few words that layout itself prints; the reader of layouts/words fills them in other languages.
struct Phrases {
    std::string warning = "WARNING";
    std::string caution = "CAUTION";
    std::string continued = "continued";
    std::string turn_over = "turn over";
    std::string goes_on = "goes on:";  // before "2 of 3"
    std::string of = "of";
    std::string left_out = "Not in this size: card";  // before the numbers of the cards that found no room
    std::string likely = "likely";
    std::string range = "possible";
    std::string second = "computed";  // the other line, the readings and the gaps of a curve
    std::string reading = "reading";
    std::string no_reading = "no reading";
    std::string longer = "longer: use the table";  // where a ruler ends before its last tick
    std::string sheet = "sheet";
    std::string front = "front";
    std::string back = "back";
    std::string print_rule = "Print at 100 %, no scaling.";
    std::string bar_rule = "If this bar is not 50 mm (2 in: thin mark) long, do not use the rulers.";
};

problem::Result<Format> read_format(std::string_view toml, const std::string& file_name);
problem::Result<Sheet> read_sheet(std::string_view toml, const std::string& file_name);

/// The faces of one card, at card size: [0] the face, [1] the back, further pairs if it goes on.
struct CardFaces {
    std::string key;
    std::vector<Page> faces;
    bool harmless = false;  // needs no caution: else one stands on one of its faces
};

/// Errors: block-too-tall (names card, block and by how many mm), glyph-missing, and every finding of check_faces. A
/// format that leaves out does so instead, with notes card-cut and card-left-out, and the error nothing-fits.
problem::Result<std::vector<CardFaces>> lay_out(const card::Deck& deck, const Format& format, const Measure& measure,
                                                const Phrases& phrases = {});

/// The checks of size, contrast and fit on finished faces (layouts/formats); empty = fine.
problem::Problems check_faces(const std::vector<CardFaces>& cards, const Format& format, const Measure& measure);

/// Sheets in print order (front, back, front, back, ... for duplex). Back columns are mirrored for long-edge duplex. A
/// card whose back is empty leaves it blank. `copies` of the whole deck. Error: sheet-too-small.
problem::Result<std::vector<Page>> impose(const std::vector<CardFaces>& cards, const Format& format, const Sheet& sheet,
                                          Sides sides, int copies, const std::string& title, const Measure& measure,
                                          const Phrases& phrases = {});

/// Plain sheets, as many as the content needs: body text and tables in the sizes of `type`, whose margin is the least
/// distance of text from the edge of the paper; strips one beside the other and as long as the sheet allows. A heading
/// stays with what follows it, a table goes on with its head repeated. Errors: block-too-tall, block-too-wide,
/// strip-too-wide, strip-crowded, not-for-sheets, and every finding of check_sheets.
problem::Result<std::vector<Page>> lay_out_sheets(const card::Sheets& sheets, const Format& type, const Sheet& sheet,
                                                  const Measure& measure, const Phrases& phrases = {});

/// The checks of finished plain sheets: as check_faces, with the printer's margins instead of cuts; empty = fine.
problem::Problems check_sheets(const std::vector<Page>& pages, const Format& type, const Sheet& sheet,
                               const Measure& measure);

/// Every face of a deck, small, on one page of the given width: a picture for a README or an overview.
Page contact_sheet(const std::vector<CardFaces>& cards, int columns, Millimetres width);

}  // namespace holdwater::layout
