// SPDX-License-Identifier: MIT
#include "plan/search/ladder.hpp"

#include "facts/facts.hpp"
#include "heat/water.hpp"
#include "plan/search/recipe.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace holdwater::plan {
namespace {

using units::Temperature;
using units::Volume;

constexpr double rung_step = 2.0;  // K: nobody reads a box to one degree
constexpr int most_rungs = 6;      // that a card has room for
constexpr std::size_t scenarios_for_litres =
    256;  // scenarios: a quantile of litres to well under the half litre of the card

/// What one scenario's cook pours at a reading, with the lid off meanwhile.
Volume pour_in(const Setup& setup, const Scenario& scenario, const LadderBox& box, Temperature reading,
               Temperature mark) {
    const units::TemperatureDifference error = setup.box->thermometer.value_or(units::kelvins(0)) * scenario.reading;
    const Temperature bath = reading - error;
    const double capacity =
        box.water.si() * heat::water_density(bath).si() * heat::water_specific_heat().si() + box.besides.si();
    const double open = scenario.lid + facts::facts().value("lid.air-change");
    const double lost = heat::open_surface_loss(bath, box.air) * box.surface.si() * open / capacity;
    const Volume real = lifting_pour(setup, units::HeatCapacity{capacity}, box.room, bath - units::kelvins(lost),
                                     mark - error, setup.levels.boiling - units::kelvins(scenario.boiling_cooled));
    return real / scenario.litres;
}

/// The trip's box as one scenario meets it, full, food and all.
LadderBox full_box(const Ensemble& ensemble, std::size_t i, Temperature air) {
    const Setup& setup = ensemble.setup();
    LadderBox box;
    box.water = setup.most - setup.food_volume;
    box.besides = setup.liner;
    for (const heat::FoodInBath& food : ensemble.foods(i)) {
        box.besides += units::HeatCapacity{food.capacity.si() * food.modes.mean_at_once()};
    }
    box.surface = setup.surface;
    box.air = air;
    return box;
}

/// Of what the scenarios ask for: enough in 95 of 100.
Volume enough_of(std::vector<Volume> litres) {
    return quantile_high(std::move(litres), 1.0 - allowed_failures());
}

/// To the half litre, up, but not over what so many boils give where they are enough: nobody boils again for a cup.
Volume pour_of(const Setup& setup, Volume enough) {
    const Volume boiled = setup.batch * std::ceil(enough / setup.batch - 1e-9);
    return std::min(to_half_litre(enough, units::Toward::up), std::max(boiled, enough));
}

}  // namespace

Volume to_half_litre(Volume litres, units::Toward toward) {
    return Volume{units::round_to(litres.si(), litre_step, toward)};
}

std::vector<LadderRung> ladder_for(const Ensemble& ensemble, Temperature mark) {
    const Setup& setup = ensemble.setup();
    Temperature air = setup.outside.points.front().value;
    for (const units::History::Point& p : setup.outside.points) {
        air = std::min(air, p.value);
    }
    std::vector<LadderRung> ladder;
    std::vector<Volume> litres(std::min(ensemble.size(), scenarios_for_litres));
    std::vector<LadderBox> boxes;
    for (std::size_t i = 0; i < litres.size(); ++i) {
        boxes.push_back(full_box(ensemble, i, air));
    }
    const double lowest = std::ceil(setup.levels.read_floor.celsius() - 1e-9);
    for (int rung = 0; rung < most_rungs; ++rung) {
        const Temperature reading = units::celsius(lowest + rung * rung_step);
        if (reading >= mark) {
            break;
        }
        for (std::size_t i = 0; i < litres.size(); ++i) {
            litres[i] = pour_in(setup, ensemble.scenario(i), boxes[i], reading, mark);
        }
        const Volume pour = pour_of(setup, std::min(enough_of(litres), setup.box->water));
        // More than the pots give is not poured at once.
        ladder.insert(ladder.begin(), {reading, pour, below_rim(setup, std::min(pour, setup.batch))});
    }
    return ladder;
}

Volume ladder_pour(const Setup& setup, const LadderBox& box, Temperature reading, Temperature mark) {
    std::vector<Volume> litres;
    for (const Scenario& scenario : draw_scenarios(scenarios_for_litres)) {
        litres.push_back(pour_in(setup, scenario, box, reading, mark));
    }
    return enough_of(std::move(litres));
}

Volume by_ladder(const std::vector<LadderRung>& ladder, Temperature reading) {
    for (const LadderRung& rung : ladder) {
        if (rung.reading <= reading) {
            return rung.pour;
        }
    }
    return ladder.empty() ? Volume{0} : ladder.back().pour;
}

}  // namespace holdwater::plan
