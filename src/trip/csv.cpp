// SPDX-License-Identifier: MIT
#include "trip/csv.hpp"

#include "problem/bounds.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace holdwater::trip {
namespace {

constexpr std::string_view blank = " \t";

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(blank);
    return first == std::string_view::npos ? std::string_view{}
                                           : text.substr(first, text.find_last_not_of(blank) - first + 1);
}

/// The column of a byte, in letters.
int letter_at(std::string_view line, std::size_t byte) {
    return static_cast<int>(letters_in(line.substr(0, byte))) + 1;
}

/// Reads one cell from `at` on and moves `at` to its comma or to the end; nothing for an open quote or for text
/// behind a closing one.
std::optional<CsvCell> cell_at(std::string_view line, std::size_t& at) {
    std::size_t start = line.find_first_not_of(blank, at);
    if (start == std::string_view::npos) {
        start = line.size();
    }
    CsvCell cell{{}, letter_at(line, start)};
    if (start >= line.size() || line[start] != '"') {
        const auto comma = std::min(line.find(',', at), line.size());
        cell.text = trimmed(line.substr(at, comma - at));
        at = comma;
        return cell;
    }
    for (std::size_t i = start + 1; i < line.size(); ++i) {
        if (line[i] != '"') {
            cell.text += line[i];
        } else if (i + 1 < line.size() && line[i + 1] == '"') {
            cell.text += '"';
            ++i;
        } else {
            at = std::min(line.find_first_not_of(blank, i + 1), line.size());
            const bool ends = at == line.size() || line[at] == ',';
            return ends ? std::optional(cell) : std::nullopt;
        }
    }
    return std::nullopt;
}

}  // namespace

std::vector<CsvRow> split_csv(std::string_view text, Report& report) {
    if (text.starts_with("\xEF\xBB\xBF")) {
        text.remove_prefix(3);
    }
    std::vector<CsvRow> rows;
    int number = 0;
    while (!text.empty()) {
        ++number;
        const auto end = std::min(text.find('\n'), text.size());
        std::string_view line = text.substr(0, end);
        text.remove_prefix(std::min(end + 1, text.size()));
        if (line.ends_with('\r')) {
            line.remove_suffix(1);
        }
        if (trimmed(line).empty() || trimmed(line).front() == '#') {
            continue;
        }
        if (rows.size() == bounds::log_rows) {
            report.error(report.place(number, 1), "file-too-big", "there are too many rows from here on",
                         fmt::format("at most {}", bounds::log_rows));
            rows.push_back({number, {}});
            return rows;
        }
        CsvRow row{number, {}};
        std::size_t at = 0;
        bool good = true;
        while (good) {
            const std::size_t begin = at;
            if (row.cells.size() == bounds::log_columns) {
                report.error(report.place(number, letter_at(line, begin)), "csv-width",
                             "there are too many cells from here on", fmt::format("at most {}", bounds::log_columns));
                good = false;
                break;
            }
            const auto cell = cell_at(line, at);
            if (!cell) {
                report.error(report.place(number, letter_at(line, begin)), "csv-quotes",
                             "a quotation mark is not closed, or text follows it",
                             "\"like this\"; a quotation mark inside is written twice");
                good = false;
                break;
            }
            row.cells.push_back(*cell);
            if (at >= line.size()) {
                break;
            }
            ++at;  // the comma
        }
        if (good) {
            rows.push_back(std::move(row));
        } else if (rows.empty()) {
            return rows;  // without its header a log says nothing
        }
    }
    return rows;
}

}  // namespace holdwater::trip
