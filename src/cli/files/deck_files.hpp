// SPDX-License-Identifier: MIT
// The files of a deck as one set: all of them are of one plan, or none is there.
#pragma once

#include "cli/files/files.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace holdwater::cli {

/// NAME-cards.pdf, NAME-BESIDE.pdf, NAME-card-1.png and so on, NAME-card-sheet.png, all in one folder.
struct DeckFiles {
    std::string folder;
    std::string name;
    std::string beside;  // "basis" or "sheets"

    std::string path(std::string_view rest) const;  // "cards.pdf"
    /// The name of a file, without its folder, that a run for this deck may have written. A deck whose name only begins
    /// alike has other files.
    bool own(std::string_view file) const;
};

/// Earlier files of a deck and what became of them.
struct Superseded {
    std::vector<std::string> renamed;  // the new names, *.superseded
    problem::Problems problems;        // file-unwritable: still under its old name
};

/// Renames every earlier file of the deck to *.superseded, and removes what killed runs left behind.
Superseded supersede(const DeckFiles& deck);

/// Writes the whole set under temporary names, takes the earlier set away, and renames the new one into place: a run
/// that is killed meanwhile leaves no new file beside an old one, and no cards without the rest of their set. Earlier
/// files that the new set does not replace become *.superseded and are given back. Errors: file-unwritable; the earlier
/// set is then as it was.
problem::Result<Superseded> put_in_place(const DeckFiles& deck, const std::vector<Finished>& files);

}  // namespace holdwater::cli
