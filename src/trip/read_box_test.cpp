// SPDX-License-Identifier: MIT
// How well a box holds heat: readings, a log, or a loss that is known; exactly one of them.
#include "problem/bounds.hpp"
#include "trip/box_test.hpp"
#include "trip/parts.hpp"
#include "trip/read_log.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace holdwater::trip {
namespace {

constexpr std::string_view test_due =
    "write it like test = [{ after = \"0 h\", bath = \"64 C\" }, { after = \"4 h\", bath = \"57.5 C\" }]";

struct PlacedReading {
    BoxReading reading;
    problem::Place place;
};

/// The readings of a test, and whether all of them could be read.
struct Readings {
    std::string_view key;  // "test" or "log"
    std::vector<PlacedReading> list;
    bool complete = true;
    std::optional<units::Temperature> outside;  // mean of the log's own column
};

bool check_number(Table& table, std::string_view key, std::size_t number) {
    const auto most = static_cast<std::size_t>(ranges::test_readings.high);
    const auto fewest = static_cast<std::size_t>(ranges::test_readings.low);
    if (number >= fewest && number <= most) {
        return true;
    }
    table.error(key, "readings-count", fmt::format("{}: too {} readings", key, number < fewest ? "few" : "many"),
                fmt::format("from {} to {}", fewest, most));
    return false;
}

void read_test(Table& box_table, const toml::array& list, Readings& readings) {
    if (list.size() > static_cast<std::size_t>(ranges::test_readings.high)) {
        readings.complete = check_number(box_table, readings.key, list.size());
        return;
    }
    for (const toml::node& node : list) {
        const auto* const inner = node.as_table();
        if (inner == nullptr) {
            box_table.report().error(box_table.place(node), "type-wrong",
                                     fmt::format("test: a table in braces is due, not {}", kind_of(node)), test_due);
            readings.complete = false;
            continue;
        }
        Table table(box_table.report(), *inner, "this reading");
        PlacedReading one;
        const bool has_after = table.quantity("after", one.reading.after, ranges::test_after);
        const bool has_bath = table.quantity("bath", one.reading.bath, ranges::test_bath);
        one.place = table.place();
        table.finish();
        readings.complete = readings.complete && has_after && has_bath;
        readings.list.push_back(std::move(one));
    }
}

void read_box_log(Table& table, const FileReader& read_file, const std::string& name, Readings& readings) {
    const auto text = read_file(name);
    if (!text) {
        table.error("log", "file-unreadable",
                    fmt::format("log: \"{}\" cannot be read: {}", quoted(name), text.problems().front().message),
                    "the name is looked up beside the trip file");
        readings.complete = false;
        return;
    }
    const auto log = read_log(*text, name);
    problem::Problems problems = log.problems();
    // In a box test nobody touches the box, so that a gap between two readings hides nothing.
    std::erase_if(problems, [](const problem::Problem& p) { return p.code == "log-gap"; });
    table.report().add(problems);
    readings.complete = log.ok();
    if (!log) {
        return;
    }
    readings.outside = log->mean_outside();
    std::optional<units::Duration> first;
    for (const LogRow& row : log->rows) {
        if (row.bath) {
            first = first.value_or(row.at);
            readings.list.push_back({{row.at - *first, *row.bath}, row.place});
        }
    }
}

/// Each reading later than the one before, none warmer than the reading error explains, the last below the first.
bool check_readings(Table& table, std::string_view key, const std::vector<PlacedReading>& readings,
                    units::TemperatureDifference reading_error) {
    bool good = true;
    for (std::size_t i = 1; i < readings.size(); ++i) {
        const auto& [before, before_place] = readings[i - 1];
        const auto& [now, place] = readings[i];
        if (now.after <= before.after) {
            table.report().error(place, "readings-order",
                                 fmt::format("{}: {:.4g} h is not later than the reading before it, {:.4g} h", key,
                                             units::in_hours(now.after), units::in_hours(before.after)),
                                 "readings in the order in which they were taken");
            good = false;
        }
        if (now.bath > before.bath + 2 * reading_error) {
            table.report().error(place, "readings-rise",
                                 fmt::format("{}: the bath rises from {:.4g} C to {:.4g} C", key, before.bath.celsius(),
                                             now.bath.celsius()),
                                 "a box test runs without topping up; leave out what was read before a top-up");
            good = false;
        }
    }
    const BoxReading& first = readings.front().reading;
    const BoxReading& last = readings.back().reading;
    if (good && last.bath >= first.bath) {
        table.report().error(readings.back().place, "readings-rise",
                             fmt::format("{}: the bath has not cooled from {:.4g} C", key, first.bath.celsius()),
                             "a loss cannot be found from it; let the box stand for longer");
        good = false;
    }
    if (const auto brief = good ? short_test(last.after - first.after) : std::nullopt) {
        table.report().add(*brief, table.place(key), fmt::format("{}: ", key));
    }
    return good;
}

void read_circumstances(Table& table, const Readings& readings, Box& box) {
    // Whether a log that cannot be read has an outside column is not known: its absence is then no second fault.
    const bool may_be_logged = readings.key == "log" && (readings.outside || !readings.complete);
    box.test_outside = readings.outside.value_or(units::Temperature{});
    table.quantity("test_outside", box.test_outside, ranges::air, may_be_logged ? Need::optional : Need::required);
    table.quantity("test_water", box.test_water, ranges::water);
}

/// Without a figure the thermometer's error is taken: the same thermometer will have read the test.
void read_reading_error(Table& table, Box& box) {
    if (table.quantity("reading_error", box.reading_error, ranges::reading_error, Need::optional) ||
        table.has("reading_error")) {
        return;
    }
    const toml::node* const thermometer = table.node("thermometer");
    if (box.thermometer) {
        box.reading_error = *box.thermometer;
    } else if (thermometer != nullptr && thermometer->value<std::string_view>() == "none") {
        table.missing("reading_error", fmt::format("how far the readings of the box test may be off, such as "
                                                   "reading_error = \"{}\"",
                                                   ranges::reading_error.example));
    }
}

void read_known_loss(Table& table, Box& box) {
    units::HeatLoss loss;
    if (table.quantity("loss", loss, ranges::loss)) {
        box.test = loss;
    }
    for (const std::string_view key : {"test_outside", "test_water", "reading_error"}) {
        if (table.has(key)) {
            table.warning(key, "key-unused", fmt::format("{} is not used: the loss is given", key),
                          "it belongs to test or log; leave it out");
        }
    }
}

void check_outside(Table& table, const Readings& readings, const Box& box) {
    const units::Temperature last = readings.list.back().reading.bath;
    if (box.test_outside >= last) {
        table.error("test_outside", "outside-warmer",
                    fmt::format("test_outside: {:.4g} C is not below the last reading, {:.4g} C",
                                box.test_outside.celsius(), last.celsius()),
                    "it is the air around the box during the test");
    }
}

}  // namespace

void read_box_test(Table& table, const FileReader& read_file, Box& box) {
    const int ways = int{table.has("test")} + int{table.has("log")} + int{table.has("loss")};
    if (ways > 1) {
        table.error(table.has("test") ? "test" : "log", "test-twice", "more than one of test, log and loss is given",
                    "give the one that is best known");
    }
    if (ways == 0) {
        // Known keys, but whether they are due hangs on what is missing.
        const bool begun =
            int{table.has("reading_error")} + int{table.has("test_outside")} + int{table.has("test_water")} > 0;
        if (begun) {
            table.missing("test, log or loss", test_due);
            return;
        }
        box.test = Untested{};
        const problem::Place box_place = table.place();
        table.report().warning(
            box_place, "box-untested",
            "test, log or loss is missing in [[box]]: it is taken as an ordinary box that nobody has tested, "
            "which may lose little or much",
            "a test at home makes the plan surer and mostly easier: `holdwater gauge` says how; then " +
                std::string(test_due));
        return;
    }
    if (ways == 1 && table.has("loss")) {
        read_known_loss(table, box);
        return;
    }
    read_reading_error(table, box);
    Readings readings;
    std::string log_name;
    if (const toml::array* const list = table.array("test", test_due, Need::optional)) {
        readings.key = "test";
        read_test(table, *list, readings);
    } else if (table.text("log", log_name, Need::optional, bounds::file_name_letters)) {
        readings.key = "log";
        read_box_log(table, read_file, log_name, readings);
    } else {
        readings.key = table.has("log") ? "log" : "test";
        readings.complete = false;
    }
    read_circumstances(table, readings, box);
    if (!readings.complete || ways != 1 || !check_number(table, readings.key, readings.list.size()) ||
        !check_readings(table, readings.key, readings.list, box.reading_error)) {
        return;
    }
    check_outside(table, readings, box);
    std::vector<BoxReading> plain;
    for (const PlacedReading& one : readings.list) {
        plain.push_back(one.reading);
    }
    box.test = std::move(plain);
}

}  // namespace holdwater::trip
