// SPDX-License-Identifier: MIT
#include "card/figures/kitchen_measures.hpp"

#include "facts/facts.hpp"
#include "units/print.hpp"

#include <algorithm>

namespace holdwater::card {

using units::Toward;

std::string slush_reads(const SafeSide& safe) {
    const units::TemperatureDifference error = safe.plan.trip->boxes.front().thermometer.value_or(units::kelvins(0));
    const units::Temperature zero = units::celsius(0.0);
    const auto half = [](double value, Toward toward) {
        return units::significant(units::round_to(value, 0.5, toward));
    };
    const auto ends = [&](units::System one) {
        const auto in_unit = [&](units::Temperature t) {
            return one == units::System::us ? t.fahrenheit() : t.celsius();
        };
        return safe.words.text("packing.thermometer-ends", {{"low", half(in_unit(zero - error), Toward::up)},
                                                            {"high", half(in_unit(zero + error), Toward::down)},
                                                            {"unit", one == units::System::us ? "°F" : "°C"}});
    };
    const std::string first = ends(units::first_of(safe.system()));
    return units::two(safe.system()) ? first + " (" + ends(units::second_of(safe.system())) + ")" : first;
}

std::string fire_time(units::Duration d) {
    return units::print(d, Toward::up);
}

units::LocalTime first_piece_out(const plan::Plan& plan, const plan::Sear& sear, units::LocalTime meal) {
    units::LocalTime out = sear.own_out();
    for (const plan::FoodPlan& food : plan.foods) {
        if (plan::is_seared(food) && food.eaten == meal) {
            out = std::max(out, food.ready());
        }
    }
    return std::min(out, meal);
}

std::optional<units::LocalTime> late_asked(const plan::Plan& plan) {
    const units::LocalTime serve = plan.trip->serve;
    std::optional<units::LocalTime> first;
    for (const plan::Event& event : plan.events) {
        const bool served = event.kind == plan::Event::Kind::serve && event.at == serve;
        const bool to_the_fire = event.kind == plan::Event::Kind::finish && plan.foods[event.index].eaten == serve;
        if (served || to_the_fire) {
            first = first ? std::min(*first, event.at) : event.at;
        }
    }
    if (!first) {
        return std::nullopt;
    }
    if (std::any_of(plan.foods.begin(), plan.foods.end(),
                    [&](const plan::FoodPlan& food) { return plan::is_seared(food) && food.eaten == serve; })) {
        first = std::min(*first, first_piece_out(plan, plan.around.sear, serve));
    }
    const units::LocalTime asked = first->after(-facts::facts().duration("late.asked"));
    const bool topped_up = plan.trip->boxes.front().thermometer && plan.waits_until <= serve;
    return topped_up ? std::min(asked, serve.after(-plan.round)) : asked;
}

units::Volume most_of_a_pour(const plan::Plan& plan) {
    units::Volume most{0};
    for (const plan::TopUp& top_up : plan.top_ups) {
        most = std::max(most, top_up.boiling_most);
    }
    return most;
}

std::optional<units::Length> thickest_slice(const plan::Leftovers& leftovers, answer::Medium medium,
                                            facts::Contact contact) {
    for (const answer::ThickestSlice& slice : leftovers.slices) {
        if (slice.medium == medium && slice.contact == contact) {
            return slice.thickest;
        }
    }
    return std::nullopt;
}

}  // namespace holdwater::card
