// SPDX-License-Identifier: MIT
#include "cli/app.hpp"
#include "cli/files/data.hpp"
#include "cli/files/files.hpp"

#include <exception>
#include <fcntl.h>
#include <string>

namespace {

/// Where standard output or error is closed, the next file that is opened would take its place and be written into.
/// What cannot be written to fails instead.
void guard_streams() {
    for (const int stream : {0, 1, 2}) {
        if (::fcntl(stream, F_GETFD) < 0) {
            [[maybe_unused]] const int closed = ::open("/dev/null", O_RDONLY);  // takes the lowest number
        }
    }
}

}  // namespace

int main(int argc, char** argv) {
    guard_streams();
    try {
        return static_cast<int>(holdwater::cli::run(argc, argv));
    } catch (const std::exception& fault) {
        holdwater::cli::tell_line("holdwater " + holdwater::cli::version() + ": error: our own fault: " + fault.what() +
                                  " (nothing of this run holds; please report this line, the command and its files)");
        return static_cast<int>(holdwater::cli::Exit::our_fault);
    }
}
