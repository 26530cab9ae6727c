// SPDX-License-Identifier: MIT
#include "support/people_larder.hpp"

#include "trip/shape_mass.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <string_view>

namespace holdwater::support {
namespace {

const double kg_in_litre = trip::density_for_check.si() / 1000;

struct Span {
    double low;
    double high;
};

/// How pieces of kinds with that beginning look, in mm, and how done people want them.
struct Look {
    std::string_view beginning;
    std::string_view shape;
    Span thickness;
    Span width;
    Span length;
    Span target;
    double bone_in_hundred = 0;
};

// The longest beginning that fits counts; several of the same: one of them. The sizes are those of shops and butchers.
constexpr std::array looks{
    Look{"beef", "block", {55, 90}, {100, 150}, {140, 240}, {56, 62}},
    Look{"beef", "slab", {25, 45}, {90, 150}, {150, 240}, {55, 60}},
    Look{"beef-brisket", "block", {40, 65}, {120, 180}, {200, 290}, {60, 66}},
    Look{"beef-chuck", "block", {50, 85}, {100, 160}, {150, 250}, {58, 64}},
    Look{"beef-short-rib", "block", {38, 50}, {50, 65}, {100, 150}, {60, 65}, 70},
    Look{"beef-tenderloin", "round", {48, 66}, {}, {180, 300}, {55, 60}},
    Look{"beef-flank", "slab", {15, 24}, {130, 180}, {220, 320}, {56, 60}},
    Look{"beef-inside-skirt", "slab", {12, 20}, {90, 130}, {200, 350}, {56, 60}},
    Look{"beef-outside-skirt", "slab", {12, 20}, {90, 130}, {200, 350}, {56, 60}},
    Look{"beef-top-loin", "slab", {22, 44}, {90, 120}, {160, 240}, {55, 59}},
    Look{"beef-rib-eye", "slab", {22, 48}, {110, 140}, {130, 190}, {55, 60}, 20},
    Look{"veal", "block", {45, 70}, {90, 140}, {130, 220}, {60, 65}},
    Look{"veal", "slab", {15, 30}, {90, 130}, {120, 170}, {60, 64}},
    Look{"lamb", "block", {50, 80}, {90, 140}, {130, 220}, {57, 65}, 15},
    Look{"lamb-rib", "slab", {25, 40}, {70, 100}, {130, 220}, {57, 63}, 80},
    Look{"lamb-loin", "slab", {22, 40}, {70, 90}, {80, 120}, {57, 63}, 30},
    Look{"goat", "block", {45, 70}, {90, 130}, {120, 200}, {62, 68}, 15},
    Look{"bison", "slab", {25, 45}, {90, 130}, {140, 200}, {58, 64}},
    Look{"elk", "round", {45, 75}, {}, {180, 280}, {60, 66}},
    Look{"moose", "block", {50, 80}, {90, 140}, {140, 220}, {60, 68}},
    Look{"venison", "round", {40, 70}, {}, {150, 260}, {58, 66}},
    Look{"rabbit", "slab", {22, 40}, {70, 110}, {140, 220}, {65, 72}, 60},
    Look{"wild", "slab", {18, 30}, {70, 100}, {110, 160}, {63, 70}},
    Look{"bear", "block", {50, 70}, {90, 130}, {140, 200}, {66, 72}},
    Look{"pork-loin", "round", {65, 100}, {}, {200, 320}, {60, 65}},
    Look{"pork-leg", "block", {60, 90}, {100, 140}, {140, 220}, {62, 68}},
    Look{"pork-tenderloin", "round", {42, 62}, {}, {200, 290}, {60, 64}},
    Look{"pork-shoulder", "block", {55, 90}, {100, 150}, {140, 240}, {62, 70}, 10},
    Look{"pork-chop", "slab", {16, 34}, {90, 110}, {110, 160}, {60, 65}, 40},
    Look{"pork-belly", "slab", {28, 48}, {110, 160}, {160, 240}, {62, 72}},
    Look{"pork-spareribs", "slab", {18, 30}, {110, 150}, {200, 320}, {63, 70}, 100},
    Look{"pork-liver", "slab", {14, 24}, {100, 140}, {140, 200}, {64, 72}},
    Look{"chicken-breast", "slab", {20, 36}, {70, 100}, {140, 180}, {62, 70}},
    Look{"chicken-thigh", "slab", {16, 28}, {70, 90}, {90, 140}, {66, 74}, 40},
    Look{"turkey", "block", {45, 80}, {90, 130}, {150, 230}, {63, 72}, 10},
    Look{"duck", "slab", {20, 32}, {80, 110}, {140, 180}, {60, 68}},
    Look{"goose", "slab", {25, 42}, {90, 120}, {160, 220}, {62, 70}},
    Look{"salmon", "slab", {20, 36}, {80, 130}, {130, 240}, {58, 65}},
    Look{"mackerel", "slab", {14, 22}, {60, 80}, {150, 220}, {62, 66}},
    Look{"herring", "slab", {8, 14}, {50, 70}, {150, 200}, {62, 66}},
    Look{"mussels", "ball", {34, 42}, {}, {}, {75, 90}},
    Look{"eggs", "ball", {42, 48}, {}, {}, {63, 70}},
    Look{"potato", "ball", {42, 66}, {}, {}, {80, 90}},
    Look{"beetroot", "ball", {50, 75}, {}, {}, {80, 88}},
    Look{"onion", "ball", {50, 70}, {}, {}, {80, 88}},
    Look{"carrot", "round", {20, 34}, {}, {130, 190}, {80, 88}},
    Look{"sweetcorn", "round", {40, 52}, {}, {160, 200}, {78, 86}},
    Look{"sweet-potato", "round", {45, 65}, {}, {120, 180}, {80, 88}},
};

/// Fish fillets, and a bag of anything.
constexpr Look fillet{"", "slab", {14, 30}, {70, 110}, {140, 230}, {61, 66}};
constexpr Look bagful{"", "slab", {30, 60}, {150, 200}, {200, 260}, {65, 72}};

Look look_of(Chance& chance, const facts::FoodKind& kind) {
    if (kind.category == facts::Category::cooked_dish) {
        return bagful;
    }
    std::size_t longest = 0;
    for (const Look& look : looks) {
        if (kind.key.starts_with(look.beginning)) {
            longest = std::max(longest, look.beginning.size());
        }
    }
    std::vector<Look> fitting;
    for (const Look& look : looks) {
        if (look.beginning.size() == longest && kind.key.starts_with(look.beginning)) {
            fitting.push_back(look);
        }
    }
    return fitting.empty() ? fillet : chance.of(fitting);
}

double litres_of(const Bought& food) {
    using std::numbers::pi;
    const double t = food.thickness.value / 100;  // dm
    const double w = food.width ? food.width->value / 100 : t;
    const double l = food.length ? food.length->value / 100 : t;
    return food.shape == "ball" ? pi / 6 * t * t * t : food.shape == "round" ? pi / 4 * t * t * l : t * w * l;
}

std::string cut_of(Chance& chance, const facts::FoodKind& kind, std::string_view shape) {
    using facts::Category;
    if (kind.category != Category::red_meat && kind.category != Category::poultry &&
        kind.category != Category::farmed_game) {
        return "intact";
    }
    if (shape == "round" && chance.in_hundred(45)) {
        return chance.in_hundred(75) ? "tied" : chance.in_hundred(50) ? "rolled" : "stuffed";
    }
    constexpr std::array odd{"tenderised", "injected", "minced", "rolled"};
    return chance.in_hundred(10) ? chance.of(odd) : "intact";
}

/// As somebody would call it: no two kinds alike, and short enough for a card.
std::string called(Chance& chance, const facts::FoodKind& kind) {
    constexpr std::array before{"", "", "", "Sunday ", "the big ", "farm ", "Nan's ", "club "};
    std::string plain = kind.key;
    std::replace(plain.begin(), plain.end(), '-', ' ');
    return chance.of(before) + plain;
}

int pieces_for(const Bought& food, int people, double each_kg, double room_l) {
    const double one_l = food.mass.value / kg_in_litre;
    const double wanted = std::ceil(people * each_kg / food.mass.value);
    const double most = std::floor(room_l / one_l);
    return static_cast<int>(std::clamp(std::min(wanted, most), 1.0, 100.0));
}

}  // namespace

double Bought::litres() const {
    return mass.value / kg_in_litre * pieces;
}

Bought buy(Chance& chance, const Pen& pen, const facts::FoodKind& kind, int people, double room_l, bool steak,
           bool hot) {
    const Look look = steak ? Look{"", "slab", {22, 42}, {90, 130}, {140, 220}, {54, 60}} : look_of(chance, kind);
    Bought food;
    food.kind = kind.key;
    food.name = called(chance, kind);
    food.shape = look.shape;
    food.thickness = pen.length(chance.between(look.thickness.low, look.thickness.high));
    if (food.shape == "slab" || food.shape == "block") {
        food.width = pen.length(chance.between(look.width.low, look.width.high));
    }
    if (food.shape != "ball") {
        food.length = pen.length(chance.between(look.length.low, look.length.high));
    }
    // A kitchen scale and a tape: mostly within a tenth of one another, sometimes further out, as with a bone.
    const double off = chance.in_hundred(85) ? chance.between(0.9, 1.1) : chance.between(0.75, 1.25);
    food.mass = pen.mass(std::max(0.03, litres_of(food) * kg_in_litre * off));
    food.pieces = pieces_for(food, people, chance.between(0.14, 0.26), room_l);
    food.bone = chance.in_hundred(look.bone_in_hundred);
    food.cut = steak || hot ? "intact" : cut_of(chance, kind, food.shape);
    food.use = steak ? "steak" : hot ? "keep-hot" : "";
    food.start_c = hot                     ? chance.stepped(70, 95, 1)
                   : chance.in_hundred(80) ? chance.stepped(2, 8, 1)
                                           : chance.stepped(8, 18, 1);
    // Most people hold to what their rules ask; one in four writes what their steak at home has.
    food.target_c = chance.in_hundred(75) ? std::max(look.target.low, 60.0) : look.target.low;
    food.target_c = std::round(chance.between(food.target_c, std::max(food.target_c, look.target.high)));
    food.tolerance_k = chance.stepped(1, 5, 0.5);
    return food;
}

const facts::FoodKind& kind_like(Chance& chance, const std::vector<std::string>& beginnings) {
    const std::string& beginning = chance.of(beginnings);
    std::vector<const facts::FoodKind*> fitting;
    for (const facts::FoodKind& kind : facts::facts().foods()) {
        if (kind.key.starts_with(beginning)) {
            fitting.push_back(&kind);
        }
    }
    return fitting.empty() ? *std::begin(facts::facts().foods()) : *chance.of(fitting);
}

}  // namespace holdwater::support
