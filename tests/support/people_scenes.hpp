// SPDX-License-Identifier: MIT
// Who cooks outdoors in a box, when and with what: the days that a random trip is one of.
#pragma once

#include <span>
#include <string>
#include <vector>

namespace holdwater::support {

struct Range {
    double low;
    double high;
};

struct Scene {
    std::string who;                 // in the name of the trip
    std::vector<std::string> rules;  // drawn from, so that twice is twice as likely
    Range people;
    double at_risk = 0;               // in a hundred
    Range altitude;                   // [m]
    Range coldest;                    // air of the night, over the year that they go out in [C]
    Range rise;                       // how much warmer the day is than the night [K]
    Range from;                       // hour of the day
    Range lasts;                      // hours until the meal
    std::vector<std::string> larder;  // beginnings of kinds
    std::vector<std::string> boxes;   // names on the shelf
    std::vector<std::string> fuels;
    Range pots;
    Range pot;          // [L]
    double blind = 0;   // in a hundred without a thermometer
    double steaks = 0;  // in a hundred: as steaks
    double hot = 0;     // in a hundred: cooked before and only kept hot
    double two_boxes = 0;
    double sittings = 0;
};

std::span<const Scene> scenes();

/// A box as it stands in the shop or the shed.
struct ShelfBox {
    std::string name;
    double length, width, depth;  // inside [mm]
    double loss;                  // lid closed, still air, usual make of that size [W/K]

    double litres() const { return length * width * depth / 1e6; }
};

std::span<const ShelfBox> shelf();
const ShelfBox& on_shelf(const std::string& name);

}  // namespace holdwater::support
