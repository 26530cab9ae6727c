// SPDX-License-Identifier: MIT
#include "card/word_count.hpp"

#include "layout/layout.hpp"
#include "support/faces.hpp"

#include <algorithm>
#include <cctype>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <utility>

namespace holdwater::support {

std::size_t words_in(std::string text) {
    for (std::size_t at = text.find("\u00A0"); at != std::string::npos; at = text.find("\u00A0")) {
        text.replace(at, 2, " ");
    }
    static const std::regex second(R"(\(\s*[0-9 /.\-]+\s*(°F|°C|in|qt|lb|oz|L|mm|kg|g)\s*\))");
    text = std::regex_replace(text, second, "");
    static const std::set<std::string> units{"°C", "°F", "mm", "in",  "L", "qt", "kg", "g",
                                             "lb", "oz", "h",  "min", "s", "m",  "W/K"};
    static const std::regex number(R"([(*]?-?\d[\d.,:/h]*[.,:;)?]*(min)?)");
    static const std::regex day(R"(Sun|Mon|Tue|Wed|Thu|Fri|Sat)");
    std::istringstream all(text);
    std::size_t count = 0;
    bool after_number = false;
    for (std::string token; all >> token;) {
        std::string bare = token;
        while (!bare.empty() && std::string(".,:;?)").find(bare.back()) != std::string::npos) {
            bare.pop_back();
        }
        const bool letter = std::any_of(token.begin(), token.end(),
                                        [](unsigned char c) { return std::isalnum(c) != 0 || (c & 0x80u) != 0; });
        if (!letter || std::regex_match(token, day) || units.contains(bare)) {
            continue;
        }
        const bool digits = std::regex_match(token, number);
        count += digits && after_number ? 0 : 1;
        after_number = digits;
    }
    return count;
}

std::size_t words_on(const layout::Page& page) {
    std::map<std::pair<int, std::pair<int, int>>, std::string> cells;
    for (const layout::Item& item : page.items) {
        const layout::PlacedText* text = layout::as_text(item);
        if (text == nullptr || text->spot.group < 0 || text->role == layout::Role::artifact) {
            continue;
        }
        const layout::Group& group = page.groups[static_cast<std::size_t>(text->spot.group)];
        if (group.tag == layout::Tag::title && text->spot.row == 0) {
            continue;
        }
        std::string& cell = cells[{text->spot.group, {text->spot.row, text->spot.cell}}];
        cell += text->text + (text->text.ends_with("-") ? "" : " ");
    }
    std::size_t count = 0;
    for (const auto& [spot, text] : cells) {
        count += words_in(text);
    }
    return count;
}

const std::regex& other_names(const std::string& language) {
    static const std::regex english(
        R"(\b(swap|fire on|bin it|surely|germ kill|liner|anew|eat next\b|fumes|rows decide|core\b|ladder|split it|ill\b|throw out|throw away the food))",
        std::regex::icase);
    static const std::regex spanish(
        R"((\b(a punto|rollo|jaqueca|rodajas|lonchas|todo se corre|girar|gas mortal|seguro a|para el reloj|bota)\b|escalera))",
        std::regex::icase);
    static const std::regex french(
        R"((\b(noyau|poubelle|broil|lunch|vidanger|monter le feu|jeter les aliments|topper|swap)\b|échelle))",
        std::regex::icase);
    return language == "es" ? spanish : language == "fr" ? french : english;
}

}  // namespace holdwater::support
