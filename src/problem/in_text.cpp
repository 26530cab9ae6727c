// SPDX-License-Identifier: MIT
#include "problem/in_text.hpp"

namespace holdwater::problem {
namespace {

bool starts_letter(char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
}

}  // namespace

Place place_in(std::string_view text, std::size_t byte, const std::string& file_name) {
    Place place{file_name, 1, 1};
    for (const char c : text.substr(0, byte)) {
        if (c == '\n') {
            ++place.line;
            place.column = 1;
        } else if (starts_letter(c)) {
            ++place.column;
        }
    }
    return place;
}

std::string one_line(std::string_view text) {
    std::string line{text};
    for (char& c : line) {
        const auto byte = static_cast<unsigned char>(c);
        if (byte < 0x20 || byte == 0x7f) {
            c = '?';
        }
    }
    return line;
}

std::string quoted(std::string_view text, std::size_t letters) {
    std::size_t seen = 0;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (starts_letter(text[i]) && ++seen > letters) {
            return one_line(text.substr(0, i)) + "...";
        }
    }
    return one_line(text);
}

}  // namespace holdwater::problem
