// SPDX-License-Identifier: MIT
// The same work for many indices, on all processors. Each index has its own place for its result, so the outcome does
// not depend on how many processors there are.
#pragma once

#include <algorithm>
#include <atomic>
#include <cstddef>
#include <exception>
#include <thread>
#include <vector>

namespace holdwater::plan {

/// Calls work(i) for each i under `count`, in no order, so many in a row as `chunk` says. What work throws comes out
/// here.
template <class Work>
void for_each_index(std::size_t count, const Work& work, std::size_t chunk = 16) {
    const std::size_t most = (count + chunk - 1) / chunk;
    const std::size_t threads =
        std::clamp<std::size_t>(std::thread::hardware_concurrency(), 1, std::max<std::size_t>(most, 1));
    std::atomic<std::size_t> next{0};
    std::vector<std::exception_ptr> thrown(threads);
    const auto run = [&](std::size_t self) {
        try {
            for (std::size_t from = next.fetch_add(chunk); from < count; from = next.fetch_add(chunk)) {
                for (std::size_t i = from; i < std::min(from + chunk, count); ++i) {
                    work(i);
                }
            }
        } catch (...) {
            thrown[self] = std::current_exception();
        }
    };
    std::vector<std::jthread> others;
    for (std::size_t t = 1; t < threads; ++t) {
        others.emplace_back(run, t);
    }
    run(0);
    others.clear();  // joins
    for (const std::exception_ptr& exception : thrown) {
        if (exception) {
            std::rethrow_exception(exception);
        }
    }
}

}  // namespace holdwater::plan
