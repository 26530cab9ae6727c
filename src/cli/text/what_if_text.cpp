// SPDX-License-Identifier: MIT
#include "cli/text/what_if_text.hpp"

#include "card/shared/figures.hpp"
#include "plan/result/late_pour.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

namespace holdwater::cli {
namespace {

using units::Toward;

std::string question(const trip::WhatIf& what, units::System system) {
    std::string text;
    const auto add = [&](const std::string& part) { text += (text.empty() ? "" : ", ") + part; };
    if (what.colder) {
        add(units::print(*what.colder, system, {1.0, Toward::nearest}) + " colder");
    }
    if (what.later) {
        add("meal " + units::print(*what.later) + " later");
    }
    if (what.fire_out) {
        add("no fire for " + units::print(*what.fire_out));
    }
    return what.name + " (" + text + ")";
}

/// Nobody can read the bath, nor tell what the core has: what a pour that late still allows.
std::string answer_by_clock(const plan::WhatIfAnswer& answer, const plan::Plan& plan, const card::CardWriter& writer) {
    switch (plan::late_step(plan, answer)) {
        case plan::LateStep::none:
            return "holds: no pour comes later than the plan allows for.";
        case plan::LateStep::boil_and_eat:
            return fmt::format(
                "a pour may come so late that the food goes at once into a pot at a hard boil for {}: eat "
                "it now, keep none.",
                writer.must_hold(plan.late_pour->boil));
        case plan::LateStep::throw_away:
            return "a pour may come so late that the food is thrown away.";
    }
    return {};
}

std::string answer_of(const plan::WhatIfAnswer& answer, const plan::Plan& plan) {
    const card::CardWriter writer{plan, words::Words::model()};
    const std::string full = writer.full();
    const units::Duration without = answer.what->fire_out.value_or(units::Duration{0}) + plan.round;
    const std::string early =
        without <= answer.longest
            ? std::string(" Top up just before it goes out, and it holds.")
            : fmt::format(" Topped up just before it goes out, it holds {} of it.", writer.may_leave(answer.longest));
    if (!answer.broken.empty()) {
        return "does not hold: " + answer.broken;
    }
    if (!writer.reads() && answer.what->fire_out) {
        return answer_by_clock(answer, plan, writer);
    }
    switch (answer.action) {
        case safety::FallAction::none:
            break;
        case safety::FallAction::finish_and_eat_next:
            return fmt::format("at the worst moment up to {} below the floor: core to {} over the fire, eat next.{}",
                               units::print(answer.below, Toward::up), full, early);
        case safety::FallAction::finish_and_eat_now:
            return fmt::format("at the worst moment up to {} below the floor: core to {} over the fire, eat now.{}",
                               units::print(answer.below, Toward::up), full, early);
        case safety::FallAction::throw_away:
            return fmt::format("at the worst moment up to {} below the floor: throw it away.{}",
                               units::print(answer.below, Toward::up), early);
    }
    if (!answer.what->colder && !answer.what->later) {
        return "holds: the bath stays above the floor even at the worst moment.";
    }
    return fmt::format(
        "holds, with {} top-up{}{}; left alone {} at the most.", answer.top_ups, answer.top_ups == 1 ? "" : "s",
        answer.wakes > 0 ? fmt::format(", {} of them by night", answer.wakes) : "", writer.may_leave(answer.longest));
}

}  // namespace

std::string what_if_text(const plan::Plan& plan) {
    std::string text;
    for (const plan::WhatIfAnswer& answer : plan.what_ifs) {
        text += fmt::format("{}What if: {}: {}\n", text.empty() ? "\n" : "", question(*answer.what, plan.trip->units),
                            answer_of(answer, plan));
    }
    return text;
}

}  // namespace holdwater::cli
