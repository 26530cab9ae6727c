// SPDX-License-Identifier: MIT
// Writes the lists of tests/pages anew; look at what changed before keeping them.
#include "pages/demo_faces.hpp"

#include <cstdio>
#include <exception>
#include <filesystem>
#include <fstream>

int main() {
    const std::filesystem::path folder = std::filesystem::path(HOLDWATER_SOURCE_DIR) / "tests" / "pages";
    try {
        const auto lists = holdwater::support::page_lists();
        for (const std::string& name : holdwater::support::demo_names()) {
            std::filesystem::remove_all(folder / name);
            std::filesystem::create_directories(folder / name);
        }
        for (const auto& [path, list] : lists) {
            std::ofstream(folder / path, std::ios::binary) << list;
        }
        std::printf("%zu lists written\n", lists.size());
    } catch (const std::exception& fault) {
        std::fprintf(stderr, "%s\n", fault.what());
        return 1;
    }
}
