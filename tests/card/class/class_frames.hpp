// SPDX-License-Identifier: MIT
// What the tests of the class deck begin with.
#pragma once

#include "card/class/class_frame.hpp"
#include "support/rulesets.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

#include <memory>
#include <string>
#include <utility>
#include <vector>

namespace holdwater::support {

inline card::ClassWish wish(facts::Ruleset rules = ruleset("us"), const std::string& kind = "pork-loin") {
    card::ClassWish made;
    made.rules = rules;
    made.kind = kind;
    made.thermometer = units::kelvins(1);
    return made;
}

inline words::Words words_of(const std::string& language) {
    const std::string file = language + ".toml";
    return words::Words::read(file_text(std::string(HOLDWATER_SOURCE_DIR) + "/layouts/words/" + file), file).value();
}

inline const words::Words& english() {
    static const words::Words words = words_of("en");
    return words;
}

inline std::unique_ptr<card::ClassFrame> frame_of(const card::ClassWish& wanted) {
    auto frame = card::ClassFrame::made(wanted, "Class deck");
    REQUIRE(frame.ok());
    return std::move(frame).value();
}

/// Every set of rules that the facts have.
inline std::vector<facts::Ruleset> rulesets() {
    std::vector<facts::Ruleset> all;
    for (const auto& name : facts::names<facts::Ruleset>()) {
        all.push_back(name.value);
    }
    return all;
}

}  // namespace holdwater::support
