// SPDX-License-Identifier: MIT
#include "layout/text/name_fault.hpp"

#include "card/content.hpp"
#include "layout/style.hpp"
#include "layout/text/emphasis.hpp"
#include "layout/text/text.hpp"

#include <fmt/format.h>

#include <string>

namespace holdwater::layout {

namespace {

// In em of the bold face; tests/card/names.cpp prints names of just these widths in every format.
constexpr double widest_word_em = 10.0;
constexpr double widest_name_em = 26.0;
constexpr double letter_em = 0.6;  // of an ordinary letter: to tell a width in letters

int letters_in(double width_em) {
    return static_cast<int>(width_em / letter_em);
}

/// The first character that one of the faces lacks; empty if both have all.
std::string_view lacking(std::string_view name, const Measure& measure) {
    for (std::size_t i = 0; i < name.size();) {
        const std::string_view one = name.substr(i, character_length(name[i]));
        if (!measure.covers(one, Weight::regular) || !measure.covers(one, Weight::bold)) {
            return one;
        }
        i += one.size();
    }
    return {};
}

}  // namespace

std::optional<problem::Problem> name_fault(std::string_view name, const Measure& measure) {
    if (const std::string_view character = lacking(name, measure); !character.empty()) {
        return problem::error("name-glyph", fmt::format("the typeface of the cards has no \"{}\"", character),
                              "leave it out");
    }
    TextStyle bold;
    bold.face = Weight::bold;
    bold.quiet_units = false;
    const card::Text text = card::plain(name);
    const Millimetres one_em = em(bold.size_pt);
    if (widest_word(text, bold, measure) > widest_word_em * one_em) {
        return problem::error("name-word-wide", "a word of it is too long for a card",
                              fmt::format("about {} letters at most without a space", letters_in(widest_word_em)));
    }
    if (one_line(text, bold, measure).width > widest_name_em * one_em) {
        return problem::error("name-wide", "it is too long for a card",
                              fmt::format("about {} letters at most", letters_in(widest_name_em)));
    }
    return std::nullopt;
}

}  // namespace holdwater::layout
