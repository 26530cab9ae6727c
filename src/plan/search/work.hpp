// SPDX-License-Identifier: MIT
// How much has been looked at for a trip, and when it is enough: every search is bounded, by a measure that neither a
// clock nor the number of processors changes.
#pragma once

#include <atomic>
#include <cstdint>

namespace holdwater::plan {

/// The bound of one search and of all that is searched inside it. As long as it lives, what its thread and those who
/// work for it (on_all_processors) count goes here; in the end it goes to the bound around it as well.
class WorkBound {
  public:
    /// `most` of the measure of count_work(). Facts search.most-work and search.most-of-a-try give two.
    explicit WorkBound(double most);
    ~WorkBound();
    WorkBound(const WorkBound&) = delete;
    WorkBound& operator=(const WorkBound&) = delete;

    /// True once so much was looked at. Ask only where no other thread is at work for it, so that the answer is the
    /// same each time.
    bool reached() const { return done() >= most_; }
    /// So far, in that measure.
    double done() const { return static_cast<double>(done_.load(std::memory_order_relaxed)); }
    /// This one was reached, or one inside it.
    bool stopped() const { return reached() || stopped_inside_.load(std::memory_order_relaxed); }

    /// The innermost of this thread; null outside of any.
    static WorkBound* current();

  private:
    friend void count_work(std::uint64_t looks);
    friend class WorkingFor;

    double most_;
    WorkBound* around_;
    std::atomic<std::uint64_t> done_ = 0;
    std::atomic<bool> stopped_inside_ = false;
};

/// As long as it lives, this thread works for that bound.
class WorkingFor {
  public:
    explicit WorkingFor(WorkBound* bound);
    ~WorkingFor();
    WorkingFor(const WorkingFor&) = delete;
    WorkingFor& operator=(const WorkingFor&) = delete;

  private:
    WorkBound* before_;
};

/// Some scenarios that stand side by side were lived on to the next look at their baths: one look for the bath, and one
/// for each food in it.
void count_work(std::uint64_t looks);

/// True once the innermost bound of this thread is reached; see WorkBound::reached().
bool work_is_enough();

}  // namespace holdwater::plan
