// SPDX-License-Identifier: MIT
#include "cli/files/trip_file.hpp"

#include <algorithm>
#include <array>
#include <filesystem>
#include <string_view>

#include "cli/files/data.hpp"
#include "cli/files/files.hpp"
#include "facts/facts.hpp"
#include "trip/read_trip.hpp"

namespace holdwater::cli {

std::vector<std::string> languages() {
    std::vector<std::string> found;
    std::error_code fault;
    for (const auto& entry : std::filesystem::directory_iterator(layout_path("words"), fault)) {
        if (entry.path().extension() == ".toml") {
            found.push_back(entry.path().stem().string());
        }
    }
    std::sort(found.begin(), found.end());
    return found;
}

problem::Result<trip::Trip> load_trip(const std::string& path) {
    const auto text = read_file(path);
    if (!text) {
        return text.problems();
    }
    const std::filesystem::path folder = std::filesystem::path(path).parent_path();
    trip::Known known;
    for (const facts::FoodKind& kind : facts::facts().foods()) {
        known.kinds.push_back(kind.key);
    }
    known.languages = languages();
    return trip::read_trip(*text, path, [&](const std::string& name) { return read_file((folder / name).string()); },
                           known);
}

problem::Result<words::Words> load_words(const std::string& language) {
    const auto read = [](const std::string& one) -> problem::Result<words::Words> {
        const std::string name = "words/" + one + ".toml";
        const auto text = layout_file(name);
        if (!text) {
            return text.problems();
        }
        return words::Words::read(*text, layout_path(name));
    };
    auto words = read(language);
    if (!words || language == own_language) {
        return words;
    }
    const auto model = read(own_language);
    if (!model) {
        return model.problems();
    }
    if (const auto faults = words->faults_against(*model, layout_path("words/" + language + ".toml")); !faults.empty()) {
        return faults;
    }
    return words;
}

Exit exit_for(const problem::Problems& problems) {
    // Faults of the input itself that only the planner can see; everything else is a refusal.
    constexpr std::array<std::string_view, 7> wrong_input{
        "bath-overflows",   "food-not-covered",       "too-few-readings",
        "times-not-rising", "bath-not-above-outside", "bath-not-falling",
        "two-boxes"};
    const bool bad = std::any_of(problems.begin(), problems.end(), [&](const problem::Problem& p) {
        return std::find(wrong_input.begin(), wrong_input.end(), p.code) != wrong_input.end();
    });
    return bad ? Exit::bad_input : Exit::refused;
}

Exit exit_for_deck(const problem::Problems& problems) {
    const bool in_a_file = std::any_of(problems.begin(), problems.end(), [](const problem::Problem& p) {
        return p.severity == problem::Severity::error && p.place.has_value();
    });
    return in_a_file ? Exit::bad_input : Exit::our_fault;
}

Exit exit_with(const problem::Problems& remarks) {
    const bool check = std::any_of(remarks.begin(), remarks.end(), [](const problem::Problem& p) {
        return p.severity == problem::Severity::warning;
    });
    return check ? Exit::check : Exit::done;
}

Exit worse(Exit a, Exit b) {
    const auto weight = [](Exit exit) {
        constexpr std::array<Exit, 5> order{Exit::done, Exit::check, Exit::refused, Exit::bad_input, Exit::our_fault};
        return std::find(order.begin(), order.end(), exit) - order.begin();
    };
    return weight(a) > weight(b) ? a : b;
}

std::string stem_of(const std::string& path) { return std::filesystem::path(path).stem().string(); }

}  // namespace holdwater::cli
