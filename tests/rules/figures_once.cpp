// SPDX-License-Identifier: MIT
// A figure is rounded and written in card/figures alone; cards, and the terminal's text of a trip, look it up there.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;

std::string without_comments(const std::string& text) {
    static const std::regex comment(R"(//[^\n]*)");
    return std::regex_replace(text, comment, "");
}

std::string found_by(const std::regex& wanted, const std::string& text) {
    const std::string code = without_comments(text);
    std::string found;
    for (std::sregex_iterator it(code.begin(), code.end(), wanted), end; it != end; ++it) {
        found += it->str() + "; ";
    }
    return found;
}

/// Rounds a quantity, or writes one with its unit.
std::string rounded(const std::string& text) {
    static const std::regex wanted(
        R"(\bunits::(?:amount|figure|in_order|decimal|significant|number|print|print_tight|written|round_to)\b)"
        R"(|\b(?:facts::published|safety::in_both|std::to_string)\b)"
        R"(|#include "(?:units/print|facts/published)\.hpp")"
        R"(|\bToward::)"
        R"(|\.clock_24\()");
    return found_by(wanted, text);
}

/// Makes figures, or borrows how they are made.
std::string made(const std::string& text) {
    static const std::regex wanted(
        R"(#include "card/figures/(?:rounding|provision_rounding|maker|parts|dip|mixing|kitchen_measures)\.hpp")"
        R"(|\b(?:SafeSide|FigureMaker)\b)"
        R"(|\b(?:hold_time|half_litres|tenth_litres|small_mass|kill_margin|fire_time|slush_reads)\()");
    return found_by(wanted, text);
}

/// Rounds a number by itself, or asks an engine.
std::string worked_out(const std::string& text) {
    static const std::regex wanted(R"(\bstd::(?:ceil|floor|round|lround|llround|trunc|nearbyint|rint)\b|\bfmt::)"
                                   R"(|\banswer::(?:mix|hold|gauge|answer_one_piece|thickest_slices|time_above)\w*\()"
                                   R"(|\bsafety::(?:bath_band|sting_band|burn_times|decide|worst_fall)\b|\bheat::)");
    return found_by(wanted, text);
}

struct SourceText {
    std::string path;
    std::string text;
};

std::vector<SourceText> sources_under(const std::string& folder) {
    std::vector<SourceText> found;
    for (const auto& entry : fs::recursive_directory_iterator(fs::path(HOLDWATER_SOURCE_DIR) / folder)) {
        const auto extension = entry.path().extension();
        if (extension == ".cpp" || extension == ".hpp") {
            std::ifstream in(entry.path());
            found.push_back({entry.path().string(), {std::istreambuf_iterator<char>(in), {}}});
        }
    }
    std::sort(found.begin(), found.end(), [](const auto& a, const auto& b) { return a.path < b.path; });
    return found;
}

bool named(const SourceText& source, std::initializer_list<const char*> names) {
    const std::string file = fs::path(source.path).filename().string();
    return std::find(names.begin(), names.end(), file) != names.end();
}

}  // namespace

TEST_CASE("a card rounds and writes no figure and asks no engine: it looks up what stands on it") {
    int seen = 0;
    for (const char* folder : {"src/card/trip", "src/card/shared"}) {
        for (const SourceText& source : sources_under(folder)) {
            INFO(source.path);
            ++seen;
            CHECK(rounded(source.text) == "");
            CHECK(made(source.text) == "");
            CHECK(worked_out(source.text) == "");
        }
    }
    CHECK(seen >= 20);
    int of_classes = 0;
    for (const SourceText& source : sources_under("src/card/class")) {
        INFO(source.path);
        if (named(source, {"class_cards.cpp", "class_reading.cpp", "class_deck.cpp", "class_parts.hpp",
                           "class_exercises.cpp"})) {
            ++of_classes;
            CHECK(rounded(source.text) == "");
            CHECK(made(source.text) == "");
            CHECK(worked_out(source.text) == "");
        }
        if (named(source, {"class_sheets.cpp", "loss_finder.cpp"})) {
            ++of_classes;
            CHECK(rounded(source.text) == "");
            CHECK(made(source.text) == "");
        }
    }
    CHECK(of_classes == 7);
}

TEST_CASE("the terminal rounds no figure of a trip, and nothing as the cards do") {
    int of_trips = 0;
    for (const SourceText& source : sources_under("src/cli")) {
        INFO(source.path);
        CHECK(made(source.text) == "");
        if (named(source, {"plan_text.cpp", "provisions_text.cpp", "what_if_text.cpp"})) {
            ++of_trips;
            CHECK(rounded(source.text) == "");
        }
    }
    CHECK(of_trips == 3);
}

TEST_CASE("the search for rounding finds what it is for") {
    CHECK(rounded("card.add(units::amount(v, system, {0.5, Toward::up}));") != "");
    CHECK(rounded("units::print(plan.round)") != "");
    CHECK(rounded("facts::published(t, system)") != "");
    CHECK(rounded("#include \"units/print.hpp\"") != "");
    CHECK(rounded("std::to_string(pots)") != "");
    CHECK(made("const card::SafeSide safe{plan, words};") != "");
    CHECK(made("#include \"card/figures/rounding.hpp\"") != "");
    CHECK(made("hold_time(burn)") != "");
    CHECK(worked_out("std::ceil(t)") != "");
    CHECK(worked_out("fmt::format(\"{:.1f}\", x)") != "");
    CHECK(worked_out("answer::mix(question)") != "");
    CHECK(rounded("on(\"leave\", nth) // units::print") == "");
    CHECK(made("std::optional<units::Duration> own_hold_time;") == "");
    CHECK(worked_out("std::remainder(mm, 10.0)") == "");
}
