// SPDX-License-Identifier: MIT
// Every text to begin with, and all that fuzzing ever found (corpus/KIND), through the functions that fuzzing calls.
// HOLDWATER_SEEDS=FOLDER writes the texts to begin with into FOLDER/KIND, for the fuzzing programs.
#include "fuzz/entries.hpp"
#include "support/files.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>

using namespace holdwater;
namespace fs = std::filesystem;

TEST_CASE("what is handed to the program as text is read, or refused, whatever it is") {
    const char* const folder = std::getenv("HOLDWATER_SEEDS");
    for (const fuzz::Entry& entry : fuzz::entries) {
        const std::string name(entry.name);
        CAPTURE(name);
        std::vector<std::string> texts = fuzz::seeds_of(name);
        CHECK(texts.size() >= 20);
        if (folder != nullptr) {
            fs::create_directories(fs::path(folder) / name);
            for (std::size_t i = 0; i < texts.size(); ++i) {
                std::ofstream(fs::path(folder) / name / std::to_string(i), std::ios::binary) << texts[i];
            }
            continue;
        }
        const fs::path found = fs::path(HOLDWATER_SOURCE_DIR) / "tests/fuzz/corpus" / name;
        if (fs::is_directory(found)) {
            for (const auto& one : fs::directory_iterator(found)) {
                texts.push_back(support::file_text(one.path().string()));
            }
        }
        for (const std::string& text : texts) {
            entry.run(text);
        }
    }
}
