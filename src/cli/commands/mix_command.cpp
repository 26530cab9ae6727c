// SPDX-License-Identifier: MIT
#include "answer/water/mix.hpp"
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

constexpr Range targets{"1 C", "99.9 C", "60 C"};
constexpr Range altitudes{"-500 m", "11000 m", "1850 m"};
constexpr Range colds{"0 C", "60 C", "2 C"};

struct MixOptions {
    Given target;
    Given altitude;
    Given cold;
    std::string by = "volume";
    bool json = false;
};

answer::MixQuestion question_from(const MixOptions& given, const CLI::App& line, Options& options) {
    tell_unknown_words(line, options);
    answer::MixQuestion question;
    question.target = options.need<units::Temperature>("--target", given.target, targets);
    const auto altitude = options.need<units::Length>("--altitude", given.altitude, altitudes);
    if (options.problems().empty()) {
        question.boiling = heat::boiling_point_at(altitude).value();
    }
    if (given.cold == "slush" || given.cold == "snow") {
        question.cold = *given.cold == "slush" ? answer::Frozen::slush : answer::Frozen::snow;
    } else if (!given.cold) {
        options.fault("--cold", "option-missing", "is missing",
                      "the temperature of the cold water, like --cold \"2 C\", or slush, or snow");
    } else {
        if (given.cold->find_first_of("0123456789") == std::string::npos) {
            unknown_word(options, "--cold", *given.cold, {"slush", "snow"}, "or a temperature, such as \"2 C\"");
        } else {
            question.cold = options.need<units::Temperature>("--cold", given.cold, colds);
        }
    }
    if (known_word(options, "--by", given.by, {"volume", "mass"})) {
        question.by = given.by == "mass" ? answer::Measure::mass : answer::Measure::volume;
    }
    return question;
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
                       units::print(mixed.low, System::both, {0.5, units::Toward::down}),
                       high_end(mixed.high, boiling), units::print(mixed.result, System::metric, {0.1}));
}

std::string mix_text(const answer::MixQuestion& question, const answer::MixAnswer& answer) {
    const bool by_mass = question.by == answer::Measure::mass;
    const bool frozen = std::holds_alternative<answer::Frozen>(question.cold);
    const bool snow = frozen && std::get<answer::Frozen>(question.cold) == answer::Frozen::snow;
    std::string out =
        wrap(fmt::format("{} boiling to {} {}, by {}: {}.", parts(answer.simple.hot), parts(answer.simple.cold),
                         cold_name(question), by_mass ? "mass" : "volume", span(answer.simple.mixed, question.boiling)));
    out += wrap(fmt::format("Exactly: {:.2f} to 1, {}.", answer.hot_parts, span(answer.mixed, question.boiling))) + "\n";
    const std::string care = snow ? "use snow that neither drips (too hot then) nor is far below freezing (too cool)"
                             : frozen ? "dip the cold water while ice still floats in it"
                                      : "measure the cold water just before";
    out +=
        wrap(fmt::format("Water boils here at {}. Most errors make the mixture cooler: water that left the fire a "
                         "while ago, a slow pour, a cold box. \"Likely\" is for a box warmed first and water that has "
                         "cooled a little on its way; the ends hold for a cold box too. Warm the box first, pour at a rolling boil, stir, and "
                         "{}. This is good for the start only and says nothing about an hour later.",
                         units::print(question.boiling, units::System::both, {0.1}), care));
    out += "Boiling water scalds at once: nobody else near, and do not carry the full box.\n";
    return out;
}

Exit mix(const MixOptions& given, const CLI::App& line) {
    Options options;
    const answer::MixQuestion question = question_from(given, line, options);
    if (!options.problems().empty()) {
        tell(options.problems());
        return Exit::bad_input;
    }
    const auto answer = answer::mix(question);
    if (!answer) {
        tell(answer.problems());
        return Exit::bad_input;
    }
    if (!given.json) {
        fmt::print("{}", plain_spaces(mix_text(question, *answer)));
        return Exit::done;
    }
    const answer::SimpleParts& simple = answer->simple;
    const Json simple_json{{"hot_parts", simple.hot},
                           {"cold_parts", simple.cold},
                           {"result_c", simple.mixed.result.celsius()},
                           {"likely_c", simple.mixed.likely.celsius()},
                           {"low_c", simple.mixed.low.celsius()},
                           {"high_c", simple.mixed.high.celsius()}};
    fmt::print("{}", answer_text({{"hot_parts", answer->hot_parts},
                                  {"cold_parts", 1},
                                  {"result_c", answer->mixed.result.celsius()},
                                  {"likely_c", answer->mixed.likely.celsius()},
                                  {"low_c", answer->mixed.low.celsius()},
                                  {"high_c", answer->mixed.high.celsius()},
                                  {"boiling_c", question.boiling.celsius()},
                                  {"simple", simple_json}},
                                 {}));
    return Exit::done;
}

}  // namespace

Command add_mix(CLI::App& program) {
    const auto given = std::make_shared<MixOptions>();
    CLI::App* line = program.add_subcommand("mix", "how much boiling water to how much cold");
    line->add_option("--target", given->target, "wanted temperature, like \"60 C\"");
    line->add_option("--altitude", given->altitude, "how high you are, like \"1850 m\"");
    line->add_option("--cold", given->cold,
                     "temperature of the cold water, like \"2 C\"; or slush (ice water), or snow");
    line->add_option("--by", given->by, "measured by volume or mass")->capture_default_str();
    line->add_flag("--json", given->json, "hot_parts, cold_parts, result_c (nothing lost), likely_c, low_c, high_c");
    return {line, [given, line] { return mix(*given, *line); }, true};
}

}  // namespace holdwater::cli
