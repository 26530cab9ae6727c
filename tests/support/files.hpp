// SPDX-License-Identifier: MIT
// Files and what they hold.
#pragma once

#include <fstream>
#include <sstream>
#include <string>

namespace holdwater::support {

/// Everything in a file, byte for byte; nothing if it cannot be opened.
inline std::string file_text(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

/// A file of the source tree, by its path from the top.
inline std::string source_text(const std::string& where) {
    return file_text(std::string(HOLDWATER_SOURCE_DIR) + "/" + where);
}

}  // namespace holdwater::support
