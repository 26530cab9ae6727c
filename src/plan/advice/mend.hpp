// SPDX-License-Identifier: MIT
// The changes that make a trip hold, the least bending first, found by solving for the value of each.
#pragma once

#include "plan/advice/feasible.hpp"
#include "plan/advice/lever.hpp"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace holdwater::plan {

/// A changed trip that was planned in full and holds. No change can be left out, and each is within one step of where
/// it would not.
struct Mend {
    trip::Trip changed;
    std::vector<std::string> changes;  // as they stand in the trip file, with words
    std::vector<Lever::Kind> kinds;    // of these
    double cost = 0.0;                 // [min at the fire]
    std::vector<Lever> levers;         // of these, so far
    std::vector<int> steps;

    /// "A, and B, and C".
    std::string advice() const;
};

/// How far each lever is pulled; 0 is not at all.
using Steps = std::vector<int>;

class Solver {
  public:
    /// Of these levers alone; trip and feasible must outlive it.
    Solver(const trip::Trip& trip, std::vector<Lever> levers, Feasible& feasible);

    trip::Trip changed_by(const Steps& steps) const;

    /// The way that holds in few scenarios and asks least: what the input needs, with one change or two besides; else
    /// the fewest together. Nothing where all of them together are not enough. With `less_than` a way of few changes
    /// that costs less than so much, or nothing.
    std::optional<Steps> found(std::optional<double> less_than = std::nullopt);
    /// Such a way in as many scenarios as any plan: pulled further until it holds, and back as far as it does.
    std::optional<Mend> settled(Steps steps);

    /// Every lever pulled to its end, but of those of which more can be worse only what helps: each way of that is
    /// looked at, until one holds. The last that was, or the one that came furthest.
    Steps furthest();

    double cost(const Steps& steps) const;

  private:
    Against against(const Steps& steps) { return feasible_->against(changed_by(steps)); }
    bool quickly(const Steps& steps) { return against(steps) == Against::nothing; }
    bool fully(const Steps& steps) { return feasible_->fully(changed_by(steps)); }
    bool is_allowed(const Steps& steps) const { return Feasible::is_allowed(changed_by(steps)); }
    Steps with_trifles(Steps steps) const;
    Steps none() const { return Steps(levers_.size(), 0); }
    std::vector<int> places_of(std::size_t lever) const;
    std::vector<Steps> next_to(const Steps& steps, Against against) const;
    std::vector<Steps> allowed_ways() const;
    std::optional<Steps> with_one_more(const Steps& base, double than);
    int affordable(std::size_t lever, double left) const;
    std::vector<std::pair<std::size_t, std::size_t>> mates(const Steps& base);
    std::optional<Steps> with_two_more(const Steps& base, double than);
    Steps few_of(const Steps& all);
    void reduce(Steps& steps);
    bool pull_further(Steps& steps);
    void settle_back(Steps& steps);
    std::vector<std::size_t> dearest_first(const Steps& steps) const;

    const trip::Trip* trip_;
    std::vector<Lever> levers_;
    Feasible* feasible_;
};

/// What makes the trip hold and asks least of the cook; nothing where no change does, nor all together.
std::optional<Mend> mend_of(const trip::Trip& trip, Feasible& feasible);

}  // namespace holdwater::plan
