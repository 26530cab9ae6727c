// SPDX-License-Identifier: MIT
#pragma once

#include "facts/facts.hpp"

namespace holdwater::support {

/// What grows on beef.
inline const facts::GrowthModel& beef() {
    return facts::facts().growth("beef");
}

}  // namespace holdwater::support
