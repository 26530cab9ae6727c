// SPDX-License-Identifier: MIT
#include "answer/water/mix.hpp"

#include "facts/facts.hpp"
#include "heat/water.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace holdwater::answer {
namespace {

using units::Temperature;

/// One way in which the pouring may differ from what was meant.
struct Slip {
    double ratio = 1.0;    // hot parts to cold ones, as poured over as meant
    double cooled = 0.0;   // K that the boiling water has lost
    double weather = 0.0;  // K by which the boiling point is off
    double cold = 0.0;     // K by which the cold water is warmer
    double melted = 0.0;   // share of the snow that is water already
    double frost = 0.0;    // K below 0 C of the snow
    double vessel = 0.0;   // heat capacity of the wall over that of the water
};

Temperature cold_of(const MixQuestion& question) {
    const auto* water = std::get_if<Temperature>(&question.cold);
    return water != nullptr ? *water : units::celsius(0.0);
}

bool is_snow(const MixQuestion& question) {
    const auto* frozen = std::get_if<Frozen>(&question.cold);
    return frozen != nullptr && *frozen == Frozen::snow;
}

/// Mass of boiling water for each part over mass of cold for each part: 1 by mass; by volume the densities decide.
double mass_of_part(const MixQuestion& question) {
    if (question.by == Measure::mass) {
        return 1.0;
    }
    return heat::water_density(question.boiling) / heat::water_density(cold_of(question));
}

/// Returns the temperature [C] of m kg of boiling water with 1 kg of cold in a wall that was at T_v:
/// T = (m T_b + T_c - s (L + c_i f)/c + v (m + 1) T_v) / ((m + 1)(1 + v)).
/// T_b, T_c: boiling and cold water [C]; s: share that is ice; L: heat of fusion [J/kg]; f: K below 0 C and c_i
/// [J/(kg K)] of the ice; c [J/(kg K)] of water; v: heat capacity of the wall over that of the water.
/// Source: energy balance, no losses to the air. Valid once all ice has melted, 0 to 100 C. Outside: below 0 C ice is
/// left over and the result has no meaning.
Temperature balance(const MixQuestion& question, double hot_parts, const Slip& slip) {
    const facts::Facts& facts = facts::facts();
    const double water = heat::water_specific_heat().si();
    const double hot = hot_parts * slip.ratio * mass_of_part(question);
    double heat =
        hot * (question.boiling.celsius() - slip.cooled + slip.weather) + cold_of(question).celsius() + slip.cold;
    if (is_snow(question)) {
        const double melting = facts.value("ice.fusion") + facts.value("ice.specific-heat") * slip.frost;
        heat -= (1.0 - slip.melted) * melting / water;
    }
    heat += slip.vessel * (hot + 1.0) * facts.value("mix.vessel-temperature");
    return units::celsius(heat / ((hot + 1.0) * (1.0 + slip.vessel)));
}

/// The ends. Errors that go either way are taken at their ends through the balance and added in squares, as they do not
/// depend on each other; each pour has its own. Errors that only go one way (a cold wall, snow that drips) move the end
/// on their side by half of what they may do, and the rest counts in squares: so the ends hold with and without them.
class Ends {
  public:
    Ends(const MixQuestion& question, double hot_parts, double cooled)
        : question_(question), hot_parts_(hot_parts), cooled_(cooled), likely_(with({})) {}

    Temperature likely() const { return likely_; }
    void either_way(const Slip& slip) { square(off(slip)); }
    void one_way(const Slip& half, const Slip& all) {
        const double first = off(half);
        (first < 0.0 ? shift_below_ : shift_above_) += std::abs(first);
        square(off(all) - first);
    }
    Temperature low() const { return likely_ - units::kelvins(shift_below_ + std::sqrt(below_)); }
    Temperature high() const { return likely_ + units::kelvins(shift_above_ + std::sqrt(above_)); }

  private:
    Temperature with(Slip slip) const {
        slip.cooled += cooled_;
        return balance(question_, hot_parts_, slip);
    }
    double off(const Slip& slip) const { return (with(slip) - likely_).si(); }
    void square(double off) { (off < 0.0 ? below_ : above_) += off * off; }

    const MixQuestion& question_;
    double hot_parts_;
    double cooled_;  // K, on the way, the middle of what is usual
    Temperature likely_;
    double shift_below_ = 0.0;
    double shift_above_ = 0.0;
    double below_ = 0.0;
    double above_ = 0.0;
};

void add_cold_side(const MixQuestion& question, Ends& ends) {
    const facts::Facts& facts = facts::facts();
    if (is_snow(question)) {
        const double water = facts.value("mix.snow-water");
        const double frost = facts.value("mix.snow-frost");
        ends.one_way({.melted = water / 2.0}, {.melted = water});
        ends.one_way({.frost = frost / 2.0}, {.frost = frost});
    } else if (std::holds_alternative<Temperature>(question.cold)) {
        ends.either_way({.cold = facts.value("mix.cold-water")});
        ends.either_way({.cold = -facts.value("mix.cold-water")});
    } else {
        const double warmer = facts.value("mix.slush-warmer");
        ends.one_way({.cold = warmer / 2.0}, {.cold = warmer});
    }
}

Mixed mixed(const MixQuestion& question, double hot_parts) {
    const facts::Facts& facts = facts::facts();
    const facts::Spread& litres = facts.spread("litres");
    const facts::Spread& cooling = facts.spread("boil.cooling");
    const double weather = facts.value("boil.weather");
    const double cooled = 0.5 * (cooling.low + cooling.high);
    Ends ends(question, hot_parts, cooled);
    for (const double share : {litres.low, litres.high}) {
        ends.either_way({.ratio = share});
        ends.either_way({.ratio = 1.0 / share});
    }
    ends.either_way({.cooled = cooling.high - cooled});
    ends.either_way({.cooled = cooling.low - cooled});
    ends.either_way({.weather = -weather});
    ends.either_way({.weather = weather});
    const facts::Figure& wall = facts.figure("mix.vessel-share");
    ends.one_way({.vessel = wall.value}, {.vessel = wall.high});
    add_cold_side(question, ends);
    const Temperature result = balance(question, hot_parts, {});
    const auto possible = [&](Temperature t) { return std::clamp(t, units::celsius(0.0), question.boiling); };
    // Nothing lost, on a day of high pressure: the high end is never below that.
    const Temperature best = std::max(ends.high(), balance(question, hot_parts, {.weather = weather}));
    return {result, possible(ends.likely()), possible(ends.low()), possible(best)};
}

/// Of the ratios of small whole numbers the plainest one that comes close enough, else the closest.
SimpleParts simple_parts(const MixQuestion& question, double hot_parts) {
    constexpr int most = 10;
    constexpr double most_parts = 1e6;  // a hair from boiling or from the cold water: more cannot be measured
    const double close = facts::facts().value("mix.simple-within");
    std::optional<SimpleParts> plainest;
    SimpleParts closest;
    double least = 1e9;
    for (int few = 1; few <= most; ++few) {
        const bool more_hot = hot_parts >= 1.0;
        const double parts_of_more = few * (more_hot ? hot_parts : 1.0 / hot_parts);
        const int many = static_cast<int>(std::lround(std::clamp(parts_of_more, 1.0, most_parts)));
        const int hot = more_hot ? many : few;
        const int cold = more_hot ? few : many;
        const SimpleParts parts{hot, cold, mixed(question, static_cast<double>(hot) / cold)};
        const double off = std::abs((parts.mixed.result - question.target).si());
        if (off < least) {
            least = off;
            closest = parts;
        }
        if (off <= close && !plainest) {
            plainest = parts;
        }
    }
    return plainest.value_or(closest);
}

}  // namespace

Temperature mixed_temperature(const MixQuestion& question, double hot_parts) {
    return balance(question, hot_parts, {});
}

problem::Result<MixAnswer> mix(const MixQuestion& question) {
    problem::Problems faults;
    if (is_snow(question) && question.by == Measure::volume) {
        faults.push_back(problem::error(
            "mix-snow-by-volume",
            fmt::format("a litre of snow may weigh {:.0f} to {:.0f} g, so snow cannot be mixed by volume",
                        facts::facts().figure("snow.density").low, facts::facts().figure("snow.density").high),
            "weigh it and say --by mass, or melt it first and give the temperature of the water"));
    }
    const Temperature cold = cold_of(question);
    if (question.target <= cold || question.target >= question.boiling) {
        faults.push_back(problem::error(
            "mix-out-of-reach",
            fmt::format("{} cannot be mixed here", units::print(question.target, units::System::both, {0.1})),
            fmt::format("between the cold water, {}, and the boiling water, {}",
                        units::print(cold, units::System::both, {0.1}),
                        units::print(question.boiling, units::System::both, {0.1, units::Toward::down}))));
    }
    if (!faults.empty()) {
        return faults;
    }
    // T = (m T_b + T_c - L/c)/(m + 1) solved for m, then from masses to parts.
    const double water = heat::water_specific_heat().si();
    const double melting = is_snow(question) ? facts::facts().value("ice.fusion") / water : 0.0;
    const double masses = (melting + (question.target - cold).si()) / (question.boiling - question.target).si();
    MixAnswer answer;
    answer.hot_parts = masses / mass_of_part(question);
    answer.mixed = mixed(question, answer.hot_parts);
    answer.simple = simple_parts(question, answer.hot_parts);
    return answer;
}

}  // namespace holdwater::answer
