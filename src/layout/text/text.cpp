// SPDX-License-Identifier: MIT
#include "layout/text/text.hpp"

#include "layout/style.hpp"
#include "layout/text/emphasis.hpp"
#include "layout/text/memory.hpp"

#include <algorithm>
#include <cstddef>
#include <limits>

namespace holdwater::layout {

namespace {

constexpr Millimetres rounding_mm = 1e-6_mm;  // so that a text as wide as its column fits

/// Letters on each side of a hyphen at which a line may end: "trail-crew", but not "top-up".
constexpr std::size_t least_part = 3;

std::size_t letters_from(std::string_view text, std::size_t at) {
    std::size_t count = 0;
    while (at + count < text.size() && is_letter(text[at + count])) {
        ++count;
    }
    return count;
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
    std::size_t letters = 0;  // in a row up to here
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
                if (character == "-" && letters >= least_part && letters_from(run.text, i + length) >= least_part) {
                    finish();
                }
            }
            letters = is_letter(character[0]) ? letters + 1 : 0;
            i += length;
        }
    }
    finish();
    return atoms;
}

Millimetres atoms_width(const std::vector<Atom>& atoms, std::size_t from, std::size_t to) {
    Millimetres total;
    for (std::size_t i = from; i < to; ++i) {
        total += atoms[i].width + (i + 1 < to ? atoms[i].space : 0.0_mm);
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
std::vector<std::size_t> line_starts(const std::vector<Atom>& atoms, Millimetres whole_width,
                                     Millimetres first_indent) {
    const std::size_t n = atoms.size();
    std::size_t lines = 0;
    const auto width_of = [&](std::size_t line) { return line == 0 ? whole_width - first_indent : whole_width; };
    for (std::size_t from = 0; from < n; ++lines) {
        const Millimetres width = width_of(lines);
        std::size_t to = from + 1;
        while (to < n && atoms_width(atoms, from, to + 1) <= width + rounding_mm) {
            ++to;
        }
        from = to;
    }

    constexpr double never = std::numeric_limits<double>::infinity();
    constexpr double lone_word = 4.0;    // worth as much as two empty lines
    constexpr double short_last = 0.15;  // a last line may well be short
    // cost[k][j]: the least for the first j atoms in k lines.
    std::vector<std::vector<double>> cost(lines + 1, std::vector<double>(n + 1, never));
    std::vector<std::vector<std::size_t>> start(lines + 1, std::vector<std::size_t>(n + 1, 0));
    cost[0][0] = 0.0;
    for (std::size_t k = 1; k <= lines; ++k) {
        const Millimetres width = width_of(k - 1);
        for (std::size_t to = 1; to <= n; ++to) {
            for (std::size_t from = to; from-- > 0;) {
                const Millimetres used = atoms_width(atoms, from, to);
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

TextLine line_of(std::string_view text, const TextStyle& style, const Measure& measure) {
    TextLine made{styled(text, style, measure), 0.0_mm};
    for (const auto& run : made.runs) {
        made.width += run.width;
    }
    return made;
}

std::vector<TextLine> lines_of(const std::vector<Atom>& atoms, Millimetres width, Millimetres first_indent,
                               const Measure& measure) {
    const auto starts = line_starts(atoms, width, first_indent);
    std::vector<TextLine> lines;
    for (std::size_t k = 0; k < starts.size(); ++k) {
        lines.push_back(join_atoms(atoms, starts[k], k + 1 < starts.size() ? starts[k + 1] : atoms.size(), measure));
    }
    return lines;
}

const std::vector<Atom>& atoms_in(SetText& kept, std::string_view text, const Measure& measure) {
    if (!kept.atoms) {
        kept.atoms = atoms_of(text, kept.style, measure);
    }
    return *kept.atoms;
}

}  // namespace

TextLine one_line(std::string_view text, const TextStyle& style, const Measure& measure) {
    if (measure.memory() == nullptr) {
        return line_of(text, style, measure);
    }
    SetText& kept = measure.memory()->of(text, style);
    if (!kept.line) {
        kept.line = line_of(text, style, measure);
    }
    return *kept.line;
}

std::vector<TextLine> break_lines(std::string_view text, const TextStyle& style, Millimetres width,
                                  const Measure& measure, Millimetres first_indent) {
    if (measure.memory() == nullptr) {
        return lines_of(atoms_of(text, style, measure), width, first_indent, measure);
    }
    SetText& kept = measure.memory()->of(text, style);
    const auto known = std::find_if(kept.broken.begin(), kept.broken.end(), [&](const SetText::Broken& one) {
        return one.width == width && one.first_indent == first_indent;
    });
    if (known != kept.broken.end()) {
        return known->lines;
    }
    auto lines = lines_of(atoms_in(kept, text, measure), width, first_indent, measure);
    kept.broken.push_back({width, first_indent, lines});
    return lines;
}

Millimetres widest_word(std::string_view text, const TextStyle& style, const Measure& measure) {
    const auto widest_of = [](const std::vector<Atom>& atoms) {
        Millimetres widest;
        for (const auto& atom : atoms) {
            widest = std::max(widest, atom.width);
        }
        return widest;
    };
    return measure.memory() == nullptr ? widest_of(atoms_of(text, style, measure))
                                       : widest_of(atoms_in(measure.memory()->of(text, style), text, measure));
}

std::string shortened(std::string_view text, const std::function<bool(const std::string&)>& fits) {
    std::string shown(text);
    for (std::size_t length = text.size(); !fits(shown) && length > 0;) {
        do {
            --length;
        } while (length > 0 && (static_cast<unsigned char>(text[length]) & 0xC0U) == 0x80U);
        shown = std::string(text.substr(0, length)) + "\u2026";
    }
    return shown;
}

void place(std::vector<Item>& items, const TextLine& text, Millimetres x, Millimetres baseline,
           const TextStyle& style) {
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

Fragment paragraph(std::string_view text, const TextStyle& style, Millimetres width, const Measure& measure,
                   Millimetres first_indent) {
    Fragment made;
    Millimetres baseline = ascent(style.size_pt);
    const auto lines = break_lines(text, style, width, measure, first_indent);
    Millimetres x = first_indent;
    for (const auto& one : lines) {
        place(made.items, one, x, baseline, style);
        made.too_wide = std::max(made.too_wide, x + one.width - width);
        x = 0.0_mm;
        baseline += leading(style.size_pt);
    }
    made.too_wide = made.too_wide > rounding_mm ? made.too_wide : 0.0_mm;
    made.height = lines_height(lines.size(), style.size_pt);
    return made;
}

}  // namespace holdwater::layout
