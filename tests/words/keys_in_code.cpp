// SPDX-License-Identifier: MIT
// Every key that the code asks for is in the wording, its places are filled where it is asked for, and no text is left
// that nothing asks for. With the check when a file is read, no card can lack a word while it is made.
#include "support/files.hpp"
#include "words/words.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <regex>
#include <set>
#include <string>
#include <vector>

using namespace holdwater;
using words::Words;
namespace fs = std::filesystem;

namespace {

/// A call with a key as its first argument, and what the key is short for in that file.
struct Call {
    std::string file;
    std::string keys;    // the first argument
    std::string places;  // the rest; empty where there is none
};

const Words& model() {
    return Words::model();
}

/// Where the argument list that begins at `open` ends, and the commas between its arguments; strings are passed over.
std::vector<std::size_t> cuts_of(const std::string& text, std::size_t open) {
    std::vector<std::size_t> cuts{open};
    int depth = 0;
    for (std::size_t i = open; i < text.size(); ++i) {
        if (text[i] == '"') {
            for (++i; i < text.size() && text[i] != '"'; ++i) {
                i += text[i] == '\\' ? 1 : 0;
            }
        } else if (std::string("({[").find(text[i]) != std::string::npos) {
            ++depth;
        } else if (std::string(")}]").find(text[i]) != std::string::npos && --depth == 0) {
            cuts.push_back(i);
            return cuts;
        } else if (text[i] == ',' && depth == 1) {
            cuts.push_back(i);
        }
    }
    return {};
}

std::vector<Call> calls() {
    static const std::regex call(R"(\b(text|word|note|heading|warn|step|steps)\()");
    std::vector<Call> found;
    for (const auto& entry : fs::recursive_directory_iterator(fs::path(HOLDWATER_SOURCE_DIR) / "src")) {
        const std::string room = fs::relative(entry.path(), fs::path(HOLDWATER_SOURCE_DIR) / "src").begin()->string();
        if (entry.path().extension() != ".cpp" || (room != "card" && room != "cli")) {
            continue;
        }
        const std::string text = support::file_text(entry.path().string());
        const std::string name = entry.path().filename().string();
        const std::string section = name.starts_with("basis")    ? "basis."
                                    : name == "class_sheets.cpp" ? "class-sheets."
                                                                 : "";
        for (std::sregex_iterator it(text.begin(), text.end(), call); it != std::sregex_iterator{}; ++it) {
            const bool whole = (*it)[1] == "text";
            if (!whole && section.empty() && (*it)[1] != "step") {
                continue;
            }
            const auto cuts = cuts_of(text, static_cast<std::size_t>(it->position(0) + it->length(0)) - 1);
            if (cuts.size() < 2) {
                continue;
            }
            Call one;
            one.file = name;
            one.keys = text.substr(cuts[0] + 1, cuts[1] - cuts[0] - 1);
            one.places = text.substr(cuts[1], cuts.back() - cuts[1]);
            if (!whole && !section.empty()) {
                one.keys = std::regex_replace(one.keys, std::regex("\"([a-z])"), "\"" + section + "$1");
            }
            found.push_back(std::move(one));
        }
    }
    return found;
}

std::vector<std::string> literals_in(const std::string& text, const std::string& pattern) {
    const std::regex literal(pattern);
    std::vector<std::string> found;
    for (std::sregex_iterator it(text.begin(), text.end(), literal); it != std::sregex_iterator{}; ++it) {
        found.push_back((*it)[1]);
    }
    return found;
}

}  // namespace

TEST_CASE("every key that the code asks for is there, and its places are filled where it is asked for") {
    std::size_t keys = 0;
    std::size_t places = 0;
    for (const Call& call : calls()) {
        CAPTURE(call.file);
        CAPTURE(call.keys);
        for (const std::string& key : literals_in(call.keys, R"re("([a-z-]+\.[a-z0-9-]+[a-z0-9])")re")) {
            const bool begins = call.keys.find('+') != std::string::npos;  // the rest is put behind it
            const bool numbered = model().has(key + "-1");                 // KEY-1, KEY-2: as many steps as there are
            if ((begins || numbered) && !model().has(key)) {
                continue;
            }
            CAPTURE(key);
            REQUIRE(model().has(key));
            ++keys;
            // Places that come in a variable are those of a call that is looked at by itself.
            if (!call.places.empty() && call.places.find('{') == std::string::npos) {
                continue;
            }
            const auto filled = literals_in(call.places, R"re(\{"([a-z-]+)",)re");
            for (const auto& [form, text] : model().all().find(key)->second.forms) {
                for (const std::string& place : Words::places_of(text)) {
                    CAPTURE(place);
                    CHECK(std::count(filled.begin(), filled.end(), place) >= 1);
                    ++places;
                }
            }
        }
    }
    CHECK(keys > 300);
    CHECK(places > 150);
}

TEST_CASE("no text is left that nothing asks for") {
    std::string code;
    for (const auto& entry : fs::recursive_directory_iterator(fs::path(HOLDWATER_SOURCE_DIR) / "src")) {
        const auto extension = entry.path().extension();
        code += extension == ".cpp" || extension == ".hpp" ? support::file_text(entry.path().string()) : "";
    }
    std::set<std::string> literals;
    for (std::string& one : literals_in(code, R"re("([a-z][a-z0-9.-]*)(?:\{\})?")re")) {
        literals.insert(std::move(one));
    }
    const auto quoted = [&](const std::string& text) { return literals.contains(text); };
    for (const auto& [key, wording] : model().all()) {
        CAPTURE(key);
        const auto dot = key.find('.');
        const std::string section = key.substr(0, dot);
        const std::string name = key.substr(dot + 1);
        bool used = quoted(key) || quoted(name);
        // "hold.shape-" with a name behind it, "test" with 1, 2, 3 behind it, a section with a name of the facts.
        for (std::size_t end = key.find_first_of(".-"); !used && end != std::string::npos;
             end = key.find_first_of(".-", end + 1)) {
            const std::string rest = key.substr(end + 1);
            const bool numbered = std::regex_match(rest, std::regex(R"(\d+(-at)?)"));
            used =
                quoted(key.substr(0, end + 1)) ||
                (quoted(key.substr(0, end)) && code.find("\"" + key.substr(end) + "\"") != std::string::npos) ||
                (end > dot && quoted(key.substr(dot + 1, end - dot))) ||
                (numbered && end > dot && (quoted(key.substr(0, end)) || quoted(key.substr(dot + 1, end - dot - 1))));
        }
        used = used || std::set<std::string>{"category", "format", "number", "quantile", "rounding", "source"}.contains(
                           section);
        used = used || name == "name" || name == "question";
        CHECK(used);
    }
}
