// SPDX-License-Identifier: MIT
// The wording of cards and cautions, by key, from layouts/words/LANGUAGE.toml. Texts hold places such as {bath} that
// are filled by name. [language] holds what else a language decides: decimal mark and clock.
#pragma once

#include <initializer_list>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <utility>

#include "problem/problem.hpp"

namespace holdwater::words {

class Words {
  public:
    /// Keys are "table.key". Errors: words-unreadable, with the place; so is a [remark] under no known code.
    static problem::Result<Words> read(std::string_view toml, const std::string& file_name);

    using Place = std::pair<std::string_view, std::string>;

    /// The text of a key with its places filled. A missing key or place is our own fault: std::logic_error, with
    /// the file.
    std::string text(std::string_view key, std::initializer_list<Place> places = {}) const;
    /// What the program itself says in English, in this language: the text of [told] whose key is the English in small
    /// letters with bars between ("from memory" -> from-memory), else the English.
    std::string translated(std::string_view english) const;
    static std::string translation_key(std::string_view english);

    /// "." or ",".
    std::string decimal_mark() const { return text("language.decimal-mark"); }
    /// Clock times from 1 to 12 with am and pm; `us` where US units stand alone or first.
    bool twelve_hours(bool us) const { return text(us ? "language.clock-us" : "language.clock") == "12"; }

    /// What keeps these words from standing in for the model's: keys missing or unknown, places that differ, settings
    /// that are none. Sections that only other languages than English need (translated_only) are free.
    problem::Problems faults_against(const Words& model, const std::string& file_name) const;

    bool has(std::string_view key) const { return texts_.contains(key); }

    const std::map<std::string, std::string, std::less<>>& all() const { return texts_; }

    /// [told], [remark] by code and [spread] by key: what the program or the facts say in English where they stand.
    static bool translated_only(std::string_view key);

    /// The names of the {places} of a text, in order.
    static std::set<std::string> places_of(std::string_view text);

  private:
    std::string file_;
    std::map<std::string, std::string, std::less<>> texts_;
};

}  // namespace holdwater::words
