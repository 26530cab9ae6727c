// SPDX-License-Identifier: MIT
#include "card/figures/maker.hpp"

#include <algorithm>

namespace holdwater::card {
namespace {

/// To which side a way of rounding goes, by its key.
std::string_view side_of(std::string_view rounding) {
    return rounding.starts_with("up") ? "up" : rounding.starts_with("down") ? "down" : "none";
}

/// "top_up_3_l", "ready_h: Steak".
std::string name_of(std::string_view key, const Which& which, ValueUnit unit) {
    std::string name(key);
    std::replace(name.begin(), name.end(), '-', '_');
    name += (which.nth ? "_" + std::to_string(*which.nth) : "") + std::string(unit.ending);
    return which.of.empty() ? name : name + ": " + std::string(which.of);
}

}  // namespace

FigureMaker FigureMaker::acted_on() const {
    FigureMaker maker = *this;
    maker.detail_ = false;
    return maker;
}

FigureMaker FigureMaker::brief() const {
    FigureMaker maker = *this;
    maker.one_system_ = true;
    return maker;
}

std::string FigureMaker::source(std::string_view key, std::string_view keys) const {
    return safe_.words.text("source." + std::string(key), {{"keys", keys}});
}

void FigureMaker::at(std::string_view key, units::LocalTime time, const How& how, const Which& which) const {
    Figure figure;
    figure.moment = time;
    figure.number.printed = safe_.clock(time);
    figure.brief = safe_.clock_only(time);
    add(key, value_unit::hours, units::in_hours(time.since(plan().trip->from)), std::move(figure), how, which);
}

void FigureMaker::span(std::string_view key, units::Duration time, std::string text, const How& how,
                       const Which& which) const {
    add_text(key, value_unit::hours, units::in_hours(time), std::move(text), how, which);
}

void FigureMaker::degrees(std::string_view key, units::Temperature t, const units::Amount& text, const How& how,
                          const Which& which) const {
    add_amount(key, value_unit::celsius, t.celsius(), text, how, which);
}

void FigureMaker::litres(std::string_view key, units::Volume v, const units::Amount& text, const How& how,
                         const Which& which) const {
    add_amount(key, value_unit::litres, units::in_litres(v), text, how, which);
}

void FigureMaker::length(std::string_view key, units::Length l, const units::Amount& text, const How& how,
                         const Which& which) const {
    add_amount(key, value_unit::millimetres, units::in_millimetres(l), text, how, which);
}

void FigureMaker::kilograms(std::string_view key, units::Mass m, const units::Amount& text, const How& how,
                            const Which& which) const {
    add_amount(key, value_unit::kilograms, m.si(), text, how, which);
}

void FigureMaker::grams(std::string_view key, units::Mass m, const units::Amount& text, const How& how,
                        const Which& which) const {
    add_amount(key, value_unit::grams, m.si() * 1e3, text, how, which);
}

void FigureMaker::number(std::string_view key, double value, const units::Amount& text, const How& how,
                         const Which& which) const {
    add_amount(key, value_unit::none, value, text, how, which);
}

void FigureMaker::number(std::string_view key, double value, std::string text, const How& how,
                         const Which& which) const {
    add_text(key, value_unit::none, value, std::move(text), how, which);
}

void FigureMaker::count(std::string_view key, int value, const How& how, const Which& which) const {
    add_text(key, value_unit::none, value, std::to_string(value), how, which);
}

void FigureMaker::add_amount(std::string_view key, ValueUnit unit, double value, const units::Amount& text,
                             const How& how, const Which& which) const {
    Figure figure;
    figure.amount = text;
    figure.brief = safe_.words.written(text.value);
    figure.number.printed = one_system_ ? figure.brief : safe_.words.written(text);
    add(key, unit, value, std::move(figure), how, which);
}

void FigureMaker::add_text(std::string_view key, ValueUnit unit, double value, std::string text, const How& how,
                           const Which& which) const {
    Figure figure;
    figure.brief = text;
    figure.number.printed = std::move(text);
    add(key, unit, value, std::move(figure), how, which);
}

void FigureMaker::add(std::string_view key, ValueUnit unit, double value, Figure figure, const How& how,
                      const Which& which) const {
    const words::Words& w = safe_.words;
    CardNumber& number = figure.number;
    number.card = card_;
    number.detail = detail_;
    number.name = name_of(key, which, unit);
    figure.brief_name = name_of(std::string(key) + (figure.moment ? "-clock" : "-short"), which, unit);
    if (!detail_) {
        number.label = w.text("number." + std::string(key)) + (which.nth ? " " + std::to_string(*which.nth) : "");
        number.label += which.of.empty() ? "" : ": " + std::string(which.of);
    }
    number.value = value;
    number.unit = unit.printed;
    number.quantile = w.text("quantile." + std::string(how.quantile));
    number.rounding = w.text("rounding." + std::string(how.rounding));
    number.side = side_of(how.rounding);
    number.source = how.source;
    number.error = how.error;
    list_.add(card_, key, which, std::move(figure));
}

}  // namespace holdwater::card
