// SPDX-License-Identifier: MIT
#include "answer/gauge/gauge.hpp"
#include "answer/gauge/gauge_log.hpp"
#include "cli/app.hpp"
#include "cli/picture/chart.hpp"
#include "cli/files/files.hpp"
#include "cli/text/gauge_text.hpp"
#include "cli/line/options.hpp"
#include "cli/line/unknown_words.hpp"
#include "cli/files/trip_file.hpp"
#include "facts/facts.hpp"
#include "trip/ranges.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <memory>

namespace holdwater::cli {
namespace {

struct GaugeOptions {
    Given log;
    std::vector<std::string> readings;
    std::vector<std::string> inside;
    Given water, outside, reading_error, floor, poured, liner_start, fill;
    std::string out = "out";
    bool json = false;
    bool preview = false;
};

/// The limits that a trip file has for the same thing.
Range as_in_trips(const trip::Range& range) {
    return {range.low, range.high, range.example};
}
const Range any_bath{"1 C", "100 C", "62 C"};
const Range any_floor{"30 C", "95 C", "54.4 C"};
const Range any_liner{"-45 C", "100 C", "8 C"};

/// "540x290x300 mm", or three values.
std::optional<std::array<units::Length, 3>> inside_from(const GaugeOptions& given, Options& options) {
    if (given.inside.empty()) {
        return std::nullopt;
    }
    std::vector<std::string> parts = given.inside;
    if (parts.size() == 1) {
        std::string rest = parts.front();
        parts.clear();
        for (std::size_t at = rest.find('x'); at != std::string::npos; at = rest.find('x')) {
            parts.push_back(rest.substr(0, at));
            rest.erase(0, at + 1);
        }
        parts.push_back(rest);
        const auto unit = rest.find_first_not_of("0123456789./ ");
        for (std::size_t i = 0; unit != std::string::npos && i + 1 < parts.size(); ++i) {
            if (parts[i].find_first_not_of("0123456789./ ") == std::string::npos) {
                parts[i] += " " + rest.substr(unit);
            }
        }
    }
    if (parts.size() != 3) {
        options.fault("--inside", "measures-count", fmt::format("needs three measures, not {}", parts.size()),
                      "write it like --inside \"540x290x300 mm\"");
        return std::nullopt;
    }
    std::array<units::Length, 3> inside;
    for (std::size_t i = 0; i < inside.size(); ++i) {
        inside[i] = options.need<units::Length>("--inside", parts[i], as_in_trips(trip::ranges::inside));
    }
    return inside;
}

std::vector<answer::GaugeReading> readings_from(const GaugeOptions& given, Options& options) {
    std::vector<answer::GaugeReading> readings;
    for (const std::string& text : given.readings) {
        const auto equals = text.find('=');
        if (equals == std::string::npos) {
            options.fault("--reading", "reading-unreadable", fmt::format("\"{}\" has no '='", text),
                          "write it like --reading \"3 h=57.5 C\"");
            continue;
        }
        const std::string name = fmt::format("--reading \"{}\"", text);
        const auto bath = units::parse<units::Temperature>(text.substr(equals + 1));
        if (bath && *bath > units::celsius(100) && units::fahrenheit(bath->celsius()) < units::celsius(100)) {
            options.fault(name, "unit-fahrenheit", "is hotter than water gets; as Fahrenheit it would be a bath",
                          fmt::format("write {:g} F", bath->celsius()));
            continue;
        }
        answer::GaugeReading reading;
        reading.at = options.need<units::Duration>(name, text.substr(0, equals), as_in_trips(trip::ranges::test_after));
        reading.bath = options.need<units::Temperature>(name, text.substr(equals + 1), as_in_trips(trip::ranges::test_bath));
        readings.push_back(reading);
    }
    return readings;
}

struct Asked {
    answer::GaugeQuestion question;
    std::vector<trip::LogGap> gaps;
    problem::Problems remarks;
};

void take_log(const GaugeOptions& given, Options& options, Asked& asked, problem::Problems& faults) {
    const auto text = read_file(*given.log);
    if (!text) {
        faults = text.problems();
        return;
    }
    auto log = answer::read_gauge_log(*text, *given.log);
    if (!log) {
        faults = log.problems();
        return;
    }
    asked.remarks = log.problems();
    asked.gaps = log->gaps;
    asked.question.readings = log->readings;
    asked.question.touches = log->touches;
    if (log->outside.empty()) {
        return;
    }
    asked.question.outside = log->outside;
    if (given.outside) {
        options.fault("--outside", "outside-twice", "is given, and the log has an outside column", "leave one out");
    }
}

problem::Result<Asked> asked_by(const GaugeOptions& given, const CLI::App& line) {
    Options options;
    tell_unknown_words(line, options);
    Asked asked;
    problem::Problems faults;
    answer::GaugeQuestion& question = asked.question;
    if (given.log.has_value() == !given.readings.empty()) {
        options.fault("gauge", "readings-missing", "needs either a log or --reading, twice or more",
                      "gauge box.csv, or gauge --reading \"0 h=62 C\" --reading \"3 h=57.5 C\"");
    } else if (given.log) {
        take_log(given, options, asked, faults);
    } else {
        question.readings = readings_from(given, options);
    }
    question.water = options.need<units::Volume>("--water", given.water, as_in_trips(trip::ranges::water));
    if (question.outside.empty() && faults.empty()) {
        question.outside.add(units::Duration{0}, options.need<units::Temperature>("--outside", given.outside,
                                                                                  as_in_trips(trip::ranges::air)));
    }
    question.reading_error = options
                                 .maybe<units::TemperatureDifference>("--reading-error", given.reading_error,
                                                                      as_in_trips(trip::ranges::reading_error))
                                 .value_or(facts::facts().difference("gauge.reading-error"));
    question.floor = options.maybe<units::Temperature>("--floor", given.floor, any_floor)
                         .value_or(facts::facts().find_rule(facts::Ruleset{}, facts::Category::red_meat)->cook_floor);
    question.poured = options.maybe<units::Temperature>("--poured", given.poured, any_bath);
    question.liner_start = options.maybe<units::Temperature>("--liner-start", given.liner_start, any_liner);
    question.fill = options.maybe<units::Temperature>("--fill", given.fill, any_bath);
    question.inside = inside_from(given, options);
    if (question.inside && heat::volume_of(*question.inside) < question.water) {
        options.fault("--water", "water-too-much", "is more than the box holds by --inside", "check both");
    }
    faults.insert(faults.end(), options.problems().begin(), options.problems().end());
    if (!faults.empty()) {
        return faults;
    }
    return asked;
}

Exit show_gauge(const GaugeOptions& given, const CLI::App& line) {
    const auto asked = asked_by(given, line);
    if (!asked) {
        tell(asked.problems());
        return Exit::bad_input;
    }
    const auto gauge = answer::gauge(asked->question);
    problem::Problems remarks = asked->remarks;
    remarks.insert(remarks.end(), gauge.problems().begin(), gauge.problems().end());
    if (!gauge) {
        tell(remarks);
        return Exit::bad_input;
    }
    fmt::print("{}", given.json ? gauge_json(*gauge, remarks) : gauge_text(*gauge, asked->question));
    tell(remarks);
    if (given.preview) {
        const std::string name = given.log ? stem_of(*given.log) : "readings";
        const auto png = chart_png(gauge_card(*gauge, asked->question, asked->gaps), name);
        if (!png) {
            tell(png.problems());
            return Exit::our_fault;
        }
        const std::string path = fmt::format("{}/{}-gauge.png", given.out, name);
        const auto written = write_file(path, *png);
        if (!written) {
            tell(written.problems());
            return Exit::bad_input;
        }
        if (given.json) {
            tell_line(path);
        } else {
            fmt::print("{}\n", path);
        }
    }
    return exit_for(remarks);
}

}  // namespace

Command add_gauge(CLI::App& program) {
    const auto given = std::make_shared<GaugeOptions>();
    CLI::App* line = program.add_subcommand("gauge", "find how well a box holds heat, from readings as it cools");
    line->add_option("LOG", given->log, "log of a box test (CSV: time_min or time_hhmm, bath_c, outside_c, note)");
    line->add_option("--reading", given->readings, "a reading instead of a log, such as \"3 h=57.5 C\"; twice or more")
        ->allow_extra_args(false);
    line->add_option("--water", given->water, "litres of hot water in the box");
    line->add_option("--outside", given->outside, "air around the box, where the log has no such column");
    line->add_option("--inside", given->inside, "inside measures of the box, \"540x290x300 mm\"")->expected(1, 3);
    line->add_option("--reading-error", given->reading_error, "how far a reading may be off (default 0.5 K)");
    line->add_option("--poured", given->poured, "temperature of the water as it went in: shows the liner");
    line->add_option("--liner-start", given->liner_start, "the empty box before (default: as outside)");
    line->add_option("--fill", given->fill, "count hours from this bath (default: from the first reading)");
    line->add_option("--floor", given->floor, "count hours to this bath (default 54.4 C, us, whole red meat)");
    line->add_flag("--json", given->json, "every number, unrounded, as JSON");
    line->add_flag("--preview", given->preview, "draw a chart, STEM-gauge.png");
    line->add_option("--out", given->out, "folder for the chart")->capture_default_str();
    return {line, [given, line] { return show_gauge(*given, *line); }, true};
}

}  // namespace holdwater::cli
