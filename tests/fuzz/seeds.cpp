// SPDX-License-Identifier: MIT
#include "fuzz/entries.hpp"
#include "support/cases.hpp"
#include "support/files.hpp"

#include <filesystem>

namespace holdwater::fuzz {
namespace {

namespace fs = std::filesystem;

/// Every file of a folder with that ending.
void add_files(std::vector<std::string>& seeds, const std::string& folder, const std::string& ending) {
    for (const auto& entry : fs::directory_iterator(fs::path(HOLDWATER_SOURCE_DIR) / folder)) {
        if (entry.path().extension() == ending) {
            seeds.push_back(support::file_text(entry.path().string()));
        }
    }
}

/// The cases of a file, but those that are only there for their size: no change of theirs finds anything.
void add_cases(std::vector<std::string>& seeds, const std::string& file) {
    constexpr std::size_t most = 20'000;
    for (const support::Case& one : support::cases_in(file)) {
        if (one.text.size() < most) {
            seeds.push_back(one.text);
        }
    }
}

}  // namespace

std::vector<std::string> seeds_of(std::string_view name) {
    std::vector<std::string> seeds;
    if (name == "trip") {
        for (const char* folder : {"layouts/trips", "tests/trip/bad", "tests/trip/odd", "tests/card/trips"}) {
            add_files(seeds, folder, ".toml");
        }
        add_cases(seeds, "trips.txt");
    } else if (name == "log") {
        for (const char* folder : {"tests/logs", "tests/trip/logs", "tests/trip/bad", "tests/trip/odd"}) {
            add_files(seeds, folder, ".csv");
        }
        add_cases(seeds, "logs.txt");
    } else if (name == "layout") {
        add_files(seeds, "layouts/formats", ".toml");
        add_files(seeds, "layouts/sheets", ".toml");
        add_cases(seeds, "formats.txt");
        add_cases(seeds, "sheets.txt");
    } else if (name == "drawing") {
        add_files(seeds, "layouts/drawings", ".svg");
        add_cases(seeds, "drawings.txt");
    } else if (name == "wording") {
        add_files(seeds, "layouts/words", ".toml");
        add_cases(seeds, "wordings.txt");
    } else if (name == "line") {
        for (const support::Case& one : support::cases_in("lines.txt")) {
            std::string words;
            for (const std::string& word : support::words_of(one.text)) {
                words += word + "\n";
            }
            seeds.push_back(words.substr(0, 2'000));
        }
    } else if (name == "unit") {
        for (const char* text : {"85 mm",
                                 "1.8 kg",
                                 "36 L",
                                 "63 C",
                                 "2 K",
                                 "25 min",
                                 "20 %",
                                 "812 hPa",
                                 "0.9 W/K",
                                 "1.3e-7 m2/s",
                                 "0.5 W/m/K",
                                 "95 W/m2/K",
                                 "0.01 m2 K/W",
                                 "3 1/4 in",
                                 "-1/2 F",
                                 "1,5 L",
                                 "+4 °C",
                                 "06:30",
                                 "2027-10-15T16:00",
                                 "1e-310 m",
                                 "nan h",
                                 "1e300/1e-300 ft"}) {
            seeds.emplace_back(text);
        }
    }
    return seeds;
}

}  // namespace holdwater::fuzz
