// SPDX-License-Identifier: MIT
// The direction of includes: the table of DEVELOPERS.md, checked against every file of src/.
#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <regex>
#include <set>
#include <string>

namespace {

namespace fs = std::filesystem;

const std::map<std::string, std::set<std::string>> may_see = {
    {"problem", {}},
    {"units", {}},
    {"facts", {}},
    {"heat", {"facts"}},
    {"safety", {"facts"}},
    {"trip", {"facts"}},
    {"answer", {"facts", "heat", "safety", "trip"}},
    {"plan", {"facts", "heat", "safety", "trip", "answer"}},
    {"words", {}},
    {"card", {"facts", "heat", "safety", "trip", "answer", "plan", "words"}},
    {"layout", {"card", "words"}},
    {"draw", {"layout"}},
    {"cli", {"facts", "heat", "safety", "trip", "answer", "plan", "words", "card", "layout", "draw"}}};

const std::set<std::string> toml_folders = {"facts", "trip", "words", "layout"};

/// Every include of src/, as (room, file, included): the room is the first folder under src/, whatever lies between.
template <class Visit>
void each_include(Visit visit) {
    const std::regex line(R"re(^\s*#\s*include\s*[<"]([^>"]+)[>"].*)re");
    const fs::path src = fs::path(HOLDWATER_SOURCE_DIR) / "src";
    for (const auto& entry : fs::recursive_directory_iterator(src)) {
        const auto extension = entry.path().extension();
        if (extension != ".cpp" && extension != ".hpp") {
            continue;
        }
        std::ifstream in(entry.path());
        for (std::string text; std::getline(in, text);) {
            if (std::smatch match; std::regex_match(text, match, line)) {
                const fs::path file = entry.path().lexically_relative(src);
                visit(file.begin()->string(), file.string(), match[1].str());
            }
        }
    }
}

}  // namespace

TEST_CASE("each folder includes only what the design lets it see") {
    int seen = 0;
    each_include([&](const std::string& folder, const std::string& file, const std::string& included) {
        const auto slash = included.find('/');
        if (slash == std::string::npos) {
            return;
        }
        const std::string target = included.substr(0, slash);
        if (!may_see.contains(target) || target == folder || target == "problem" || target == "units") {
            return;
        }
        ++seen;
        CAPTURE(file);
        CAPTURE(included);
        REQUIRE(may_see.contains(folder));
        CHECK(may_see.at(folder).contains(target));
        if (folder == "trip") {
            CHECK(included == "facts/names.hpp");
        }
        if (folder == "layout" && target == "card") {
            CHECK(included == "card/content.hpp");
        }
        if (folder == "draw") {
            const bool page = included == "layout/page.hpp" || included == "layout/text/measure.hpp";
            CHECK(page);
        }
    });
    CHECK(seen > 40);
}

TEST_CASE("units and problem see nothing of the rest") {
    each_include([&](const std::string& folder, const std::string& file, const std::string& included) {
        if (folder != "problem" && folder != "units") {
            return;
        }
        const std::string target = included.substr(0, included.find('/'));
        CAPTURE(file);
        CAPTURE(included);
        const bool wrong = included.find('/') != std::string::npos && may_see.contains(target) && target != folder &&
                           target != "problem";
        CHECK_FALSE(wrong);
    });
}

TEST_CASE("only draw knows the drawing libraries, only four folders know toml++, only one room svgpp and pugixml") {
    int svg_readers = 0;
    each_include([&](const std::string& folder, const std::string& file, const std::string& included) {
        CAPTURE(file);
        CAPTURE(included);
        const bool drawing = included.starts_with("hpdf") || included.starts_with("cairo") ||
                             included.starts_with("ft2build") || included.starts_with("freetype");
        if (drawing) {
            CHECK(folder == "draw");
        }
        if (included.starts_with("toml++")) {
            CHECK(toml_folders.contains(folder));
        }
        if (included.starts_with("svgpp") || included.starts_with("pugi")) {
            ++svg_readers;
            CHECK(file.find("layout/drawing/") != std::string::npos);
        }
    });
    CHECK(svg_readers >= 3);
}

TEST_CASE("no TOML is parsed whose bounds were not looked at before") {
    int readers = 0;
    for (const auto& entry : fs::recursive_directory_iterator(fs::path(HOLDWATER_SOURCE_DIR) / "src")) {
        if (entry.path().extension() != ".cpp" && entry.path().extension() != ".hpp") {
            continue;
        }
        std::ifstream in(entry.path());
        const std::string text{std::istreambuf_iterator<char>(in), {}};
        CAPTURE(entry.path().string());
        CHECK(text.find("toml::parse_file") == std::string::npos);
        const auto parses = text.find("toml::parse(");
        if (parses != std::string::npos) {
            ++readers;
            CHECK(text.find("beyond_toml_bounds(") < parses);
        }
    }
    CHECK(readers >= 4);
}

TEST_CASE("one unit reads command lines with CLI11, and only the JSON units see the whole JSON library") {
    int readers = 0;
    int writers = 0;
    each_include([&](const std::string& folder, const std::string& file, const std::string& included) {
        CAPTURE(file);
        CAPTURE(included);
        if (included.starts_with("CLI/")) {
            ++readers;
            CHECK(file == "cli/line/command_line.cpp");
        }
        if (included == "nlohmann/json.hpp") {
            ++writers;
            CHECK(folder == "cli");
            CHECK(file.starts_with("cli/json/"));
            CHECK(file.ends_with(".cpp"));
        }
    });
    CHECK(readers == 1);
    CHECK(writers > 1);
}
