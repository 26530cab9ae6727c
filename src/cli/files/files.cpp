// SPDX-License-Identifier: MIT
#include "cli/files/files.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>

#include "trip/ranges.hpp"

namespace holdwater::cli {
namespace {

namespace fs = std::filesystem;

problem::Problem failed(problem::Code code, const std::string& path, const std::string& what) {
    problem::Problem fault = problem::error(code, what);
    fault.place = problem::Place{path, 0, 0};
    return fault;
}

/// The biggest file that any command reads.
constexpr std::size_t most_bytes = trip::ranges::log_bytes;

/// Writes and syncs; 0 or the errno of what failed.
int write_synced(const std::string& path, const std::string& bytes) {
    const int file = ::open(path.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0644);
    if (file < 0) {
        return errno;
    }
    int fault = 0;
    std::size_t done = 0;
    while (done < bytes.size() && fault == 0) {
        const ssize_t wrote = ::write(file, bytes.data() + done, bytes.size() - done);
        if (wrote < 0 && errno != EINTR) {
            fault = errno;
        } else if (wrote > 0) {
            done += static_cast<std::size_t>(wrote);
        }
    }
    if (fault == 0 && ::fsync(file) != 0) {
        fault = errno;
    }
    if (::close(file) != 0 && fault == 0) {
        fault = errno;
    }
    return fault;
}

}  // namespace

problem::Result<std::string> read_file(const std::string& path) {
    std::error_code code;
    const fs::file_status status = fs::status(path, code);
    if (fs::is_directory(status)) {
        return failed("file-unreadable", path, "this is a folder, not a file");
    }
    if (fs::exists(status) && !fs::is_regular_file(status)) {
        return failed("file-unreadable", path, "this is a device or a pipe, not a file; write it to a file first");
    }
    const int file = ::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK);
    if (file < 0) {
        return failed("file-unreadable", path, std::string("cannot be read: ") + std::strerror(errno));
    }
    // Counted while reading: the size that the disk names may be nought, or grow meanwhile.
    std::string text;
    std::array<char, 65536> piece;
    ssize_t got = 0;
    int fault = 0;
    do {
        got = ::read(file, piece.data(), piece.size());
        fault = got < 0 && errno != EINTR ? errno : 0;
        text.append(piece.data(), got > 0 ? static_cast<std::size_t>(got) : 0);
    } while (fault == 0 && got != 0 && text.size() <= most_bytes);
    ::close(file);
    if (fault != 0) {
        return failed("file-unreadable", path, std::string("reading it failed: ") + std::strerror(fault));
    }
    if (text.size() > most_bytes) {
        return failed("file-too-big", path,
                      fmt::format("is over {} MB, bigger than any trip or log", most_bytes / 1'000'000));
    }
    return text;
}

problem::Result<bool> write_file(const std::string& path, const std::string& bytes, bool replace) {
    std::error_code code;
    const fs::path folder = fs::path(path).parent_path();
    if (!folder.empty()) {
        fs::create_directories(folder, code);
        if (code) {
            return failed("file-unwritable", folder.string(), "this folder cannot be made: " + code.message());
        }
    }
    if (!replace && fs::exists(path, code)) {
        return failed("file-exists", path, "this file is there already and is left as it is");
    }
    const std::string temporary = fmt::format("{}.{}.part", path, ::getpid());
    const int fault = write_synced(temporary, bytes);
    if (fault == 0) {
        fs::rename(temporary, path, code);
    }
    if (fault != 0 || code) {
        const std::string why = fault != 0 ? std::strerror(fault) : code.message();
        fs::remove(temporary, code);
        return failed("file-unwritable", path, "cannot be written: " + why);
    }
    return true;
}

std::vector<std::string> supersede(const std::string& folder, const std::string& name) {
    std::vector<std::string> renamed;
    std::error_code code;
    std::vector<fs::path> earlier;
    for (const fs::directory_entry& entry : fs::directory_iterator(folder, code)) {
        const std::string file = entry.path().filename().string();
        const bool ours =
            file == name + "-basis.pdf" ||
            (file.starts_with(name + "-card") && (file.ends_with(".pdf") || file.ends_with(".png")));
        if (ours) {
            earlier.push_back(entry.path());
        }
    }
    std::sort(earlier.begin(), earlier.end());
    for (const fs::path& path : earlier) {
        const std::string target = path.string() + ".superseded";
        fs::rename(path, target, code);
        if (!code) {
            renamed.push_back(target);
        }
    }
    return renamed;
}

void tell(const problem::Problems& problems) {
    for (const problem::Problem& p : problems) {
        fmt::print(stderr, "{}\n", problem::to_line(p));
    }
}

}  // namespace holdwater::cli
