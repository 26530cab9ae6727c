// SPDX-License-Identifier: MIT
// The disk: files are read whole, and written whole or not at all.
#pragma once

#include "problem/problem.hpp"

#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace holdwater::cli {

/// Regular files only, up to the size of the longest log. Errors: file-unreadable, file-too-big.
problem::Result<std::string> read_file(const std::string& path);

/// Nothing has this name yet. Error: file-exists.
problem::Result<bool> not_there_yet(const std::string& path);

/// Temporary name beside the target, checked write, fsync, rename. The folder is made if it is missing.
/// `replace` false: an existing file is an error and stays as it is.
problem::Result<bool> write_file(const std::string& path, const std::string& bytes, bool replace = true);

/// A file that is ready to be written.
struct Finished {
    std::string path;
    std::string bytes;
};

/// The bytes under a temporary name beside PATH, checked and synced; the caller renames or removes it. The folder is
/// made if it is missing. Errors: file-unwritable.
problem::Result<std::string> write_part(const std::string& path, const std::string& bytes);

/// What a run left behind under a temporary name, whose process is gone.
struct Leftover {
    std::string path;
    std::string name;  // the file name that it was to have, or had
};

/// Those of file names that `ours` knows. What a run that still works is writing is none.
std::vector<Leftover> leftovers(const std::string& folder, const std::function<bool(std::string_view name)>& ours);

/// Makes new names in a folder outlast a loss of power; where a disk cannot do that, nothing happens.
void sync_folder(const std::string& folder);

/// The folder that a path is in; "." for a bare name.
std::string folder_of(const std::string& path);

/// A line on standard error. That it is closed or full changes nothing else: nothing is thrown.
void tell_line(std::string_view line);

/// Every problem on standard error, one a line.
void tell(const problem::Problems& problems);

}  // namespace holdwater::cli
