// SPDX-License-Identifier: MIT
#include "support/printed_plan.hpp"

#include "support/printed.hpp"

#include <algorithm>
#include <map>
#include <stdexcept>
#include <variant>

namespace holdwater::support {
namespace {

using units::LocalTime;

class Reader {
  public:
    Reader(const card::Deck& deck, const words::Words& words, const trip::Trip& trip)
        : deck_(deck), words_(words), trip_(trip) {}

    PrintedPlan read() {
        plan_.fire = trip_.from;
        read_plan();
        read_fill();
        read_top_up();
        read_night();
        return plan_;
    }

  private:
    std::optional<Filled> by(std::string_view key, std::string_view text,
                             const std::map<std::string, std::string>& with = {}) const {
        // A language has the one way to say a thing or the other; a line that none of them fits is not understood.
        return words_.has(key) ? filled_by(words_, key, text, with) : std::nullopt;
    }
    /// A wording, to be put into a place of another.
    std::string form(const std::string& key, const std::string& from = "", const std::string& to = "") const {
        std::string text = words_.find(key).value();
        if (const auto at = text.find("{" + from + "}"); !from.empty() && at != std::string::npos) {
            text.replace(at, from.size() + 2, "{" + to + "}");
        }
        return text;
    }
    LocalTime moment(std::string_view text) const { return moment_in(words_, text, trip_.from); }

    [[noreturn]] static void lost(const char* card, const std::string& line) {
        throw std::runtime_error("card " + std::string(card) + ": \"" + line + "\" is not understood");
    }

    template <class Block, class Visit>
    void each(const char* card, Visit visit) const {
        for (const card::Block& block : card_named(deck_, card).blocks) {
            if (const auto* one = std::get_if<Block>(&block)) {
                visit(*one);
            }
        }
    }

    PrintedFood& food(const std::string& name) {
        for (PrintedFood& one : plan_.foods) {
            if (one.name == name) {
                return one;
            }
        }
        lost("plan", name);
    }

    void read_plan() {
        for (const trip::Food& one : trip_.foods) {
            plan_.foods.push_back({});
            plan_.foods.back().name = as_read(card::plain(one.name));
        }
        plan_.serve = trip_.serve;
        std::size_t next_food = 0;
        bool finish = false;
        each<card::Note>("plan", [&](const card::Note& note) {
            if (const auto core = by("plan.core-line", note.text)) {
                plan_.foods.at(next_food++).peak = celsius_in(core->at("peak"));
            } else if (const auto steak = by("plan.steak-line", note.text)) {
                plan_.foods.at(next_food++).peak = celsius_in(steak->at("peak"));
            } else if (by("plan.keep-hot-line", note.text)) {
                ++next_food;
            } else if (by("plan.core-line-finish", note.text)) {
                ++next_food;
                finish = true;
            }
            read_wait(note.text);
        });
        if (next_food != plan_.foods.size()) {
            lost("plan", "core line of each food");
        }
        each<card::Steps>("plan", [&](const card::Steps& steps) {
            for (const card::Step& step : steps.steps) {
                read_step(step);
            }
        });
        if (plan_.waits_until < plan_.serve) {
            plan_.waits_until = plan_.serve;
        }
    }

    /// The wording with the least room for other things first.
    void read_wait(const std::string& text) {
        for (const char* key : {"plan.wait-not", "plan.wait-shut", "plan.wait-clock", "plan.wait"}) {
            for (const std::string& more : {" " + form("plan.late"), std::string()}) {
                if (const auto late = filled(as_read(form(key) + more), as_read(text))) {
                    plan_.waits_until = moment(late->contains("until") ? late->at("until") : late->at("serve"));
                    return;
                }
            }
        }
    }

    void read_step(const card::Step& step) {
        const LocalTime at = moment(step.when);
        if (const auto in = by("plan.light-fire", step.text)) {
            plan_.cold = litres_in(in->at("cold"));
        } else if (by("plan.light-fire-warm", step.text)) {
        } else if (const auto warm = by("plan.warm-box", step.text)) {
            plan_.cold = litres_in(warm->at("cold"));
        } else if (const auto last = by("plan.pour-last", step.text)) {
            plan_.pours.push_back({at, litres_in(last->at("litres")), celsius_in(last->at("reading"))});
        } else if (const auto measured = by("plan.pour-last-measured", step.text)) {
            plan_.pours.push_back({at, litres_in(measured->at("litres")), std::nullopt});
        } else if (by("plan.food-in", step.text) || by("plan.this-food-in", step.text)) {
            plan_.food_in = at;
        } else if (const auto pour = by("plan.pour", step.text)) {
            plan_.pours.push_back({at, litres_in(pour->at("litres")), std::nullopt});
        } else if (!read_top_up_step(at, step.text) && !read_end(at, step.text)) {
            lost("plan", step.text);
        }
    }

    bool read_top_up_step(LocalTime at, const std::string& text) {
        const std::map<std::string, std::string> nothing{{"out", ""}};
        const std::map<std::string, std::string> first{{"out", form("plan.out-first", "litres", "first")}};
        for (const char* key : {"plan.top-up-wake", "plan.top-up-fixed", "plan.top-up", "plan.swap-wake",
                                "plan.swap-fixed", "plan.swap"}) {
            auto found = by(key, text, first);
            found = found ? found : by(key, text, nothing);
            if (!found) {
                continue;
            }
            PrintedTopUp one{at, litres_in(found->at("litres")), 0.0, false, std::nullopt, std::nullopt};
            one.swap = std::string_view(key).starts_with("plan.swap");
            one.out = one.swap ? one.litres : found->contains("first") ? litres_in(found->at("first")) : 0.0;
            if (found->contains("below")) {
                one.below = millimetres_in(found->at("below"));
            }
            if (found->contains("wake")) {
                one.wake = moment(found->at("wake"));
            }
            plan_.top_ups.push_back(one);
            return true;
        }
        return false;
    }

    bool read_end(LocalTime at, const std::string& text) {
        for (const char* key : {"plan.ready-clock", "plan.ready"}) {
            if (const auto ready = by(key, text)) {
                PrintedFood& one = food(ready->at("food"));
                one.ready = at;
                if (ready->contains("least")) {
                    one.ready_if = celsius_in(ready->at("least"));
                }
                return true;
            }
        }
        if (const auto finish = by("plan.finish", text); finish && finish->contains("takes")) {
            food(finish->at("food")).out = at;
            return true;
        }
        for (const char* key :
             {"plan.ready-raw", "plan.sear", "plan.sear-of", "plan.sear-steak", "plan.sear-steak-of", "plan.hot-water",
              "plan.sitting", "plan.take-out", "plan.take-out-finish", "plan.boil-finish", "plan.boil-finish",
              "plan.finish", "plan.serve", "plan.serve-risk"}) {
            if (by(key, text)) {
                return true;
            }
        }
        return false;
    }

    void read_fill() {
        each<card::KeyNumber>("fill", [&](const card::KeyNumber& key) {
            if (by("fill.key-label", key.label)) {
                plan_.fill_to = celsius_in(key.value + " " + key.unit);
            }
        });
        each<card::Note>("fill", [&](const card::Note& note) {
            if (const auto range = by("fill.settled", note.text)) {
                plan_.after_food = std::pair(celsius_in(range->at("low")), celsius_in(range->at("high")));
            }
        });
        each<card::Steps>("fill", [&](const card::Steps& steps) {
            for (const card::Step& step : steps.steps) {
                if (const auto level = by("fill.step-level", step.text)) {
                    plan_.food_in_below = millimetres_in(level->at("below"));
                }
            }
        });
        plan_.pours_bounded = words_.has("fill.step-level");
        plan_.reads = plan_.fill_to.has_value();
    }

    void read_top_up() {
        each<card::KeyNumber>("topup", [&](const card::KeyNumber& key) {
            if (by("topup.key-label", key.label)) {
                plan_.mark = celsius_in(key.value + " " + key.unit);
            }
        });
        each<card::Ladder>("topup", [&](const card::Ladder& ladder) {
            const bool both = ladder.right_heads.size() == 2;
            const bool by_level = by("topup.below", ladder.right_heads.front()).has_value();
            for (const card::Ladder::Rung& rung : ladder.rungs) {
                const auto litres = [](const std::string& text) {
                    return text == "–" ? std::nullopt : std::optional(litres_in(as_read(text)));
                };
                PrintedRung line;
                line.reading = celsius_in(as_read(rung.reading));
                if (by_level) {
                    line.below = millimetres_in(as_read(rung.amounts.front()));
                    line.pour = litres(rung.amounts.back());
                } else {
                    line.add = both ? litres(rung.amounts.front()) : std::nullopt;
                    line.swap = litres(rung.amounts.back());
                }
                plan_.ladder.push_back(line);
            }
            if (const auto floor = by("topup.floor", ladder.floor_reading)) {
                plan_.read_floor = celsius_in(floor->at("floor"));
            }
        });
        std::sort(plan_.ladder.begin(), plan_.ladder.end(),
                  [](const PrintedRung& a, const PrintedRung& b) { return a.reading > b.reading; });
        each<card::Note>("topup", [&](const card::Note& note) {
            if (const auto act = by("topup.act", note.text)) {
                plan_.action = celsius_in(act->at("action"));
            } else if (const auto full = by("topup.full", note.text)) {
                plan_.at_once = litres_in(full->at("litres"));
                plan_.boils_in = seconds_in(full->at("minutes"));
            } else if (const auto fixed = by("topup.fixed-full", note.text)) {
                plan_.boils_in = seconds_in(fixed->at("minutes"));
            } else if (const auto room = by("topup.room", note.text)) {
                plan_.room = litres_in(room->at("room"));
            }
        });
        if (plan_.reads && (!plan_.mark || plan_.ladder.empty() || plan_.at_once <= 0.0)) {
            lost("topup", "mark, ladder and what the pots give");
        }
    }

    void leave(const card::KeyNumber& key) {
        if (!by("night.key-label", key.label)) {
            return;
        }
        const double longest = seconds_in(as_read(key.value));
        // The fixed ones first: "after {mark}" may take anything.
        if (by("night.key-aside-clock", key.aside) || by("night.key-aside-shut", key.aside)) {
            plan_.leave_by_clock = longest;
        } else if (const auto after = by("night.key-aside", key.aside)) {
            plan_.leave.push_back({celsius_in(after->at("mark")), longest});
            if (after->contains("from")) {
                plan_.leave_from = moment(after->at("from"));
            }
        } else {
            lost("night", key.aside);
        }
    }

    void read_night() {
        each<card::KeyNumber>("night", [&](const card::KeyNumber& key) { leave(key); });
        each<card::KeyRow>("night", [&](const card::KeyRow& row) {
            for (const card::KeyNumber& key : row.numbers) {
                leave(key);
            }
        });
        each<card::Table>("night", [&](const card::Table& table) {
            if (table.columns.size() != 2 || !by("night.table-alone", table.columns.back().head)) {
                return;
            }
            for (const auto& row : table.rows) {
                plan_.leave.push_back({celsius_in(as_read(row.front())), seconds_in(as_read(row.back()))});
            }
        });
        if (plan_.leave.empty() && !plan_.leave_by_clock) {
            lost("night", "how long it may be left");
        }
    }

    const card::Deck& deck_;
    const words::Words& words_;
    const trip::Trip& trip_;
    PrintedPlan plan_;
};

}  // namespace

const card::Card& card_named(const card::Deck& deck, const std::string& key) {
    for (const card::Card& card : deck.cards) {
        if (card.key == key) {
            return card;
        }
    }
    throw std::runtime_error("the deck has no card " + key);
}

PrintedPlan read_deck(const card::Deck& deck, const words::Words& words, const trip::Trip& trip) {
    return Reader(deck, words, trip).read();
}

}  // namespace holdwater::support
