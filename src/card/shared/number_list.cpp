// SPDX-License-Identifier: MIT
#include "card/shared/numbers.hpp"

#include <algorithm>
#include <utility>

namespace holdwater::card {

namespace {

/// To which side a way of rounding goes, by its key.
std::string_view side_of(std::string_view rounding) {
    return rounding.starts_with("up") ? "up" : rounding.starts_with("down") ? "down" : "none";
}

}  // namespace

void NumberList::add_detail(const Name& name, double value, std::string printed, std::string_view quantile,
                            std::string_view rounding, std::string source) {
    CardNumber number;
    number.card = name.card;
    number.detail = true;
    number.name = name.key;
    std::replace(number.name.begin(), number.name.end(), '-', '_');
    number.name += (name.nth ? "_" + std::to_string(*name.nth) : "") + std::string(name.unit.ending);
    number.value = value;
    number.unit = name.unit.printed;
    number.printed = std::move(printed);
    number.quantile = writer_.words.text("quantile." + std::string(quantile));
    number.rounding = writer_.words.text("rounding." + std::string(rounding));
    number.side = side_of(rounding);
    number.source = std::move(source);
    numbers_.push_back(std::move(number));
}

void NumberList::add(const Name& name, double value, std::string printed, std::string_view quantile,
                     std::string_view rounding, std::string source, std::optional<double> error) {
    const words::Words& w = writer_.words;
    const auto under = [](std::string_view section, std::string_view key) {
        return std::string(section) + "." + std::string(key);
    };
    CardNumber number;
    number.card = name.card;
    number.name = name.key;
    std::replace(number.name.begin(), number.name.end(), '-', '_');
    number.label = w.text(under("number", name.key));
    if (name.nth) {
        number.name += "_" + std::to_string(*name.nth);
        number.label += " " + std::to_string(*name.nth);
    }
    number.name += name.unit.ending;
    if (!name.of.empty()) {
        number.name += ": " + std::string(name.of);
        number.label += ": " + std::string(name.of);
    }
    number.value = value;
    number.unit = name.unit.printed;
    number.printed = std::move(printed);
    number.quantile = w.text(under("quantile", quantile));
    number.rounding = w.text(under("rounding", rounding));
    number.side = side_of(rounding);
    number.source = std::move(source);
    number.error = error;
    numbers_.push_back(std::move(number));
}

void NumberList::add(const Name& name, double value, const units::Amount& printed, std::string_view quantile,
                     std::string_view rounding, std::string source, std::optional<double> error) {
    add(name, value, writer_.written(printed), quantile, rounding, std::move(source), error);
}

std::string NumberList::source(std::string_view key, std::string_view keys) const {
    return writer_.words.text("source." + std::string(key), {{"keys", keys}});
}

}  // namespace holdwater::card
