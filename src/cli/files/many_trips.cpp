// SPDX-License-Identifier: MIT
#include "cli/files/many_trips.hpp"

#include "cli/files/files.hpp"
#include "cli/files/progress.hpp"
#include "problem/problem.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <exception>
#include <map>
#include <optional>
#include <sys/mman.h>
#include <sys/wait.h>
#include <unistd.h>

namespace holdwater::cli {
namespace {

/// A file without a name, gone when it is closed.
class Sheet {
  public:
    Sheet() : file_(::memfd_create("holdwater", MFD_CLOEXEC)) {}
    Sheet(const Sheet&) = delete;
    Sheet& operator=(const Sheet&) = delete;
    Sheet(Sheet&& other) noexcept : file_(std::exchange(other.file_, -1)) {}
    Sheet& operator=(Sheet&& other) noexcept {
        std::swap(file_, other.file_);
        return *this;
    }
    ~Sheet() {
        if (file_ >= 0) {
            ::close(file_);
        }
    }
    bool good() const { return file_ >= 0; }
    /// Whatever is written to `stream` from now on goes here.
    bool take(int stream) const { return ::dup2(file_, stream) >= 0; }
    std::string text() const {
        std::string all;
        char part[4096];
        ::lseek(file_, 0, SEEK_SET);
        for (ssize_t n = ::read(file_, part, sizeof part); n > 0; n = ::read(file_, part, sizeof part)) {
            all.append(part, static_cast<std::size_t>(n));
        }
        return all;
    }

  private:
    int file_;
};

struct Running {
    std::size_t trip = 0;
    Sheet out;
    Sheet err;
};

struct Ended {
    Exit exit = Exit::our_fault;
    std::string out;
    std::string err;
};

/// The process of one trip, from beginning to end.
[[noreturn]] void do_one(const Running& sheets, const std::string& trip,
                         const std::function<Exit(const std::string&)>& one) {
    Exit exit = Exit::our_fault;
    if (sheets.out.take(STDOUT_FILENO) && sheets.err.take(STDERR_FILENO)) {
        try {
            exit = one(trip);
        } catch (const std::exception& fault) {
            tell_line(fmt::format("{}: error: our own fault: {}", trip, fault.what()));
        }
        if (std::fflush(stdout) != 0) {
            exit = Exit::our_fault;
        }
    }
    ::_exit(static_cast<int>(exit));
}

Ended ended(const Running& was, const std::string& trip, int status) {
    Ended end{Exit::our_fault, was.out.text(), was.err.text()};
    if (WIFEXITED(status)) {
        end.exit = static_cast<Exit>(WEXITSTATUS(status));
    } else {
        end.err += fmt::format("{}: error: our own fault: stopped by signal {} ({})\n", trip, WTERMSIG(status),
                               ::strsignal(WTERMSIG(status)));
    }
    return end;
}

Ended not_begun(const std::string& trip) {
    return {Exit::our_fault, "", fmt::format("{}: error: cannot be begun: {}\n", trip, std::strerror(errno))};
}

class EachTrip {
  public:
    EachTrip(const std::vector<std::string>& trips, const std::function<Exit(const std::string&)>& one)
        : trips_(trips), one_(one), line_(true) {}

    Exit run(int at_a_time) {
        std::size_t next = 0;
        while (next < trips_.size() || !running_.empty()) {
            while (next < trips_.size() && running_.size() < static_cast<std::size_t>(at_a_time)) {
                begin(next++);
            }
            wait_for_one();
        }
        line_.clear();
        fmt::print("{}", summary());
        return worst_;
    }

  private:
    void begin(std::size_t trip) {
        Running sheets{trip, {}, {}};
        std::fflush(stdout);
        const pid_t child = sheets.out.good() && sheets.err.good() ? ::fork() : -1;
        if (child == 0) {
            do_one(sheets, trips_[trip], one_);
        }
        if (child < 0) {
            end(trip, not_begun(trips_[trip]));
        } else {
            running_.emplace(child, std::move(sheets));
        }
    }

    void wait_for_one() {
        if (running_.empty()) {
            return;
        }
        int status = 0;
        const pid_t child = ::waitpid(-1, &status, 0);
        if (const auto was = running_.find(child); was != running_.end()) {
            end(was->second.trip, ended(was->second, trips_[was->second.trip], status));
            running_.erase(was);
        } else if (child < 0 && errno != EINTR) {
            running_.clear();  // nobody is left to wait for
        }
    }

    /// Says all that is whole up to the first that is not.
    void end(std::size_t trip, Ended how) {
        by_exit_[how.exit].push_back(trips_[trip]);
        worst_ = worse(worst_, how.exit);
        waiting_.emplace(trip, std::move(how));
        ++done_;
        line_.clear();
        for (auto first = waiting_.find(said_); first != waiting_.end(); first = waiting_.find(++said_)) {
            fmt::print("{}", first->second.out);
            std::fflush(stdout);
            if (!first->second.err.empty()) {
                std::fputs(first->second.err.c_str(), stderr);
            }
            waiting_.erase(first);
        }
        line_.show(fmt::format("{} of {} trips", done_, trips_.size()));
    }

    std::string summary() const {
        const auto of = [&](Exit exit) {
            const auto found = by_exit_.find(exit);
            return found != by_exit_.end() ? found->second : std::vector<std::string>{};
        };
        const auto printed = of(Exit::done).size() + of(Exit::check).size();
        std::string text = fmt::format("{} trips: {} printed", trips_.size(), printed);
        constexpr std::pair<Exit, std::string_view> others[] = {{Exit::check, "of these to be checked"},
                                                                {Exit::refused, "refused"},
                                                                {Exit::bad_input, "with a fault in their input"},
                                                                {Exit::our_fault, "failed by our own fault"}};
        for (const auto& [exit, words] : others) {
            if (const auto names = of(exit); !names.empty()) {
                text += fmt::format("; {} {}: {}", names.size(), words, fmt::join(sorted(names), ", "));
            }
        }
        return text + "\n";
    }

    static std::vector<std::string> sorted(std::vector<std::string> names) {
        std::sort(names.begin(), names.end());
        return names;
    }

    const std::vector<std::string>& trips_;
    const std::function<Exit(const std::string&)>& one_;
    CountLine line_;
    std::map<pid_t, Running> running_;
    std::map<std::size_t, Ended> waiting_;  // for an earlier one to be said
    std::map<Exit, std::vector<std::string>> by_exit_;
    std::size_t said_ = 0;
    std::size_t done_ = 0;
    Exit worst_ = Exit::done;
};

}  // namespace

Exit each_trip(const std::vector<std::string>& trips, int at_a_time,
               const std::function<Exit(const std::string&)>& one) {
    return EachTrip(trips, one).run(at_a_time);
}

}  // namespace holdwater::cli
