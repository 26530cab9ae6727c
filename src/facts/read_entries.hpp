// SPDX-License-Identifier: MIT
// Reads the entries of one document into Facts, kind by kind, and then checks what refers to what.
#pragma once

#include "facts/entry.hpp"
#include "facts/read_facts.hpp"

namespace holdwater::facts {

class FactsReader {
  public:
    explicit FactsReader(problem::Problems& problems) : problems_(problems) {}

    void read(const toml::table& document, std::string_view file);
    void check_references();
    Facts take(std::string checksum);

  private:
    using ReadOne = void (FactsReader::*)(Entry&);
    void read_all(const toml::table& document, std::string_view file, std::string_view kind, ReadOne read_one);

    void source(Entry& entry);
    void figure(Entry& entry);
    void food(Entry& entry);
    void kill_standard(Entry& entry);
    void ruleset(Entry& entry);
    void rule(Entry& entry, Ruleset ruleset);
    void spread(Entry& entry);
    void burn(Entry& entry);
    void growth_model(Entry& entry);
    void printed_pair(Entry& entry);
    void lever(Entry& entry);

    std::optional<Category> category(Entry& entry);
    void fault(problem::Code code, std::string message);
    void check_ruleset(const GeneralRules& rules);
    void need_source(std::string_view kind, std::string_view key, std::string_view source);

    problem::Problems& problems_;
    Facts facts_;
};

}  // namespace holdwater::facts
