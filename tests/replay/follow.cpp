// SPDX-License-Identifier: MIT
#include "replay/follow.hpp"

#include "answer/hold/piece.hpp"
#include "replay/core_watch.hpp"
#include "replay/way.hpp"
#include "support/replay_box.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <utility>

namespace holdwater::support {
namespace {

constexpr double look_every = 300.0;  // s
constexpr double near_mark = 0.5;     // K, by which a reading may miss its mark

class Cook {
  public:
    Cook(const trip::Trip& trip, const ToKeep& keep, const PrintedPlan& cards, SpreadDraws& draws)
        : trip_(trip),
          keep_(keep),
          cards_(cards),
          draws_(draws),
          way_(draw_way(trip, draws)),
          box_(way_.world, way_.liner_start),
          inside_(way_.world.inside[0] * way_.world.inside[1] * way_.world.inside[2]) {
        for (std::size_t f = 0; f < keep.standards.size(); ++f) {
            cores_.emplace_back(keep.standards[f], way_.world.foods[f].start);
        }
    }

    Kept live() {
        fill();
        food_in();
        for (const PrintedTopUp& one : cards_.top_ups) {
            top_up(one);
        }
        until(end_of_bath());
        const ReplayState at_serving = box_.state();
        leave_alone(time(cards_.waits_until));
        box_.go_back_to(at_serving);
        if (!cards_.leave.empty() || cards_.leave_by_clock) {
            kept_[promise::leave] = left_well_;
        }
        if (!cards_.looks.empty()) {
            kept_[promise::look] = looked_well_;
        }
        kept_[promise::floor] = floor_kept_;
        if (!cards_.top_ups.empty()) {
            kept_[promise::rim] = most_ <= inside_;
        }
        if (cards_.waits_until > cards_.serve) {
            kept_[promise::wait] = below_since_ > time(cards_.waits_until);
        }
        judge_cores();
        return kept_;
    }

  private:
    double time(units::LocalTime at) const { return at.since(trip_.from).si(); }
    double shown() const { return box_.bath() + way_.error; }

    void pour(double out_litres, double litres) {
        box_.open_lid(60.0 * draws_.of("lid.open"));
        box_.pour(out_litres * 1e-3, litres * way_.litres * 1e-3, way_.boiling);
        most_ = std::max(most_, box_.filled_volume());
    }

    /// Water alone, to a moment.
    void wait(double moment) {
        box_.advance_to(moment, 3600.0, [](const ReplayLook&) { return true; });
    }

    void fill() {
        box_.pour(0.0, cards_.cold * way_.litres * 1e-3, way_.cold);
        for (const PrintedPour& one : cards_.pours) {
            wait(time(one.at));
            if (!one.until) {
                pour(0.0, one.litres);
                continue;
            }
            // "Pour, stir, read. Stop at": as much as it takes and the pots give; a litre in hand is poured in sips, so
            // that the true litres are what counts, not the marks of the pot.
            pour_until(*one.until, cards_.pours_bounded ? std::min(one.litres, cards_.at_once) : cards_.at_once);
        }
        if (!cards_.fill_to) {
            return;
        }
        kept_[promise::fill] = shown() >= *cards_.fill_to - near_mark;
        for (int more = 0; more < 3 && shown() < *cards_.fill_to - near_mark; ++more) {
            delay_ += cards_.boils_in;  // one pot more is boiled, and all moves
            wait(time(cards_.pours.back().at) + delay_);
            pour_until(*cards_.fill_to, cards_.at_once);
        }
    }

    /// To a reading, with so many litres by the marks of the pots.
    void pour_until(double reading, double litres) {
        box_.open_lid(60.0 * draws_.of("lid.open"));
        const double wanted = reading - way_.error;
        const ReplayState before = box_.state();
        // What a pour does is steady in its litres: halve to the reading.
        double low = 0.0;
        double high = litres * way_.litres * 1e-3;
        const auto after = [&](double volume) {
            box_.go_back_to(before);
            box_.pour(0.0, volume, way_.boiling);
            return box_.bath();
        };
        if (after(high) > wanted) {
            for (int i = 0; i < 30; ++i) {
                const double middle = 0.5 * (low + high);
                (after(middle) > wanted ? high : low) = middle;
            }
            after(high);
        }
        if (shown() > reading + near_mark) {  // "too hot: add cold"
            const ReplayState hot = box_.state();
            double less = 0.0;
            double more = 0.02;
            for (int i = 0; i < 30; ++i) {
                const double middle = 0.5 * (less + more);
                box_.go_back_to(hot);
                box_.pour(0.0, middle, way_.cold);
                (shown() > reading ? less : more) = middle;
            }
        }
        most_ = std::max(most_, box_.filled_volume());
    }

    void food_in() {
        in_ = time(cards_.food_in) + delay_;
        wait(in_);
        box_.open_lid(60.0 * draws_.of("lid.open"));
        scoop_to(cards_.food_in_below);
        box_.put_food_in();
        note(promise::rim_fill, std::max(most_, box_.filled_volume()) <= inside_);
        most_ = 0.0;  // the fill is judged; from here on the top-ups
        for (CoreWatch& core : cores_) {
            core.begin(in_);
        }
        room_ = cards_.room.value_or(0.0);
        watch_gap();
    }

    /// Out with what stands above a line on the wall.
    void scoop_to(std::optional<double> below_mm) {
        if (below_mm) {
            const double allowed = inside_ - *below_mm * 1e-3 * way_.world.inside[0] * way_.world.inside[1];
            box_.pour(std::max(0.0, box_.filled_volume() - allowed), 0.0, box_.bath());
        }
    }

    /// When the last food has left the bath.
    double end_of_bath() const {
        double end = 0.0;
        for (const PrintedFood& food : cards_.foods) {
            end = std::max(end, time(food.out.value_or(cards_.serve)));
        }
        return end;
    }

    bool watch(const ReplayLook& look) {
        floor_kept_ = floor_kept_ && look.seen >= keep_.floor;
        for (std::size_t f = 0; f < cores_.size(); ++f) {
            cores_[f].see(look.at, look.cores[f]);
        }
        return true;
    }

    void until(double moment) {
        box_.advance_to(moment, look_every, [this](const ReplayLook& look) { return watch(look); });
    }

    void top_up(const PrintedTopUp& one) {
        const double at = time(one.at) + 60.0 * draws_.of("top-up.late");
        if (at <= in_ || at >= time(cards_.serve)) {
            return;
        }
        until(at);
        read_.emplace_back(at, shown());
        if (!cards_.reads) {
            scoop_to(one.below);
            pour(one.out, one.litres);
        } else if (cards_.ladder.front().pour) {
            pour_to_line(rung_at(shown()));
        } else {
            const auto [out, in] = by_the_ladder(one);
            if (in > 0.0) {
                pour(out, in);
            }
            note(promise::ladder, at_mark());
            pour_on(one, in);
            note(promise::mark, at_mark());
        }
        watch(box_.look());
        watch_gap();
    }

    /// Between two lines the colder one; below all of them as much as the lowest says.
    const PrintedRung& rung_at(double reading) const {
        for (const PrintedRung& line : cards_.ladder) {
            if (line.reading <= reading) {
                return line;
            }
        }
        return cards_.ladder.back();
    }

    /// "First take out what stands above that line, then pour": bit by bit, until it reads the mark.
    void pour_to_line(const PrintedRung& rung) {
        if (shown() < *cards_.mark) {
            scoop_to(rung.below);
            pour_until(*cards_.mark, std::min(*rung.pour, cards_.at_once));
            if (*rung.pour > cards_.at_once && !at_mark()) {  // "scoop, boil twice"
                until(box_.state().now + cards_.boils_in);
                scoop_to(rung.below);
                pour_until(*cards_.mark, std::min(*rung.pour - cards_.at_once, cards_.at_once));
            }
            note(promise::mark, at_mark());
        }
    }

    bool at_mark() const { return shown() >= cards_.mark.value() - near_mark; }

    /// Kept so far and now.
    void note(const char* promise, bool kept) {
        const auto known = kept_.find(promise);
        kept_[promise] = kept && (known == kept_.end() || known->second);
    }

    /// "Top up to, stir, then read": what the pots still hold, in sips, until it reads the mark. Out of a full box
    /// comes as much first, which the cook must have judged: what is poured is what was taken out.
    void pour_on(const PrintedTopUp& one, double poured) {
        const double left = cards_.at_once - poured;
        if (at_mark() || left <= 0.0) {
            return;
        }
        const ReplayState before = box_.state();
        const auto with = [&](double litres) {
            box_.go_back_to(before);
            const double out = one.swap ? litres : std::max(0.0, litres - room_);
            box_.pour(out * 1e-3, litres * way_.litres * 1e-3, way_.boiling);
            return shown();
        };
        double low = 0.0;
        double high = left;
        if (with(left) > *cards_.mark) {
            for (int i = 0; i < 30; ++i) {
                const double middle = 0.5 * (low + high);
                (with(middle) > *cards_.mark ? high : low) = middle;
            }
            with(high);
        }
        room_ = std::max(0.0, room_ - high);
        most_ = std::max(most_, box_.filled_volume());
    }

    /// Litres out, then in: by the ladder, as its lines and the clock's say.
    std::pair<double, double> by_the_ladder(const PrintedTopUp& one) {
        const double reading = shown();
        if (reading >= *cards_.mark) {
            return {0.0, 0.0};
        }
        const PrintedRung* rung = &rung_at(reading);
        const auto given = [&](double litres) { return std::min(litres, cards_.at_once); };
        if (!one.swap && rung->add && *rung->add <= room_ + 1e-9) {
            room_ -= *rung->add;
            return {0.0, given(*rung->add)};
        }
        if (!one.swap && one.out > 0.0) {
            room_ = 0.0;
            return {one.out, given(one.litres)};
        }
        if (!one.swap && !cards_.room) {
            return {0.0, given(rung->add.value_or(one.litres))};
        }
        room_ = 0.0;
        const double litres = given(rung->swap.value_or(one.litres));
        return {litres, litres};
    }

    struct Seen {
        double at;
        double reading;
    };

    /// When whoever first reads at `first` pours, going by the card Reading alone; of later readings only as many are
    /// known as were seen before the bath was under the floor.
    double poured_by_looks(const std::vector<Seen>& seen, std::size_t first) const {
        for (std::size_t k = first;;) {
            if (seen[k].reading <= *cards_.action) {
                return seen[k].at + cards_.boils_in;
            }
            double again = 0.0;
            for (const PrintedLook& row : cards_.looks) {
                again = row.reading <= seen[k].reading ? std::max(again, row.again) : again;
            }
            const double next = seen[k].at + again;
            while (k + 1 < seen.size() && seen[k].at < next) {
                ++k;
            }
            if (seen[k].at < next) {
                return next;
            }
        }
    }

    /// What would become of the box from here on if nobody came any more. Each reading that was seen on the way says
    /// how long it may be left, and when to look again; the times begin at food in, or after a pour.
    void watch_gap() {
        const ReplayState here = box_.state();
        const double end = time(std::max(cards_.waits_until, cards_.serve));
        std::vector<Seen> seen{{box_.state().now, shown()}};
        double below = std::numeric_limits<double>::infinity();
        box_.advance_to(end, look_every, [&](const ReplayLook& look) {
            seen.push_back({look.at, look.bath + way_.error});
            if (look.seen < keep_.floor) {
                below = look.at;
            }
            return look.seen >= keep_.floor;
        });
        box_.go_back_to(here);
        const double from = cards_.leave_from ? time(*cards_.leave_from) : 0.0;
        for (std::size_t k = 0; k < seen.size() && !cards_.looks.empty() && seen[k].at < below; ++k) {
            looked_well_ = looked_well_ && (seen[k].reading <= *cards_.action || poured_by_looks(seen, k) <= below);
        }
        for (const Seen& one : seen) {
            double longest = 0.0;
            if (one.at < from) {
                continue;
            }
            if (cards_.leave_by_clock) {
                longest = one.at == seen.front().at && (one.at > in_ || cards_.top_ups.empty()) ? *cards_.leave_by_clock
                                                                                                : 0.0;
            }
            for (const PrintedLeave& row : cards_.leave) {
                longest = row.reading <= one.reading ? std::max(longest, row.longest) : longest;
            }
            // Below was seen a look late at the most.
            left_well_ = left_well_ && (longest == 0.0 || one.at + longest <= below);
        }
    }

    void leave_alone(double moment) {
        box_.advance_to(moment, look_every, [&](const ReplayLook& look) {
            if (look.seen < keep_.floor) {
                below_since_ = std::min(below_since_, look.at);
            }
            return look.seen >= keep_.floor;
        });
    }

    double lowest_read_by(double moment) const {
        double lowest = std::numeric_limits<double>::infinity();
        for (const auto& [at, reading] : read_) {
            lowest = at <= moment ? std::min(lowest, reading) : lowest;
        }
        return lowest;
    }

    void judge_cores() {
        for (std::size_t f = 0; f < cores_.size(); ++f) {
            const PrintedFood& food = cards_.foods[f];
            // "If never under": what was read until then.
            if (food.ready && lowest_read_by(time(*food.ready)) >= food.ready_if.value_or(-300.0)) {
                note(promise::ready, cores_[f].done() <= time(*food.ready) + look_every);
            }
            if (food.peak) {
                note(promise::peak, cores_[f].peak() <= *food.peak);
            }
        }
    }

    const trip::Trip& trip_;
    const ToKeep& keep_;
    const PrintedPlan& cards_;
    SpreadDraws& draws_;
    Way way_;
    ReplayBox box_;
    double inside_ = 0.0;  // m3
    std::vector<CoreWatch> cores_;
    Kept kept_;
    double in_ = 0.0;                              // s
    double delay_ = 0.0;                           // s, by a pot more for the fill
    double room_ = 0.0;                            // litres that the cook still counts on
    double most_ = 0.0;                            // m3
    std::vector<std::pair<double, double>> read_;  // s, C: at the top-ups
    bool floor_kept_ = true;
    bool left_well_ = true;
    bool looked_well_ = true;
    double below_since_ = std::numeric_limits<double>::infinity();
};

}  // namespace

ToKeep ToKeep::of(const trip::Trip& trip) {
    ToKeep keep;
    for (const trip::Food& food : trip.foods) {
        keep.standards.push_back(answer::standard_of(food, trip, trip.boxes.front()).value());
        const safety::Standard& standard = keep.standards.back();
        keep.floor = std::max({keep.floor, standard.cook_floor.celsius(), standard.hold_floor.celsius()});
    }
    return keep;
}

bool has_grid(const trip::Food& food) {
    const bool free = food.contact == facts::Contact::free;
    return food.shape == facts::Shape::slab || (food.shape != facts::Shape::block && free);
}

Kept follow(const trip::Trip& trip, const ToKeep& keep, const PrintedPlan& cards, SpreadDraws& draws) {
    return Cook(trip, keep, cards, draws).live();
}

}  // namespace holdwater::support
