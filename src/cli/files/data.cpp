// SPDX-License-Identifier: MIT
#include "cli/files/data.hpp"

#include <filesystem>

#include "cli/files/files.hpp"

namespace holdwater::cli {
namespace {

namespace fs = std::filesystem;

/// bin/holdwater has its data in share/holdwater beside bin; a fresh build has share beside the program itself.
fs::path found(const char* folder) {
    std::error_code fault;
    const fs::path self = fs::read_symlink("/proc/self/exe", fault).parent_path();
    const fs::path installed = self.parent_path() / "share/holdwater" / folder;
    return fs::is_directory(installed, fault) ? installed : self / "share/holdwater" / folder;
}

}  // namespace

std::string layout_path(const std::string& name) { return (found("layouts") / name).string(); }

problem::Result<std::string> layout_file(const std::string& name) { return read_file(layout_path(name)); }

draw::FontFiles font_files() {
    const fs::path folder = found("fonts");
    return {(folder / "B612-Regular.ttf").string(), (folder / "B612-Bold.ttf").string()};
}

std::string version() { return HOLDWATER_VERSION; }

}  // namespace holdwater::cli
