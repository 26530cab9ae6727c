// SPDX-License-Identifier: MIT
// A trip file with some values changed: remarks and layout stay, old values stand in remarks, and it reads back so.
#include "trip/amend.hpp"

#include "reading.hpp"
#include "trip/read_trip.hpp"

#include <doctest/doctest.h>

#include <functional>
#include <string>
#include <vector>

using namespace holdwater;

namespace {

trip::Trip read(const std::string& text) {
    auto trip = trip::read_trip(text, "trip.toml", support::files_in(support::trip_layouts()), support::known());
    for (const problem::Problem& one : trip.problems()) {
        CAPTURE(one.message);
        CHECK(one.severity != problem::Severity::error);
    }
    REQUIRE(trip.ok());
    return std::move(trip).value();
}

/// Every remark of the first text still stands in the second, in its order.
bool keeps_remarks(const std::string& before, const std::string& after) {
    std::size_t at = 0;
    for (std::size_t from = before.find('#'); from != std::string::npos; from = before.find('#', from)) {
        const std::size_t end = std::min(before.find('\n', from), before.size());
        at = after.find(before.substr(from, end - from), at);
        if (at == std::string::npos) {
            return false;
        }
        from = end;
    }
    return true;
}

using Change = std::function<void(trip::Trip&)>;

}  // namespace

TEST_CASE("each change of a trip is written into its file and reads back; nothing else changes") {
    const std::vector<Change> changes{
        [](trip::Trip& t) { t.serve = t.serve.after(units::minutes(45)); },
        [](trip::Trip& t) { t.from = t.from.after(units::minutes(-30)); },
        [](trip::Trip& t) { t.light_fire = t.from.after(units::hours(1)); },
        [](trip::Trip& t) { t.foods[0].tolerance = units::kelvins(6.5); },
        [](trip::Trip& t) { t.foods[0].target = units::celsius(65); },
        [](trip::Trip& t) {
            t.foods[0].thickness -= units::millimetres(1);
            t.foods[0].pieces *= 2;
        },
        [](trip::Trip& t) { t.foods[0].over_fire = true; },
        [](trip::Trip& t) { t.boxes[0].water = units::litres(21); },
        [](trip::Trip& t) { t.boxes[0].test = units::HeatLoss{0.55}; },
        [](trip::Trip& t) { t.boxes[0].prewarmed = !t.boxes[0].prewarmed; },
        [](trip::Trip& t) { t.boxes[0].thermometer.reset(); },
        [](trip::Trip& t) { t.weather.wind = facts::Wind::still; },
        [](trip::Trip& t) { t.fire.pots += 1; },
    };
    for (const char* name : {"trail-crew", "class-day", "template"}) {
        const std::string text = support::read_text(support::trip_layouts() / (std::string(name) + ".toml"));
        const trip::Trip before = read(text);
        REQUIRE(trip::amended(text, before, before) == text);
        for (std::size_t i = 0; i < changes.size(); ++i) {
            CAPTURE(std::string(name));
            CAPTURE(i);
            trip::Trip after = before;
            changes[i](after);
            const auto amended = trip::amended(text, before, after);
            REQUIRE(amended.has_value());
            const bool same = trip::canonical(after) == trip::canonical(before);
            CHECK((*amended == text) == same);
            CHECK(trip::canonical(read(*amended)) == trip::canonical(after));
            CHECK(keeps_remarks(text, *amended));
            CHECK((same || amended->find("# was: ") != std::string::npos ||
                   amended->find("# added") != std::string::npos));
        }
    }
}

TEST_CASE("a food that is left out stands as a remark; a box that is new stands at the end") {
    const std::string text = support::read_text(support::trip_layouts() / "trail-crew.toml");
    const std::string more = text +
                             "\n[[food]]\nname = \"onions\"\nkind = \"onion\"\ncut = \"intact\"\nshape = \"ball\"\n" +
                             "thickness = \"60 mm\"\nmass = \"0.12 kg\"\nstart = \"4 C\"\ntarget = \"60 C\"\n";
    const trip::Trip before = read(more);
    trip::Trip without = before;
    without.foods.pop_back();
    const auto left_out = trip::amended(more, before, without);
    REQUIRE(left_out.has_value());
    CHECK(left_out->find("\n# [[food]]  # left out\n# name = \"onions\"\n") != std::string::npos);
    CHECK(trip::canonical(read(*left_out)) == trip::canonical(without));

    trip::Trip two = before;
    two.boxes[0].name = "first box";
    two.boxes.push_back(two.boxes[0]);
    two.boxes[1].name = "second box";
    two.foods[0].box = "first box";
    two.foods[1].box = "second box";
    const auto with_box = trip::amended(more, before, two);
    REQUIRE(with_box.has_value());
    CHECK(trip::canonical(read(*with_box)) == trip::canonical(two));
}

TEST_CASE("other layouts: tables in one line, dates with a blank, ends of line with a carriage return") {
    const std::string text = support::read_text(support::trip_layouts() / "class-day.toml");
    std::string crlf;
    for (const char c : text) {
        crlf += c == '\n' ? "\r\n" : std::string{c};
    }
    for (const std::string& file : {crlf}) {
        const trip::Trip before = read(file);
        trip::Trip after = before;
        after.serve = after.serve.after(units::minutes(15));
        after.foods[0].tolerance += units::kelvins(1);
        const auto amended = trip::amended(file, before, after);
        REQUIRE(amended.has_value());
        CHECK(trip::canonical(read(*amended)) == trip::canonical(after));
        std::size_t bare = 0;
        for (std::size_t i = 0; i < amended->size(); ++i) {
            bare += (*amended)[i] == '\n' && (i == 0 || (*amended)[i - 1] != '\r') ? 1 : 0;
        }
        CHECK(bare == 0);
    }
}

TEST_CASE("where the layout does not allow it nothing is written half") {
    // A fire in one line takes no further line.
    const std::string text = "fire = { pots = 2 }\n";
    trip::Trip before;
    before.fire.pots = 2;
    trip::Trip after = before;
    after.fire.pots = 3;
    CHECK(trip::amended(text, before, after) == "fire = { pots = 3 }  # was: 2\n");
    after.weather.wind = facts::Wind::still;
    CHECK_FALSE(trip::amended(text, before, after).has_value());
    CHECK_FALSE(trip::amended("no toml [", before, after).has_value());
}
