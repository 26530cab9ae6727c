// SPDX-License-Identifier: MIT
// What stands behind the cards: complete, true to the plan, and printable on both sheets.
#include "card/basis/basis.hpp"

#include "card/basis/fill_strip.hpp"
#include "card/figures/numbers.hpp"
#include "card/texts.hpp"
#include "draw/draw.hpp"
#include "facts/facts.hpp"
#include "layout/layout.hpp"
#include "support/faces.hpp"
#include "support/near.hpp"
#include "support/trips.hpp"
#include "support/typeface.hpp"
#include "trip/read_trip.hpp"
#include "words/words.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>
#include <sstream>

using namespace holdwater;
using namespace holdwater::support;

namespace {

const std::string layouts = std::string(HOLDWATER_SOURCE_DIR) + "/layouts";

const words::Words& english() {
    static const auto words = words::Words::read(file_text(layouts + "/words/en.toml"), "en.toml").value();
    return words;
}

card::Sheets basis_of(const trip::Trip& trip, const plan::Plan& plan, const problem::Problems& remarks = {}) {
    const card::Printing printing{"hand", 92.0, 124.0, "a4", "duplex"};
    return card::basis(trip, {plan}, remarks, printing, english(), "TEST-TEST");
}

card::Sheets basis_of(const Dealt& dealt, const problem::Problems& remarks = {}) {
    return basis_of(dealt.trip, dealt.plan, remarks);
}

template <class Kind>
std::vector<Kind> all_of(const card::Sheets& sheets) {
    std::vector<Kind> found;
    for (const auto& block : sheets.blocks) {
        if constexpr (std::is_same_v<Kind, card::Strip> || std::is_same_v<Kind, card::LaminateTemplate>) {
            if (const auto* one = std::get_if<Kind>(&block)) {
                found.push_back(*one);
            }
        } else if (const auto* plain = std::get_if<card::Block>(&block)) {
            if (const auto* one = std::get_if<Kind>(plain)) {
                found.push_back(*one);
            }
        }
    }
    return found;
}

const card::Table& table_with(const std::vector<card::Table>& tables, const std::string& head) {
    const auto found = std::find_if(tables.begin(), tables.end(), [&](const card::Table& one) {
        return !one.columns.empty() && one.columns.front().head == head;
    });
    REQUIRE(found != tables.end());
    return *found;
}

/// "food: pork loin" and "[[food]]" are both a food.
std::string part_of(const std::string& title) {
    std::string part = title.substr(0, title.find(':'));
    std::erase_if(part, [](char c) { return c == '[' || c == ']'; });
    return part;
}

/// Every key of the canonical text stands in a table of its part.
void check_inputs(const Dealt& dealt, const std::vector<card::Table>& tables) {
    std::multiset<std::string> shown;
    for (const card::Table& table : tables) {
        for (const auto& row : table.rows) {
            if (row.size() != 2) {
                continue;  // what was worked out, not what was given
            }
            CHECK_FALSE(row.back().empty());
            shown.insert(part_of(table.title) + "." + row.front());
        }
    }
    std::multiset<std::string> wanted;
    std::istringstream lines(trip::canonical(dealt.trip));
    std::string part;
    for (std::string line; std::getline(lines, line);) {
        if (line.starts_with("[")) {
            part = part_of(line);
        } else if (const auto equals = line.find(" = "); equals != std::string::npos && !line.starts_with("#")) {
            wanted.insert(part + "." + line.substr(0, equals));
        }
    }
    CHECK(wanted.size() > 30);
    for (const std::string& key : wanted) {
        CAPTURE(key);
        CHECK(shown.count(key) == wanted.count(key));
    }
}

void check_sources(const std::vector<card::Table>& tables) {
    const card::Table& sources = table_with(tables, "source");
    const std::set<std::string> tags{"read", "from memory", "computed", "measured", "judgement"};
    std::multiset<std::string> resting;
    std::set<std::string> cited;
    for (const auto& row : sources.rows) {
        REQUIRE(row.size() == 3);
        CAPTURE(row[0]);
        const auto star = row[0].find('*', 1);
        REQUIRE(row[0].front() == '*');
        const facts::Source& source = facts::facts().source(row[0].substr(1, star - 1));  // throws for an unknown key
        const bool found =
            row[0].size() > star + 1 ? row[0].substr(star + 2) == source.citation : cited.contains(source.key);
        CHECK(found);
        cited.insert(source.key);
        CHECK(tags.contains(row[1]));
        CHECK_FALSE(row[2].empty());
        std::istringstream parts(row[2]);
        for (std::string one; std::getline(parts, one, ',');) {
            resting.insert(one.substr(one.find_first_not_of(' ')));
        }
    }
    for (const facts::Figure& figure : facts::facts().figures()) {
        CAPTURE(figure.key);
        CHECK(resting.count(figure.key) == 1);
    }
    for (const facts::Spread& spread : facts::facts().spreads()) {
        CAPTURE(spread.key);
        CHECK(resting.count("spread " + spread.key) == 1);
    }
}

void check_numbers(const Dealt& dealt, const std::vector<card::Table>& tables) {
    const card::Table& numbers = table_with(tables, "number");
    auto wanted = card::card_numbers({dealt.plan, english()});
    std::erase_if(wanted, [](const card::CardNumber& number) { return number.detail; });
    REQUIRE(numbers.rows.size() == wanted.size());
    for (std::size_t i = 0; i < wanted.size(); ++i) {
        CAPTURE(wanted[i].name);
        CHECK(numbers.rows[i][1] == wanted[i].printed);
        for (std::string part : {wanted[i].quantile, wanted[i].rounding, wanted[i].source}) {
            if (const auto star = part.find(".*"); star != std::string::npos) {
                part.resize(star);  // a star would print bold
            }
            CHECK(numbers.rows[i][3].find(part) != std::string::npos);
        }
    }
}

/// A mark at so many mm for so many litres: V / (L W), with the food's volume on top where it is in.
void check_strips(const Dealt& dealt, const std::vector<card::Strip>& strips) {
    REQUIRE(strips.size() == 2);
    const trip::Box& box = dealt.trip.boxes.front();
    const double area = units::in_millimetres(box.inside[0]) * units::in_millimetres(box.inside[1]);
    const double depth = units::in_millimetres(box.inside[2]);
    double mass = 0.0;
    for (const trip::Food& food : dealt.trip.foods) {
        mass += food.mass.si() * food.pieces;
    }
    std::vector<double> risen;
    for (std::size_t s = 0; s < 2; ++s) {
        int figures = 0;
        for (const card::Strip::Mark& mark : strips[s].marks) {
            CHECK(mark.at_mm > 0.0);
            CHECK(mark.at_mm <= 0.95 * depth + 1e-6);
            if (mark.strong || mark.label.empty()) {
                continue;
            }
            ++figures;
            const double litres = std::stod(mark.label);
            const double bare = litres * (dealt.trip.units == units::System::us ? 0.946352946 : 1.0) * 1e6 / area;
            if (s == 0) {
                CHECK(near_abs(mark.at_mm, bare, 0.05));
            } else {
                risen.push_back((mark.at_mm - bare) * area * 1e-6);
            }
        }
        CHECK(figures >= 5);
        CHECK(std::is_sorted(strips[s].marks.begin(), strips[s].marks.end(),
                             [](const auto& a, const auto& b) { return a.at_mm < b.at_mm; }));
        CHECK(strips[s].title.find("TEST-TEST") != std::string::npos);
    }
    for (const double litres : risen) {
        CHECK(near_abs(litres, risen.front(), 1e-6));
        CHECK(litres > mass / 1.12);  // meat and fish weigh 1.0 to 1.1 kg a litre
        CHECK(litres < mass / 0.98);
    }
    const auto strong = [](const card::Strip& strip) {
        std::vector<card::Strip::Mark> found;
        std::copy_if(strip.marks.begin(), strip.marks.end(), std::back_inserter(found),
                     [](const auto& mark) { return mark.strong; });
        return found;
    };
    const double fill = units::in_litres(box.water) * 1e6 / area;
    const auto empty = strong(strips[0]);
    CHECK(std::any_of(empty.begin(), empty.end(), [&](const auto& mark) { return near_abs(mark.at_mm, fill, 0.05); }));
    const auto filled = strong(strips[1]);
    REQUIRE(filled.size() == 3);
    CHECK(filled[0].label.find("water floor") != std::string::npos);
    CHECK(filled[0].at_mm > units::in_millimetres(dealt.trip.foods.front().thickness));  // the food lies under it
    CHECK(near_abs(filled[1].at_mm, fill + risen.front() * 1e6 / area, 0.05));
    CHECK(near_abs(filled[2].at_mm, 0.95 * depth, 0.05));
}

}  // namespace

TEST_CASE("the basis of every trip: inputs, numbers and sources whole, strips true, on A4 and Letter") {
    for (const std::string& path : trip_paths()) {
        CAPTURE(path);
        const Dealt dealt(path);
        const card::Sheets sheets = basis_of(dealt);
        const auto tables = all_of<card::Table>(sheets);
        check_inputs(dealt, tables);
        check_sources(tables);
        check_numbers(dealt, tables);
        check_strips(dealt, all_of<card::Strip>(sheets));
        for (const char* paper : {"a4", "letter"}) {
            CAPTURE(std::string(paper));
            const auto pages =
                layout::lay_out_sheets(sheets, support::format("plain"), support::sheet(paper), real_measure());
            CAPTURE(pages.ok() ? std::string() : problem::to_line(pages.problems().front()));
            REQUIRE(pages.ok());
            CHECK(pages->size() >= 6);
            for (const layout::Page& page : *pages) {
                CHECK(all_text(page).find("TEST-TEST") != std::string::npos);
            }
        }
    }
}

TEST_CASE("a box tested by a long log finds room: its ends and its length are said") {
    const Dealt dealt("tests/plan/trips/frosty-weekend.toml");
    trip::Trip trip = dealt.trip;
    for (const std::size_t readings : {2U, 24U, 25U, 96U, 97U, 900U}) {
        CAPTURE(readings);
        std::vector<trip::BoxReading> log;
        for (std::size_t i = 0; i < readings; ++i) {
            log.push_back(
                {units::minutes(static_cast<double>(i)), units::celsius(64.0 - 0.005 * static_cast<double>(i))});
        }
        trip.boxes.front().test = log;
        const auto tables = all_of<card::Table>(basis_of(trip, dealt.plan));
        std::string text;
        bool found = false;
        for (const card::Table& table : tables) {
            if (table.title != "box") {
                continue;
            }
            found = true;
            for (const auto& row : table.rows) {
                CHECK(row.back().size() < 1000);
                text += row.front() + ": " + row.back() + "\n";
            }
        }
        REQUIRE(found);
        CHECK(text.find("test: 0\u00A0min\u00A0=\u00A064.0") != std::string::npos);
        const auto last = units::print(units::minutes(static_cast<double>(readings - 1)));
        CHECK(text.find(last + "\u00A0=") != std::string::npos);
        const auto shown = std::count(text.begin(), text.end(), '=');
        CHECK(shown == static_cast<std::ptrdiff_t>(std::min<std::size_t>(readings, 96)));
        CHECK((text.find("in all") != std::string::npos) == (readings > 96));
    }
}

TEST_CASE("every remark on the trip file and on the plan stands under what was assumed") {
    const Dealt dealt("tests/plan/trips/frosty-weekend.toml");
    const problem::Problems remarks{problem::warning("box-test-weak", "the box test is old", "test it again")};
    std::string text;
    for (const card::Steps& steps : all_of<card::Steps>(basis_of(dealt, remarks))) {
        for (const card::Step& step : steps.steps) {
            text += step.text + "\n";
        }
    }
    CHECK(text.find("the box test is old (test it again)") != std::string::npos);
    for (const problem::Problem& note : dealt.plan.notes) {
        CAPTURE(note.message);
        CHECK(text.find(note.message) != std::string::npos);
    }
}

TEST_CASE("the template is for the deck's own paper, with the border and corners of the facts") {
    const Dealt dealt("layouts/trips/class-day.toml");
    const auto films = all_of<card::LaminateTemplate>(basis_of(dealt));
    REQUIRE(films.size() == 1);
    CHECK(films[0].paper_width_mm == 92.0);
    CHECK(films[0].paper_height_mm == 124.0);
    CHECK(films[0].border_mm == facts::facts().value("laminate.border"));
    CHECK(films[0].corner_mm >= 3.0);
    CHECK(films[0].label.find("102 × 134") != std::string::npos);
}

TEST_CASE("the hand's bands stand only here: every row of a dip, and a cold hand is never quicker than a warm one") {
    const Dealt dealt("tests/plan/trips/frosty-weekend.toml");
    const auto tables = all_of<card::Table>(basis_of(dealt));
    const card::Table& stings = table_with(tables, "bath");
    CHECK(stings.columns.size() == 10);
    const auto seconds = [](const std::string& text) { return text == "never" ? 1e9 : std::stod(text); };
    for (const auto& row : stings.rows) {
        CAPTURE(row[0]);
        for (std::size_t c = 1; c < 4; ++c) {
            CHECK(seconds(row[c]) <= seconds(row[c + 3]));
            CHECK((c == 1 || seconds(row[c - 1]) <= seconds(row[c])));
        }
    }
    CHECK(table_with(tables, "stung").rows.size() == 4);
}

TEST_CASE("a trip in US units alone has its strips in quarts") {
    Dealt dealt("tests/plan/trips/frosty-weekend.toml");
    dealt.deal(units::System::us, "en");
    const auto strips = card::fill_strips(card::trip_figures({dealt.plan, english()}), "TEST-TEST");
    check_strips(dealt, strips);
    CHECK(std::any_of(strips[0].marks.begin(), strips[0].marks.end(),
                      [](const auto& mark) { return mark.label == "20\u00A0qt"; }));
}
