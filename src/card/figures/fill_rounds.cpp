// SPDX-License-Identifier: MIT
#include "card/figures/fill_rounds.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::card {

units::Volume pot_gives(const plan::Plan& plan) {
    return plan.trip->fire.pot * plan.trip->fire.usable;
}

int full_pots(const plan::Plan& plan) {
    int pots = 0;
    for (const plan::Pour& pour : plan.fill.pours) {
        pots += pour.whole;
    }
    return pots;
}

units::Volume to_trim(const plan::Plan& plan) {
    return plan.fill.boiled_most - pot_gives(plan) * full_pots(plan);
}

namespace {

/// A volume as it reads once it was printed, in the first system.
units::Volume as_printed(units::Volume v, const units::Amount& printed, units::System system) {
    constexpr double fine = 1e-6;
    const double exact = units::amount(v, units::first_of(system), {fine}).value.value;
    return exact > fine ? v * (printed.value.value / exact) : units::Volume{};
}

}  // namespace

FillSums fill_sums(const SafeSide& safe) {
    const plan::Plan& plan = safe.plan;
    const plan::Fill& fill = plan.fill;
    FillSums sums;
    const units::Volume all = safe.reads() ? fill.boiled_most : fill.boiled;
    sums.all = safe.reads() ? safe.litres(all, units::Toward::up) : tenth_litres(all, safe.system());
    const units::Volume total = as_printed(all, sums.all, safe.system());
    const units::Volume warming =
        as_printed(fill.warming, safe.litres(fill.warming, units::Toward::down), safe.system());
    sums.with_warming = safe.reads() ? safe.litres(total + warming) : tenth_litres(total + warming, safe.system());
    const auto last = std::find_if(fill.pours.rbegin(), fill.pours.rend(),
                                   [](const plan::Pour& pour) { return worth_a_pour(pour.most); });
    units::Volume left = total;
    for (const plan::Pour& pour : fill.pours) {
        const units::Volume poured = safe.reads() && pour.trims() ? pour.most : pour.boiling;
        units::Amount litres = safe.measured(poured);
        if (last != fill.pours.rend() && &pour == &*last && worth_a_pour(left)) {
            // What the sum was rounded up by goes in here; a round more, which few fills need, does not.
            // The rounds before it are printed to a fifth of that step, so each may be off by a tenth of it.
            const units::Volume rounded =
                step_of_litres(safe.system()) * (1.0 + 0.1 * static_cast<double>(sums.rounds.size()));
            litres = safe.measured(left > poured + rounded ? poured : left);
        }
        left = left - as_printed(poured, litres, safe.system());
        sums.rounds.push_back(litres);
    }
    const units::Volume whole = pot_gives(plan) * full_pots(plan);
    sums.whole = safe.measured(whole);
    sums.trim = safe.measured(std::max(units::Volume{}, total - as_printed(whole, sums.whole, safe.system())));
    return sums;
}

bool worth_a_pour(units::Volume litres) {
    return units::in_litres(litres) >= 0.25;
}

units::Mass weight_of_fill(const plan::Plan& plan) {
    return units::Mass{std::ceil(units::in_litres(plan.trip->boxes.front().water) / 5.0) * 5.0};
}

}  // namespace holdwater::card
