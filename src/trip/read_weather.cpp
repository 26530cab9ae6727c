// SPDX-License-Identifier: MIT
// [weather]: wind, and air temperatures by clock time (every day) or by date (once each), never mixed.
#include "trip/moment.hpp"
#include "trip/parts.hpp"
#include "units/parse.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace holdwater::trip {
namespace {

constexpr std::string_view due = "write it like hours = [{ at = \"08:00\", air = \"1 C\" }, ...]";

struct Hour {
    std::variant<units::ClockTime, units::LocalTime> at;
    units::Temperature air;
    problem::Place place;
};

/// "08:00", 08:00:00, 2027-10-15T16:00:00 or the same in quotes.
std::optional<std::variant<units::ClockTime, units::LocalTime>> read_at(Table& table) {
    constexpr std::string_view key = "at";
    const toml::node* const found = table.node(key);
    const auto* const text = found != nullptr ? found->as_string() : nullptr;
    if (text != nullptr) {
        if (const auto moment = parse_moment(text->get())) {
            return *moment;
        }
        const auto clock = units::parse_clock(quoted(text->get()));
        if (clock) {
            return *clock;
        }
        table.error(key, "clock-unreadable",
                    fmt::format("at: \"{}\" is neither a time of day nor a date with a time", quoted(text->get())),
                    "write \"08:00\" for every day, or 2027-10-15T16:00:00 for once");
        return std::nullopt;
    }
    if (found != nullptr && found->is_date_time()) {
        units::LocalTime moment;
        return table.moment(key, moment) ? std::optional<std::variant<units::ClockTime, units::LocalTime>>(moment)
                                         : std::nullopt;
    }
    units::ClockTime clock;
    return table.clock(key, clock) ? std::optional<std::variant<units::ClockTime, units::LocalTime>>(clock)
                                   : std::nullopt;
}

std::optional<Hour> read_hour(const toml::node& node, Report& report) {
    const auto* const inner = node.as_table();
    if (inner == nullptr) {
        const auto begin = node.source().begin;
        report.error(report.place(static_cast<int>(begin.line), static_cast<int>(begin.column)), "type-wrong",
                     fmt::format("hours: a table in braces is due, not {}", kind_of(node)), due);
        return std::nullopt;
    }
    Table table(report, *inner, "this hour");
    Hour hour;
    const auto at = read_at(table);
    const bool has_air = table.quantity("air", hour.air, ranges::air);
    hour.place = table.place("at");
    table.finish();
    if (!at || !has_air) {
        return std::nullopt;
    }
    hour.at = *at;
    return hour;
}

/// Sorts the hours of one sort and says which come twice.
template <class Time, class Entry>
std::vector<Entry> sorted(const std::vector<Hour>& hours, Report& report) {
    std::vector<Hour> copy = hours;
    std::stable_sort(copy.begin(), copy.end(),
                     [](const Hour& a, const Hour& b) { return std::get<Time>(a.at) < std::get<Time>(b.at); });
    std::vector<Entry> entries;
    for (const Hour& hour : copy) {
        if (!entries.empty() && entries.back().at == std::get<Time>(hour.at)) {
            report.error(hour.place, "hour-twice", "at: this time is given twice", "give each time once");
            continue;
        }
        entries.push_back({std::get<Time>(hour.at), hour.air});
    }
    return entries;
}

bool is_dated(const Hour& hour) {
    return std::holds_alternative<units::LocalTime>(hour.at);
}

}  // namespace

void read_weather(Table& table, Weather& weather) {
    table.choice("wind", weather.wind, Need::optional);
    const toml::array* const list = table.array("hours", due);
    table.finish();
    if (list == nullptr) {
        return;
    }
    const auto entries = static_cast<int>(std::min<std::size_t>(list->size(), 1000000));
    if (entries < ranges::hours.low || entries > ranges::hours.high) {
        table.error("hours", "out-of-range", fmt::format("hours: {} entries", entries),
                    fmt::format("from {} to {}; {}", ranges::hours.low, ranges::hours.high, due));
        return;
    }
    std::vector<Hour> hours;
    for (const toml::node& node : *list) {
        if (auto hour = read_hour(node, table.report())) {
            hours.push_back(std::move(*hour));
        }
    }
    const auto other = std::find_if(hours.begin(), hours.end(),
                                    [&](const Hour& hour) { return is_dated(hour) != is_dated(hours.front()); });
    if (other != hours.end()) {
        table.report().error(other->place, "hours-mixed",
                             is_dated(*other) ? "at: a date among times of day" : "at: a time of day among dates",
                             "all hours of one kind: times of day come back daily, dates come once");
        return;
    }
    if (hours.empty()) {
        return;
    }
    if (is_dated(hours.front())) {
        weather.hours = sorted<units::LocalTime, Weather::Dated>(hours, table.report());
    } else {
        weather.hours = sorted<units::ClockTime, Weather::Daily>(hours, table.report());
    }
}

}  // namespace holdwater::trip
