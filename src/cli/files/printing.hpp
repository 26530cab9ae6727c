// SPDX-License-Identifier: MIT
// How decks are printed, and the way from a deck to its files in memory.
#pragma once

#include "card/content.hpp"
#include "cli/exit.hpp"
#include "cli/files/deck_files.hpp"
#include "cli/picture/preview.hpp"
#include "layout/layout.hpp"
#include "words/words.hpp"

#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace holdwater::cli {

struct PrintingOptions {
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

/// What all decks of a run are laid out with.
struct Style {
    words::Words words;
    layout::Phrases phrases;
    layout::Format format;
    layout::Sheet sheet;
    std::unique_ptr<layout::Measure> measure;
    std::string stamp;
};

/// The stamp is made from the texts of the format and the words.
using Stamping = std::function<std::string(const std::vector<std::string>& layout_texts)>;
problem::Result<Style> style_of(const std::string& language, const PrintingOptions& options, const Stamping& stamping);

/// By the word of --sides.
layout::Sides sides_from(const std::string& name);

/// What a format did without is reported.
void add_left_out(const problem::Problems& from_layout, problem::Problems& notes);

/// Imposed cards as a PDF; problems that come with it are those of draw::to_pdf.
problem::Result<std::string> cards_pdf(const std::vector<layout::CardFaces>& faces, const Style& style,
                                       const PrintingOptions& options, const std::string& title,
                                       const std::string& language);

/// The pictures that --preview asks for, none without it.
problem::Result<std::vector<Finished>> pictures_of(const std::vector<layout::CardFaces>& faces, const Style& style,
                                                   const PrintingOptions& options, const DeckFiles& deck);

/// Writes the set and prints the name of each file, and those of earlier ones that no longer hold. What went wrong is
/// reported.
Exit write_deck(const DeckFiles& deck, const std::vector<Finished>& files);
/// Names earlier files that no longer hold.
void say_superseded(const Superseded& earlier);

}  // namespace holdwater::cli
