// SPDX-License-Identifier: MIT
#include "plan/result/judged_warming.hpp"

#include "answer/review/review_food.hpp"
#include "answer/review/review_ready.hpp"
#include "facts/facts.hpp"
#include "heat/driven.hpp"
#include "safety/clocks.hpp"

namespace holdwater::plan {

using units::Duration;

units::History always(units::Temperature reading) {
    units::History bath;
    bath.add(Duration{0}, reading);
    return bath;
}

units::History low_readings(const Ensemble& ensemble, const std::vector<ScenarioResult>& results,
                            const FoodPlan& food) {
    const std::vector<Duration> moments = curve_moments(ensemble.setup());
    const Duration in = food.in.since(ensemble.setup().trip->from);
    units::History low;
    for (std::size_t k = 0; k < moments.size(); ++k) {
        if (moments[k] < in) {
            continue;
        }
        std::vector<units::Temperature> bath;
        bath.reserve(results.size());
        for (const ScenarioResult& one : results) {
            bath.push_back(one.bath[k]);
        }
        low.add(moments[k] - in, ensemble.interval(bath).low);
    }
    return low;
}

bool surely_comes_up(const Plan& plan, const FoodPlan& food, const units::History& readings) {
    const facts::Facts& facts = facts::facts();
    const auto modes = answer::modes_for(food.piece, heat::Bound::slow);
    if (!modes || readings.empty()) {
        return false;
    }
    const Duration end = facts.duration("come-up.refuse") + units::hours(1);
    const units::TemperatureDifference error = plan.trip->boxes.front().thermometer.value_or(units::kelvins(0));
    units::History bath;
    for (const units::History::Point& point : readings.points) {
        bath.add(point.at, point.value - error);
    }
    if (bath.points.back().at < end) {
        bath.add(end, bath.points.back().value);
    }
    const units::History seen = answer::seen_by_food(bath, Duration{0}, units::kelvins(facts.spread("unstirred").high));
    const units::Temperature start = food.piece.start + units::kelvins(facts.spread("start").low);
    const units::History core = heat::driven(*modes, start, seen, Duration{0}, end).core;
    return safety::judge_come_up(safety::come_up(core)) != safety::ComeUpVerdict::refused;
}

}  // namespace holdwater::plan
