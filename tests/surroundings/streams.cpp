// SPDX-License-Identifier: MIT
// Standard streams that are closed, full, nobody's or a terminal of ten columns.
#include "cli/program.hpp"
#include "support/run.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cerrno>
#include <pty.h>
#include <sstream>
#include <unistd.h>

using namespace holdwater::support;
namespace fs = std::filesystem;

namespace {

const std::string trip = std::string(HOLDWATER_SOURCE_DIR) + "/layouts/trips/class-day.toml";

int exit_of(const std::string& arguments, const std::string& redirections) {
    const std::string program = std::string(HOLDWATER_BINARY_DIR) + "/holdwater";
    const int status = std::system(("'" + program + "' " + arguments + " " + redirections).c_str());
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

/// Everything that a program says on a terminal of so many columns, and its exit code.
std::pair<std::string, int> on_terminal(const std::vector<std::string>& words, unsigned short columns,
                                        const char* kind) {
    winsize size{};
    size.ws_col = columns;
    size.ws_row = 5;
    int terminal = -1;
    const pid_t child = ::forkpty(&terminal, nullptr, nullptr, &size);
    REQUIRE(child >= 0);
    if (child == 0) {
        std::vector<std::string> copy = words;
        std::vector<char*> arguments{const_cast<char*>("holdwater")};
        for (std::string& word : copy) {
            arguments.push_back(word.data());
        }
        arguments.push_back(nullptr);
        ::setenv("TERM", kind, 1);
        ::execv((std::string(HOLDWATER_BINARY_DIR) + "/holdwater").c_str(), arguments.data());
        ::_exit(127);
    }
    std::string said;
    std::array<char, 4096> piece;
    while (true) {
        const ssize_t got = ::read(terminal, piece.data(), piece.size());
        if (got > 0) {
            said.append(piece.data(), static_cast<std::size_t>(got));
        } else if (got == 0 || errno != EINTR) {
            break;  // the terminal is gone with its program
        }
    }
    ::close(terminal);
    int status = 0;
    ::waitpid(child, &status, 0);
    return {said, WIFEXITED(status) ? WEXITSTATUS(status) : -1};
}

}  // namespace

TEST_CASE("whatever becomes of its streams, the exit code is right and no file takes their place") {
    const auto folder = own_folder("streams");
    const std::string boil = "boil --altitude '3 m'";
    const struct {
        std::string arguments;
        const char* redirections;
        int exit;
    } cases[] = {{boil, "<&- >/dev/null 2>&-", 0},
                 {boil, ">&- 2>/dev/null", 2},
                 {boil, ">/dev/full 2>/dev/null", 2},
                 {boil, "<&- >&- 2>&-", 2},
                 {"boil", ">&- 2>&-", 2},
                 {"--help", ">/dev/full 2>&-", 2},
                 {"new '" + (folder / "a.toml").string() + "'", "<&- >&- 2>&-", 2},
                 {"new '" + (folder / "b.toml").string() + "'", ">/dev/full 2>/dev/full", 2}};
    for (const auto& one : cases) {
        CAPTURE(one.arguments);
        CAPTURE(std::string(one.redirections));
        CHECK(exit_of(one.arguments, one.redirections) == one.exit);
    }
    // The answer was lost, but the file is whole: nothing was written into it in place of a stream.
    const std::string made = file_text(std::string(HOLDWATER_SOURCE_DIR) + "/layouts/trips/template.toml");
    CHECK(file_text((folder / "a.toml").string()) == made);
    CHECK(file_text((folder / "b.toml").string()) == made);
}

TEST_CASE("on a terminal of ten columns the line for who waits stays within it and is taken away") {
    const Run piped = run({"plan", trip}, {});
    std::string answer;  // a terminal ends lines with a carriage return as well
    for (const char c : piped.out + piped.err) {
        answer += c == '\n' ? "\r\n" : std::string(1, c);
    }
    for (const unsigned short columns : {std::uint16_t{10}, std::uint16_t{200}}) {
        CAPTURE(columns);
        auto [said, exit] = on_terminal({"plan", trip}, columns, "xterm");
        CHECK(exit == piped.exit);
        // Each showing begins with a cleared line; the last one leaves it cleared.
        const std::string clear = "\r\x1b[K";
        for (auto at = said.find(clear); at != std::string::npos; at = said.find(clear)) {
            const auto end = std::min(said.find_first_of("\r\n", at + clear.size()), said.size());
            const std::string shown = said.substr(at + clear.size(), end - at - clear.size());
            if (std::string_view("looking for a plan").starts_with(shown.substr(0, 18))) {
                CHECK(shown.size() < columns);
                said.erase(at, end - at);
            } else {
                said.erase(at, clear.size());
            }
        }
        CHECK(said.size() == answer.size());
    }
    const auto [plain, exit] = on_terminal({"plan", trip}, 10, "dumb");
    CHECK(exit == piped.exit);
    CHECK(plain.find('\x1b') == std::string::npos);
}
