// SPDX-License-Identifier: MIT
#include "cli/text/wrap.hpp"

#include <algorithm>

namespace holdwater::cli {
namespace {

std::size_t columns(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(
        text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

}  // namespace

std::string wrap(std::string_view text, std::size_t indent, std::size_t most) {
    std::string lines;
    std::size_t used = 0;  // columns of the open line; 0: none is open
    while (!text.empty()) {
        const std::size_t end = std::min(text.find(' '), text.size());
        const std::string_view word = text.substr(0, end);
        text.remove_prefix(std::min(end + 1, text.size()));
        if (word.empty()) {
            continue;
        }
        if (used > 0 && used + 1 + columns(word) > most) {
            lines += '\n';
            used = 0;
        }
        lines += used > 0 ? " " : std::string(indent, ' ');
        lines += word;
        used = (used > 0 ? used + 1 : indent) + columns(word);
    }
    return used > 0 ? lines + "\n" : lines;
}

std::string plain_spaces(std::string text) {
    constexpr std::string_view no_break = "\u00A0";
    for (std::size_t at = text.find(no_break); at != std::string::npos; at = text.find(no_break, at)) {
        text.replace(at, no_break.size(), " ");
    }
    return text;
}

}  // namespace holdwater::cli
