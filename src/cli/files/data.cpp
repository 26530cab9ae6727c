// SPDX-License-Identifier: MIT
#include "cli/files/data.hpp"

#include "cli/files/files.hpp"

#include <filesystem>

namespace holdwater::cli {
namespace {

namespace fs = std::filesystem;

constexpr const char* reinstall = "install the program anew, with its data";

/// bin/holdwater has its data in share/holdwater beside bin; a fresh build has share beside the program itself.
fs::path found(const char* folder) {
    std::error_code fault;
    const fs::path self = fs::read_symlink("/proc/self/exe", fault).parent_path();
    const fs::path installed = self.parent_path() / "share/holdwater" / folder;
    return fs::is_directory(installed, fault) ? installed : self / "share/holdwater" / folder;
}

}  // namespace

std::string layout_path(const std::string& name) {
    return (found("layouts") / name).string();
}

problem::Result<std::string> layout_file(const std::string& name) {
    const std::string path = layout_path(name);
    auto text = read_file(path);
    if (text) {
        return text;
    }
    // Whatever is wrong with it, it is no file of the user's.
    std::error_code fault;
    problem::Problem ours =
        fs::exists(path, fault)
            ? problem::error("data-unreadable", "this file of the program cannot be read", reinstall)
            : problem::error("data-missing", "this file of the program is missing", reinstall);
    ours.place = problem::Place{path, 0, 0};
    return ours;
}

draw::FontFiles font_files() {
    return draw::faces_in(found("fonts").string());
}

std::string version() {
    return HOLDWATER_VERSION;
}

std::string version_date() {
    return HOLDWATER_VERSION_DATE;
}

}  // namespace holdwater::cli
