// SPDX-License-Identifier: MIT
// The wording of cards and cautions, by key, from layouts/words/LANGUAGE.toml. Texts hold places such as {bath} that
// are filled by name.
#pragma once

#include <initializer_list>
#include <map>
#include <string>
#include <string_view>
#include <utility>

#include "problem/problem.hpp"

namespace holdwater::words {

class Words {
  public:
    /// Keys are "table.key". Errors: words-unreadable, with the place.
    static problem::Result<Words> read(std::string_view toml, const std::string& file_name);

    using Place = std::pair<std::string_view, std::string>;

    /// The text of a key with its places filled. A missing key or place is our own fault: std::logic_error.
    std::string text(std::string_view key, std::initializer_list<Place> places = {}) const;
    bool has(std::string_view key) const { return texts_.contains(key); }

    const std::map<std::string, std::string, std::less<>>& all() const { return texts_; }

  private:
    std::map<std::string, std::string, std::less<>> texts_;
};

}  // namespace holdwater::words
