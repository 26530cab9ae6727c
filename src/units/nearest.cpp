// SPDX-License-Identifier: MIT
#include "units/nearest.hpp"

#include <algorithm>
#include <vector>

namespace holdwater::units {
namespace {

char lower(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

/// Number of single-character insertions, deletions and replacements between two words, case ignored.
std::size_t edit_distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) {
        row[j] = j;
    }
    for (std::size_t i = 1; i <= a.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t above = row[j];
            const std::size_t replaced = diagonal + (lower(a[i - 1]) == lower(b[j - 1]) ? 0 : 1);
            row[j] = std::min({above + 1, row[j - 1] + 1, replaced});
            diagonal = above;
        }
    }
    return row[b.size()];
}

/// Where in `text` it stands, case ignored; npos if nowhere.
std::size_t place_of(std::string_view word, std::string_view text) {
    const auto found = std::search(text.begin(), text.end(), word.begin(), word.end(),
                                   [](char a, char b) { return lower(a) == lower(b); });
    return found == text.end() ? std::string_view::npos : static_cast<std::size_t>(found - text.begin());
}

}  // namespace

std::optional<std::string_view> nearest(std::string_view word, std::span<const std::string_view> known) {
    std::optional<std::string_view> best;
    std::size_t smallest = std::max<std::size_t>(1, (word.size() + 2) / 3) + 1;
    for (const std::string_view candidate : known) {
        const std::size_t distance = edit_distance(word, candidate);
        if (distance < smallest) {
            smallest = distance;
            best = candidate;
        }
    }
    return best;
}

std::vector<std::string_view> containing(std::string_view word, std::span<const std::string_view> known) {
    std::vector<std::string_view> found;
    for (const bool at_start : {true, false}) {
        for (const std::string_view one : known) {
            const std::size_t at = word.empty() ? std::string_view::npos : place_of(word, one);
            if (at != std::string_view::npos && (at == 0) == at_start) {
                found.push_back(one);
            }
        }
    }
    return found;
}

}  // namespace holdwater::units
