// SPDX-License-Identifier: MIT
#include "cli/commands/commands.hpp"
#include "cli/commands/common_rows.hpp"
#include "cli/json/answers_json.hpp"
#include "cli/line/options.hpp"
#include "cli/text/fingertip_text.hpp"

#include <fmt/format.h>

namespace holdwater::cli {
namespace {

const OptionRow fingertip_bath_row{.name = "--bath",
                                   .value = "T",
                                   .help = "how soon water this hot stings and burns",
                                   .range = {"0 C", "100 C", "60 C"},
                                   .one_of = "asked"};
const OptionRow fingertip_sting_row{
    .name = "--sting",
    .value = "TIME",
    .help = "which baths a first sting after this time speaks for",
    .range = {"0 s", "10 s", "2 s", "nobody keeps a finger in hot water for longer than a count of two"},
    .one_of = "asked"};
const OptionRow fingertip_still{.name = "--still", .help = "the water was not stirred"};

template <class Answer>
Exit say(const Answer& answer, bool json) {
    fmt::print("{}", json ? to_json(answer) : to_text(answer));
    return Exit::done;
}

Act read_fingertip(Options& options) {
    if (options.has(fingertip_bath_row) == options.has(fingertip_sting_row)) {
        options.fault("fingertip", "option-one-of", "asks for one of --bath and --sting",
                      fmt::format("{} or {}", written(fingertip_bath_row), written(fingertip_sting_row)));
    }
    const auto bath = options.maybe<units::Temperature>(fingertip_bath_row);
    const auto sting = options.maybe<units::Duration>(fingertip_sting_row);
    const auto stirring = options.has(fingertip_still) ? safety::Stirring::still : safety::Stirring::stirred;
    return [=, json = options.has(json_row)] {
        return bath ? say(fingertip_bath(*bath, stirring), json) : say(fingertip_sting(*sting, stirring), json);
    };
}

}  // namespace

Command fingertip_command() {
    return {.name = "fingertip",
            .group = headings::figure,
            .summary = "what a fingertip can and cannot tell about hot water",
            .rows = {fingertip_bath_row, fingertip_sting_row, fingertip_still, json_row},
            .examples = {"fingertip --bath \"60 C\"", "fingertip --sting \"2 s\""},
            .read = read_fingertip,
            .formerly = "touch"};
}

}  // namespace holdwater::cli
