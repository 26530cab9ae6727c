// SPDX-License-Identifier: MIT
// A line on the terminal for whoever waits for a plan. It is there for long work only, never in a pipe or a file, and
// gone without a trace when the work is done.
#pragma once

#include <condition_variable>
#include <mutex>
#include <string>
#include <thread>

namespace holdwater::cli {

/// What stands there after so many seconds and trips tried: "looking for a plan: 12 tried, 3 s".
std::string progress_line(std::size_t tried, int seconds);

/// A line that somebody else keeps up to date, under the same conditions.
class CountLine {
  public:
    explicit CountLine(bool wanted);
    void show(const std::string& line);
    void clear();

  private:
    bool wanted_;
    bool shown_ = false;
};

class Progress {
  public:
    /// Shows itself after a second, if it is wanted and standard error is a terminal that can clear a line.
    explicit Progress(bool wanted);
    ~Progress();
    Progress(const Progress&) = delete;
    Progress& operator=(const Progress&) = delete;

  private:
    void show();

    std::mutex mutex_;
    std::condition_variable done_;
    bool over_ = false;
    std::thread thread_;
};

}  // namespace holdwater::cli
