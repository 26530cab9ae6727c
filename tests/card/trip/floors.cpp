// SPDX-License-Identifier: MIT
// One floor on all cards: that which is read, the thermometer's error on it.
#include "card/figures/rounding.hpp"
#include "card/texts.hpp"
#include "support/faces.hpp"
#include "support/finding.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using namespace holdwater::support;

TEST_CASE("every card that names the floor names the one that is read, not the rule's") {
    for (const char* path : {"tests/plan/trips/frosty-weekend.toml", "layouts/trips/paddling-day.toml"}) {
        CAPTURE(path);
        Dealt dealt(path);
        dealt.deal(units::System::metric, "en");
        const auto written = [](units::Temperature t) {
            return squeezed(units::written(card::degrees(t, units::System::metric, units::Toward::up)));
        };
        const std::string read = written(dealt.plan.levels.read_floor);
        const std::string rule = written(dealt.plan.levels.floor);
        REQUIRE(read != rule);
        for (const char* key : {"one", "plan", "hold", "reading", "touch"}) {
            CAPTURE(key);
            const std::string text = squeezed(joined(texts_of(dealt.card(key))));
            CHECK(has(text, read));
            CHECK_FALSE(has(text, "under" + rule));
            CHECK_FALSE(has(text, "below" + rule));
        }
    }
}
