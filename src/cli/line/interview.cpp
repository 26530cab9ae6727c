// SPDX-License-Identifier: MIT
#include "cli/line/interview.hpp"

#include "cli/text/wrap.hpp"
#include "problem/bounds.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cerrno>
#include <csignal>
#include <cstdio>
#include <unistd.h>
#include <utility>

namespace holdwater::cli {
namespace {

volatile std::sig_atomic_t interrupted = 0;

extern "C" void note_interrupt(int) {
    interrupted = 1;
}

struct sigaction& earlier_action() {
    static struct sigaction earlier {};
    return earlier;
}

std::string trimmed(std::string text) {
    const std::size_t begin = std::min(text.find_first_not_of(" \t\r"), text.size());
    const std::size_t end = text.find_last_not_of(" \t\r");
    return begin < text.size() ? text.substr(begin, end + 1 - begin) : std::string();
}

constexpr std::size_t answer_column = 4;

}  // namespace

bool is_unsaid(std::string_view answer) {
    std::string small;
    for (const char c : answer) {
        if (c >= 'A' && c <= 'Z') {
            small += static_cast<char>(c - 'A' + 'a');
        } else if (c != '\'' && c != '.' && c != '!') {
            small += c;
        }
    }
    constexpr std::string_view ways[] = {"",         "i dont know", "dont know", "i do not know",
                                         "not sure", "no idea",     "unknown",   "dunno"};
    return std::find(std::begin(ways), std::end(ways), small) != std::end(ways);
}

Interview::Interview() {
    interrupted = 0;
    struct sigaction action {};
    action.sa_handler = note_interrupt;  // without SA_RESTART: a read that waits comes back
    ::sigemptyset(&action.sa_mask);
    ::sigaction(SIGINT, &action, &earlier_action());
}

Interview::~Interview() {
    ::sigaction(SIGINT, &earlier_action(), nullptr);
}

bool Interview::broken_off() const {
    return interrupted != 0;
}

std::optional<std::string> Interview::line() {
    while (!ended_ && !broken_off()) {
        if (const auto end = read_.find('\n'); end != std::string::npos) {
            std::string found = read_.substr(0, end);
            read_.erase(0, end + 1);
            return trimmed(std::move(found));
        }
        char part[512];
        const ssize_t n = ::read(STDIN_FILENO, part, sizeof part);
        if (n > 0 && read_.size() < bounds::word_bytes) {
            read_.append(part, static_cast<std::size_t>(n));
        } else if (n == 0 || (n < 0 && errno != EINTR)) {
            ended_ = true;
        }
    }
    return read_.empty() || broken_off() ? std::nullopt : std::optional(trimmed(std::exchange(read_, {})));
}

void Interview::ask(const Question& question) {
    while (!broken_off()) {
        fmt::print("{} [{}] ", question.words, question.by_default);
        std::fflush(stdout);
        const std::optional<std::string> answer = line();
        if (broken_off()) {
            fmt::print("\n");
            return;
        }
        if (!answer) {
            fmt::print("\n");
        }
        if (!answer || is_unsaid(*answer)) {
            if (question.unsaid) {
                fmt::print("{}", wrap(question.unsaid(), answer_column));
            }
            return;
        }
        if (*answer == "?") {
            fmt::print("{}", wrap(question.more, answer_column));
            continue;
        }
        const Taken taken = question.take(*answer);
        fmt::print("{}", wrap(taken.says, answer_column));
        if (taken.right) {
            return;
        }
    }
}

}  // namespace holdwater::cli
