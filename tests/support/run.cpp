// SPDX-License-Identifier: MIT
#include "support/run.hpp"

#include "support/files.hpp"

#include <array>
#include <cerrno>
#include <csignal>
#include <fcntl.h>
#include <poll.h>
#include <stdexcept>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

namespace holdwater::support {
namespace {

namespace fs = std::filesystem;

void limit(int what, rlim_t most) {
    const rlimit bound{most, most};
    ::setrlimit(what, &bound);
}

/// In the child: never comes back.
[[noreturn]] void become(const std::vector<std::string>& words, const Surroundings& with, int out, int err) {
    ::dup2(out, 1);
    ::dup2(err, 2);
    if (!with.out_to.empty()) {
        const int to = ::open(with.out_to.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0644);
        ::dup2(to, 1);
    }
    if (!with.folder.empty() && ::chdir(with.folder.c_str()) != 0) {
        ::_exit(126);
    }
    limit(RLIMIT_CPU, 60);
    limit(RLIMIT_CORE, 0);
    if (with.most_file_bytes >= 0) {
        std::signal(SIGXFSZ, SIG_IGN);  // the write fails instead
        limit(RLIMIT_FSIZE, static_cast<rlim_t>(with.most_file_bytes));
    }
    const std::string program =
        with.program.empty() ? std::string(HOLDWATER_BINARY_DIR) + "/holdwater" : with.program.string();
    std::vector<std::string> own;
    if (with.keep_environment) {
        for (char** one = environ; *one != nullptr; ++one) {
            own.emplace_back(*one);
        }
    }
    for (const auto& [name, value] : with.environment) {
        std::erase_if(own, [&](const std::string& one) { return one.starts_with(name + "="); });
        own.push_back(name + "=" + value);
    }
    std::vector<char*> environment;
    for (std::string& one : own) {
        environment.push_back(one.data());
    }
    environment.push_back(nullptr);
    std::vector<std::string> copy = words;
    std::vector<char*> arguments{const_cast<char*>("holdwater")};
    for (std::string& word : copy) {
        arguments.push_back(word.data());
    }
    arguments.push_back(nullptr);
    ::execve(program.c_str(), arguments.data(), environment.data());
    ::_exit(127);
}

/// Both ends of a pipe.
struct Pipe {
    int from = -1;
    int to = -1;
    Pipe() {
        std::array<int, 2> ends{};
        if (::pipe2(ends.data(), O_CLOEXEC) != 0) {
            throw std::runtime_error("no pipe");
        }
        from = ends[0];
        to = ends[1];
    }
};

/// Everything from both, as it comes.
void read_all(int out, int err, Run& run) {
    std::array<pollfd, 2> waiting{pollfd{out, POLLIN, 0}, pollfd{err, POLLIN, 0}};
    std::array<std::string*, 2> into{&run.out, &run.err};
    for (int open = 2; open > 0;) {
        ::poll(waiting.data(), waiting.size(), -1);
        for (std::size_t i = 0; i < waiting.size(); ++i) {
            if (waiting[i].fd < 0 || waiting[i].revents == 0) {
                continue;
            }
            std::array<char, 65536> piece;
            const ssize_t got = ::read(waiting[i].fd, piece.data(), piece.size());
            if (got > 0) {
                into[i]->append(piece.data(), static_cast<std::size_t>(got));
            } else if (got == 0 || errno != EINTR) {
                ::close(waiting[i].fd);
                waiting[i].fd = -1;
                --open;
            }
        }
    }
}

double seconds(const timeval& time) {
    return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_usec) * 1e-6;
}

}  // namespace

Run run(const std::vector<std::string>& words, const Surroundings& surroundings) {
    const Pipe out;
    const Pipe err;
    const pid_t child = ::fork();
    if (child < 0) {
        throw std::runtime_error("no process");
    }
    if (child == 0) {
        become(words, surroundings, out.to, err.to);
    }
    ::close(out.to);
    ::close(err.to);
    Run made;
    read_all(out.from, err.from, made);
    int status = 0;
    rusage used{};
    while (::wait4(child, &status, 0, &used) < 0 && errno == EINTR) {
    }
    made.exit = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    made.signal = WIFSIGNALED(status) ? WTERMSIG(status) : 0;
    made.cpu_s = seconds(used.ru_utime) + seconds(used.ru_stime);
    made.kilobytes = used.ru_maxrss;
    return made;
}

std::map<std::string, std::string> all_below(const fs::path& folder) {
    std::map<std::string, std::string> found;
    for (const auto& entry : fs::recursive_directory_iterator(folder)) {
        const std::string name = fs::relative(entry.path(), folder).string();
        if (entry.is_directory()) {
            found[name + "/"] = "";
        } else {
            found[name] = file_text(entry.path().string());
        }
    }
    return found;
}

}  // namespace holdwater::support
