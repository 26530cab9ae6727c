// SPDX-License-Identifier: MIT
#include "heat/lanes.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace holdwater::heat {
namespace {

// After a jump each step length is used so many times before the next longer one: seconds first, minutes later. A
// numerical setting; tests/heat holds the result against steps of one second.
constexpr std::size_t steps_per_length = 3;

constexpr std::array<double, step_lengths> lengths = [] {
    std::array<double, step_lengths> all{};
    for (std::size_t rung = 0; rung < step_lengths; ++rung) {
        all[rung] = step_length(rung);
    }
    return all;
}();

/// Memory of lanes that were left, for the next ones: they come and go by the million.
std::vector<PieceInLanes>& spare_pieces() {
    thread_local std::vector<PieceInLanes> spare;
    return spare;
}

PieceInLanes spare_piece() {
    std::vector<PieceInLanes>& spare = spare_pieces();
    if (spare.empty()) {
        return {};
    }
    PieceInLanes piece = std::move(spare.back());
    spare.pop_back();
    return piece;
}

}  // namespace

std::optional<std::size_t> Lanes::join(Bath& bath) {
    state_.fall_for = step_lengths;
    std::optional<std::size_t> lane;
    std::size_t piece = 0;
    for (std::size_t i = 0; i < bath.pieces_.size(); ++i) {
        const Bath::Piece& own = bath.pieces_[i];
        if (!own.inside) {
            continue;
        }
        const LaneOfModes& modes = own.food.modes;
        if (count_ == 0) {
            foods_.push_back(i);
            state_.pieces.push_back(spare_piece());
            PieceInLanes& made = state_.pieces.back();
            made.modes = &modes.table();
            for (std::vector<LaneRow>* rows : {&made.excess, &made.other.decay, &made.other.gain}) {
                rows->resize(modes.table().modes());
            }
        } else if (piece >= foods_.size() || foods_[piece] != i || state_.pieces[piece].modes != &modes.table()) {
            return std::nullopt;
        }
        lane = modes.lane();
        ++piece;
    }
    if (piece != foods_.size()) {
        return std::nullopt;
    }
    if (!lane) {  // in water alone any lane will do
        lane = static_cast<std::size_t>(std::find(baths_.begin(), baths_.end(), nullptr) - baths_.begin());
    }
    if (*lane >= lanes || baths_[*lane] != nullptr) {
        return std::nullopt;
    }
    baths_[*lane] = &bath;
    ++count_;
    state_.now.of[*lane] = bath.now_.si();
    state_.stirred.of[*lane] = bath.last_stir_.si();
    state_.capacity.of[*lane] = bath.capacity().si();
    state_.loss.of[*lane] = bath.box_.loss.si();
    state_.bath.of[*lane] = bath.bath_;
    state_.lost.of[*lane] = bath.ledger_.lost_to_outside;
    state_.ramp = bath.ramp_;
    steps_since_jump_[*lane] = bath.steps_since_jump_;
    for (std::size_t p = 0; p < foods_.size(); ++p) {
        const Bath::Piece& own = bath.pieces_[foods_[p]];
        PieceInLanes& here = state_.pieces[p];
        here.capacity.of[*lane] = own.food.capacity.si();
        here.colder.of[*lane] = own.food.colder.si();
        here.seen.of[*lane] = own.seen;
        here.core.of[*lane] = own.core;
        here.given.of[*lane] = 0.0;
        for (std::size_t n = 0; n < own.excess.size(); ++n) {
            here.excess[n].of[*lane] = own.excess[n];
        }
    }
    return lane;
}

void Lanes::leave() {
    for (std::size_t lane = 0; lane < lanes; ++lane) {
        if (baths_[lane] == nullptr) {
            continue;
        }
        Bath& bath = *baths_[lane];
        bath.now_ = units::Duration{state_.now.of[lane]};
        bath.bath_ = state_.bath.of[lane];
        bath.ledger_.lost_to_outside = state_.lost.of[lane];
        bath.steps_since_jump_ = steps_since_jump_[lane];
        for (std::size_t p = 0; p < foods_.size(); ++p) {
            Bath::Piece& own = bath.pieces_[foods_[p]];
            const PieceInLanes& here = state_.pieces[p];
            own.seen = here.seen.of[lane];
            own.core = here.core.of[lane];
            bath.ledger_.given_to_food += here.given.of[lane];
            for (std::size_t n = 0; n < own.excess.size(); ++n) {
                own.excess[n] = here.excess[n].of[lane];
            }
        }
    }
    baths_.fill(nullptr);
    foods_.clear();
    for (PieceInLanes& piece : state_.pieces) {
        spare_pieces().push_back(std::move(piece));
    }
    state_.pieces.clear();
    count_ = 0;
}

double Lanes::core(std::size_t lane, std::size_t food) const {
    if (food < foods_.size() && foods_[food] == food) {
        return state_.pieces[food].core.of[lane];  // nearly always: none before it came out
    }
    const auto piece = static_cast<std::size_t>(std::find(foods_.begin(), foods_.end(), food) - foods_.begin());
    return state_.pieces.at(piece).core.of[lane];
}

Lanes::Step Lanes::next_step(std::size_t lane, double moment) const {
    const double left = moment - state_.now.of[lane];
    const std::size_t longest = step_lengths - 1;
    // Water alone answers a jump at once: nothing in it needs short steps.
    std::size_t rung = foods_.empty() ? longest : std::min(steps_since_jump_[lane] / steps_per_length, longest);
    // The rest of a stretch that is whole in ready-made steps is made of them; others cost more.
    if (left < lengths[rung] && std::fmod(left, lengths[0]) == 0.0) {
        while (left < lengths[rung]) {
            --rung;
        }
    }
    return left < lengths[rung] ? Step{left, step_lengths, true} : Step{lengths[rung], rung, false};
}

void Lanes::advance_to(const LaneRow& moments) {
    for (;;) {
        std::array<std::size_t, lanes> rungs{};
        std::array<bool, lanes> last{};
        LaneRow dt;
        LaneRow outside;
        unsigned wanted = 0;  // a bit for each rung that some lane wants
        for (std::size_t lane = 0; lane < lanes; ++lane) {
            if (baths_[lane] == nullptr || !(state_.now.of[lane] < moments.of[lane])) {
                continue;
            }
            const Step step = next_step(lane, moments.of[lane]);
            dt.of[lane] = step.length;
            rungs[lane] = step.rung;
            last[lane] = step.last;
            wanted |= 1U << step.rung;
            const double now = state_.now.of[lane];
            outside.of[lane] = baths_[lane]->outside_.mean(now, now + step.length);
        }
        if (wanted == 0) {
            return;
        }
        for (std::size_t rung = 0; rung <= step_lengths; ++rung) {
            if ((wanted & (1U << rung)) == 0) {
                continue;
            }
            LaneRow own = dt;
            if (wanted != 1U << rung) {
                for (std::size_t lane = 0; lane < lanes; ++lane) {
                    own.of[lane] = rungs[lane] == rung ? dt.of[lane] : 0.0;
                }
            }
            step_lanes(state_, own, outside, rung);
        }
        for (std::size_t lane = 0; lane < lanes; ++lane) {
            if (dt.of[lane] > 0.0) {
                state_.now.of[lane] = last[lane] ? moments.of[lane] : state_.now.of[lane] + dt.of[lane];
                ++steps_since_jump_[lane];
                note(lane);
            }
        }
    }
}

void Lanes::note(std::size_t lane) const {
    Bath& bath = *baths_[lane];
    if (!bath.recording_) {
        return;
    }
    const units::Duration now{state_.now.of[lane]};
    bath.bath_history_.add(now, units::Temperature{state_.bath.of[lane]});
    for (std::size_t p = 0; p < foods_.size(); ++p) {
        bath.pieces_[foods_[p]].core_history.add(now, units::Temperature{state_.pieces[p].core.of[lane]});
    }
}

void advance_all(std::span<Bath* const> baths, std::span<const units::Duration> moments) {
    std::vector<bool> there(baths.size());
    for (std::size_t first = 0; first < baths.size(); ++first) {
        if (there[first]) {
            continue;
        }
        Lanes together;
        LaneRow until;
        for (std::size_t i = first; i < baths.size(); ++i) {
            if (const auto lane = there[i] ? std::nullopt : together.join(*baths[i])) {
                until.of[*lane] = moments[i].si();
                there[i] = true;
            }
        }
        together.advance_to(until);
    }
}

}  // namespace holdwater::heat
