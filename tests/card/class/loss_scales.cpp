// SPDX-License-Identifier: MIT
// The scales of the loss finder as they are drawn: a thread laid straight over them gives the loss of the box test.
#include "card/class/class_gauge.hpp"
#include "card/class/class_sheets.hpp"
#include "card/class/loss_finder.hpp"
#include "card/class/loss_tests.hpp"
#include "layout/layout.hpp"
#include "support/faces.hpp"
#include "support/near.hpp"
#include "support/typeface.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <random>
#include <string>
#include <vector>

using namespace holdwater;
using namespace holdwater::support;

namespace {

/// A scale on paper, as somebody with a thread sees it [mm].
struct Drawn {
    double x = 0.0;
    std::map<double, double> labelled;  // figure -> height of its tick
    std::vector<double> ticks;

    /// Where a value lies: between the figures beside it, by their logarithms.
    double y_of(double value) const {
        const auto above = labelled.lower_bound(value);
        REQUIRE(above != labelled.end());
        if (above == labelled.begin()) {
            REQUIRE(near_rel(above->first, value, 1e-9));
            return above->second;
        }
        const auto below = std::prev(above);
        const double share = std::log(value / below->first) / std::log(above->first / below->first);
        return below->second + share * (above->second - below->second);
    }
    /// What is read where the thread crosses.
    double value_at(double y) const {
        for (auto above = std::next(labelled.begin()); above != labelled.end(); ++above) {
            const auto below = std::prev(above);
            const double share = (y - below->second) / (above->second - below->second);
            if (share >= -1e-9 && share <= 1.0 + 1e-9) {
                return below->first * std::pow(above->first / below->first, share);
            }
        }
        return 0.0;  // off the scale
    }
};

std::vector<Drawn> scales_on(const layout::Page& page) {
    std::vector<Drawn> scales;
    for (const layout::Item& item : page.items) {
        const auto* line = std::get_if<layout::PlacedLine>(&item);
        if (line != nullptr && std::abs((line->x1 - line->x2).value()) < 1e-9 &&
            std::abs((line->y1 - line->y2).value()) > 80.0) {
            scales.push_back({line->x1.value(), {}, {}});
        }
    }
    for (const layout::Item& item : page.items) {
        const auto* line = std::get_if<layout::PlacedLine>(&item);
        if (line == nullptr || std::abs((line->y1 - line->y2).value()) > 1e-9) {
            continue;
        }
        for (Drawn& scale : scales) {
            if (near_abs(0.5 * (line->x1 + line->x2).value(), scale.x, 1e-6)) {
                scale.ticks.push_back(line->y1.value());
            }
        }
    }
    for (const layout::PlacedText& text : texts(page)) {
        for (Drawn& scale : scales) {
            const double beside = text.x.value() - scale.x;
            if (beside < 1.0 || beside > 3.0 || text.text.find_first_not_of("0123456789.") != std::string::npos) {
                continue;
            }
            const auto tick = std::min_element(scale.ticks.begin(), scale.ticks.end(), [&](double a, double b) {
                const double middle = text.baseline.value() - 1.0;
                return std::abs(a - middle) < std::abs(b - middle);
            });
            REQUIRE(tick != scale.ticks.end());
            scale.labelled[std::stod(text.text)] = *tick;
        }
    }
    return scales;
}

std::vector<Drawn> scales_of(const char* paper) {
    card::ClassWish metric = wish();
    metric.units = units::System::metric;
    const auto frame = frame_of(metric);
    const auto pages = layout::lay_out_sheets(card::class_sheets(*frame, english(), "TEST-TEST"), format("plain"),
                                              sheet(paper), real_measure());
    REQUIRE(pages.ok());
    // Table and scales stand on one page.
    for (const layout::Page& page : *pages) {
        if (auto scales = scales_on(page); !scales.empty()) {
            const auto all = texts(page);
            CHECK(std::any_of(all.begin(), all.end(), [](const auto& text) { return text.text == "560"; }));
            return scales;
        }
    }
    return {};
}

double crossing(double x1, double y1, double x2, double y2, double x) {
    return y1 + (y2 - y1) * (x - x1) / (x2 - x1);
}

}  // namespace

TEST_CASE("a thread laid over the drawn scales gives the loss of the box test within what the sheet promises") {
    const card::LossFinder finder;
    const double promised = facts::facts().value("finder.accuracy");
    for (const char* paper : {"a4", "letter"}) {
        CAPTURE(paper);
        const std::vector<Drawn> scales = scales_of(paper);
        REQUIRE(scales.size() == 5);
        const Drawn& fall = scales[card::LossScales::falls];
        const Drawn& turn = scales[card::LossScales::turn];
        const Drawn& hours = scales[card::LossScales::hours];
        const Drawn& loss = scales[card::LossScales::losses];
        const Drawn& water = scales[card::LossScales::litres];
        std::mt19937_64 dice(3);
        std::uniform_real_distribution<double> slip(-0.3, 0.3);  // mm, of a hand with a thread
        double worst_exact = 0.0;
        double worst_laid = 0.0;
        int read = 0;
        for (const double air : {0.0, 10.0, 20.0, 30.0}) {
            for (const double reading : {60.0, 58.0, 55.0, 52.0, 50.0}) {
                for (const double after : {2.0, 2.6, 4.0, 5.5, 9.0, 13.0, 16.0}) {
                    for (const double litres : {8.0, 11.0, 19.0, 28.0, 43.0, 70.0}) {
                        const double exact = gauged(finder, air, reading, after, litres).value_or(0.0);
                        const double number = finder.fall(units::celsius(air), units::celsius(reading));
                        const auto laid = [&](double far) {
                            const auto off = [&] { return far * slip(dice); };
                            const double mark = crossing(fall.x, fall.y_of(number) + off(), hours.x,
                                                         hours.y_of(after) + off(), turn.x) +
                                                off();
                            const double found =
                                crossing(turn.x, mark + off(), water.x, water.y_of(litres) + off(), loss.x) + off();
                            return loss.value_at(found);
                        };
                        const double straight = laid(0.0);
                        if (exact == 0.0 || exact > 7.5) {
                            continue;  // beyond the scale: no box
                        }
                        REQUIRE(straight > 0.0);
                        CAPTURE(exact);
                        worst_exact = std::max(worst_exact, std::abs(straight / exact - 1.0));
                        const double by_hand = laid(1.0);
                        worst_laid = std::max(worst_laid, by_hand > 0.0 ? std::abs(by_hand / exact - 1.0) : 0.0);
                        ++read;
                    }
                }
            }
        }
        MESSAGE(paper << ": " << read << " boxes, straight " << 100.0 * worst_exact << " %, by hand "
                      << 100.0 * worst_laid << " %");
        CHECK(read > 700);
        CHECK(worst_exact < 0.01);
        CHECK(worst_laid < promised);
    }
}

TEST_CASE("every tick of the scales stands where its formula says, and ticks keep apart") {
    const card::LossFinder finder;
    const card::LossScales formula(finder);
    const std::vector<Drawn> scales = scales_of("a4");
    REQUIRE(scales.size() == 5);
    const auto check = [&](std::size_t which, auto&& at_of, double low, double high) {
        const Drawn& scale = scales[which];
        // Two figures give the height of the drawing; all others must fit.
        const double foot = scale.y_of(low);
        const double head = scale.y_of(high);
        for (const auto& [value, y] : scale.labelled) {
            CAPTURE(value);
            const double share = (at_of(value) - at_of(low)) / (at_of(high) - at_of(low));
            CHECK(near_abs(y, foot + share * (head - foot), 1e-6));
        }
        std::vector<double> ticks = scale.ticks;
        std::sort(ticks.begin(), ticks.end());
        for (std::size_t i = 1; i < ticks.size(); ++i) {
            CHECK(ticks[i] - ticks[i - 1] > 0.6);  // mm
        }
    };
    check(
        card::LossScales::falls, [&](double v) { return formula.fall_at(v); }, 80, 600);
    check(
        card::LossScales::hours, [&](double v) { return formula.hours_at(units::hours(v)); }, 2, 16);
    check(
        card::LossScales::losses, [&](double v) { return formula.loss_at(units::HeatLoss{v}); }, 0.05, 8);
    check(
        card::LossScales::litres, [&](double v) { return formula.litres_at(units::litres(v)); }, 8, 70);
}

TEST_CASE("the example thread runs through the numbers that its words name") {
    const card::LossFinder finder;
    const card::LossScales formula(finder);
    const card::ClassBox box = card::class_box();
    const card::FoundLoss found = card::found_loss(finder, box);
    const card::Nomogram drawn = formula.drawn(box, units::System::metric, english());
    REQUIRE(drawn.threads.size() == 2);
    const auto at = [&](const card::Nomogram::Thread& thread, std::size_t scale) {
        return crossing(drawn.scales[thread.from].across, thread.from_at, drawn.scales[thread.to].across, thread.to_at,
                        drawn.scales[scale].across);
    };
    CHECK(near_abs(at(drawn.threads[0], card::LossScales::turn), drawn.threads[1].from_at, 1e-9));
    const units::HeatLoss exact = finder.loss(found.number, box.after, box.water);
    CHECK(near_abs(at(drawn.threads[1], card::LossScales::losses), formula.loss_at(exact), 1e-9));
    CHECK(found.loss >= exact);
}
