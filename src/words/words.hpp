// SPDX-License-Identifier: MIT
// The wording of cards and cautions, by key, from layouts/words/LANGUAGE.toml. Texts hold places such as {bath} that
// are filled by name, and may hold the text of another key, {limits.name}. [language] holds what else a language
// decides: decimal mark, clock and plural rule.
#pragma once

#include "problem/problem.hpp"
#include "units/amount.hpp"
#include "words/plural.hpp"

#include <initializer_list>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace holdwater::words {

/// What fills the {place} of a text. It looks at what it is given, so it lives no longer than the call that it is made
/// for.
class Place {
  public:
    Place(std::string_view name, std::string_view text);
    Place(std::string_view name, const units::Amount& amount);
    /// The place {count} also decides between the plural forms of a text; 0 or more.
    Place(std::string_view name, int count);

  private:
    friend class Words;
    std::string_view name_;
    std::string_view text_;
    const units::Amount* amount_ = nullptr;
    std::optional<int> count_;
};

/// A text, or its plural forms by count.
struct Wording {
    std::map<Form, std::string> forms;  // never empty; `other` alone where no count decides
    problem::Place place;               // in the file
};

class Words {
  public:
    /// Keys are "table.key". Errors: words-unreadable, with the place; so is a [remark] under no known code.
    static problem::Result<Words> read(std::string_view toml, const std::string& file_name);

    /// English as it was when the program was built: the keys and places that the program knows.
    static const Words& model();

    /// The text of a key with its places filled, figures as the language writes them. A key or place that the model has
    /// not is our own fault: std::logic_error, with the file.
    std::string text(std::string_view key, std::initializer_list<Place> places = {}) const;
    /// For a key that is made at run time and of which only some have a text.
    std::optional<std::string> find(std::string_view key) const;
    bool has(std::string_view key) const { return wordings_.contains(key); }

    /// How the language writes figures, and clock times beside units of this system.
    units::Numerals numerals(units::System system) const;
    /// "2,5 L".
    std::string written(const units::Amount& amount) const { return units::written(amount, {decimal_mark_, false}); }

    /// What keeps these words from standing in for the model's: keys missing or unknown, places or plural forms that
    /// differ, settings that are none. `also` are the keys of own_sections that every language but the model's must
    /// have. Errors: words-incomplete, with the place.
    problem::Problems faults_against(const Words& model, const std::vector<std::string>& also = {}) const;

    /// True for keys of sections that only other languages than the model's have, since facts and problems bring their
    /// own English: [spread] by key, [remark] by code.
    static bool of_own_sections(std::string_view key);

    const std::map<std::string, Wording, std::less<>>& all() const { return wordings_; }
    /// The names of the {places} of a text.
    static std::set<std::string> places_of(std::string_view text);

  private:
    const std::string& form(std::string_view key, std::initializer_list<Place> places) const;

    std::map<std::string, Wording, std::less<>> wordings_;
    std::map<std::string, problem::Place, std::less<>> tables_;
    std::string file_;
    char decimal_mark_ = '.';
    PluralRule plural_ = PluralRule::one;
};

}  // namespace holdwater::words
