// SPDX-License-Identifier: MIT
#include "card/trip/acts.hpp"

#include <algorithm>
#include <stdexcept>

namespace holdwater::card {

int act_at(const plan::Plan& plan, units::LocalTime time) {
    const auto found = std::find_if(plan.events.begin(), plan.events.end(),
                                    [&](const plan::Event& event) { return event.at == time; });
    if (found == plan.events.end()) {
        throw std::logic_error("nothing is done at " + time.iso());
    }
    return static_cast<int>(found - plan.events.begin()) + 1;
}

}  // namespace holdwater::card
