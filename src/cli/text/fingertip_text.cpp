// SPDX-License-Identifier: MIT
#include "cli/text/fingertip_text.hpp"

#include "cli/text/wrap.hpp"
#include "facts/facts.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace holdwater::cli {
namespace {

using safety::HandState;
using units::Toward;

units::Duration count_of_two() {
    return facts::facts().duration("touch.by-two");
}

/// The lowest bath that any rule lets food cook in.
units::Temperature lowest_floor() {
    const auto rules = facts::facts().rules();
    return std::min_element(rules.begin(), rules.end(),
                            [](const facts::Rule& a, const facts::Rule& b) { return a.cook_floor < b.cook_floor; })
        ->cook_floor;
}

/// "60 °C (140 °F)".
std::string degrees(units::Temperature t, Toward toward) {
    return units::print(t, units::System::both, {1.0, toward});
}

std::string bath_in_words(units::Temperature bath) {
    return units::print(bath, units::System::both, {0.1, Toward::nearest});
}

/// "1.8 s", "5 min", or what stands for never.
std::string time(const std::optional<units::Duration>& t, Toward toward, const char* never) {
    if (!t) {
        return never;
    }
    if (*t < units::minutes(2)) {
        const double seconds = units::round_to(t->si(), 0.1, toward);
        return fmt::format("{:g}\u00A0s", seconds);  // a no-break space keeps the unit on its line
    }
    return units::print(*t, toward);
}

/// The span that nine in ten hands lie in, in words; no middle, which would read like a measurement.
std::string sting_words(const char* hand, const safety::StingBand& band) {
    if (!band.p5) {
        return fmt::format("A {} hand: fewer than one in twenty is ever stung. ", hand);
    }
    const std::string from = "after " + time(band.p5, Toward::down, "");
    return band.p95 ? fmt::format(
                          "A {} hand: one in twenty is stung {} or sooner, one in twenty only after {} or "
                          "later. ",
                          hand, from, time(band.p95, Toward::up, ""))
                    : fmt::format("A {} hand: one in twenty is stung {} or sooner, one in twenty or more never. ", hand,
                                  from);
}

/// The hottest row of the table, which counts from above the row before it on, is an upper end: "under" its time.
std::string burn_row(const char* what, const std::optional<units::Duration>& t, units::Temperature bath) {
    const auto burns = facts::facts().burns();
    const bool at_most = t && bath > burns[burns.size() - 2].water && *t == *burns.back().second_degree;
    return fmt::format("  {:<26}{}{}\n", what, at_most ? "under " : "",
                       time(t, Toward::down, "no time published, which is no promise"));
}

std::string header() {
    return wrap(
        "A hand is never a thermometer. No sting, soon or late, shows that water is hot enough to make food "
        "safe, and none shows that it is too cool to burn. Take a thermometer, measured mixing (`holdwater mix`) "
        "or a sealed crumb of beeswax.");
}

std::string rule() {
    return wrap(
        "If a hand must go in: stir first, then one fingertip of a warm, dry, feeling adult hand, out at the first "
        "sting, and never in for longer than a count of two. Never a cold, numb or calloused hand, nor one that "
        "diabetes or nerve damage has dulled; never after alcohol; never a child. Cooking water never warms "
        "hands.");
}

std::string still_or_stirred(safety::Stirring stirring) {
    return stirring == safety::Stirring::stirred ? "stirred" : "not stirred";
}

/// Why two seconds in hot water already burn.
std::string why_two_burns() {
    const auto example = facts::facts().temperature("touch.example");
    const safety::BurnTimes burn = safety::burn_times(example);
    const safety::StingBand warm = safety::sting_band(example, HandState::warm, safety::Stirring::stirred);
    return wrap(fmt::format(
        "Why a count of two already risks a burn: at {} the shortest published times are {} for a deep burn of an "
        "adult and {} for a small child. The sting is no guard: about {} pass between the skin feeling it and a word "
        "or a "
        "jerk, and one warm hand in twenty is slower than {}.",
        degrees(example, Toward::nearest), time(burn.third, Toward::down, "unknown"),
        time(burn.infant, Toward::down, "unknown"), time(facts::facts().duration("hand.reaction"), Toward::nearest, ""),
        time(warm.p95, Toward::down, "any of them")));
}

/// Why the same water feels cooler to a cold hand.
std::string why_cold_reads_low() {
    const auto example = facts::facts().temperature("touch.example");
    const safety::StingBand warm = safety::sting_band(example, HandState::warm, safety::Stirring::stirred);
    const safety::StingBand cold = safety::sting_band(example, HandState::cold, safety::Stirring::stirred);
    return wrap(fmt::format(
        "Why a cold hand reads low: it hurts at the same skin temperature but has further to warm before it gets "
        "there. At {} one warm hand in twenty is stung only after {} or later, one cold hand in twenty only after {}. "
        "Water that scalds feels bearable to a cold hand, and a numb hand feels nothing at all.",
        degrees(example, Toward::nearest), time(warm.p95, Toward::nearest, "minutes"),
        time(cold.p95, Toward::nearest, "minutes")));
}

std::string model_note(bool from_sting) {
    const safety::Prior prior = safety::usual_prior();
    std::string note = "The bands come from a model of skin that no published sting time checks above 48 C";
    if (from_sting) {
        note += fmt::format(", and hold if any bath from {} to {} was equally likely before the dip",
                            degrees(prior.low, Toward::nearest), degrees(prior.high, Toward::nearest));
    }
    return wrap(note + "; the burn times are the shortest published (`holdwater sources --search burn`).");
}

std::string bath_verdict(const BathSting& answer) {
    const units::Duration two = count_of_two();
    if (!answer.warm.p50) {
        return fmt::format(
            "Most warm hands are never stung by this water. {} Below {} no kill is counted and much may grow, so it is "
            "too cool for any food.",
            answer.burn.second ? "It burns skin that stays in it all the same." : "That says nothing about food.",
            bath_in_words(lowest_floor()));
    }
    if (answer.burn.second && *answer.burn.second <= two) {
        return "Do not put a finger in: a burn can come within a count of two, before many hands are stung.";
    }
    const std::string child = answer.burn.infant && *answer.burn.infant <= two
                                  ? " A small child can be burned within that count: never a child's hand."
                                  : "";
    if (*answer.warm.p50 > two) {
        return "Most warm hands feel no sting within a count of two. Not stung means \"cannot tell\", and that is to "
               "be "
               "taken as too cool for food; staying in longer to be sure risks a burn." +
               child;
    }
    return "Some hands are stung within a count of two, many are not: the same water feels too hot to one person and "
           "bearable to the next." +
           child;
}

std::string band_row(const char* hand, const std::optional<safety::BathBand>& band) {
    if (!band) {
        return fmt::format("  {:<11}no hand is stung that soon\n", hand);
    }
    return fmt::format("  {:<11}{} to {}\n", hand, degrees(band->p5, Toward::down), degrees(band->p95, Toward::up));
}

std::string sting_verdict(const StingBaths& answer) {
    if (answer.sting > count_of_two()) {
        return "A finger that was in for longer than a count of two was in too long: do not repeat it, and cool any "
               "red or "
               "painful skin for 20 minutes under cool running water. Take the bath as too cool for food, and measure "
               "it.";
    }
    if (!answer.warm) {
        return "No hand feels and tells a sting that soon. Take the water as scalding, keep hands out, and measure it.";
    }
    return "What to do: keep hands out from now on, and measure the bath before any food goes in.";
}

std::string sting_proof(const StingBaths& answer) {
    if (!answer.warm) {
        return "What it proves: nothing about the food.";
    }
    const units::Temperature floor = lowest_floor();
    const std::string spread =
        fmt::format("the band is {} K wide",
                    units::number(units::round_to((answer.warm->p95 - answer.warm->p5).si(), 1.0, Toward::up), 0));
    if (answer.warm->p5 < floor) {
        return fmt::format(
            "What it proves: little. Even for a warm hand {}, and it reaches down to water too cool for any "
            "food (below {}).",
            spread, bath_in_words(floor));
    }
    return fmt::format(
        "What it proves: little. Even for a warm hand {}. The water is hot enough to burn, and how hot it is nobody "
        "can "
        "tell from that well enough to cook by.",
        spread);
}

}  // namespace

BathSting fingertip_bath(units::Temperature bath, safety::Stirring stirring) {
    return {bath, stirring, safety::sting_band(bath, HandState::warm, stirring),
            safety::sting_band(bath, HandState::cold, stirring), safety::burn_times(bath)};
}

StingBaths fingertip_sting(units::Duration sting, safety::Stirring stirring) {
    return {sting, stirring, safety::bath_band(sting, HandState::warm, stirring),
            safety::bath_band(sting, HandState::cold, stirring)};
}

std::string to_text(const BathSting& answer) {
    std::string text = header() + "\n";
    text += fmt::format("Water at {}, {}: from touch to the first sting\n", bath_in_words(answer.bath),
                        still_or_stirred(answer.stirring));
    text += wrap(sting_words("warm", answer.warm), 2) + wrap(sting_words("cold", answer.cold), 2);
    text += "The same water on skin: shortest published time to a burn, of the next hotter row\n";
    text += burn_row("adult, second degree", answer.burn.second, answer.bath);
    text += burn_row("adult, third degree", answer.burn.third, answer.bath);
    text += burn_row("small child, severe", answer.burn.infant, answer.bath) + "\n";
    text +=
        wrap(bath_verdict(answer)) + "\n" + why_two_burns() + why_cold_reads_low() + "\n" + rule() + model_note(false);
    return plain_spaces(text);
}

std::string to_text(const StingBaths& answer) {
    std::string text = header() + "\n";
    text += fmt::format("First sting after {}, {}: nine in ten such baths lie within\n",
                        time(answer.sting, Toward::nearest, ""),
                        answer.stirring == safety::Stirring::stirred ? "stirred water" : "water not stirred");
    text += band_row("warm hand", answer.warm) + band_row("cold hand", answer.cold) + "\n";
    text += wrap(sting_proof(answer)) + wrap(sting_verdict(answer)) + "\n";
    text += why_two_burns() + why_cold_reads_low() + "\n" + rule() + model_note(true);
    return plain_spaces(text);
}

}  // namespace holdwater::cli
