// SPDX-License-Identifier: MIT
#include "support/people_trips.hpp"

#include "support/people_chance.hpp"
#include "support/people_larder.hpp"
#include "support/people_pen.hpp"
#include "support/people_scenes.hpp"
#include "units/local_time.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <set>
#include <vector>

namespace holdwater::support {
namespace {

std::string clock(double hour) {
    const int minutes = static_cast<int>(std::lround(hour * 60)) % 1440;
    return fmt::format("\"{:02}:{:02}\"", minutes / 60, minutes % 60);
}

/// Whoever writes the file.
class Writer {
  public:
    explicit Writer(std::uint64_t seed)
        : chance_(seed),
          scene_(&chance_.of(scenes())),
          rules_(chance_.of(scene_->rules)),
          pen_(chance_.in_hundred(rules_ == "us" ? 55 : 4)),
          terse_(chance_.in_hundred(25)),
          remarks_in_hundred_(chance_.between(0, 70)) {}

    std::string file() {
        decide();
        head();
        const bool weather_first = chance_.in_hundred(15);
        if (weather_first) {
            weather();
        }
        shop();
        for (const Bought& food : bought_) {
            write(food);
        }
        boxes();
        if (!weather_first) {
            weather();
        }
        fire();
        around();
        return chance_.in_hundred(5) ? with_carriage_returns(text_) : text_;
    }

  private:
    Chance chance_;
    const Scene* scene_;
    std::string rules_;
    Pen pen_;
    bool terse_;  // leaves out what may be left out
    double remarks_in_hundred_;
    std::string text_;

    int people_ = 1;
    bool at_risk_ = false;
    bool blind_ = false;
    units::LocalTime from_;
    double starts_ = 8;  // hour of the day
    double lasts_h_ = 6;
    double coldest_c_ = 5;
    double rise_k_ = 8;
    bool us_date_blank_ = false;
    std::vector<const ShelfBox*> box_;
    std::vector<double> food_l_;  // in each box
    std::vector<Bought> bought_;
    std::vector<std::size_t> in_box_;

    static std::string with_carriage_returns(const std::string& text) {
        std::string out;
        for (const char letter : text) {
            out += letter == '\n' ? std::string("\r\n") : std::string(1, letter);
        }
        return out;
    }

    units::LocalTime at(double hours) const { return from_.after(units::hours(hours)); }
    std::string moment(double hours) const {
        std::string iso = at(hours).iso();
        if (us_date_blank_) {
            std::replace(iso.begin(), iso.end(), 'T', ' ');
        }
        return iso;
    }
    /// Somewhere between two shares of the trip, on the quarter hour, within it.
    double quarter_within(double low, double high) {
        const double hours = std::round(chance_.between(low, high) * lasts_h_ * 4) / 4;
        return std::clamp(hours, 0.25, lasts_h_ - 0.25);
    }

    void line(const std::string& key, const std::string& value, std::initializer_list<const char*> remarks = {}) {
        std::string one = key + " = " + value;
        if (remarks.size() != 0 && chance_.in_hundred(remarks_in_hundred_)) {
            one += std::string(chance_.in_hundred(50) ? std::max<int>(2, 34 - static_cast<int>(one.size())) : 2, ' ');
            one += fmt::format("# {}", chance_.of(remarks));
        }
        text_ += one + "\n";
    }
    void table(const std::string& heading) { text_ += (text_.empty() ? "" : "\n") + heading + "\n"; }
    static std::string quoted(const std::string& text) { return "\"" + text + "\""; }

    void decide() {
        people_ = chance_.whole(static_cast<int>(scene_->people.low), static_cast<int>(scene_->people.high));
        at_risk_ = chance_.in_hundred(scene_->at_risk);
        blind_ = chance_.in_hundred(scene_->blind);
        coldest_c_ = std::round(chance_.between(scene_->coldest.low, scene_->coldest.high));
        rise_k_ = chance_.between(scene_->rise.low, scene_->rise.high);
        starts_ = chance_.stepped(scene_->from.low, scene_->from.high, 0.5);
        from_ = units::LocalTime::from_civil(2027, month(), chance_.whole(1, 28), 0, 0).after(units::hours(starts_));
        lasts_h_ = chance_.stepped(scene_->lasts.low, scene_->lasts.high, 0.5);
        us_date_blank_ = chance_.in_hundred(10);
        box_.push_back(&on_shelf(chance_.of(scene_->boxes)));
        if (chance_.in_hundred(scene_->two_boxes)) {
            box_.push_back(&on_shelf(chance_.of(scene_->boxes)));
        }
        food_l_.assign(box_.size(), 0.0);
    }

    /// In which it is so cold where they are: in the south half a year later.
    int month() {
        const Range months = coldest_c_ < -2 ? Range{11, 15} : coldest_c_ > 12 ? Range{6, 8} : Range{4, 10};
        const int north = chance_.whole(static_cast<int>(months.low), static_cast<int>(months.high));
        return (north - 1 + (rules_ == "au-nz" ? 6 : 0)) % 12 + 1;
    }

    std::string serve() {
        if (!chance_.in_hundred(scene_->sittings)) {
            return moment(lasts_h_);
        }
        const double apart = chance_.stepped(0.5, 1.5, 0.25);
        return fmt::format("[{}, {}]", moment(std::max(0.5, lasts_h_ - apart)), moment(lasts_h_));
    }

    void head() {
        constexpr std::array places{"Heron Lake", "Stony Ford",   "Old Mill",     "Foxglove Down",
                                    "Cedar Bay",  "Windy Col",    "Kettle Creek", "Tern Point",
                                    "Blackthorn", "Long Portage", "Gravel Bar",   "Owl Wood"};
        constexpr std::array first{"first try with this box", "copied from last year's, then changed",
                                   "who carries the thermometer? ask Jo", "numbers from the shed test in spring"};
        if (chance_.in_hundred(remarks_in_hundred_)) {
            text_ += fmt::format("# {}\n", chance_.of(first));
        }
        table("[trip]");
        line("name", quoted(fmt::format("{}, {}", chance_.of(places), scene_->who)));
        line("people", fmt::format("{}", people_), {"two may come late", "count again on Friday", "with the helpers"});
        if (!terse_ || at_risk_) {
            line("at_risk", at_risk_ ? "true" : "false", {"asked everybody", "Gran and the baby count"});
        }
        line("altitude", pen_.metres(chance_.between(scene_->altitude.low, scene_->altitude.high)).text,
             {"from the map", "about"});
        line("from", moment(0), {"we can have a fire from then", "when the gate opens"});
        line("serve", serve(), {"hungry by then!", "not a minute later"});
        if (chance_.in_hundred(20)) {
            line("light_fire", moment(quarter_within(0, 0.3)), {"the wood is only there by then"});
        }
        if (chance_.in_hundred(12)) {
            line("strict", "true", {"no grey meat please"});
        }
        line("rules", quoted(rules_));
        if (pen_.us() || !terse_) {
            constexpr std::array ours{"us", "us-first", "both"};
            constexpr std::array theirs{"metric", "metric", "both"};
            line("units", quoted(chance_.of(pen_.us() ? ours : theirs)));
        }
        if (const std::string language = spoken(); !language.empty()) {
            line("language", quoted(language));
        }
    }

    std::string spoken() {
        if (rules_ == "ca" && chance_.in_hundred(30)) {
            return "fr";
        }
        return rules_ == "us" && chance_.in_hundred(10) ? "es" : terse_ ? "" : "en";
    }

    /// One to three sorts of food a box, as much of it as leaves two thirds of the room for water.
    void shop() {
        std::set<std::string> kinds;
        for (std::size_t box = 0; box < box_.size(); ++box) {
            const int sorts = chance_.in_hundred(55) ? 1 : chance_.in_hundred(70) ? 2 : 3;
            const double room = box_[box]->litres();
            for (int n = 0; n < sorts; ++n) {
                const double left = room * 0.33 - food_l_[box];
                Bought food = buy_one(std::max(0.1, left / (sorts - n)));
                const bool fits = food_l_[box] + food.litres() < room * 0.45;
                if ((n > 0 && !fits) || !kinds.insert(food.kind).second) {
                    continue;
                }
                food_l_[box] += food.litres();
                bought_.push_back(food);
                in_box_.push_back(box);
            }
            if (food_l_[box] == 0.0) {  // the kind of the other box, and nothing else: some more of it
                Bought food = buy_one(room * 0.33);
                food.name += " for the other box";
                food_l_[box] += food.litres();
                bought_.push_back(food);
                in_box_.push_back(box);
            }
        }
    }

    Bought buy_one(double room_l) {
        const facts::FoodKind& kind = kind_like(chance_, scene_->larder);
        const bool boiled =
            kind.category == facts::Category::cooked_dish || kind.category == facts::Category::vegetable;
        const bool hot = chance_.in_hundred(boiled ? 85 : scene_->hot / 3);
        const bool steak = !hot && kind.beef && chance_.in_hundred(scene_->steaks);
        return buy(chance_, pen_, kind, people_, room_l, steak, hot);
    }

    std::string box_name(std::size_t box) const {
        return box_[0]->name != box_.back()->name ? box_[box]->name + " box" : box == 0 ? "blue box" : "green box";
    }

    void write(const Bought& food) {
        const std::size_t box = in_box_[static_cast<std::size_t>(&food - bought_.data())];
        table("[[food]]");
        line("name", quoted(food.name));
        line("kind", quoted(food.kind), {"closest there is", "says so on the pack"});
        if (!food.use.empty()) {
            line("use", quoted(food.use));
        }
        if (!terse_ || food.cut != "intact") {
            line("cut", quoted(food.cut), {"asked the butcher"});
        }
        line("shape", quoted(food.shape), {"more or less"});
        line("thickness", food.thickness.text, {"at the thick end", "measured through the bag", "calipers"});
        if (food.width) {
            line("width", food.width->text);
        }
        if (food.length) {
            line("length", food.length->text);
        }
        line("mass", food.mass.text, {"each", "kitchen scale", "one piece"});
        if (food.pieces != 1 || !terse_) {
            line("pieces", fmt::format("{}", food.pieces));
        }
        line("start", pen_.temperature(food.start_c).text, {"from the ice box", "fridge"});
        if (food.use != "keep-hot") {
            line("target", pen_.temperature(food.target_c).text, {"pink", "as we like it", "what the book says"});
            if (!terse_) {
                line("tolerance", pen_.difference(food.tolerance_k).text);
            }
        }
        details(food);
        if (box_.size() > 1) {
            line("box", quoted(box_name(box)));
        }
        times(food);
    }

    void details(const Bought& food) {
        constexpr std::array ways{"free", "free", "free", "bottom", "stacked"};
        if (!terse_) {
            line("contact", quoted(chance_.of(ways)), {"hung from a stick", "there is a rack"});
        }
        if (food.bone) {
            line("bone", "true");
        }
        if (chance_.in_hundred(60)) {
            line("bag", quoted(chance_.in_hundred(75) ? "thin" : "thick"), {"freezer bags, doubled"});
        }
        if (food.use.empty() && chance_.in_hundred(at_risk_ ? 40 : 12)) {
            line("over_fire", "true", {"brown it well", "to be safe"});
        }
    }

    /// Now and then one of several foods is eaten before the meal, or goes in later.
    void times(const Bought& food) {
        if (&food == &bought_.front() || !chance_.in_hundred(14)) {
            return;
        }
        if (chance_.in_hundred(50)) {
            line("out", moment(quarter_within(0.6, 0.9)), {"for the early birds"});
        } else {
            line("in", moment(quarter_within(0.3, 0.6)), {"comes from the shop then"});
        }
    }

    void boxes() {
        for (std::size_t n = 0; n < box_.size(); ++n) {
            const ShelfBox& box = *box_[n];
            table("[[box]]");
            if (box_.size() > 1 || chance_.in_hundred(15)) {
                line("name", quoted(box_name(n)));
            }
            line("inside", fmt::format("[{}, {}, {}]", inside(box.length), inside(box.width), inside(box.depth)),
                 {"tape measure", "without the lip"});
            const double room = box.litres() * 0.97;  // inches round off up to so much
            const double free = room - food_l_[n];
            const Written water = pen_.litres(std::max(2.9, free * chance_.between(0.6, 0.95)));
            line("water", water.text, {"as full as I dare", "two thirds"});
            thermometer();
            test(box, std::min(water.value, room), chance_.in_hundred(20) ? 1.8 : chance_.between(0.6, 1.2));
            if (chance_.in_hundred(35)) {
                line("prewarmed", chance_.in_hundred(60) ? "true" : "false", {"kettle of hot water first"});
            }
        }
    }

    std::string inside(double mm) const {
        return pen_.us() ? fmt::format("\"{:.1f} in\"", mm / 25.4) : fmt::format("\"{:g} {}\"", mm / 10, "cm");
    }

    void thermometer() {
        if (blind_) {
            line("thermometer", "\"none\"", {"left at home", "broke last time"});
            if (chance_.in_hundred(45)) {
                line("wax", "true", {"candle end"});
            }
            return;
        }
        line("thermometer", pen_.difference(chance_.stepped(0.5, 2.0, 0.5)).text, {"checked in ice", "roast probe"});
    }

    /// Hot water stood in it in the shed: what was read then, or the loss that somebody worked out.
    void test(const ShelfBox& box, double litres, double make) {
        const double loss = box.loss * make;
        if (chance_.in_hundred(25)) {
            line("loss", fmt::format("\"{:.2g} W/K\"", loss), {"from gauge", "last year"});
            return;
        }
        constexpr double joules = 4150;  // a litre of hot water, each kelvin
        if (blind_ || !terse_) {
            line("reading_error", pen_.difference(chance_.stepped(0.5, 1.0, 0.5)).text);
        }
        const double outside = chance_.stepped(4, 20, 1);
        const double start = chance_.stepped(62, 72, 1);
        std::vector<double> hours{0, chance_.stepped(2, 4, 0.5)};
        if (chance_.in_hundred(40)) {
            hours.push_back(hours.back() + chance_.stepped(2, 6, 1));
        }
        std::string list;
        double before = start + 1;
        for (const double hour : hours) {
            // The box warms through in the first minutes, and the thermometer wavers: never up.
            const double now = outside + (start - outside) * std::exp(-loss * hour * 3600 / (litres * joules));
            const double read = std::min(now, before - 1.0);
            if (read < 30.0) {
                break;  // nobody goes on so long
            }
            list += fmt::format("{}{{ after = \"{:g} h\", bath = {} }}", list.empty() ? "" : ", ", hour,
                                pen_.reading(read).text);
            before = read;
        }
        line("test", "[" + list + "]", {"in the shed"});
        line("test_outside", pen_.temperature(outside).text);
        line("test_water", pen_.litres(litres).text);
    }

    void weather() {
        table("[weather]");
        constexpr std::array winds{"still", "breezy", "breezy", "windy"};
        if (!terse_) {
            line("wind", quoted(chance_.of(winds)), {"behind the hut", "open shore"});
        }
        const auto air = [&](double hour) {  // coldest at five, warmest at three in the afternoon
            return coldest_c_ + rise_k_ * (0.5 - 0.5 * std::cos((hour - 4) / 24 * 2 * 3.14159265358979));
        };
        const bool dated = chance_.in_hundred(15);
        const bool many_lines = chance_.in_hundred(60);
        const std::string apart = many_lines ? ",\n    " : ", ";
        std::string list;
        if (dated) {
            for (double hour = 0; hour <= lasts_h_ + 2.5; hour += 3) {
                list += fmt::format("{}{{ at = {}, air = {} }}", list.empty() ? "" : apart, moment(hour),
                                    pen_.temperature(air(starts_ + hour)).text);
            }
        } else {
            for (const double hour : {5.0, 9.5, 15.0, 21.0}) {
                list += fmt::format("{}{{ at = {}, air = {} }}", list.empty() ? "" : apart, clock(hour),
                                    pen_.temperature(air(hour)).text);
            }
        }
        line("hours", many_lines ? "[\n    " + list + ",\n]" : "[" + list + "]");
    }

    void fire() {
        table("[fire]");
        const std::string fuel = chance_.of(scene_->fuels);
        const int pots = chance_.whole(static_cast<int>(scene_->pots.low), static_cast<int>(scene_->pots.high));
        const double pot = chance_.stepped(scene_->pot.low, scene_->pot.high, 0.5);
        line("pots", fmt::format("{}", pots), {"the big ones", "borrowed"});
        line("pot", fmt::format("\"{:g} L\"", pot));
        if (!terse_) {
            line("usable", fmt::format("{:g}", chance_.stepped(0.7, 0.9, 0.05)), {"it slops"});
        }
        line("boils_in", pen_.minutes(pot * pots * chance_.between(1.6, 4.0) + chance_.between(3, 9)).text,
             {"timed once, no wind", "guess"});
        line("fuel", quoted(fuel));
        if (fuel == "wood" && !terse_) {
            line("moisture", fmt::format("\"{} %\"", chance_.whole(12, 35)), {"split last autumn"});
        }
        line("cold_water", pen_.temperature(std::clamp(coldest_c_ + chance_.between(2, 8), 1.0, 20.0)).text,
             {"from the stream", "tap"});
    }

    void around() {
        if (starts_ + lasts_h_ > 23 && chance_.in_hundred(90)) {
            table("[sleep]");
            line("from", clock(chance_.stepped(21.5, 23.5, 0.5)), {"lights out"});
            line("to", clock(chance_.stepped(5.5, 7.5, 0.5)), {"first coffee"});
        }
        if (chance_.in_hundred(50)) {
            table("[journey]");
            line("takes", fmt::format("\"{:g} h\"", chance_.stepped(1, 6, 0.5)), {"with the bus", "portage included"});
            line("air", pen_.temperature(std::max(5.0, coldest_c_ + rise_k_ + chance_.between(0, 8))).text,
                 {"in the car"});
            if (chance_.in_hundred(60)) {
                line("box", fmt::format("\"{:g} W/K\"", chance_.stepped(0.5, 2.0, 0.1)));
            }
        }
        if (chance_.in_hundred(35)) {
            table("[[hot_water]]");
            line("name", quoted(chance_.in_hundred(60) ? "tea" : "washing-up"));
            if (chance_.in_hundred(60)) {
                line("per_person", pen_.sup(chance_.between(0.2, 0.5)).text, {"one mug"});
            } else {
                line("volume", pen_.sup(chance_.between(1, 8)).text);
            }
            if (chance_.in_hundred(60)) {
                line("at", moment(chance_.in_hundred(60) ? quarter_within(0.5, 1.0) : lasts_h_ + 0.5));
            }
        }
        if (chance_.in_hundred(45)) {
            constexpr std::array sides{"rice", "potatoes in foil", "barley with roots", "pasta", "corn bread"};
            table("[[side]]");
            line("name", quoted(chance_.of(sides)));
            line("takes", pen_.minutes(chance_.stepped(15, 60, 5)).text);
        }
        what_ifs();
    }

    void what_ifs() {
        if (chance_.in_hundred(35)) {
            table("[[what_if]]");
            line("name", "\"cold snap\"");
            line("colder", pen_.difference(chance_.stepped(3, 10, 1)).text);
        }
        if (chance_.in_hundred(25)) {
            table("[[what_if]]");
            line("name", "\"late group\"");
            line("later", fmt::format("\"{:g} h\"", chance_.stepped(0.5, 3, 0.5)));
        }
        if (chance_.in_hundred(20)) {
            table("[[what_if]]");
            line("name", "\"rain on the fire\"");
            line("fire_out", fmt::format("\"{:g} h\"", chance_.stepped(1, 4, 0.5)));
        }
    }
};

}  // namespace

std::string people_trip(std::uint64_t seed) {
    return Writer(seed).file();
}

}  // namespace holdwater::support
