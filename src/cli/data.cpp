// SPDX-License-Identifier: MIT
#include "cli/data.hpp"

#include <filesystem>

#include "cli/files.hpp"

namespace holdwater::cli {
namespace {

namespace fs = std::filesystem;

fs::path installed() {
    std::error_code fault;
    const fs::path self = fs::read_symlink("/proc/self/exe", fault);
    return fault ? fs::path{} : self.parent_path() / HOLDWATER_DATA_BESIDE_BIN;
}

fs::path found(const char* folder, const char* built) {
    const fs::path beside = installed() / folder;
    std::error_code fault;
    return fs::is_directory(beside, fault) ? beside.lexically_normal() : fs::path(built);
}

}  // namespace

std::string layout_path(const std::string& name) { return (found("layouts", HOLDWATER_BUILT_LAYOUTS) / name).string(); }

problem::Result<std::string> layout_file(const std::string& name) { return read_file(layout_path(name)); }

draw::FontFiles font_files() {
    const fs::path folder = found("fonts", HOLDWATER_BUILT_FONTS);
    return {(folder / "B612-Regular.ttf").string(), (folder / "B612-Bold.ttf").string()};
}

std::string version() { return HOLDWATER_VERSION; }

}  // namespace holdwater::cli
