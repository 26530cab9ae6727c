// SPDX-License-Identifier: MIT
#include "plan/result/reading_rows.hpp"

#include "plan/result/plan.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace holdwater::plan {

units::Volume pots_give(const Plan& plan) {
    const trip::Fire& fire = plan.trip->fire;
    return fire.pot * (fire.usable * fire.pots);
}

std::vector<int> printed_rungs(const Plan& plan) {
    constexpr int most = 3;
    const int rungs = static_cast<int>(plan.ladder.size());
    if (rungs <= most) {
        std::vector<int> all(static_cast<std::size_t>(rungs));
        std::iota(all.begin(), all.end(), 1);
        return all;
    }
    std::vector<int> chosen;
    for (int i = 1; i <= most; ++i) {
        chosen.push_back(i * rungs / most);
    }
    return chosen;
}

int most_boils(const Plan& plan) {
    const units::Volume batch = pots_give(plan);
    int most = 1;
    for (const int nth : printed_rungs(plan)) {
        const units::Volume pour = plan.ladder[static_cast<std::size_t>(nth) - 1].pour;
        most = std::max(most, static_cast<int>(std::ceil(pour / batch - 1e-9)));
    }
    return most;
}

const LadderRung& row_for(const Plan& plan, units::Temperature reading) {
    for (const int nth : printed_rungs(plan)) {
        const LadderRung& rung = plan.ladder[static_cast<std::size_t>(nth) - 1];
        if (!(rung.reading > reading)) {
            return rung;
        }
    }
    return plan.ladder.back();
}

units::Volume to_put_on(const Plan& plan, units::Temperature reading) {
    // A plan without a ladder has no row to boil for.
    return plan.ladder.empty() ? units::Volume{0} : std::min(pots_give(plan), row_for(plan, reading).pour);
}

}  // namespace holdwater::plan
