// SPDX-License-Identifier: MIT
// The program speaks to nobody and starts nothing: no network, no other process. Watched by strace.
#include "cli/program.hpp"

#include <doctest/doctest.h>

#include <fstream>
#include <sstream>

using namespace holdwater::support;
namespace fs = std::filesystem;

namespace {

/// The lines of strace that name any of these calls, but that which starts the program itself.
std::string calls_of(const fs::path& folder, const std::string& arguments) {
    const std::string program = std::string(HOLDWATER_BINARY_DIR) + "/holdwater";
    const std::string trace = (folder / "trace").string();
    const int status = std::system(("cd '" + folder.string() + "' && strace -f -qq -e trace=%network,%process -o '" +
                                    trace + "' '" + program + "' " + arguments + " >out.txt 2>err.txt")
                                       .c_str());
    REQUIRE(WIFEXITED(status));
    CAPTURE(file_text((folder / "err.txt").string()));
    CHECK(good(WEXITSTATUS(status)));
    std::istringstream lines(file_text(trace));
    std::string found;
    int started = 0;
    for (std::string line; std::getline(lines, line);) {
        if (line.find("execve(") != std::string::npos && ++started == 1) {
            continue;
        }
        const bool thread = line.find("CLONE_THREAD") != std::string::npos;
        for (const char* call : {"socket(", "socketpair(", "connect(", "bind(", "sendto(", "sendmsg(", "recvfrom(",
                                 "fork(", "vfork(", "clone(", "clone3(", "execve(", "execveat("}) {
            if (!thread && line.find(call) != std::string::npos) {
                found += line + "\n";
            }
        }
    }
    CHECK(started >= 1);  // it was watched
    return found;
}

}  // namespace

TEST_CASE("no command opens a connection or starts another program") {
    const auto folder = own_folder("alone");
    std::ofstream(folder / "log.csv") << "time_min,bath_c,note\n0,62,food in\n60,61,\n120,60,\n";
    CHECK(calls_of(folder, "cards " + demo_path("class-day") + " --preview") == "");
    CHECK(calls_of(folder, "gauge log.csv --water '20 L' --outside '8 C' --preview") == "");
    CHECK(calls_of(folder, "new day.toml") == "");
    CHECK(calls_of(folder, "sources --foods") == "");
}
