// SPDX-License-Identifier: MIT
#include "plan/result/events.hpp"

#include <algorithm>

namespace holdwater::plan {
namespace {

/// For the ith of the earlier sittings: the pan takes as long as for the last, and nothing comes out before it is
/// ready.
units::LocalTime first_piece_out(const Plan& plan, std::size_t i) {
    const units::LocalTime sitting = plan.trip->serve.after(-plan.trip->earlier_sittings[i]);
    units::LocalTime out = sitting.after(-plan.around.sear.takes);
    for (const FoodPlan& food : plan.foods) {
        if (food.eaten == plan.trip->serve) {
            out = std::max(out, food.finishing ? food.leaves() : food.ready());
        }
    }
    return std::min(out, sitting);
}

/// What is finished over the fire is so for each sitting anew, its share of it: how long after the first one.
std::vector<units::Duration> sittings_of(const Plan& plan, const FoodPlan& food) {
    std::vector<units::Duration> after;
    if (food.finishing) {
        const auto& before = plan.trip->earlier_sittings;
        for (const units::Duration one : food.eaten == plan.trip->serve ? before : std::vector<units::Duration>{}) {
            after.push_back(before.front() - one);
        }
        after.push_back(food.eaten.since(food.due));
    }
    return after;
}

}  // namespace

std::vector<Event> events_of(const Plan& plan) {
    std::vector<Event> events;
    events.push_back({plan.fill.light_fire, Event::Kind::light_fire, 0});
    if (plan.fill.warming.si() > 0.0) {
        events.push_back({plan.fill.warm_at, Event::Kind::warm_box, 0});
    }
    for (std::size_t i = 0; i < plan.fill.pours.size(); ++i) {
        events.push_back({plan.fill.pours[i].at, Event::Kind::pour, i});
    }
    for (std::size_t i = 0; i < plan.foods.size(); ++i) {
        const FoodPlan& food = plan.foods[i];
        const auto same = [&](const Event& e) { return e.kind == Event::Kind::food_in && e.at == food.in; };
        if (std::none_of(events.begin(), events.end(), same)) {
            events.push_back({food.in, Event::Kind::food_in, i});
        }
        for (const units::Duration later : sittings_of(plan, food)) {
            const units::LocalTime light = food.finishing->light_fire.after(later);
            const auto lit = [light](const Event& e) { return e.kind == Event::Kind::boil_finish && e.at == light; };
            if (std::none_of(events.begin(), events.end(), lit)) {
                events.push_back({light, Event::Kind::boil_finish, i});
            }
        }
        if (food.eaten < plan.trip->serve) {
            events.push_back({food.eaten, Event::Kind::take_out, i});
        }
    }
    for (std::size_t i = 0; i < plan.top_ups.size(); ++i) {
        events.push_back({plan.top_ups[i].at, Event::Kind::top_up, i});
    }
    for (std::size_t i = 0; i < plan.foods.size(); ++i) {
        if (!plan.foods[i].standard.kept_hot) {  // that was ready before it went in
            events.push_back({plan.foods[i].ready(), Event::Kind::ready, i});
        }
        for (const units::Duration later : sittings_of(plan, plan.foods[i])) {
            events.push_back({plan.foods[i].leaves().after(later), Event::Kind::finish, i});
        }
    }
    for (std::size_t i = 0; i < plan.around.hot_water.list.size(); ++i) {
        events.push_back({plan.around.hot_water.list[i].light_fire, Event::Kind::hot_water, i});
    }
    for (std::size_t i = 0; i < plan.trip->earlier_sittings.size(); ++i) {
        events.push_back({first_piece_out(plan, i), Event::Kind::sitting, i});
    }
    events.push_back({plan.trip->serve, Event::Kind::serve, 0});
    std::stable_sort(events.begin(), events.end(), [](const Event& a, const Event& b) { return a.at < b.at; });
    return events;
}

}  // namespace holdwater::plan
