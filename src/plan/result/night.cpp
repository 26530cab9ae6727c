// SPDX-License-Identifier: MIT
#include "plan/result/night.hpp"

#include "facts/facts.hpp"
#include "heat/water.hpp"
#include "plan/result/summary.hpp"
#include "plan/search/sleep_window.hpp"
#include "safety/growth.hpp"
#include "units/print.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace holdwater::plan {
namespace {

using units::Duration;
using units::Temperature;

/// Food keeps a bath warm. Where slow cooling is what is feared, all of it counts, else only what is in all the time.
enum class Foods { all, that_stay };

/// Time constant of the filled box with the food at bath temperature [s], in one scenario.
double time_constant(const Ensemble& ensemble, std::size_t i, double wind, Foods which = Foods::that_stay) {
    const Setup& setup = ensemble.setup();
    const Scenario& scenario = ensemble.scenario(i);
    const double water = setup.box->water.si() * scenario.litres * heat::water_density(setup.action_line).si() *
                         heat::water_specific_heat().si();
    double food = 0.0;
    for (std::size_t f = 0; f < setup.foods.size(); ++f) {
        if (which == Foods::all || setup.foods[f].whole_time) {
            food += ensemble.foods(i)[f].capacity.si();
        }
    }
    // box_in() takes the trip's wind class; the asked one replaces it.
    const double usual =
        heat::wind_factor(std::clamp(heat::wind_position(setup.trip->weather.wind) + scenario.wind, 0.0, 2.0));
    const double asked = heat::wind_factor(std::clamp(wind + scenario.wind, 0.0, 2.0));
    const double loss = box_in(setup, scenario).loss.si() * asked / usual;
    return (water + setup.liner.si() + food) / loss;
}

/// Time from `high` to `low` by exponential cooling toward `air` [s].
double cooling_time(double constant, double high, double low, double air) {
    if (high <= low) {
        return 0.0;
    }
    return low <= air ? std::numeric_limits<double>::infinity() : constant * std::log((high - air) / (low - air));
}

double reading_error(const Setup& setup, const Scenario& scenario) {
    return setup.box->thermometer.value_or(units::kelvins(0)).si() * scenario.reading;
}

/// Lowest and highest air of the forecast within a stretch.
std::pair<Temperature, Temperature> air_between(const Setup& setup, Duration from, Duration to) {
    Temperature low = setup.outside.at(from);
    Temperature high = low;
    for (Duration t = from; t <= to; t += units::minutes(30)) {
        low = std::min(low, setup.outside.at(t));
        high = std::max(high, setup.outside.at(t));
    }
    return {low, high};
}

/// The bath that reads `reading` now, as it came down from the floor at the slow end: at each level, so long ago that
/// in all but the allowed share of scenarios it was passed later. Its moments end at zero, now.
units::History slowest_fall(const Ensemble& ensemble, Temperature reading, Temperature warm_air) {
    const Setup& setup = ensemble.setup();
    const double wind = heat::wind_position(setup.trip->weather.wind);
    const double whole_error = setup.box->thermometer.value_or(units::kelvins(0)).si();
    const double floor = setup.floor.celsius();
    const double lowest = std::min(reading.celsius() - whole_error, floor);
    constexpr int levels = 24;
    units::History fall;
    std::vector<double> times(ensemble.size());
    double before = std::numeric_limits<double>::infinity();
    for (int k = 0; k <= levels; ++k) {
        const double level = floor + (lowest - floor) * k / levels;
        for (std::size_t i = 0; i < ensemble.size(); ++i) {
            const Scenario& scenario = ensemble.scenario(i);
            times[i] =
                cooling_time(time_constant(ensemble, i, wind, Foods::all), level,
                             reading.celsius() - reading_error(setup, scenario), warm_air.celsius() + scenario.outside);
        }
        before = std::min(before, quantile_high(times, 1.0 - ensemble.allowed()));
        fall.add(Duration{-before}, Temperature{level});
    }
    fall.add(Duration{0}, Temperature{lowest});
    return fall;
}

MorningRow morning_row(const Ensemble& ensemble, Temperature reading, const units::History& slowest,
                       const std::vector<Duration>& columns) {
    const Setup& setup = ensemble.setup();
    MorningRow row;
    row.reading = reading;
    for (const Duration since : columns) {
        const safety::Fall fall = safety::worst_fall(slowest, since, growth_models(setup));
        row.cells.push_back({since, fall.below_floor, safety::decide(fall, fall_rules(setup)).action});
    }
    return row;
}

struct Stretch {
    Duration from;
    Duration to;
};

/// Bedtime to rising; without sleep, from an hour after the food went in to serving.
Stretch stretch_of(const Setup& setup, Duration food_in) {
    const Duration end = setup.trip->serve.since(setup.trip->from);
    const auto night = SleepWindow(*setup.trip).night_after(food_in);
    Duration from = food_in + units::hours(1);
    Duration to = end;
    if (night && night->from < end) {
        from = std::max(night->from, from);
        to = std::min(night->to, end);
    }
    return {from, std::max(to, from + units::hours(1))};
}

}  // namespace

Duration left_alone(const Ensemble& ensemble, Temperature reading, const Surroundings& around) {
    const Setup& setup = ensemble.setup();
    std::vector<double> times;
    for (std::size_t i = 0; i < ensemble.size(); ++i) {
        const Scenario& scenario = ensemble.scenario(i);
        const double level = std::max(setup.floor.celsius() + scenario.colder, setup.action_line.celsius());
        times.push_back(cooling_time(time_constant(ensemble, i, around.wind),
                                     reading.celsius() - reading_error(setup, scenario), level,
                                     around.air.celsius() + scenario.outside));
    }
    return Duration{quantile_low(times, ensemble.allowed())};
}

Temperature coldest_after(const Ensemble& ensemble, Temperature from, Duration since) {
    const Setup& setup = ensemble.setup();
    const double air = air_between(setup, Duration{0}, setup.trip->serve.since(setup.trip->from)).first.celsius();
    const double wind = heat::wind_position(setup.trip->weather.wind);
    std::vector<double> baths;
    for (std::size_t i = 0; i < ensemble.size(); ++i) {
        const double outside = air + ensemble.scenario(i).outside;
        baths.push_back(outside +
                        (from.celsius() - outside) * std::exp(-since.si() / time_constant(ensemble, i, wind)));
    }
    return Temperature{quantile_low(baths, ensemble.allowed())};
}

Duration longest_alone(const Ensemble& ensemble, Temperature reading) {
    const Setup& setup = ensemble.setup();
    const auto [coldest, warmest] = air_between(setup, Duration{0}, setup.trip->serve.since(setup.trip->from));
    (void)warmest;
    const Duration alone = left_alone(ensemble, reading, {coldest, heat::wind_position(setup.trip->weather.wind)});
    return Duration{units::round_to(alone.si(), 900.0, units::Toward::down)};
}

Duration may_wait(const Ensemble& ensemble, const std::vector<ScenarioResult>& results) {
    const Setup& setup = ensemble.setup();
    const Duration end = setup.trip->serve.since(setup.trip->from);
    const Duration longest = facts::facts().duration("wait.longest");
    const double wind = heat::wind_position(setup.trip->weather.wind);
    const double air = air_between(setup, end, end + longest).first.celsius();
    std::vector<double> times;
    for (std::size_t i = 0; i < ensemble.size(); ++i) {
        const Scenario& s = ensemble.scenario(i);
        const double level = std::max(setup.floor.celsius() + s.colder, setup.action_line.celsius());
        times.push_back(
            cooling_time(time_constant(ensemble, i, wind), results[i].at_end.celsius(), level, air + s.outside));
    }
    return std::min(longest,
                    Duration{units::round_to(quantile_low(times, ensemble.allowed()), 900.0, units::Toward::down)});
}

FireOut fire_out(const Ensemble& ensemble, Temperature mark, Duration out, units::TemperatureDifference colder) {
    const Setup& setup = ensemble.setup();
    const facts::Facts& facts = facts::facts();
    const double cold = air_between(setup, Duration{0}, setup.trip->serve.since(setup.trip->from)).first.celsius();
    const double wind = heat::wind_position(setup.trip->weather.wind);
    const double deep = facts.value("fall.deep");
    const double without = (out + setup.round).si();  // the pots must come to the boil again
    std::vector<double> below, below_50, coolest;
    for (std::size_t i = 0; i < ensemble.size(); ++i) {
        const Scenario& s = ensemble.scenario(i);
        const double air = cold - colder.si() + s.outside;
        const double constant = time_constant(ensemble, i, wind);
        const double start = setup.action_line.celsius() - reading_error(setup, s);
        below.push_back(std::max(0.0, without - cooling_time(constant, start, setup.floor.celsius(), air)));
        below_50.push_back(std::max(0.0, without - cooling_time(constant, start, deep, air)));
        coolest.push_back(air + (start - air) * std::exp(-without / constant));
    }
    FireOut answer;
    answer.below = Duration{quantile_high(below, 1.0 - ensemble.allowed())};
    if (!(answer.below > Duration{0})) {
        return answer;
    }
    const Temperature end{quantile_low(coolest, ensemble.allowed())};
    safety::Fall fall;
    fall.below_50 = Duration{quantile_high(below_50, 1.0 - ensemble.allowed())};
    Duration back{0};
    for (const FoodSetup& food : setup.foods) {
        // The clock runs until the core is back as well; it is taken to have followed the bath all the way down.
        answer::HoldQuestion rise{food.piece.body,
                                  answer::properties_of(food.piece, heat::Bound::slow),
                                  answer::film_of(food.piece, heat::Bound::slow),
                                  mark,
                                  end,
                                  setup.floor};
        const auto core = answer::core_in_constant_bath(rise);
        back = std::max(back, core ? core->first_at_or_above(setup.floor).value_or(out) : out);
        // Growth all the time at its fastest between the coolest bath and the floor: no fall can do worse.
        const facts::GrowthModel& model = facts.growth(facts.find_food(food.food->kind)->growth);
        const double rate = safety::FastestAbove(model)(end);
        fall.growth = std::max(fall.growth,
                               safety::lagged_growth(rate * units::in_hours(answer.below + back), model.q0_cautious));
    }
    answer.below += back;
    fall.below_floor = answer.below;
    answer.action = safety::decide(fall, fall_rules(setup)).action;
    return answer;
}

Night night_of(const Ensemble& ensemble, const Schedule& schedule, const std::vector<ScenarioResult>& results) {
    const Setup& setup = ensemble.setup();
    const trip::Trip& trip = *setup.trip;
    const Duration food_in = results.front().food_in;
    const Stretch stretch = stretch_of(setup, food_in);
    const auto [coldest, warmest] = air_between(setup, stretch.from, stretch.to);
    const Surroundings around{coldest, heat::wind_position(trip.weather.wind)};
    Night night;
    night.from = trip.from.after(stretch.from);
    night.reading = schedule.recipe.top_up_mark;
    for (const ScheduledTopUp& top_up : schedule.top_ups) {
        if (top_up.wakes) {
            night.wake = trip.from.after(top_up.at);
            break;
        }
    }
    night.longest = left_alone(ensemble, night.reading, around);
    const double first = std::ceil(setup.action_line.celsius()) + 1.0;
    for (double r = std::ceil(night.reading.celsius()) + 1.0; r >= first; r -= 1.0) {
        const Duration alone = left_alone(ensemble, units::celsius(r), around);
        if (alone > units::minutes(30)) {
            night.unattended.push_back({units::celsius(r), alone});
        }
    }
    // The curve: from the mark, in the night's coldest air, as long as twice the promise but ten hours at the most.
    const double span = std::clamp(2.0 * units::in_hours(night.longest), 4.0, 10.0);
    for (int k = 0; k <= 40; ++k) {
        const double hours = span * k / 40.0;
        std::vector<Temperature> baths;
        for (std::size_t i = 0; i < ensemble.size(); ++i) {
            const Scenario& s = ensemble.scenario(i);
            const double air = coldest.celsius() + s.outside;
            const double start = night.reading.celsius() - reading_error(setup, s);
            const double fallen = std::exp(-hours * 3600.0 / time_constant(ensemble, i, around.wind));
            baths.emplace_back(air + (start - air) * fallen);
        }
        night.curve_hours.push_back(hours);
        night.curve.push_back(ensemble.interval(baths));
    }
    const std::vector<Duration> columns{units::hours(2), units::hours(4), units::hours(8)};
    const double floor = std::ceil(setup.read_floor.celsius());
    for (double r = floor - 1.0; r >= 46.0 && r >= floor - 8.0; r -= 1.0) {
        const Temperature reading = units::celsius(r);
        // The last row stands for every reading below it too, however fast the bath fell.
        const bool last = r - 1.0 < 46.0 || r - 1.0 < floor - 8.0;
        const units::History slowest = last ? units::History{} : slowest_fall(ensemble, reading, warmest);
        night.morning.push_back(morning_row(ensemble, reading, slowest, columns));
    }
    return night;
}

}  // namespace holdwater::plan
