// SPDX-License-Identifier: MIT
#include "answer/gauge/gauge.hpp"
#include "answer/gauge/gauge_log.hpp"
#include "cli/commands/commands.hpp"
#include "cli/commands/common_rows.hpp"
#include "cli/files/files.hpp"
#include "cli/files/kits.hpp"
#include "cli/files/trip_file.hpp"
#include "cli/json/answers_json.hpp"
#include "cli/line/options.hpp"
#include "cli/picture/chart.hpp"
#include "cli/text/gauge_text.hpp"
#include "facts/facts.hpp"
#include "problem/in_text.hpp"
#include "trip/form.hpp"
#include "trip/kit.hpp"
#include "trip/ranges.hpp"
#include "trip/written.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

namespace holdwater::cli {
namespace {

// What a trip file says too has the limits that it has there.
constexpr Range gauge_baths{"1 C", "100 C", "62 C", {}};

const OptionRow gauge_log{.name = "LOG",
                          .help = "log of a box test (CSV: time_min or time_hhmm, bath_c, outside_c, note)",
                          .example = "box.csv",
                          .holds = Holds::log_file,
                          .one_of = "readings"};
const OptionRow gauge_reading{.name = "--reading",
                              .value = "TIME=T",
                              .help = "a reading instead of a log; twice or more",
                              .takes = Takes::several,
                              .example = "3 h=57.5 C",
                              .one_of = "readings"};
const OptionRow gauge_water{.name = "--water",
                            .value = "V",
                            .help = "litres of hot water in the box",
                            .required = true,
                            .range = as_in(trip::ranges::water)};
const OptionRow gauge_outside{.name = "--outside",
                              .value = "T",
                              .help = "air around the box; needed where no log has such a column",
                              .range = as_in(trip::ranges::air)};
const OptionRow gauge_inside{.name = "--inside",
                             .value = "LxWxH",
                             .help = "inside measures of the box",
                             .takes = Takes::three,
                             .range = as_in(trip::ranges::inside),
                             .example = "540x290x300 mm"};
const OptionRow gauge_reading_error{.name = "--reading-error",
                                    .value = "K",
                                    .help = "how far a reading may be off",
                                    .range = as_in(trip::ranges::reading_error)};
const OptionRow gauge_poured{.name = "--poured",
                             .value = "T",
                             .help = "temperature of the water as it went in: shows the liner",
                             .range = gauge_baths};
const OptionRow gauge_liner_start{.name = "--liner-start",
                                  .value = "T",
                                  .help = "the empty box before",
                                  .by_default = "as outside",
                                  .range = {"-45 C", "100 C", "8 C"}};
const OptionRow gauge_fill{.name = "--fill",
                           .value = "T",
                           .help = "count hours from this bath",
                           .by_default = "from the first reading",
                           .range = gauge_baths};
const OptionRow gauge_floor{
    .name = "--floor", .value = "T", .help = "count hours to this bath", .range = {"30 C", "95 C", "54.4 C"}};
const OptionRow gauge_save{.name = "--save",
                           .value = "NAME",
                           .help =
                               "keep the box as a kit, for use = \"NAME\" in [[box]] of any trip; never over an "
                               "existing one",
                           .example = "blue"};
const OptionRow gauge_preview{.name = "--preview", .help = "draw a chart, STEM-gauge.png"};

units::TemperatureDifference usual_error() {
    return facts::facts().difference("gauge.reading-error");
}

units::Temperature usual_floor() {
    return facts::facts().find_rule(facts::Ruleset{}, facts::Category::red_meat)->cook_floor;
}

/// "540x290x300 mm", or three values.
std::optional<std::array<units::Length, 3>> read_inside(Options& options) {
    if (!options.has(gauge_inside)) {
        return std::nullopt;
    }
    std::vector<std::string> parts = options.texts(gauge_inside);
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
        options.fault(gauge_inside.name, "measures-count", fmt::format("needs three measures, not {}", parts.size()),
                      "write it like " + written(gauge_inside));
        return std::nullopt;
    }
    std::array<units::Length, 3> inside;
    for (std::size_t i = 0; i < inside.size(); ++i) {
        inside[i] =
            options.quantity<units::Length>(gauge_inside.name, parts[i], gauge_inside.range).value_or(units::Length{});
    }
    return inside;
}

answer::GaugeReading read_reading(Options& options, const std::string& text) {
    answer::GaugeReading reading;
    const auto equals = text.find('=');
    if (equals == std::string::npos) {
        options.fault(gauge_reading.name, "reading-unreadable", fmt::format("\"{}\" has no '='", problem::quoted(text)),
                      "write it like " + written(gauge_reading));
        return reading;
    }
    const std::string name = fmt::format("{} \"{}\"", gauge_reading.name, problem::quoted(text));
    const auto bath = units::parse<units::Temperature>(text.substr(equals + 1));
    if (bath && *bath > units::celsius(100) && units::fahrenheit(bath->celsius()) < units::celsius(100)) {
        options.fault(name, "unit-fahrenheit", "is hotter than water gets; as Fahrenheit it would be a bath",
                      fmt::format("write {:g} F", bath->celsius()));
        return reading;
    }
    reading.at = options.quantity<units::Duration>(name, text.substr(0, equals), as_in(trip::ranges::test_after))
                     .value_or(units::Duration{});
    reading.bath = options.quantity<units::Temperature>(name, text.substr(equals + 1), as_in(trip::ranges::test_bath))
                       .value_or(units::Temperature{});
    return reading;
}

struct Asked {
    answer::GaugeQuestion question;
    std::vector<trip::LogGap> gaps;
    problem::Problems remarks;
    std::string name;  // of the chart
};

/// False: the log cannot be read, and nobody knows whether it has a column for the air.
bool read_log(Options& options, Asked& asked) {
    const std::string path = options.file(gauge_log);
    const auto text = read_file(path);
    if (!text) {
        options.add(text.problems());
        return false;
    }
    auto log = answer::read_gauge_log(*text, path);
    if (!log) {
        options.add(log.problems());
        return false;
    }
    asked.remarks = log.problems();
    asked.gaps = log->gaps;
    asked.name = stem_of(path);
    asked.question.readings = log->readings;
    asked.question.touches = log->touches;
    if (log->outside.empty()) {
        return true;
    }
    asked.question.outside = log->outside;
    if (options.has(gauge_outside)) {
        options.fault(gauge_outside.name, "outside-twice", "is given, and the log has an outside column",
                      "leave one out");
    }
    return true;
}

Asked read_box_test(Options& options) {
    Asked asked;
    answer::GaugeQuestion& question = asked.question;
    bool may_lack_air = true;
    if (options.has(gauge_log) == options.has(gauge_reading)) {
        options.fault("gauge", "readings-missing", "needs either a log or --reading, twice or more",
                      "gauge box.csv, or gauge --reading \"0 h=62 C\" --reading \"3 h=57.5 C\"");
    } else if (options.has(gauge_log)) {
        may_lack_air = read_log(options, asked);
    } else {
        asked.name = "readings";
        for (const std::string& text : options.texts(gauge_reading)) {
            question.readings.push_back(read_reading(options, text));
        }
    }
    question.water = options.need<units::Volume>(gauge_water);
    if (question.outside.empty() && may_lack_air) {
        question.outside.add(units::Duration{0}, options.need<units::Temperature>(gauge_outside));
    }
    question.reading_error = options.maybe<units::TemperatureDifference>(gauge_reading_error).value_or(usual_error());
    question.floor = options.maybe<units::Temperature>(gauge_floor).value_or(usual_floor());
    question.poured = options.maybe<units::Temperature>(gauge_poured);
    question.liner_start = options.maybe<units::Temperature>(gauge_liner_start);
    question.fill = options.maybe<units::Temperature>(gauge_fill);
    question.inside = read_inside(options);
    if (question.inside && heat::volume_of(*question.inside) < question.water) {
        options.fault(gauge_water.name, "water-too-much", "is more than the box holds by --inside", "check both");
    }
    return asked;
}

/// The chart beside the answer; its path goes where it does not disturb JSON.
Exit write_chart(const Asked& asked, const answer::Gauge& gauge, const std::string& folder, bool json) {
    const auto png = chart_png(gauge_card(gauge, asked.question, asked.gaps), asked.name);
    if (!png) {
        tell(png.problems());
        return Exit::our_fault;
    }
    const std::string path = fmt::format("{}/{}-gauge.png", folder, asked.name);
    const auto written = write_file(path, *png);
    if (!written) {
        tell(written.problems());
        return Exit::bad_input;
    }
    if (json) {
        tell_line(path);
    } else {
        fmt::print("{}\n", path);
    }
    return Exit::done;
}

/// The box as a kit in the user's own folder; its path goes where it does not disturb JSON.
Exit save_kit(const Asked& asked, const answer::Gauge& gauge, const std::string& name, bool json) {
    const auto folder = own_kit_folder();
    if (!folder) {
        const problem::Problem nowhere = problem::error("folder-missing", "--save knows no folder of yours",
                                                        "set HOME, or XDG_CONFIG_HOME, to a whole path");
        tell({nowhere});
        return Exit::bad_input;
    }
    const std::string path = *folder + "/" + trip::kit_file(name);
    const std::string text = fmt::format(
        "# The box \"{0}\" as `holdwater gauge` found it. In a trip file: use = \"{0}\" under [[box]]. What stands "
        "there\n"
        "# wins; thermometer and, where it is missing here, inside stand there or are added below.\n[box]\nname = "
        "\"{0}\"\n"
        "water = {1}\n{2}",
        name, trip::in_toml(trip::written(asked.question.water)), box_lines(gauge, asked.question));
    const auto written = write_file(path, text, false);
    if (!written) {
        tell(written.problems());
        return Exit::bad_input;
    }
    const std::string said = fmt::format("{}\nIn a trip file: use = \"{}\" under [[box]]", path, name);
    if (json) {
        tell_line(said);
    } else {
        fmt::print("{}\n", said);
    }
    return Exit::done;
}

struct GaugeOutput {
    bool json = false;
    std::optional<std::string> chart_folder;
    std::optional<std::string> kit;
};

Exit show_gauge(const Asked& asked, const GaugeOutput& output) {
    const auto gauge = answer::gauge(asked.question);
    problem::Problems remarks = asked.remarks;
    remarks.insert(remarks.end(), gauge.problems().begin(), gauge.problems().end());
    if (!gauge) {
        tell(remarks);
        return Exit::bad_input;
    }
    fmt::print("{}", output.json ? gauge_json(*gauge, remarks) : gauge_text(*gauge, asked.question));
    tell(remarks);
    const Exit drawn = output.chart_folder ? write_chart(asked, *gauge, *output.chart_folder, output.json) : Exit::done;
    const Exit saved = output.kit ? save_kit(asked, *gauge, *output.kit, output.json) : Exit::done;
    const Exit files = worse(drawn, saved);
    return files != Exit::done ? files : exit_for(remarks);
}

Act read_gauge(Options& options) {
    const Asked asked = read_box_test(options);
    const std::string folder = options.folder(chart_folder_row);
    GaugeOutput output;
    output.json = options.has(json_row);
    output.chart_folder = options.has(gauge_preview) ? std::optional(folder) : std::nullopt;
    output.kit = options.text(gauge_save);
    if (output.kit && !trip::is_kit_name(*output.kit)) {
        options.fault(gauge_save.name, "word-unknown",
                      fmt::format("\"{}\" cannot be the name of a kit", problem::quoted(*output.kit)),
                      "letters, digits, - and _, such as " + written(gauge_save));
    }
    return [=] { return show_gauge(asked, output); };
}

}  // namespace

Command gauge_command() {
    const auto error = with_default(gauge_reading_error, units::print(usual_error(), units::System::metric, {0.1}));
    const auto floor = with_default(
        gauge_floor, fmt::format("{} ({}, whole red meat)", units::print(usual_floor(), units::System::metric, {0.1}),
                                 facts::to_name(facts::Ruleset{})));
    return {.name = "gauge",
            .group = headings::box,
            .summary = "find how well a box holds heat, from readings as it cools",
            .rows = {gauge_log, gauge_reading, gauge_water, gauge_outside, gauge_inside, error, gauge_poured,
                     gauge_liner_start, gauge_fill, floor, gauge_save, json_row, gauge_preview, chart_folder_row},
            .examples = {"gauge --reading \"0 h=62 C\" --reading \"5 h=55 C\" --water \"20 L\" --outside \"8 C\"",
                         "gauge box.csv --water \"20 L\" --preview", "gauge box.csv --water \"20 L\" --save blue"},
            .checks = "done, but the readings leave the loss doubtful: see what is said of them",
            .read = read_gauge};
}

}  // namespace holdwater::cli
