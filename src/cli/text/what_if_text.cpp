// SPDX-License-Identifier: MIT
#include "cli/text/what_if_text.hpp"

#include "card/shared/shared_parts.hpp"
#include "cli/text/told.hpp"
#include "plan/result/late_pour.hpp"

#include <fmt/format.h>

namespace holdwater::cli {
namespace {

std::string question(const Told& told, const trip::WhatIf& what, int nth) {
    std::string text;
    const auto add = [&](const char* before, const char* key, const char* after) {
        text += (text.empty() ? "" : ", ") + (before + told("terminal", key, nth)) + after;
    };
    if (what.colder) {
        add("", "what-if-colder", " colder");
    }
    if (what.later) {
        add("meal ", "what-if-later", " later");
    }
    if (what.fire_out) {
        add("no fire for ", "what-if-fire-out", "");
    }
    return what.name + " (" + text + ")";
}

/// Nobody can read the bath, nor tell what the core has: what a pour that late still allows.
std::string answer_by_clock(const plan::WhatIfAnswer& answer, const Told& told) {
    switch (plan::late_step(told.plan, answer)) {
        case plan::LateStep::none:
            return "holds: no pour comes later than the plan allows for.";
        case plan::LateStep::boil_and_eat:
            return fmt::format(
                "a pour may come so late that the food goes at once into a pot at a hard boil for {}: eat "
                "it now, keep none.",
                told("trouble", "boil"));
        case plan::LateStep::throw_away:
            return "a pour may come so late that the food is thrown away.";
    }
    return {};
}

/// Of the nth question, from 1.
std::string answer_of(const plan::WhatIfAnswer& answer, const Told& told, int nth) {
    const plan::Plan& plan = told.plan;
    const std::string full = card::full(told.telling(), told.of("trouble"));
    const std::string longest = told("trouble", "what-if", nth);
    const std::string below = told("terminal", "what-if-below", nth);
    const units::Duration without = answer.what->fire_out.value_or(units::Duration{0}) + plan.round;
    const std::string early = without <= answer.longest
                                  ? std::string(" Top up just before it goes out, and it holds.")
                                  : fmt::format(" Topped up just before it goes out, it holds {} of it.", longest);
    if (!answer.broken.empty()) {
        return "does not hold: " + answer.broken;
    }
    if (!told.reads() && answer.what->fire_out) {
        return answer_by_clock(answer, told);
    }
    switch (answer.action) {
        case safety::FallAction::none:
            break;
        case safety::FallAction::finish_and_eat_next:
            return fmt::format("at the worst moment up to {} below the floor: core to {} over the fire, eat next.{}",
                               below, full, early);
        case safety::FallAction::finish_and_eat_now:
            return fmt::format("at the worst moment up to {} below the floor: core to {} over the fire, eat now.{}",
                               below, full, early);
        case safety::FallAction::throw_away:
            return fmt::format("at the worst moment up to {} below the floor: throw it away.{}", below, early);
    }
    if (!answer.what->colder && !answer.what->later) {
        return "holds: the bath stays above the floor even at the worst moment.";
    }
    return fmt::format("holds, with {} top-up{}{}; left alone {} at the most.", answer.top_ups,
                       answer.top_ups == 1 ? "" : "s",
                       answer.wakes > 0 ? fmt::format(", {} of them by night", answer.wakes) : "", longest);
}

}  // namespace

std::string what_if_text(const plan::Plan& plan) {
    if (plan.what_ifs.empty()) {
        return "";
    }
    const Told told(plan);
    std::string text;
    int nth = 0;
    for (const plan::WhatIfAnswer& answer : plan.what_ifs) {
        ++nth;
        text += fmt::format("{}What if: {}: {}\n", text.empty() ? "\n" : "", question(told, *answer.what, nth),
                            answer_of(answer, told, nth));
    }
    return text;
}

}  // namespace holdwater::cli
