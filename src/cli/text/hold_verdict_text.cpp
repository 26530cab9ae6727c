// SPDX-License-Identifier: MIT
#include "cli/text/hold_text.hpp"
#include "facts/facts.hpp"
#include "facts/published.hpp"
#include "safety/clocks.hpp"
#include "trip/ranges.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace holdwater::cli {
namespace {

using answer::OnePieceAnswer;
using answer::OnePieceQuestion;
using answer::Why;
using units::System;
using units::Toward;

std::string up(units::Duration d) {
    return units::print(d, Toward::up);
}

/// Whole degrees where they are, else tenths; rounded in both units to the side that matters.
std::string both_units(units::Temperature t, Toward toward) {
    const bool whole = std::abs(t.celsius() - std::round(t.celsius())) < 1e-9;
    return units::print(t, System::both, {whole ? 1.0 : 0.1, toward});
}

/// What has to be reached or kept: no figure of it is lower than it is.
std::string at_least(units::Temperature t) {
    return both_units(t, Toward::up);
}

/// A limit of the rules, as its publisher prints it.
std::string limit(units::Temperature t) {
    return facts::printed_pair(t) != nullptr ? units::written(facts::published(t, System::both)) : at_least(t);
}

std::string about(units::Temperature t) {
    return both_units(t, Toward::nearest);
}

std::string thin_enough(const std::optional<units::Length>& thickest) {
    return thickest
               ? fmt::format("split it: at most {} thick", units::print(*thickest, System::both, {1.0, Toward::down}))
               : "even a thin piece does not make it";
}

/// Whose advice to consumers is set against a target.
std::string whose_advice(facts::Ruleset ruleset) {
    const facts::GeneralRules& rules = facts::facts().rules_of(ruleset);
    const std::string note = rules.adviser_note.empty() ? "" : " (" + rules.adviser_note + ")";
    return "the official advice to consumers of " + rules.adviser + note;
}

std::string rules_name(const OnePieceQuestion& question) {
    return fmt::format("rules \"{}\"", facts::to_name(question.rules));
}

/// "74 °C (165 °F) inside", with its time if there is one.
std::string finish_words(const safety::Finish& finish) {
    const std::string hold = finish.hold.si() > 0.0 ? " for " + (finish.hold < units::minutes(1.0)
                                                                     ? fmt::format("{:.0f} s", finish.hold.si())
                                                                     : up(finish.hold))
                                                    : "";
    return limit(finish.core) + " inside" + hold;
}

std::string free_words(const OnePieceAnswer& answer) {
    return answer.safe_if_free ? fmt::format(
                                     " Or keep it apart and off the bottom, with water on every face (--contact "
                                     "free): then {} (cautious).",
                                     up(*answer.safe_if_free))
                               : "";
}

std::string nearest_words(const OnePieceQuestion& question, const OnePieceAnswer& answer) {
    const answer::NearestPlan& plan = *answer.nearest;
    const std::string what = fmt::format("The nearest plan allowed ({}): aim at {} inside in a bath of {}",
                                         rules_name(question), at_least(plan.target), at_least(plan.bath));
    if (!plan.safe) {
        return fmt::format("{}, but this piece is too thick for it; {}.{}", what, thin_enough(plan.thickest),
                           free_words(answer));
    }
    return plan.finish ? fmt::format("{}; this piece then needs {} (cautious) and after it {} over the fire.", what,
                                     up(*plan.safe), finish_words(*plan.finish))
                       : fmt::format("{}; this piece is then safe after {} (cautious).", what, up(*plan.safe));
}

/// How far the core gets, for answers that are physics only.
std::string reach_words(const OnePieceAnswer& answer) {
    const answer::ReadingOfPiece& last = answer.given ? *answer.given : *answer.cautious;
    const std::string when = last.times.reach ? "after " + up(*last.times.reach) : std::string("never");
    return fmt::format("the core is at {} {} ({})", about(answer.target), when, answer.given ? "given" : "cautious");
}

/// Rules under which food is kept warmer than it may be cooked: how long it may be left in this bath once it is done.
std::string once_done(const OnePieceQuestion& question, const OnePieceAnswer& answer) {
    if (question.bath >= answer.standard->hold_floor) {
        return {};
    }
    const facts::Facts& facts = facts::facts();
    const facts::GeneralRules& rules = facts.rules_of(question.rules);
    return fmt::format(
        " Eat it then: these rules keep cooked food at {} or above, and this bath is cooler. They allow that {}for "
        "under "
        "{}.",
        limit(answer.standard->hold_floor), rules.fall_once ? "once, " : "",
        units::print(facts.duration(rules.fall_once.value_or(rules.eat_now))));
}

/// What the steady bath of known temperature leaves out.
std::string as_read_words(const OnePieceAnswer& answer) {
    if (!answer.as_read) {
        return {};
    }
    const std::string thermometer = units::print(facts::facts().difference("class.thermometer"), System::metric);
    return answer.as_read->allowed
               ? fmt::format(" If that is what a thermometer good to {} reads in a box that nobody stirs: after {}.",
                             thermometer,
                             // Never sooner than in a bath that is known, whose verdict takes every part at its worst.
                             up(std::max(*answer.as_read->allowed, answer.safe.value_or(units::Duration{}))))
               : fmt::format(
                     " If that is what a thermometer good to {} reads in a box that nobody stirs, it is too "
                     "near the floor to count on.",
                     thermometer);
}

std::string safe_words(const OnePieceQuestion& question, const OnePieceAnswer& answer) {
    std::string words = fmt::format("Safe to eat after {} (cautious) in a bath that stays at {} or above ({}).",
                                    up(*answer.safe), at_least(question.bath), rules_name(question));
    if (question.target) {
        const auto& reach = answer.cautious->times.reach;
        words += reach ? fmt::format(" The core is at {} after {}.", about(answer.target), up(*reach))
                       : fmt::format(" The core never gets to {} in this bath.", about(answer.target));
    }
    return words + as_read_words(answer) + once_done(question, answer);
}

std::string too_cool_words(const OnePieceQuestion& question, const OnePieceAnswer& answer) {
    const safety::Standard& standard = *answer.standard;
    const units::Temperature row = standard.kill->rows.front().core;
    const units::Temperature core = std::max(row, standard.core_at_least);
    // A bath at its floor will do unless the core itself, which never quite reaches the bath, has to get there.
    const bool floor_will_do = row < standard.cook_floor && standard.core_at_least <= standard.cook_floor;
    return fmt::format(
        "No: a bath of {} is too cool for this food under {}. However long it stays in, it "
        "needs {}{}.",
        both_units(question.bath, Toward::down), rules_name(question), floor_will_do ? "at least " : "more than ",
        limit(std::max(core, standard.cook_floor)));
}

std::string start_words(const OnePieceQuestion& question, const OnePieceAnswer& answer) {
    const bool warm = answer.why == Why::start_warm;
    const std::string why =
        warm ? fmt::format(
                   "food that goes in at {} has been warm before, and nobody knows for how long. Germs may have grown "
                   "and "
                   "left poison that no bath destroys. Raw food goes in at {} or colder",
                   about(question.start), trip::ranges::start.high)
             : fmt::format(
                   "at {} the food is frozen, and the heat that thawing takes is not worked out here. Thaw it "
                   "first, and let it go in at {} or warmer",
                   about(question.start), trip::ranges::start.low);
    return fmt::format("No, physics only: {}. By the numbers alone, {}.", why, reach_words(answer));
}

std::string too_slow_words(const OnePieceAnswer& answer) {
    const facts::Facts& facts = facts::facts();
    const std::string takes = answer.come_up ? fmt::format("takes {}", up(*answer.come_up)) : "never gets there";
    return fmt::format(
        "No: from {} to {} the core {} (cautious); over {} is refused, because germs grow meanwhile. In "
        "this bath, {}.{}",
        about(facts.temperature("come-up.from")), about(facts.temperature("come-up.to")), takes,
        up(facts.duration("come-up.refuse")), thin_enough(answer.thickest), free_words(answer));
}

/// What a real bath has to be kept at, which falls where this one is steady.
void note_bath(const OnePieceQuestion& question, const OnePieceAnswer& answer, problem::Problems& notes) {
    const safety::Standard& standard = *answer.standard;
    if (question.bath < standard.action_line) {
        notes.push_back(
            problem::note("bath-near-floor",
                          fmt::format("a real bath falls: while it cooks keep its reading above {}, and never below {}",
                                      limit(standard.action_line), limit(standard.cook_floor))));
    }
    if (standard.hold_floor > standard.cook_floor) {
        notes.push_back(problem::note(
            "hold-floor", fmt::format("once it is done these rules keep it at {} or above: top up before its reading "
                                      "falls to {}, or eat it at once",
                                      limit(standard.hold_floor), limit(standard.hold_action_line))));
    }
}

/// What the published rows behind a yes were measured for, and where they are weak.
void note_rows(const OnePieceQuestion& question, const OnePieceAnswer& answer, problem::Problems& notes) {
    const safety::Standard& standard = *answer.standard;
    const facts::KillStandard& kill = *standard.kill;
    if (!kill.germ.empty()) {
        const bool red_meat = question.kind->category == facts::Category::red_meat;
        notes.push_back(problem::note(
            "rows-for-salmonella",
            fmt::format("these hold times were worked out for {}; other germs are killed by the way{}", kill.germ,
                        red_meat ? fmt::format(", but near {}, the lowest row, some of them take longer (source "
                                               "mcminn-2018): a few degrees more are safer",
                                               limit(kill.rows.front().core))
                                 : "")));
    }
    if (standard.below_consumer_advice) {
        const units::Duration hold = standard.consumer_hold;
        notes.push_back(
            problem::note("below-consumer-advice",
                          fmt::format("meets the published rows ({}; source {}), but lies under {}: {}{} inside",
                                      kill.claim, kill.source, whose_advice(question.rules),
                                      limit(standard.consumer_core), hold.si() > 0.0 ? " for " + up(hold) : "")));
    }
}

}  // namespace

std::string hold_verdict(const OnePieceQuestion& question, const OnePieceAnswer& answer) {
    switch (answer.why) {
        case Why::safe:
            return safe_words(question, answer);
        case Why::own_figures:
            return fmt::format("By your own kill figures safe after {}; the program knows no rule that says so.",
                               up(*answer.safe));
        case Why::no_kind:
            return fmt::format("Physics only: {}. Without --kind nothing is said about safety.", reach_words(answer));
        case Why::kind_refused:
            return fmt::format("No. {} {} The numbers are physics only.", answer.refusal->message,
                               answer.refusal->hint);
        case Why::target_refused:
            return fmt::format("No. {} {}", answer.refusal->message, nearest_words(question, answer));
        case Why::bath_too_cool:
            return too_cool_words(question, answer) + " " + nearest_words(question, answer);
        case Why::cools:
            return fmt::format("This bath cools the food and makes nothing safe: {}.", reach_words(answer));
        case Why::start_warm:
        case Why::start_frozen:
            return start_words(question, answer);
        case Why::too_slow:
            return too_slow_words(answer);
        case Why::never_safe:
            return fmt::format("No: this piece is not safe within 72 h in a bath of {}. {}", about(question.bath),
                               nearest_words(question, answer));
        case Why::needs_finish:
            return fmt::format(
                "Not from the bath alone. {} After {} in the bath (cautious), bring it at once over the "
                "fire to {}; eat it only then.",
                answer.standard->finish->why, up(*answer.safe), finish_words(*answer.standard->finish));
    }
    return {};
}

problem::Problems hold_warnings(const OnePieceQuestion& question, const OnePieceAnswer& answer) {
    problem::Problems warnings;
    if (!answer.eat()) {
        problem::Problem physics =
            problem::warning("physics-only", "not to be eaten from this bath alone: see the verdict");
        // Without a kind, physics is all that was asked for.
        physics.severity = answer.why == Why::no_kind ? problem::Severity::note : physics.severity;
        warnings.push_back(physics);
    }
    if (answer.why == Why::own_figures) {
        warnings.push_back(problem::note(
            "own-kill-figures", "kill is judged by the figures given, below what any rule here credits or asks"));
    }
    if (question.target && *question.target > question.bath && question.bath > question.start) {
        warnings.push_back(problem::warning("target-above-bath", "the core never gets warmer than the bath"));
    }
    const auto verdict = safety::judge_come_up(answer.come_up);
    if (answer.eat() && verdict == safety::ComeUpVerdict::slow) {
        warnings.push_back(problem::note(
            "come-up-slow",
            fmt::format("the core takes {} to come up (cautious): a thinner piece is safer", up(*answer.come_up))));
    }
    if (answer.eat() && answer.standard) {
        note_bath(question, answer, warnings);
    }
    if (answer.why == Why::safe) {
        note_rows(question, answer, warnings);
    }
    if (question.body.shape == facts::Shape::slab && (question.body.width || question.body.length)) {
        warnings.push_back(problem::warning("size-not-used", "a slab is worked out from its thickness alone",
                                            "use --shape block if the edges matter"));
    }
    if (question.body.shape == facts::Shape::ball && (question.body.width || question.body.length)) {
        warnings.push_back(problem::warning("size-not-used", "a ball is worked out from its diameter alone"));
    }
    if (question.body.shape == facts::Shape::round && question.body.width) {
        warnings.push_back(problem::warning("size-not-used", "a round is worked out from its thickness and length"));
    }
    return warnings;
}

}  // namespace holdwater::cli
