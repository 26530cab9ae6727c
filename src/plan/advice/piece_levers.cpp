// SPDX-License-Identifier: MIT
// Changes of the pieces: how thick, how many at once, and how they lie.
#include "facts/facts.hpp"
#include "plan/advice/lever.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

namespace holdwater::plan {
namespace {

using trip::Food;
using trip::Trip;
using Kind = Lever::Kind;

int most_parts() {
    return static_cast<int>(facts::facts().value("mend.parts"));
}

/// A bone is not cut through, and what is rolled or stuffed falls apart.
bool can_be_split(const Food& food) {
    return !food.bone && food.cut != facts::Cut::rolled && food.cut != facts::Cut::stuffed;
}

/// Whole millimetres, never under what the part is.
units::Length part_of(units::Length thickness, int parts) {
    return units::millimetres(std::ceil(units::in_millimetres(thickness) / parts - 1e-9));
}

/// The fewest equal parts of which none is thicker than `cap`; nothing where they would be too thin or too many.
int parts_for(const Food& food, units::Length cap) {
    for (int parts = 1; can_be_split(food) && parts <= most_parts(); ++parts) {
        const units::Length part = part_of(food.thickness, parts);
        if (parts > 1 && units::in_millimetres(part) < facts::facts().value("mend.thinnest")) {
            break;
        }
        if (part <= cap) {
            return parts;
        }
    }
    return 1;
}

/// Cut through the thickness into equal slices; of a round or a ball they are flat pieces.
void split(Food& food, int parts) {
    if (parts < 2) {
        return;
    }
    if (food.shape == facts::Shape::round || food.shape == facts::Shape::ball) {
        // As wide as all slices are in the mean, so that size and mass agree.
        using std::numbers::pi;
        const bool ball = food.shape == facts::Shape::ball;
        food.width = units::millimetres(
            std::round(units::in_millimetres(food.thickness) * (ball ? std::sqrt(pi / 6.0) : pi / 4.0)));
        food.length = ball ? food.width : food.length;
        food.shape = facts::Shape::slab;
        food.contact_given = true;  // as the roll or ball lay: another shape must not change it unsaid
    }
    food.thickness = part_of(food.thickness, parts);
    // To the gram, up: the parts are no lighter than the piece.
    food.mass = units::Mass{std::ceil(food.mass.si() * 1000.0 / parts - 1e-6) / 1000.0};
    food.pieces *= parts;
}

/// Every thickness to which splitting can bring the thickest food, the largest first.
std::vector<units::Length> caps_of(const Trip& trip) {
    std::set<double> caps;
    for (const Food& food : trip.foods) {
        for (int parts = 2; can_be_split(food) && parts <= most_parts(); ++parts) {
            const units::Length part = part_of(food.thickness, parts);
            if (units::in_millimetres(part) >= facts::facts().value("mend.thinnest")) {
                caps.insert(part.si());
            }
        }
    }
    std::vector<units::Length> falling;
    for (auto cap = caps.rbegin(); cap != caps.rend(); ++cap) {
        falling.push_back(units::Length{*cap});
    }
    return falling;
}

void add_split(const Trip& trip, std::vector<Lever>& levers) {
    const std::vector<units::Length> caps = caps_of(trip);
    if (caps.empty()) {
        return;
    }
    Lever lever;
    lever.kind = Kind::split;
    lever.rises = false;  // many flat pieces take more room
    lever.steps = static_cast<int>(caps.size());
    lever.a_step = facts::facts().value("bend.split");
    lever.pull = [caps](Trip& t, int step) {
        for (Food& food : t.foods) {
            split(food, parts_for(food, caps[static_cast<std::size_t>(step - 1)]));
        }
    };
    lever.words = [](const Trip& before, const Trip& after) {
        std::string text;
        for (const Food& food : after.foods) {
            const auto own = std::find_if(before.foods.begin(), before.foods.end(),
                                          [&food](const Food& f) { return f.name == food.name; });
            if (own == before.foods.end() || own->thickness <= food.thickness) {
                continue;
            }
            const double parts = std::round(own->mass / food.mass);
            text += fmt::format("{}thickness = \"{}\"{} ({}: split into {:.0f})", text.empty() ? "" : ", ",
                                written(food.thickness), before.foods.size() > 1 ? " for " + food.name : "",
                                own->pieces == 1 ? "the piece" : "each piece", parts);
        }
        return text;
    };
    levers.push_back(std::move(lever));
}

void add_baths(const Trip& trip, std::vector<Lever>& levers) {
    int most = 1;
    for (const Food& food : trip.foods) {
        most = std::max(most, food.pieces * (can_be_split(food) ? most_parts() : 1));  // one piece may be cut first
    }
    Lever lever;
    lever.kind = Kind::baths;
    lever.steps = std::min(most, static_cast<int>(facts::facts().value("mend.baths"))) - 1;
    lever.a_step = facts::facts().value("bend.bath");
    lever.pull = [](Trip& t, int step) {
        for (Food& food : t.foods) {
            food.pieces = (food.pieces + step) / (step + 1);
        }
    };
    lever.words = [](const Trip& before, const Trip& after) {
        std::string text;
        for (const Food& food : after.foods) {
            text += fmt::format("{}pieces = {}{}", text.empty() ? "" : ", ", food.pieces,
                                before.foods.size() > 1 ? " for " + food.name : "");
        }
        return text + " at once (the others in another bath after this one)";
    };
    if (lever.steps > 0) {
        levers.push_back(std::move(lever));
    }
}

}  // namespace

void add_piece_levers(const Trip& trip, std::vector<Lever>& levers) {
    add_split(trip, levers);
    add_baths(trip, levers);
    const auto lies = [](const Food& food) { return food.contact != facts::Contact::free; };
    if (std::any_of(trip.foods.begin(), trip.foods.end(), lies)) {
        Lever lever;
        lever.kind = Kind::free;
        lever.at_once = facts::facts().value("bend.free");
        lever.pull = [lies](Trip& t, int) {
            for (Food& food : t.foods) {
                if (lies(food)) {
                    food.contact = facts::Contact::free;
                    food.contact_given = true;
                }
            }
        };
        lever.words = [](const Trip&, const Trip&) {
            return std::string("contact = \"free\" (keep the pieces apart and off the bottom)");
        };
        levers.push_back(std::move(lever));
    }
}

}  // namespace holdwater::plan
