// SPDX-License-Identifier: MIT
#include "answer/water/mix.hpp"
#include "cli/commands/commands.hpp"
#include "cli/commands/common_rows.hpp"
#include "cli/files/files.hpp"
#include "cli/json/answers_json.hpp"
#include "cli/line/options.hpp"
#include "cli/text/wrap.hpp"
#include "heat/water.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

namespace holdwater::cli {
namespace {

const OptionRow mix_target{.name = "--target",
                           .value = "T",
                           .help = "wanted temperature",
                           .required = true,
                           .range = {"1 C", "99.9 C", "60 C"}};
const OptionRow mix_altitude{
    .name = "--altitude", .value = "H", .help = "how high you are", .required = true, .range = altitudes};
const OptionRow mix_cold{.name = "--cold",
                         .value = "T",
                         .help = "temperature of the cold water; or slush (ice water), or snow",
                         .required = true,
                         .range = {"0 C", "60 C", "2 C"}};
const OptionRow mix_by{.name = "--by",
                       .value = "MEASURE",
                       .help = "how the parts are measured",
                       .by_default = "volume",
                       .choices = {"volume", "mass"}};

void read_cold(Options& options, answer::MixQuestion& question) {
    const Given cold = options.text(mix_cold);
    if (!cold) {
        options.missing(
            mix_cold, fmt::format("the temperature of the cold water, like {}, or slush, or snow", written(mix_cold)));
    } else if (*cold == "slush" || *cold == "snow") {
        question.cold = *cold == "slush" ? answer::Frozen::slush : answer::Frozen::snow;
    } else if (cold->find_first_of("0123456789") == std::string::npos) {
        options.unknown(mix_cold, *cold, {"slush", "snow"},
                        fmt::format("or a temperature, such as {}", quoted(mix_cold.range.example)));
    } else {
        question.cold = options.need<units::Temperature>(mix_cold);
    }
}

std::string cold_name(const answer::MixQuestion& question) {
    const auto* frozen = std::get_if<answer::Frozen>(&question.cold);
    return frozen == nullptr ? "cold water" : *frozen == answer::Frozen::slush ? "ice water (no ice)" : "snow or ice";
}

std::string parts(int n) {
    return fmt::format("{} {}", n, n == 1 ? "part" : "parts");
}

/// A high end rounded up to half a degree, but never past the boiling point that is printed beside it.
std::string high_end(units::Temperature high, units::Temperature boiling) {
    using units::System;
    const bool past = units::round_to(high.celsius(), 0.5, units::Toward::up) > boiling.celsius();
    return past ? units::print(boiling, System::both, {0.1})
                : units::print(high, System::both, {0.5, units::Toward::up});
}

std::string span(const answer::Mixed& mixed, units::Temperature boiling) {
    using units::System;
    return fmt::format("likely about {}, in practice {} to {} ({} if nothing were lost)",
                       units::print(mixed.likely, System::both, {0.5}),
                       units::print(mixed.low, System::both, {0.5, units::Toward::down}), high_end(mixed.high, boiling),
                       units::print(mixed.result, System::metric, {0.1}));
}

std::string mix_text(const answer::MixQuestion& question, const answer::MixAnswer& answer) {
    const bool by_mass = question.by == answer::Measure::mass;
    const bool frozen = std::holds_alternative<answer::Frozen>(question.cold);
    const bool snow = frozen && std::get<answer::Frozen>(question.cold) == answer::Frozen::snow;
    std::string out = wrap(fmt::format("{} boiling to {} {}, by {}: {}.", parts(answer.simple.hot),
                                       parts(answer.simple.cold), cold_name(question), by_mass ? "mass" : "volume",
                                       span(answer.simple.mixed, question.boiling)));
    out +=
        wrap(fmt::format("Exactly: {:.2f} to 1, {}.", answer.hot_parts, span(answer.mixed, question.boiling))) + "\n";
    const std::string care = snow ? "use snow that neither drips (too hot then) nor is far below freezing (too cool)"
                             : frozen ? "dip the cold water while ice still floats in it"
                                      : "measure the cold water just before";
    out +=
        wrap(fmt::format("Water boils here at {}. Most errors make the mixture cooler: water that left the fire a "
                         "while ago, a slow pour, a cold box. \"Likely\" is for a box warmed first and water that has "
                         "cooled a little on its way; the ends hold for a cold box too. Warm the box first, pour at a "
                         "rolling boil, stir, and "
                         "{}. This is good for the start only and says nothing about an hour later.",
                         units::print(question.boiling, units::System::both, {0.1}), care));
    out += "Boiling water scalds at once: nobody else near, and do not carry the full box.\n";
    return out;
}

Exit mix(answer::MixQuestion question, units::Length altitude, bool json) {
    question.boiling = heat::boiling_point_at(altitude).value();
    const auto answer = answer::mix(question);
    if (!answer) {
        tell(answer.problems());
        return Exit::bad_input;
    }
    fmt::print("{}", json ? mix_json(question, *answer) : plain_spaces(mix_text(question, *answer)));
    return Exit::done;
}

Act read_mix(Options& options) {
    answer::MixQuestion question;
    question.target = options.need<units::Temperature>(mix_target);
    const auto altitude = options.need<units::Length>(mix_altitude);
    read_cold(options, question);
    question.by = options.choice(mix_by) == "mass" ? answer::Measure::mass : answer::Measure::volume;
    return [=, json = options.has(json_row)] { return mix(question, altitude, json); };
}

}  // namespace

Command mix_command() {
    return {.name = "mix",
            .group = headings::figure,
            .summary = "how much boiling water to how much cold, and how warm it may really come out",
            .rows = {mix_target, mix_altitude, mix_cold, mix_by, json_row},
            .examples = {"mix --target \"60 C\" --altitude \"1850 m\" --cold \"2 C\"",
                         "mix --target \"57 C\" --altitude \"0 m\" --cold slush --by mass"},
            .read = read_mix};
}

}  // namespace holdwater::cli
