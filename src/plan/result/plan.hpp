// SPDX-License-Identifier: MIT
// The plan of a trip: what to do when, how hot, how much, and how sure it is. Numbers are unrounded; cards round them
// to the safe side.
#pragma once

#include "answer/hold/hold.hpp"
#include "answer/hold/piece.hpp"
#include "plan/provisions/finishing.hpp"
#include "plan/provisions/provisions.hpp"
#include "plan/result/levels.hpp"
#include "plan/result/way.hpp"
#include "problem/problem.hpp"
#include "safety/after_fall.hpp"
#include "trip/trip.hpp"
#include "units/history.hpp"
#include "units/interval.hpp"
#include "units/local_time.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace holdwater::plan {

using units::Interval;

struct Pour {
    units::LocalTime at;
    units::Volume boiling;  // as measured boiling
    units::Volume most;     // in 95 of 100 scenarios no more
    int pots = 0;           // on the fire for it
    int whole = 0;          // of these, poured in full in 95 of 100; the rest until the reading is right
    bool trims() const { return whole < pots; }
};

struct Fill {
    units::LocalTime light_fire;
    units::Volume cold;                       // first into the box
    units::Volume boiled;                     // all pours together, likely
    units::Volume boiled_most;                // the same in 95 of 100
    units::Volume warming;                    // boiling water that warms the box first and is tipped out; zero: none
    units::LocalTime warm_at;                 // for that
    std::vector<Pour> pours;                  // the last one trims: pour until the reading is right
    std::optional<units::Length> below_rim;   // so far below it the water must stand before the food goes in; nothing:
                                              // it does in 95 of 100
    units::Temperature reading;               // stirred, before the food goes in
    Interval<units::Temperature> after_food;  // about an hour after the food went in
    units::LocalTime food_in;
    units::LocalTime latest_food_in;  // still ready in time by the cautious reading, the whole fill being later
    units::LocalTime latest_fire;     // for that
};

struct TopUp {
    units::LocalTime at;  // pour not later than this; lateness up to half an hour is already in it
    units::LocalTime light_fire;
    Interval<units::Temperature> reading;    // as read on arrival
    units::Volume boiling;                   // by the ladder at the likely reading; without a thermometer exactly this
    units::Volume boiling_most;              // at the lowest reading in 95 of 100
    units::Volume out;                       // of the bath, that the likely scenario takes out first, so that it fits
    std::optional<units::Length> below_rim;  // so far below it the water must stand first, that it fits; nothing: it
                                             // does in 95 of 100
    bool wakes = false;                      // in the sleep window
};

/// How much boiling water lifts a reading back to the top-up mark, in 95 of 100 cases: poured until it reads the mark,
/// and no more than this. What stands too high for that is taken out first.
struct LadderRung {
    units::Temperature reading;
    units::Volume pour;
    units::Length below_rim;  // so far below it the water must stand first
};

/// Hold times of one food as answer::HoldTime has them: by thickness, and by the lowest reading since it went in.
struct HoldTable {
    std::vector<units::Temperature> baths;  // rising; without a thermometer only what the clock keeps
    std::vector<units::Length> thicknesses;
    std::vector<std::vector<std::optional<units::Duration>>> cells;  // [thickness][bath]; nothing: not in this bath
    std::size_t own = 0;                                             // the row of the trip's own piece
    /// For time that the bath read less than the column that is used, though never under the read floor, so many times
    /// as much is added to the hold time; nothing: there is no such rule, or no such reading.
    std::optional<int> dip;
};

/// The hold time that a deck prints for the trip's own piece: in the lowest bath of its table in which that is over
/// within the trip, since just at the target it takes days.
struct OwnHold {
    units::Temperature bath;              // never reads less
    std::optional<units::Duration> time;  // since food in; nothing: in none of these baths
    bool any_piece = true;                // false: known of this piece in this plan's bath alone
};

struct FoodPlan {
    const trip::Food* food = nullptr;
    answer::Piece piece;
    safety::Standard standard;
    units::LocalTime in;                 // goes into the bath
    units::LocalTime eaten;              // on the plate; of several sittings the last
    units::LocalTime due;                // on the plate; of several sittings the first
    units::LocalTime for_the_pan;        // the first of what is seared comes out for it; else due
    std::optional<Finishing> finishing;  // of a food that is finished over the fire
    /// Comes out of the bath, for the plate or for the fire; the first piece of it.
    units::LocalTime leaves() const { return finishing ? finishing->out : for_the_pan; }
    std::optional<units::LocalTime> done_late;  // kill asked met and core at target, in 95 of 100 scenarios
    /// Done, and nothing left of what grew in it while it warmed; for the fire, where it is finished there.
    std::optional<units::LocalTime> ready_likely;  // nothing: not by serving
    /// 95 of 100 scenarios are ready by then; so are 95 of 100 ways of a bath that never read less than ready_if and
    /// never more, by the Hold table's own engine.
    std::optional<units::LocalTime> ready_late;
    units::Temperature ready_if;           // that holds while no reading since food in was under this
    Interval<units::Temperature> coolest;  // reading until it is ready, or eaten
    /// The same, of a good plan: all its food is ready in time.
    units::LocalTime ready() const { return ready_late.value(); }
    /// How long a good plan holds it after that, until the last of it is eaten; nothing for what goes over the fire.
    std::optional<units::Duration> held() const {
        return standard.finish ? std::nullopt : std::optional(eaten.since(ready()));
    }
    std::optional<units::Duration> longest_for_texture;  // of this kind, once ready; nothing: no figure is known
    Interval<units::Temperature> core_peak;
    Interval<double> kill;                             // multiples of what is asked (adaptation included) at serving
    Interval<std::optional<units::Duration>> come_up;  // nothing: not by serving
    Interval<double> growth_with_lag;                  // log10 until the core passed 54.4 C
    Interval<double> growth_without_lag;
    Interval<double> growth_left;      // log10, growth less kill when it is done, cautious in each scenario
    bool growth_waits = false;         // ready is later than done, for what grew
    bool finished_for_growth = false;  // over the fire for what grew in it, not for its cut, kind or eaters
    /// Growth less kill at the ready time [log10]: nothing by what ready means, but where the fire is to kill it.
    double net_growth() const { return standard.finish ? growth_left.high : 0.0; }
    bool waits_for_growth() const { return !standard.finish && growth_waits; }
    std::optional<units::Length> thickest;  // that comes up in time in this bath
    HoldTable hold;
    OwnHold own_hold;
};

/// How long the bath may be left alone after a reading taken at night.from or later, in the coldest air of the plan.
struct Unattended {
    units::Temperature reading;
    units::Duration longest;
};

/// The last row of a night means "this reading or less".
struct MorningRow {
    units::Temperature reading;
    struct Cell {
        units::Duration since;  // the last good reading was so long ago
        units::Duration below;  // at most so long below the floor
        safety::FallAction action = safety::FallAction::none;
    };
    std::vector<Cell> cells;
};

struct Night {
    units::LocalTime from;                 // from then on all this holds: bedtime, or when the bath has settled
    units::Temperature air;                // that all this is reckoned in: the coldest of the plan
    units::Temperature reading;            // after a top-up; where there is none, the most that it shows then
    std::optional<units::LocalTime> wake;  // first top-up in the sleep window, if one cannot be helped
    units::Duration longest;               // may be left alone from `reading`
    std::vector<Unattended> unattended;
    std::vector<double> curve_hours;
    std::vector<Interval<units::Temperature>> curve;
    std::vector<MorningRow> morning;
};

/// Nobody can measure: a pour came later than the plan allows for.
struct LatePour {
    units::Duration until;  // so late at the most, and it may be boiled through and eaten at once; later: thrown away
    units::Duration boil;   // at a hard boil, until every core has its full temperature, however cold it was
};

struct Event {
    enum class Kind {
        light_fire,
        warm_box,
        pour,
        food_in,
        top_up,
        ready,
        boil_finish,
        finish,
        take_out,
        hot_water,
        sitting,
        serve
    };
    units::LocalTime at;
    Kind kind = Kind::serve;
    std::size_t index = 0;  // which pour, top-up, food, hot water or sitting; food_in, boil_finish: the first food then
};

/// What becomes of the plan if things turn out otherwise.
struct WhatIfAnswer {
    const trip::WhatIf* what = nullptr;
    bool holds = false;       // nothing is ever below the floor, and all is ready
    std::string broken;       // the first limit that breaks, if a changed trip does not hold
    std::size_t top_ups = 0;  // of the changed trip
    std::size_t wakes = 0;    // of these, in the sleep window
    units::Duration longest;  // the bath may be left alone after a top-up
    units::Duration below;    // fire out: longest time below the floor
    safety::FallAction action = safety::FallAction::none;  // fire out: what to do then
};

/// A wish of the trip that could not be met, and was bent by the least that works.
struct BentWish {
    std::string food;
    units::Temperature asked;                   // its target
    units::TemperatureDifference asked_within;  // its tolerance
    units::Temperature target;                  // as planned, as the next
    units::TemperatureDifference within;
};

struct Plan {
    std::shared_ptr<const trip::Trip>
        trip;  // foods and answers point into it; as planned, so a plan is whole by itself
    Fill fill;
    Levels levels;
    std::vector<safety::ColdBath> cold_baths;  // thrown away before the clock says so; of the bath, not as a reading
    std::vector<TopUp> top_ups;
    std::optional<LatePour> late_pour;  // without a thermometer, where that saves anything
    std::vector<LadderRung> ladder;
    bool mark_out_of_reach = false;  // of the pots, too often for a promise: whoever tops up goes by the reading
    units::Duration round;           // from cold pots to the pour
    units::Duration interval_calm;   // between top-ups: still air and the warmest hour
    units::Duration interval_rough;  // windy and the coldest hour
    /// So long after a reading it is read again at the latest, so that a fire that is lit then boils before the bath is
    /// down to the floor; but never sooner than facts look.soonest. After the mark, and after whatever is over the
    /// line.
    units::Duration again_at_mark;
    units::Duration again_over_line;
    std::vector<FoodPlan> foods;
    Night night;
    std::vector<Event> events;              // in time order
    std::vector<units::Duration> curve_at;  // since trip.from
    std::vector<Interval<units::Temperature>> bath_curve;
    std::vector<Interval<units::Temperature>> core_curve;  // of the first food
    Interval<units::HeatLoss> loss;                        // lid closed, still air
    std::vector<WhatIfAnswer> what_ifs;                    // in the trip's order
    Provisions around;                                     // portions, water, fuel, ice, sides, sear, leftovers
    units::LocalTime waits_until;  // the meal may wait in the bath so long after serving, without a top-up
    units::Temperature waits_if;   // that holds where the bath reads no less than this at serving
    Promise promise;
    bool boil_waits_for_fire = false;
    std::vector<Way> ways;       // this plan first, then others that differ; empty where none were looked for
    std::vector<BentWish> bent;  // of the foods that turn out other than was wished
    problem::Problems notes;     // warnings and notes that come with a good plan
};

/// Browned in the pan as it leaves the bath: not what is finished over the fire, nor what was cooked before.
inline bool is_seared(const FoodPlan& food) {
    return !food.standard.finish && !food.standard.kept_hot;
}

/// The foods whose time (FoodPlan::in or FoodPlan::eaten) this is, in the trip's order.
std::vector<const FoodPlan*> foods_at(const Plan& plan, units::LocalTime FoodPlan::*time, units::LocalTime at);
/// Their names, with commas between.
std::string names_at(const Plan& plan, units::LocalTime FoodPlan::*time, units::LocalTime at);
bool all_in_at_once(const Plan& plan);

/// A good plan, or every limit that broke, each with advice that was tried and works.
problem::Result<Plan> make_plan(const trip::Trip& trip);

}  // namespace holdwater::plan
