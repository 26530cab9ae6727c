// SPDX-License-Identifier: MIT
#include "words/words.hpp"

#include "units/toml_bounds.hpp"

#include <fmt/format.h>
#include <toml++/toml.h>

#include <algorithm>
#include <cctype>
#include <stdexcept>

namespace holdwater::words {
namespace {

problem::Problem at(const std::string& file, const toml::source_region& where, std::string message,
                    std::string hint = "a word file holds [table] key = \"text\"") {
    problem::Problem fault = problem::error("words-unreadable", std::move(message), std::move(hint));
    fault.place = problem::Place{file, static_cast<int>(where.begin.line), static_cast<int>(where.begin.column)};
    return fault;
}

}  // namespace

problem::Result<Words> Words::read(std::string_view toml_text, const std::string& file_name) {
    Words words;
    words.file_ = file_name;
    problem::Problems problems;
    if (auto beyond = units::beyond_toml_bounds(toml_text, file_name)) {
        beyond->code = "words-unreadable";
        return *std::move(beyond);
    }
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
                if (table_key.str() == "remark" && !problem::Code::named(key.str())) {
                    problems.push_back(at(file_name, key.source(),
                                          fmt::format("no remark has the code {}", key.str()), "leave it out"));
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
        throw std::logic_error(file_ + ": no wording for " + std::string(key));
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
            throw std::logic_error(file_ + ": nothing fills {" + std::string(name) + "} in " + std::string(key));
        }
        rest.remove_prefix(close + 1);
    }
}

std::string Words::translation_key(std::string_view english) {
    std::string key;
    for (const char c : english) {
        const bool plain = std::isalnum(static_cast<unsigned char>(c)) != 0 && static_cast<unsigned char>(c) < 0x80;
        if (plain) {
            key += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
        } else if (!key.empty() && key.back() != '-') {
            key += '-';
        }
    }
    return key.ends_with('-') ? key.substr(0, key.size() - 1) : key;
}

std::string Words::translated(std::string_view english) const {
    const std::string key = "told." + translation_key(english);
    return has(key) ? text(key) : std::string(english);
}

bool Words::translated_only(std::string_view key) {
    return key.starts_with("told.") || key.starts_with("remark.") || key.starts_with("spread.");
}

std::set<std::string> Words::places_of(std::string_view text) {
    std::set<std::string> names;
    for (auto open = text.find('{'); open != std::string_view::npos; open = text.find('{', open + 1)) {
        const auto close = text.find('}', open);
        if (close == std::string_view::npos) {
            break;
        }
        names.emplace(text.substr(open + 1, close - open - 1));
    }
    return names;
}

problem::Problems Words::faults_against(const Words& model, const std::string& file_name) const {
    problem::Problems faults;
    const auto fault = [&](std::string message, std::string hint) {
        faults.push_back(problem::error("words-incomplete", std::move(message), std::move(hint)));
        faults.back().place = problem::Place{file_name, 0, 0};
    };
    for (const auto& [key, text] : model.all()) {
        const auto own = texts_.find(key);
        if (own == texts_.end()) {
            fault("no wording for " + key, "\"" + text + "\" in English");
        } else if (!key.starts_with("language.") && places_of(own->second) != places_of(text)) {
            fault("other {places} in " + key + " than in English", "\"" + text + "\" in English");
        }
    }
    for (const auto& [key, text] : texts_) {
        if (!model.has(key) && !translated_only(key)) {
            fault("no card has the words " + key, "leave them out");
        }
    }
    const auto one_of = [&](const std::string& key, std::initializer_list<std::string_view> known) {
        const auto own = texts_.find(key);
        if (own != texts_.end() && std::find(known.begin(), known.end(), own->second) == known.end()) {
            fault(key + " is \"" + own->second + "\"", "\"" + std::string(*known.begin()) + "\" or \"" +
                                                             std::string(*(known.end() - 1)) + "\"");
        }
    };
    one_of("language.decimal-mark", {".", ","});
    one_of("language.clock", {"24", "12"});
    one_of("language.clock-us", {"24", "12"});
    return faults;
}

}  // namespace holdwater::words
