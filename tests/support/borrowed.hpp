// SPDX-License-Identifier: MIT
// A trip of a test as a plan holds it, without owning it: so that the test may go on changing it.
#pragma once

#include "trip/trip.hpp"

#include <memory>

namespace holdwater::support {

/// The trip must outlive what holds it.
inline std::shared_ptr<const trip::Trip> borrowed(const trip::Trip& trip) {
    return {std::shared_ptr<void>(), &trip};
}

}  // namespace holdwater::support
