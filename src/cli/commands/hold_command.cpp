// SPDX-License-Identifier: MIT
#include "answer/hold/hold_verdict.hpp"
#include "cli/commands/commands.hpp"
#include "cli/commands/common_rows.hpp"
#include "cli/commands/hold_rows.hpp"
#include "cli/files/files.hpp"
#include "cli/files/trip_file.hpp"
#include "cli/json/hold_json.hpp"
#include "cli/line/kinds.hpp"
#include "cli/line/options.hpp"
#include "cli/text/hold_text.hpp"
#include "problem/in_text.hpp"

#include <fmt/format.h>

namespace holdwater::cli {
namespace {

heat::Body read_body(Options& options) {
    heat::Body body;
    if (!options.has(hold_rows::shape)) {
        options.missing(hold_rows::shape, "one of: slab, round, block, ball");
    }
    const auto given_shape = options.one_of<facts::Shape>(hold_rows::shape);
    body.shape = given_shape.value_or(facts::Shape::slab);
    body.thickness = options.need<units::Length>(hold_rows::thickness);
    body.width = options.maybe<units::Length>(hold_rows::width);
    body.length = options.maybe<units::Length>(hold_rows::length);
    if (body.shape == facts::Shape::block) {
        for (const OptionRow* size : {&hold_rows::width, &hold_rows::length}) {
            if (!options.has(*size)) {
                options.missing(*size, "write it like " + written(*size), "a block needs its width and its length");
            }
        }
    }
    // The same defaults as in a trip file: flat pieces end up on the bottom of the box.
    const bool flat = body.shape == facts::Shape::slab;
    body.contact = options.one_of<facts::Contact>(hold_rows::contact)
                       .value_or(flat ? facts::Contact::bottom : facts::Contact::free);
    body.curvature = options.number(hold_rows::curvature).value_or(0.0);
    if (options.has(hold_rows::curvature) && given_shape && !(flat && body.contact == facts::Contact::free)) {
        options.fault(hold_rows::curvature.name, "option-needs", "is only for a slab with water all around",
                      "--shape slab --contact free");
    }
    return body;
}

std::optional<answer::KillFigures> read_kill(Options& options) {
    const auto d = options.maybe<units::Duration>(hold_rows::d_value);
    const auto at = options.maybe<units::Temperature>(hold_rows::d_at);
    const auto rise = options.maybe<units::TemperatureDifference>(hold_rows::z);
    const auto wanted = options.number(hold_rows::log10);
    const OptionRow* const all[] = {&hold_rows::d_value, &hold_rows::d_at, &hold_rows::z, &hold_rows::log10};
    const auto given = [&](const OptionRow* row) { return options.has(*row); };
    if (std::none_of(std::begin(all), std::end(all), given)) {
        return std::nullopt;
    }
    for (const OptionRow* row : all) {
        if (!given(row)) {
            options.missing(
                *row,
                fmt::format("{} {} {} {}", written(*all[0]), written(*all[1]), written(*all[2]), written(*all[3])),
                "kill figures come all four together");
        }
    }
    return d && at && rise && wanted ? std::optional(answer::KillFigures{*d, *at, *rise, *wanted}) : std::nullopt;
}

/// Without a kind it is physics only: all three properties are needed, and whatever the rules ask says nothing.
void read_no_kind(Options& options) {
    const OptionRow* const all[] = {&hold_rows::diffusivity, &hold_rows::conductivity, &hold_rows::film};
    if (std::none_of(std::begin(all), std::end(all), [&](const OptionRow* row) { return options.has(*row); })) {
        options.missing(hold_rows::kind,
                        "see `holdwater sources --foods`; or give --diffusivity, --conductivity and --film");
        return;
    }
    for (const OptionRow* row : all) {
        if (!options.has(*row)) {
            options.missing(*row, "write it like " + written(*row), "without --kind, all three properties are needed");
        }
    }
    for (const OptionRow* row : {&hold_rows::rules, &hold_rows::cut, &hold_rows::at_risk}) {
        if (options.has(*row)) {
            options.fault(row->name, "option-needs", "says nothing without --kind", "add --kind, or leave it out");
        }
    }
}

void read_kind(Options& options, answer::OnePieceQuestion& question) {
    const Given key = options.text(hold_rows::kind);
    if (!key) {
        read_no_kind(options);
        return;
    }
    question.kind = facts::facts().find_food(*key);
    if (question.kind == nullptr) {
        options.fault(hold_rows::kind.name, "kind-unknown",
                      fmt::format("\"{}\" is not a known food", problem::quoted(*key)), kinds_like(*key));
    }
}

void read_bag(Options& options, answer::OnePieceQuestion& question) {
    const Given text = options.text(hold_rows::bag);
    if (!text) {
        return;
    }
    question.bag_given = true;
    if (text->find_first_of("0123456789") != std::string::npos) {
        question.bag = options.need<units::ThermalResistance>(hold_rows::bag);
    } else if (const auto known = facts::from_name<facts::Bag>(*text)) {
        question.bag = *known;
    } else {
        options.unknown(hold_rows::bag, *text, names_of<facts::Bag>(),
                        fmt::format("or its resistance, such as {}", quoted(hold_rows::bag.range.example)));
    }
}

answer::OnePieceQuestion read_piece(Options& options) {
    answer::OnePieceQuestion question;
    read_kind(options, question);
    question.body = read_body(options);
    question.bath = options.need<units::Temperature>(hold_rows::bath);
    question.start = options.need<units::Temperature>(hold_rows::start);
    question.target = options.maybe<units::Temperature>(hold_rows::target);
    question.at = options.maybe<units::Duration>(hold_rows::at);
    read_bag(options, question);
    question.rules = options.one_of<facts::Ruleset>(hold_rows::rules).value_or(facts::Ruleset{});
    question.cut = options.one_of<facts::Cut>(hold_rows::cut).value_or(facts::Cut::intact);
    question.at_risk = options.has(hold_rows::at_risk);
    question.diffusivity = options.maybe<units::Diffusivity>(hold_rows::diffusivity);
    question.conductivity = options.maybe<units::Conductivity>(hold_rows::conductivity);
    question.film = options.maybe<units::FilmCoefficient>(hold_rows::film);
    question.kill = read_kill(options);
    return question;
}

Exit hold(const answer::OnePieceQuestion& question, bool json) {
    const auto answer = answer::answer_one_piece(question);
    if (!answer) {
        tell(answer.problems());
        return Exit::bad_input;
    }
    const problem::Problems warnings = hold_warnings(question, *answer);
    fmt::print("{}", json ? hold_json(question, *answer, warnings) : hold_text(question, *answer, warnings));
    if (answer->why == answer::Why::kind_refused) {
        return Exit::refused;
    }
    return exit_for(warnings);
}

Act read_hold(Options& options) {
    return [question = read_piece(options), json = options.has(json_row)] { return hold(question, json); };
}

}  // namespace

Command hold_command() {
    using namespace hold_rows;
    const auto whose = with_default(with_rules(rules), std::string(facts::to_name(facts::Ruleset{})));
    return {
        .name = "hold",
        .group = headings::figure,
        .summary = "one piece in a steady bath: how long, and may it be eaten",
        .rows = {kind,         shape,   thickness, width, length, bath,    start,    target,
                 at,           contact, bag,       whose, cut,    at_risk, json_row, diffusivity,
                 conductivity, film,    d_value,   d_at,  z,      log10,   curvature},
        .examples = {"hold --kind pork-loin --shape round --thickness \"80 mm\" --bath \"62 C\" --start \"5 C\"",
                     "hold --kind cod --shape slab --thickness \"25 mm\" --bath \"65 C\" --start \"4 C\" --at \"1 h\""},
        .refuses = "a food that no bath makes safe",
        .checks = "worked out, but it may not be eaten so, or something given should be checked",
        .read = read_hold};
}

}  // namespace holdwater::cli
