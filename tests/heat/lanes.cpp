// SPDX-License-Identifier: MIT
// Baths side by side: each goes as it would alone, bit by bit, whatever the processor can do at once.
#define HWY_COMPILE_ALL_ATTAINABLE
#include "heat/lanes.hpp"

#include "support/pieces.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <hwy/highway.h>
#include <random>
#include <vector>

using namespace holdwater;
using units::celsius;
using units::Duration;
using units::kelvins;
using units::litres;

namespace {

class Dice {
  public:
    explicit Dice(unsigned seed) : dice_(seed) {}
    double between(double low, double high) { return std::uniform_real_distribution<double>(low, high)(dice_); }
    facts::Shape shape() {
        constexpr facts::Shape all[] = {facts::Shape::slab, facts::Shape::round, facts::Shape::block,
                                        facts::Shape::ball};
        return all[static_cast<std::size_t>(between(0, 3.999))];
    }

  private:
    std::mt19937 dice_;
};

/// Boxes of one trip in several scenarios: pieces, losses, water and moments differ.
struct Boxes {
    std::vector<heat::Bath> baths;
    std::vector<std::vector<Duration>> moments;  // of each pour
    std::vector<std::vector<double>> pours;      // litres
};

/// `beside`: their foods in lanes of one table; else each in a table of its own.
Boxes boxes(unsigned seed, std::size_t count, bool beside) {
    Dice dice(seed);
    const std::size_t foods = dice.between(0, 1) < 0.3 ? 2 : 1;
    units::History air;
    for (double hour = 0; hour <= 12; hour += 1.5) {
        air.add(units::hours(hour), celsius(dice.between(-15, 20)));
    }
    Boxes made;
    for (std::size_t i = 0; i < count; ++i) {
        made.baths.emplace_back(
            heat::BoxHeat{units::HeatLoss{dice.between(0.5, 4)}, units::HeatCapacity{3000}, units::Area{0.15}},
            litres(dice.between(8, 40)), celsius(dice.between(60, 80)),
            heat::OutsideAir(air).warmer_by(dice.between(-3, 3)));
        made.baths.back().record(i % 2 == 0);
        made.moments.emplace_back();
        made.pours.emplace_back();
        for (int pour = 1; pour <= 3; ++pour) {
            made.moments.back().push_back(units::hours(3.0 * pour) + Duration{dice.between(0, 1800)});
            made.pours.back().push_back(dice.between(0.5, 4));
        }
    }
    for (std::size_t f = 0; f < foods; ++f) {
        const facts::Shape shape = dice.shape();
        const double thickness = dice.between(8, 110);
        std::vector<heat::Modes> modes;
        for (std::size_t i = 0; i < count; ++i) {
            modes.push_back(
                support::piece_of_meat(shape, thickness * dice.between(0.9, 1.1), 120, 250, dice.between(95, 500)));
        }
        const std::vector<heat::LaneOfModes> lanes = heat::side_by_side(modes);
        for (std::size_t i = 0; i < count; ++i) {
            made.baths[i].put_in({beside ? lanes[i] : heat::LaneOfModes(modes[i]), units::HeatCapacity{8000},
                                  celsius(dice.between(1, 8)), kelvins(dice.between(0, 2))});
        }
    }
    return made;
}

void live(Boxes& boxes) {
    std::vector<heat::Bath*> baths;
    for (heat::Bath& bath : boxes.baths) {
        baths.push_back(&bath);
    }
    for (std::size_t pour = 0; pour < boxes.moments.front().size(); ++pour) {
        std::vector<Duration> moments;
        for (const std::vector<Duration>& own : boxes.moments) {
            moments.push_back(own[pour]);
        }
        heat::advance_all(baths, moments);
        for (std::size_t i = 0; i < baths.size(); ++i) {
            baths[i]->pour(litres(0.5), litres(boxes.pours[i][pour]), celsius(95));
        }
    }
    heat::advance_all(baths, std::vector<Duration>(baths.size(), units::hours(11)));
}

/// Everything that can be asked of a box, in one list.
std::vector<double> all_of(const heat::Bath& bath) {
    const heat::Ledger& ledger = bath.ledger();
    std::vector<double> all{bath.temperature().celsius(), bath.now().si(),       bath.stored_energy(),
                            ledger.lost_to_outside,       ledger.given_to_food,  bath.core(0).celsius(),
                            bath.surface(0).celsius(),    bath.mean(0).celsius()};
    for (const units::History* history : {&bath.bath_history(), &bath.core_history(0)}) {
        for (const units::History::Point& point : history->points) {
            all.push_back(point.at.si());
            all.push_back(point.value.celsius());
        }
    }
    return all;
}

}  // namespace

TEST_CASE("a bath beside others goes as it goes alone, bit by bit") {
    for (unsigned seed = 1; seed <= 60; ++seed) {
        CAPTURE(seed);
        const std::size_t count = 1 + seed % heat::lanes;
        Boxes together = boxes(seed, count, true);
        Boxes alone = boxes(seed, count, false);
        live(together);
        live(alone);
        for (std::size_t i = 0; i < count; ++i) {
            CHECK(all_of(together.baths[i]) == all_of(alone.baths[i]));
        }
    }
}

TEST_CASE("energy closes in every lane") {
    for (unsigned seed = 100; seed < 120; ++seed) {
        Boxes all = boxes(seed, heat::lanes, true);
        std::vector<double> before;
        for (const heat::Bath& bath : all.baths) {
            const heat::Ledger& was = bath.ledger();
            before.push_back(bath.stored_energy() - was.poured + was.lost_to_outside + was.taken_out);
        }
        live(all);
        for (std::size_t i = 0; i < all.baths.size(); ++i) {
            const heat::Ledger& is = all.baths[i].ledger();
            const double now = all.baths[i].stored_energy() - is.poured + is.lost_to_outside + is.taken_out;
            CHECK(std::abs(now - before[i]) < 1e-9 * is.poured);
        }
    }
}

TEST_CASE("every kind of processor gives the same bits") {
    const std::vector<std::int64_t> targets = hwy::SupportedAndGeneratedTargets();
    MESSAGE("kinds that this processor can play: " << targets.size());
    CHECK(targets.size() >= 2);  // there is always the one without any vectors
    for (unsigned seed = 200; seed < 215; ++seed) {
        CAPTURE(seed);
        std::vector<std::vector<double>> first;
        for (const std::int64_t target : targets) {
            CAPTURE(hwy::TargetName(target));
            hwy::SetSupportedTargetsForTest(target);
            Boxes all = boxes(seed, heat::lanes, true);
            live(all);
            hwy::SetSupportedTargetsForTest(0);
            std::vector<std::vector<double>> now;
            for (const heat::Bath& bath : all.baths) {
                now.push_back(all_of(bath));
            }
            if (first.empty()) {
                first = now;
            }
            CHECK(first == now);
        }
    }
}

TEST_CASE("baths of other foods, or with food in other lanes, are run for themselves") {
    const heat::Modes thin = support::piece_of_meat(facts::Shape::slab, 20, 100, 100, 300);
    const heat::Modes thick = support::piece_of_meat(facts::Shape::slab, 60, 100, 100, 300);
    units::History air;
    air.add(Duration{0}, celsius(5));
    const auto bath_with = [&](const heat::Modes& modes) {
        heat::Bath bath({units::HeatLoss{1.3}, units::HeatCapacity{4000}, units::Area{0.15}}, litres(20), celsius(67),
                        air);
        bath.put_in({modes, units::HeatCapacity{9000}, celsius(3), kelvins(1)});
        return bath;
    };
    heat::Bath a = bath_with(thin);
    heat::Bath b = bath_with(thick);
    {
        heat::Lanes lanes;
        CHECK(lanes.join(a));
        CHECK_FALSE(lanes.join(b));
    }
    heat::Bath alone = bath_with(thick);
    heat::Bath* const both[] = {&a, &b};
    const Duration moments[] = {units::hours(2), units::hours(3)};
    heat::advance_all(both, moments);
    alone.advance_to(units::hours(3));
    CHECK(a.now() == units::hours(2));
    CHECK(all_of(b) == all_of(alone));
}
