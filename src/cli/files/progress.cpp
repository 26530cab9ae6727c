// SPDX-License-Identifier: MIT
#include "cli/files/progress.hpp"

#include "plan/result/progress.hpp"

#include <fmt/format.h>

#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <string_view>
#include <sys/ioctl.h>
#include <unistd.h>

namespace holdwater::cli {
namespace {

constexpr const char* clear_line = "\r\033[K";

/// A line that wraps cannot be cleared again, and a terminal that knows no escapes cannot clear any.
std::size_t columns() {
    winsize size{};
    return ioctl(STDERR_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0 ? size.ws_col : 80U;
}

bool clears_lines() {
    const char* const terminal = std::getenv("TERM");
    return terminal != nullptr && *terminal != '\0' && std::string_view(terminal) != "dumb";
}

}  // namespace

std::string progress_line(std::size_t tried, int seconds) {
    return fmt::format("looking for a plan: {} tried, {} s", tried, seconds);
}

CountLine::CountLine(bool wanted) : wanted_(wanted && isatty(STDERR_FILENO) == 1 && clears_lines()) {}

void CountLine::show(const std::string& line) {
    if (wanted_) {
        std::fputs((clear_line + line.substr(0, columns() - 1)).c_str(), stderr);
        std::fflush(stderr);
        shown_ = true;
    }
}

void CountLine::clear() {
    if (shown_) {
        std::fputs(clear_line, stderr);
        std::fflush(stderr);
        shown_ = false;
    }
}

Progress::Progress(bool wanted) {
    if (wanted && isatty(STDERR_FILENO) == 1 && clears_lines()) {
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
        const std::string line = progress_line(plan::trips_tried() - before, seconds);
        std::fputs((clear_line + line.substr(0, columns() - 1)).c_str(), stderr);
        std::fflush(stderr);
        shown = true;
    }
    if (shown) {
        std::fputs(clear_line, stderr);
        std::fflush(stderr);
    }
}

}  // namespace holdwater::cli
