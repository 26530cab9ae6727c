// SPDX-License-Identifier: MIT
#include "heat/bath.hpp"

#include "facts/kept.hpp"
#include "heat/box.hpp"
#include "heat/lanes.hpp"
#include "heat/water.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <utility>

namespace holdwater::heat {
namespace {

// What a recorded run of some twenty hours takes; more is no error.
constexpr std::size_t day_of_points = 512;

double water_cp() {
    return water_specific_heat().si();
}

double unstirred_ramp() {
    return facts::kept([](const facts::Facts& facts) { return facts.duration("unstirred.ramp").si(); });
}

}  // namespace

Bath::Bath(BoxHeat box, units::Volume water, units::Temperature start, OutsideAir outside)
    : box_(box),
      outside_(std::move(outside)),
      mass_(water.si() * water_density(start).si()),
      bath_(start.celsius()),
      ramp_(unstirred_ramp()) {
    note();
}

double Bath::Piece::mean() const {
    return seen - food.modes.sum(food.modes.table().mean(), excess);
}

double Bath::Piece::shift(double kelvins) {
    for (double& of_mode : excess) {
        of_mode += kelvins;
    }
    seen += kelvins;
    core = seen - food.modes.sum(food.modes.table().core(), excess);
    return food.capacity.si() * food.modes.mean_at_once() * kelvins;
}

double Bath::settled(double moment) const {
    return std::clamp((moment - last_stir_.si()) / ramp_, 0.0, 1.0);
}

units::Volume Bath::water() const {
    return units::Volume{mass_ / water_density(temperature()).si()};
}

units::HeatCapacity Bath::capacity() const {
    return units::HeatCapacity{mass_ * water_cp() + box_.liner.si()};
}

units::HeatCapacity Bath::capacity_at_once() const {
    double sum = capacity().si();
    for (const Piece& piece : pieces_) {
        if (piece.inside) {
            sum += piece.food.capacity.si() * piece.food.modes.mean_at_once();
        }
    }
    return units::HeatCapacity{sum};
}

void Bath::move_to(units::HeatLoss loss, OutsideAir outside) {
    box_.loss = loss;
    outside_ = std::move(outside);
}

void Bath::advance_to(units::Duration moment) {
    if (!(now_ < moment)) {
        return;
    }
    Bath* const alone[] = {this};
    advance_all(alone, {&moment, 1});
}

void Bath::settle(double heat) {
    const double settled_now = settled(now_.si());
    double whole = heat;
    for (const Piece& piece : pieces_) {
        if (piece.inside) {
            whole += piece.food.capacity.si() * piece.food.modes.mean_at_once() *
                     (piece.seen + piece.food.colder.si() * settled_now);
        }
    }
    const double whole_capacity = capacity_at_once().si();
    if (whole_capacity > 0.0) {
        bath_ = whole / whole_capacity;
    }
    for (Piece& piece : pieces_) {
        if (!piece.inside) {
            continue;
        }
        ledger_.given_to_food += piece.shift(bath_ - piece.food.colder.si() * settled_now - piece.seen);
    }
    steps_since_jump_ = 0;
    note();
}

void Bath::pour(units::Volume remove, units::Volume add, units::Temperature poured) {
    const double removed = std::min(mass_, std::max(0.0, remove.si()) * water_density(temperature()).si());
    const double added = std::max(0.0, add.si()) * water_density(poured).si();
    mass_ -= removed;
    const double heat = capacity().si() * bath_ + added * water_cp() * poured.celsius();
    ledger_.taken_out += removed * water_cp() * bath_;
    ledger_.poured += added * water_cp() * poured.celsius();
    mass_ += added;
    last_stir_ = now_;
    settle(heat);
}

void Bath::set_temperature(units::Temperature t) {
    const double before = stored_energy();
    const double jump = t.celsius() - bath_;
    bath_ = t.celsius();
    for (Piece& piece : pieces_) {
        if (!piece.inside) {
            continue;
        }
        ledger_.given_to_food += piece.shift(jump);
    }
    ledger_.poured += stored_energy() - before;
    steps_since_jump_ = 0;
    note();
}

void Bath::open_lid(units::Duration how_long) {
    const double air_change = facts::kept([](const facts::Facts& facts) { return facts.value("lid.air-change"); });
    const double capacity_sum = capacity_at_once().si();
    if (!(capacity_sum > 0.0) || !(how_long.si() > 0.0)) {
        return;
    }
    // The surface cools while it is open: midpoint steps of at most half a minute.
    const double whole = how_long.si() + air_change;
    const int steps = static_cast<int>(std::ceil(whole / 30.0));
    const double dt = whole / steps;
    const double outside = outside_.at(now_.si());
    double t = bath_;
    for (int i = 0; i < steps; ++i) {
        const auto fall = [&](double at) {
            return open_surface_loss(units::Temperature{at}, units::Temperature{outside}) * box_.open_surface.si() *
                   dt / capacity_sum;
        };
        t -= fall(t - 0.5 * fall(t));
    }
    const double lost = capacity_sum * (bath_ - t);
    ledger_.lost_by_lid += lost;
    settle(capacity().si() * bath_ - lost);
}

std::size_t Bath::put_in(FoodInBath food) {
    if (!pieces_.empty() && food.modes.lane() != pieces_.front().food.modes.lane()) {
        throw std::invalid_argument("foods of one bath lie in the same lane of their modes");
    }
    const double start = food.start.celsius();
    ledger_.poured += food.capacity.si() * start;
    std::vector<double> excess(food.modes.table().modes());
    pieces_.push_back({std::move(food), std::move(excess), start, start, true, {}});
    if (recording_) {
        pieces_.back().core_history.points.reserve(day_of_points);
        bath_history_.points.reserve(day_of_points);
        pieces_.back().core_history.add(now_, units::Temperature{start});
    }
    settle(capacity().si() * bath_);
    return pieces_.size() - 1;
}

void Bath::take_out(std::size_t food) {
    Piece& piece = pieces_.at(food);
    if (piece.inside) {
        ledger_.taken_out += piece.food.capacity.si() * piece.mean();
        piece.inside = false;
        steps_since_jump_ = 0;
    }
}

void Bath::note() {
    if (!recording_) {
        return;
    }
    const units::Temperature bath{bath_};
    if (bath_history_.empty() || bath_history_.points.back().at != now_ || bath_history_.points.back().value != bath) {
        bath_history_.add(now_, bath);
    }
    for (Piece& piece : pieces_) {
        // The core has no jumps: one point a moment is enough.
        if (piece.inside && (piece.core_history.empty() || piece.core_history.points.back().at != now_)) {
            piece.core_history.add(now_, units::Temperature{piece.core});
        }
    }
}

units::Temperature Bath::core(std::size_t food) const {
    return units::Temperature{pieces_.at(food).core};
}

units::Temperature Bath::surface(std::size_t food) const {
    const Piece& piece = pieces_.at(food);
    return units::Temperature{piece.seen - piece.food.modes.sum(piece.food.modes.table().surface(), piece.excess)};
}

units::Temperature Bath::mean(std::size_t food) const {
    return units::Temperature{pieces_.at(food).mean()};
}

const units::History& Bath::core_history(std::size_t food) const {
    return pieces_.at(food).core_history;
}

double Bath::stored_energy() const {
    double sum = capacity().si() * bath_;
    for (const Piece& piece : pieces_) {
        if (piece.inside) {
            sum += piece.food.capacity.si() * piece.mean();
        }
    }
    return sum;
}

}  // namespace holdwater::heat
