// SPDX-License-Identifier: MIT
#include "heat/bath.hpp"

#include "facts/kept.hpp"
#include "heat/box.hpp"
#include "heat/water.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace holdwater::heat {
namespace {

// After a jump each step length is used so many times before the next longer one: seconds first, minutes later. A
// numerical setting; tests/heat holds the result against steps of one second.
constexpr std::size_t steps_per_length = 3;

// What a recorded run of some twenty hours takes; more is no error.
constexpr std::size_t day_of_points = 512;

double water_cp() {
    return water_specific_heat().si();
}

double unstirred_ramp() {
    return facts::kept([](const facts::Facts& facts) { return facts.duration("unstirred.ramp").si(); });
}

}  // namespace

Bath::Bath(BoxHeat box, units::Volume water, units::Temperature start, units::History outside)
    : box_(box),
      outside_(std::move(outside)),
      mass_(water.si() * water_density(start).si()),
      bath_(start.celsius()),
      ramp_(unstirred_ramp()) {
    note();
}

double Bath::Piece::mean() const {
    return seen - state.mean();
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

bool Bath::any_inside() const {
    return std::any_of(pieces_.begin(), pieces_.end(), [](const Piece& piece) { return piece.inside; });
}

units::HeatCapacity Bath::capacity_at_once() const {
    double sum = capacity().si();
    for (const Piece& piece : pieces_) {
        if (piece.inside) {
            sum += piece.food.capacity.si() * piece.state.mean_at_once();
        }
    }
    return units::HeatCapacity{sum};
}

void Bath::move_to(units::HeatLoss loss, units::History outside) {
    box_.loss = loss;
    outside_ = OutsideAir(std::move(outside));
}

void Bath::advance_to(units::Duration moment) {
    while (now_ < moment) {
        const std::size_t longest = step_lengths - 1;
        // Water alone answers a jump at once: nothing in it needs short steps.
        std::size_t rung = any_inside() ? std::min(steps_since_jump_ / steps_per_length, longest) : longest;
        const double left = (moment - now_).si();
        // The rest of a stretch that is whole in ready-made steps is made of them; exponentials cost more.
        if (left < step_length(rung) && std::fmod(left, step_length(0)) == 0.0) {
            while (left < step_length(rung)) {
                --rung;
            }
        }
        if (left < step_length(rung)) {
            step(left, step_lengths);
            now_ = moment;
        } else {
            step(step_length(rung), rung);
            now_ += units::Duration{step_length(rung)};
        }
        ++steps_since_jump_;
        note();
    }
}

// The one inner loop of a plan: also compiled for processors that do four numbers at once, with the same results bit
// by bit, since nothing is added in another order.
#if defined(__x86_64__) && defined(__gnu_linux__) && !defined(__clang__) && !defined(__SANITIZE_ADDRESS__)
__attribute__((target_clones("avx2", "default")))
#endif
void Bath::step(double dt, std::size_t rung) {
    // Returns nothing; moves bath and foods by dt [s]. The slope s [K/s] of the bath follows from the energy balance of
    // the step, linear in s because every x_n is:
    //   C s dt + sum C_f ((s - c') (dt - lag) + fall) + UA dt (T + s dt / 2 - mean outside) = 0,
    // with c' the slope of the food's colder layer. Source: heat.md e.1 and the modes of body.hpp. Any dt > 0.
    const double from = now_.si();
    const double settled_after = settled(from + dt);
    double capacity_sum = capacity().si() * dt;
    double heat = 0.0;  // that foods take at s = 0
    for (Piece& piece : pieces_) {
        if (!piece.inside) {
            continue;
        }
        piece.state.choose(dt, rung);
        const double c = piece.food.capacity.si();
        const double weight = c * (dt - piece.state.lag());
        const double colder_slope = (piece.food.colder.si() * settled_after - (bath_ - piece.seen)) / dt;
        capacity_sum += weight;
        piece.fall = piece.state.fall();
        heat += c * piece.fall - colder_slope * weight;
    }
    const double loss = box_.loss.si() * dt;
    const double outside = outside_.mean(from, from + dt);
    const double denominator = capacity_sum + 0.5 * loss * dt;
    const double slope = denominator > 0.0 ? -(heat + loss * (bath_ - outside)) / denominator : 0.0;

    const double next = bath_ + slope * dt;
    if (denominator > 0.0) {
        ledger_.lost_to_outside += loss * (0.5 * (bath_ + next) - outside);
    }
    for (Piece& piece : pieces_) {
        if (!piece.inside) {
            continue;
        }
        const double seen = next - piece.food.colder.si() * settled_after;
        const double seen_slope = (seen - piece.seen) / dt;
        ledger_.given_to_food += piece.food.capacity.si() * (seen_slope * (dt - piece.state.lag()) + piece.fall);
        piece.seen = seen;
        piece.core = seen - piece.state.step(seen_slope);
    }
    bath_ = next;
}

void Bath::settle(double heat) {
    const double settled_now = settled(now_.si());
    double whole = heat;
    for (const Piece& piece : pieces_) {
        if (piece.inside) {
            whole += piece.food.capacity.si() * piece.state.mean_at_once() *
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
        const double seen = bath_ - piece.food.colder.si() * settled_now;
        const double jump = seen - piece.seen;
        piece.state.shift(jump);
        piece.seen = seen;
        piece.core = seen - piece.state.core();
        ledger_.given_to_food += piece.food.capacity.si() * piece.state.mean_at_once() * jump;
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
        piece.state.shift(jump);
        piece.seen += jump;
        piece.core = piece.seen - piece.state.core();
        ledger_.given_to_food += piece.food.capacity.si() * piece.state.mean_at_once() * jump;
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
    const double start = food.start.celsius();
    ledger_.poured += food.capacity.si() * start;
    ModeState state(food.modes);
    pieces_.push_back({std::move(food), std::move(state), start, start, 0.0, true, {}});
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
    return units::Temperature{piece.seen - piece.state.surface()};
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
