// SPDX-License-Identifier: MIT
#include "plan/search/deadlines.hpp"
#include "plan/search/schedule.hpp"

#include <algorithm>

namespace holdwater::plan {

using units::Duration;

namespace {

/// Brings a run to a moment; on the way it is as it was seen, where the schedule has that.
class Passing {
  public:
    Passing(Simulation& run, const Schedule& schedule) : run_(&run), seen_(schedule.seen) {}
    void to(Duration moment) {
        if (seen_ && seen_->at <= moment) {
            run_->advance_to(seen_->at);
            run_->see(*seen_);
            seen_.reset();
        }
        run_->advance_to(moment);
    }

  private:
    Simulation* run_;
    std::optional<SeenBath> seen_;
};

}  // namespace

Simulation replay(const Ensemble& ensemble, const Schedule& schedule, std::size_t scenario, bool recording,
                  const std::function<void(const Simulation&)>& poured) {
    Simulation run = ensemble.start(scenario, recording);
    run.fill(schedule.recipe);
    Passing pass(run, schedule);
    const auto show = [&] {
        if (poured) {
            poured(run);
        }
    };
    show();
    const Duration end = serving(ensemble.setup());
    for (std::size_t k = 0; k < schedule.top_ups.size(); ++k) {
        const ScheduledTopUp& top_up = schedule.top_ups[k];
        const bool behind = schedule.seen && top_up.at <= schedule.seen->at;
        const Duration late{late_of(ensemble.scenario(scenario), k)};
        // What was done before the look was done by then.
        const Duration moment = behind ? std::min(top_up.at + late, schedule.seen->at) : top_up.at + late;
        if (moment >= end) {
            break;
        }
        behind ? run.advance_to(moment) : pass.to(moment);
        run.top_up(schedule.recipe, top_up.pour);
        show();
    }
    pass.to(end);
    return run;
}

}  // namespace holdwater::plan
