// SPDX-License-Identifier: MIT
// [trip]: who eats where and when, under whose rules.
#include "trip/parts.hpp"

#include <fmt/format.h>

namespace holdwater::trip {
namespace {

void read_units(Table& table, units::System& system) {
    const std::vector<std::string_view>& names = units::system_names();
    std::string word;
    if (table.word("units", word, names, "one of: " + listed(names), Need::optional)) {
        system = units::system_named(word);
    }
}

void read_rules(Table& table, facts::Ruleset& rules) {
    if (!table.has("rules")) {
        table.missing("rules", "choose whose food-safety rules count; one of: " + listed(names_of<facts::Ruleset>()));
        return;
    }
    table.choice("rules", rules);
}

void read_at_risk(Table& table, bool& at_risk) {
    if (!table.truth("at_risk", at_risk, Need::optional) && !table.has("at_risk")) {
        table.warning("at_risk", "at-risk-not-said", "at_risk is not said and taken as false",
                      "write at_risk = true if anyone who eats is pregnant, under 5, 65 or over, or has weakened "
                      "immunity; else at_risk = false");
    }
}

/// One meal, or the times of several sittings: ready by the first, held until the last.
bool read_serve(Table& table, Trip& trip) {
    const toml::node* const written = table.node("serve");
    if (written == nullptr || !written->is_array()) {
        return table.moment("serve", trip.serve);
    }
    const toml::array& list = *written->as_array();
    constexpr Count range = ranges::sittings;
    if (list.size() < static_cast<std::size_t>(range.low) || list.size() > static_cast<std::size_t>(range.high)) {
        table.error("serve", "out-of-range",
                    fmt::format("serve: too {} sittings, {}",
                                list.size() > static_cast<std::size_t>(range.high) ? "many" : "few", list.size()),
                    fmt::format("{} to {}; one meal needs no list", range.low, range.high));
        return false;
    }
    std::vector<units::LocalTime> sittings;
    for (const toml::node& node : list) {
        const auto moment = table.moment("serve", node);
        if (!moment) {
            return false;
        }
        if (!sittings.empty() && *moment <= sittings.back()) {
            table.report().error(table.place(node), "times-order",
                                 fmt::format("serve: {} is not after the sitting before it", moment->iso()),
                                 "list the sittings in the order of their times");
            return false;
        }
        sittings.push_back(*moment);
    }
    trip.serve = sittings.back();
    sittings.pop_back();
    for (const units::LocalTime at : sittings) {
        trip.earlier_sittings.push_back(trip.serve.since(at));
    }
    return true;
}

void check_order(Table& table, const Trip& trip) {
    if (const units::LocalTime first = first_sitting(trip); first <= trip.from) {
        table.error("serve", "times-order",
                    fmt::format("serve: {} is not after from, {}", first.iso(), trip.from.iso()),
                    "from is the first moment with fire and box, serve the meal");
        return;
    }
    const units::Duration length = trip.serve.since(trip.from);
    if (length > limit<units::Duration>(ranges::trip_length.high) ||
        length < limit<units::Duration>(ranges::trip_length.low)) {
        table.error("serve", "out-of-range",
                    fmt::format("serve: {:.4g} h after from is too {}", units::in_hours(length),
                                length < limit<units::Duration>(ranges::trip_length.low) ? "soon" : "late"),
                    fmt::format("from {} to {} after from", ranges::trip_length.low, ranges::trip_length.high));
    }
}

void check_light_fire(Table& table, const Trip& trip) {
    if (trip.light_fire && (*trip.light_fire < trip.from || *trip.light_fire >= trip.serve)) {
        table.error("light_fire", "times-order",
                    fmt::format("light_fire: {} is not between from, {}, and serve, {}", trip.light_fire->iso(),
                                trip.from.iso(), trip.serve.iso()),
                    "from is the first moment with fire and box; without light_fire the plan chooses");
    }
}

}  // namespace

void read_head(Table& table, const Known& known, Trip& trip) {
    trip.place = table.place();
    table.name("name", trip.name);
    table.count("people", trip.people, ranges::people);
    read_at_risk(table, trip.at_risk);
    table.quantity("altitude", trip.altitude, ranges::altitude);
    const bool has_from = table.moment("from", trip.from);
    const bool has_serve = read_serve(table, trip);
    trip.serve_place = table.place("serve");
    trip.light_fire_place = table.place("light_fire");
    if (units::LocalTime lit; table.has("light_fire") && table.moment("light_fire", lit)) {
        trip.light_fire = lit;
    }
    if (has_from && has_serve) {
        check_order(table, trip);
        check_light_fire(table, trip);
    }
    table.truth("strict", trip.strict, Need::optional);
    read_rules(table, trip.rules);
    read_units(table, trip.units);
    const std::vector<std::string_view> languages(known.languages.begin(), known.languages.end());
    table.word("language", trip.language, languages, "one of: " + listed(languages), Need::optional);
    table.finish();
}

}  // namespace holdwater::trip
