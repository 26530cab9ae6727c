// SPDX-License-Identifier: MIT
#include "cli/files/files.hpp"

#include "problem/bounds.hpp"
#include "problem/in_text.hpp"

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

problem::Problem failed(problem::Code code, const std::string& path, const std::string& what,
                        const std::string& right) {
    return problem::placed(problem::error(code, what, right), problem::Place{path, 0, 0});
}

/// What would be right where something cannot be read, by why it cannot.
std::string right_to_read(int why) {
    return why == ENOENT || why == ENOTDIR ? "is its name right, and that of its folder?" : "may you read it?";
}

std::string right_to_write(int why) {
    return why == ENOSPC || why == EDQUOT || why == EFBIG     ? "make room on the disk, or write to another"
           : why == ENOTDIR || why == EISDIR || why == EEXIST ? "is something else of that name in the way?"
                                                              : "a folder that you may write into";
}

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

/// 0 or the errno of what failed. Without `replace` nothing that another run has put there meanwhile is lost, on disks
/// that can see to that.
int rename_part(const std::string& part, const std::string& path, bool replace) {
    if (!replace) {
        if (::renameat2(AT_FDCWD, part.c_str(), AT_FDCWD, path.c_str(), RENAME_NOREPLACE) == 0) {
            return 0;
        }
        if (errno != EINVAL && errno != ENOSYS) {
            return errno;
        }
    }
    return ::rename(part.c_str(), path.c_str()) == 0 ? 0 : errno;
}

}  // namespace

problem::Result<std::string> read_file(const std::string& path) {
    std::error_code code;
    const fs::file_status status = fs::status(path, code);
    if (fs::is_directory(status)) {
        return failed("file-unreadable", path, "this is a folder, not a file", "name a file in it");
    }
    if (fs::exists(status) && !fs::is_regular_file(status)) {
        return failed("file-unreadable", path, "this is a device or a pipe, not a file", "write it to a file first");
    }
    const int file = ::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK);
    if (file < 0) {
        return failed("file-unreadable", path, std::string("cannot be read: ") + std::strerror(errno),
                      right_to_read(errno));
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
    } while (fault == 0 && got != 0 && text.size() <= bounds::file_bytes);
    ::close(file);
    if (fault != 0) {
        return failed("file-unreadable", path, std::string("reading it failed: ") + std::strerror(fault),
                      right_to_read(fault));
    }
    if (text.size() > bounds::file_bytes) {
        return problem::placed(
            problem::error("file-too-big", "this file is bigger than any trip or log",
                           fmt::format("at most {} bytes; is it the right file?", bounds::file_bytes)),
            problem::place_in(text, bounds::file_bytes, path));
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
        return failed("file-unwritable", folder, "this folder cannot be made: " + code.message(),
                      right_to_write(code.value()));
    }
    const std::string part = fmt::format("{}.{}{}", path, ::getpid(), part_ending);
    if (const int fault = write_synced(part, bytes); fault != 0) {
        fs::remove(part, code);
        return failed("file-unwritable", path, std::string("cannot be written: ") + std::strerror(fault),
                      right_to_write(fault));
    }
    return part;
}

problem::Result<bool> not_there_yet(const std::string& path) {
    std::error_code code;
    if (fs::exists(path, code)) {
        return failed("file-exists", path, "this file is there already and is left as it is",
                      "choose another name, or take it away first");
    }
    return true;
}

problem::Result<bool> write_file(const std::string& path, const std::string& bytes, bool replace) {
    if (const auto is_free = not_there_yet(path); !replace && !is_free) {
        return is_free.problems();
    }
    std::error_code code;
    const std::string own = fs::path(path).filename().string();
    for (const Leftover& left : leftovers(folder_of(path), [&](std::string_view name) { return name == own; })) {
        fs::remove(left.path, code);
    }
    const auto part = write_part(path, bytes);
    if (!part) {
        return part.problems();
    }
    if (const int fault = rename_part(*part, path, replace); fault != 0) {
        fs::remove(*part, code);
        return fault == EEXIST && !replace
                   ? not_there_yet(path)
                   : failed("file-unwritable", path, std::string("cannot be written: ") + std::strerror(fault),
                            right_to_write(fault));
    }
    sync_folder(folder_of(path));
    return true;
}

std::vector<Leftover> leftovers(const std::string& folder, const std::function<bool(std::string_view name)>& ours) {
    std::error_code code;
    std::vector<Leftover> left;
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
            left.push_back({entry.path().string(), std::string(name.substr(0, dot))});
        }
    }
    return left;
}

void sync_folder(const std::string& folder) {
    const int open = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (open >= 0) {
        ::fsync(open);
        ::close(open);
    }
}

void tell_line(std::string_view line) {
    const std::string whole = problem::one_line(line) + "\n";
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
