// SPDX-License-Identifier: MIT
#include "cli/commands/commands.hpp"
#include "cli/commands/common_rows.hpp"
#include "cli/json/answers_json.hpp"
#include "cli/line/options.hpp"
#include "cli/text/wrap.hpp"
#include "facts/facts.hpp"
#include "heat/water.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

namespace holdwater::cli {
namespace {

const OptionRow boil_altitude{
    .name = "--altitude", .value = "H", .help = "how high you are", .range = altitudes, .one_of = "where"};
const OptionRow boil_pressure{.name = "--pressure",
                              .value = "P",
                              .help = "air pressure there, not reduced to the sea; wins over --altitude",
                              .range = {"612 Pa", "22064000 Pa", "812 hPa"},
                              .one_of = "where"};

std::string boil_text(units::Temperature boiling, units::Pressure pressure, bool measured) {
    const auto both = [](units::Temperature t) { return units::print(t, units::System::both, {0.1}); };
    const units::TemperatureDifference weather = facts::facts().difference("boil.weather");
    std::string more = fmt::format("Pressure {:.1f} hPa{}. ", pressure.si() / 100.0,
                                   measured ? ", as given" : ", that of a standard day");
    if (!measured) {
        more += fmt::format("Weather moves the boiling point by about {} either way: {} to {}. ",
                            units::print(weather, units::System::metric, {0.1}), both(boiling - weather),
                            both(boiling + weather));
    }
    more += "Salt and sugar raise it a little.";
    return fmt::format("Pure water boils here at {}.\n\n{}", both(boiling), wrap(more));
}

Exit boil(units::Pressure pressure, bool measured, bool json) {
    const units::Temperature boiling = heat::boiling_point(pressure).value();
    fmt::print("{}", json ? boil_json(boiling, pressure) : plain_spaces(boil_text(boiling, pressure, measured)));
    return Exit::done;
}

Act read_boil(Options& options) {
    const auto altitude = options.maybe<units::Length>(boil_altitude);
    const auto pressure = options.maybe<units::Pressure>(boil_pressure);
    if (!options.has(boil_altitude) && !options.has(boil_pressure)) {
        options.missing(boil_altitude, fmt::format("say how high you are, {}, or the pressure there, {}",
                                                   written(boil_altitude), written(boil_pressure)));
    }
    return [=, json = options.has(json_row)] {
        return boil(pressure ? *pressure : heat::standard_pressure(*altitude).value(), pressure.has_value(), json);
    };
}

}  // namespace

Command boil_command() {
    return {.name = "boil",
            .group = headings::figure,
            .summary = "where water boils, by altitude or pressure",
            .rows = {boil_altitude, boil_pressure, json_row},
            .examples = {"boil --altitude \"1850 m\"", "boil --pressure \"812 hPa\" --json"},
            .read = read_boil};
}

}  // namespace holdwater::cli
