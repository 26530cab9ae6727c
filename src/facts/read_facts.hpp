// SPDX-License-Identifier: MIT
// Reads and checks the facts from TOML texts: those compiled in, or those that a test hands over.
#pragma once

#include "facts/facts.hpp"
#include "problem/problem.hpp"

#include <span>
#include <string_view>

namespace holdwater::facts {

struct Document {
    std::string_view name;  // for messages
    std::string_view text;
};

/// The files of src/facts, in the order of their names.
std::span<const Document> embedded_documents();

/// All entries of all documents together, or every fault found. Each entry has exactly the keys of its kind, a source
/// that exists, a known provenance and a range that holds; keys are unique per kind; what rules and foods refer to is
/// there. Error codes: facts-toml, facts-key-unknown, facts-key-missing, facts-type, facts-name-unknown, facts-range,
/// facts-twice, facts-source-unknown, facts-reference-unknown.
problem::Result<Facts> read_facts(std::span<const Document> documents);

/// While it lives, facts() gives these instead of those compiled in: for laws that ask what another figure would do.
/// Not to be made while other threads read facts.
class FactsInForce {
  public:
    explicit FactsInForce(const Facts& other);
    ~FactsInForce();
    FactsInForce(const FactsInForce&) = delete;
    FactsInForce& operator=(const FactsInForce&) = delete;

  private:
    const Facts* before_;
};

/// 64-bit FNV-1a over names and texts, 16 hexadecimal digits.
std::string checksum_of(std::span<const Document> documents);

}  // namespace holdwater::facts
