// SPDX-License-Identifier: MIT
// Runs that go on side by side: the bath is looked at every few minutes, foods go in and come out on the way.
#include "heat/lanes.hpp"
#include "plan/search/simulation.hpp"
#include "plan/search/work.hpp"

#include <algorithm>
#include <array>
#include <cstdint>

namespace holdwater::plan {
namespace {

using units::Duration;
using units::Temperature;
using units::TemperatureDifference;

/// The bath is looked at this often when a crossing is sought; it falls by well under 0.2 K in the meantime.
constexpr Duration look_every = units::minutes(5);

}  // namespace

template <class Core>
void Simulation::look(Temperature bath, const Core& core) {
    for (std::size_t i = 0; i < places_.size(); ++i) {
        if (places_[i] && places_[i]->inside) {
            failed_ = failed_ || bath <= level_;
            const TemperatureDifference over = core(places_[i]->index) - setup_->foods[i].hottest;
            excess_ = excess_ && *excess_ >= over ? *excess_ : over;
        }
    }
}

void Simulation::look() {
    look(bath_.temperature(), [this](std::size_t food) { return bath_.core(food); });
}

/// The legs of some runs: every few minutes each is looked at, by its own clock, until it is where it should be.
class Legs {
  public:
    explicit Legs(std::span<Simulation::Leg> legs) {
        for (Simulation::Leg& leg : legs) {
            Going one{&leg, leg.run->bath_.now()};
            next_look(one, leg.run->bath_.now(), leg.run->bath_.temperature());
            if (!one.there) {
                going_.push_back(one);
            }
        }
    }

    void go() {
        while (!going_.empty()) {
            for (Going& one : going_) {
                while (!one.there && one.leg->run->moves_by(one.look_at) &&
                       one.leg->run->moves_.back().at <= one.leg->run->bath_.now()) {
                    one.leg->run->next_move();
                }
            }
            some_together();
            std::erase_if(going_, [](const Going& one) { return one.there; });
        }
    }

  private:
    struct Going {
        Simulation::Leg* leg = nullptr;
        Duration from{0};
        Duration gone{0};  // since then, when the bath was added last
        Duration look_at{0};
        bool there = false;
        bool at_move = false;
    };

    static void next_look(Going& one, Duration now, Temperature bath) {
        Simulation::Leg& leg = *one.leg;
        one.there = now >= leg.until;
        one.look_at = std::min(now + look_every, leg.until);
        if (leg.bath != nullptr && now > one.from) {
            constexpr Duration rounding{1e-6};
            if (!one.there && now - one.from < one.gone + leg.every - rounding) {
                return;
            }
            one.gone = std::min(one.gone + leg.every, leg.until - one.from);
            leg.bath->add(one.gone, bath);
        }
        leg.met = leg.level && !(bath > *leg.level);
        one.there = one.there || leg.met;
    }

    /// Those that may stand beside the first go on until all of them are there or have food to move.
    void some_together() {
        std::uint64_t looks = 0;
        heat::Lanes together;
        std::array<Going*, heat::lanes> by_lane{};
        for (Going& one : going_) {
            if (const auto lane = together.join(one.leg->run->bath_)) {
                by_lane[*lane] = &one;
                one.at_move = false;
            }
        }
        for (bool any = true; any;) {
            heat::LaneRow moments;
            for (std::size_t lane = 0; lane < heat::lanes; ++lane) {
                if (by_lane[lane] != nullptr) {
                    moments.of[lane] = goal(*by_lane[lane], Duration{together.now(lane)}).si();
                }
            }
            together.advance_to(moments);
            ++looks;
            any = false;
            for (std::size_t lane = 0; lane < heat::lanes; ++lane) {
                if (Going* one = by_lane[lane]; one != nullptr && !one->there && !one->at_move) {
                    arrive(*one, together, lane);
                    any = any || (!one->there && !one->at_move);
                }
            }
        }
        const auto first =
            std::find_if(by_lane.begin(), by_lane.end(), [](const Going* one) { return one != nullptr; });
        if (first != by_lane.end()) {
            count_work(looks * (1 + (*first)->leg->run->foods_.size()));
        }
    }

    static Duration goal(const Going& one, Duration now) {
        if (one.there || one.at_move) {
            return now;
        }
        const Simulation& run = *one.leg->run;
        return run.moves_by(one.look_at) ? std::max(run.moves_.back().at, now) : one.look_at;
    }

    static void arrive(Going& one, const heat::Lanes& together, std::size_t lane) {
        Simulation& run = *one.leg->run;
        if (run.moves_by(one.look_at)) {
            one.at_move = true;
            return;
        }
        const Temperature bath{together.temperature(lane)};
        run.look(bath, [&](std::size_t food) { return Temperature{together.core(lane, food)}; });
        next_look(one, Duration{together.now(lane)}, bath);
    }

    std::vector<Going> going_;
};

void Simulation::go_on(std::span<Leg> legs) {
    Legs(legs).go();
}

bool Simulation::until_level(Temperature level, Duration until) {
    Leg alone{this, until, level};
    go_on({&alone, 1});
    return alone.met;
}

void Simulation::advance_to(Duration moment) {
    Leg alone{this, moment};
    go_on({&alone, 1});
}

}  // namespace holdwater::plan
