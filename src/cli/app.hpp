// SPDX-License-Identifier: MIT
// Commands, options and exit codes: defined here once; help and README are checked against it.
#pragma once

#include <string>
#include <vector>

namespace holdwater::cli {

enum class Exit {
    done = 0,
    refused = 1,    // the plan does not hold: no cards; advice on standard output
    bad_input = 2,  // or bad usage
    check = 3,      // done, but the reader must change or check an input
    our_fault = 70
};

struct CardsOptions {
    std::vector<std::string> trips;
    std::string out = "out";
    std::string format = "hand";
    std::string sheet = "a4";
    std::string sides = "duplex";
    std::vector<std::string> only;
    int copies = 1;
    bool preview = false;
};

struct PlanOptions {
    std::string trip;
    bool json = false;
    bool explain = false;
};

struct SourcesOptions {
    bool foods = false;
    bool rules = false;
    std::string search;
};

Exit run(int argc, char** argv);

Exit cards_command(const CardsOptions& options);
Exit plan_command(const PlanOptions& options);
Exit sources_command(const SourcesOptions& options);
Exit new_command(const std::string& trip);

}  // namespace holdwater::cli
