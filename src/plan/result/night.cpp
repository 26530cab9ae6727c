// SPDX-License-Identifier: MIT
#include "plan/result/night.hpp"

#include "facts/facts.hpp"
#include "heat/water.hpp"
#include "plan/result/summary.hpp"
#include "plan/search/parallel.hpp"
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
    const double water = setup.box->water.si() * scenario.litres * heat::water_density(setup.levels.action_line).si() *
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

/// The bath that reads `reading` now, as it came down from the floor at the slow end: at each level, so long ago that
/// in all but the allowed share of scenarios it was passed later. Its moments end at zero, now. `constants`: the time
/// constant of each scenario [s].
units::History slowest_fall(const Ensemble& ensemble, const std::vector<double>& constants, Temperature reading,
                            Temperature warm_air) {
    const Setup& setup = ensemble.setup();
    const double whole_error = setup.box->thermometer.value_or(units::kelvins(0)).si();
    const double floor = setup.levels.floor.celsius();
    const double lowest = std::min(reading.celsius() - whole_error, floor);
    constexpr int levels = 24;
    units::History fall;
    std::vector<double> times(ensemble.size());
    double before = std::numeric_limits<double>::infinity();
    for (int k = 0; k <= levels; ++k) {
        const double level = floor + (lowest - floor) * k / levels;
        for (std::size_t i = 0; i < ensemble.size(); ++i) {
            const Scenario& scenario = ensemble.scenario(i);
            times[i] = cooling_time(constants[i], level, reading.celsius() - reading_error(setup, scenario),
                                    warm_air.celsius() + scenario.outside);
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

/// The bath of a scenario that falls from a temperature on, its food as warm as itself.
Temperature fallen(const Ensemble& ensemble, std::size_t i, Temperature from, Duration since,
                   const Surroundings& around) {
    const double air = around.air.celsius() + ensemble.scenario(i).outside;
    return units::celsius(air +
                          (from.celsius() - air) * std::exp(-since.si() / time_constant(ensemble, i, around.wind)));
}

/// The box in one scenario whenever a top-up is due: on the way down from each pour, when it reads the action line, or
/// at serving.
std::vector<Simulation> due(const Ensemble& ensemble, const Schedule& schedule, std::size_t i) {
    const Setup& setup = ensemble.setup();
    const Temperature line = setup.levels.action_line - units::kelvins(reading_error(setup, ensemble.scenario(i)));
    std::vector<Simulation> boxes;
    replay(ensemble, schedule, i, false, [&](const Simulation& run) {
        boxes.push_back(run);
        boxes.back().until_level(line, setup.trip->serve.since(setup.trip->from));
        boxes.back().set_reading(std::min(boxes.back().shown(), setup.levels.action_line));
    });
    return boxes;
}

/// Readings that the box shows from bedtime on in 5 to 95 of 100 scenarios, and how long it may be left after each and
/// after the last reading before it is left.
void add_rows(const Setup& setup, const LeftBoxes& boxes, Night& night) {
    if (!setup.box->thermometer) {
        night.longest = boxes.after_any_pour();
        return;
    }
    std::vector<Temperature> readings{night.reading};
    std::vector<Temperature> lowest;
    std::vector<Temperature> highest;
    for (const LeftBox& box : boxes.boxes()) {
        lowest.push_back(box.lowest);
        highest.push_back(box.highest);
    }
    const double tail = allowed_failures();
    const double first =
        std::max(std::ceil(setup.levels.action_line.celsius()) + 1.0, std::floor(quantile_low(lowest, tail).celsius()));
    const double top = std::round(quantile_high(highest, 1.0 - tail).celsius());
    for (double r = top; r >= first; r -= 1.0) {
        readings.push_back(units::celsius(r));
    }
    const std::vector<Duration> alone = boxes.after_readings(readings);
    night.longest = alone.front();
    for (std::size_t i = 1; i < readings.size(); ++i) {
        if (alone[i] > units::minutes(30)) {
            night.unattended.push_back({readings[i], alone[i]});
        }
    }
}

/// The curve: brought to the mark at bedtime, then left as long as twice the promise but ten hours at the most.
void add_curve(const Ensemble& ensemble, const LeftBoxes& boxes, Night& night) {
    const double span = std::clamp(2.0 * units::in_hours(night.longest), 4.0, 10.0);
    for (int k = 0; k <= 40; ++k) {
        const double hours = span * k / 40.0;
        std::vector<Temperature> baths;
        for (const LeftBox& box : boxes.boxes()) {
            baths.push_back(box.marked.after(units::hours(hours)));
        }
        night.curve_hours.push_back(hours);
        night.curve.push_back(ensemble.interval(baths));
    }
}

std::size_t few_of(const Ensemble& ensemble) {
    constexpr std::size_t few = 256;
    return std::min(ensemble.size(), few);
}

}  // namespace

units::History coldest_fall(const Ensemble& ensemble, const Schedule& schedule, Temperature from, Duration longest) {
    constexpr Duration step = units::minutes(5);
    const Setup& setup = ensemble.setup();
    const Surroundings around = coldest_of(setup);
    const Duration late = units::minutes(facts::facts().spread("top-up.late").high);
    std::vector<std::vector<Alone>> falls(few_of(ensemble));
    for_each_index(falls.size(), [&](std::size_t i) {
        replay(ensemble, schedule, i, false, [&](const Simulation& run) {
            const std::size_t next = falls[i].size();
            if (next < schedule.top_ups.size()) {
                Simulation box = run;
                box.advance_to(schedule.top_ups[next].at + late);
                box.set_reading(from + units::kelvins(reading_error(setup, ensemble.scenario(i))));
                falls[i].push_back(left_alone(std::move(box), around, longest, true));
            }
        });
    });
    units::History coldest;
    for (Duration since{0}; since <= longest; since += step) {
        std::vector<Temperature> baths;
        for (std::size_t i = 0; i < falls.size(); ++i) {
            // Food that is still warmer than so cold a bath is not to help.
            Temperature bath = fallen(ensemble, i, from, since, around);
            for (const Alone& fall : falls[i]) {
                bath = std::min(bath, fall.after(since));
            }
            baths.push_back(bath);
        }
        coldest.add(since, quantile_low(std::move(baths), ensemble.allowed()));
    }
    return coldest;
}

Duration may_wait(const LeftBoxes& boxes) {
    return std::min(facts::facts().duration("wait.longest"),
                    Duration{units::round_to(boxes.after_serving().si(), 900.0, units::Toward::down)});
}

FireOut fire_out(const Ensemble& ensemble, const Schedule& schedule, Duration out,
                 units::TemperatureDifference colder) {
    const Setup& setup = ensemble.setup();
    const facts::Facts& facts = facts::facts();
    Surroundings around = coldest_of(setup);
    around.air = around.air - colder;
    const Temperature deep = facts.temperature("fall.deep");
    const Duration without = out + setup.round;  // the pots must come to the boil again
    std::vector<Duration> below(few_of(ensemble));
    std::vector<Duration> below_50(below.size());
    std::vector<Temperature> coolest(below.size(), setup.levels.action_line);
    for_each_index(below.size(), [&](std::size_t i) {
        for (Simulation& box : due(ensemble, schedule, i)) {
            const Alone alone = left_alone(std::move(box), around, without, true);
            below[i] = std::max(below[i], without - alone.down_to(setup.levels.floor));
            below_50[i] = std::max(below_50[i], without - alone.down_to(deep));
            coolest[i] = std::min(coolest[i], alone.bath.points.back().value);
        }
    });
    FireOut answer;
    answer.below = quantile_high(below, 1.0 - ensemble.allowed());
    if (!(answer.below > Duration{0})) {
        return answer;
    }
    const Temperature end = quantile_low(coolest, ensemble.allowed());
    safety::Fall fall;
    fall.below_50 = quantile_high(below_50, 1.0 - ensemble.allowed());
    Duration back{0};
    for (const FoodSetup& food : setup.foods) {
        // The clock runs until the core is back as well; it is taken to have followed the bath all the way down.
        answer::HoldQuestion rise{food.piece.body,
                                  answer::properties_of(food.piece, heat::Bound::slow),
                                  answer::film_of(food.piece, heat::Bound::slow),
                                  schedule.recipe.top_up_mark,
                                  end,
                                  setup.levels.floor};
        const auto core = answer::core_in_constant_bath(rise);
        back = std::max(back, core ? core->first_at_or_above(setup.levels.floor).value_or(out) : out);
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

Night night_of(const Ensemble& ensemble, const Schedule& schedule, const LeftBoxes& boxes) {
    const Setup& setup = ensemble.setup();
    const trip::Trip& trip = *setup.trip;
    Night night;
    night.from = trip.from.after(boxes.watch_from());
    night.air = coldest_of(setup).air;
    night.reading = boxes.last_reading();
    for (const ScheduledTopUp& top_up : schedule.top_ups) {
        if (top_up.wakes) {
            night.wake = trip.from.after(top_up.at);
            break;
        }
    }
    add_rows(setup, boxes, night);
    add_curve(ensemble, boxes, night);
    std::vector<double> constants;
    for (std::size_t i = 0; i < ensemble.size(); ++i) {
        constants.push_back(time_constant(ensemble, i, heat::wind_position(trip.weather.wind), Foods::all));
    }
    const std::vector<Duration> columns{units::hours(2), units::hours(4), units::hours(8)};
    const double floor = std::ceil(setup.levels.read_floor.celsius());
    for (double r = floor - 1.0; r >= 46.0 && r >= floor - 8.0; r -= 1.0) {
        const Temperature reading = units::celsius(r);
        // The last row stands for every reading below it too, however fast the bath fell.
        const bool last = r - 1.0 < 46.0 || r - 1.0 < floor - 8.0;
        const units::History slowest =
            last ? units::History{} : slowest_fall(ensemble, constants, reading, warmest_of(setup));
        night.morning.push_back(morning_row(ensemble, reading, slowest, columns));
    }
    return night;
}

}  // namespace holdwater::plan
