// SPDX-License-Identifier: MIT
// Real typefaces, real files, and other people's programs that read what ours wrote.
#pragma once

#include "draw/draw.hpp"
#include "support/faces.hpp"
#include "support/sample_deck.hpp"
#include "support/typeface.hpp"

#include <cstdio>
#include <filesystem>
#include <fstream>
#include <memory>
#include <string>
#include <unistd.h>

namespace holdwater::support {

inline std::vector<layout::CardFaces> sample_faces(const std::string& format_name) {
    return layout::lay_out(sample_deck(), format(format_name), real_measure()).value();
}

inline std::vector<layout::Page> pages_of(const std::vector<layout::CardFaces>& cards) {
    std::vector<layout::Page> pages;
    for (const auto& card : cards) {
        pages.insert(pages.end(), card.faces.begin(), card.faces.end());
    }
    return pages;
}

/// A folder of its own for one test in one process, empty at the start and gone at the end.
class Scratch {
  public:
    explicit Scratch(const std::string& name)
        : folder_(std::filesystem::path(HOLDWATER_BINARY_DIR) / "tests" /
                  ("scratch-" + name + "-" + std::to_string(getpid()))) {
        std::filesystem::remove_all(folder_);
        std::filesystem::create_directories(folder_);
    }
    ~Scratch() {
        std::error_code ignored;
        std::filesystem::remove_all(folder_, ignored);
    }
    Scratch(const Scratch&) = delete;
    Scratch& operator=(const Scratch&) = delete;

    std::string path(const std::string& file) const { return (folder_ / file).string(); }
    std::string write(const std::string& file, const std::string& bytes) const {
        std::ofstream(path(file), std::ios::binary) << bytes;
        return path(file);
    }

  private:
    std::filesystem::path folder_;
};

struct Ran {
    int status = -1;
    std::string output;
};

/// Runs a command of the shell, both outputs together.
inline Ran run(const std::string& command) {
    Ran made;
    FILE* pipe = popen((command + " 2>&1").c_str(), "r");
    if (pipe == nullptr) {
        return made;
    }
    char buffer[4096];
    for (std::size_t got = 0; (got = fread(buffer, 1, sizeof buffer, pipe)) > 0;) {
        made.output.append(buffer, got);
    }
    made.status = pclose(pipe);
    return made;
}

}  // namespace holdwater::support
