// SPDX-License-Identifier: MIT
// The trip as it was understood, readable: the names of the trip file, the units of the cards.
#include "card/basis/basis_parts.hpp"
#include "facts/facts.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <type_traits>
#include <utility>

namespace holdwater::card {
namespace {

using Rows = std::vector<std::vector<Text>>;

class TripTables {
  public:
    TripTables(const trip::Trip& trip, const words::Words& words) : trip_(trip), words_(words) {}

    std::vector<Table> all();

  private:
    void begin(const std::string& title) {
        Table table;
        table.title = title;
        table.column("");
        table.column("");
        tables_.push_back(std::move(table));
    }
    void row(const std::string& key, const Text& value) { tables_.back().row({key, value}); }

    Text of(const units::Amount& v) const { return words_.written(v); }
    Text of(units::Length v) const { return of(units::amount(v, trip_.units)); }
    Text of(units::Volume v) const { return of(units::amount(v, trip_.units, {0.1})); }
    Text of(units::Mass v) const { return of(units::amount(v, trip_.units, {0.1})); }
    Text of(units::Temperature v) const { return of(units::amount(v, trip_.units, {0.1})); }
    Text of(units::TemperatureDifference v) const { return of(units::amount(v, trip_.units, {0.1})); }
    Text of(units::Duration v) const { return units::print(v); }
    Text of(bool v) const { return words_.text(v ? "basis.yes" : "basis.no"); }
    Text of(units::LocalTime v) const {
        return words_.text(fmt::format("deck.day-{}", v.weekday())) + " " + v.date() + " " + v.clock_24();
    }
    static Text of(units::ClockTime v) {
        return fmt::format("{:02}:{:02}", v.second_of_day / 3600, v.second_of_day / 60 % 60);
    }
    Text percent(double share) const { return of(units::significant(share * 100.0, 6, "%")); }
    template <class Enum>
    requires std::is_enum_v<Enum> Text of(Enum v)
    const { return Text(facts::to_name(v)); }
    void list(const std::string& key, const std::vector<Text>& entries);
    template <class Value>
    void maybe(const std::string& key, const std::optional<Value>& value) {
        if (value) {
            row(key, of(*value));
        }
    }

    void head();
    void food(const trip::Food& food);
    void box(const trip::Box& box);
    void weather();
    void fire();
    void rest();

    const trip::Trip& trip_;
    const words::Words& words_;
    std::vector<Table> tables_;
};

/// A row must find room on a sheet, so a long list takes several; of a very long one (a log) the ends are shown.
void TripTables::list(const std::string& key, const std::vector<Text>& entries) {
    constexpr std::size_t a_row = 24;
    constexpr std::size_t shown = 4 * a_row;
    const bool cut = entries.size() > shown;
    Text text;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        if (cut && i == shown / 2) {
            i = entries.size() - shown / 2;
            row("", words_.text("basis.inputs-cut", {{"count", static_cast<int>(entries.size())}}));
        }
        text += (text.empty() ? "" : "; ") + entries[i];
        const std::size_t after = cut && i >= shown / 2 ? i + 1 - (entries.size() - shown) : i + 1;
        if (after % a_row == 0 || i + 1 == entries.size()) {
            row(after <= a_row ? key : "", std::exchange(text, {}));
        }
    }
}

void TripTables::head() {
    begin("trip");
    row("name", plain(trip_.name));
    row("people", fmt::format("{}", trip_.people));
    row("at_risk", of(trip_.at_risk));
    const bool us = units::first_of(trip_.units) == units::System::us;
    row("altitude", of(us ? units::Figure{units::in_inches(trip_.altitude) / 12.0, 0, "ft"}
                          : units::Figure{trip_.altitude.si(), 0, "m"}));
    row("from", of(trip_.first.value_or(trip_.from)));
    if (trip_.light_fire) {
        row("light_fire", of(*trip_.light_fire));
    }
    std::string sittings;
    for (const units::Duration before : trip_.earlier_sittings) {
        sittings += of(trip_.serve.after(-before)) + ", ";
    }
    row("serve", sittings + of(trip_.serve));
    if (trip_.strict) {
        row("strict", "true");
    }
    row("rules", of(trip_.rules));
    row("units", Text(units::name_of(trip_.units)));
    row("language", trip_.language);
}

void TripTables::food(const trip::Food& food) {
    begin("food: " + plain(food.name));
    row("name", plain(food.name));
    row("kind", food.kind);
    if (const auto& c = food.composition) {
        const auto g = [&](double share) { return of(units::significant(share)); };
        row("composition",
            fmt::format("g / 100 g: water {}, protein {}, fat {}, carbohydrate {}, fibre {}, ash {}", g(c->water),
                        g(c->protein), g(c->fat), g(c->carbohydrate), g(c->fibre), g(c->ash)));
    }
    if (food.properties.diffusivity) {
        row("diffusivity", of(units::significant(food.properties.diffusivity->si() * 1e6, 3, "mm²/s")));
    }
    if (food.properties.conductivity) {
        row("conductivity", of(units::significant(food.properties.conductivity->si(), 3, "W/(m\u00A0K)")));
    }
    if (food.use != facts::Use::cook) {
        row("use", of(food.use));
    }
    row("cut", of(food.cut));
    row("shape", of(food.shape));
    row("thickness", of(food.thickness));
    maybe("width", food.width);
    maybe("length", food.length);
    row("mass", of(food.mass));
    row("pieces", fmt::format("{}", food.pieces));
    row("start", of(food.start));
    if (food.use != facts::Use::keep_hot) {
        row("target", of(food.target));
        row("tolerance", of(food.tolerance));
    }
    row("contact",
        food.contact_given ? of(food.contact) : words_.text("basis.inputs-contact", {{"contact", of(food.contact)}}));
    row("bone", of(food.bone));
    const auto* bag = std::get_if<facts::Bag>(&food.bag);
    row("bag", bag != nullptr
                   ? of(*bag)
                   : of(units::significant(std::get<units::ThermalResistance>(food.bag).si(), 6, "m²\u00A0K/W")));
    if (!food.box.empty()) {
        row("box", plain(food.box));
    }
}

void TripTables::box(const trip::Box& box) {
    begin(box.name.empty() ? "box" : "box: " + plain(box.name));
    if (!box.name.empty()) {
        row("name", plain(box.name));
    }
    row("inside", of(box.inside[0]) + " × " + of(box.inside[1]) + " × " + of(box.inside[2]));
    row("water", of(box.water));
    row("thermometer", box.thermometer ? of(*box.thermometer) : words_.text("basis.none"));
    row("wax", of(box.wax_tell_tale));
    if (const auto* loss = std::get_if<units::HeatLoss>(&box.test)) {
        row("loss", of(units::Figure{loss->si(), 2, "W/K"}));
    } else if (const auto* tested = std::get_if<std::vector<trip::BoxReading>>(&box.test)) {
        row("reading_error", of(box.reading_error));
        std::vector<Text> readings;
        for (const trip::BoxReading& one : *tested) {
            readings.push_back(of(one.after) + "\u00A0=\u00A0" + of(one.bath));
        }
        list("test", readings);
        row("test_outside", of(box.test_outside));
        row("test_water", of(box.test_water));
    } else {
        row("loss", words_.text("basis.none"));
    }
    row("prewarmed", of(box.prewarmed));
}

void TripTables::weather() {
    begin("weather");
    row("wind", of(trip_.weather.wind));
    std::vector<Text> hours;
    const auto add = [&](const std::string& at, units::Temperature air) {
        hours.push_back(at + "\u00A0=\u00A0" + of(air));
    };
    if (const auto* daily = std::get_if<std::vector<trip::Weather::Daily>>(&trip_.weather.hours)) {
        for (const auto& hour : *daily) {
            add(of(hour.at), hour.air);
        }
    } else {
        for (const auto& hour : std::get<std::vector<trip::Weather::Dated>>(trip_.weather.hours)) {
            add(of(hour.at), hour.air);
        }
    }
    list("hours", hours);
}

void TripTables::fire() {
    const trip::Fire& fire = trip_.fire;
    begin("fire");
    row("pots", fmt::format("{}", fire.pots));
    row("pot", of(fire.pot));
    row("usable", percent(fire.usable));
    row("boils_in", of(fire.boils_in));
    row("fuel", of(fire.fuel));
    if (fire.moisture) {
        row("moisture", percent(*fire.moisture));
    }
    row("cold_water", of(fire.cold_water));
}

void TripTables::rest() {
    if (trip_.sleep) {
        begin("sleep");
        row("from", of(trip_.sleep->from));
        row("to", of(trip_.sleep->to));
    }
    if (trip_.journey) {
        begin("journey");
        row("takes", of(trip_.journey->takes));
        row("air", of(trip_.journey->air));
        if (const auto* const box = std::get_if<trip::Box>(&trip_.journey->box)) {
            row("box", plain(box->name));
        } else if (const auto* const loss = std::get_if<units::HeatLoss>(&trip_.journey->box)) {
            row("box", of(units::Figure{loss->si(), 2, "W/K"}));
        }
    }
    for (const trip::HotWater& water : trip_.hot_water) {
        begin("hot_water: " + plain(water.name));
        row("name", plain(water.name));
        row(water.per_person ? "per_person" : "volume", of(water.volume));
        if (water.at) {
            row("at", of(*water.at));
        }
    }
    for (const trip::Side& side : trip_.sides) {
        begin("side: " + plain(side.name));
        row("name", plain(side.name));
        row("takes", of(side.takes));
    }
    for (const trip::WhatIf& what : trip_.what_ifs) {
        begin("what_if: " + plain(what.name));
        row("name", plain(what.name));
        maybe("colder", what.colder);
        maybe("later", what.later);
        maybe("fire_out", what.fire_out);
    }
}

std::vector<Table> TripTables::all() {
    head();
    for (const trip::Food& one : trip_.foods) {
        food(one);
    }
    for (const trip::Box& one : trip_.boxes) {
        box(one);
    }
    weather();
    fire();
    rest();
    return std::move(tables_);
}

}  // namespace

std::vector<Table> trip_tables(const trip::Trip& trip, const words::Words& words) {
    return TripTables(trip, words).all();
}

}  // namespace holdwater::card
