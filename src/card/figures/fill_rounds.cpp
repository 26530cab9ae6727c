// SPDX-License-Identifier: MIT
#include "card/figures/fill_rounds.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::card {

units::Volume pot_gives(const plan::Plan& plan) {
    return plan.trip->fire.pot * plan.trip->fire.usable;
}

namespace {

/// A volume as it reads once it was printed, in the first system.
units::Volume as_printed(units::Volume v, const units::Amount& printed, units::System system) {
    constexpr double fine = 1e-6;
    const double exact = units::amount(v, units::first_of(system), {fine}).value.value;
    return exact > fine ? v * (printed.value.value / exact) : units::Volume{};
}

/// A round, up to the tenth, but never more than its pots give.
units::Amount round_of(const SafeSide& safe, units::Volume exact, int pots) {
    const units::Amount up = safe.measured(exact, units::Toward::up);
    const units::Volume give = pot_gives(safe.plan) * pots;
    return as_printed(exact, up, safe.system()) > give ? safe.measured(std::min(exact, give)) : up;
}

}  // namespace

FillSums fill_sums(const SafeSide& safe) {
    const plan::Plan& plan = safe.plan;
    const plan::Fill& fill = plan.fill;
    FillSums sums;
    const auto last = std::find_if(fill.pours.rbegin(), fill.pours.rend(),
                                   [](const plan::Pour& pour) { return worth_a_pour(pour.most); });
    units::Volume poured{};  // as it reads
    units::Volume last_poured{};
    for (const plan::Pour& pour : fill.pours) {
        const units::Volume exact = safe.reads() && pour.trims() ? pour.most : pour.boiling;
        sums.rounds.push_back(round_of(safe, exact, pour.pots));
        const units::Volume printed = as_printed(exact, sums.rounds.back(), safe.system());
        poured = poured + printed;
        last_poured = last != fill.pours.rend() && &pour == &*last ? printed : last_poured;
    }
    const units::Volume all = safe.reads() ? fill.boiled_most : fill.boiled;
    units::Volume total = poured;
    bool to_the_step = false;  // else the sum is printed to a fifth of it, as its rounds are
    sums.all = tenth_litres(poured, safe.system());
    if (safe.reads()) {
        const units::Amount rounded = safe.litres(all, units::Toward::up);
        const units::Volume read = as_printed(all, rounded, safe.system());
        const units::Volume more = read - poured;
        // The last pour makes up what the sum is rounded up by, where its pots give that, or what the rounds before it,
        // printed to a fifth of that step, are rounded up by. A round more, which few fills need, is no part of it.
        const units::Volume step =
            step_of_litres(safe.system()) * (1.0 + 0.1 * static_cast<double>(sums.rounds.size()));
        const bool is_rounding = more <= step;
        const bool fits = last != fill.pours.rend() && last_poured + more > units::Volume{0} &&
                          last_poured + more <= pot_gives(plan) * last->pots;
        if (!is_rounding || fits) {
            total = read;
            sums.all = rounded;
            to_the_step = true;
            sums.rounding = "up-half-litre";
        }
        if (is_rounding && fits) {
            const auto nth = static_cast<std::size_t>(std::distance(last, fill.pours.rend())) - 1;
            sums.rounds[nth] = safe.measured(last_poured + more);
        }
    }
    const units::Volume warming =
        as_printed(fill.warming, safe.measured(fill.warming, units::Toward::up), safe.system());
    const bool in_steps = to_the_step && !(warming > units::Volume{0});
    sums.with_warming = in_steps ? sums.all : tenth_litres(total + warming, safe.system());
    return sums;
}

bool worth_a_pour(units::Volume litres) {
    return units::in_litres(litres) >= 0.25;
}

units::Mass weight_of_fill(const plan::Plan& plan) {
    return units::Mass{std::ceil(units::in_litres(plan.trip->boxes.front().water) / 5.0) * 5.0};
}

}  // namespace holdwater::card
