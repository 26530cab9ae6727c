// SPDX-License-Identifier: MIT
// What the manual says of a trip file, held against the readers: every key that they know, none that they do not, and
// the same that must be there.
#include "trip/keys.hpp"

#include "reading.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <regex>
#include <set>

using namespace holdwater;
using namespace holdwater::support;

namespace {

using KeyNames = std::set<std::string>;

KeyNames words_in(const std::string& list) {
    KeyNames names;
    static const std::regex word("[a-z_]+");
    for (std::sregex_iterator it(list.begin(), list.end(), word), end; it != end; ++it) {
        names.insert(it->str());
    }
    return names;
}

/// A file in which every table is there, each with a key that nothing is like.
constexpr std::string_view of_all_tables = R"([trip]
zzzzzzzz = 1
[[food]]
zzzzzzzz = 1
composition = { zzzzzzzz = 1 }
[[box]]
zzzzzzzz = 1
test = [{ zzzzzzzz = 1 }]
[weather]
zzzzzzzz = 1
hours = [{ zzzzzzzz = 1 }]
[fire]
zzzzzzzz = 1
[sleep]
zzzzzzzz = 1
[journey]
zzzzzzzz = 1
[[hot_water]]
zzzzzzzz = 1
[[side]]
zzzzzzzz = 1
[[what_if]]
zzzzzzzz = 1
)";

/// What the readers call a table that stands in braces.
std::string called(std::string_view heading) {
    return heading == "test" ? "this reading" : heading == "hours" ? "this hour" : std::string(heading);
}

}  // namespace

TEST_CASE("the readers know exactly the keys that the manual tells, table by table") {
    const auto read = read_trip_text(of_all_tables);
    const auto tables = trip::key_tables();
    std::size_t told = 0;
    for (const problem::Problem& one : read.problems()) {
        if (one.code != "key-unknown") {
            continue;
        }
        const std::string heading = one.message.substr(0, one.message.find(" has no key"));
        CAPTURE(heading);
        const auto table = std::find_if(tables.begin(), tables.end(),
                                        [&](const trip::KeyTable& t) { return called(t.heading) == heading; });
        REQUIRE(table != tables.end());
        ++told;
        KeyNames names;
        for (const trip::Key& key : table->keys) {
            CHECK(names.insert(std::string(key.name)).second);
        }
        REQUIRE(one.hint.starts_with("it has: "));
        CHECK(words_in(one.hint.substr(8)) == names);
    }
    CHECK(told == tables.size());
}

TEST_CASE("what the readers miss in an empty table is what the manual calls required") {
    problem::Problems problems = read_trip_text(of_all_tables).problems();
    const auto bare = read_trip_text("[weather]\n");  // the other one has its hours, for what an hour has
    problems.insert(problems.end(), bare.problems().begin(), bare.problems().end());
    for (const trip::KeyTable& table : trip::key_tables()) {
        CAPTURE(table.heading);
        const std::string end = " is missing in " + called(table.heading);
        KeyNames missed;
        KeyNames required;
        for (const problem::Problem& one : problems) {
            if (one.code == "key-missing" && one.message.ends_with(end)) {
                missed.insert(one.message.substr(0, one.message.size() - end.size()));
            }
        }
        for (const trip::Key& key : table.keys) {
            CHECK_FALSE(key.means.empty());
            CHECK(key.required == key.by_default.empty());
            if (key.required) {
                required.insert(std::string(key.name));
            }
        }
        // Keys of which one is required have words of their own.
        std::erase_if(missed, [](const std::string& one) { return one.find(" or ") != std::string::npos; });
        std::erase_if(missed, [](const std::string& one) { return one == "target" || one.starts_with("test_"); });
        CHECK(missed == required);
    }
}

TEST_CASE("every table is there as often as the manual says") {
    const auto read = read_trip_text("");
    for (const trip::KeyTable& table : trip::key_tables()) {
        CAPTURE(table.heading);
        const bool missed = std::any_of(read.problems().begin(), read.problems().end(), [&](const auto& one) {
            return one.code == "table-missing" && one.message.starts_with(std::string(table.heading) + " ");
        });
        CHECK(missed == table.required);
    }
}

TEST_CASE("the shortest trip is read, and each line of it is needed") {
    const std::string text(trip::shortest_trip());
    const auto whole = read_trip_text(text);
    REQUIRE(whole.ok());
    for (const problem::Problem& one : whole.problems()) {
        CHECK(std::string(one.code.text()) == "box-untested");
    }
    std::size_t begin = 0;
    for (std::size_t end = text.find('\n'); end != std::string::npos; end = text.find('\n', begin)) {
        const std::string line = text.substr(begin, end - begin);
        if (line.find(" = ") != std::string::npos) {
            CAPTURE(line);
            std::string without = text;
            without.erase(begin, end + 1 - begin);
            const auto read = read_trip_text(without);
            const bool by_default = line == "pieces = 2" || line == "length = \"250 mm\"";
            CHECK((!read.ok() || read.problems().size() > whole.problems().size()) != by_default);
        }
        begin = end + 1;
    }
}
