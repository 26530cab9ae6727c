// SPDX-License-Identifier: MIT
#include "support/random_trips.hpp"

#include "facts/facts.hpp"
#include "support/trips.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>
#include <stdexcept>
#include <string_view>
#include <vector>

namespace holdwater::support {

namespace {

using facts::Category;
using facts::Shape;

/// Draws that are the same on every machine: the distributions of the standard library need not be.
class Draws {
  public:
    explicit Draws(std::uint64_t number) : engine_(number * 0x9E3779B97F4A7C15ULL + 1) {}

    int whole(int low, int high) {
        return low + static_cast<int>(engine_() % static_cast<std::uint64_t>(high - low + 1));
    }
    double real(double low, double high) {
        return low + (high - low) * static_cast<double>(engine_() >> 11U) / 9007199254740992.0;
    }
    bool one_in(int n) { return whole(1, n) == 1; }
    template <class List>
    const auto& of(const List& list) {
        return list[static_cast<std::size_t>(whole(0, static_cast<int>(std::size(list)) - 1))];
    }

  private:
    std::mt19937_64 engine_;
};

/// What all parts of one trip go by.
struct Frame {
    bool wide = false;  // whatever somebody might try first, sensible or not
    bool overnight = false;
    int people = 0;
    double box_litres = 0.0;
    double box_length = 0.0;  // inside [mm], as the next two
    double box_width = 0.0;
    double box_depth = 0.0;
    double water_litres = 0.0;
    double food_kg = 0.0;  // so far
    int foods = 0;         // so far
    bool spanish = false;
};

/// Names as people give them: short, long, with accents, figures and marks; none holds a quotation mark.
std::string food_name(Draws& draw, const Frame& frame, const facts::FoodKind& kind) {
    static constexpr std::string_view english[] = {"for supper",
                                                   "from the butcher",
                                                   "Loin 2.5",
                                                   "(no. 3)",
                                                   "with herbs & pepper",
                                                   "*best*",
                                                   "of the second day, well trimmed"};
    static constexpr std::string_view spanish[] = {"para la cena", "de la carnicería", "nº 3", "con pimentón y ajo",
                                                   "del segundo día, bien limpio"};
    const std::string_view more = frame.spanish ? draw.of(spanish) : draw.of(english);
    const std::string name =
        draw.one_in(3) ? kind.name : fmt::format("{} {}", kind.name.substr(0, kind.name.find(',')), more);
    const auto numbered = [&](const std::string& one) {  // no two alike
        return frame.foods == 0 ? one : fmt::format("{}, {}", frame.foods + 1, one);
    };
    constexpr std::size_t most = 60;  // letters that a name may have
    return numbered(numbered(name).size() > most ? kind.name : name);
}

double target_for(Draws& draw, const facts::FoodKind& kind) {
    const bool white = kind.category == Category::poultry || kind.category == Category::fish;
    return std::round(white ? draw.real(61.0, 68.0) : draw.real(56.0, 66.0));
}

std::string food_text(Draws& draw, Frame& frame, double share_kg) {
    // What no bath may cook at all is tried by few: one food in twenty.
    static const auto kinds_that = [](bool no_bath) {
        std::vector<facts::FoodKind> kinds;
        for (const facts::FoodKind& kind : facts::facts().foods()) {
            const bool none = kind.category == Category::boar_or_bear || kind.category == Category::egg ||
                              kind.category == Category::vegetable;
            if (none == no_bath) {
                kinds.push_back(kind);
            }
        }
        return kinds;
    };
    static const std::vector<facts::FoodKind> usual = kinds_that(false);
    static const std::vector<facts::FoodKind> never = kinds_that(true);
    static const std::vector<facts::FoodKind> some_kinds = [] {
        std::vector<facts::FoodKind> some;
        for (const facts::FoodKind& kind : facts::facts().foods()) {
            if (kind.category != Category::boar_or_bear) {  // refused whatever the plan
                some.push_back(kind);
            }
        }
        return some;
    }();
    static constexpr Shape shapes[] = {Shape::slab, Shape::round, Shape::block, Shape::ball};
    static constexpr std::string_view cuts[] = {"tied", "tenderised", "injected", "rolled", "stuffed", "minced"};
    static constexpr std::string_view contacts[] = {"bottom", "stacked"};

    const facts::FoodKind& kind = draw.of(!frame.wide ? some_kinds : draw.one_in(20) ? never : usual);
    const Shape shape = draw.of(shapes);
    // A ball or a round so thin would be no piece that anybody cooks alone.
    const double thinnest = shape == Shape::ball ? 40.0 : shape == Shape::round ? 25.0 : 12.0;
    const double most = 0.4 * std::min(frame.box_width, frame.box_depth);
    const double thick =
        std::round(std::min(most, frame.overnight ? draw.real(40.0, 95.0) : draw.real(thinnest, thinnest + 30.0)));
    const double width = std::round(std::clamp(thick * draw.real(1.3, 3.0), 50.0, 0.8 * frame.box_width));
    const double length = std::round(std::clamp(thick * draw.real(2.0, 4.0), width, 0.9 * frame.box_length));
    constexpr double density = 1.05e-6;  // kg/mm3, near enough for the check of masses
    const double round = std::numbers::pi / 4.0 * thick * thick;
    const double mass = density * (shape == Shape::round  ? round * length
                                   : shape == Shape::ball ? round * thick * 2.0 / 3.0
                                                          : thick * width * length);
    const int pieces = std::clamp(static_cast<int>(std::round(share_kg / mass)), 1, 60);
    frame.food_kg += pieces * mass;

    std::string text = fmt::format("[[food]]\nname = \"{}\"\nkind = \"{}\"\ncut = \"{}\"\nshape = \"{}\"\n",
                                   food_name(draw, frame, kind), kind.key, draw.one_in(7) ? draw.of(cuts) : "intact",
                                   facts::to_name(shape));
    text += fmt::format("thickness = \"{:.0f} mm\"\n", thick);
    if (shape == Shape::slab || shape == Shape::block) {
        text += fmt::format("width = \"{:.0f} mm\"\n", width);
    }
    if (shape != Shape::ball) {
        text += fmt::format("length = \"{:.0f} mm\"\n", length);
    }
    text += fmt::format("mass = \"{:.3f} kg\"\npieces = {}\nstart = \"{:.0f} C\"\ntarget = \"{:.0f} C\"\n", mass,
                        pieces, draw.real(1.0, 8.0), target_for(draw, kind));
    text += fmt::format("tolerance = \"{:.0f} K\"\ncontact = \"{}\"\nbag = \"{}\"\n\n", draw.real(2.0, 8.0),
                        draw.one_in(4) ? draw.of(contacts) : "free", draw.one_in(4) ? "thick" : "thin");
    ++frame.foods;
    return text;
}

std::string box_text(Draws& draw, const Frame& frame) {
    // Loss in proportion to the walls; 0.9 W/K is an ordinary box of 47 litres.
    const double loss = draw.real(0.5, 1.3) * std::pow(frame.box_litres / 47.0, 2.0 / 3.0);
    std::string text = fmt::format("[[box]]\ninside = [\"{:.0f} mm\", \"{:.0f} mm\", \"{:.0f} mm\"]\n",
                                   frame.box_length, frame.box_width, frame.box_depth);
    text += fmt::format("water = \"{:.1f} L\"\n", frame.water_litres);
    const bool blind = draw.one_in(6);
    text += blind ? "thermometer = \"none\"\n" : fmt::format("thermometer = \"{:.1f} K\"\n", draw.real(0.3, 1.5));
    text += fmt::format("wax = {}\n", blind || draw.one_in(3));
    text += fmt::format("loss = \"{:.2f} W/K\"\nprewarmed = {}\n\n", loss, draw.one_in(2));
    return text;
}

std::string weather_text(Draws& draw, const Frame& frame) {
    static constexpr std::string_view winds[] = {"still", "breezy", "windy"};
    const double noon = frame.wide ? draw.real(-10.0, 32.0) : draw.real(0.0, 30.0);
    const double night = std::max(-15.0, noon - draw.real(3.0, 14.0));
    return fmt::format(
        "[weather]\nwind = \"{}\"\nhours = [{{ at = \"05:00\", air = \"{:.0f} C\" }}, "
        "{{ at = \"14:00\", air = \"{:.0f} C\" }}, {{ at = \"22:00\", air = \"{:.0f} C\" }}]\n\n",
        draw.of(winds), night, noon, 0.5 * (night + noon));
}

std::string fire_text(Draws& draw, const Frame& frame) {
    static constexpr std::string_view fuels[] = {"wood", "propane", "butane"};
    const int pots = draw.whole(1, 4);
    const double fitting = std::clamp(std::round(frame.water_litres / pots * draw.real(0.3, 0.8)), 2.0, 20.0);
    const double pot = frame.wide ? std::round(draw.real(3.0, 10.0)) : fitting;
    return fmt::format(
        "[fire]\npots = {}\npot = \"{:.0f} L\"\nboils_in = \"{} min\"\nfuel = \"{}\"\n"
        "cold_water = \"{} C\"\n\n",
        pots, pot, draw.whole(10, 32), draw.of(fuels), draw.whole(1, 18));
}

std::string around_text(Draws& draw, const Frame& frame) {
    static constexpr std::string_view sides[] = {"barley with roots", "potato salad", "rice & peas",
                                                 "flat bread, baked on stones", "lentejas con verduras"};
    std::string text;
    if (frame.overnight && !draw.one_in(5)) {
        text += fmt::format("[sleep]\nfrom = \"{}:{}0\"\nto = \"0{}:{}0\"\n\n", draw.whole(21, 23), draw.whole(0, 5),
                            draw.whole(5, 7), draw.whole(0, 5));
    }
    if (draw.one_in(2)) {
        text +=
            fmt::format("[journey]\ntakes = \"{} min\"\nair = \"{} C\"\n\n", draw.whole(2, 40) * 10, draw.whole(5, 32));
    }
    for (int i = draw.whole(0, 2); i > 0; --i) {
        text += fmt::format("[[side]]\nname = \"{}\"\ntakes = \"{} min\"\n\n", draw.of(sides), draw.whole(2, 18) * 5);
    }
    if (draw.one_in(3)) {
        text += fmt::format("[[what_if]]\nname = \"cold snap\"\ncolder = \"{} K\"\n\n", draw.whole(3, 12));
    }
    return text;
}

std::string head_text(Draws& draw, const Frame& frame) {
    static constexpr std::string_view rules[] = {"us", "uk", "au-nz", "ca"};
    static constexpr std::string_view english[] = {"Otter Creek", "Larch Ridge trail crew", "Troop 12, summer",
                                                   "A long weekend above the tree line with everybody"};
    static constexpr std::string_view spanish[] = {"Peña del Águila", "Excursión de otoño nº 2"};
    int hour = frame.overnight ? draw.whole(13, 19) : draw.whole(6, 14);
    int serve = frame.overnight ? draw.whole(9, 15) : std::min(22, hour + draw.whole(4, 8));
    int from_minute = draw.whole(0, 5);
    int serve_minute = draw.whole(0, 5);
    if (frame.wide) {  // 4 to 20 h, the meal by day
        serve = frame.overnight ? draw.whole(8, 14) : draw.whole(11, 20);
        const int hours = frame.overnight ? draw.whole(14, 20) : draw.whole(4, std::min(13, serve - 5));
        hour = (serve - hours + 24) % 24;
        serve_minute = from_minute;
    }
    std::string text =
        fmt::format("[trip]\nname = \"{}\"\npeople = {}\nat_risk = {}\naltitude = \"{} m\"\n",
                    frame.spanish ? draw.of(spanish) : draw.of(english), frame.people, draw.one_in(4),
                    draw.one_in(3) ? draw.whole(10, frame.wide ? 32 : 30) * 100 : draw.whole(0, 90) * 10);
    text += fmt::format("from = 2027-06-12T{:02}:{}0:00\nserve = 2027-06-{}T{:02}:{}0:00\n", hour, from_minute,
                        frame.overnight ? 13 : 12, serve, serve_minute);
    text += fmt::format("rules = \"{}\"\nunits = \"{}\"\nlanguage = \"{}\"\n\n", draw.of(rules),
                        draw.of(units::system_names()), frame.spanish ? "es" : "en");
    return text;
}

}  // namespace

namespace {

std::string trip_text(std::uint64_t number, bool wide) {
    Draws draw(number);
    Frame frame;
    frame.wide = wide;
    frame.overnight = draw.one_in(2);
    frame.people = draw.whole(2, 40);
    frame.spanish = draw.one_in(3);
    frame.box_litres = draw.real(9.0, 70.0);
    frame.box_depth = std::round(draw.real(0.8, 1.2) * std::cbrt(frame.box_litres * 1e6));
    frame.box_width = std::round(draw.real(0.7, 1.0) * std::sqrt(frame.box_litres * 1e6 / frame.box_depth));
    frame.box_length = std::round(frame.box_litres * 1e6 / frame.box_depth / frame.box_width);
    frame.water_litres = frame.box_litres * draw.real(0.55, 0.8);
    const int foods = draw.one_in(2) ? 1 : draw.whole(2, 3);
    // Enough for the people, but no more than this much water warms.
    const double food_kg = std::min(0.25 * frame.people, frame.water_litres * draw.real(0.05, 0.15));
    std::string text = head_text(draw, frame);
    for (int i = 0; i < foods; ++i) {
        text += food_text(draw, frame, food_kg / foods);
    }
    frame.water_litres = std::max(2.0, std::min(frame.water_litres, 0.93 * frame.box_litres - frame.food_kg));
    return text + box_text(draw, frame) + weather_text(draw, frame) + fire_text(draw, frame) + around_text(draw, frame);
}

trip::Trip read_or_throw(const std::string& text, const std::string& name) {
    auto trip = read_trip_text(text, name);
    for (const problem::Problem& one : trip.problems()) {
        if (one.severity == problem::Severity::error) {
            throw std::runtime_error(problem::to_line(one));
        }
    }
    return std::move(trip).value();
}

}  // namespace

std::string random_trip_text(std::uint64_t number) {
    return trip_text(number, false);
}

std::string wide_trip_text(std::uint64_t number) {
    return trip_text(number, true);
}

trip::Trip random_trip(std::uint64_t number) {
    return read_or_throw(random_trip_text(number), fmt::format("random-{}.toml", number));
}

trip::Trip wide_trip(std::uint64_t number) {
    return read_or_throw(wide_trip_text(number), fmt::format("wide-{}.toml", number));
}

}  // namespace holdwater::support
