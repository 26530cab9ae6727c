// SPDX-License-Identifier: MIT
#include "card/shared/water_line.hpp"

namespace holdwater::card {

units::Amount water_line(const CardWriter& writer, units::Length below_rim) {
    return units::amount(below_rim, units::first_of(writer.system()), {1.0, units::Toward::up});
}

}  // namespace holdwater::card
