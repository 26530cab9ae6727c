// SPDX-License-Identifier: MIT
#include "plan/result/events.hpp"

#include <algorithm>

namespace holdwater::plan {

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
        if (food.finishing) {
            const units::LocalTime light = food.finishing->light_fire;
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
        if (plan.foods[i].finishing) {
            events.push_back({plan.foods[i].leaves(), Event::Kind::finish, i});
        }
    }
    for (std::size_t i = 0; i < plan.around.hot_water.list.size(); ++i) {
        events.push_back({plan.around.hot_water.list[i].light_fire, Event::Kind::hot_water, i});
    }
    for (std::size_t i = 0; i < plan.trip->earlier_sittings.size(); ++i) {
        events.push_back({plan.trip->serve.after(-plan.trip->earlier_sittings[i]), Event::Kind::sitting, i});
    }
    events.push_back({plan.trip->serve, Event::Kind::serve, 0});
    std::stable_sort(events.begin(), events.end(), [](const Event& a, const Event& b) { return a.at < b.at; });
    return events;
}

}  // namespace holdwater::plan
