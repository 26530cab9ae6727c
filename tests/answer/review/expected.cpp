// SPDX-License-Identifier: MIT
// The logs of tests/logs against what was expected of them before the program ran: each NAME.expected was written from
// the rules alone, with its reason.
#include "answer/review/reading.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <map>
#include <sstream>

using namespace holdwater;
using namespace holdwater::support;

namespace {

std::map<std::string, std::string> expectation(const std::string& path) {
    std::map<std::string, std::string> entries;
    std::istringstream lines(file_text(path));
    for (std::string line; std::getline(lines, line);) {
        const auto equals = line.find(" = ");
        REQUIRE(equals != std::string::npos);
        std::string value = line.substr(equals + 3);
        std::erase(value, '"');
        entries[line.substr(0, equals)] = value;
    }
    return entries;
}

std::string word(answer::Verdict verdict) {
    constexpr const char* words[] = {"eat", "not-done", "finish-and-eat-next", "finish-and-eat-now", "throw-away"};
    return words[static_cast<int>(verdict)];
}

}  // namespace

TEST_CASE("every log gives what was expected of it beforehand") {
    int count = 0;
    for (const auto& entry : std::filesystem::directory_iterator(logs_folder())) {
        if (entry.path().extension() != ".expected") {
            continue;
        }
        ++count;
        const std::string name = entry.path().stem().string();
        CAPTURE(name);
        auto expected = expectation(entry.path().string());
        const trip::Trip trip = log_trip(expected.at("trip"));
        const answer::Review review = reviewed(trip, named_log(name));
        CHECK(word(review.verdict) == expected.at("verdict"));
        std::istringstream range(expected.at("below_h"));
        double low = -1.0;
        double high = -1.0;
        range >> low >> high;
        REQUIRE(high >= low);
        const double below = units::in_hours(review.below_floor);
        CAPTURE(below);
        CHECK(below >= low);
        CHECK(below <= high);
        CAPTURE(review.growth);
        CHECK((review.growth >= 1.0) == (expected.at("growth") == "over"));
        std::istringstream codes(expected.at("warnings"));
        for (std::string code; codes >> code;) {
            CAPTURE(code);
            const auto known = problem::Code::named(code);
            REQUIRE(known.has_value());
            CHECK(support::has_code(review.remarks, *known));
        }
        // What is not expected is not warned of either: no false alarms. Notes ask for nothing.
        for (const problem::Problem& p : review.remarks) {
            CAPTURE(problem::to_line(p));
            const bool foreseen = p.severity == problem::Severity::note ||
                                  expected.at("warnings").find(p.code.text()) != std::string::npos;
            CHECK(foreseen);
        }
    }
    CHECK(count >= 21);
}
