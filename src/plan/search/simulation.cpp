// SPDX-License-Identifier: MIT
#include "plan/search/simulation.hpp"

#include "facts/facts.hpp"
#include "facts/kept.hpp"
#include "heat/lanes.hpp"
#include "heat/level.hpp"
#include "heat/water.hpp"
#include "plan/search/ladder.hpp"
#include "units/print.hpp"

#include <algorithm>
#include <limits>
#include <utility>

namespace holdwater::plan {
namespace {

using units::Duration;
using units::Temperature;
using units::TemperatureDifference;
using units::Volume;

Temperature liner_start(const Setup& setup) {
    return setup.box->prewarmed ? units::celsius(facts::facts().value("prewarm.liner"))
                                : setup.trip->weather.air_at(setup.trip->from);
}

/// Of the food that comes nearest to its limit before any of them warms; nothing without food.
std::optional<TemperatureDifference> excess_at_start(const Setup& setup, const std::vector<heat::FoodInBath>& foods) {
    std::optional<TemperatureDifference> most;
    for (std::size_t i = 0; i < foods.size(); ++i) {
        const trip::Food& food = *setup.foods[i].food;
        most = std::max(most, std::optional(foods[i].start - (food.target + food.tolerance)));
    }
    return most;
}

}  // namespace

TemperatureDifference near_mark() {
    return facts::kept([](const facts::Facts& facts) { return facts.difference("mark.near"); });
}

Volume lifting_pour(const Setup& setup, units::HeatCapacity capacity, Volume room, Temperature from, Temperature to,
                    Temperature poured) {
    if (from >= to) {
        return Volume{0};
    }
    if (poured <= to) {
        return Volume{std::numeric_limits<double>::infinity()};
    }
    // One balance of heat, with s litres taken out at the reading T and h + s poured in, h what still fits:
    // C (R - T) = rho_b c (h + s)(B - R) + ... solved for s; see the two branches.
    const double c = heat::water_specific_heat().si();
    const double hot = heat::water_density(setup.levels.boiling).si() * c * (poured - to).si();  // J per m3 poured
    const double warm = heat::water_density(from).si() * c;  // J/K per m3 in the box
    const double lift = (to - from).si();
    const double need = capacity.si() * lift;
    const double added = need / hot;
    if (added <= room.si()) {
        return Volume{added};
    }
    const double swapped = (need - hot * room.si()) / (hot + warm * lift);
    return Volume{room.si() + swapped};
}

units::Length below_rim(const Setup& setup, Volume more) {
    constexpr double step = 5e-3;  // m
    const double poured = more.si() * facts::facts().spread("litres").high;
    const units::Length line = setup.box->inside[2] - heat::level_of(setup.box->inside, setup.most, Volume{-poured});
    return units::Length{units::round_to(line.si(), step, units::Toward::up)};
}

namespace {

/// What lifts `water` litres and the liner from one reading to another, in the likely scenario.
Volume likely_pour(const Setup& setup, Volume water, Volume room, Temperature reading, Temperature mark) {
    const double warm = heat::water_density(reading).si() * heat::water_specific_heat().si();
    return lifting_pour(setup, units::HeatCapacity{water.si() * warm + setup.liner.si()}, room, reading, mark,
                        setup.levels.boiling - units::kelvins(likely_scenario().boiling_cooled));
}

}  // namespace

Simulation::Simulation(const Setup& setup, const Scenario& scenario, std::vector<heat::FoodInBath> foods,
                       bool recording)
    : setup_(&setup),
      scenario_(scenario),
      foods_(std::move(foods)),
      bath_(box_in(setup, scenario), Volume{0}, liner_start(setup), setup.air->warmer_by(scenario.outside)),
      error_(setup.box->thermometer.value_or(units::kelvins(0)) * scenario.reading),
      level_(usual_level()),
      poured_at_(setup.levels.boiling - units::kelvins(scenario.boiling_cooled)),
      places_(foods_.size()),
      excess_(excess_at_start(setup, foods_)) {
    bath_.record(recording);
}

Temperature Simulation::usual_level() const {
    return std::max(setup_->levels.floor + units::kelvins(scenario_.colder), setup_->levels.action_line);
}

Temperature Simulation::shown() const {
    return bath_.temperature() + error_;
}

Volume Simulation::room() const {
    return std::max(Volume{0}, setup_->most - bath_.water() - (filled_ ? food_volume_ : Volume{0}));
}

void Simulation::pour(Volume boiling, Volume out_first) {
    poured_.push_back(boiling);
    const Volume real = boiling * scenario_.litres;
    const Volume out = std::max(out_first, real - room());
    if (filled_) {
        spilled_ = std::max(spilled_, out - out_first);
    }
    taken_out_.push_back(out);
    bath_.pour(out, real, poured_at_);
}

Volume Simulation::above(units::Length below) const {
    // At the bottom of a box there is no line to draw: what is left in stays.
    const Volume line = heat::level_volume(setup_->box->inside, setup_->box->inside[2] - below);
    return std::max(Volume{0}, bath_.water() + food_volume_ - std::max(line, food_volume_));
}

bool Simulation::is_to_pour(const Recipe& recipe, int nth) const {
    // A pot that cooled on the way may leave the reading short; then one more pot is boiled.
    return nth <= recipe.pours || (setup_->box->thermometer && nth == recipe.pours + 1 &&
                                   recipe.reading - error_ - bath_.temperature() >= near_mark());
}

void Simulation::fill_pour(const Recipe& recipe, int nth) {
    const bool reads = setup_->box->thermometer.has_value();
    const Temperature wanted = recipe.reading - error_;
    bath_.open_lid(Duration{scenario_.lid});  // before the trim by reading, which makes good what it cost
    Volume litres = setup_->batch;
    if (!reads && nth == recipe.pours) {
        litres = setup_->box->water - recipe.cold - setup_->batch * (recipe.pours - 1);
    } else if (reads) {
        const double c = heat::water_specific_heat().si();
        const double need = bath_.capacity().si() * (wanted - bath_.temperature()).si();
        const double per_volume = heat::water_density(setup_->levels.boiling).si() * c * (poured_at_ - wanted).si();
        litres = std::clamp(Volume{need / per_volume / scenario_.litres}, Volume{0}, setup_->batch);
    }
    pour(litres);
}

void Simulation::finish_pouring() {
    fill_pours_ = poured_.size();
    filled_at_ = bath_.temperature();
    over_rim_ = bath_.water() + setup_->food_volume - setup_->most;
    if (over_rim_ > Volume{0}) {
        bath_.pour(above(below_rim(*setup_, setup_->food_volume)), Volume{0}, poured_at_);
    }
}

void Simulation::take_food() {
    bath_.open_lid(Duration{scenario_.lid});
    filled_ = true;
    food_in_ = bath_.now();
    plan_moves();
    while (moves_by(food_in_)) {
        next_move();
    }
}

void Simulation::fill_all(std::span<Simulation* const> runs, const Recipe& recipe) {
    std::vector<Simulation*> pouring(runs.begin(), runs.end());
    const auto run_on = [](const std::vector<Simulation*>& some, const auto& moment) {
        std::vector<heat::Bath*> baths;
        std::vector<Duration> moments;
        for (Simulation* run : some) {
            baths.push_back(&run->bath_);
            moments.push_back(moment(*run));
        }
        heat::advance_all(baths, moments);
    };
    for (Simulation* run : pouring) {
        run->bath_.pour(Volume{0}, recipe.cold * run->scenario_.litres, run->setup_->trip->fire.cold_water);
    }
    for (int nth = 1; !pouring.empty(); ++nth) {
        std::erase_if(pouring, [&](const Simulation* run) { return !run->is_to_pour(recipe, nth); });
        run_on(pouring, [nth](const Simulation& run) { return run.setup_->round * (nth + run.setup_->rounds_before); });
        for (Simulation* run : pouring) {
            run->fill_pour(recipe, nth);
        }
    }
    pouring.assign(runs.begin(), runs.end());
    for (Simulation* run : pouring) {
        run->finish_pouring();
    }
    const Duration settle = facts::kept([](const facts::Facts& facts) { return facts.duration("fill.settle"); });
    run_on(pouring, [settle](const Simulation& run) { return run.bath_.now() + settle; });
    for (Simulation* run : pouring) {
        run->take_food();
    }
}

void Simulation::fill(const Recipe& recipe) {
    Simulation* const alone[] = {this};
    fill_all(alone, recipe);
}

void Simulation::plan_moves() {
    for (std::size_t i = 0; i < foods_.size(); ++i) {
        const FoodSetup& food = setup_->foods[i];
        const Duration in = std::max(food.in.value_or(food_in_), food_in_);
        if (food.out <= in) {
            continue;  // eaten before the bath is ready for it: it never goes in
        }
        food_volume_ += food.volume;
        moves_.push_back({in, i, true});
        if (trip::eaten(*food.food, *setup_->trip) < setup_->trip->serve) {
            moves_.push_back({std::max(food.out, in), i, false});
        }
    }
    // The soonest last; at one moment a food comes out before another goes in.
    std::stable_sort(moves_.begin(), moves_.end(),
                     [](const Move& a, const Move& b) { return a.at != b.at ? a.at > b.at : a.in && !b.in; });
}

void Simulation::move(const Move& move) {
    if (bath_.now() > food_in_) {
        bath_.open_lid(Duration{scenario_.lid});  // at the filling it is open already
    }
    if (move.in) {
        places_[move.food] = Place{bath_.put_in(std::move(foods_[move.food])), true};
    } else {
        bath_.take_out(places_[move.food]->index);
        places_[move.food]->inside = false;
        food_volume_ = food_volume_ - setup_->foods[move.food].volume;
    }
}

void Simulation::next_move() {
    const Move next = moves_.back();
    moves_.pop_back();
    bath_.advance_to(std::max(next.at, bath_.now()));
    move(next);
}

const units::History& Simulation::core_history(std::size_t food) const {
    static const units::History none;
    return places_[food] ? bath_.core_history(places_[food]->index) : none;
}

Volume Simulation::wanted(const Recipe& recipe, Volume out_first) const {
    const Temperature mark = recipe.top_up_mark - error_;
    if (!setup_->box->thermometer) {
        // Nobody reads it: as much as lifts the least that the bath may be.
        const Temperature least = setup_->levels.action_line;
        return std::min(likely_pour(*setup_, bath_.water(), room(), least, recipe.top_up_mark), setup_->batch);
    }
    const Temperature bath = bath_.temperature();
    const double warm = heat::water_density(bath).si() * heat::water_specific_heat().si();
    const units::HeatCapacity left{bath_.capacity_at_once().si() - out_first.si() * warm};
    const Volume real = lifting_pour(*setup_, left, room() + out_first, bath, mark, poured_at_);
    Volume most = setup_->batch;
    if (!recipe.ladder.empty() && !readings_.empty()) {
        most = std::min(most, by_ladder(recipe.ladder, readings_.back()));
    }
    return std::min(real / scenario_.litres, most);
}

void Simulation::arrive() {
    readings_.push_back(shown());
    bath_.open_lid(Duration{scenario_.lid});
}

void Simulation::pour_to_mark(const Recipe& recipe, const PlannedPour& planned) {
    const bool fixed = !setup_->box->thermometer && planned.boiling > Volume{0};
    const Volume most = fixed ? planned.boiling
                        : recipe.ladder.empty() || !setup_->box->thermometer
                            ? wanted(recipe)
                            : std::min(by_ladder(recipe.ladder, readings_.back()), setup_->batch);
    const Volume out = above(below_rim(*setup_, most));
    pour(fixed ? most : wanted(recipe, out), out);
    level_ = usual_level();
    // Nobody reads a mark without a thermometer.
    short_of_mark_ = short_of_mark_ || (setup_->box->thermometer && shown() < recipe.top_up_mark - near_mark());
}

void Simulation::top_up(const Recipe& recipe, const PlannedPour& planned) {
    arrive();
    pour_to_mark(recipe, planned);
}

void Simulation::move_to(const Surroundings& around) {
    // box_in() takes the trip's wind class; the asked one replaces it.
    const auto factor = [&](double wind) { return heat::wind_factor(std::clamp(wind + scenario_.wind, 0.0, 2.0)); };
    const double usual = factor(heat::wind_position(setup_->trip->weather.wind));
    units::History air;
    air.add(bath_.now(), around.air + units::kelvins(scenario_.outside));
    bath_.move_to(box_in(*setup_, scenario_).loss * (factor(around.wind) / usual), std::move(air));
}

void Simulation::set_reading(Temperature reading) {
    bath_.set_temperature(reading - error_);
}

void Simulation::see(const SeenBath& seen) {
    set_reading(seen.reading);
    if (seen.water) {
        const Volume more = *seen.water - bath_.water();
        bath_.pour(std::max(Volume{0}, Volume{-more.si()}), std::max(Volume{0}, more), bath_.temperature());
    }
    level_ = std::max(setup_->levels.floor + units::kelvins(scenario_.colder),
                      std::min(setup_->levels.action_line, bath_.temperature() - units::kelvins(1)));
    failed_ = false;  // whatever the bath was in this scenario, this is what it is
    look();
}

}  // namespace holdwater::plan
