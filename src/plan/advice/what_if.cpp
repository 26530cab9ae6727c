// SPDX-License-Identifier: MIT
#include "plan/advice/what_if.hpp"

#include "plan/result/night.hpp"

#include <algorithm>

namespace holdwater::plan {
namespace {

using units::Duration;

void make_colder(trip::Weather& weather, units::TemperatureDifference by) {
    if (auto* daily = std::get_if<std::vector<trip::Weather::Daily>>(&weather.hours)) {
        for (trip::Weather::Daily& hour : *daily) {
            hour.air = hour.air - by;
        }
    } else {
        for (trip::Weather::Dated& hour : std::get<std::vector<trip::Weather::Dated>>(weather.hours)) {
            hour.air = hour.air - by;
        }
    }
}

/// Plans a changed trip with a little less effort: the answer is one line, not a card to cook by.
void plan_anew(const trip::Trip& changed, WhatIfAnswer& answer) {
    Effort effort;
    effort.search = {128, 1};
    effort.promise = {full_draw().points, 1};
    effort.advise = false;
    effort.what_ifs = false;
    effort.for_cards = false;
    const auto plan = plan_as_given(std::make_shared<const trip::Trip>(changed), effort);
    answer.holds = plan.ok();
    if (!plan) {
        answer.broken = plan.problems().front().message;
        return;
    }
    answer.top_ups = plan->top_ups.size();
    answer.wakes = static_cast<std::size_t>(
        std::count_if(plan->top_ups.begin(), plan->top_ups.end(), [](const TopUp& t) { return t.wakes; }));
    answer.longest = plan->night.longest;
}

}  // namespace

std::vector<WhatIfAnswer> answers_to_what_ifs(const Ensemble& ensemble, const Schedule& schedule, const Plan& plan) {
    std::vector<WhatIfAnswer> answers;
    for (const trip::WhatIf& what : plan.trip->what_ifs) {
        WhatIfAnswer answer;
        answer.what = &what;
        const bool anew = what.colder || what.later;
        answer.holds = true;
        answer.top_ups = plan.top_ups.size();
        answer.longest = plan.night.longest;
        if (anew) {
            trip::Trip changed = *plan.trip;
            if (what.colder) {
                make_colder(changed.weather, *what.colder);
            }
            if (what.later) {
                changed.serve = changed.serve.after(*what.later);
            }
            plan_anew(changed, answer);
            // Colder or later is never left longer than the same box as planned.
            answer.longest = std::min(answer.longest, plan.night.longest);
            if (what.colder && !plan.top_ups.empty()) {
                answer.longest = std::min(answer.longest, plan.interval_rough);
            }
        }
        if (what.fire_out) {
            const FireOut out = fire_out(ensemble, schedule, *what.fire_out, what.colder.value_or(units::kelvins(0)));
            answer.below = out.below;
            answer.action = out.action;
            answer.holds = answer.holds && !(out.below > Duration{0});
        }
        answers.push_back(std::move(answer));
    }
    return answers;
}

}  // namespace holdwater::plan
