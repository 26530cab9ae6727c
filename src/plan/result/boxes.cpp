// SPDX-License-Identifier: MIT
#include "plan/result/boxes.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace holdwater::plan {

std::vector<trip::Trip> one_trip_a_box(const trip::Trip& trip) {
    if (trip.boxes.size() < 2) {
        return {trip};
    }
    units::Volume water;
    for (const trip::Box& box : trip.boxes) {
        water += box.water;
    }
    std::vector<trip::Trip> parts;
    int left = trip.fire.pots;
    for (std::size_t i = 0; i < trip.boxes.size(); ++i) {
        trip::Trip part = trip;
        part.boxes = {trip.boxes[i]};
        part.whole_fire = trip.fire;
        if (i > 0) {
            part.hot_water.clear();  // once, beside the first box
        }
        part.name = trip.name + " · " + trip.boxes[i].name;
        const auto in_another = [&](const trip::Food& food) { return food.box != trip.boxes[i].name; };
        std::copy_if(part.foods.begin(), part.foods.end(), std::back_inserter(part.elsewhere), in_another);
        std::erase_if(part.foods, in_another);
        const int after = static_cast<int>(trip.boxes.size() - i - 1);  // boxes that still need a pot
        if (trip.fire.pots > after + static_cast<int>(i)) {
            const int share = static_cast<int>(std::lround(trip.fire.pots * (trip.boxes[i].water / water)));
            part.fire.pots = after == 0 ? left : std::clamp(share, 1, left - after);
            left -= part.fire.pots;
        } else {
            part.fire.usable = trip.fire.usable / static_cast<double>(trip.boxes.size());
        }
        parts.push_back(std::move(part));
    }
    return parts;
}

void share_latest_fire(std::vector<Plan>& plans) {
    for (const Plan& one : plans) {
        for (Plan& other : plans) {
            other.fill.latest_fire = std::min(other.fill.latest_fire, one.fill.latest_fire);
        }
    }
}

}  // namespace holdwater::plan
