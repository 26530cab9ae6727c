// SPDX-License-Identifier: MIT
#include "card/class/class_gauge.hpp"
#include "card/class/loss_finder.hpp"
#include "facts/facts.hpp"

#include <fmt/format.h>

#include <cmath>
#include <functional>
#include <utility>

namespace holdwater::card {
namespace {

// The ends of the scale of falls: around all numbers of the table.
constexpr double least_fall = 80.0;
constexpr double most_fall = 600.0;
constexpr double poorest_h = 10.0;  // a box with a shorter time constant has an open lid or is none

// Where the first three scales stand. The turning line is half way, so that both of its scales have one length.
constexpr double turn_across = 0.15;
constexpr double hours_across = 2.0 * turn_across;

/// Ticks from `from` to `to`, so far apart; every so many has its figure.
struct Stretch {
    double from;
    double to;
    double step;
    int label_each;
};

std::vector<Nomogram::Tick> ticks_of(std::initializer_list<Stretch> stretches,
                                     const std::function<double(double)>& place) {
    std::vector<Nomogram::Tick> ticks;
    for (const Stretch& part : stretches) {
        const int count = static_cast<int>(std::lround((part.to - part.from) / part.step));
        for (int i = 0; i < count; ++i) {
            const double value = part.from + i * part.step;
            ticks.push_back({place(value), i % part.label_each == 0 ? fmt::format("{:.3g}", value) : ""});
        }
    }
    const double last = (stretches.end() - 1)->to;
    ticks.push_back({place(last), fmt::format("{:.3g}", last)});
    return ticks;
}

/// A decimal mark as the language writes it.
void put_marks(std::vector<Nomogram::Tick>& ticks, const words::Words& words) {
    for (Nomogram::Tick& tick : ticks) {
        if (const std::size_t point = tick.label.find('.'); point != std::string::npos) {
            const auto decimals = static_cast<int>(tick.label.size() - point - 1);
            tick.label = words.written(units::decimal(std::stod(tick.label), decimals));
        }
    }
}

}  // namespace

LossScales::LossScales(const LossFinder& finder)
    : finder_(&finder),
      fall_per_decade_(1.0 / std::log10(LossFinder::longest() / LossFinder::shortest())),
      litres_per_decade_(1.0 / std::log10(finder.capacity(LossFinder::most()) / finder.capacity(LossFinder::least()))),
      // A straight line adds what it crosses in the shares of its way; the losses must count both alike.
      share_(0.5 * fall_per_decade_ / (0.5 * fall_per_decade_ + litres_per_decade_)) {}

double LossScales::fall_at(double fall) const {
    return fall_per_decade_ * std::log10(fall / least_fall);
}
double LossScales::hours_at(units::Duration after) const {
    return fall_per_decade_ * std::log10(LossFinder::longest() / after);
}
double LossScales::turn_at(double fall, units::Duration after) const {
    return 0.5 * (fall_at(fall) + hours_at(after));
}
double LossScales::litres_at(units::Volume water) const {
    return litres_per_decade_ * std::log10(finder_->capacity(water) / finder_->capacity(LossFinder::least()));
}
double LossScales::loss_at(units::HeatLoss loss) const {
    const units::HeatLoss least = finder_->loss(least_fall, LossFinder::longest(), LossFinder::least());
    return share_ * litres_per_decade_ * std::log10(loss / least);
}

double LossScales::across(std::size_t scale) const {
    const double at[] = {0.0, turn_across, hours_across, turn_across + share_ * (1.0 - turn_across), 1.0};
    return at[scale];
}

Nomogram LossScales::drawn(const ClassBox& example, units::System system, const words::Words& words) const {
    constexpr double height_mm = 108.0;
    const bool us = units::first_of(system) == units::System::us;
    Nomogram made;
    made.height_mm = height_mm;
    made.alt = words.text("class-sheets.scales-alt");
    const auto add = [&](std::size_t scale, const char* name, std::vector<Nomogram::Tick> ticks) {
        put_marks(ticks, words);
        made.scales.push_back({words.text(name), across(scale), std::move(ticks)});
    };
    add(falls, "class-sheets.scale-fall",
        ticks_of({{80, 200, 5, 4}, {200, 300, 10, 5}, {300, 600, 20, 5}}, [&](double f) { return fall_at(f); }));
    // A fall of a thousand takes one time constant.
    made.scales.push_back({words.text("class-sheets.scale-turn"),
                           across(turn),
                           {{turn_at(1000.0, units::hours(poorest_h)), words.text("class-sheets.scale-open")}}});
    add(hours, "class-sheets.scale-hours",
        ticks_of({{2, 4, 0.25, 4}, {4, 10, 0.5, 2}, {10, 16, 0.5, 4}},
                 [&](double h) { return hours_at(units::hours(h)); }));
    add(losses, "class-sheets.scale-loss",
        ticks_of({{0.05, 0.1, 0.005, 10},
                  {0.1, 0.2, 0.01, 5},
                  {0.2, 0.5, 0.02, 5},
                  {0.5, 1, 0.05, 5},
                  {1, 2, 0.1, 5},
                  {2, 5, 0.2, 5},
                  {5, 8, 0.5, 6}},
                 [&](double l) { return loss_at(units::HeatLoss{l}); }));
    constexpr double litres_in_quart = 0.946352946;  // exact by definition
    const double scale = us ? litres_in_quart : 1.0;
    const auto water = [&](double shown) { return litres_at(units::litres(shown * scale)); };
    add(litres, us ? "class-sheets.scale-quarts" : "class-sheets.scale-litres",
        us ? ticks_of({{9, 20, 1, 3}, {20, 40, 1, 5}, {40, 70, 2, 5}}, water)
           : ticks_of({{8, 20, 0.5, 4}, {20, 40, 1, 5}, {40, 70, 2, 5}}, water));
    const double fall = found_loss(*finder_, example).number;
    made.threads = {{falls, fall_at(fall), hours, hours_at(example.after)},
                    {turn, turn_at(fall, example.after), litres, litres_at(example.water)}};
    return made;
}

}  // namespace holdwater::card
