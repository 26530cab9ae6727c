// SPDX-License-Identifier: MIT
// The program as it was built: at no fixed place, with tables that are read-only once it runs, no stack that can be
// executed, and a stack that is watched. Read by readelf, which comes with the compiler.
#include "cli/program.hpp"

#include <doctest/doctest.h>

using namespace holdwater::support;

#ifndef HOLDWATER_SANITIZED

TEST_CASE("the program is built to give a fault in memory as little as can be") {
    const auto folder = own_folder("hardened");
    const std::string said = (folder / "elf.txt").string();
    const std::string program = std::string(HOLDWATER_BINARY_DIR) + "/holdwater";
    REQUIRE(std::system(("readelf -W -h -l -d --dyn-syms '" + program + "' >'" + said + "'").c_str()) == 0);
    const std::string elf = file_text(said);
    const auto has = [&](const char* words) { return elf.find(words) != std::string::npos; };
    CHECK(has("DYN (Position-Independent Executable file)"));
    CHECK(has("GNU_RELRO"));
    CHECK(has("BIND_NOW"));
    CHECK(has("__stack_chk_fail"));
    const auto stack = elf.find("GNU_STACK");
    REQUIRE(stack != std::string::npos);
    CHECK(elf.substr(stack, elf.find('\n', stack) - stack).find("RWE") == std::string::npos);
}

#endif
