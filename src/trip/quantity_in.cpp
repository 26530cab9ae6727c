// SPDX-License-Identifier: MIT
// The part of table.hpp that reads values with units and checks their ranges.
#include "trip/table.hpp"
#include "units/parse.hpp"

#include <fmt/format.h>

#include <stdexcept>

namespace holdwater::trip {
namespace {

double si_of(units::Temperature t) {
    return t.celsius();
}

template <class Tag>
double si_of(units::Quantity<Tag> q) {
    return q.si();
}

/// The unit in "250 mm" or "0.1 m2 K/W": all behind the first space.
std::string_view unit_of(std::string_view text) {
    const auto space = text.find(' ');
    return space == std::string_view::npos ? std::string_view{} : text.substr(space + 1);
}

/// " (32.2 C)" for "90 F" where the limit is in C; nothing where both are in the same unit.
template <class Q>
std::string in_unit_of(std::string_view limit_text, Q value, std::string_view written) {
    const std::string_view unit = unit_of(limit_text);
    const auto tail = written.find_last_not_of(" \t");
    if (written.substr(0, tail + 1).ends_with(unit)) {
        return {};
    }
    const double zero = si_of(limit<Q>(fmt::format("0 {}", unit)));
    const double one = si_of(limit<Q>(fmt::format("1 {}", unit)));
    return fmt::format(" ({:.4g} {})", (si_of(value) - zero) / (one - zero), unit);
}

}  // namespace

template <class Q>
Q limit(std::string_view text) {
    const auto value = units::parse<Q>(text);
    if (!value) {
        throw std::logic_error("a limit in ranges.hpp cannot be read: " + std::string(text));
    }
    return *value;
}

template <class Q>
std::optional<Q> quantity_in(std::string_view text, std::string_view label, const Range& range, problem::Place place,
                             Report& report) {
    const auto value = units::parse<Q>(quoted(text));
    if (!value) {
        problem::Problem fault = value.problems().front();
        // The reader of quantities knows only the kind: it would show a thickness for an altitude.
        if (fault.code == problem::Code("number-unreadable")) {
            fault.hint = fmt::format("write it like \"{}\"", range.example);
        } else if (fault.code == problem::Code("unit-of-another-kind")) {
            fault.hint = fmt::format("{}, such as \"{}\"", fault.hint.substr(0, fault.hint.find(',')), range.example);
        }
        report.add(fault, std::move(place), fmt::format("{}: ", label));
        return std::nullopt;
    }
    const double low = si_of(limit<Q>(range.low));
    const double high = si_of(limit<Q>(range.high));
    // A limit written in the other system of units must pass: 104 F is 40 C but for the last binary digit.
    const double slack = 1e-9 * (high - low);
    const double given = si_of(*value);
    if (given >= low - slack && given <= high + slack) {
        return *value;
    }
    report.error(
        std::move(place), "out-of-range",
        fmt::format("{}: \"{}\"{} is too {}", label, quoted(text),
                    in_unit_of<Q>(given < low ? range.low : range.high, *value, text), given < low ? "low" : "high"),
        fmt::format("from {} to {}", range.low, range.high));
    return std::nullopt;
}

template <class Q>
std::optional<Q> read_quantity(const toml::node& node, std::string_view label, const Range& range, Report& report) {
    problem::Place place = place_of(node.source(), report);
    if (const auto* const text = node.as_string()) {
        return quantity_in<Q>(text->get(), label, range, std::move(place), report);
    }
    const std::string hint = fmt::format("write the number and its unit in quotes, such as \"{}\"", range.example);
    if (node.is_number()) {
        const double value = node.value<double>().value();
        report.error(std::move(place), "unit-missing", fmt::format("{}: {} has no unit", label, value), hint);
    } else {
        report.error(std::move(place), "type-wrong",
                     fmt::format("{}: a value with its unit is due, not {}", label, kind_of(node)), hint);
    }
    return std::nullopt;
}

// Every quantity that a trip file or a log can hold.
#define HOLDWATER_READS(Q)                                                                                     \
    template Q limit<Q>(std::string_view);                                                                     \
    template std::optional<Q> quantity_in<Q>(std::string_view, std::string_view, const Range&, problem::Place, \
                                             Report&);                                                         \
    template std::optional<Q> read_quantity<Q>(const toml::node&, std::string_view, const Range&, Report&)

HOLDWATER_READS(units::Length);
HOLDWATER_READS(units::Mass);
HOLDWATER_READS(units::Volume);
HOLDWATER_READS(units::Temperature);
HOLDWATER_READS(units::TemperatureDifference);
HOLDWATER_READS(units::Duration);
HOLDWATER_READS(units::Fraction);
HOLDWATER_READS(units::HeatLoss);
HOLDWATER_READS(units::Diffusivity);
HOLDWATER_READS(units::Conductivity);
HOLDWATER_READS(units::ThermalResistance);

#undef HOLDWATER_READS

}  // namespace holdwater::trip
