// SPDX-License-Identifier: MIT
#include "answer/review/lowest_bath.hpp"

#include "answer/hold/piece.hpp"
#include "answer/review/review_food.hpp"
#include "facts/kept.hpp"

#include <algorithm>
#include <limits>

namespace holdwater::answer {
namespace {

using units::Duration;
using units::History;
using units::Temperature;

// Points for drawing straight lines between: this share of the time since the last change, from the shortest to the
// longest. In the shortest a bath with cold food in it falls by well under 0.1 K.
constexpr double share_of_time = 0.1;
constexpr double shortest = 30.0;  // s
constexpr double longest = 600.0;  // s

Duration lid_open() {
    const Duration open =
        facts::kept([](const facts::Facts& facts) { return units::minutes(facts.spread("lid.open").high); });
    return open;
}

Temperature hottest_fill() {
    return units::celsius(facts::facts().value("fill.highest"));
}

}  // namespace

problem::Result<WorstFood> worst_food(const trip::Food& food, const Stay& stay) {
    const Piece piece = piece_of(food);
    WorstFood worst;
    worst.stay = stay;
    constexpr std::array bounds{heat::Bound::slow, heat::Bound::likely, heat::Bound::fast};
    for (std::size_t i = 0; i < bounds.size(); ++i) {
        auto modes = modes_for(piece, bounds[i]);
        if (!modes) {
            return modes.problems();
        }
        heat::FoodInBath& in = worst.readings[i];
        in.modes = std::move(modes).value();
        in.capacity =
            units::HeatCapacity{piece.mass.si() * properties_of(piece, heat::Bound::likely).specific_heat.si()};
        in.start = piece.start + units::kelvins(facts::facts().spread("start").low);
    }
    return worst;
}

LowestBath::LowestBath(const WorstBox& box, const std::vector<WorstFood>& foods, units::TemperatureDifference error,
                       Duration from, Temperature reading)
    : foods_(&foods), error_(error), now_(from), changed_(from) {
    for (std::size_t property = 0; property < 3; ++property) {
        for (const bool warmer : {false, true}) {
            // The litres are weighed as hot as a bath is ever filled, where they weigh least: by the first reading a
            // cooler one would make the box hold more water and cool more slowly.
            Run run{heat::Bath(box.heat, box.water, hottest_fill(), box.air), property, warmer,
                    std::vector<std::size_t>(foods.size())};
            run.bath.record(false);
            run.bath.set_temperature(reading);
            run.bath.advance_to(from);
            set(run, reading);
            runs_.push_back(std::move(run));
        }
        if (foods.empty()) {
            break;  // nothing to tell apart
        }
    }
    for (std::size_t i = 0; i < foods.size(); ++i) {
        moves_.push_back({foods[i].stay.in, i, true});
        if (foods[i].stay.out > foods[i].stay.in) {
            moves_.push_back({foods[i].stay.out, i, false});
        }
    }
    std::stable_sort(moves_.begin(), moves_.end(), [](const Move& a, const Move& b) { return a.at > b.at; });
}

void LowestBath::set(Run& run, Temperature reading) const {
    run.bath.set_temperature(run.warmer ? reading + error_ : reading - error_);
}

void LowestBath::read(Temperature reading) {
    const bool explained = reading >= lowest_reading();
    for (Run& run : runs_) {
        if (run.warmer || !explained || run.bath.temperature() < reading - error_) {
            set(run, reading);
        }
    }
    changed_ = now_;
}

void LowestBath::move(const Move& move) {
    for (Run& run : runs_) {
        run.bath.open_lid(lid_open());
        if (move.in) {
            run.index[move.food] = run.bath.put_in((*foods_)[move.food].readings[run.property]);
        } else {
            run.bath.take_out(run.index[move.food]);
        }
    }
    changed_ = now_;
}

Temperature LowestBath::lowest() const {
    Temperature least{std::numeric_limits<double>::infinity()};
    for (const Run& run : runs_) {
        least = run.warmer ? least : std::min(least, run.bath.temperature());
    }
    return least;
}

Temperature LowestBath::lowest_reading() const {
    Temperature least{std::numeric_limits<double>::infinity()};
    for (const Run& run : runs_) {
        least = run.warmer ? std::min(least, run.bath.temperature() - error_) : least;
    }
    return least;
}

void LowestBath::run_to(Duration moment, History& path) {
    const auto note = [&] { path.add(now_, lowest()); };
    note();
    while (true) {
        while (!moves_.empty() && moves_.back().at <= now_ && now_ < moment) {
            move(moves_.back());
            moves_.pop_back();
            note();
        }
        if (!(now_ < moment)) {
            return;
        }
        Duration next = now_ + Duration{std::clamp(share_of_time * (now_ - changed_).si(), shortest, longest)};
        if (!moves_.empty()) {
            next = std::min(next, std::max(moves_.back().at, now_));
        }
        next = std::min(next, moment);
        for (Run& run : runs_) {
            run.bath.advance_to(next);
        }
        now_ = next;
        note();
    }
}

void LowestBath::stay_until(Duration moment, Temperature reading) {
    while (now_ < moment) {
        for (Run& run : runs_) {
            set(run, reading);
        }
        changed_ = now_;
        History unused;
        run_to(std::min(now_ + Duration{longest}, moment), unused);
    }
}

}  // namespace holdwater::answer
