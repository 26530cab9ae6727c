// SPDX-License-Identifier: MIT
// A set of rules is data: the program knows no country by name, so that a new one needs nothing but facts and words.
#include "facts/facts.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <string>

namespace {

namespace fs = std::filesystem;
using namespace holdwater;

/// Every piece of code of src/ that names a set of rules: one of its values, or its key where rules are compared.
std::string named_rules(const std::string& text) {
    std::string keys;
    for (const facts::GeneralRules& rules : facts::facts().rulesets()) {
        keys += (keys.empty() ? "" : "|") + rules.key;
    }
    const std::regex value(R"(Ruleset::\w+)");
    const std::regex compared("[=!]=\\s*\"(" + keys + ")\"|\"(" + keys + ")\"\\s*[=!]=");
    const std::regex looked_up("Ruleset>\\(\"");
    std::string found;
    for (const std::regex& one : {value, compared, looked_up}) {
        for (std::sregex_iterator it(text.begin(), text.end(), one), end; it != end; ++it) {
            found += it->str() + "; ";
        }
    }
    return found;
}

}  // namespace

TEST_CASE("no code names a country") {
    for (const auto& entry : fs::recursive_directory_iterator(fs::path(HOLDWATER_SOURCE_DIR) / "src")) {
        const auto extension = entry.path().extension();
        if (extension == ".cpp" || extension == ".hpp") {
            std::ifstream file(entry.path());
            const std::string text{std::istreambuf_iterator<char>(file), {}};
            INFO(entry.path().string());
            CHECK(named_rules(text) == "");
        }
    }
}

TEST_CASE("the search for countries finds what it is for") {
    CHECK(named_rules("if (rules == facts::Ruleset::uk) {") != "");
    CHECK(named_rules("if (facts::to_name(rules) == \"au-nz\") {") != "");
    CHECK(named_rules("if (\"ca\" != name) {") != "");
    CHECK(named_rules("facts::from_name<facts::Ruleset>(\"us\")") != "");
    CHECK(named_rules("facts::Ruleset rules{}; find_rule(rules, facts::Category::fish)") == "");
}
