// SPDX-License-Identifier: MIT
#include "trip/read_log.hpp"

#include "problem/bounds.hpp"
#include "trip/csv.hpp"
#include "trip/log_cells.hpp"
#include "trip/ranges.hpp"
#include "units/nearest.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace holdwater::trip {
namespace {

constexpr std::string_view header_due = "such as time_hhmm,bath_c,outside_c,note";

/// The places of the columns in a row; -1 where the log does not keep one.
struct Columns {
    TimeKind time_kind = TimeKind::minutes;
    int time = -1;
    int bath = -1, outside = -1, core = -1, note = -1;
    bool bath_f = false, outside_f = false, core_f = false;
};

struct Heading {
    std::string_view text;
    int Columns::*index;
    bool Columns::*fahrenheit;  // null where it has no unit
    bool is_f;
};

constexpr std::array headings{Heading{"bath_c", &Columns::bath, &Columns::bath_f, false},
                              Heading{"bath_f", &Columns::bath, &Columns::bath_f, true},
                              Heading{"outside_c", &Columns::outside, &Columns::outside_f, false},
                              Heading{"outside_f", &Columns::outside, &Columns::outside_f, true},
                              Heading{"core_c", &Columns::core, &Columns::core_f, false},
                              Heading{"core_f", &Columns::core, &Columns::core_f, true},
                              Heading{"note", &Columns::note, nullptr, false}};
constexpr std::array<std::string_view, 10> all_headings = {"time_min",  "time_hhmm", "time",   "bath_c", "bath_f",
                                                           "outside_c", "outside_f", "core_c", "core_f", "note"};

std::optional<TimeKind> time_heading(std::string_view text) {
    if (text == "time_min") {
        return TimeKind::minutes;
    }
    if (text == "time_hhmm") {
        return TimeKind::clock;
    }
    return text == "time" ? std::optional(TimeKind::moment) : std::nullopt;
}

void put_heading(const CsvCell& cell, int index, problem::Place place, Columns& columns, Report& report) {
    const auto twice = [&] {
        report.error(place, "column-twice", fmt::format("\"{}\" is a second column of its kind", quoted(cell.text)),
                     "one time, one bath, at most one outside, core and note");
    };
    if (const auto kind = time_heading(cell.text)) {
        if (columns.time >= 0) {
            twice();
        }
        columns.time = index;
        columns.time_kind = *kind;
        return;
    }
    for (const Heading& heading : headings) {
        if (heading.text == cell.text) {
            if (columns.*heading.index >= 0) {
                twice();
            }
            columns.*heading.index = index;
            if (heading.fahrenheit != nullptr) {
                columns.*heading.fahrenheit = heading.is_f;
            }
            return;
        }
    }
    const auto near = units::nearest(quoted(cell.text), all_headings);
    report.error(
        std::move(place), "column-unknown", fmt::format("a log has no column \"{}\"", quoted(cell.text)),
        near ? fmt::format("did you mean \"{}\"?", *near) : fmt::format("it has: {}", fmt::join(all_headings, ", ")));
}

std::optional<Columns> read_header(const CsvRow& row, Report& report) {
    const problem::Place whole = report.place(row.line, 1);
    if (row.cells.size() == 1 && row.cells[0].text.find_first_of(";\t") != std::string::npos) {
        report.error(whole, "csv-separator", "the columns are not separated by commas", header_due);
        return std::nullopt;
    }
    Columns columns;
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
        put_heading(row.cells[i], static_cast<int>(i), report.place(row.line, row.cells[i].column), columns, report);
    }
    if (columns.time < 0) {
        report.error(whole, "column-missing", "there is no column of times",
                     "name the first column time_min, time_hhmm or time");
    }
    if (columns.bath < 0) {
        report.error(whole, "column-missing", "there is no column of bath temperatures", "name one bath_c or bath_f");
    }
    // With both, the rows can be read and their faults reported too, whatever else is wrong with the header.
    return columns.time < 0 || columns.bath < 0 ? std::nullopt : std::optional(columns);
}

LogRow read_row(const CsvRow& row, const Columns& columns, Report& report) {
    LogRow log_row;
    log_row.place = report.place(row.line, row.cells[static_cast<std::size_t>(columns.time)].column);
    const auto temperature = [&](int index, bool fahrenheit, std::string_view label, const Range& range) {
        return index < 0 ? std::nullopt
                         : read_temperature_cell(row.cells[static_cast<std::size_t>(index)], row.line, fahrenheit,
                                                 label, range, report);
    };
    log_row.bath = temperature(columns.bath, columns.bath_f, "bath", ranges::logged_bath);
    log_row.outside = temperature(columns.outside, columns.outside_f, "outside", ranges::air);
    log_row.core = temperature(columns.core, columns.core_f, "core", ranges::logged_core);
    if (columns.note >= 0) {
        const std::string& note = row.cells[static_cast<std::size_t>(columns.note)].text;
        if (letters_in(note) > bounds::note_letters) {
            report.error(report.place(row.line, row.cells[static_cast<std::size_t>(columns.note)].column), "text-long",
                         fmt::format("note: {} letters are too many", letters_in(note)),
                         fmt::format("at most {}", bounds::note_letters));
        }
        log_row.note = quoted(note, bounds::note_letters);
    }
    return log_row;
}

std::string clock_text(const Log& log, units::Duration at) {
    if (const auto* const clock = std::get_if<units::ClockTime>(&log.zero)) {
        return units::LocalTime{clock->second_of_day}.after(at).clock_24();
    }
    if (const auto* const moment = std::get_if<units::LocalTime>(&log.zero)) {
        return moment->after(at).iso();
    }
    return fmt::format("minute {:.0f}", units::in_minutes(at));
}

/// A gap is more than half an hour and more than three times the log's middle step (judgement): long enough for a
/// bath to leave its line and come back, and no habit of this log.
void find_gaps(Log& log, Report& report) {
    constexpr double usual_times = 3;
    const units::Duration shortest = units::minutes(30);
    std::vector<const LogRow*> read;
    std::vector<units::Duration> steps;
    for (const LogRow& row : log.rows) {
        if (row.bath) {
            if (!read.empty()) {
                steps.push_back(row.at - read.back()->at);
            }
            read.push_back(&row);
        }
    }
    if (steps.empty()) {
        return;
    }
    std::vector<units::Duration> in_order = steps;
    std::sort(in_order.begin(), in_order.end());
    const units::Duration middle = in_order[(in_order.size() - 1) / 2];
    for (std::size_t i = 0; i < steps.size(); ++i) {
        if (steps[i] > shortest && steps[i] > usual_times * middle) {
            const LogGap gap{read[i]->at, read[i + 1]->at, read[i + 1]->place};
            report.warning(gap.place, "log-gap",
                           fmt::format("no bath reading from {} to {}, {:.0f} min", clock_text(log, gap.from),
                                       clock_text(log, gap.to), units::in_minutes(gap.to - gap.from)),
                           "what happened in between is not known");
            log.gaps.push_back(gap);
        }
    }
}

bool row_fits(const CsvRow& row, std::size_t width, Report& report) {
    if (row.cells.size() == width) {
        return true;
    }
    report.error(report.place(row.line, 1), "csv-width",
                 fmt::format("{} cells where the header has {} columns", row.cells.size(), width),
                 "numbers have a decimal point, not a comma; a note with a comma stands in quotes");
    return false;
}

}  // namespace

std::optional<units::Temperature> Log::mean_outside() const {
    double area = 0, span = 0, sum = 0;
    int count = 0;
    const LogRow* before = nullptr;
    for (const LogRow& row : rows) {
        if (!row.outside) {
            continue;
        }
        if (before != nullptr) {
            const double step = (row.at - before->at).si();
            area += step * (row.outside->celsius() + before->outside->celsius()) / 2;
            span += step;
        }
        sum += row.outside->celsius();
        ++count;
        before = &row;
    }
    if (count == 0) {
        return std::nullopt;
    }
    return units::celsius(span > 0 ? area / span : sum / count);
}

problem::Result<Log> read_log(std::string_view text, const std::string& file_name) {
    Report report(file_name);
    const problem::Place whole = report.place(0, 0);
    if (text.size() > bounds::file_bytes) {
        report.error(problem::place_in(text, bounds::file_bytes, file_name), "file-too-big",
                     fmt::format("{} bytes are too many for a log", text.size()),
                     fmt::format("at most {}; a log is some pages of readings", bounds::file_bytes));
        return std::move(report).take();
    }
    if (const auto bad = first_not_utf8(text)) {
        report.error(problem::place_in(text, *bad, file_name), "not-utf8", "the log is not UTF-8 text",
                     "save it as UTF-8");
        return std::move(report).take();
    }
    const std::vector<CsvRow> rows = split_csv(text, report);
    if (rows.empty()) {
        if (!report.failed()) {
            report.error(whole, "log-empty", "the log is empty", header_due);
        }
        return std::move(report).take();
    }
    if (rows.size() > bounds::log_rows) {
        return std::move(report).take();  // which has been told
    }
    const auto columns = read_header(rows.front(), report);
    if (!columns) {
        return std::move(report).take();
    }
    Log log;
    LogClock clock(columns->time_kind, report);
    for (std::size_t i = 1; i < rows.size(); ++i) {
        if (!row_fits(rows[i], rows.front().cells.size(), report)) {
            continue;
        }
        LogRow row = read_row(rows[i], *columns, report);
        const CsvCell& time = rows[i].cells[static_cast<std::size_t>(columns->time)];
        if (const auto at = clock.read(time, rows[i].line)) {
            row.at = *at;
            log.rows.push_back(std::move(row));
        }
    }
    log.zero = clock.zero();
    const bool any_bath =
        std::any_of(log.rows.begin(), log.rows.end(), [](const LogRow& r) { return r.bath.has_value(); });
    if (!any_bath && !report.failed()) {
        report.error(whole, "log-empty", "the log has no bath reading", "at least one row with time and bath");
    }
    if (report.failed()) {
        return std::move(report).take();
    }
    find_gaps(log, report);
    return {std::move(log), std::move(report).take()};
}

}  // namespace holdwater::trip
