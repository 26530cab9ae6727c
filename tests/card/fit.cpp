// SPDX-License-Identifier: MIT
// Every one of these decks finds room in the working formats and on both sheets.
#include "card/texts.hpp"
#include "draw/draw.hpp"
#include "layout/layout.hpp"
#include "plan/result/boxes.hpp"
#include "support/faces.hpp"
#include "support/trips.hpp"
#include "support/typeface.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <string>
#include <variant>
#include <vector>

using namespace holdwater;
using namespace holdwater::units::page_literals;
using namespace holdwater::support;

namespace {

void check_fit(const Dealt& dealt, const layout::Measure& by) {
    for (const char* name : {"hand", "pocket", "large"}) {
        CAPTURE(name);
        const layout::Format in = format(name);
        const auto faces = layout::lay_out(dealt.deck, in, by);
        REQUIRE_MESSAGE(faces.ok(), problem::to_line(faces.problems().front()));
        for (const char* paper : {"a4", "letter"}) {
            CAPTURE(paper);
            CHECK(layout::impose(*faces, in, sheet(paper), layout::Sides::duplex, 1, "trip", by).ok());
        }
    }
}

/// The decks of trip_paths, of the template, and of the trips that try the planner.
std::vector<std::string> more_paths() {
    std::vector<std::string> paths = trip_paths();
    paths.emplace_back("layouts/trips/template.toml");
    const std::string folder = "tests/plan/trips";
    for (const auto& entry : std::filesystem::directory_iterator(std::string(HOLDWATER_SOURCE_DIR) + "/" + folder)) {
        paths.push_back(folder + "/" + entry.path().filename().string());
    }
    REQUIRE(paths.size() >= 16);
    return paths;
}

}  // namespace

TEST_CASE("every deck is laid out in hand, pocket and large, one deck a box") {
    const layout::Measure& by = real_measure();
    for (const std::string& path : more_paths()) {
        CAPTURE(path);
        for (const trip::Trip& part : plan::one_trip_a_box(trip_at(path))) {
            check_fit(Dealt(part), by);
        }
    }
}

TEST_CASE("the decks are laid out in every other language, in each system of units") {
    const layout::Measure& by = real_measure();
    for (const std::string& path : trip_paths()) {
        CAPTURE(path);
        for (const trip::Trip& part : plan::one_trip_a_box(trip_at(path))) {
            Dealt dealt(part);
            for (const std::string& language : other_languages()) {
                CAPTURE(language);
                for (const std::string_view system : units::system_names()) {
                    CAPTURE(system);
                    dealt.deal(units::system_named(system), language);
                    check_fit(dealt, by);
                }
            }
        }
    }
}

TEST_CASE("the demo decks are laid out in other systems of units as well") {
    const layout::Measure& by = real_measure();
    for (const char* name : {"trail-crew", "hut-night", "paddling-day", "class-day"}) {
        CAPTURE(name);
        Dealt dealt(demo_trip(name));
        for (const units::System system : {units::System::metric, units::System::us, units::System::us_first}) {
            dealt.deal(system, "en");
            check_fit(dealt, by);
        }
    }
}

TEST_CASE("every cell of the Log is at least 7 mm high, on each of its faces") {
    const layout::Measure& by = real_measure();
    const Dealt dealt("layouts/trips/trail-crew.toml");
    for (const char* name : {"hand", "pocket", "large"}) {
        CAPTURE(name);
        const auto faces = layout::lay_out(dealt.deck, format(name), by);
        REQUIRE(faces.ok());
        int cells = 0;
        for (const layout::CardFaces& card : *faces) {
            if (card.key != "log") {
                continue;
            }
            for (const layout::Page& face : card.faces) {
                std::vector<layout::PlacedLine> lines;
                for (const layout::Item& item : face.items) {
                    if (const auto* line = std::get_if<layout::PlacedLine>(&item)) {
                        lines.push_back(*line);
                    }
                }
                // Each rule between columns, cut by the rules between rows.
                for (const layout::PlacedLine& upright : lines) {
                    if (abs(upright.x1 - upright.x2) > 1e-9_mm) {
                        continue;
                    }
                    std::vector<layout::Millimetres> cuts{upright.y1};
                    for (const layout::PlacedLine& level : lines) {
                        const bool crosses = abs(level.y1 - level.y2) < 1e-9_mm && level.x1 < upright.x1 &&
                                             level.x2 > upright.x1 && level.y1 > upright.y1 + 1e-9_mm &&
                                             level.y1 < upright.y2 + 1e-6_mm;
                        if (crosses) {
                            cuts.push_back(level.y1);
                        }
                    }
                    std::sort(cuts.begin(), cuts.end());
                    for (std::size_t i = 1; i < cuts.size(); ++i) {
                        CHECK(cuts[i] - cuts[i - 1] >= 7.0_mm - 1e-6_mm);
                        ++cells;
                    }
                }
            }
        }
        CHECK(cells >= 30);
    }
}
