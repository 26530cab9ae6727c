// SPDX-License-Identifier: MIT
#include "plan/search/scenario.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <vector>

using namespace holdwater;

TEST_CASE("scenarios are the same each time and fill every spread evenly") {
    const auto a = plan::draw_scenarios(512);
    const auto b = plan::draw_scenarios(512);
    REQUIRE(a.size() == 512);
    double sum = 0.0;
    std::size_t above = 0;
    for (std::size_t i = 0; i < a.size(); ++i) {
        CHECK(a[i].loss == b[i].loss);
        CHECK(a[i].colder >= 0.0);
        CHECK(a[i].lid > 0.0);
        CHECK(plan::late_of(a[i], 3) >= 0.0);
        CHECK(plan::late_of(a[i], 3) <= 1800.0);
        sum += a[i].litres;
        above += a[i].loss > 1.0 ? 1 : 0;
    }
    CHECK(support::near_abs(sum / 512.0, 1.0, 0.002));
    // The box test's band is its 5 and 95 % points: about one in twenty lies above the upper end.
    CHECK(above >= 20);
    CHECK(above <= 32);
}
