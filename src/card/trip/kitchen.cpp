// SPDX-License-Identifier: MIT
#include "card/trip/kitchen.hpp"

#include "units/print.hpp"

#include <algorithm>

namespace holdwater::card {

using units::Toward;

std::string fire_time(units::Duration d) {
    return units::print(d, Toward::up);
}

units::LocalTime first_piece_out(const plan::Plan& plan, const plan::Sear& sear, units::LocalTime meal) {
    units::LocalTime out = sear.take_out;
    for (const plan::FoodPlan& food : plan.foods) {
        if (!food.standard.finish && food.eaten == meal) {
            out = std::max(out, food.ready());
        }
    }
    return std::min(out, meal);
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
