// SPDX-License-Identifier: MIT
// Our own pinned output: every item of every demo card face, to be read when it changes.
#include "pages/demo_faces.hpp"
#include "support/faces.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <set>
#include <sstream>

using namespace holdwater;
using namespace holdwater::units::page_literals;
namespace fs = std::filesystem;

namespace {

const fs::path folder = fs::path(HOLDWATER_SOURCE_DIR) / "tests" / "pages";

/// The first line in which two lists differ, both of them.
std::string first_difference(const std::string& kept, const std::string& now) {
    std::istringstream one(kept);
    std::istringstream two(now);
    std::string a;
    std::string b;
    for (int line = 1;; ++line) {
        const bool more_a = static_cast<bool>(std::getline(one, a));
        const bool more_b = static_cast<bool>(std::getline(two, b));
        if (!more_a && !more_b) {
            return "";
        }
        if (more_a != more_b || a != b) {
            return "line " + std::to_string(line) + "\n  kept: " + (more_a ? a : "(ends)") +
                   "\n  now:  " + (more_b ? b : "(ends)");
        }
    }
}

}  // namespace

TEST_CASE("every face of the demo decks has the items of its list") {
    INFO("after a wanted change: cmake --build build --target renew_page_lists, then read the difference");
    const auto lists = support::page_lists();
    REQUIRE(lists.size() > 20);
    for (const auto& [path, list] : lists) {
        CAPTURE(path);
        const bool kept = fs::exists(folder / path);
        CHECK(kept);
        if (kept) {
            CHECK(first_difference(support::file_text((folder / path).string()), list) == "");
        }
    }
    for (const std::string& name : support::demo_names()) {
        for (const auto& entry : fs::directory_iterator(folder / name)) {
            CHECK_MESSAGE(lists.contains(name + "/" + entry.path().filename().string()), entry.path().string());
        }
    }
}

TEST_CASE("a moved, changed or lost item is seen") {
    layout::Page page{92.0_mm, 124.0_mm, "one", {}};
    layout::PlacedText text;
    text.x = 10.0_mm;
    text.text = "71 °C";
    page.items.emplace_back(text);
    const std::string before = support::items_of(page);
    CHECK(first_difference(before, before) == "");
    for (const double by : {0.1, -0.1, 5.0}) {
        auto other = page;
        std::get<layout::PlacedText>(other.items[0]).x += layout::Millimetres{by};
        CHECK(first_difference(before, support::items_of(other)) != "");
    }
    auto other = page;
    std::get<layout::PlacedText>(other.items[0]).text = "77 °C";
    CHECK(first_difference(before, support::items_of(other)).find("77 °C") != std::string::npos);
    other.items.clear();
    CHECK(first_difference(before, support::items_of(other)).find("(ends)") != std::string::npos);
}
