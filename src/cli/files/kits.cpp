// SPDX-License-Identifier: MIT
#include "cli/files/kits.hpp"

#include "cli/files/files.hpp"
#include "problem/in_text.hpp"
#include "trip/kit.hpp"
#include "units/nearest.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <vector>

namespace holdwater::cli {
namespace {

namespace fs = std::filesystem;

std::optional<fs::path> whole_path(const char* variable) {
    const char* const value = std::getenv(variable);
    const fs::path path = value != nullptr ? value : "";
    return path.is_absolute() ? std::optional(path) : std::nullopt;
}

std::vector<std::string> names_in(const std::vector<fs::path>& folders) {
    std::vector<std::string> names;
    for (const fs::path& folder : folders) {
        std::error_code fault;
        for (const auto& entry : fs::directory_iterator(folder, fault)) {
            if (entry.path().extension() == ".toml" && trip::is_kit_name(entry.path().stem().string())) {
                names.push_back(entry.path().stem().string());
            }
        }
    }
    std::sort(names.begin(), names.end());
    names.erase(std::unique(names.begin(), names.end()), names.end());
    return names;
}

problem::Problem no_such_kit(const std::string& name, const std::vector<fs::path>& folders) {
    const std::vector<std::string> names = names_in(folders);
    const std::vector<std::string_view> known(names.begin(), names.end());
    const auto meant = units::nearest(name, known);
    std::string looked;
    for (const fs::path& folder : folders) {
        looked += fmt::format("{}{}", looked.empty() ? "" : " and ", (folder / trip::kit_file(name)).string());
    }
    return problem::error("word-unknown", fmt::format("there is no kit \"{}\"", problem::quoted(name)),
                          (meant ? fmt::format("did you mean \"{}\"? ", *meant) : std::string()) +
                              (names.empty() ? "" : fmt::format("There are: {}. ", fmt::join(names, ", "))) +
                              "Looked for " + looked + "; `holdwater gauge --save` writes one of a box");
}

}  // namespace

std::optional<std::string> own_kit_folder() {
    if (const auto config = whole_path("XDG_CONFIG_HOME")) {
        return (*config / "holdwater" / "kits").string();
    }
    const auto home = whole_path("HOME");
    return home ? std::optional((*home / ".config" / "holdwater" / "kits").string()) : std::nullopt;
}

trip::KitReader kits_for(const std::string& trip_folder) {
    std::vector<fs::path> folders{fs::path(trip_folder) / "kits"};
    if (const auto own = own_kit_folder()) {
        folders.emplace_back(*own);
    }
    return [folders](const std::string& name) -> problem::Result<trip::Kit> {
        for (const fs::path& folder : folders) {
            std::error_code fault;
            const fs::path path = folder / trip::kit_file(name);
            if (!fs::exists(path, fault)) {
                continue;
            }
            const auto text = read_file(path.string());
            if (!text) {
                return text.problems();
            }
            return trip::Kit{*text, path.string(), fs::absolute(folder).string()};
        }
        return no_such_kit(name, folders);
    };
}

}  // namespace holdwater::cli
