// SPDX-License-Identifier: MIT
// One [[table]] of a facts file while it is read: every key is asked for by its type, whatever is missing, of the wrong
// type or left over becomes a problem with its place.
#pragma once

#include "facts/facts.hpp"
#include "problem/problem.hpp"

#include <toml++/toml.h>

#include <initializer_list>
#include <optional>
#include <set>
#include <string>
#include <string_view>

namespace holdwater::facts {

class Entry {
  public:
    Entry(const toml::table& table, std::string_view file, problem::Problems& problems)
        : table_(table), file_(file), problems_(problems) {}

    std::string text(std::string_view key);
    std::string text_or(std::string_view key, std::string otherwise);
    double number(std::string_view key);
    double number_or(std::string_view key, double otherwise);
    std::optional<double> optional_number(std::string_view key);
    bool flag_or(std::string_view key, bool otherwise);
    const toml::array* array(std::string_view key);
    const toml::table* table(std::string_view key);
    bool has(std::string_view key) const { return table_.contains(key); }

    units::Temperature celsius(std::string_view key) { return units::celsius(number(key)); }
    units::Duration seconds_or_zero(std::string_view key) { return units::seconds(number_or(key, 0.0)); }

    /// source and provenance, the two keys that every entry but a source has. Own judgement needs no source key.
    std::string source(Provenance provenance);
    Provenance provenance();

    /// Names every key that nobody asked for.
    void finish();
    void fault(problem::Code code, std::string message, std::string hint = {});
    /// "kind key" for messages.
    void name(std::string_view kind, std::string_view key);
    std::string_view file() const { return file_; }

  private:
    const toml::node* find(std::string_view key);

    const toml::table& table_;
    std::string_view file_;
    problem::Problems& problems_;
    std::string name_;
    std::set<std::string, std::less<>> asked_;
};

}  // namespace holdwater::facts
