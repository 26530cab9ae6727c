// SPDX-License-Identifier: MIT
#include "words/words.hpp"

#include <toml++/toml.h>

#include <stdexcept>

namespace holdwater::words {
namespace {

problem::Problem at(const std::string& file, const toml::source_region& where, std::string message) {
    problem::Problem fault = problem::error("words-unreadable", std::move(message), "a word file holds [table] key = \"text\"");
    fault.place = problem::Place{file, static_cast<int>(where.begin.line), static_cast<int>(where.begin.column)};
    return fault;
}

}  // namespace

problem::Result<Words> Words::read(std::string_view toml_text, const std::string& file_name) {
    Words words;
    problem::Problems problems;
    try {
        const toml::table root = toml::parse(toml_text, std::string_view{file_name});
        for (const auto& [table_key, node] : root) {
            const toml::table* table = node.as_table();
            if (table == nullptr) {
                problems.push_back(at(file_name, node.source(), "a key outside a table"));
                continue;
            }
            for (const auto& [key, value] : *table) {
                const auto text = value.value<std::string>();
                if (!text) {
                    problems.push_back(at(file_name, value.source(), "a word that is not a text"));
                    continue;
                }
                words.texts_.emplace(std::string(table_key.str()) + "." + std::string(key.str()), *text);
            }
        }
    } catch (const toml::parse_error& fault) {
        problems.push_back(at(file_name, fault.source(), std::string(fault.description())));
    }
    if (!problems.empty()) {
        return problems;
    }
    return words;
}

std::string Words::text(std::string_view key, std::initializer_list<Place> places) const {
    const auto found = texts_.find(key);
    if (found == texts_.end()) {
        throw std::logic_error("no wording for " + std::string(key));
    }
    std::string filled;
    std::string_view rest = found->second;
    while (true) {
        const auto open = rest.find('{');
        const auto close = rest.find('}', open);
        if (open == std::string_view::npos || close == std::string_view::npos) {
            return filled.append(rest);
        }
        filled.append(rest.substr(0, open));
        const std::string_view name = rest.substr(open + 1, close - open - 1);
        bool known = false;
        for (const Place& place : places) {
            if (place.first == name) {
                filled.append(place.second);
                known = true;
            }
        }
        if (!known) {
            throw std::logic_error("nothing fills {" + std::string(name) + "} in " + std::string(key));
        }
        rest.remove_prefix(close + 1);
    }
}

}  // namespace holdwater::words
