// SPDX-License-Identifier: MIT
// A core on its way to being done, by the published rows and an integral of its own.
#pragma once

#include "facts/facts.hpp"
#include "safety/kill.hpp"
#include "safety/standard.hpp"

#include <algorithm>
#include <limits>

namespace holdwater::support {

/// One core on its way: kill by the rows, summed up from look to look.
class CoreWatch {
  public:
    CoreWatch(const safety::Standard& standard, double start) : standard_(&standard), before_(start) {}

    void see(double at, double core) {
        const double span = at - last_;
        met_ += span * 0.5 * (rate(before_) + rate(core));
        left_ = core < facts::facts().temperature("come-up.from").celsius() ? at : left_;
        if (core >= facts::facts().temperature("come-up.to").celsius()) {
            arrived_ = std::min(arrived_, at);
        }
        if (core >= standard_->core_at_least.celsius()) {
            reached_ = std::min(reached_, at);
        }
        // Slow warming makes the cells harder: twice as much is asked.
        const double asked = arrived_ - left_ <= 3600.0 ? 1.0 : 2.0;
        if (met_ >= asked && at >= reached_ + standard_->core_at_least_for.si()) {
            done_ = std::min(done_, at);
        }
        peak_ = std::max(peak_, core);
        before_ = core;
        last_ = at;
    }
    void begin(double at) { last_ = left_ = at; }
    double done() const { return done_; }
    double peak() const { return peak_; }

  private:
    double rate(double core) const {
        const auto hold = safety::hold_time(*standard_->kill, units::celsius(core));
        return hold ? 1.0 / hold->si() : 0.0;
    }
    static constexpr double never = std::numeric_limits<double>::infinity();
    const safety::Standard* standard_;
    double before_, last_ = 0.0, met_ = 0.0, left_ = 0.0, arrived_ = never, reached_ = never, done_ = never;
    double peak_ = -never;
};

}  // namespace holdwater::support
