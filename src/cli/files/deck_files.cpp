// SPDX-License-Identifier: MIT
#include "cli/files/deck_files.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cerrno>
#include <chrono>
#include <fcntl.h>
#include <filesystem>
#include <numeric>
#include <sys/file.h>
#include <system_error>
#include <thread>
#include <unistd.h>
#include <utility>

namespace holdwater::cli {
namespace {

namespace fs = std::filesystem;

problem::Problem stuck(const std::string& path, std::string_view what, const std::error_code& code) {
    problem::Problem fault = problem::error("file-unwritable", fmt::format("{}: {}", what, code.message()),
                                            "is something else of that name in the way?");
    fault.place = problem::Place{path, 0, 0};
    return fault;
}

/// The files of the deck that are there, in order.
std::vector<std::string> earlier_files(const DeckFiles& deck) {
    std::vector<std::string> found;
    std::error_code code;
    for (const fs::directory_entry& entry : fs::directory_iterator(deck.folder, code)) {
        std::error_code unknown;
        if (deck.own(entry.path().filename().string()) && !entry.is_directory(unknown)) {
            found.push_back(entry.path().string());
        }
    }
    std::sort(found.begin(), found.end());
    return found;
}

constexpr std::string_view away_ending = ".old";
constexpr std::string_view cards_ending = "-cards.pdf";

/// Ends what a run that was killed had begun: an earlier file that it had put aside comes back, and what it had written
/// but not put in place goes. So a set is never lost because the next run fails too.
void undo_killed_runs(const DeckFiles& deck) {
    const auto without_ending = [](std::string_view name) {
        return name.substr(0, name.size() - (name.ends_with(away_ending) ? away_ending.size() : 0));
    };
    std::error_code code;
    for (const Leftover& left :
         leftovers(deck.folder, [&](std::string_view name) { return deck.own(without_ending(name)); })) {
        if (left.name.ends_with(away_ending)) {
            fs::rename(left.path, fs::path(deck.folder) / without_ending(left.name), code);
        } else {
            fs::remove(left.path, code);
        }
    }
}

/// Held while a set is put in place: of two runs that write into one folder, one waits for the other, so that the set
/// there is of one of them.
class FolderLock {
  public:
    explicit FolderLock(const std::string& folder)
        : folder_(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC)) {
        // Renaming takes moments. Who waits for longer waits for a run that hangs, or for a disk without locks.
        using namespace std::chrono_literals;
        for (auto waited = 0ms; folder_ >= 0 && waited < 10s; waited += 10ms) {
            if (::flock(folder_, LOCK_EX | LOCK_NB) == 0 || errno != EWOULDBLOCK) {
                return;
            }
            std::this_thread::sleep_for(10ms);
        }
    }
    ~FolderLock() {
        if (folder_ >= 0) {
            ::close(folder_);
        }
    }
    FolderLock(const FolderLock&) = delete;
    FolderLock& operator=(const FolderLock&) = delete;

  private:
    int folder_;
};

/// Renames one after another, which can all be undone.
class Renaming {
  public:
    /// Nothing wrong: an empty code.
    std::error_code rename(const std::string& from, const std::string& to) {
        std::error_code code;
        fs::rename(from, to, code);
        if (!code) {
            done_.emplace_back(from, to);
        }
        return code;
    }
    void undo() {
        for (auto one = done_.rbegin(); one != done_.rend(); ++one) {
            std::error_code code;
            fs::rename(one->second, one->first, code);
        }
        done_.clear();
    }

  private:
    std::vector<std::pair<std::string, std::string>> done_;
};

void remove_all(const std::vector<std::string>& paths) {
    for (const std::string& path : paths) {
        std::error_code code;
        fs::remove(path, code);
    }
}

}  // namespace

std::string DeckFiles::path(std::string_view rest) const {
    return fmt::format("{}/{}-{}", folder, name, rest);
}

bool DeckFiles::own(std::string_view file) const {
    if (!file.starts_with(name)) {
        return false;
    }
    const std::string_view rest = file.substr(name.size());
    if (rest == "-cards.pdf" || rest == "-" + beside + ".pdf" || rest == "-card-sheet.png") {
        return true;
    }
    constexpr std::string_view before = "-card-";
    constexpr std::string_view after = ".png";
    if (!rest.starts_with(before) || !rest.ends_with(after) || rest.size() <= before.size() + after.size()) {
        return false;
    }
    const std::string_view number = rest.substr(before.size(), rest.size() - before.size() - after.size());
    return number.find_first_not_of("0123456789") == std::string_view::npos;
}

Superseded supersede(const DeckFiles& deck) {
    Superseded made;
    const FolderLock alone(deck.folder);
    undo_killed_runs(deck);
    for (const std::string& path : earlier_files(deck)) {
        std::error_code code;
        fs::rename(path, path + ".superseded", code);
        if (code) {
            made.problems.push_back(stuck(path, "no longer holds, but cannot be renamed", code));
        } else {
            made.renamed.push_back(path + ".superseded");
        }
    }
    return made;
}

problem::Result<Superseded> put_in_place(const DeckFiles& deck, const std::vector<Finished>& files) {
    std::error_code not_made;
    fs::create_directories(deck.folder, not_made);  // write_part says if that failed
    const FolderLock alone(deck.folder);
    undo_killed_runs(deck);
    std::vector<std::string> parts;
    for (const Finished& file : files) {
        const auto part = write_part(file.path, file.bytes);
        if (!part) {
            remove_all(parts);
            return part.problems();
        }
        parts.push_back(*part);
    }
    Superseded made;
    std::vector<std::string> replaced;
    Renaming renaming;
    const auto give_up = [&](const std::string& path, std::string_view what, const std::error_code& code) {
        renaming.undo();
        remove_all(parts);
        return stuck(path, what, code);
    };
    // The cards go first and come last: where they are under their name, the whole of their set is.
    std::vector<std::string> earlier = earlier_files(deck);
    std::stable_partition(earlier.begin(), earlier.end(),
                          [&](const std::string& path) { return path.ends_with(cards_ending); });
    std::vector<std::size_t> order(files.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_partition(order.begin(), order.end(),
                          [&](std::size_t i) { return !files[i].path.ends_with(cards_ending); });
    for (const std::string& path : earlier) {
        const bool again = std::any_of(files.begin(), files.end(), [&](const Finished& file) {
            return fs::path(file.path).filename() == fs::path(path).filename();
        });
        const std::string away =
            again ? fmt::format("{}{}.{}.part", path, away_ending, ::getpid()) : path + ".superseded";
        if (const auto code = renaming.rename(path, away); code) {
            return give_up(path, "cannot be replaced", code);
        }
        (again ? replaced : made.renamed).push_back(away);
    }
    for (const std::size_t i : order) {
        if (const auto code = renaming.rename(parts[i], files[i].path); code) {
            return give_up(files[i].path, "cannot be written", code);
        }
    }
    sync_folder(deck.folder);
    remove_all(replaced);
    return made;
}

}  // namespace holdwater::cli
