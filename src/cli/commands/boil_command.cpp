// SPDX-License-Identifier: MIT
#include "cli/app.hpp"
#include "cli/files/files.hpp"
#include "cli/json/json.hpp"
#include "cli/line/unknown_words.hpp"
#include "cli/text/wrap.hpp"
#include "facts/facts.hpp"
#include "heat/water.hpp"
#include "units/print.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <memory>

namespace holdwater::cli {
namespace {

constexpr Range altitudes{"-500 m", "11000 m", "1850 m"};
constexpr Range pressures{"612 Pa", "22064000 Pa", "812 hPa"};

struct BoilOptions {
    Given altitude;
    Given pressure;
    bool json = false;
};

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

Exit boil(const BoilOptions& given, const CLI::App& line) {
    Options options;
    tell_unknown_words(line, options);
    const auto altitude = options.maybe<units::Length>("--altitude", given.altitude, altitudes);
    auto pressure = options.maybe<units::Pressure>("--pressure", given.pressure, pressures);
    if (!given.altitude && !given.pressure) {
        options.fault("--altitude", "option-missing", "is missing",
                      "say how high you are, --altitude \"1850 m\", or the pressure there, --pressure \"812 hPa\"");
    }
    if (!options.problems().empty()) {
        tell(options.problems());
        return Exit::bad_input;
    }
    const bool measured = pressure.has_value();
    if (!measured) {
        pressure = heat::standard_pressure(*altitude).value();
    }
    const units::Temperature boiling = heat::boiling_point(*pressure).value();
    if (given.json) {
        fmt::print("{}", answer_text({{"boiling_c", boiling.celsius()}, {"pressure_pa", pressure->si()}}, {}));
    } else {
        fmt::print("{}", plain_spaces(boil_text(boiling, *pressure, measured)));
    }
    return Exit::done;
}

}  // namespace

Command add_boil(CLI::App& program) {
    const auto given = std::make_shared<BoilOptions>();
    CLI::App* line = program.add_subcommand("boil", "where water boils, by altitude or pressure");
    line->add_option("--altitude", given->altitude, "how high, like \"1850 m\" or \"6000 ft\"");
    line->add_option("--pressure", given->pressure, "air pressure there, not reduced to the sea; wins over --altitude");
    line->add_flag("--json", given->json, "boiling_c, pressure_pa");
    return {line, [given, line] { return boil(*given, *line); }, true};
}

}  // namespace holdwater::cli
