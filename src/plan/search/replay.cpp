// SPDX-License-Identifier: MIT
#include "plan/search/deadlines.hpp"
#include "plan/search/schedule.hpp"

#include <algorithm>
#include <utility>

namespace holdwater::plan {

using units::Duration;

namespace {

/// Scenarios that live through a schedule together.
class Replay {
  public:
    Replay(const Ensemble& ensemble, const Schedule& schedule, const std::vector<std::size_t>& scenarios,
           bool recording)
        : ensemble_(&ensemble), schedule_(&schedule), scenarios_(&scenarios), seen_(scenarios.size()) {
        for (const std::size_t i : scenarios) {
            runs_.push_back(ensemble.start(i, recording));
        }
        std::vector<Simulation*> all;
        for (Simulation& run : runs_) {
            all.push_back(&run);
        }
        Simulation::fill_all(all, schedule.recipe);
    }

    void run(const Poured& poured) {
        std::vector<std::size_t> still(runs_.size());  // for whom there is another top-up before serving
        for (std::size_t at = 0; at < runs_.size(); ++at) {
            still[at] = at;
            show(at, poured);
        }
        const Duration end = serving(ensemble_->setup());
        for (std::size_t k = 0; k < schedule_->top_ups.size(); ++k) {
            std::erase_if(still, [&](std::size_t at) { return moment_of(at, k) >= end; });
            to(
                still, [&](std::size_t at) { return moment_of(at, k); }, is_behind(k));
            for (const std::size_t at : still) {
                runs_[at].top_up(schedule_->recipe, schedule_->top_ups[k].pour);
                show(at, poured);
            }
        }
        still.resize(runs_.size());
        for (std::size_t at = 0; at < runs_.size(); ++at) {
            still[at] = at;
        }
        to(
            still, [&](std::size_t) { return end; }, false);
    }

    std::vector<Simulation> take() { return std::move(runs_); }

  private:
    void show(std::size_t at, const Poured& poured) const {
        if (poured) {
            poured((*scenarios_)[at], runs_[at]);
        }
    }
    bool is_behind(std::size_t k) const { return schedule_->seen && schedule_->top_ups[k].at <= schedule_->seen->at; }
    Duration moment_of(std::size_t at, std::size_t k) const {
        const Duration late{late_of(ensemble_->scenario((*scenarios_)[at]), k)};
        const Duration moment = schedule_->top_ups[k].at + late;
        // What was done before the look was done by then.
        return is_behind(k) ? std::min(moment, schedule_->seen->at) : moment;
    }

    /// Brings runs to their moments; on the way they are as they were seen, where the schedule has that.
    template <class Moment>
    void to(const std::vector<std::size_t>& some, const Moment& moment, bool behind) {
        std::vector<Simulation::Leg> legs;
        const std::optional<SeenBath>& seen = schedule_->seen;
        if (seen && !behind) {
            std::vector<std::size_t> passing;
            for (const std::size_t at : some) {
                if (!seen_[at] && seen->at <= moment(at)) {
                    passing.push_back(at);
                    legs.push_back({&runs_[at], seen->at});
                }
            }
            Simulation::go_on(legs);
            for (const std::size_t at : passing) {
                runs_[at].see(*seen);
                seen_[at] = true;
            }
            legs.clear();
        }
        for (const std::size_t at : some) {
            legs.push_back({&runs_[at], moment(at)});
        }
        Simulation::go_on(legs);
    }

    const Ensemble* ensemble_;
    const Schedule* schedule_;
    const std::vector<std::size_t>* scenarios_;
    std::vector<Simulation> runs_;
    std::vector<bool> seen_;
};

}  // namespace

std::vector<Simulation> replay_all(const Ensemble& ensemble, const Schedule& schedule,
                                   const std::vector<std::size_t>& scenarios, bool recording, const Poured& poured) {
    Replay replay(ensemble, schedule, scenarios, recording);
    replay.run(poured);
    return replay.take();
}

Simulation replay(const Ensemble& ensemble, const Schedule& schedule, std::size_t scenario, bool recording,
                  const std::function<void(const Simulation&)>& poured) {
    const Poured each = [&poured](std::size_t, const Simulation& run) { poured(run); };
    return std::move(replay_all(ensemble, schedule, {scenario}, recording, poured ? each : Poured()).front());
}

}  // namespace holdwater::plan
