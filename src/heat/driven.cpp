// SPDX-License-Identifier: MIT
#include "heat/driven.hpp"

#include "heat/mode_state.hpp"

#include <algorithm>
#include <utility>

namespace holdwater::heat {
namespace {

// Points for drawing straight lines between: after a jump of the bath each interval is this share of the time since,
// from the shortest to the longest. Every point is exact; the lines between are off by (dt^2 / 8) T'', which stays
// under 0.01 K since T'' falls as the square of the time (tests/answer/review/driven.cpp).
constexpr double share_of_time = 0.03;
constexpr double shortest = 1.0;  // s
constexpr double longest = 75.0;  // s

class Walk {
  public:
    Walk(const Modes& modes, units::Temperature start, units::Duration from)
        : state_(modes), bath_(start.celsius()), now_(from.si()), jumped_(from.si()) {
        result_.core.add(from, start);
        result_.mean.add(from, start);
    }

    void jump_to(double bath) {
        if (bath == bath_) {
            return;
        }
        state_.shift(bath - bath_);
        bath_ = bath;
        jumped_ = now_;
        result_.mean.add(units::Duration{now_}, mean());
    }

    /// Runs along a straight line to a moment and a bath there.
    void run_to(double moment, double bath) {
        const double slope = (bath - bath_) / (moment - now_);
        while (now_ < moment) {
            const double left = moment - now_;
            const double dt = std::min(std::clamp(share_of_time * (now_ - jumped_), shortest, longest), left);
            const bool last = dt >= left;
            state_.step(dt, slope);
            now_ = last ? moment : now_ + dt;
            bath_ = last ? bath : bath_ + slope * dt;
            result_.core.add(units::Duration{now_}, units::Temperature{bath_ - state_.core()});
            result_.mean.add(units::Duration{now_}, mean());
        }
    }

    Driven take() { return std::move(result_); }

  private:
    units::Temperature mean() const { return units::Temperature{bath_ - state_.mean()}; }

    ModeState state_;
    double bath_;  // C
    double now_;   // s
    double jumped_;
    Driven result_;
};

}  // namespace

Driven driven(const Modes& modes, units::Temperature start, const units::History& bath, units::Duration from,
              units::Duration to) {
    Walk walk(modes, start, from);
    walk.jump_to(bath.at(from).celsius());
    double now = from.si();
    for (const units::History::Point& point : bath.points) {
        if (point.at <= from) {
            continue;
        }
        if (point.at >= to) {
            break;
        }
        if (point.at.si() > now) {
            walk.run_to(point.at.si(), point.value.celsius());
            now = point.at.si();
        } else {
            walk.jump_to(point.value.celsius());
        }
    }
    if (to.si() > now) {
        // The value just before `to`: a jump at the very end changes nothing any more.
        const auto last = std::find_if(bath.points.begin(), bath.points.end(),
                                       [&](const units::History::Point& p) { return p.at >= to; });
        const double end = last != bath.points.end() && last->at == to ? last->value.celsius() : bath.at(to).celsius();
        walk.run_to(to.si(), end);
    }
    return walk.take();
}

}  // namespace holdwater::heat
