// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <cstdio>
#include <exception>

#include "cli/app.hpp"

int main(int argc, char** argv) {
    try {
        return static_cast<int>(holdwater::cli::run(argc, argv));
    } catch (const std::exception& fault) {
        fmt::print(stderr, "holdwater: our own fault: {}\n", fault.what());
        return static_cast<int>(holdwater::cli::Exit::our_fault);
    }
}
