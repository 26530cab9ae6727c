// SPDX-License-Identifier: MIT
// Makes the figures of one card. Inside card/figures only.
#pragma once

#include "card/figures/list.hpp"
#include "card/figures/rounding.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace holdwater::card {

class FigureMaker {
  public:
    /// `card`: its key. Details of it: rows, steps and cautions.
    FigureMaker(FigureList& list, std::string_view card) : list_(list), safe_{list.telling()}, card_(card) {}

    /// For what one acts on: it has a label in [number] of the words, and is explained even where it does not stand.
    FigureMaker acted_on() const;
    /// For lines with room for one system; the terminal prints all of them.
    FigureMaker brief() const;

    const plan::Plan& plan() const { return safe_.plan; }
    const SafeSide& safe() const { return safe_; }
    bool reads() const { return safe_.reads(); }

    /// How a figure came about: keys of [quantile] and [rounding], the text of its source, and of its value the error
    /// of drawing scenarios at all.
    struct How {
        std::string_view quantile;
        std::string_view rounding;
        std::string source;
        std::optional<double> error = {};
    };
    /// The text of a key of [source], over the keys of figures or rows.
    std::string source(std::string_view key, std::string_view keys = {}) const;

    /// A moment; its value is in hours from the beginning of the trip.
    void at(std::string_view key, units::LocalTime time, const How& how, const Which& which = {}) const;
    void span(std::string_view key, units::Duration time, std::string text, const How& how,
              const Which& which = {}) const;
    void degrees(std::string_view key, units::Temperature t, const units::Amount& text, const How& how,
                 const Which& which = {}) const;
    void litres(std::string_view key, units::Volume v, const units::Amount& text, const How& how,
                const Which& which = {}) const;
    void length(std::string_view key, units::Length l, const units::Amount& text, const How& how,
                const Which& which = {}) const;
    void kilograms(std::string_view key, units::Mass m, const units::Amount& text, const How& how,
                   const Which& which = {}) const;
    void grams(std::string_view key, units::Mass m, const units::Amount& text, const How& how,
               const Which& which = {}) const;
    void number(std::string_view key, double value, const units::Amount& text, const How& how,
                const Which& which = {}) const;
    void number(std::string_view key, double value, std::string text, const How& how, const Which& which = {}) const;
    void count(std::string_view key, int value, const How& how, const Which& which = {}) const;

  private:
    void add(std::string_view key, ValueUnit unit, double value, Figure figure, const How& how,
             const Which& which) const;
    void add_amount(std::string_view key, ValueUnit unit, double value, const units::Amount& text, const How& how,
                    const Which& which) const;
    void add_text(std::string_view key, ValueUnit unit, double value, std::string text, const How& how,
                  const Which& which) const;

    FigureList& list_;
    SafeSide safe_;
    std::string_view card_;
    bool detail_ = true;
    bool one_system_ = false;
};

}  // namespace holdwater::card
