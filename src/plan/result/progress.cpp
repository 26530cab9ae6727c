// SPDX-License-Identifier: MIT
#include "plan/result/progress.hpp"

#include <atomic>

namespace holdwater::plan {
namespace {

std::atomic<std::size_t> tried{0};

}  // namespace

std::size_t trips_tried() {
    return tried.load(std::memory_order_relaxed);
}

void count_trip() {
    tried.fetch_add(1, std::memory_order_relaxed);
}

}  // namespace holdwater::plan
