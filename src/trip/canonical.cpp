// SPDX-License-Identifier: MIT
#include "trip/read_trip.hpp"

#include <fmt/format.h>

#include <cmath>

namespace holdwater::trip {
namespace {

/// Nine digits: finer than anything that a user can mean, coarser than the last bits of a change of units.
std::string digits(double value) {
    const std::string text = fmt::format("{:.9g}", value);
    return text == "-0" ? "0" : text;
}

/// A temperature near 0 C has lost its last bits in a sum, so that its places are counted and not its digits.
std::string places(double value) {
    return digits(std::round(value * 1e6) / 1e6);
}

std::string si(units::Length v) {
    return fmt::format("\"{} m\"", digits(v.si()));
}
std::string si(units::Volume v) {
    return fmt::format("\"{} L\"", digits(units::in_litres(v)));
}
std::string si(units::Mass v) {
    return fmt::format("\"{} kg\"", digits(v.si()));
}
std::string si(units::Duration v) {
    return fmt::format("\"{} s\"", digits(v.si()));
}
std::string si(units::Temperature v) {
    return fmt::format("\"{} C\"", places(v.celsius()));
}
std::string si(units::TemperatureDifference v) {
    return fmt::format("\"{} K\"", places(v.si()));
}
std::string si(units::HeatLoss v) {
    return fmt::format("\"{} W/K\"", digits(v.si()));
}
std::string si(units::Diffusivity v) {
    return fmt::format("\"{} m2/s\"", digits(v.si()));
}
std::string si(units::Conductivity v) {
    return fmt::format("\"{} W/m/K\"", digits(v.si()));
}
std::string si(units::ThermalResistance v) {
    return fmt::format("\"{} m2 K/W\"", digits(v.si()));
}

std::string si(units::ClockTime v) {
    const int s = v.second_of_day;
    // Quoted times have no seconds; one that was written bare, with seconds, stays so.
    return s % 60 == 0 ? fmt::format("\"{:02}:{:02}\"", s / 3600, s / 60 % 60)
                       : fmt::format("{:02}:{:02}:{:02}", s / 3600, s / 60 % 60, s % 60);
}

std::string text(std::string_view v) {
    std::string out = "\"";
    for (const char c : v) {
        if (c == '"' || c == '\\') {
            out += '\\';
        }
        out += c;
    }
    return out + "\"";
}

class Writer {
  public:
    void head(std::string_view heading) { out_ += fmt::format("{}{}\n", out_.empty() ? "" : "\n", heading); }
    void line(std::string_view key, std::string_view value) { out_ += fmt::format("{} = {}\n", key, value); }
    void truth(std::string_view key, bool value) { line(key, value ? "true" : "false"); }
    void remark(std::string_view words) { out_ += fmt::format("# {}\n", words); }
    template <class Q>
    void maybe(std::string_view key, const std::optional<Q>& value) {
        if (value) {
            line(key, si(*value));
        }
    }
    std::string take() && { return std::move(out_); }

  private:
    std::string out_;
};

template <class Enum>
std::string name(Enum value) {
    return text(facts::to_name(value));
}

void write(const Food& food, Writer& out) {
    out.head("[[food]]");
    out.line("name", text(food.name));
    out.line("kind", text(food.kind));
    if (const auto& c = food.composition) {
        out.line("composition",
                 fmt::format("{{ water = {}, protein = {}, fat = {}, carbohydrate = {}, fibre = {}, ash = {} }}",
                             digits(c->water), digits(c->protein), digits(c->fat), digits(c->carbohydrate),
                             digits(c->fibre), digits(c->ash)));
    }
    out.maybe("diffusivity", food.properties.diffusivity);
    out.maybe("conductivity", food.properties.conductivity);
    if (food.use != facts::Use::cook) {
        out.line("use", name(food.use));
    }
    out.line("cut", name(food.cut));
    out.line("shape", name(food.shape));
    out.line("thickness", si(food.thickness));
    out.maybe("width", food.width);
    out.maybe("length", food.length);
    out.line("mass", si(food.mass));
    out.line("pieces", fmt::format("{}", food.pieces));
    out.line("start", si(food.start));
    if (food.use != facts::Use::keep_hot) {
        out.line("target", si(food.target));
        out.line("tolerance", si(food.tolerance));
    }
    if (food.contact_given) {
        out.line("contact", name(food.contact));
    } else {
        out.remark(fmt::format("contact, not given: {}", facts::to_name(food.contact)));
    }
    out.truth("bone", food.bone);
    if (food.over_fire) {
        out.truth("over_fire", true);
    }
    const auto* const bag = std::get_if<facts::Bag>(&food.bag);
    out.line("bag", bag != nullptr ? name(*bag) : si(std::get<units::ThermalResistance>(food.bag)));
    if (!food.box.empty()) {
        out.line("box", text(food.box));
    }
    for (const auto& [key, moment] : {std::pair{"in", &food.in}, std::pair{"out", &food.out}}) {
        if (*moment) {
            out.line(key, (*moment)->iso());
        }
    }
}

void write(const Box& box, Writer& out) {
    out.head("[[box]]");
    if (!box.name.empty()) {
        out.line("name", text(box.name));
    }
    out.line("inside", fmt::format("[{}, {}, {}]", si(box.inside[0]), si(box.inside[1]), si(box.inside[2])));
    out.line("water", si(box.water));
    out.line("thermometer", box.thermometer ? si(*box.thermometer) : text("none"));
    out.truth("wax", box.wax_tell_tale);
    if (const auto* const loss = std::get_if<units::HeatLoss>(&box.test)) {
        out.line("loss", si(*loss));
    } else if (const auto* const readings = std::get_if<std::vector<BoxReading>>(&box.test)) {
        std::string list;
        for (const BoxReading& one : *readings) {
            list += fmt::format("{}{{ after = {}, bath = {} }}", list.empty() ? "" : ", ", si(one.after), si(one.bath));
        }
        out.line("reading_error", si(box.reading_error));
        out.line("test", fmt::format("[{}]", list));
        out.line("test_outside", si(box.test_outside));
        out.line("test_water", si(box.test_water));
    }
    out.truth("prewarmed", box.prewarmed);
}

void write(const Weather& weather, Writer& out) {
    out.head("[weather]");
    out.line("wind", name(weather.wind));
    std::string list;
    const auto add = [&](std::string_view at, units::Temperature air) {
        list += fmt::format("{}{{ at = {}, air = {} }}", list.empty() ? "" : ", ", at, si(air));
    };
    if (const auto* const daily = std::get_if<std::vector<Weather::Daily>>(&weather.hours)) {
        for (const auto& hour : *daily) {
            add(si(hour.at), hour.air);
        }
    } else {
        for (const auto& hour : std::get<std::vector<Weather::Dated>>(weather.hours)) {
            add(hour.at.iso(), hour.air);
        }
    }
    out.line("hours", fmt::format("[{}]", list));
}

void write(const Fire& fire, Writer& out) {
    out.head("[fire]");
    out.line("pots", fmt::format("{}", fire.pots));
    out.line("pot", si(fire.pot));
    out.line("usable", fmt::format("\"{} %\"", digits(fire.usable * 100)));
    out.line("boils_in", si(fire.boils_in));
    out.line("fuel", name(fire.fuel));
    if (fire.moisture) {
        out.line("moisture", fmt::format("\"{} %\"", digits(*fire.moisture * 100)));
    }
    out.line("cold_water", si(fire.cold_water));
}

void write_head(const Trip& trip, Writer& out) {
    out.head("[trip]");
    out.line("name", text(trip.name));
    out.line("people", fmt::format("{}", trip.people));
    out.truth("at_risk", trip.at_risk);
    out.line("altitude", si(trip.altitude));
    out.line("from", trip.from.iso());
    if (trip.light_fire) {
        out.line("light_fire", trip.light_fire->iso());
    }
    std::string sittings;
    for (const units::Duration before : trip.earlier_sittings) {
        sittings += trip.serve.after(-before).iso() + ", ";
    }
    out.line("serve", sittings.empty() ? trip.serve.iso() : "[" + sittings + trip.serve.iso() + "]");
    if (trip.strict) {
        out.truth("strict", true);
    }
    out.line("rules", name(trip.rules));
    out.line("units", text(units::name_of(trip.units)));
    out.line("language", text(trip.language));
}

}  // namespace

std::string canonical(const Box& box) {
    Writer out;
    write(box, out);
    return std::move(out).take();
}

std::string canonical(const Trip& trip) {
    Writer out;
    write_head(trip, out);
    for (const Food& food : trip.foods) {
        write(food, out);
    }
    for (const Box& box : trip.boxes) {
        write(box, out);
    }
    write(trip.weather, out);
    write(trip.fire, out);
    if (trip.sleep) {
        out.head("[sleep]");
        out.line("from", si(trip.sleep->from));
        out.line("to", si(trip.sleep->to));
    }
    if (trip.journey) {
        out.head("[journey]");
        out.line("takes", si(trip.journey->takes));
        out.line("air", si(trip.journey->air));
        if (const auto* const box = std::get_if<Box>(&trip.journey->box)) {
            out.line("box", text(box->name));
        } else if (const auto* const loss = std::get_if<units::HeatLoss>(&trip.journey->box)) {
            out.line("box", si(*loss));
        }
    }
    for (const HotWater& water : trip.hot_water) {
        out.head("[[hot_water]]");
        out.line("name", text(water.name));
        out.line(water.per_person ? "per_person" : "volume", si(water.volume));
        if (water.at) {
            out.line("at", water.at->iso());
        }
    }
    for (const Side& side : trip.sides) {
        out.head("[[side]]");
        out.line("name", text(side.name));
        out.line("takes", si(side.takes));
    }
    for (const WhatIf& what_if : trip.what_ifs) {
        out.head("[[what_if]]");
        out.line("name", text(what_if.name));
        out.maybe("colder", what_if.colder);
        out.maybe("later", what_if.later);
        out.maybe("fire_out", what_if.fire_out);
    }
    return std::move(out).take();
}

}  // namespace holdwater::trip
