// SPDX-License-Identifier: MIT
// Clock times, litres, readings and floors as the terminal and JSON tell them.
#include "agreement/said.hpp"
#include "card/figures/numbers.hpp"
#include "card/figures/rounding.hpp"
#include "card/trip/deck.hpp"
#include "cli/json/plan_json.hpp"
#include "cli/text/plan_text.hpp"
#include "support/card_texts.hpp"
#include "support/printed.hpp"
#include "support/printed_plan.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <map>
#include <sstream>

namespace holdwater::support {
namespace {

class Terminal {
  public:
    Terminal(const Case& one, AllSaid& all) : case_(one), all_(all) {}

    void say() {
        std::istringstream text(as_read(cli::plan_text(case_.plan)));
        for (std::string line; std::getline(text, line);) {
            if (const auto timed = filled("{day} {hour}:{minute}  {what}", line);
                timed && timed->at("day").size() == 3 && timed->at("minute").size() == 2) {
                step(moment(line.substr(0, line.find("  "))), timed->at("what"));
            } else {
                rest(line);
            }
        }
    }

  private:
    units::LocalTime moment(std::string_view text) const {
        return moment_in(words::Words::model(), text, case_.trip.from);
    }
    void at(const std::string& what, units::LocalTime when) {
        all_.push_back(said_at(what, "terminal", case_.trip.from, when));
    }
    void litres(const std::string& what, const std::string& text) {
        all_.push_back(said_figure(what, "terminal", litres_in(text), "L"));
    }
    void degrees(const std::string& what, const std::string& text) {
        all_.push_back(said_figure(what, "terminal", celsius_in(text), "C"));
    }

    void step(units::LocalTime when, const std::string& text) {
        if (const auto fire = filled("light the fire (not later than {latest}, then with a new plan); {rest}", text)) {
            at("fire lit", when);
            at("latest fire", moment(fire->at("latest")));
            const std::string& rest = fire->at("rest");
            if (const auto cold = filled("{cold} of cold water into the box; boil {litres}", rest)) {
                litres("cold water", cold->at("cold"));
                litres("boil for the fill", cold->at("litres"));
            } else if (const auto boil = filled("boil {litres}", rest)) {
                litres("boil for the fill", boil->at("litres"));
            }
        } else if (const auto warm = filled("warm the box: {hot} boiling in, lid on, some minutes, tip it out; then "
                                            "{cold} of cold water in",
                                            text)) {
            litres("cold water", warm->at("cold"));
        } else if (const auto trim =
                       filled("pour up to {litres} boiling ({pots}); stop at a reading of {reading}", text)) {
            at(fmt::format("pour {}", ++pours_), when);
            litres(fmt::format("pour {} litres", pours_), trim->at("litres"));
            degrees("fill to", trim->at("reading"));
        } else if (const auto pour = filled("pour {litres} boiling ({pots}){rest}", text)) {
            at(fmt::format("pour {}", ++pours_), when);
            litres(fmt::format("pour {} litres", pours_), pour->at("litres"));
            if (const auto last = filled("; stop at a reading of {reading}", pour->at("rest"))) {
                degrees("fill to", last->at("reading"));
                litres("last pour", pour->at("litres"));
            }
        } else if (text == "food in") {
            at("food in", when);
        } else if (const auto ready = filled("{food} surely ready (likely {likely})", text)) {
            at("ready: " + as_read(ready->at("food")), when);
        } else if (const auto timely = filled("{food} ready, if every pour was on time (likely {likely})", text)) {
            at("ready: " + as_read(timely->at("food")), when);
        } else if (const auto read = filled("{food} ready, if no reading was under {least} (likely {likely})", text)) {
            at("ready: " + as_read(read->at("food")), when);
            degrees("ready if: " + as_read(read->at("food")), read->at("least"));
        } else if (const auto taken =
                       filled("{food}: out of the bath and the bag, into water at a gentle boil{rest}", text)) {
            at("to the fire: " + as_read(taken->at("food")), when);
        } else if (text.starts_with("WAKE, ")) {
            at(fmt::format("wake for top-up {}", top_ups_ + 1), when);
        } else {
            top_up(when, text);
        }
    }

    void top_up(units::LocalTime when, const std::string& text) {
        const struct {
            const char* form;
            bool first;
        } forms[] = {{"top up to {mark} by the row of card Reading for what it reads (should be {reading} or more), "
                      "likely {litres}",
                      false},
                     {"water down to {below} below the rim, pour {litres} boiling", false},
                     {"take out {out} first, pour {litres} boiling", true},
                     {"pour {litres} boiling", false}};
        for (const auto& [form, first] : forms) {
            if (const auto found = filled(form, text)) {
                ++top_ups_;
                at(fmt::format("top-up {}", top_ups_), when);
                litres(fmt::format("top-up {} in", top_ups_), found->at("litres"));
                if (found->contains("below")) {
                    all_.push_back(said_figure(fmt::format("top-up {} line", top_ups_), "terminal",
                                               millimetres_in(found->at("below")), "mm"));
                } else if (!found->contains("reading") && !says_lines(case_.words)) {
                    all_.push_back(said_figure(fmt::format("top-up {} out", top_ups_), "terminal",
                                               first ? litres_in(found->at("out")) : 0.0, "L"));
                }
                if (found->contains("mark")) {
                    degrees("mark", found->at("mark"));
                }
                return;
            }
        }
    }

    void rest(const std::string& line) {
        if (const auto bath =
                filled("bath never to read below {floor}; top up {clock}at {action} or below; topped up to "
                       "{top} it keeps {rough} in wind and cold; after {mark} it may be left {longest}",
                       line)) {
            degrees("mark", bath->at("top"));
            degrees("read floor", bath->at("floor"));
            degrees("action line", bath->at("action"));
            degrees("night's reading", bath->at("mark"));
            all_.push_back(said_figure("leave it", "terminal", seconds_in(bath->at("longest")) / 3600.0, "h"));
        } else if (const auto blind = filled("no thermometer: pour by the clock alone; after each pour it may be left "
                                             "{longest}; {late}",
                                             line)) {
            all_.push_back(said_figure("leave it", "terminal", seconds_in(blind->at("longest")) / 3600.0, "h"));
        } else if (const auto wait = filled("if the meal slips, it may wait in the bath until {until} without another "
                                            "top-up, {how}, and no longer, whatever is said above",
                                            line)) {
            at("may wait until", moment(wait->at("until")));
        } else if (const auto none = filled("if the meal slips, top up before {until}", line)) {
            at("may wait until", moment(none->at("until")));
        }
    }

    const Case& case_;
    AllSaid& all_;
    int pours_ = 0;
    int top_ups_ = 0;
};

units::LocalTime from_iso(const std::string& iso) {
    const auto part = [&](std::size_t at, std::size_t n) { return std::stoi(iso.substr(at, n)); };
    return units::LocalTime::from_civil(part(0, 4), part(5, 2), part(8, 2), part(11, 2), part(14, 2), part(17, 2));
}

}  // namespace

void say_terminal(const Case& one, AllSaid& all) {
    Terminal(one, all).say();
}

void say_json(const Case& one, AllSaid& all) {
    const card::SafeSide writer{one.plan, one.words};
    const nlohmann::json json =
        nlohmann::json::parse(cli::plan_json(one.plan, card::card_numbers(writer), "TEST-TEST").dump());
    const bool us = units::first_of(one.trip.units) == units::System::us;
    // What a printed figure may be rounded by.
    const double litre = us ? 0.5 * 0.9464 : 0.5;
    const double degree = us ? 1.0 / 1.8 : 1.0;
    const auto at = [&](const std::string& what, const nlohmann::json& iso) {
        all.push_back(said_at(what, "json", one.trip.from, from_iso(iso.get<std::string>())));
    };
    const auto figure = [&](const std::string& what, const nlohmann::json& value, const char* unit, double step) {
        all.push_back(said_figure(what, "json", value.get<double>(), unit, step));
    };
    const nlohmann::json& fill = json.at("fill");
    at("fire lit", fill.at("light_fire"));
    at("latest fire", fill.at("latest_fire"));
    at("food in", fill.at("food_in"));
    figure("cold water", fill.at("cold_l"), "L", litre);
    // The fill is rounded up to its step; what warms the box before, where it is warmed, to a tenth, a fifth of that.
    const auto warming = fill.at("warming_l").get<double>();
    figure("boil for the fill", fill.at("boiled_most_l").get<double>() + warming, "L",
           (warming > 0.0 ? 1.2 : 1.0) * litre);
    const bool reads = one.trip.boxes.front().thermometer.has_value();
    // The last pour makes up what the sum was rounded by and, a tenth of that each, the rounds before it and itself.
    const double of_sum = litre * (1.0 + 0.1 * static_cast<double>(fill.at("pours").size()));
    std::size_t n = 0;
    for (const nlohmann::json& pour : fill.at("pours")) {
        at(fmt::format("pour {}", ++n), pour.at("at"));
        const bool trims = reads && pour.at("whole_pots") < pour.at("pots");
        figure(fmt::format("pour {} litres", n), pour.at(trims ? "boiling_most_l" : "boiling_l"), "L",
               trims ? of_sum : litre);
    }
    if (reads) {
        figure("last pour", fill.at("pours").back().at("boiling_most_l"), "L", of_sum);
        figure("night's reading", json.at("night").at("reading_c"), "C", degree);
        figure("fill to", fill.at("reading_c"), "C", degree);
        figure("mark", json.at("top_up_mark_c"), "C", degree);
        figure("read floor", json.at("read_floor_c"), "C", degree);
        figure("action line", json.at("action_line_c"), "C", degree);
    }
    n = 0;
    for (const nlohmann::json& top_up : json.at("top_ups")) {
        at(fmt::format("top-up {}", ++n), top_up.at("at"));
        figure(fmt::format("top-up {} in", n), top_up.at("boiling_l"), "L", litre);
        if (!says_lines(one.words)) {
            figure(fmt::format("top-up {} out", n), top_up.at("out_l"), "L", litre);
        }
        if (top_up.at("wakes").get<bool>()) {
            at(fmt::format("wake for top-up {}", n), top_up.at("light_fire"));
        }
    }
    for (const nlohmann::json& food : json.at("foods")) {
        if (!food.contains("finish")) {
            at("ready: " + food.at("name").get<std::string>(), food.at("ready_late"));
        }
    }
    figure("leave it", json.at("night").at("longest_h"), "h", 0.25);
    at("may wait until", json.at("waits_until"));
}

void say_card_numbers(const Case& one, AllSaid& all) {
    const card::SafeSide writer{one.plan, one.words};
    const card::Deck deck = card::trip_deck(one.plan, one.words, "TEST-TEST");
    std::map<std::string, int> times;  // two sides may have one name
    for (const card::CardNumber& number : card::card_numbers(writer)) {
        if (!number.stands) {
            continue;  // explained, not printed
        }
        std::string texts;
        for (const card::Card& card : deck.cards) {
            if (card.key == number.card) {
                texts = joined(texts_of(card));
            }
        }
        const std::string printed = as_read(number.printed);
        std::string what = fmt::format("{} {}", number.card, number.name);
        what += fmt::format(" ({}) on its card", ++times[what]);
        all.push_back(said_word(what, "json numbers", printed));
        all.push_back(said_word(what, "card " + number.card,
                                texts.find(printed) != std::string::npos ? printed : "nothing of the kind"));
    }
}

}  // namespace holdwater::support
