// SPDX-License-Identifier: MIT
#include "support/printed.hpp"

#include "units/quantity.hpp"

#include <algorithm>
#include <cctype>
#include <regex>
#include <stdexcept>

namespace holdwater::support {
namespace {

/// A wording in its parts: what must stand there, then a place, and so on; the last part has no place.
struct Part {
    std::string literal;
    std::string place;
};

std::vector<Part> parts_of(std::string_view form) {
    std::vector<Part> parts(1);
    for (std::size_t i = 0; i < form.size();) {
        const auto close = form.find('}', i);
        if (form[i] == '{' && close != std::string_view::npos) {
            parts.back().place = form.substr(i + 1, close - i - 1);
            parts.emplace_back();
            i = close + 1;
        } else {
            parts.back().literal += form[i++];
        }
    }
    return parts;
}

bool match(const std::vector<Part>& parts, std::size_t i, std::string_view text, Filled& places) {
    if (!text.starts_with(parts[i].literal)) {
        return false;
    }
    text.remove_prefix(parts[i].literal.size());
    if (i + 1 == parts.size()) {
        return text.empty();
    }
    for (std::size_t length = 0; length <= text.size(); ++length) {
        if (match(parts, i + 1, text.substr(length), places)) {
            const auto known = places.find(parts[i].place);
            if (known != places.end() && known->second != text.substr(0, length)) {
                continue;  // one place, two fillings
            }
            places[parts[i].place] = text.substr(0, length);
            return true;
        }
    }
    return false;
}

[[noreturn]] void no(const char* what, std::string_view text) {
    throw std::runtime_error("no " + std::string(what) + " in \"" + std::string(text) + "\"");
}

}  // namespace

std::string as_read(std::string_view text) {
    std::string plain;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text.substr(i).starts_with("\u00A0")) {
            plain += ' ';
            ++i;
        } else if (text[i] == '\\' && i + 1 < text.size()) {
            plain += text[++i];
        } else if (text[i] != '*') {
            plain += text[i];
        }
    }
    return plain;
}

std::optional<Filled> filled(std::string_view form, std::string_view text) {
    Filled places;
    return match(parts_of(form), 0, text, places) ? std::optional(places) : std::nullopt;
}

std::optional<Filled> filled_by(const words::Words& words, std::string_view key, std::string_view text,
                                const std::map<std::string, std::string>& with) {
    const auto found = words.all().find(key);
    if (found == words.all().end()) {
        throw std::runtime_error("no wording " + std::string(key) + ": what these tests read has another name now");
    }
    const std::string plain = as_read(text);
    for (const auto& [form, wording] : found->second.forms) {
        std::string whole = wording;
        for (const auto& [place, other] : with) {
            if (const auto at = whole.find("{" + place + "}"); at != std::string::npos) {
                whole.replace(at, place.size() + 2, other);
            }
        }
        if (auto places = filled(as_read(whole), plain)) {
            return places;
        }
    }
    return std::nullopt;
}

double number_in(std::string_view text) {
    static const std::regex pattern(R"((-?\d+)(?:[.,](\d+))?(?: (\d+)/(\d+))?)");
    const std::string whole(text);
    std::smatch found;
    if (!std::regex_search(whole, found, pattern)) {
        no("number", text);
    }
    double value = std::stod(found[1].str() + "." + (found[2].matched ? found[2].str() : "0"));
    if (found[3].matched) {
        value += std::stod(found[3].str()) / std::stod(found[4].str());
    }
    return value;
}

double litres_in(std::string_view text) {
    const auto quarts = text.find("qt");
    const auto litres = text.find('L');
    if (quarts == std::string_view::npos && litres == std::string_view::npos) {
        no("litres", text);
    }
    constexpr double litres_per_quart = 0.946352946;  // exact by definition
    return number_in(text) * (quarts < litres ? litres_per_quart : 1.0);
}

double celsius_in(std::string_view text) {
    const auto fahrenheit = text.find("°F");
    const auto celsius = text.find("°C");
    if (fahrenheit == std::string_view::npos && celsius == std::string_view::npos) {
        no("degrees", text);
    }
    const double number = number_in(text);
    return fahrenheit < celsius ? units::fahrenheit(number).celsius() : number;
}

double millimetres_in(std::string_view text) {
    const auto inches = text.find("in");
    const auto metric = text.find("mm");
    if (inches == std::string_view::npos && metric == std::string_view::npos) {
        no("millimetres", text);
    }
    return number_in(text) * (inches < metric ? 25.4 : 1.0);
}

double seconds_in(std::string_view text) {
    static const std::regex pattern(R"(^(?:(\d+) ?h ?(\d+)?)?(?:(\d+) ?min)?(?:(\d+) ?s)?$)");
    const std::string whole(text);
    std::smatch found;
    if (whole.empty() || !std::regex_match(whole, found, pattern)) {
        no("span of time", text);
    }
    const auto part = [&](std::size_t i) { return found[i].matched ? std::stod(found[i].str()) : 0.0; };
    return 3600.0 * part(1) + 60.0 * (part(2) + part(3)) + part(4);
}

units::LocalTime moment_in(const words::Words& words, std::string_view text, units::LocalTime from) {
    static const std::regex pattern(R"((\d{1,2}):(\d{2})(?: ?([ap])\.? ?m\.?)?$)");
    const std::string whole = as_read(text);
    std::smatch found;
    if (!std::regex_search(whole, found, pattern)) {
        no("clock time", text);
    }
    int hour = std::stoi(found[1]);
    if (found[3].matched) {
        hour = hour % 12 + (found[3].str() == "p" ? 12 : 0);
    }
    std::string day = found.prefix().str();
    while (!day.empty() && day.back() == ' ') {
        day.pop_back();
    }
    units::LocalTime moment =
        units::next(units::ClockTime{hour * 3600 + std::stoi(found[2]) * 60}, from.after(units::Duration{-59.0}));
    if (day.empty()) {
        return moment;
    }
    for (int i = 0; i < 7; ++i, moment = moment.after(units::hours(24))) {
        if (as_read(words.text("deck.day-" + std::to_string(moment.weekday()))) == day) {
            return moment;
        }
    }
    no("day of the week", text);
}

}  // namespace holdwater::support
