// SPDX-License-Identifier: MIT
#include "plan/provisions/portions.hpp"

#include "facts/facts.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::plan {
namespace {

/// Eaters that a mass serves; a hair under a whole portion counts as one.
int eaters(units::Mass cooked, double portion) {
    return static_cast<int>(std::floor(cooked.si() / portion + 1e-9));
}

}  // namespace

Portions portions_of(const trip::Trip& trip, units::LocalTime serve) {
    const facts::Figure& bone = facts::facts().figure("portion.bone");
    const facts::Figure& loss = facts::facts().figure("portion.cooking-loss");
    const double ordinary = facts::facts().value("portion.ordinary");
    const double hearty = facts::facts().value("portion.hearty");
    Portions portions;
    const auto add = [&](const trip::Food& food) {
        if (trip::eaten(food, trip) != serve) {
            return;
        }
        const units::Mass raw = food.mass * food.pieces;
        const auto meat = [&](double share) { return food.bone ? raw * (1.0 - share) : raw; };
        portions.raw += raw;
        portions.boneless += meat(bone.value);
        const double losing = food.use == facts::Use::keep_hot ? 0.0 : 1.0;  // what was cooked before has lost it
        portions.cooked.low += meat(bone.high) * (1.0 - losing * loss.high);
        portions.cooked.likely += meat(bone.value) * (1.0 - losing * loss.value);
        portions.cooked.high += meat(bone.low) * (1.0 - losing * loss.low);
    };
    std::for_each(trip.foods.begin(), trip.foods.end(), add);
    std::for_each(trip.elsewhere.begin(), trip.elsewhere.end(), add);
    portions.each = {portions.cooked.low / trip.people, portions.cooked.likely / trip.people,
                     portions.cooked.high / trip.people};
    portions.serves_ordinary = eaters(portions.cooked.likely, ordinary);
    portions.serves_hearty = eaters(portions.cooked.likely, hearty);
    using Verdict = Portions::Verdict;
    portions.verdict = eaters(portions.cooked.low, hearty) >= trip.people     ? Verdict::hearty
                       : eaters(portions.cooked.low, ordinary) >= trip.people ? Verdict::enough
                       : portions.serves_ordinary >= trip.people              ? Verdict::scarce
                                                                              : Verdict::too_little;
    const double short_of = trip.people * ordinary - portions.cooked.low.si();
    portions.missing = units::Mass{std::max(0.0, short_of) / (1.0 - loss.high)};
    return portions;
}

}  // namespace holdwater::plan
