// SPDX-License-Identifier: MIT
// Hold times against a solver and a draw that the program does not have: food in a sea of water by the method of lines,
// errors drawn at random from facts spread, kill summed up row by row.
#include "answer/hold/hold_time.hpp"
#include "safety/kill.hpp"
#include "support/method_of_lines.hpp"
#include "support/rulesets.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <random>

using namespace holdwater;

namespace {

/// Draws from an entry of facts spread by its printed meaning: log-normal and normal by their 5 and 95 % points.
class Draws {
  public:
    double of(const char* key) {
        const facts::Spread& s = facts::facts().spread(key);
        constexpr double points = 1.6448536269514722;  // of the unit normal at 95 %
        const double n = std::normal_distribution<double>(0.0, 1.0)(random_) / points;
        switch (s.shape) {
            case facts::SpreadShape::lognormal:
                return std::sqrt(s.low * s.high) * std::pow(s.high / s.low, 0.5 * n);
            case facts::SpreadShape::normal:
                return 0.5 * (s.low + s.high) + 0.5 * (s.high - s.low) * n;
            default:
                return std::uniform_real_distribution<double>(s.low, s.high)(random_);
        }
    }

  private:
    std::mt19937 random_{20270115};
};

struct Case {
    const char* name;
    facts::Shape shape;
    double thickness_mm;
    double reading_c;
    const char* kind;
};

answer::Piece piece_of(const Case& c) {
    answer::Piece piece;
    piece.body.shape = c.shape;
    piece.body.thickness = units::millimetres(c.thickness_mm);
    if (c.shape == facts::Shape::round) {
        piece.body.length = units::millimetres(4.0 * c.thickness_mm);
    }
    piece.composition = facts::facts().find_food(c.kind)->composition;
    piece.bag = units::ThermalResistance{facts::facts().value("bag.thin")};
    piece.start = units::celsius(4);
    piece.target = units::celsius(60);
    return piece;
}

safety::Standard standard_of(const char* kind) {
    safety::Request request = safety::request_for(*facts::facts().find_food(kind));
    request.ruleset = support::ruleset("us");
    request.target = units::celsius(63);
    return safety::standard_for(request).value();
}

/// When the core of one randomly drawn piece has met its standard [s]; never: 1e99.
double safe_after(units::Duration last_moment, const Case& c, const answer::Piece& piece,
                  const safety::Standard& standard, units::TemperatureDifference thermometer, Draws& draws) {
    const units::Temperature middle = piece.start + (piece.target - piece.start) / 2.0;
    const heat::FoodProperties bound = heat::properties_from(piece.composition, middle, heat::MixingRule::parallel);
    support::LinesCase lines;
    lines.diffusivity = bound.diffusivity.si() * draws.of("diffusivity");
    lines.conductivity = lines.diffusivity * bound.density.si() * bound.specific_heat.si();
    lines.film = 1.0 / (1.0 / draws.of("film") + piece.bag.si());
    const facts::Spread& share = facts::facts().spread("thickness");
    const double place = (draws.of("thickness") - 1.0) / (0.5 * (share.high - share.low));
    const double half_mm =
        std::max(0.5 * (share.high - share.low) * c.thickness_mm, facts::facts().spread("thickness.least").high);
    const double thickness = (c.thickness_mm + half_mm * place) * 1e-3;
    lines.axes.push_back({c.shape == facts::Shape::round ? 1 : 0, thickness / 2.0, 25});
    if (c.shape == facts::Shape::round) {
        lines.axes.push_back({0, piece.body.length->si() / 2.0, 21});
    }
    lines.food_start = piece.start.celsius() + draws.of("start");
    lines.food_capacity = 1.0;  // in a sea of water: the bath stays as it is
    lines.water = 1000.0;
    lines.bath_start = c.reading_c - thermometer.si() * draws.of("thermometer") - std::max(0.0, draws.of("unstirred"));
    lines.outside_start = lines.bath_start;
    std::vector<double> moments;
    for (double t = 60.0; t <= last_moment.si(); t += 60.0) {
        moments.push_back(t);
    }
    const auto states = support::run_lines(lines, moments);
    // Row by row, minute by minute, each at the mean of its two ends.
    const auto rate = [&](double core) {
        const auto hold = safety::hold_time(*standard.kill, units::celsius(core));
        return hold ? 1.0 / hold->si() : 0.0;
    };
    double met = 0.0;
    double begun = 0.0;
    double arrived = 1e99;
    double before = lines.food_start;
    for (std::size_t i = 0; i < states.size(); ++i) {
        const double core = states[i].core;
        met += 60.0 * 0.5 * (rate(before) + rate(core));
        begun = core < 10.0 ? moments[i] : begun;
        arrived = core >= 54.4 ? std::min(arrived, moments[i]) : arrived;
        const double asked = arrived - begun <= 3600.0 ? 1.0 : 2.0;  // heat adaptation, facts adaptation.*
        if (met >= asked && core >= standard.core_at_least.celsius()) {
            return moments[i];
        }
        before = core;
    }
    return 1e99;
}

}  // namespace

TEST_CASE("a printed hold time is enough in 95 of 100 pieces drawn and solved by other means") {
    const Case cases[] = {{"a roast near the floor", facts::Shape::round, 85, 60, "pork-loin"},
                          {"a steak", facts::Shape::slab, 30, 58, "beef-top-round"},
                          {"a roast in a hot bath", facts::Shape::round, 60, 66, "pork-loin"},
                          {"a thick slab", facts::Shape::slab, 50, 63, "pork-loin"}};
    constexpr int pieces = 120;
    for (const Case& c : cases) {
        CAPTURE(c.name);
        const units::TemperatureDifference thermometer = units::kelvins(1);
        const answer::Piece piece = piece_of(c);
        const safety::Standard standard = standard_of(c.kind);
        const auto times = answer::HoldTimes::of(piece, standard, thermometer);
        REQUIRE(times.ok());
        const answer::HoldTime time = times->at(units::celsius(c.reading_c));
        REQUIRE(time.cautious.has_value());
        REQUIRE(time.likely.has_value());
        CAPTURE(units::in_hours(*time.cautious));
        Draws draws;
        int safe = 0;
        int safe_likely = 0;
        for (int i = 0; i < pieces; ++i) {
            // A minute is what the sum may be late by.
            const double after = safe_after(*time.cautious, c, piece, standard, thermometer, draws) - 60.0;
            safe += after <= time.cautious->si() ? 1 : 0;
            safe_likely += after <= time.likely->si() ? 1 : 0;
        }
        CAPTURE(safe);
        CAPTURE(safe_likely);
        // Two standard deviations of 120 draws are 4 in 100 of 95, and 9 in 100 of 50.
        CHECK(safe >= pieces * 0.91);
        CHECK(safe_likely >= pieces * 0.41);
        CHECK(safe_likely <= pieces * 0.59);
    }
}
