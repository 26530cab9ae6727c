// SPDX-License-Identifier: MIT
// What only shows when all tables are read. A value that was reported and left at its default is not judged again.
#include "trip/parts.hpp"
#include "trip/shape_mass.hpp"
#include "units/nearest.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace holdwater::trip {
namespace {

/// Where the value of `key` stands in the food or box of that index; where the list stands if it cannot be found.
problem::Place place_in(Table& file, std::string_view list, std::size_t index, std::string_view key) {
    const toml::node* const found = file.node(list);
    const auto* const nodes = found != nullptr ? found->as_array() : nullptr;
    if (nodes == nullptr) {
        return file.place(list);
    }
    std::size_t tables = 0;  // others than tables were reported and have no index
    for (const toml::node& node : *nodes) {
        const auto* const inner = node.as_table();
        if (inner != nullptr && tables++ == index) {
            const toml::node* const value = inner->get(key);
            return file.place(value != nullptr ? *value : *inner);
        }
    }
    return file.place(list);
}

void check_food_names(const Trip& trip, Table& file) {
    for (std::size_t i = 0; i < trip.foods.size(); ++i) {
        const Food& food = trip.foods[i];
        const auto before = trip.foods.begin() + static_cast<std::ptrdiff_t>(i);
        const auto twin = std::find_if(trip.foods.begin(), before, [&](const Food& f) { return f.name == food.name; });
        if (twin != before && !food.name.empty()) {
            file.report().error(place_in(file, "food", i, "name"), "name-twice",
                                fmt::format("a second food is named \"{}\"; the first is in line {}", quoted(food.name),
                                            twin->place.line),
                                "give each its own name, by which the cards tell them apart");
        }
    }
}

/// A food's own times lie within the trip, and the last meal of all is `serve`.
void check_food_times(const Trip& trip, Table& file) {
    bool any_at_serving = trip.foods.empty();
    for (std::size_t i = 0; i < trip.foods.size(); ++i) {
        const Food& food = trip.foods[i];
        const units::LocalTime out = eaten(food, trip);
        any_at_serving = any_at_serving || out >= trip.serve;
        const bool in_within = !food.in || (*food.in >= trip.from && *food.in < trip.serve);
        if (!in_within) {
            file.report().error(
                place_in(file, "food", i, "in"), "food-time",
                fmt::format("in: {} is not within the trip", food.in->iso()),
                fmt::format("from {} until before {}; leave it out for food that goes into the filled bath",
                            trip.from.iso(), trip.serve.iso()));
        }
        if (food.out && (*food.out <= trip.from || *food.out > trip.serve)) {
            file.report().error(
                place_in(file, "food", i, "out"), "food-time",
                fmt::format("out: {} is not within the trip", food.out->iso()),
                fmt::format("after {} and not after serve, {}; leave it out for food that is eaten then",
                            trip.from.iso(), trip.serve.iso()));
        } else if (food.in && in_within && *food.in >= out) {
            file.report().error(place_in(file, "food", i, "in"), "food-time",
                                fmt::format("in: {} is not before the food comes out, {}", food.in->iso(), out.iso()),
                                "in is when it goes into the bath, out when it comes out to be eaten");
        }
    }
    if (!any_at_serving) {
        file.report().error(file.place("food"), "food-time", "every food comes out before the trip's serving time",
                            "serve is the last meal: set it to the latest out");
    }
}

/// Hot water is wanted while there is a fire: after the first moment, and not long after the last meal.
void check_hot_water(const Trip& trip, Table& file) {
    const auto after = limit<units::Duration>(ranges::hot_water_after.high);
    for (std::size_t i = 0; i < trip.hot_water.size(); ++i) {
        const HotWater& water = trip.hot_water[i];
        if (water.at && (*water.at <= trip.from || *water.at > trip.serve.after(after))) {
            file.report().error(place_in(file, "hot_water", i, "at"), "food-time",
                                fmt::format("at: {} is not within the trip", water.at->iso()),
                                fmt::format("after {} and at most {} after serve, {}", trip.from.iso(),
                                            ranges::hot_water_after.high, trip.serve.iso()));
        }
    }
}

void check_box_names(const Trip& trip, Table& file) {
    if (trip.boxes.size() < 2) {
        return;
    }
    for (const Box& box : trip.boxes) {
        if (box.name.empty()) {
            file.report().error(box.place, "box-unnamed", "one of two boxes has no name",
                                "with two boxes each needs a name, such as name = \"blue box\"");
        }
    }
    if (!trip.boxes[0].name.empty() && trip.boxes[0].name == trip.boxes[1].name) {
        file.report().error(place_in(file, "box", 1, "name"), "name-twice",
                            fmt::format("both boxes are named \"{}\"", quoted(trip.boxes[0].name)),
                            "give each its own name");
    }
}

/// With two boxes each food says which one; with one box its name may be said, and is then left out.
void check_food_boxes(Trip& trip, Table& file) {
    std::vector<std::string_view> names;
    for (const Box& box : trip.boxes) {
        if (!box.name.empty()) {
            names.push_back(box.name);
        }
    }
    if (trip.boxes.empty() || (trip.boxes.size() > 1 && names.size() < trip.boxes.size())) {
        return;  // has been said
    }
    for (std::size_t i = 0; i < trip.foods.size(); ++i) {
        Food& food = trip.foods[i];
        if (food.box.empty()) {
            if (trip.boxes.size() > 1) {
                file.report().error(food.place, "food-without-box", "box is missing in [[food]]",
                                    fmt::format("with two boxes each food says which one: {}", listed(names)));
            }
            continue;
        }
        if (std::find(names.begin(), names.end(), food.box) == names.end()) {
            const auto near = units::nearest(quoted(food.box), names);
            file.report().error(place_in(file, "food", i, "box"), "box-unknown",
                                fmt::format("no box is named \"{}\"", quoted(food.box)),
                                near            ? fmt::format("did you mean \"{}\"?", *near)
                                : names.empty() ? std::string("the box has no name; leave box out of [[food]]")
                                                : fmt::format("the boxes are: {}", listed(names)));
        }
        if (trip.boxes.size() == 1) {
            food.box.clear();
        }
    }
}

/// A box without food has nothing to be planned for.
void check_boxes_used(const Trip& trip, Report& report) {
    const auto lies_in = [](const Box& box) { return [&box](const Food& food) { return food.box == box.name; }; };
    const bool all_lie = std::all_of(trip.foods.begin(), trip.foods.end(), [&](const Food& food) {
        return std::any_of(trip.boxes.begin(), trip.boxes.end(), [&](const Box& box) { return lies_in(box)(food); });
    });
    if (trip.boxes.size() < 2 || trip.foods.empty() || !all_lie) {
        return;  // one box has all food; a food that lies nowhere has been named
    }
    for (const Box& box : trip.boxes) {
        if (std::none_of(trip.foods.begin(), trip.foods.end(), lies_in(box))) {
            report.error(box.place, "box-without-food", fmt::format("no food goes into \"{}\"", quoted(box.name)),
                         fmt::format("write box = \"{}\" in a [[food]] that goes into it, or leave this [[box]] out",
                                     quoted(box.name)));
        }
    }
}

/// A piece longer than the box is only warned about: a loin can lie bent or be cut.
void check_piece_fits(const Food& food, const Box& box, Report& report) {
    std::array<double, 3> room{};
    std::transform(box.inside.begin(), box.inside.end(), room.begin(), [](units::Length l) { return l.si(); });
    std::sort(room.begin(), room.end());
    const double t = food.thickness.si();
    const double longest =
        std::max({t, food.width.value_or(food.thickness).si(), food.length.value_or(food.thickness).si()});
    if (room[0] > 0 && (t > room[0] || longest > room[2])) {
        report.warning(food.place, "piece-over-box",
                       fmt::format("a piece {:.0f} mm long and {:.0f} mm thick does not lie straight in a box of "
                                   "{:.0f} x {:.0f} x {:.0f} mm",
                                   longest * 1000, t * 1000, room[2] * 1000, room[1] * 1000, room[0] * 1000),
                       "cut it, or take another box");
    }
}

void check_room(const Trip& trip, const Box& box, Report& report) {
    double food_mass = 0;
    for (const Food& food : trip.foods) {
        if (trip.boxes.size() == 1 || food.box == box.name) {
            food_mass += food.mass.si() * food.pieces;
            check_piece_fits(food, box, report);
        }
    }
    const double room = box.inside[0].si() * box.inside[1].si() * box.inside[2].si();
    const double food_volume = food_mass / density_for_check.si();
    const bool all_read = room > 0 && box.water > units::Volume{} && box.water.si() <= room;
    if (all_read && box.water.si() + food_volume > room) {
        report.error(box.place, "box-too-small",
                     fmt::format("{:.3g} L of water and {:.3g} L of food do not go into a box of {:.3g} L",
                                 units::in_litres(box.water), food_volume * 1000, room * 1000),
                     "less water, less food, or a second box");
    }
}

/// Outside the dated hours the first and last temperature hold on, which over more than some hours is a guess.
void check_weather_covers(const Trip& trip, Report& report) {
    const auto* const dated = std::get_if<std::vector<Weather::Dated>>(&trip.weather.hours);
    if (dated == nullptr || dated->empty() || trip.serve <= trip.from) {
        return;
    }
    const auto most = limit<units::Duration>(ranges::weather_gap.high);
    const units::LocalTime first = dated->front().at;
    const units::LocalTime last = dated->back().at;
    if (first.since(trip.from) > most || trip.serve.since(last) > most) {
        report.warning(trip.weather_place, "weather-short",
                       fmt::format("the dated hours run from {} to {}, the trip from {} to {}", first.iso(), last.iso(),
                                   trip.from.iso(), trip.serve.iso()),
                       "give hours for the whole trip; outside them the nearest one is taken");
    }
}

}  // namespace

void check_together(Trip& trip, Table& file) {
    check_food_names(trip, file);
    if (trip.from < trip.serve) {
        check_food_times(trip, file);
        check_hot_water(trip, file);
    }
    check_box_names(trip, file);
    check_food_boxes(trip, file);
    check_boxes_used(trip, file.report());
    for (const Box& box : trip.boxes) {
        check_room(trip, box, file.report());
    }
    check_weather_covers(trip, file.report());
}

}  // namespace holdwater::trip
