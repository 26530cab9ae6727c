// SPDX-License-Identifier: MIT
#include "cli/text/gauge_text.hpp"

#include "cli/text/wrap.hpp"
#include "heat/box.hpp"
#include "trip/ranges.hpp"
#include "units/parse.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace holdwater::cli {
namespace {

using units::System;
using units::Toward;

constexpr double quarter_hour = 900.0;

std::string degrees(units::Temperature t, double step = 0.1) {
    return units::print(t, System::both, {step, Toward::nearest});
}

std::string hours_text(const std::optional<units::Duration>& time) {
    if (!time) {
        return "for ever";
    }
    const auto longest = *units::parse<units::Duration>(trip::ranges::trip_length.high);
    if (*time > longest) {
        return "over " + units::print(longest);
    }
    const double rounded = units::round_to(time->si(), quarter_hour, Toward::down);
    return rounded > 0.0 ? units::print(units::Duration{rounded}) : time->si() > 0.0 ? "under 15 min" : "not at all";
}

std::string hours_table(const answer::Gauge& gauge) {
    std::string out = fmt::format("From {} this fill stays above {}:\n", degrees(gauge.start), degrees(gauge.floor));
    out +=
        fmt::format("  {:<18}{:>14}{:>14}{:>14}{:>14}\n", "air", "likely: still", "surely: still", "breezy", "windy");
    for (const answer::HoursAbove& row : gauge.hours) {
        std::string air = degrees(row.outside);
        const std::size_t signs =
            air.size() - static_cast<std::size_t>(std::count_if(air.begin(), air.end(), [](char c) {
                return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
            }));
        air += std::string(signs < 18 ? 18 - signs : 0, ' ');
        out += fmt::format("  {}{:>14}{:>14}{:>14}{:>14}\n", air, hours_text(row.likely), hours_text(row.low),
                           hours_text(row.low_breezy), hours_text(row.low_windy));
    }
    out += wrap(
        "Surely: with the high end of the loss, the reading error taken off, rounded down; the lid stays closed.", 2);
    out += wrap(fmt::format("The test is taken as one in still air; a breeze makes the loss {:g} times as large, wind "
                            "{:g} times. A test in wind gives too high a loss, on the safe side.",
                            heat::wind_factor(heat::wind_position(facts::Wind::breezy)),
                            heat::wind_factor(heat::wind_position(facts::Wind::windy))),
                2);
    return out;
}

std::string liner_text(const answer::Gauge& gauge, const answer::GaugeQuestion& question) {
    if (gauge.liner) {
        return fmt::format("The first fall of {:.1f} K shows a liner of {:.1f} kJ/K ({:.1f} to {:.1f}).",
                           gauge.first_fall.si(), gauge.liner->likely.si() / 1e3, gauge.liner->low.si() / 1e3,
                           gauge.liner->high.si() / 1e3);
    }
    const std::string taken = fmt::format("taken as {:.1f} kJ/K ({})", gauge.liner_taken.si() / 1e3,
                                          question.liner    ? "as given"
                                          : question.inside ? "planning value from the inside measures"
                                                            : "planning value; --inside makes it better");
    if (gauge.first_fall_known) {
        return fmt::format("The first fall, {:.1f} K, shows no liner: it may be off by {:.1f} K. The liner is {}.",
                           std::max(gauge.first_fall.si(), 0.0), gauge.first_fall_error.si(), taken);
    }
    return fmt::format("Nothing shows what the liner takes up (--poured tells); it is {}.", taken);
}

std::string indented(const std::string& lines) {
    std::string out;
    for (std::size_t at = 0; at < lines.size();) {
        const std::size_t end = lines.find('\n', at) + 1;
        out += "  " + lines.substr(at, end - at);
        at = end;
    }
    return out;
}

}  // namespace

std::string box_lines(const answer::Gauge& gauge, const answer::GaugeQuestion& question) {
    const answer::GaugedReading& first = gauge.readings[gauge.first_used()];
    const answer::GaugedReading& last = gauge.readings[gauge.last_used()];
    std::string out;
    if (question.inside) {
        const auto& inside = *question.inside;
        out += fmt::format("inside = [\"{:.4g} mm\", \"{:.4g} mm\", \"{:.4g} mm\"]\n", units::in_millimetres(inside[0]),
                           units::in_millimetres(inside[1]), units::in_millimetres(inside[2]));
    }
    out += fmt::format(
        "test = [{{ after = \"0 h\", bath = \"{:.4g} C\" }}, {{ after = \"{:.4g} h\", bath = \"{:.4g} C\" "
        "}}]\n",
        gauge.in_mean_air(first.at).celsius(), units::in_hours(last.at - first.at),
        gauge.in_mean_air(last.at).celsius());
    out += fmt::format("test_outside = \"{:.4g} C\"\ntest_water = \"{:.4g} L\"\nreading_error = \"{:.2f} K\"\n",
                       units::celsius(units::round_to(gauge.outside.celsius(), 0.01, Toward::nearest)).celsius(),
                       units::in_litres(question.water), units::round_to(gauge.pair_error.si(), 0.01, Toward::up));
    return out;
}

std::string gauge_text(const answer::Gauge& gauge, const answer::GaugeQuestion& question) {
    std::string out = wrap(fmt::format(
        "This box loses {:.2f} W for each degree that the bath is warmer than the air ({:.2f} to {:.2f} in 90 of 100 "
        "cases).",
        gauge.loss.likely.si(), gauge.loss.low.si(), gauge.loss.high.si()));
    out += wrap(fmt::format("{} at {} in air of {} cool by about {:.1f} K in the first hour.",
                            units::print(question.water, System::both), degrees(gauge.start), degrees(gauge.outside),
                            gauge.first_hour.si())) +
           "\n";
    out += hours_table(gauge) + "\n";
    out += wrap(liner_text(gauge, question)) + "\n";
    out += "For [[box]] of a trip file:\n" + indented(box_lines(gauge, question)) + "\n";
    out += residual_plot(gauge, question.reading_error);
    if (gauge.last_used() == gauge.first_used() + 1) {
        out += "Two readings always lie on their line: a third one would show a mistake.\n";
    }
    return plain_spaces(out);
}

}  // namespace holdwater::cli
