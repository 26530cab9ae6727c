// SPDX-License-Identifier: MIT
// Facts under which hold times take a quarter of the work: for tests that ask what cards say and where it stands.
#pragma once

#include "facts/read_facts.hpp"

#include <stdexcept>
#include <string>
#include <vector>

namespace holdwater::support {

/// The facts, but that a hold time is worked out from 64 ways in which all may turn out. To be put in force while a
/// plan or a frame is made (facts::FactsInForce); they last as long as the program, since plans point into them.
inline const facts::Facts& facts_of_few_ways() {
    static const facts::Facts few = [] {
        const std::string key = "key = \"hold.points\"\n";
        const std::string fewer = "value = 64\nunit = \"1\"\nlow = 64\n";
        std::vector<facts::Document> documents;
        std::vector<std::string> texts;
        texts.reserve(facts::embedded_documents().size());  // documents look into them
        bool found = false;
        for (const facts::Document& document : facts::embedded_documents()) {
            std::string& text = texts.emplace_back(document.text);
            if (const auto at = text.find(key); at != std::string::npos) {
                const auto from = at + key.size();
                const auto high = text.find("high = ", from);
                text.replace(from, high - from, fewer);
                found = true;
            }
            documents.push_back({document.name, text});
        }
        auto read = facts::read_facts(documents);
        if (!found || !read) {
            throw std::logic_error("hold.points does not stand in the facts as looked for");
        }
        return std::move(read).value();
    }();
    return few;
}

}  // namespace holdwater::support
