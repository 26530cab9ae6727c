// SPDX-License-Identifier: MIT
#include "cli/files/progress.hpp"

#include "plan/result/progress.hpp"

#include <fmt/format.h>

#include <chrono>
#include <cstdio>
#include <unistd.h>

namespace holdwater::cli {
namespace {

constexpr const char* clear_line = "\r\033[K";

}  // namespace

std::string progress_line(std::size_t tried, int seconds) {
    return fmt::format("looking for a plan: {} tried, {} s", tried, seconds);
}

Progress::Progress(bool wanted) {
    if (wanted && isatty(STDERR_FILENO) == 1) {
        thread_ = std::thread([this] { show(); });
    }
}

Progress::~Progress() {
    if (!thread_.joinable()) {
        return;
    }
    {
        const std::scoped_lock lock(mutex_);
        over_ = true;
    }
    done_.notify_one();
    thread_.join();
}

void Progress::show() {
    const std::size_t before = plan::trips_tried();
    bool shown = false;
    std::unique_lock lock(mutex_);
    for (int seconds = 1; !done_.wait_for(lock, std::chrono::seconds(1), [this] { return over_; }); ++seconds) {
        std::fputs((clear_line + progress_line(plan::trips_tried() - before, seconds)).c_str(), stderr);
        std::fflush(stderr);
        shown = true;
    }
    if (shown) {
        std::fputs(clear_line, stderr);
        std::fflush(stderr);
    }
}

}  // namespace holdwater::cli
