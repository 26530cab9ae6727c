// SPDX-License-Identifier: MIT
// The same work for many indices, on all processors. Each index has its own place for its result, so the outcome does
// not depend on how many processors there are.
#pragma once

#include "heat/lane_modes.hpp"

#include <algorithm>
#include <atomic>
#include <cstddef>
#include <exception>
#include <functional>
#include <mutex>
#include <vector>

namespace holdwater::plan {

/// Runs `work` at once on this thread and on so many kept ones as there are other processors; returns when all of them
/// came back. From inside such work, or while another thread is at it, on this thread alone. `work` must not throw.
void on_all_processors(const std::function<void()>& work);

/// Calls work(i) for each i under `count`, in no order, so many in a row as `chunk` says. What work throws comes out
/// here.
template <class Work>
void for_each_index(std::size_t count, const Work& work, std::size_t chunk = 16) {
    std::atomic<std::size_t> next{0};
    std::exception_ptr thrown;
    std::mutex throwing;
    const auto run = [&] {
        try {
            for (std::size_t from = next.fetch_add(chunk); from < count; from = next.fetch_add(chunk)) {
                for (std::size_t i = from; i < std::min(from + chunk, count); ++i) {
                    work(i);
                }
            }
        } catch (...) {
            const std::scoped_lock lock(throwing);
            thrown = std::current_exception();
        }
    };
    if (count <= chunk) {
        run();
    } else {
        on_all_processors(run);
    }
    if (thrown) {
        std::rethrow_exception(thrown);
    }
}

/// Calls work(indices) for the indices under `count` in groups whose scenarios may stand side by side in the lanes of a
/// bath (heat::lanes), on all processors.
template <class Work>
void each_side_by_side(std::size_t count, const Work& work) {
    constexpr std::size_t abreast = heat::lanes;
    constexpr std::size_t in_a_row = 16;  // for fewer groups another processor is not woken: that takes as long
    for_each_index((count + abreast - 1) / abreast,
                   [&](std::size_t group) {
                       std::vector<std::size_t> indices;
                       for (std::size_t i = group * abreast; i < std::min((group + 1) * abreast, count); ++i) {
                           indices.push_back(i);
                       }
                       work(indices);
                   },
                   in_a_row);
}

}  // namespace holdwater::plan
