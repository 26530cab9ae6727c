// SPDX-License-Identifier: MIT
// Adds to the list of numbers what stands in rows, steps and cautions of one card, each by the writer's own way of
// printing it. Inside card/ only.
#pragma once

#include "card/shared/numbers.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace holdwater::card {

class Details {
  public:
    /// `card`: its key.
    Details(NumberList& list, std::string_view card) : list_(list), card_(card) {}

    const CardWriter& writer() const { return list_.writer(); }
    NumberList& list() const { return list_; }

    /// How a number came about: keys of [quantile] and [rounding], and the text of its source.
    struct How {
        std::string_view quantile;
        std::string_view rounding;
        std::string source;
    };

    void at(std::string_view key, units::LocalTime time, const How& how, std::optional<int> nth = {}) const {
        const double hours = units::in_hours(time.since(writer().plan.trip->from));
        add(key, value_unit::hours, hours, writer().clock(time), how, nth);
        if (writer().clock_only(time) != writer().clock(time)) {  // where the day goes without saying
            add(std::string(key) + "-clock", value_unit::hours, hours, writer().clock_only(time), how, nth);
        }
    }
    void span(std::string_view key, units::Duration time, std::string text, const How& how,
              std::optional<int> nth = {}) const {
        add(key, value_unit::hours, units::in_hours(time), std::move(text), how, nth);
    }
    void degrees(std::string_view key, units::Temperature t, const units::Amount& text, const How& how,
                 std::optional<int> nth = {}) const {
        add(key, value_unit::celsius, t.celsius(), writer().written(text), how, nth);
        if (text.second) {  // where there is room for one system
            add(std::string(key) + "-short", value_unit::celsius, t.celsius(), writer().written(text.value), how, nth);
        }
    }
    void litres(std::string_view key, units::Volume v, const units::Amount& text, const How& how,
                std::optional<int> nth = {}) const {
        add(key, value_unit::litres, units::in_litres(v), writer().written(text), how, nth);
    }
    void length(std::string_view key, units::Length l, const units::Amount& text, const How& how,
                std::optional<int> nth = {}) const {
        add(key, value_unit::millimetres, units::in_millimetres(l), writer().written(text), how, nth);
    }
    void number(std::string_view key, double value, std::string text, const How& how,
                std::optional<int> nth = {}) const {
        add(key, value_unit::none, value, std::move(text), how, nth);
    }
    void count(std::string_view key, int value, const How& how, std::optional<int> nth = {}) const {
        number(key, value, std::to_string(value), how, nth);
    }
    void add(std::string_view key, ValueUnit unit, double value, std::string text, const How& how,
             std::optional<int> nth) const {
        list_.add_detail({card_, key, unit, {}, nth}, value, std::move(text), how.quantile, how.rounding, how.source);
    }

  private:
    NumberList& list_;
    std::string_view card_;
};

/// The reading at serving from which the meal may wait.
inline void add_waits_if(const Details& of) {
    const units::Temperature least = of.writer().plan.waits_if;
    of.degrees("waits-if", least, of.writer().short_degrees(least, units::Toward::up),
               {"share-5", "up-degree", of.list().source("heat-engine")});
}

}  // namespace holdwater::card
