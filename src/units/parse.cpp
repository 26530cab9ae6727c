// SPDX-License-Identifier: MIT
#include "units/parse.hpp"

#include "problem/in_text.hpp"
#include "units/nearest.hpp"
#include "units/plain_number.hpp"

#include <fmt/format.h>

#include <array>
#include <optional>
#include <span>
#include <string>

namespace holdwater::units {
namespace {

using problem::error;
using problem::Result;

/// What a unit measures; one table of all units, so that "85 mm" given for a mass can be named as what it is.
enum class Kind {
    length,
    mass,
    volume,
    temperature,
    difference,
    duration,
    fraction,
    pressure,
    heat_loss,
    diffusivity,
    conductivity,
    film,
    resistance
};

struct Unit {
    std::string_view text;
    Kind kind;
    double factor;        // SI value of 1
    double offset = 0.0;  // SI value of 0 (Fahrenheit only)
};

// Exact by definition: inch 25.4 mm, pound 0.45359237 kg, US gallon 231 cubic inches.
constexpr double inch = 0.0254;
constexpr double pound = 0.45359237;
constexpr double gallon = 231.0 * inch * inch * inch;

constexpr std::array units{Unit{"mm", Kind::length, 1e-3},       Unit{"cm", Kind::length, 1e-2},
                           Unit{"m", Kind::length, 1.0},         Unit{"in", Kind::length, inch},
                           Unit{"ft", Kind::length, 12 * inch},  Unit{"g", Kind::mass, 1e-3},
                           Unit{"kg", Kind::mass, 1.0},          Unit{"oz", Kind::mass, pound / 16},
                           Unit{"lb", Kind::mass, pound},        Unit{"mL", Kind::volume, 1e-6},
                           Unit{"L", Kind::volume, 1e-3},        Unit{"cup", Kind::volume, gallon / 16},
                           Unit{"qt", Kind::volume, gallon / 4}, Unit{"gal", Kind::volume, gallon},
                           Unit{"C", Kind::temperature, 1.0},    Unit{"F", Kind::temperature, 1.0 / 1.8, -32.0 / 1.8},
                           Unit{"K", Kind::difference, 1.0},     Unit{"s", Kind::duration, 1.0},
                           Unit{"min", Kind::duration, 60.0},    Unit{"h", Kind::duration, 3600.0},
                           Unit{"%", Kind::fraction, 0.01},      Unit{"Pa", Kind::pressure, 1.0},
                           Unit{"hPa", Kind::pressure, 100.0},   Unit{"W/K", Kind::heat_loss, 1.0},
                           Unit{"m2/s", Kind::diffusivity, 1.0}, Unit{"W/m/K", Kind::conductivity, 1.0},
                           Unit{"W/m2/K", Kind::film, 1.0},      Unit{"m2 K/W", Kind::resistance, 1.0}};

struct KindText {
    Kind kind;
    std::string_view what;     // "a length"
    std::string_view example;  // "85 mm"
};

constexpr std::array kinds{KindText{Kind::length, "a length", "85 mm"},
                           KindText{Kind::mass, "a mass", "1.8 kg"},
                           KindText{Kind::volume, "a volume", "36 L"},
                           KindText{Kind::temperature, "a temperature", "63 C"},
                           KindText{Kind::difference, "a temperature difference", "2 K"},
                           KindText{Kind::duration, "a time span", "25 min"},
                           KindText{Kind::fraction, "a share", "20 %"},
                           KindText{Kind::pressure, "a pressure", "812 hPa"},
                           KindText{Kind::heat_loss, "a heat loss", "0.9 W/K"},
                           KindText{Kind::diffusivity, "a diffusivity", "1.3e-7 m2/s"},
                           KindText{Kind::conductivity, "a conductivity", "0.5 W/m/K"},
                           KindText{Kind::film, "a film coefficient", "95 W/m2/K"},
                           KindText{Kind::resistance, "a thermal resistance", "0.01 m2 K/W"}};

const KindText& text_of(Kind kind) {
    for (const KindText& text : kinds) {
        if (text.kind == kind) {
            return text;
        }
    }
    return kinds[0];
}

std::string units_of(Kind kind) {
    std::string list;
    for (const Unit& unit : units) {
        if (unit.kind == kind) {
            list += (list.empty() ? "" : ", ") + std::string(unit.text);
        }
    }
    return list;
}

/// Without blanks around it; a no-break space, as this program prints between number and unit, is one too.
std::string_view trim(std::string_view text) {
    constexpr std::string_view no_break_space = "\u00A0";
    const auto blank = [&](std::string_view at) -> std::size_t {
        return at.starts_with(' ') || at.starts_with('\t') ? 1 : at.starts_with(no_break_space) ? 2 : 0;
    };
    while (const std::size_t taken = blank(text)) {
        text.remove_prefix(taken);
    }
    while (text.ends_with(' ') || text.ends_with('\t') || text.ends_with(no_break_space)) {
        text.remove_suffix(text.ends_with(no_break_space) ? no_break_space.size() : 1);
    }
    return text;
}

/// "°C" and "°F" as they are printed stand for C and F; no other unit has a degree sign.
std::string_view without_degree_sign(std::string_view unit) {
    constexpr std::string_view degree = "\u00B0";
    const bool scale = unit.size() == degree.size() + 1 && (unit.ends_with('C') || unit.ends_with('F'));
    return scale && unit.starts_with(degree) ? unit.substr(degree.size()) : unit;
}

std::optional<double> decimal_at(std::string_view text, std::size_t& used) {
    const bool plus = text.starts_with('+');
    if (plus && text.size() > 1 && text[1] == '-') {
        return std::nullopt;
    }
    const auto value = number_at_start(text.substr(plus ? 1 : 0), used);
    used += plus ? 1 : 0;
    return value;
}

/// Nothing where so little is left that it has become nought.
std::optional<double> share_of(double numerator, double divisor) {
    const double share = numerator / divisor;
    return share == 0.0 && numerator != 0.0 ? std::nullopt : std::optional(share);
}

bool starts_with_digit(std::string_view text) {
    return !text.empty() && text.front() >= '0' && text.front() <= '9';
}

/// "85", "-1.5", "1/2", "3 1/4": the number at the start of the text and how many characters it took. It may have got
/// out of bounds by its division.
std::optional<double> number_at(std::string_view text, std::size_t& used) {
    const auto whole = decimal_at(text, used);
    if (!whole) {
        return std::nullopt;
    }
    const auto divisor_after = [&](std::size_t slash) -> std::optional<double> {
        std::size_t more = 0;
        const std::string_view rest = text.substr(slash + 1);
        const auto divisor = starts_with_digit(rest) ? decimal_at(rest, more) : std::nullopt;
        if (!divisor || *divisor <= 0) {
            return std::nullopt;
        }
        used = slash + 1 + more;
        return divisor;
    };
    if (used < text.size() && text[used] == '/') {
        const auto divisor = divisor_after(used);
        return divisor ? share_of(*whole, *divisor) : std::nullopt;
    }
    if (const std::string_view rest = trim(text.substr(used)); starts_with_digit(rest)) {
        const std::size_t start = text.size() - text.substr(used).size() + text.substr(used).find(rest.front());
        std::size_t more = 0;
        const auto numerator = decimal_at(text.substr(start), more);
        const std::size_t slash = start + more;
        if (!numerator || slash >= text.size() || text[slash] != '/') {
            return std::nullopt;
        }
        const auto divisor = divisor_after(slash);
        if (!divisor) {
            return std::nullopt;
        }
        const auto share = share_of(*numerator, *divisor);
        return share ? std::optional(*whole < 0 ? *whole - *share : *whole + *share) : std::nullopt;
    }
    return whole;
}

Result<double> parse_si(std::string_view text, Kind kind) {
    const KindText& wanted = text_of(kind);
    const std::string example = fmt::format("write it like \"{}\"", wanted.example);
    text = trim(text);
    if (text.empty()) {
        return error("number-unreadable", fmt::format("{} is missing", wanted.what), example);
    }
    const std::string shown = problem::quoted(text);
    std::size_t used = 0;
    const auto value = number_at(text, used);
    const auto no_number = [&] {
        // Digits are there: infinitely many, divided by nought, or so few that nothing of them is left.
        const bool digits = starts_with_digit(text.substr(text.find_first_of("+-") == 0 ? 1 : 0));
        return error(
            "number-unreadable",
            fmt::format("\"{}\" does not begin with a number{}", shown, digits ? " that can be worked with" : ""),
            example);
    };
    if (!value || !is_sound(*value)) {
        return no_number();
    }
    const std::string_view unit_text = without_degree_sign(trim(text.substr(used)));
    if (unit_text.empty()) {
        return error("unit-missing", fmt::format("\"{}\" has no unit", shown),
                     fmt::format("{} is written with one of: {}", wanted.what, units_of(kind)));
    }
    if (unit_text.front() == ',') {
        return error("decimal-comma", fmt::format("\"{}\" has a decimal comma", shown), "write a decimal point");
    }
    for (const Unit& unit : units) {
        if (unit.text != unit_text) {
            continue;
        }
        if (unit.kind == kind) {
            const double si = *value * unit.factor + unit.offset;
            return is_sound(si) ? Result<double>(si) : no_number();
        }
        if (kind == Kind::difference && unit.kind == Kind::temperature) {
            // "thermometer = 1 C" is what people write for an error of one degree; it cannot be misread.
            const double si = *value * unit.factor;
            return is_sound(si) ? Result<double>(si) : no_number();
        }
        return error("unit-of-another-kind", fmt::format("\"{}\" is {}", shown, text_of(unit.kind).what),
                     fmt::format("{} is due here, such as \"{}\"", wanted.what, wanted.example));
    }
    std::vector<std::string_view> known;
    for (const Unit& unit : units) {
        if (unit.kind == kind) {
            known.push_back(unit.text);
        }
    }
    const auto near = nearest(unit_text, known);
    return error("unit-unknown", fmt::format("\"{}\" is not a unit that is known", problem::quoted(unit_text)),
                 near ? fmt::format("did you mean \"{}\"?", *near)
                      : fmt::format("{} is written with one of: {}", wanted.what, units_of(kind)));
}

template <class Q>
Result<Q> wrap(std::string_view text, Kind kind) {
    auto si = parse_si(text, kind);
    if (!si) {
        return si.problems();
    }
    return Q{*si};
}

}  // namespace

template <>
Result<Length> parse(std::string_view text) {
    return wrap<Length>(text, Kind::length);
}
template <>
Result<Mass> parse(std::string_view text) {
    return wrap<Mass>(text, Kind::mass);
}
template <>
Result<Volume> parse(std::string_view text) {
    return wrap<Volume>(text, Kind::volume);
}
template <>
Result<Temperature> parse(std::string_view text) {
    return wrap<Temperature>(text, Kind::temperature);
}
template <>
Result<TemperatureDifference> parse(std::string_view text) {
    return wrap<TemperatureDifference>(text, Kind::difference);
}
template <>
Result<Duration> parse(std::string_view text) {
    return wrap<Duration>(text, Kind::duration);
}
template <>
Result<Fraction> parse(std::string_view text) {
    return wrap<Fraction>(text, Kind::fraction);
}
template <>
Result<Pressure> parse(std::string_view text) {
    return wrap<Pressure>(text, Kind::pressure);
}
template <>
Result<HeatLoss> parse(std::string_view text) {
    return wrap<HeatLoss>(text, Kind::heat_loss);
}
template <>
Result<Diffusivity> parse(std::string_view text) {
    return wrap<Diffusivity>(text, Kind::diffusivity);
}
template <>
Result<Conductivity> parse(std::string_view text) {
    return wrap<Conductivity>(text, Kind::conductivity);
}
template <>
Result<FilmCoefficient> parse(std::string_view text) {
    return wrap<FilmCoefficient>(text, Kind::film);
}
template <>
Result<ThermalResistance> parse(std::string_view text) {
    return wrap<ThermalResistance>(text, Kind::resistance);
}

Result<ClockTime> parse_clock(std::string_view text) {
    text = trim(text);
    const auto fault = [&] {
        return error("clock-unreadable", fmt::format("\"{}\" is not a time of day", problem::quoted(text)),
                     "write hours and minutes like \"06:30\" or \"22:00\"");
    };
    const auto colon = text.find(':');
    if (colon == std::string_view::npos || colon == 0 || colon > 2 || text.size() != colon + 3) {
        return fault();
    }
    // Digits alone: a minus sign before a nought would else go unseen.
    const auto whole = [](std::string_view digits) {
        int value = 0;
        for (const char digit : digits) {
            if (digit < '0' || digit > '9') {
                return -1;
            }
            value = value * 10 + (digit - '0');
        }
        return value;
    };
    const int hour = whole(text.substr(0, colon));
    const int minute = whole(text.substr(colon + 1));
    if (hour < 0 || hour > 23 || minute < 0 || minute > 59) {
        return fault();
    }
    return ClockTime{hour * 3600 + minute * 60};
}

}  // namespace holdwater::units
