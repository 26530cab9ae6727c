// SPDX-License-Identifier: MIT
#include "replay/way.hpp"

#include "answer/hold/piece.hpp"
#include "facts/facts.hpp"
#include "heat/food_properties.hpp"
#include "heat/water.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <variant>
#include <vector>

namespace holdwater::support {
namespace {

double thickness_of(const trip::Food& food, SpreadDraws& draws) {
    // The share of a normal draw, or the least error where that is wider: one place in the band for both.
    const facts::Spread& share = facts::facts().spread("thickness");
    const double place = (draws.of("thickness") - 0.5 * (share.low + share.high)) / (0.5 * (share.high - share.low));
    const double half = std::max(food.thickness.si() * 0.5 * (share.high - share.low),
                                 facts::facts().spread("thickness.least").high * 1e-3);
    return food.thickness.si() + half * place;
}

ReplayFood food_of(const trip::Food& food, double diffusivity_share, double film, double start, double thickness) {
    const answer::Piece piece = answer::piece_of(food);
    const units::Temperature middle = food.start + (food.target - food.start) / 2.0;
    const heat::FoodProperties bound = heat::properties_from(piece.composition, middle, heat::MixingRule::parallel);
    const double heat_by_volume = bound.density.si() * bound.specific_heat.si();
    ReplayFood replay;
    replay.diffusivity = bound.diffusivity.si() * diffusivity_share;
    replay.conductivity = replay.diffusivity * heat_by_volume;
    replay.film = 1.0 / (1.0 / film + piece.bag.si());
    replay.capacity = piece.mass.si() * bound.specific_heat.si();
    replay.volume = piece.mass.si() / bound.density.si();
    replay.start = food.start.celsius() + start;
    replay.half = thickness / 2.0;
    if (food.shape == facts::Shape::slab && food.contact != facts::Contact::free) {
        replay.half = thickness;  // water on one face alone
    }
    replay.b = food.shape == facts::Shape::round ? 1 : food.shape == facts::Shape::ball ? 2 : 0;
    if (food.shape == facts::Shape::round && food.length) {
        replay.half_length = food.length->si() / 2.0;
    }
    return replay;
}

std::array<double, 3> inside_of(const trip::Box& box) {
    return {box.inside[0].si(), box.inside[1].si(), box.inside[2].si()};
}

/// W/K of the closed box in still air, and half its band as a share. Of a tested box the straight line through
/// ln(bath - air) over time; its readings may each be off by their error, two standard deviations of it.
struct Loss {
    double likely = 0.0;
    double half_band = 0.0;
};

Loss loss_of(const trip::Box& box) {
    const facts::Spread& least = facts::facts().spread("box-loss");
    Loss loss{0.0, 0.5 * (least.high - least.low)};
    if (const auto* given = std::get_if<units::HeatLoss>(&box.test)) {
        loss.likely = given->si();
        return loss;
    }
    const auto& readings = std::get<std::vector<trip::BoxReading>>(box.test);
    const auto n = static_cast<double>(readings.size());
    double mean_t = 0.0;
    double mean_y = 0.0;
    const auto above = [&](const trip::BoxReading& one) { return (one.bath - box.test_outside).si(); };
    for (const trip::BoxReading& one : readings) {
        mean_t += one.after.si() / n;
        mean_y += std::log(above(one)) / n;
    }
    double tt = 0.0;
    double ty = 0.0;
    double error = 0.0;
    for (const trip::BoxReading& one : readings) {
        const double t = one.after.si() - mean_t;
        tt += t * t;
        ty += t * (std::log(above(one)) - mean_y);
        error += std::pow(t * box.reading_error.si() / above(one), 2.0);
    }
    const double slope = -ty / tt;
    const double water = box.test_water.si() * heat::water_density(readings.front().bath).si();
    loss.likely = slope * (water * heat::water_specific_heat().si() + liner_capacity(inside_of(box)));
    loss.half_band = std::max(loss.half_band, std::sqrt(error) / tt / slope * 1.645 / 1.96);
    return loss;
}

}  // namespace

Way draw_way(const trip::Trip& trip, SpreadDraws& draws) {
    const trip::Box& box = trip.boxes.front();
    Way way;
    way.boiling = heat::boiling_point_at(trip.altitude).value().celsius() - draws.of("boil.cooling");
    way.litres = draws.of("litres");
    way.error = box.thermometer.value_or(units::kelvins(0)).si() * draws.of("thermometer");
    way.cold = trip.fire.cold_water.celsius();
    const double outside = draws.of("outside");
    way.world.air = [&trip, outside](double at) {
        return trip.weather.air_at(trip.from.after(units::Duration{at})).celsius() + outside;
    };
    const double wind = trip.weather.wind == facts::Wind::still    ? 0.0
                        : trip.weather.wind == facts::Wind::breezy ? 1.0
                                                                   : 2.0;
    const Loss loss = loss_of(box);
    const facts::Spread& band = facts::facts().spread("box-loss");
    const double place = (draws.of("box-loss") - 0.5 * (band.low + band.high)) / (0.5 * (band.high - band.low));
    way.world.loss = loss.likely * std::max(0.1, 1.0 + loss.half_band * place) * wind_share(wind + draws.of("wind"));
    way.world.inside = inside_of(box);
    way.world.colder = std::max(0.0, draws.of("unstirred"));
    const double diffusivity = draws.of("diffusivity");
    const double film = draws.of("film");
    const double start = draws.of("start");
    for (const trip::Food& food : trip.foods) {
        way.world.foods.push_back(food_of(food, diffusivity, film, start, thickness_of(food, draws)));
    }
    way.liner_start = box.prewarmed ? facts::facts().temperature("prewarm.liner").celsius() : way.world.air(0.0);
    return way;
}

}  // namespace holdwater::support
