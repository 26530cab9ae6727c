// SPDX-License-Identifier: MIT
// [fire], [sleep], [journey], [[hot_water]], [[side]] and [[what_if]]: what goes on around box and food.
#include "trip/parts.hpp"
#include "units/nearest.hpp"

#include <fmt/format.h>

namespace holdwater::trip {

void read_fire(Table& table, Fire& fire) {
    std::string kit;  // whose values stand in this table by now
    table.text("use", kit, Need::optional);
    table.count("pots", fire.pots, ranges::pots);
    table.quantity("pot", fire.pot, ranges::pot);
    fire.usable = limit<units::Fraction>(ranges::usable.example).si();
    table.share("usable", fire.usable, ranges::usable, Need::optional);
    table.quantity("boils_in", fire.boils_in, ranges::boils_in);
    const bool has_fuel = table.choice("fuel", fire.fuel);
    double moisture = 0;
    if (table.share("moisture", moisture, ranges::moisture, Need::optional)) {
        fire.moisture = moisture;
    }
    if (has_fuel && fire.fuel != facts::Fuel::wood && table.has("moisture")) {
        table.warning("moisture", "key-unused",
                      fmt::format("moisture is not used: the fuel is {}", facts::to_name(fire.fuel)),
                      "only wood has one; leave it out");
        fire.moisture.reset();
    }
    table.quantity("cold_water", fire.cold_water, ranges::cold_water);
    table.finish();
}

void read_sleep(Table& table, Sleep& sleep) {
    const bool has_from = table.clock("from", sleep.from);
    const bool has_to = table.clock("to", sleep.to);
    table.finish();
    if (!has_from || !has_to) {
        return;
    }
    if (sleep.from == sleep.to) {
        table.error("to", "sleep-empty", "to: the same time as from",
                    "from is bedtime, to is when someone gets up; without a night leave [sleep] out");
        return;
    }
    constexpr int day = 86400;
    const int length = (sleep.to.second_of_day - sleep.from.second_of_day + day) % day;
    const units::Duration slept = units::seconds(length);
    if (slept > limit<units::Duration>(ranges::odd_sleep.high)) {
        table.warning("to", "sleep-long", fmt::format("to: {:.3g} h of sleep is long", units::in_hours(slept)),
                      "from is bedtime, to is when someone gets up: are they swapped?");
    }
}

namespace {

/// The name of one of the trip's boxes, or the loss of another.
void read_journey_box(Table& table, const std::vector<Box>& boxes, Journey& journey) {
    std::string written;
    if (!table.text("box", written, Need::optional)) {
        return;
    }
    std::vector<std::string_view> names;
    for (const Box& box : boxes) {
        if (!box.name.empty()) {
            names.push_back(box.name);
        }
        if (!box.name.empty() && box.name == written) {
            journey.box = box;
            return;
        }
    }
    if (written.find_first_of("0123456789") == written.find_first_not_of(" \t+-.,")) {
        if (const auto loss =
                quantity_in<units::HeatLoss>(written, "box", ranges::loss, table.place("box"), table.report())) {
            journey.box = *loss;
        }
        return;
    }
    const auto near = units::nearest(quoted(written), names);
    table.error("box", "box-unknown", fmt::format("box: no [[box]] is named \"{}\"", quoted(written)),
                near ? fmt::format("did you mean \"{}\"?", *near)
                     : fmt::format("{}or its loss, such as box = \"{}\", or leave it out",
                                   names.empty() ? "" : "one of " + listed(names) + ", ", ranges::loss.example));
}

}  // namespace

void read_journey(Table& table, const std::vector<Box>& boxes, Journey& journey) {
    table.quantity("takes", journey.takes, ranges::journey);
    table.quantity("air", journey.air, ranges::air);
    read_journey_box(table, boxes, journey);
    table.finish();
}

void read_hot_water(Table& table, HotWater& water) {
    water.place = table.place();
    table.name("name", water.name);
    const bool all = table.has("volume");
    const bool each = table.has("per_person");
    if (all && each) {
        table.error("per_person", "key-unused", "volume and per_person are both given", "one of the two");
    } else if (!all && !each) {
        table.missing("volume or per_person", "such as per_person = \"0.4 L\"");
    }
    table.quantity("volume", water.volume, ranges::hot_water, Need::optional);
    water.per_person = table.quantity("per_person", water.volume, ranges::hot_water_each, Need::optional);
    if (units::LocalTime at; table.has("at") && table.moment("at", at)) {
        water.at = at;
    }
    table.finish();
}

void read_side(Table& table, Side& side) {
    table.name("name", side.name);
    table.quantity("takes", side.takes, ranges::side);
    table.finish();
}

void read_what_if(Table& table, WhatIf& what_if) {
    table.name("name", what_if.name);
    table.quantity("colder", what_if.colder, ranges::colder);
    table.quantity("later", what_if.later, ranges::later);
    table.quantity("fire_out", what_if.fire_out, ranges::fire_out);
    if (!table.has("colder") && !table.has("later") && !table.has("fire_out")) {
        table.missing("colder, later or fire_out", "say what goes otherwise, such as colder = \"8 K\"");
    }
    table.finish();
}

}  // namespace holdwater::trip
