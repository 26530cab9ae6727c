// SPDX-License-Identifier: MIT
#include "cli/files/trip_file.hpp"

#include "card/shared/own_words.hpp"
#include "cli/files/data.hpp"
#include "cli/files/files.hpp"
#include "cli/files/kits.hpp"
#include "draw/draw.hpp"
#include "facts/facts.hpp"
#include "layout/text/name_fault.hpp"
#include "safety/thawing.hpp"
#include "trip/read_trip.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

namespace holdwater::cli {

std::vector<std::string> languages() {
    std::vector<std::string> found;
    std::error_code fault;
    for (const auto& entry : std::filesystem::directory_iterator(layout_path("words"), fault)) {
        if (entry.path().extension() == ".toml") {
            found.push_back(entry.path().stem().string());
        }
    }
    // English is always meant to be there: a program without it says so itself.
    if (std::find(found.begin(), found.end(), own_language) == found.end()) {
        found.emplace_back(own_language);
    }
    std::sort(found.begin(), found.end());
    return found;
}

namespace {

/// "a piece of 1.8 kg: about 3 h in that water, a day in the cold".
std::string thawing_words(units::Mass piece) {
    const safety::Thawing thawing = safety::thawing_of(piece);
    const double days = units::in_hours(thawing.in_the_cold) / 24.0;
    return fmt::format("a piece of {}: {}, {:.0f} {} in the cold", units::print(piece, units::System::both),
                       thawing.in_water ? fmt::format("up to {} in that water", units::print(*thawing.in_water))
                                        : std::string("for that water no figure is known"),
                       days, days > 1.0 ? "days" : "day");
}

}  // namespace

problem::Result<trip::Trip> load_trip(const std::string& path) {
    const auto text = read_file(path);
    if (!text) {
        return text.problems();
    }
    return trip_of(*text, path);
}

problem::Result<trip::Trip> trip_of(const std::string& text, const std::string& path) {
    const std::filesystem::path folder = std::filesystem::path(path).parent_path();
    trip::Known known;
    for (const facts::FoodKind& kind : facts::facts().foods()) {
        known.kinds.push_back(kind.key);
    }
    known.languages = languages();
    known.thawing = thawing_words;
    known.read_kit = kits_for(folder.string());
    const auto measure = draw::open_measure(font_files());
    if (!measure) {
        return measure.problems();
    }
    known.name_fault = [&](std::string_view name) { return layout::name_fault(name, **measure); };
    return trip::read_trip(
        text, path, [&](const std::string& name) { return read_file((folder / name).string()); }, known);
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
    if (!words) {
        return words;
    }
    const bool own = language == own_language;
    const std::vector<std::string> also = own ? std::vector<std::string>{} : card::keys_of_other_languages();
    if (const auto faults = words->faults_against(words::Words::model(), also); !faults.empty()) {
        return faults;
    }
    return words;
}

std::string stem_of(const std::string& path) {
    return std::filesystem::path(path).stem().string();
}

}  // namespace holdwater::cli
