// SPDX-License-Identifier: MIT
#include "cli/files/files.hpp"

#include "trip/ranges.hpp"

#include <fmt/format.h>

#include <array>
#include <cerrno>
#include <charconv>
#include <csignal>
#include <cstdio>
#include <cstring>
#include <fcntl.h>
#include <filesystem>
#include <system_error>
#include <unistd.h>
#include <vector>

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

constexpr std::string_view part_ending = ".part";

/// Whether this process, or another of this program, still runs under that number. In doubt it does.
bool is_at_work(pid_t writer) {
    std::error_code code;
    const fs::path self = fs::read_symlink("/proc/self/exe", code);
    if (code) {
        return true;
    }
    const fs::path other = fs::read_symlink(fmt::format("/proc/{}/exe", writer), code);
    return code ? code != std::errc::no_such_file_or_directory : other == self;
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

std::string folder_of(const std::string& path) {
    const fs::path folder = fs::path(path).parent_path();
    return folder.empty() ? "." : folder.string();
}

problem::Result<std::string> write_part(const std::string& path, const std::string& bytes) {
    std::error_code code;
    const std::string folder = folder_of(path);
    fs::create_directories(folder, code);
    if (code) {
        return failed("file-unwritable", folder, "this folder cannot be made: " + code.message());
    }
    const std::string part = fmt::format("{}.{}{}", path, ::getpid(), part_ending);
    if (const int fault = write_synced(part, bytes); fault != 0) {
        fs::remove(part, code);
        return failed("file-unwritable", path, std::string("cannot be written: ") + std::strerror(fault));
    }
    return part;
}

problem::Result<bool> not_there_yet(const std::string& path) {
    std::error_code code;
    if (fs::exists(path, code)) {
        return failed("file-exists", path, "this file is there already and is left as it is");
    }
    return true;
}

problem::Result<bool> write_file(const std::string& path, const std::string& bytes, bool replace) {
    if (const auto is_free = not_there_yet(path); !replace && !is_free) {
        return is_free.problems();
    }
    std::error_code code;
    remove_leftovers(folder_of(path),
                     [&](std::string_view name) { return name == fs::path(path).filename().string(); });
    const auto part = write_part(path, bytes);
    if (!part) {
        return part.problems();
    }
    fs::rename(*part, path, code);
    if (code) {
        const std::string why = code.message();
        fs::remove(*part, code);
        return failed("file-unwritable", path, "cannot be written: " + why);
    }
    return true;
}

void remove_leftovers(const std::string& folder, const std::function<bool(std::string_view name)>& ours) {
    std::error_code code;
    std::vector<fs::path> left;
    for (const fs::directory_entry& entry : fs::directory_iterator(folder, code)) {
        const std::string file = entry.path().filename().string();
        std::string_view name = file;
        if (!name.ends_with(part_ending)) {
            continue;
        }
        name.remove_suffix(part_ending.size());
        const auto dot = name.rfind('.');
        pid_t writer = 0;
        if (dot == std::string_view::npos) {
            continue;
        }
        const char* const end = name.data() + name.size();
        const auto [last, fault] = std::from_chars(name.data() + dot + 1, end, writer);
        if (fault == std::errc{} && last == end && writer > 0 && ours(name.substr(0, dot)) && !is_at_work(writer)) {
            left.push_back(entry.path());
        }
    }
    for (const fs::path& path : left) {
        fs::remove(path, code);
    }
}

void tell_line(std::string_view line) {
    const std::string whole = std::string(line) + "\n";
    // A reader of standard error who has gone away ends the program no more than one who never was.
    auto* const before = std::signal(SIGPIPE, SIG_IGN);
    std::fwrite(whole.data(), 1, whole.size(), stderr);
    std::signal(SIGPIPE, before);
}

void tell(const problem::Problems& problems) {
    for (const problem::Problem& p : problems) {
        tell_line(problem::to_line(p));
    }
}

}  // namespace holdwater::cli
