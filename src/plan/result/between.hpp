// SPDX-License-Identifier: MIT
#pragma once

namespace holdwater::plan {

/// A quantity whose ends and middle are reckoned from the ends and middles of the figures behind it.
template <class Quantity>
struct Between {
    Quantity low{};
    Quantity likely{};
    Quantity high{};
};

}  // namespace holdwater::plan
