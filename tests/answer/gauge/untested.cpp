// SPDX-License-Identifier: MIT
// A box that nobody has tested loses as an ordinary one of its size.
#include "answer/gauge/box_loss.hpp"
#include "heat/box.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <array>

using namespace holdwater;

namespace {

heat::BoxLoss untested(double a, double b, double c) {
    trip::Box box;
    box.inside = {units::millimetres(a), units::millimetres(b), units::millimetres(c)};
    box.test = trip::Untested{};
    return answer::loss_of(box, heat::liner_of(box.inside)).value();
}

}  // namespace

TEST_CASE("an untested box of 36 L may lose from 1.3 to 2.4 W/K") {  // common practice
    const heat::BoxLoss loss = untested(540, 290, 230);
    CHECK(support::near_abs(loss.low.si(), 1.3, 0.05));
    CHECK(support::near_abs(loss.high.si(), 2.4, 0.05));
    CHECK(loss.low < loss.likely);
    CHECK(loss.likely < loss.high);
}

TEST_CASE("law: a larger untested box loses more, by the area of its walls") {
    double last = 0.0;
    for (const double side : {200.0, 300.0, 400.0, 500.0}) {
        const heat::BoxLoss loss = untested(side, side, side);
        CHECK(loss.likely.si() > last);
        CHECK(support::near_abs(loss.likely.si() / (6e-6 * side * side), 2.6, 1e-9));
        last = loss.likely.si();
    }
}
