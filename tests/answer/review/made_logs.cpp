// SPDX-License-Identifier: MIT
#include "answer/review/made_logs.hpp"

#include "answer/hold/piece.hpp"
#include "answer/review/reading.hpp"
#include "answer/review/review_food.hpp"
#include "answer/review/true_verdict.hpp"
#include "facts/facts.hpp"
#include "heat/bath.hpp"
#include "heat/box.hpp"
#include "heat/water.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace holdwater::support {
namespace {

using units::Duration;
using units::History;
using units::Temperature;

/// Numbers that are the same on every machine.
class Dice {
  public:
    explicit Dice(std::uint64_t seed) : engine_(seed) { engine_.discard(16); }
    double share() { return std::ldexp(static_cast<double>(engine_() >> 11U), -53); }
    double between(double low, double high) { return low + (high - low) * share(); }
    bool one_in(double n) { return share() * n < 1.0; }
    template <class List>
    auto pick(const List& list) {
        return list[std::min(static_cast<std::size_t>(share() * static_cast<double>(std::size(list))),
                             std::size(list) - 1)];
    }
    double normal() { return std::sqrt(-2.0 * std::log(1.0 - share())) * std::cos(2.0 * 3.14159265358979 * share()); }
    /// A value of a spread; normal ones have their 5 and 95 % points at its ends.
    double of(const char* key) {
        const facts::Spread& spread = facts::facts().spread(key);
        constexpr double ninety_five = 1.6448536;
        const double z = normal() / ninety_five;
        switch (spread.shape) {
            case facts::SpreadShape::normal:
                return (spread.low + spread.high) / 2.0 + z * (spread.high - spread.low) / 2.0;
            case facts::SpreadShape::lognormal:
                return std::sqrt(spread.low * spread.high) * std::pow(spread.high / spread.low, z / 2.0);
            default:
                return between(spread.low, spread.high);
        }
    }

  private:
    std::mt19937_64 engine_;
};

struct Drawn {
    std::string trip;
    double loss = 1.0;    // W/K, as the log says
    double water = 30.0;  // L
    double error = 1.0;   // K
    double air = 0.0;     // C, as the log says
    int wind = 0;
};

Drawn draw_trip(Dice& dice) {
    Drawn drawn;
    struct Kind {
        const char* kind;
        const char* rules;
        double target;
    };
    static const Kind kinds[] = {{"beef-top-round", "us", 60}, {"pork-loin", "us", 62},
                                 {"beef-top-round", "us", 58}, {"chicken-breast", "us", 64},
                                 {"beef-top-round", "uk", 64}, {"pork-loin", "au-nz", 64},
                                 {"beef-top-round", "ca", 64}};
    const Kind kind = dice.pick(kinds);
    drawn.water = std::round(dice.between(18, 45));
    drawn.error = dice.pick(std::vector<double>{0.5, 1.0, 1.0, 2.0});
    drawn.air = std::round(dice.between(-8, 20));
    // A box that falls by 0.4 to 2 K an hour.
    drawn.loss = std::round(dice.between(0.4, 2.0) * drawn.water * 4180 / 3600 / (60 - drawn.air) * 100.0) / 100.0;
    drawn.wind = static_cast<int>(dice.between(0, 2.999));
    const bool slow_food = dice.one_in(3);
    const double thickness = std::round(slow_food ? dice.between(90, 125) : dice.between(30, 90));
    const double pieces = std::round(dice.between(1, 3.4));
    const double length = std::round(dice.between(1.6, 3.0) * thickness);
    const double mass = 3.14159 / 4 * thickness * thickness * length * 1.05e-6;
    constexpr const char* winds[] = {"still", "breezy", "windy"};
    drawn.trip = fmt::format(R"([trip]
name = "made"
people = 8
at_risk = {}
altitude = "600 m"
from = 2027-10-15T12:00:00
serve = 2027-10-16T12:00:00
rules = "{}"
units = "metric"
language = "en"

[[food]]
name = "roast"
kind = "{}"
cut = "intact"
shape = "round"
thickness = "{:.0f} mm"
length = "{:.0f} mm"
mass = "{:.2f} kg"
pieces = {:.0f}
start = "{:.0f} C"
target = "{:.0f} C"
tolerance = "6 K"
contact = "free"
bone = false
bag = "thin"

[[box]]
inside = ["600 mm", "350 mm", "400 mm"]
water = "{:.0f} L"
thermometer = "{} K"
loss = "{} W/K"
prewarmed = true

[weather]
wind = "{}"
hours = [{{ at = "00:00", air = "{:.0f} C" }}]

[fire]
pots = 2
pot = "8 L"
usable = 0.8
boils_in = "25 min"
fuel = "wood"
moisture = "20 %"
cold_water = "5 C"
)",
                             dice.one_in(6) && kind.target >= 64 ? "true" : "false", kind.rules, kind.kind, thickness,
                             length, mass, pieces, dice.between(0, 8), kind.target, drawn.water, drawn.error,
                             drawn.loss, winds[drawn.wind], drawn.air);
    return drawn;
}

/// One line of the log to be.
struct Row {
    double at = 0.0;  // s
    std::optional<double> bath;
    std::string note;
};

class Life {
  public:
    Life(Dice& dice, const Drawn& drawn, const trip::Trip& trip, const safety::Standard& standard)
        : dice_(dice),
          drawn_(drawn),
          standard_(standard),
          bias_(drawn.error * dice.between(-1, 1)),
          bath_(box_of(trip), units::litres(drawn.water * dice.of("litres")), start(), air_of(dice, drawn)) {
        const answer::Piece piece = answer::piece_of(trip.foods.front());
        heat::Body body = piece.body;
        body.thickness = body.thickness * dice.of("thickness") + units::Length{0.5e-3 * dice.of("thickness.least")};
        const heat::FoodProperties likely = answer::properties_of(piece, heat::Bound::likely);
        const double slow = answer::properties_of(piece, heat::Bound::slow).diffusivity.si();
        const double fast = answer::properties_of(piece, heat::Bound::fast).diffusivity.si();
        const facts::Spread& spread = facts::facts().spread("diffusivity");
        // The same place between slow and fast as in the spread.
        const double place = std::log(dice.of("diffusivity") / spread.low) / std::log(spread.high / spread.low);
        auto modes = heat::modes_of(
            body, heat::with_diffusivity(likely, units::Diffusivity{slow * std::pow(fast / slow, place)}),
            heat::with_bag(units::FilmCoefficient{dice.of("film")}, piece.bag));
        REQUIRE(modes.ok());
        food_.modes = std::move(modes).value();
        food_.capacity = units::HeatCapacity{piece.mass.si() * likely.specific_heat.si()};
        food_.start = piece.start + units::kelvins(dice.of("start"));
        food_.colder = units::kelvins(std::max(0.0, dice.of("unstirred")));
    }

    /// Fill, food in, some hours with top-ups well kept or neglected, food out.
    void live(Habit habit) {
        const double boiling = 96.0;
        const double floor = std::max(standard_.cook_floor, standard_.hold_floor).celsius();
        const bool sound = !dice_.one_in(2);  // a cook who looks after it
        const double mark = (sound ? level(floor) : floor + drawn_.error) + dice_.between(1.5, 8.0);
        write(habit == Habit::two_rows || habit == Habit::after_noted || habit == Habit::after_unnoted, "food in");
        bath_.open_lid(units::minutes(dice_.of("lid.open")));
        bath_.put_in(food_);
        const double end = dice_.between(habit == Habit::two_rows ? 2 : 5, habit == Habit::two_rows ? 8 : 20) * 3600.0;
        double next_look = 3600.0;
        const double gap_from = dice_.between(2, 8) * 3600.0;
        double next_pour = pour_after(sound, floor);
        while (bath_.now().si() < end) {
            const double step = std::min({bath_.now().si() + 300.0, end});
            bath_.advance_to(Duration{step});
            const double now = bath_.now().si();
            const double temperature = bath_.temperature().celsius();
            const bool low = sound ? temperature < level(floor) : now >= next_pour;
            if (habit != Habit::two_rows && low && now < end - 600.0) {
                pour(habit, std::min(mark, temperature + 12.0), boiling);
                next_pour = now + pour_after(sound, floor);
            } else if (now >= next_look && now < end) {
                look(habit, now, gap_from);
                next_look =
                    now + (habit == Habit::sparse_noted || habit == Habit::sparse_unnoted ? dice_.between(3, 6) * 3600.0
                                                                                          : 3600.0);
            }
        }
        write(true, "food out");
    }

    const std::vector<Row>& rows() const { return rows_; }
    const heat::Bath& bath() const { return bath_; }

  private:
    Temperature start() {
        const double floor = std::max(standard_.cook_floor, standard_.hold_floor).celsius();
        return units::celsius(std::min(85.0, floor + dice_.between(4, 18)));
    }
    heat::BoxHeat box_of(const trip::Trip& trip) {
        heat::BoxHeat box;
        const double wind = std::clamp(drawn_.wind + dice_.of("wind"), 0.0, 2.0);
        box.loss = units::HeatLoss{drawn_.loss * dice_.of("box-loss") * heat::wind_factor(wind)};
        box.liner = heat::liner_of(trip.boxes.front().inside);
        box.open_surface = units::Area{trip.boxes.front().inside[0].si() * trip.boxes.front().inside[1].si()};
        return box;
    }
    static History air_of(Dice& dice, const Drawn& drawn) {
        History air;
        air.add(Duration{0}, units::celsius(drawn.air + dice.of("outside")));
        return air;
    }

    /// Where a careful cook tops up.
    double level(double floor) const { return floor + spare_ * drawn_.error + careful_; }
    double pour_after(bool sound, double) { return sound ? 0.0 : dice_.between(1.5, 10.0) * 3600.0; }

    void write(bool wanted, const std::string& note, double shift = 0.0) {
        if (wanted || !note.empty()) {
            const double read = bath_.temperature().celsius() + bias_;
            // A digital thermometer cut off at its last digit stays inside its error.
            rows_.push_back({bath_.now().si() + shift, std::round(read * 100.0) / 100.0, note});
        }
    }
    void word(const std::string& note) { rows_.push_back({bath_.now().si(), std::nullopt, note}); }

    void look(Habit habit, double now, double gap_from) {
        const bool asleep = habit == Habit::hourly_gap && now > gap_from && now < gap_from + 7 * 3600.0;
        const bool reads = habit == Habit::hourly || habit == Habit::sparse_noted || habit == Habit::sparse_unnoted ||
                           (habit == Habit::hourly_gap && !asleep);
        if (reads) {
            write(true, "");
        }
    }

    void pour(Habit habit, double mark, double boiling) {
        if (habit == Habit::card) {
            write(true, "before");
        } else if (habit == Habit::pairs) {
            write(true, "");
        }
        bath_.open_lid(units::minutes(dice_.of("lid.open")));
        const double hot = boiling - dice_.of("boil.cooling");
        const double need = bath_.capacity().si() * std::max(0.5, mark - bath_.temperature().celsius());
        const double litres =
            need / (heat::water_density(units::celsius(hot)).si() * heat::water_specific_heat().si() * (hot - mark)) *
            dice_.of("litres");
        bath_.pour(units::Volume{litres * dice_.between(0.3, 1.0)}, units::Volume{litres}, units::celsius(hot));
        switch (habit) {
            case Habit::card:
                write(true, "after");
                break;
            case Habit::pairs:
            case Habit::after_noted:
                write(true, "topped up");
                break;
            case Habit::after_unnoted:
                write(true, "");
                break;
            case Habit::hourly:
            case Habit::sparse_noted:
                word("topped up");
                break;
            default:
                break;
        }
    }

    Dice& dice_;
    const Drawn& drawn_;
    const safety::Standard& standard_;
    double bias_;
    double spare_ = dice_.between(1.0, 2.5);
    double careful_ = dice_.between(0.8, 3.0);  // K
    heat::Bath bath_;
    heat::FoodInBath food_;
    std::vector<Row> rows_;
};

}  // namespace

const char* name_of(Habit habit) {
    constexpr const char* names[] = {"card",   "pairs",           "after, noted", "after, unnoted", "hourly",
                                     "sparse", "sparse, unnoted", "two rows",     "hourly, gap"};
    return names[static_cast<int>(habit)];
}

MadeLog made_log(std::uint64_t seed, Habit habit) {
    Dice dice(seed);
    const Drawn drawn = draw_trip(dice);
    const trip::Trip trip = trip_from(drawn.trip);
    problem::Problems remarks;
    const auto standard = answer::standard_for_review(trip, trip.foods.front(), remarks);
    REQUIRE(standard.ok());
    Life life(dice, drawn, trip, *standard);
    life.live(habit);
    MadeLog made;
    made.habit = habit;
    made.trip_text = drawn.trip;
    made.log_text = "time_min,bath_c,note\n";
    for (const Row& row : life.rows()) {
        made.log_text +=
            fmt::format("{:.4f},{},{}\n", row.at / 60.0, row.bath ? fmt::format("{:.2f}", *row.bath) : "", row.note);
    }
    const Truth truth = truth_of(trip, *standard, life.bath());
    made.truth = truth.verdict;
    made.below_h = truth.below_h;
    made.growth = truth.growth;
    made.spare = truth.spare;
    made.what = fmt::format("seed {}, {}: below {:.2f} h, growth {:.2f}, spare {:.2f} K", seed, name_of(habit),
                            made.below_h, made.growth, made.spare);
    return made;
}

}  // namespace holdwater::support
