// SPDX-License-Identifier: MIT
#include "cli/line/unknown_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <string>

namespace holdwater::cli {

void tell_unknown_words(const CLI::App& line, Options& options) {
    std::vector<std::string> names;
    for (const CLI::Option* option : line.get_options()) {
        names.push_back(option->get_name());
    }
    const std::vector<std::string_view> known(names.begin(), names.end());
    bool value_may_follow = false;
    for (const std::string& word : line.remaining()) {
        if (!word.starts_with("-")) {
            if (!value_may_follow) {
                options.fault("\"" + word + "\"", "word-unexpected", "belongs to no option",
                              "write option and value together, the value with its unit in quotes");
            }
            value_may_follow = false;
            continue;
        }
        const std::string name = word.substr(0, word.find('='));
        value_may_follow = name == word;
        const auto meant = units::nearest(name, known);
        options.fault(name, "option-unknown", "is not an option of this command",
                      meant ? "did you mean " + std::string(*meant) + "?"
                            : fmt::format("see `holdwater {} --help`", line.get_name()));
    }
}

std::optional<double> plain_number(Options& options, std::string_view option, const Given& text, double low,
                                   double high) {
    if (!text) {
        return std::nullopt;
    }
    double value = 0.0;
    const char* last = text->data() + text->size();
    const auto [end, fault] = std::from_chars(text->data(), last, value);
    if (fault != std::errc{} || end != last || !std::isfinite(value)) {
        options.fault(option, "number-unreadable", "\"" + *text + "\" is not a plain number",
                      fmt::format("a number without a unit, {:g} to {:g}", low, high));
        return std::nullopt;
    }
    if (value < low || value > high) {
        options.fault(option, "out-of-range", *text + " is outside what can be worked with",
                      fmt::format("{:g} to {:g}", low, high));
        return std::nullopt;
    }
    return value;
}

std::string plain_spaces(std::string text) {
    constexpr std::string_view no_break = "\u00A0";
    for (std::size_t at = text.find(no_break); at != std::string::npos; at = text.find(no_break, at)) {
        text.replace(at, no_break.size(), " ");
    }
    return text;
}

bool known_word(Options& options, std::string_view option, std::string_view text,
                const std::vector<std::string_view>& known) {
    if (std::find(known.begin(), known.end(), text) != known.end()) {
        return true;
    }
    unknown_word(options, option, text, known);
    return false;
}

void unknown_word(Options& options, std::string_view option, std::string_view text,
                  const std::vector<std::string_view>& known, std::string_view besides) {
    std::string all;
    for (const std::string_view word : known) {
        all += (all.empty() ? "" : ", ") + std::string(word);
    }
    if (!besides.empty()) {
        all += ", " + std::string(besides);
    }
    const auto meant = units::nearest(text, known);
    options.fault(option, "choice-unknown", "\"" + std::string(text) + "\" is not known",
                  (meant ? "did you mean " + std::string(*meant) + "? " : "") + "One of: " + all);
}

}  // namespace holdwater::cli
