// SPDX-License-Identifier: MIT
#include "plan/provisions/boilings.hpp"

#include "plan/result/plan.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::plan {
namespace {

int pots_for(units::Volume boiling, const trip::Fire& fire) {
    const double batches = boiling / (fire.pot * fire.usable);
    return std::clamp(static_cast<int>(std::ceil(batches - 1e-9)), 1, fire.pots);
}

}  // namespace

std::vector<Boiling> boilings_of(const Plan& plan) {
    std::vector<Boiling> all;
    units::LocalTime from = plan.fill.light_fire;
    for (const Pour& pour : plan.fill.pours) {
        all.push_back({from, pour.at, pour.pots});
        from = pour.at;
    }
    for (const TopUp& top_up : plan.top_ups) {
        all.push_back({top_up.light_fire, top_up.at, pots_for(top_up.boiling_most, plan.trip->fire)});
    }
    return all;
}

}  // namespace holdwater::plan
