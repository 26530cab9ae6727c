// SPDX-License-Identifier: MIT
// What a test run measured, one line of the README's accuracy table a file; tests/accuracy puts them together.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <string>

namespace holdwater::support {

inline std::filesystem::path accuracy_folder() {
    return std::filesystem::path(HOLDWATER_BINARY_DIR) / "accuracy";
}

/// `key` orders the rows. `what` the engine computes, `against` what it is held, `found` the worst of this run, as text
/// that does not change from machine to machine: rounded up to one or two digits.
inline void record_accuracy(const std::string& key, const std::string& what, const std::string& against,
                            const std::string& found) {
    std::filesystem::create_directories(accuracy_folder());
    std::ofstream(accuracy_folder() / (key + ".txt")) << "| " << what << " | " << against << " | " << found << " |\n";
}

/// "0.02 K": a difference rounded up to one digit, so that it is the same on every machine.
inline std::string at_most(double worst, const std::string& unit) {
    const double size = std::pow(10.0, std::floor(std::log10(worst)));
    char text[64];
    std::snprintf(text, sizeof text, unit.empty() ? "%.1g" : "%.1g %s", std::ceil(worst / size - 1e-9) * size,
                  unit.c_str());
    return text;
}

/// Keeps the largest of what a test compares.
class Worst {
  public:
    void take(double a, double b) { worst_ = std::max(worst_, std::abs(a - b)); }
    double value() const { return worst_; }

  private:
    double worst_ = 0.0;
};

}  // namespace holdwater::support
