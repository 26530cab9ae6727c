// SPDX-License-Identifier: MIT
// Changes of the box, its water and its place, and of the pots.
#include "answer/gauge/box_loss.hpp"
#include "answer/hold/piece.hpp"
#include "facts/facts.hpp"
#include "heat/level.hpp"
#include "plan/advice/lever.hpp"
#include "trip/ranges.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace holdwater::plan {
namespace {

using trip::Box;
using trip::Food;
using trip::Trip;
using Kind = Lever::Kind;

/// Losses are written to so much: finer than any test is good to.
constexpr double loss_step = 0.05;  // W/K

std::string in_box(const Trip& trip, std::size_t index) {
    return trip.boxes.size() > 1 ? " for " + trip.boxes[index].name : std::string{};
}

std::vector<heat::Lying> lying_in(const Trip& trip, const Box& box) {
    std::vector<heat::Lying> foods;
    for (const Food& food : trip.foods) {
        if (trip.boxes.size() < 2 || food.box == box.name) {
            foods.push_back(answer::lying(answer::piece_of(food)));
        }
    }
    return foods;
}

/// The most that goes into the box beside its food without spilling [L, whole].
double most_water(const Trip& trip, const Box& box) {
    units::Volume food;
    for (const heat::Lying& one : lying_in(trip, box)) {
        food += one.volume;
    }
    const units::Volume whole{box.inside[0].si() * box.inside[1].si() * box.inside[2].si()};
    return std::floor(units::in_litres(std::min(heat::room_in(box.inside) - food, whole * trip::ranges::odd_fill)));
}

/// The least that covers the food, or could cover a part of it [L, whole].
double least_water(const Trip& trip, const Box& box) {
    std::vector<heat::Lying> foods = lying_in(trip, box);
    units::Volume food;
    for (const heat::Lying& one : foods) {
        food += one.volume;
    }
    const double level = heat::level_needed(box.inside, foods).si();
    const units::Volume covers{level * box.inside[0].si() * box.inside[1].si() - food.si()};
    constexpr double least = 2.0;  // as trip files have it
    return std::max(least, std::ceil(units::in_litres(covers)));
}

/// Whole litres; 36 L of a file are not quite that in cubic metres.
double whole_down(units::Volume water) {
    return std::floor(units::in_litres(water) + 1e-6);
}
double whole_up(units::Volume water) {
    return std::ceil(units::in_litres(water) - 1e-6);
}

void add_water(const Trip& trip, std::size_t index, std::vector<Lever>& levers) {
    const Box& box = trip.boxes[index];
    const auto words = [index](const Trip& before, const Trip& after) {
        return fmt::format("water = \"{}\"{}", written(after.boxes[index].water), in_box(before, index));
    };
    Lever more;
    more.kind = Kind::more_water;
    more.rises = false;
    more.steps = static_cast<int>(most_water(trip, box) - whole_down(box.water));
    more.a_step = facts::facts().value("bend.water");
    more.pull = [index](Trip& t, int step) {
        t.boxes[index].water = units::litres(whole_down(t.boxes[index].water) + step);
    };
    more.words = words;
    Lever less = more;
    less.kind = Kind::less_water;
    less.steps = static_cast<int>(whole_up(box.water) - least_water(trip, box));
    less.pull = [index](Trip& t, int step) {
        t.boxes[index].water = units::litres(whole_up(t.boxes[index].water) - step);
    };
    for (Lever* lever : {&more, &less}) {
        if (lever->steps > 0) {
            levers.push_back(std::move(*lever));
        }
    }
}

void add_loss(const Trip& trip, std::size_t index, std::vector<Lever>& levers) {
    const Box& box = trip.boxes[index];
    const auto loss = answer::loss_of(box, heat::liner_of(box.inside));
    if (!loss) {
        return;
    }
    const double own = units::round_to(loss->likely.si(), loss_step, units::Toward::up);
    const double least = std::max(loss_step, units::round_to(loss->likely.si() * facts::facts().value("mend.loss"),
                                                             loss_step, units::Toward::up));
    Lever lever;
    lever.kind = Kind::loss;
    lever.steps = static_cast<int>(std::round((own - least) / loss_step));
    constexpr double tenth = 0.1;
    lever.a_step = facts::facts().value("bend.loss") * loss_step / (tenth * loss->likely.si());
    lever.pull = [index, own](Trip& t, int step) {
        t.boxes[index].test = units::HeatLoss{std::round((own - step * loss_step) * 1000.0) / 1000.0};
    };
    lever.words = [index](const Trip& before, const Trip& after) {
        return fmt::format(
            "loss = \"{}\"{} (a better box, or this one wrapped and its lid sealed: measure it with "
            "`holdwater gauge`)",
            written(std::get<units::HeatLoss>(after.boxes[index].test)), in_box(before, index));
    };
    if (lever.steps > 0) {
        levers.push_back(std::move(lever));
    }
}

void add_prewarmed(const Trip& trip, std::vector<Lever>& levers) {
    const auto cold = [](const Box& box) { return !box.prewarmed; };
    if (std::none_of(trip.boxes.begin(), trip.boxes.end(), cold)) {
        return;
    }
    Lever lever;
    lever.kind = Kind::prewarmed;
    lever.at_once = facts::facts().value("bend.prewarmed");
    lever.pull = [](Trip& t, int) {
        for (Box& box : t.boxes) {
            box.prewarmed = true;
        }
    };
    lever.words = [](const Trip&, const Trip&) {
        return std::string("prewarmed = true (warm the box with a hot rinse first)");
    };
    levers.push_back(std::move(lever));
}

void add_wind(const Trip& trip, std::vector<Lever>& levers) {
    Lever lever;
    lever.kind = Kind::wind;
    lever.steps = static_cast<int>(trip.weather.wind);
    lever.a_step = facts::facts().value("bend.wind");
    lever.pull = [](Trip& t, int step) {
        t.weather.wind = static_cast<facts::Wind>(static_cast<int>(t.weather.wind) - step);
    };
    lever.words = [](const Trip&, const Trip& after) {
        return fmt::format("wind = \"{}\" (set the box out of the wind)", facts::to_name(after.weather.wind));
    };
    if (lever.steps > 0) {
        levers.push_back(std::move(lever));
    }
}

void add_pots(const Trip& trip, std::vector<Lever>& levers) {
    Lever lever;
    lever.kind = Kind::pots;
    lever.steps =
        std::min(static_cast<int>(facts::facts().value("mend.pots")), trip::ranges::pots.high - trip.fire.pots);
    lever.a_step = facts::facts().value("bend.pot");
    lever.pull = [](Trip& t, int step) {
        t.fire.pots += step;
        if (t.whole_fire) {
            t.whole_fire->pots += step;
        }
    };
    lever.words = [](const Trip& before, const Trip& after) {
        return fmt::format("pots = {} ({} more of {})", after.fire.pots, after.fire.pots - before.fire.pots,
                           units::print(after.fire.pot, units::System::metric));
    };
    if (lever.steps > 0) {
        levers.push_back(std::move(lever));
    }
}

/// The foods in the order of how hot a bath they ask for and bear: each step puts one more of the coolest into the
/// first box, and all others into a second one like it.
void add_second_box(const Trip& trip, std::vector<Lever>& levers) {
    if (trip.boxes.size() != 1 || trip.foods.size() < 2 || !trip.elsewhere.empty() || trip.whole_fire) {
        return;
    }
    std::vector<std::pair<double, std::string>> order;
    for (const Food& food : trip.foods) {
        order.emplace_back((food.target + food.tolerance).celsius(), food.name);
    }
    std::sort(order.begin(), order.end());
    Lever lever;
    lever.kind = Kind::second_box;
    lever.rises = false;
    lever.steps = static_cast<int>(order.size()) - 1;
    lever.at_once = facts::facts().value("bend.box");
    lever.pull = [order](Trip& t, int step) {
        Box second = t.boxes.front();
        const std::string own = t.boxes.front().name.empty() ? "first box" : t.boxes.front().name;
        t.boxes.front().name = own;
        second.name = own == "second box" ? "other box" : "second box";
        for (Food& food : t.foods) {
            const auto place =
                std::find_if(order.begin(), order.end(), [&food](const auto& one) { return one.second == food.name; });
            food.box = place - order.begin() < step ? own : second.name;
        }
        t.boxes.push_back(std::move(second));
    };
    lever.words = [](const Trip&, const Trip& after) {
        std::string names;
        for (const Food& food : after.foods) {
            if (food.box == after.boxes.back().name) {
                names += (names.empty() ? "" : ", ") + food.name;
            }
        }
        return fmt::format("a second [[box]] like the first, for {}", names);
    };
    levers.push_back(std::move(lever));
}

}  // namespace

void add_box_levers(const Trip& trip, std::vector<Lever>& levers) {
    add_second_box(trip, levers);
    add_prewarmed(trip, levers);
    add_wind(trip, levers);
    for (std::size_t i = 0; i < trip.boxes.size(); ++i) {
        add_water(trip, i, levers);
        add_loss(trip, i, levers);
    }
    add_pots(trip, levers);
}

}  // namespace holdwater::plan
