// SPDX-License-Identifier: MIT
#include "layout/text.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <limits>

#include "layout/style.hpp"

namespace holdwater::layout {

namespace {

constexpr std::string_view no_break = "\u00A0";
constexpr double rounding_mm = 1e-6;  // so that a text as wide as its column fits

bool is_digit(char c) { return c >= '0' && c <= '9'; }

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

std::size_t character_length(char first) {
    const auto byte = static_cast<unsigned char>(first);
    return byte < 0x80 ? 1 : byte < 0xE0 ? 2 : byte < 0xF0 ? 3 : 4;
}

/// The unit that starts at `at`, in characters; 0 if none does.
std::size_t unit_length(std::string_view text, std::size_t at) {
    static constexpr std::array<std::string_view, 26> units = {
        "°C", "°F", "mm", "cm", "min", "kg", "mL", "lb", "oz", "qt", "gal", "in", "ft", "kW",
        "m",  "g",  "L",  "h",  "s",   "K",  "%",  "C",  "F",  "W", "cup",  "cups"};
    std::size_t best = 0;
    for (const auto unit : units) {
        const std::size_t end = at + unit.size();
        if (unit.size() > best && text.substr(at, unit.size()) == unit && (end >= text.size() || !is_letter(text[end]))) {
            best = unit.size();
        }
    }
    // "5 in the box" is no length.
    if (text.substr(at, best) == "in" && at + best < text.size() && text[at + best] == ' ') {
        return 0;
    }
    return best;
}

/// A part that no line break may enter, with what follows it.
struct Atom {
    std::vector<Run> runs;
    double width = 0.0;
    bool space_after = false;
    double space = 0.0;  // width of that space
    Run space_run;
};

void add_text(std::vector<Run>& runs, std::string_view text, Face face, double size_pt) {
    if (text.empty()) {
        return;
    }
    if (!runs.empty() && runs.back().face == face && runs.back().size_pt == size_pt) {
        runs.back().text += text;
    } else {
        runs.push_back({std::string(text), face, size_pt, 0.0});
    }
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

/// In bold, "2 h 15" is set with quiet units; "over 2 h" is one emphasis and stays whole.
void add_span(std::vector<Run>& runs, std::string_view span, bool strong, const TextStyle& style) {
    bool words = false;
    const auto marks = marks_of(span, words);
    for (const auto& mark : marks) {
        const bool quiet = strong && mark.unit && !words && style.quiet_units;
        add_text(runs, mark.character, strong && !quiet ? Face::bold : Face::regular,
                 quiet && style.unit_pt > 0.0 ? style.unit_pt : style.size_pt);
    }
}

double measure_runs(std::vector<Run>& runs, const Measure& measure) {
    double total = 0.0;
    for (auto& run : runs) {
        run.width = measure.width(run.text, run.face, run.size_pt);
        total += run.width;
    }
    return total;
}

std::vector<Atom> atoms_of(std::string_view text, const TextStyle& style, const Measure& measure) {
    std::vector<Atom> atoms;
    Atom current;
    const auto finish = [&] {
        if (!current.runs.empty()) {
            current.width = measure_runs(current.runs, measure);
            atoms.push_back(std::move(current));
        }
        current = {};
    };
    char before = ' ';
    for (const auto& run : styled(text, style, measure)) {
        for (std::size_t i = 0; i < run.text.size();) {
            const std::size_t length = character_length(run.text[i]);
            const std::string_view character = std::string_view(run.text).substr(i, length);
            if (character == " ") {
                finish();
                if (!atoms.empty()) {
                    atoms.back().space_after = true;
                    atoms.back().space = measure.width(" ", run.face, run.size_pt);
                    atoms.back().space_run = {" ", run.face, run.size_pt, atoms.back().space};
                }
            } else {
                add_text(current.runs, character, run.face, run.size_pt);
                if (character == "-" && is_letter(before)) {
                    finish();
                }
            }
            before = character[0];
            i += length;
        }
    }
    finish();
    return atoms;
}

double atoms_width(const std::vector<Atom>& atoms, std::size_t from, std::size_t to) {
    double total = 0.0;
    for (std::size_t i = from; i < to; ++i) {
        total += atoms[i].width + (i + 1 < to ? atoms[i].space : 0.0);
    }
    return total;
}

TextLine join_atoms(const std::vector<Atom>& atoms, std::size_t from, std::size_t to, const Measure& measure) {
    TextLine made;
    for (std::size_t i = from; i < to; ++i) {
        for (const auto& run : atoms[i].runs) {
            add_text(made.runs, run.text, run.face, run.size_pt);
        }
        if (atoms[i].space_after && i + 1 < to) {
            add_text(made.runs, " ", atoms[i].space_run.face, atoms[i].space_run.size_pt);
        }
    }
    made.width = measure_runs(made.runs, measure);
    return made;
}

/// Where lines start, in as few lines as can be; among those the evenest.
std::vector<std::size_t> line_starts(const std::vector<Atom>& atoms, double width) {
    const std::size_t n = atoms.size();
    std::size_t lines = 0;
    for (std::size_t from = 0; from < n; ++lines) {
        std::size_t to = from + 1;
        while (to < n && atoms_width(atoms, from, to + 1) <= width + rounding_mm) {
            ++to;
        }
        from = to;
    }

    constexpr double never = std::numeric_limits<double>::infinity();
    constexpr double lone_word = 4.0;     // worth as much as two empty lines
    constexpr double short_last = 0.15;   // a last line may well be short
    // cost[k][j]: the least for the first j atoms in k lines.
    std::vector<std::vector<double>> cost(lines + 1, std::vector<double>(n + 1, never));
    std::vector<std::vector<std::size_t>> start(lines + 1, std::vector<std::size_t>(n + 1, 0));
    cost[0][0] = 0.0;
    for (std::size_t k = 1; k <= lines; ++k) {
        for (std::size_t to = 1; to <= n; ++to) {
            for (std::size_t from = to; from-- > 0;) {
                const double used = atoms_width(atoms, from, to);
                if (used > width + rounding_mm && to - from > 1) {
                    break;
                }
                const double slack = std::max(0.0, (width - used) / width);
                const bool last = to == n;
                const double price =
                    slack * slack * (last ? short_last : 1.0) + (last && lines > 1 && to - from == 1 ? lone_word : 0.0);
                if (cost[k - 1][from] + price < cost[k][to]) {
                    cost[k][to] = cost[k - 1][from] + price;
                    start[k][to] = from;
                }
            }
        }
    }
    std::vector<std::size_t> starts(lines, 0);
    std::size_t to = n;
    for (std::size_t k = lines; k > 0; --k) {
        starts[k - 1] = start[k][to];
        to = starts[k - 1];
    }
    return starts;
}

}  // namespace

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

std::vector<Run> styled(std::string_view raw, const TextStyle& style, const Measure& measure) {
    const std::string text = join_units(raw);
    std::size_t stars = static_cast<std::size_t>(std::count(text.begin(), text.end(), '*'));
    stars -= stars % 2;  // one without a partner is an asterisk
    std::vector<Run> runs;
    bool strong = style.face == Face::bold;
    std::string_view rest = text;
    while (!rest.empty()) {
        const std::size_t end = stars > 0 ? rest.find('*') : std::string_view::npos;
        add_span(runs, rest.substr(0, end), strong, style);
        if (end == std::string_view::npos) {
            break;
        }
        --stars;
        strong = style.face == Face::bold || !strong;
        rest.remove_prefix(end + 1);
    }
    measure_runs(runs, measure);
    return runs;
}

TextLine one_line(std::string_view text, const TextStyle& style, const Measure& measure) {
    TextLine made{styled(text, style, measure), 0.0};
    for (const auto& run : made.runs) {
        made.width += run.width;
    }
    return made;
}

std::vector<TextLine> break_lines(std::string_view text, const TextStyle& style, double width, const Measure& measure) {
    const auto atoms = atoms_of(text, style, measure);
    const auto starts = line_starts(atoms, width);
    std::vector<TextLine> lines;
    for (std::size_t k = 0; k < starts.size(); ++k) {
        lines.push_back(join_atoms(atoms, starts[k], k + 1 < starts.size() ? starts[k + 1] : atoms.size(), measure));
    }
    return lines;
}

double widest_word(std::string_view text, const TextStyle& style, const Measure& measure) {
    double widest = 0.0;
    for (const auto& atom : atoms_of(text, style, measure)) {
        widest = std::max(widest, atom.width);
    }
    return widest;
}

void place(std::vector<Item>& items, const TextLine& text, double x, double baseline, const TextStyle& style) {
    for (const auto& run : text.runs) {
        PlacedText placed;
        placed.x = x;
        placed.baseline = baseline;
        placed.size_pt = run.size_pt;
        placed.face = run.face;
        placed.grey = style.grey;
        placed.role = style.role;
        placed.width = run.width;
        // On the page the no-break space has done its work; a plain one is found by searching.
        for (std::size_t i = 0; i < run.text.size(); ++i) {
            if (run.text.compare(i, no_break.size(), no_break) == 0) {
                placed.text += ' ';
                i += no_break.size() - 1;
            } else {
                placed.text += run.text[i];
            }
        }
        items.emplace_back(std::move(placed));
        x += run.width;
    }
}

Fragment paragraph(std::string_view text, const TextStyle& style, double width, const Measure& measure) {
    Fragment made;
    double baseline = ascent(style.size_pt);
    const auto lines = break_lines(text, style, width, measure);
    for (const auto& one : lines) {
        place(made.items, one, 0.0, baseline, style);
        made.too_wide = std::max(made.too_wide, one.width - width);
        baseline += leading(style.size_pt);
    }
    made.too_wide = made.too_wide > rounding_mm ? made.too_wide : 0.0;
    made.height = lines_height(lines.size(), style.size_pt);
    return made;
}

}  // namespace holdwater::layout
