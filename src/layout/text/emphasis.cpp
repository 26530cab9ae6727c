// SPDX-License-Identifier: MIT
#include "layout/text/emphasis.hpp"

#include <array>
#include <utility>

namespace holdwater::layout {

namespace {

/// The unit that starts at `at`, in characters; 0 if none does.
std::size_t unit_length(std::string_view text, std::size_t at) {
    static constexpr std::array<std::string_view, 26> units = {"°C", "°F",  "mm", "cm", "min", "kg", "mL",  "lb",  "oz",
                                                               "qt", "gal", "in", "ft", "kW",  "m",  "g",   "L",   "h",
                                                               "s",  "K",   "%",  "C",  "F",   "W",  "cup", "cups"};
    std::size_t best = 0;
    for (const auto unit : units) {
        const std::size_t end = at + unit.size();
        if (unit.size() > best && text.substr(at, unit.size()) == unit &&
            (end >= text.size() || !is_letter(text[end]))) {
            best = unit.size();
        }
    }
    // "5 in the box" is no length.
    if (text.substr(at, best) == "in" && at + best < text.size() && text[at + best] == ' ') {
        return 0;
    }
    return best;
}

/// A span of one emphasis, cut into its characters with what each is.
struct Mark {
    std::string_view character;
    bool unit = false;  // part of a unit after a number
};

/// Marks the units in a span. `words` tells whether it also holds letters that are none.
std::vector<Mark> marks_of(std::string_view span, bool& words) {
    std::vector<Mark> marks;
    bool in_number = false;
    bool in_unit = false;
    bool after_unit = false;
    words = false;
    for (std::size_t i = 0; i < span.size(); i += marks.back().character.size()) {
        const std::string_view character = span.substr(i, character_length(span[i]));
        after_unit = in_unit && character == no_break;  // the space of "2 h" + " " + "15" is the unit's
        const bool mark_of_number = character == "," || character == ".";
        if (character == no_break && in_number) {
            in_number = false;
            in_unit = true;
        } else if (is_digit(span[i])) {
            in_number = true;
            in_unit = false;
        } else if (character == " " || character == no_break || mark_of_number) {
            in_number = in_number && mark_of_number;
            in_unit = false;
        } else if (!in_unit) {
            in_number = in_number && !is_letter(span[i]);  // "1/2" and "20-30" stay numbers
            words = words || is_letter(span[i]);
        }
        marks.push_back({character, in_unit || after_unit});
    }
    return marks;
}

/// In bold, "2 h 15" and "71 °C (160 °F)" are set with quiet units and asides; "over 2 h" is one emphasis and stays
/// whole.
void add_span(std::vector<TextRun>& runs, std::string_view span, bool strong, const TextStyle& style) {
    bool words = false;
    bool aside = false;  // in brackets: the same in other units
    const auto marks = marks_of(span, words);
    for (const auto& mark : marks) {
        aside = aside || mark.character == "(";
        const bool quiet = strong && !words && style.quiet_units && (mark.unit || aside);
        const bool small = quiet && mark.unit && !aside && style.unit_pt > 0.0_pt;
        add_text(runs, mark.character, strong && !quiet ? Weight::bold : Weight::regular,
                 small ? style.unit_pt : style.size_pt);
        aside = aside && mark.character != ")";
    }
}

/// What stands between the asterisks that mark emphasis, which is on in every second span. One without a partner is an
/// asterisk.
std::vector<std::string> spans_of(std::string_view text) {
    std::vector<std::string> spans(1);
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool plain = text[i] == '\\' && i + 1 < text.size() && (text[i + 1] == '*' || text[i + 1] == '\\');
        if (text[i] == '*') {
            spans.emplace_back();
        } else {
            i += plain ? 1 : 0;
            spans.back() += text[i];
        }
    }
    if (spans.size() % 2 == 0) {
        const std::string last = std::move(spans.back());
        spans.pop_back();
        spans.back() += "*" + last;
    }
    return spans;
}

}  // namespace

std::size_t character_length(char first) {
    const auto byte = static_cast<unsigned char>(first);
    return byte < 0x80 ? 1 : byte < 0xE0 ? 2 : byte < 0xF0 ? 3 : 4;
}

void add_text(std::vector<TextRun>& runs, std::string_view text, Weight face, Points size_pt) {
    if (text.empty()) {
        return;
    }
    if (!runs.empty() && runs.back().face == face && runs.back().size_pt == size_pt) {
        runs.back().text += text;
    } else {
        runs.push_back({std::string(text), face, size_pt, {}});
    }
}

Millimetres measure_runs(std::vector<TextRun>& runs, const Measure& measure) {
    Millimetres total;
    for (auto& run : runs) {
        run.width = measure.width(run.text, run.face, run.size_pt);
        total += run.width;
    }
    return total;
}

std::string join_units(std::string_view text) {
    std::string made;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] == ' ' && i > 0 && is_digit(text[i - 1]) && unit_length(text, i + 1) > 0) {
            made += no_break;
        } else {
            made += text[i];
        }
    }
    return made;
}

std::string unmarked(std::string_view text) {
    std::string all;
    for (const std::string& span : spans_of(text)) {
        all += span;
    }
    return all;
}

std::vector<TextRun> styled(std::string_view raw, const TextStyle& style, const Measure& measure) {
    std::vector<TextRun> runs;
    bool strong = style.face == Weight::bold;
    for (const std::string& span : spans_of(join_units(raw))) {
        add_span(runs, span, strong, style);
        strong = style.face == Weight::bold || !strong;
    }
    measure_runs(runs, measure);
    return runs;
}

}  // namespace holdwater::layout
