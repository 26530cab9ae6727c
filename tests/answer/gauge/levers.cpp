// SPDX-License-Identifier: MIT
// Levers: laws of the estimate, and two boxes worked out by hand.
#include "answer/gauge/levers.hpp"

#include "support/near.hpp"

#include <doctest/doctest.h>

#include <stdexcept>
#include <string>

using namespace holdwater;
using support::near_rel;

namespace {

trip::Box box_of(double a, double b, double c) {
    trip::Box box;
    box.inside = {units::metres(a), units::metres(b), units::metres(c)};
    return box;
}

const answer::Levered& of(const std::vector<answer::Levered>& all, const std::string& key) {
    for (const answer::Levered& one : all) {
        if (one.lever->key == key) {
            return one;
        }
    }
    throw std::runtime_error("no lever " + key);
}

}  // namespace

TEST_CASE("a lever takes away what its resistance keeps back of the faces that it covers") {
    // A cube of 1 m loses 6 W/K: 1 W/m2/K a face. 0.20 to 0.25 m2 K/W more under it leave 1/1.2 and 1/1.25 of its
    // bottom.
    const auto all = answer::levers_on(box_of(1, 1, 1), units::HeatLoss{6});
    const answer::Levered& mat = of(all, "mat-under");
    CHECK(near_rel(mat.loss.high.si(), 5.0 + 1.0 / 1.2, 1e-9));
    CHECK(near_rel(mat.loss.low.si(), 5.0 + 1.0 / 1.25, 1e-9));
    // A blanket of 0.25 to 0.40 over lid and walls: five faces.
    const answer::Levered& blanket = of(all, "blanket-over");
    CHECK(near_rel(blanket.loss.high.si(), 1.0 + 5.0 / 1.25, 1e-9));
    CHECK(near_rel(blanket.loss.low.si(), 1.0 + 5.0 / 1.40, 1e-9));
}

TEST_CASE("every lever helps, none to nothing, the best first; a poor box gains more") {
    for (const double loss : {0.3, 0.9, 2.5}) {
        INFO(loss, " W/K");
        const auto all = answer::levers_on(box_of(0.5, 0.3, 0.3), units::HeatLoss{loss});
        REQUIRE(all.size() == facts::facts().levers().size());
        double before = 0.0;
        for (const answer::Levered& one : all) {
            INFO(one.lever->key);
            CHECK(one.loss.low <= one.loss.likely);
            CHECK(one.loss.likely <= one.loss.high);
            CHECK(one.loss.high.si() < loss);
            CHECK(one.loss.low.si() > 0.0);
            CHECK(one.loss.likely.si() >= before);
            before = one.loss.likely.si();
            CHECK(answer::words_of(one, units::HeatLoss{loss}).find("measure it with gauge") != std::string::npos);
            const auto poorer = answer::levers_on(box_of(0.5, 0.3, 0.3), units::HeatLoss{2 * loss});
            CHECK(of(poorer, one.lever->key).loss.likely.si() / (2 * loss) < one.loss.likely.si() / loss);
        }
    }
}
