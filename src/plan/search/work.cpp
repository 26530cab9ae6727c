// SPDX-License-Identifier: MIT
#include "plan/search/work.hpp"

namespace holdwater::plan {
namespace {

thread_local WorkBound* innermost_bound = nullptr;

}  // namespace

WorkBound::WorkBound(double most) : most_(most), around_(innermost_bound) {
    innermost_bound = this;
}

WorkBound::~WorkBound() {
    innermost_bound = around_;
    if (around_ != nullptr) {
        around_->done_.fetch_add(done_.load(std::memory_order_relaxed), std::memory_order_relaxed);
        if (stopped()) {
            around_->stopped_inside_.store(true, std::memory_order_relaxed);
        }
    }
}

WorkBound* WorkBound::current() {
    return innermost_bound;
}

WorkingFor::WorkingFor(WorkBound* bound) : before_(innermost_bound) {
    innermost_bound = bound;
}

WorkingFor::~WorkingFor() {
    innermost_bound = before_;
}

void count_work(std::uint64_t looks) {
    if (innermost_bound != nullptr) {
        innermost_bound->done_.fetch_add(looks, std::memory_order_relaxed);
    }
}

bool work_is_enough() {
    return innermost_bound != nullptr && innermost_bound->reached();
}

}  // namespace holdwater::plan
