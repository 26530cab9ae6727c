// SPDX-License-Identifier: MIT
#include "cli/text/review_text.hpp"

#include "facts/facts.hpp"
#include "facts/published.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace holdwater::cli {
namespace {

using answer::FoodReview;
using answer::Verdict;
using units::Duration;
using units::Toward;

std::string capitals(std::string_view text) {
    std::string result(text);
    for (char& c : result) {
        c = c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    }
    return result;
}

class ReviewText {
  public:
    ReviewText(const trip::Trip& trip, const trip::Log& log, const answer::Review& review, std::string stamp)
        : trip_(trip), log_(log), review_(review), stamp_(std::move(stamp)) {}

    std::string all() {
        head();
        for (const FoodReview& food : review_.foods) {
            one(food);
        }
        noticed();
        cautions();
        return std::move(out_);
    }

  private:
    std::string degrees(units::Temperature t, Toward toward = Toward::nearest, double step = 0.1) const {
        return units::print(t, trip_.units, {step, toward});
    }
    /// A limit of the rules, as its publisher prints it.
    std::string limit(units::Temperature t) const {
        const bool whole = std::abs(std::remainder(t.celsius(), 1.0)) < 1e-9;
        return whole || facts::printed_pair(t) != nullptr ? units::written(facts::published(t, trip_.units))
                                                          : degrees(t, Toward::up);
    }
    /// Times that speak against the food are rounded up, and a short one is still printed.
    static std::string time_up(Duration d) { return d.si() > 0 ? units::print(d, Toward::up) : "0 min"; }
    /// Growth is rounded up, so that what is printed as under 1 is under 1.
    static std::string logs(double growth) {
        return units::number(units::round_to(std::max(growth, 0.0), 0.01, Toward::up), 2);
    }
    template <class... Values>
    void line(fmt::format_string<Values...> form, Values&&... values) {
        out_ += fmt::format(form, std::forward<Values>(values)...) + "\n";
    }

    std::string action(const FoodReview& food) const {
        const std::string fire = limit(facts::facts().temperature("finish.full")) + " inside over the fire";
        switch (food.verdict) {
            case Verdict::eat:
                return "Eat.";
            case Verdict::not_done:
                return not_done(food);
            case Verdict::finish_and_eat_next:
                if (food.standard.finish && !(food.fall.below_floor > Duration{0})) {
                    return fmt::format("Bring it to {}{} inside over the fire at once after the bath, then eat: {}.",
                                       limit(food.standard.finish->core),
                                       food.standard.finish->hold.si() > 0
                                           ? " for " + units::print(food.standard.finish->hold, Toward::up)
                                           : "",
                                       clause(food.standard.finish->why));
                }
                // Warming the bath up again is no way out for raw food, for food with germs inside or for the weak.
                if (!food.ready_late || food.standard.finish || trip_.at_risk) {
                    return fmt::format("Bring it to {} at once and eat it at the next meal.", fire_of(food));
                }
                return fmt::format("Bring it to {}, or the bath back above {} at once; eat it at the next meal.", fire,
                                   limit(food.standard.hold_floor));
            case Verdict::finish_and_eat_now:
                return fmt::format("Bring it to {} and eat it now; keep none.", fire_of(food));
            case Verdict::throw_away:
                return "Throw it away. Reheating does not undo toxin.";
        }
        return {};
    }
    /// What to do with food that is not done; staying in the bath is only named where that makes it safe.
    std::string not_done(const FoodReview& food) const {
        const std::string fire = "bring it to " + fire_of(food) + " and eat it at once";
        if (!food.stay_known) {
            return fmt::format(
                "Not safe yet: do not eat. The notes do not say for how long it was in the bath: write that into the "
                "log and ask again, or {}.",
                fire);
        }
        if (food.out_written) {
            return fmt::format("Not safe yet: do not eat. It came out too early: {}.", fire);
        }
        if (!food.missing) {
            return fmt::format("Not safe yet: do not eat. The bath as read last never makes it safe: {}.", fire);
        }
        return fmt::format("Not safe yet: do not eat. Leave it in the bath, or {}.", fire);
    }
    /// Without the full stop that a sentence of its own ends with.
    static std::string_view clause(std::string_view text) {
        return text.ends_with('.') ? text.substr(0, text.size() - 1) : text;
    }
    std::string fire_of(const FoodReview& food) const {
        units::Temperature core = facts::facts().temperature("finish.full");
        std::string hold;
        if (food.standard.finish && food.standard.finish->core >= core) {
            core = food.standard.finish->core;
            if (food.standard.finish->hold.si() > 0) {
                hold = " for " + units::print(food.standard.finish->hold, Toward::up);
            }
        }
        return limit(core) + hold + " inside over the fire";
    }

    void head() {
        const FoodReview& worst = review_.foods[review_.worst];
        line("{}: {}", trip_.name, capitals(verdict_phrase(review_.verdict)));
        if (review_.foods.size() > 1) {
            line("The worst of {} foods leads: {}.", review_.foods.size(), worst.food->name);
        }
        line("{}", action(worst));
        line("Below the floor for up to {}; growth at most {} log10 (1 is too much).", time_up(review_.below_floor),
             logs(review_.growth));
        if (review_.if_unpoured) {
            std::string rows;
            for (const std::size_t row : review_.if_unpoured->rows) {
                rows += (rows.empty() ? "" : ", ") + watch(log_.rows[row].at);
            }
            line(
                "If nothing was poured but what the log says: {}, below the floor for up to {}. Only who was there "
                "knows: then write \"nothing poured\" into the note of {}, and ask again. Not sure? It stays as above.",
                verdict_phrase(review_.if_unpoured->verdict), time_up(review_.if_unpoured->below_floor), rows);
        }
        if (review_.without_doubtful) {
            line("Without the doubtful readings: {}, below the floor for up to {}. Go by the stricter.",
                 verdict_phrase(review_.without_doubtful->verdict), time_up(review_.without_doubtful->below_floor));
        }
    }

    void one(const FoodReview& food) {
        const facts::Facts& facts = facts::facts();
        line("");
        line("{}: {}", food.food->name, verdict_phrase(food.verdict));
        if (review_.foods.size() > 1) {
            line("  {}", action(food));
        }
        line("  by {} {} ({})", food.reason.rule, food.reason.figure,
             food.reason.source.empty() ? "judgement" : facts.source(food.reason.source).citation);
        line("  in at {}, looked at until {}", watch(food.in), watch(food.out));
        line("  core from {} to {}: {}", limit(facts.temperature("come-up.from")),
             limit(facts.temperature("come-up.to")), come_up(food));
        line("  {}; core at the end {}, peak likely {}", kill_words(food), degrees(food.core_end, Toward::down),
             degrees(food.core_peak));
        if (food.ready_late) {
            line("  safe from {} on{}", watch(food.in + *food.ready_late),
                 food.ready_likely ? fmt::format(" (likely {})", watch(food.in + *food.ready_likely)) : "");
        } else if (!food.stay_known) {
            line("  not safe yet: what is counted as kill may be too much, since nobody knows how long it was in");
        } else if (food.out_written && food.missing) {
            line("  not safe yet: {} more would have been needed", units::print(*food.missing, Toward::up));
        } else if (food.missing) {
            line("  not safe yet: {} more, if the bath stays as it was read last",
                 units::print(*food.missing, Toward::up));
        } else {
            line("  not safe yet, and never at the bath of the last row: it is credited from {} on, at the core",
                 limit(std::max(food.standard.kill->rows.front().core, food.standard.core_at_least)));
        }
        line(
            "  below {} while cooking for up to {} (the same clock table counts), below {} after done for up to {}; "
            "likely {} in all",
            limit(food.standard.cook_floor), time_up(food.below_cook_floor),
            limit(std::max(food.standard.cook_floor, food.standard.hold_floor)), time_up(food.below_hold_floor),
            units::print(food.below_likely));
        line("  bath below {} for up to {}; a top-up neither stops nor resets the clock",
             degrees(facts.temperature("fall.deep"), Toward::up), time_up(food.fall.below_50));
        line("  growth: {} log10 at most, {} likely; {} without lag", logs(food.growth.bound), logs(food.growth.likely),
             logs(food.growth.without_lag));
        line("  growth while it warmed: {} at most, {} likely; less what died, {} left at the end{}",
             logs(food.come_up_growth.bound), logs(food.come_up_growth.likely), logs(food.growth_left),
             food.waits_for_growth ? ": not ready before that is 0" : "");
        if (food.standard.finish && food.verdict != Verdict::throw_away) {
            line("  finish over the fire to {}: {}", limit(food.standard.finish->core),
                 clause(food.standard.finish->why));
        }
        if (food.verdict == Verdict::eat && !food.consumer_met) {
            line("  the core may have stayed under the consumer advice of {}{}", limit(food.standard.consumer_core),
                 food.standard.consumer_hold.si() > 0 ? " for " + units::print(food.standard.consumer_hold, Toward::up)
                                                      : "");
        }
        for (const answer::CoreReading& reading : food.core_readings) {
            line("  core at {}: read {}, computed {} likely, {} at the least", watch(reading.at), degrees(reading.read),
                 degrees(reading.likely), degrees(reading.cautious, Toward::down));
        }
    }

    static std::string kill_words(const FoodReview& food) {
        if (food.standard.kill->none_asked) {
            return food.standard.kill->claim;
        }
        return fmt::format(
            "kill: {} times what {} asks{}", units::number(units::round_to(food.margin, 0.01, Toward::down), 2),
            food.standard.kill->claim,
            food.adaptation > 1.0 ? fmt::format(" (hold times x{:.0f} after a slow warm-up)", food.adaptation) : "");
    }

    static std::string come_up(const FoodReview& food) {
        std::string took = food.come_up ? units::print(*food.come_up, Toward::up) : "not there yet";
        switch (food.come_up_verdict) {
            case safety::ComeUpVerdict::fine:
                return took;
            case safety::ComeUpVerdict::slow:
                return took + ", slow";
            case safety::ComeUpVerdict::refused:
                return took + ", too long (the limit of 6 h is from memory)";
        }
        return took;
    }

    void noticed() {
        line("\nNoticed (readings less {}; between readings the lowest that this box allows):",
             units::print(review_.error, trip_.units, {0.1, Toward::nearest}));
        for (const answer::Noticed& one : review_.timeline) {
            line("  {}  {}", watch(one.at), one.text);
        }
    }

    void cautions() {
        const bool long_stay = std::any_of(review_.foods.begin(), review_.foods.end(), [](const FoodReview& food) {
            return food.verdict == Verdict::eat && food.out - food.in > units::hours(12);
        });
        line("");
        if (long_stay) {
            line(
                "A long stay in the bath is harmless only as long as neither bath nor core ever falls below the "
                "floor.");
        }
        line("Heat does not undo toxin that germs have made. When in doubt, throw it out.");
        line("Local food-safety rules have the last word.");
        line("Stamp of the trip: {}", stamp_);
    }

    std::string watch(Duration at) const { return answer::watch(log_, at); }

    const trip::Trip& trip_;
    const trip::Log& log_;
    const answer::Review& review_;
    std::string stamp_;
    std::string out_;
};

}  // namespace

std::string_view verdict_word(Verdict verdict) {
    switch (verdict) {
        case Verdict::eat:
            return "eat";
        case Verdict::not_done:
            return "not-done";
        case Verdict::finish_and_eat_next:
            return "finish-and-eat-next";
        case Verdict::finish_and_eat_now:
            return "finish-and-eat-now";
        case Verdict::throw_away:
            return "throw-away";
    }
    return "throw-away";
}

std::string_view verdict_phrase(Verdict verdict) {
    switch (verdict) {
        case Verdict::eat:
            return "eat";
        case Verdict::not_done:
            return "not safe yet";
        case Verdict::finish_and_eat_next:
            return "finish over the fire, eat next";
        case Verdict::finish_and_eat_now:
            return "finish over the fire, eat now";
        case Verdict::throw_away:
            return "throw away";
    }
    return "throw away";
}

std::string review_text(const trip::Trip& trip, const trip::Log& log, const answer::Review& review,
                        const std::string& stamp) {
    return ReviewText(trip, log, review, stamp).all();
}

}  // namespace holdwater::cli
