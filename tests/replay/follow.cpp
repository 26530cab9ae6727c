// SPDX-License-Identifier: MIT
#include "replay/follow.hpp"

#include "answer/hold/piece.hpp"
#include "facts/facts.hpp"
#include "heat/food_properties.hpp"
#include "heat/water.hpp"
#include "safety/kill.hpp"
#include "support/replay_box.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <stdexcept>
#include <variant>

namespace holdwater::support {
namespace {

constexpr double look_every = 300.0;  // s
constexpr double near_mark = 0.5;     // K, by which a reading may miss its mark

/// All that one scenario settles at its start.
struct Way {
    ReplayWorld world;
    double boiling = 0.0;      // C, in the box
    double litres = 1.0;       // poured to meant
    double error = 0.0;        // K, of the thermometer
    double cold = 0.0;         // C
    double liner_start = 0.0;  // C
};

double thickness_of(const trip::Food& food, SpreadDraws& draws) {
    // The share of a normal draw, or the least error where that is wider: one place in the band for both.
    const facts::Spread& share = facts::facts().spread("thickness");
    const double place = (draws.of("thickness") - 0.5 * (share.low + share.high)) / (0.5 * (share.high - share.low));
    const double half = std::max(food.thickness.si() * 0.5 * (share.high - share.low),
                                 facts::facts().spread("thickness.least").high * 1e-3);
    return food.thickness.si() + half * place;
}

ReplayFood food_of(const trip::Food& food, double diffusivity_share, double film, double start, double thickness) {
    const answer::Piece piece = answer::piece_of(food);
    const units::Temperature middle = food.start + (food.target - food.start) / 2.0;
    const heat::FoodProperties bound = heat::properties_from(piece.composition, middle, heat::MixingRule::parallel);
    const double heat_by_volume = bound.density.si() * bound.specific_heat.si();
    ReplayFood replay;
    replay.diffusivity = bound.diffusivity.si() * diffusivity_share;
    replay.conductivity = replay.diffusivity * heat_by_volume;
    replay.film = 1.0 / (1.0 / film + piece.bag.si());
    replay.capacity = piece.mass.si() * bound.specific_heat.si();
    replay.volume = piece.mass.si() / bound.density.si();
    replay.start = food.start.celsius() + start;
    replay.half = thickness / 2.0;
    if (food.shape == facts::Shape::slab && food.contact != facts::Contact::free) {
        replay.half = thickness;  // water on one face alone
    }
    replay.b = food.shape == facts::Shape::round ? 1 : food.shape == facts::Shape::ball ? 2 : 0;
    if (food.shape == facts::Shape::round && food.length) {
        replay.half_length = food.length->si() / 2.0;
    }
    return replay;
}

std::array<double, 3> inside_of(const trip::Box& box) {
    return {box.inside[0].si(), box.inside[1].si(), box.inside[2].si()};
}

/// W/K of the closed box in still air, and half its band as a share. Of a tested box the straight line through
/// ln(bath - air) over time; its readings may each be off by their error, two standard deviations of it.
struct Loss {
    double likely = 0.0;
    double half_band = 0.0;
};

Loss loss_of(const trip::Box& box) {
    const facts::Spread& least = facts::facts().spread("box-loss");
    Loss loss{0.0, 0.5 * (least.high - least.low)};
    if (const auto* given = std::get_if<units::HeatLoss>(&box.test)) {
        loss.likely = given->si();
        return loss;
    }
    const auto& readings = std::get<std::vector<trip::BoxReading>>(box.test);
    const auto n = static_cast<double>(readings.size());
    double mean_t = 0.0;
    double mean_y = 0.0;
    const auto above = [&](const trip::BoxReading& one) { return (one.bath - box.test_outside).si(); };
    for (const trip::BoxReading& one : readings) {
        mean_t += one.after.si() / n;
        mean_y += std::log(above(one)) / n;
    }
    double tt = 0.0;
    double ty = 0.0;
    double error = 0.0;
    for (const trip::BoxReading& one : readings) {
        const double t = one.after.si() - mean_t;
        tt += t * t;
        ty += t * (std::log(above(one)) - mean_y);
        error += std::pow(t * box.reading_error.si() / above(one), 2.0);
    }
    const double slope = -ty / tt;
    const double water = box.test_water.si() * heat::water_density(readings.front().bath).si();
    loss.likely = slope * (water * heat::water_specific_heat().si() + liner_capacity(inside_of(box)));
    loss.half_band = std::max(loss.half_band, std::sqrt(error) / tt / slope * 1.645 / 1.96);
    return loss;
}

Way draw_way(const trip::Trip& trip, SpreadDraws& draws) {
    const trip::Box& box = trip.boxes.front();
    Way way;
    way.boiling = heat::boiling_point_at(trip.altitude).value().celsius() - draws.of("boil.cooling");
    way.litres = draws.of("litres");
    way.error = box.thermometer.value_or(units::kelvins(0)).si() * draws.of("thermometer");
    way.cold = trip.fire.cold_water.celsius();
    const double outside = draws.of("outside");
    way.world.air = [&trip, outside](double at) {
        return trip.weather.air_at(trip.from.after(units::Duration{at})).celsius() + outside;
    };
    const double wind = trip.weather.wind == facts::Wind::still    ? 0.0
                        : trip.weather.wind == facts::Wind::breezy ? 1.0
                                                                   : 2.0;
    const Loss loss = loss_of(box);
    const facts::Spread& band = facts::facts().spread("box-loss");
    const double place = (draws.of("box-loss") - 0.5 * (band.low + band.high)) / (0.5 * (band.high - band.low));
    way.world.loss = loss.likely * std::max(0.1, 1.0 + loss.half_band * place) * wind_share(wind + draws.of("wind"));
    way.world.inside = inside_of(box);
    way.world.colder = std::max(0.0, draws.of("unstirred"));
    const double diffusivity = draws.of("diffusivity");
    const double film = draws.of("film");
    const double start = draws.of("start");
    for (const trip::Food& food : trip.foods) {
        way.world.foods.push_back(food_of(food, diffusivity, film, start, thickness_of(food, draws)));
    }
    way.liner_start = box.prewarmed ? facts::facts().temperature("prewarm.liner").celsius() : way.world.air(0.0);
    return way;
}

/// One core on its way: kill by the rows, summed up from look to look.
class CoreWatch {
  public:
    CoreWatch(const safety::Standard& standard, double start) : standard_(&standard), before_(start) {}

    void see(double at, double core) {
        const double span = at - last_;
        met_ += span * 0.5 * (rate(before_) + rate(core));
        left_ = core < facts::facts().temperature("come-up.from").celsius() ? at : left_;
        if (core >= facts::facts().temperature("come-up.to").celsius()) {
            arrived_ = std::min(arrived_, at);
        }
        if (core >= standard_->core_at_least.celsius()) {
            reached_ = std::min(reached_, at);
        }
        // Slow warming makes the cells harder: twice as much is asked.
        const double asked = arrived_ - left_ <= 3600.0 ? 1.0 : 2.0;
        if (met_ >= asked && at >= reached_ + standard_->core_at_least_for.si()) {
            done_ = std::min(done_, at);
        }
        peak_ = std::max(peak_, core);
        before_ = core;
        last_ = at;
    }
    void begin(double at) { last_ = left_ = at; }
    double done() const { return done_; }
    double peak() const { return peak_; }

  private:
    double rate(double core) const {
        const auto hold = safety::hold_time(*standard_->kill, units::celsius(core));
        return hold ? 1.0 / hold->si() : 0.0;
    }
    static constexpr double never = std::numeric_limits<double>::infinity();
    const safety::Standard* standard_;
    double before_, last_ = 0.0, met_ = 0.0, left_ = 0.0, arrived_ = never, reached_ = never, done_ = never;
    double peak_ = -never;
};

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
        const double serve = time(cards_.serve);
        until(serve);
        const ReplayState at_serving = box_.state();
        leave_alone(time(cards_.waits_until));
        box_.go_back_to(at_serving);
        if (!cards_.leave.empty() || cards_.leave_by_clock) {
            kept_[promise::leave] = left_well_;
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
            pour_until(*one.until);
            kept_[promise::fill] = shown() >= *one.until - near_mark;
            for (int more = 0; more < 3 && shown() < *one.until - near_mark; ++more) {
                delay_ += cards_.boils_in;  // one pot more is boiled, and all moves
                wait(time(one.at) + delay_);
                pour_until(*one.until);
            }
        }
    }

    void pour_until(double reading) {
        box_.open_lid(60.0 * draws_.of("lid.open"));
        const double wanted = reading - way_.error;
        const ReplayState before = box_.state();
        // What a pour does is steady in its litres: halve to the reading.
        double low = 0.0;
        double high = cards_.at_once * way_.litres * 1e-3;
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
        box_.put_food_in();
        note(promise::rim_fill, std::max(most_, box_.filled_volume()) <= inside_);
        most_ = 0.0;  // the fill is judged; from here on the top-ups
        for (CoreWatch& core : cores_) {
            core.begin(in_);
        }
        room_ = cards_.room.value_or(0.0);
        watch_gap();
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
        if (!cards_.reads) {
            pour(one.out, one.litres);
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
        const PrintedRung* rung = &cards_.ladder.back();  // below all of them: as much as the lowest says
        for (const PrintedRung& line : cards_.ladder) {
            if (line.reading <= reading) {
                rung = &line;  // between two lines the colder one
                break;
            }
        }
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

    /// What would become of the box from here on if nobody came any more. Each reading that was seen on the way says
    /// how long it may be left; the times begin at food in, or after a pour.
    void watch_gap() {
        const ReplayState here = box_.state();
        const double end = time(std::max(cards_.waits_until, cards_.serve));
        struct Seen {
            double at;
            double reading;
        };
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
        for (const Seen& one : seen) {
            double longest = 0.0;
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

    void judge_cores() {
        for (std::size_t f = 0; f < cores_.size(); ++f) {
            const PrintedFood& food = cards_.foods[f];
            if (food.ready) {
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
    double in_ = 0.0;     // s
    double delay_ = 0.0;  // s, by a pot more for the fill
    double room_ = 0.0;   // litres that the cook still counts on
    double most_ = 0.0;   // m3
    bool floor_kept_ = true;
    bool left_well_ = true;
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
