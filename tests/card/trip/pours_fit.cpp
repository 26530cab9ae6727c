// SPDX-License-Identifier: MIT
// Law: no printed pour is more than its pots give, and the printed sum of the fill is what the pours come to.
#include "card/figures/fill_rounds.hpp"
#include "card/figures/numbers.hpp"
#include "plan/result/effort.hpp"
#include "support/files.hpp"
#include "support/random_trips.hpp"
#include "support/trips.hpp"
#include "words/words.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace holdwater;

namespace {

/// What is printed, in litres.
double litres_of(const units::Amount& printed, units::System system) {
    constexpr double litres_per_quart = 0.946352946;  // exact by definition
    return printed.value.value * (units::first_of(system) == units::System::us ? litres_per_quart : 1.0);
}

}  // namespace

TEST_CASE("no printed pour of the fill is more than its pots give, and the printed sum is what the pours come to") {
    const auto words = words::Words::read(support::source_text("layouts/words/en.toml"), "en.toml");
    REQUIRE(words.ok());
    plan::Effort quick;
    quick.search = {64, 1};
    quick.promise = {128, 1};
    quick.advise = quick.ways = quick.what_ifs = quick.for_cards = quick.choose = false;
    int plans = 0;
    int adding_up = 0;
    int fires = 0;
    for (std::uint64_t number = 1; number <= 120; ++number) {
        const auto plan = plan::make_plan(support::random_trip(number), quick);
        if (!plan) {
            continue;
        }
        ++plans;
        CAPTURE(number);
        const card::SafeSide safe{*plan, *words};
        const card::FillSums sums = card::fill_sums(safe);
        const units::System system = plan->trip->units;
        constexpr double half_a_tenth = 0.05 + 1e-6;  // L: to a tenth, to the nearest
        double sum = 0.0;
        for (std::size_t i = 0; i < plan->fill.pours.size(); ++i) {
            const double printed = litres_of(sums.rounds[i], system);
            const plan::Pour& pour = plan->fill.pours[i];
            CHECK(printed <= units::in_litres(card::pot_gives(*plan)) * pour.pots + half_a_tenth);
            sum += printed;
        }
        const double all = litres_of(sums.all, system);
        const double step = units::in_litres(card::step_of_litres(system));
        const bool adds_up = std::abs(all - sum) < 0.01;
        CHECK((adds_up || all - sum > step));  // else a round more, which few fills need
        adding_up += adds_up ? 1 : 0;
        // What is put on for a top-up boils in one round.
        const units::Volume batch = card::pot_gives(*plan) * plan->trip->fire.pots;
        double packed = 0.0;
        double asked = 0.0;
        for (const card::CardNumber& figure : card::card_numbers(safe)) {
            const bool fire = figure.name.starts_with("top_up_boil_");
            if (fire) {
                CHECK(figure.value <= units::in_litres(batch) + 1e-6);
                ++fires;
            }
            if (figure.card == "packing" && figure.name == "fetch_l") {
                packed = figure.value;
            } else if (figure.card == "plan" && (fire || figure.name == "boil_l" || figure.name == "cold_l")) {
                asked += figure.value;
            }
        }
        // Who adds up what Plan asks to boil misses none of it in the packs, and can top up once more.
        CHECK(asked > 0.0);
        const bool reads = plan->trip->boxes.front().thermometer.has_value();
        const double spare = reads ? units::in_litres(plan->ladder.back().pour) : 0.0;
        CHECK(packed >= asked + std::min(spare, units::in_litres(batch)) - 1e-6);
    }
    CHECK(plans >= 10);
    CHECK(fires >= 3);
    CHECK(adding_up * 10 >= plans * 8);
}
