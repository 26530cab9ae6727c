// SPDX-License-Identifier: MIT
#include "plan/result/look_again.hpp"

#include "facts/facts.hpp"
#include "units/whole_degrees.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::plan {

using units::Duration;
using units::Temperature;

LookAgain look_again(const LeftBoxes& boxes, const LooksOf& of) {
    const Duration soonest = facts::facts().duration("look.soonest");
    // Whole degrees of the system that is printed first.
    const bool us = units::first_of(of.units) == units::System::us;
    const auto degrees = [us](double whole) { return us ? units::fahrenheit(whole) : units::celsius(whole); };
    const Temperature line = of.levels.action_line;
    const double printed = std::ceil((us ? line.fahrenheit() : line.celsius()) - 1e-9);
    for (double whole = printed;; whole += 1.0) {
        // Over the line may be by a tenth of a degree: what holds from the line itself holds from all over it.
        const std::vector<Duration> left = boxes.after_readings_at_any_time({of.levels.mark, degrees(whole)});
        const Duration again = left.back() - of.round;
        if (again >= soonest || degrees(whole + 1.0) >= of.levels.mark) {
            const Duration at_mark = std::max(soonest, std::min(of.rough, left.front()) - of.round);
            return {whole > printed ? degrees(whole) : line, at_mark, std::max(soonest, std::min(at_mark, again))};
        }
    }
}

Temperature first_over(Temperature line, units::System units) {
    const bool us = units::first_of(units) == units::System::us;
    return units::whole_degrees(line, units, units::Toward::up) + units::kelvins(us ? 5.0 / 9.0 : 1.0);
}

}  // namespace holdwater::plan
