// SPDX-License-Identifier: MIT
#include "card/figures/list.hpp"

#include <cmath>
#include <iterator>
#include <stdexcept>
#include <utility>

namespace holdwater::card {
namespace {

std::string name_in_list(std::string_view card, std::string_view key, const Which& which) {
    std::string name(card);
    name += '.';
    name += key;
    if (which.nth) {
        name += '_' + std::to_string(*which.nth);
    }
    if (!which.of.empty()) {
        name += ": ";
        name += which.of;
    }
    return name;
}

}  // namespace

KeyNumber key_number(const words::Words& words, Text label, const units::Amount& amount, const Text& aside) {
    const Text second = amount.second ? words.written(*amount.second) : "";
    return {std::move(label), words.written(amount.without_units().value), std::string(amount.value.unit),
            second + (second.empty() || aside.empty() ? "" : ", ") + aside};
}

void FigureList::add(std::string_view card, std::string_view key, const Which& which, Figure figure) {
    std::vector<std::size_t>& same = by_name_[name_in_list(card, key, which)];
    for (const std::size_t i : same) {
        if (figures_[i].number.name == figure.number.name) {
            throw std::logic_error("two figures are called " + figure.number.card + "." + figure.number.name);
        }
    }
    same.push_back(figures_.size());
    figures_.push_back(std::move(figure));
}

std::optional<std::size_t> FigureList::find(std::string_view card, std::string_view key, const Which& which) const {
    const std::string name = name_in_list(card, key, which);
    const auto same = by_name_.find(name);
    if (same == by_name_.end()) {
        return std::nullopt;
    }
    std::optional<std::size_t> found;
    for (const std::size_t i : same->second) {
        if (which.unit && which.unit->printed != figures_[i].number.unit) {
            continue;
        }
        if (found) {
            throw std::logic_error("figure " + name + " is there in two units");
        }
        found = i;
    }
    return found;
}

CardFigures FigureList::on(std::string_view card) {
    return {*this, this, card};
}

CardFigures FigureList::of(std::string_view card) const {
    return {*this, nullptr, card};
}

std::vector<CardNumber> FigureList::numbers() const {
    std::vector<CardNumber> acted_on;
    std::vector<CardNumber> details;
    for (const Figure& figure : figures_) {
        const CardNumber& number = figure.number;
        if (!number.detail || number.stands) {
            (number.detail ? details : acted_on).push_back(number);
        }
        if (figure.stands_briefly) {
            CardNumber& brief = details.emplace_back(number);
            brief.detail = true;
            brief.stands = true;
            brief.name = figure.brief_name;
            brief.printed = figure.brief;
        }
    }
    acted_on.insert(acted_on.end(), std::make_move_iterator(details.begin()), std::make_move_iterator(details.end()));
    return acted_on;
}

std::size_t CardFigures::place_of(std::string_view key, const Which& which) const {
    const auto found = list_.find(card_, key, which);
    if (!found) {
        throw std::logic_error("no figure " + name_in_list(card_, key, which));
    }
    return *found;
}

const Figure& CardFigures::look_at(std::string_view key, const Which& which) const {
    return list_.figures_[place_of(key, which)];
}

const Figure& CardFigures::standing(std::string_view key, const Which& which, bool briefly) const {
    const std::size_t place = place_of(key, which);
    if (notes_ != nullptr) {
        Figure& noted = notes_->figures_[place];
        (briefly && noted.brief != noted.number.printed ? noted.stands_briefly : noted.number.stands) = true;
    }
    return list_.figures_[place];
}

const Text& CardFigures::operator()(std::string_view key, const Which& which) const {
    return standing(key, which).number.printed;
}

const Text& CardFigures::brief(std::string_view key, const Which& which) const {
    return standing(key, which, true).brief;
}

Text CardFigures::full(std::string_view key, const Which& which) const {
    const Figure& figure = look_at(key, which);
    return figure.amount ? list_.telling().words.written(*figure.amount) : figure.number.printed;
}

int CardFigures::count(std::string_view key, const Which& which) const {
    return static_cast<int>(std::lround(standing(key, which).number.value));
}

units::LocalTime CardFigures::moment(std::string_view key, const Which& which) const {
    return look_at(key, which).moment.value();
}

KeyNumber CardFigures::key(Text label, std::string_view key, const Which& which, const Text& aside) const {
    const words::Words& words = list_.telling().words;
    const Figure& figure = standing(key, which);
    if (!figure.amount) {
        return {std::move(label), figure.number.printed, "", aside};
    }
    // Beside a figure that is printed briefly the other system does not stand.
    const bool briefly = figure.number.printed == figure.brief;
    return key_number(words, std::move(label), briefly ? units::Amount(figure.amount->value) : *figure.amount, aside);
}

bool CardFigures::has(std::string_view key, const Which& which) const {
    return list_.find(card_, key, which).has_value();
}

}  // namespace holdwater::card
