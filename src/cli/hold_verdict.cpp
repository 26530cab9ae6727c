// SPDX-License-Identifier: MIT
#include "cli/hold_text.hpp"
#include "safety/clocks.hpp"
#include "safety/refusals.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace holdwater::cli {
namespace {

using answer::OnePieceAnswer;
using answer::OnePieceQuestion;
using answer::Why;
using safety::in_both;
using units::System;
using units::Toward;

std::string up(units::Duration d) {
    return units::print(d, Toward::up);
}

std::string thin_enough(const std::optional<units::Length>& thickest) {
    return thickest
               ? fmt::format("split it: at most {} thick", units::print(*thickest, System::both, {1.0, Toward::down}))
               : "even a thin piece does not make it";
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
    return in_both(finish.core) + " inside" + hold;
}

std::string free_words(const OnePieceAnswer& answer) {
    return answer.safe_if_free ? fmt::format(
                                     " Or keep it apart and off the floor, with water on every face (--contact "
                                     "free): then {} (cautious).",
                                     up(*answer.safe_if_free))
                               : "";
}

std::string nearest_words(const OnePieceQuestion& question, const OnePieceAnswer& answer) {
    const answer::NearestPlan& plan = *answer.nearest;
    const std::string what = fmt::format("The nearest plan allowed ({}): aim at {} inside in a bath of {}",
                                         rules_name(question), in_both(plan.target), in_both(plan.bath));
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
    return fmt::format("the core is at {} {} ({})", in_both(answer.target), when, answer.given ? "given" : "cautious");
}

std::string safe_words(const OnePieceQuestion& question, const OnePieceAnswer& answer) {
    std::string words = fmt::format("Safe to eat after {} (cautious) in a bath that stays at {} or above ({}).",
                                    up(*answer.safe), in_both(question.bath), rules_name(question));
    if (question.target) {
        const auto& reach = answer.cautious->times.reach;
        words += reach ? fmt::format(" The core is at {} after {}.", in_both(answer.target), up(*reach))
                       : fmt::format(" The core never gets to {} in this bath.", in_both(answer.target));
    }
    return words;
}

std::string too_cool_words(const OnePieceQuestion& question, const OnePieceAnswer& answer) {
    const units::Temperature row = answer.standard->kill->rows.front().core;
    const units::Temperature needed = std::max({row, answer.standard->core_at_least, answer.standard->cook_floor});
    return fmt::format(
        "No: a bath of {} is too cool for this food under {}. However long it stays in, it "
        "needs more than {}.",
        in_both(question.bath), rules_name(question), in_both(needed));
}

std::string too_slow_words(const OnePieceAnswer& answer) {
    const facts::Facts& facts = facts::facts();
    const std::string takes = answer.come_up ? fmt::format("takes {}", up(*answer.come_up)) : "never gets there";
    return fmt::format(
        "No: from {} to {} the core {} (cautious); over {} is refused, because germs grow meanwhile. In "
        "this bath, {}.{}",
        in_both(facts.temperature("come-up.from")), in_both(facts.temperature("come-up.to")), takes,
        up(facts.duration("come-up.refuse")), thin_enough(answer.thickest), free_words(answer));
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
        case Why::too_slow:
            return too_slow_words(answer);
        case Why::never_safe:
            return fmt::format("No: this piece is not safe within 72 h in a bath of {}. {}", in_both(question.bath),
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
        warnings.push_back(problem::warning("physics-only", "not to be eaten from this bath alone: see the verdict"));
    }
    if (answer.why == Why::own_figures) {
        warnings.push_back(problem::warning(
            "own-kill-figures", "kill is judged by the figures given, below what any rule here credits or asks"));
    }
    if (question.target && *question.target > question.bath && question.bath > question.start) {
        warnings.push_back(problem::warning("target-above-bath", "the core never gets warmer than the bath"));
    }
    const auto verdict = safety::judge_come_up(answer.come_up);
    if (answer.eat() && verdict == safety::ComeUpVerdict::slow) {
        warnings.push_back(problem::warning(
            "come-up-slow",
            fmt::format("the core takes {} to come up (cautious): a thinner piece is safer", up(*answer.come_up))));
    }
    if (answer.eat() && answer.standard && question.bath < answer.standard->action_line) {
        warnings.push_back(
            problem::warning("bath-near-floor",
                             fmt::format("a real bath falls: keep its reading above {}, and never below {}",
                                         in_both(answer.standard->action_line), in_both(answer.standard->cook_floor))));
    }
    if (answer.why == Why::safe && answer.standard->below_consumer_advice) {
        const units::Duration hold = answer.standard->consumer_hold;
        warnings.push_back(problem::warning(
            "below-consumer-advice",
            fmt::format("meets rows of published retail rules, but lies under the official advice to consumers: {}{} "
                        "inside",
                        in_both(answer.standard->consumer_core), hold.si() > 0.0 ? " for " + up(hold) : "")));
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
