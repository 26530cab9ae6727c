// SPDX-License-Identifier: MIT
// Every entry of the facts as text, for `sources`.
#pragma once

#include "facts/facts.hpp"

#include <string>
#include <vector>

namespace holdwater::cli {

struct SourceEntry {
    std::string heading;  // entries of one heading stand together
    std::string title;    // key, value, unit and range
    std::string detail;   // what it means
    std::string source;   // key of a source; empty for a source itself
    facts::Provenance provenance = facts::Provenance::read;
};

std::vector<SourceEntry> food_entries();
std::vector<SourceEntry> rule_entries();   // rules, then kill rows
std::vector<SourceEntry> other_entries();  // growth, burns, spreads, levers, figures
std::vector<SourceEntry> work_entries();   // the works themselves

}  // namespace holdwater::cli
