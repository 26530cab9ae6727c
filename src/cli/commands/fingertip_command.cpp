// SPDX-License-Identifier: MIT
#include "cli/app.hpp"
#include "cli/files/files.hpp"
#include "cli/json/json.hpp"
#include "cli/line/unknown_words.hpp"
#include "cli/text/fingertip_text.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <memory>
#include <string>

namespace holdwater::cli {
namespace {

constexpr Range bath_range{"0 C", "100 C", "60 C"};
constexpr Range sting_range{"0 s", "10 s", "2 s",
                            "nobody keeps a finger in hot water for longer than a count of two"};

struct TouchOptions {
    Given bath;
    Given sting;
    bool still = false;
    bool json = false;
};

Json band_json(const safety::StingBand& band) {
    return Json::array({seconds_or_null(band.p5), seconds_or_null(band.p50), seconds_or_null(band.p95)});
}

Json band_json(const std::optional<safety::BathBand>& band) {
    if (!band) {
        return nullptr;
    }
    return Json::array({band->p5.celsius(), band->p50.celsius(), band->p95.celsius()});
}

Exit tell_bath(units::Temperature bath, safety::Stirring stirring, bool json) {
    const BathTouch answer = touch_bath(bath, stirring);
    if (json) {
        const Json whole{{"sting_s", {{"warm", band_json(answer.warm)}, {"cold", band_json(answer.cold)}}},
                         {"burn_s",
                          {{"second", seconds_or_null(answer.burn.second)},
                           {"third", seconds_or_null(answer.burn.third)},
                           {"infant", seconds_or_null(answer.burn.infant)}}}};
        fmt::print("{}", answer_text(whole, {}));
    } else {
        fmt::print("{}", to_text(answer));
    }
    return Exit::done;
}

Exit tell_sting(units::Duration sting, safety::Stirring stirring, bool json) {
    const StingTouch answer = touch_sting(sting, stirring);
    if (json) {
        const Json whole{{"bath_c", {{"warm", band_json(answer.warm)}, {"cold", band_json(answer.cold)}}}};
        fmt::print("{}", answer_text(whole, {}));
    } else {
        fmt::print("{}", to_text(answer));
    }
    return Exit::done;
}

Exit touch(const TouchOptions& given, const CLI::App& line) {
    Options options;
    tell_unknown_words(line, options);
    if (given.bath.has_value() == given.sting.has_value()) {
        options.fault("touch", "option-one-of", "asks for one of --bath and --sting",
                      "--bath \"60 C\" or --sting \"2 s\"");
    }
    const auto bath = options.maybe<units::Temperature>("--bath", given.bath, bath_range);
    const auto sting = options.maybe<units::Duration>("--sting", given.sting, sting_range);
    if (!options.problems().empty()) {
        tell(options.problems());
        return Exit::bad_input;
    }
    const safety::Stirring stirring = given.still ? safety::Stirring::still : safety::Stirring::stirred;
    return bath ? tell_bath(*bath, stirring, given.json) : tell_sting(*sting, stirring, given.json);
}

}  // namespace

Command add_touch(CLI::App& program) {
    const auto given = std::make_shared<TouchOptions>();
    CLI::App* line = program.add_subcommand("touch", "say what a fingertip can and cannot tell about hot water");
    line->add_option("--bath", given->bath, "how soon water this hot stings and burns, 0 to 100 C");
    line->add_option("--sting", given->sting, "which baths a first sting after this time speaks for, 0 to 10 s");
    line->add_flag("--still", given->still, "the water was not stirred");
    line->add_flag("--json", given->json, "the numbers for other programs");
    return {line, [given, line] { return touch(*given, *line); }, true};
}

}  // namespace holdwater::cli
