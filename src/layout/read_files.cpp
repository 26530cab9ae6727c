// SPDX-License-Identifier: MIT
// Reads layouts/formats/*.toml and layouts/sheets/*.toml: every fault with its line, unknown keys with the nearest
// known.
#include "layout/layout.hpp"
#include "problem/bounds.hpp"
#include "problem/in_text.hpp"
#include "units/nearest.hpp"
#include "units/plain_number.hpp"
#include "units/toml_bounds.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>
#include <toml++/toml.h>

#include <algorithm>
#include <iterator>
#include <optional>
#include <string_view>
#include <variant>

namespace holdwater::layout {

namespace {

constexpr double greatest_mm = 1000.0;
constexpr double greatest_pt = 200.0;

struct Field {
    std::string_view key;
    std::variant<Millimetres*, Points*, std::string*, bool*> into;
    bool required = true;
    double least = 0.0;  // a length, in the unit of the key
    double most = greatest_mm;
};

/// How a key is written, with what it may be.
std::string due(const Field& field) {
    if (std::holds_alternative<std::string*>(field.into)) {
        return fmt::format("{} = \"...\"", field.key);
    }
    return std::holds_alternative<bool*>(field.into)
               ? fmt::format("{} = true", field.key)
               : fmt::format("{} = {:g}, up to {:g}", field.key, field.least, field.most);
}

class Reader {
  public:
    Reader(std::string file_name, problem::Problems& problems)
        : file_name_(std::move(file_name)), problems_(problems) {}

    void read(std::string_view toml, const std::vector<Field>& fields);

  private:
    void fault(problem::Code code, std::string message, std::string hint, const toml::source_region& where) {
        if (problems_.size() >= bounds::listed_problems) {
            return;  // who has mended these reads the file again
        }
        problem::Problem made = problem::error(code, std::move(message), std::move(hint));
        made.place =
            problem::Place{file_name_, static_cast<int>(where.begin.line), static_cast<int>(where.begin.column)};
        problems_.push_back(std::move(made));
    }
    void take(const Field& field, const toml::node& node);
    /// In the unit of the key; nothing, with its fault, if it is none or out of range.
    std::optional<double> length(const Field& field, const toml::node& node);

    std::string file_name_;
    problem::Problems& problems_;
};

void Reader::take(const Field& field, const toml::node& node) {
    std::visit(Overloaded{[&](std::string* into) {
                              if (const auto text = node.value<std::string>()) {
                                  *into = *text;
                              } else {
                                  fault("layout-text-expected", fmt::format("{} must be a text", field.key),
                                        fmt::format("{} = \"...\"", field.key), node.source());
                              }
                          },
                          [&](bool* into) {
                              if (const auto yes = node.is_boolean() ? node.value<bool>() : std::nullopt) {
                                  *into = *yes;
                              } else {
                                  fault("layout-true-or-false-expected",
                                        fmt::format("{} must be true or false", field.key),
                                        fmt::format("{} = true", field.key), node.source());
                              }
                          },
                          [&](Millimetres* into) { *into = Millimetres{length(field, node).value_or(into->value())}; },
                          [&](Points* into) { *into = Points{length(field, node).value_or(into->value())}; }},
               field.into);
}

std::optional<double> Reader::length(const Field& field, const toml::node& node) {
    const auto number = node.is_number() ? node.value<double>() : std::nullopt;
    if (!number || !units::is_sound(*number)) {
        fault("layout-number-expected", fmt::format("{} must be a number", field.key),
              "its unit is in the name of the key", node.source());
        return std::nullopt;
    }
    if (*number < field.least || *number > field.most) {
        fault("layout-out-of-range", fmt::format("{} = {:g} is out of range", field.key, *number),
              fmt::format("{:g} to {:g}", field.least, field.most), node.source());
        return std::nullopt;
    }
    return number;
}

void Reader::read(std::string_view toml, const std::vector<Field>& fields) {
    if (auto beyond = units::beyond_toml_bounds(toml, file_name_)) {
        beyond->code = "layout-unreadable";
        problems_.push_back(*std::move(beyond));
        return;
    }
    toml::table table;
    try {
        table = toml::parse(toml, std::string_view{file_name_});
    } catch (const toml::parse_error& error) {
        fault("layout-unreadable", problem::quoted(error.description(), 120), "a line is key = value, texts in quotes",
              error.source());
        return;
    }
    std::vector<std::string_view> names;
    std::transform(fields.begin(), fields.end(), std::back_inserter(names),
                   [](const Field& field) { return field.key; });
    for (const auto& [key, node] : table) {
        const std::string_view name = key.str();
        const auto known =
            std::find_if(fields.begin(), fields.end(), [name](const auto& field) { return field.key == name; });
        if (known != fields.end()) {
            take(*known, node);
            continue;
        }
        const std::string shown = problem::quoted(key.str());
        const auto near = units::nearest(shown, names);
        fault("layout-key-unknown", fmt::format("there is no key {}", shown),
              near ? fmt::format("did you mean {}?", *near) : fmt::format("known are {}", fmt::join(names, ", ")),
              key.source());
    }
    for (const auto& field : fields) {
        if (field.required && !table.contains(field.key)) {
            fault("layout-key-missing", fmt::format("{} is missing", field.key), due(field), toml::source_region{});
        }
    }
}

problem::Problem file_fault(const std::string& file_name, problem::Code code, std::string message, std::string hint) {
    problem::Problem made = problem::error(code, std::move(message), std::move(hint));
    made.place = problem::Place{file_name, 0, 0};
    return made;
}

}  // namespace

problem::Result<Format> read_format(std::string_view toml, const std::string& file_name) {
    constexpr double least_card = 40.0;
    constexpr double least_pt = 5.0;
    problem::Problems problems;
    Format format;
    Reader(file_name, problems)
        .read(toml, {{"name", &format.name},
                     {"width_mm", &format.width, true, least_card},
                     {"height_mm", &format.height, true, least_card},
                     {"margin_mm", &format.margin, true, 1.0, 20.0},
                     {"distance_mm", &format.distance, true, 200.0, 3000.0},
                     {"body_pt", &format.body_pt, true, least_pt, greatest_pt},
                     {"figure_pt", &format.figure_pt, true, least_pt, greatest_pt},
                     {"key_pt", &format.key_pt, true, least_pt, greatest_pt},
                     {"key_max_pt", &format.key_max_pt, true, least_pt, greatest_pt},
                     {"question_pt", &format.question_pt, true, least_pt, greatest_pt},
                     {"heading_pt", &format.heading_pt, true, least_pt, greatest_pt},
                     {"small_pt", &format.small_pt, true, least_pt, greatest_pt},
                     {"mark", &format.mark, false},
                     {"compact", &format.compact, false},
                     {"leaves_out", &format.leaves_out, false}});
    if (problems.empty() && format.key_max_pt < format.key_pt) {
        problems.push_back(
            file_fault(file_name, "layout-out-of-range", "key_max_pt is below key_pt", "key_max_pt = key_pt or more"));
    }
    if (problem::has_error(problems)) {
        return problems;
    }
    return format;
}

problem::Result<Sheet> read_sheet(std::string_view toml, const std::string& file_name) {
    constexpr double least_sheet = 80.0;
    constexpr double most_margin = 60.0;
    problem::Problems problems;
    Sheet sheet;
    Reader(file_name, problems)
        .read(toml, {{"name", &sheet.name},
                     {"width_mm", &sheet.width, true, least_sheet},
                     {"height_mm", &sheet.height, true, least_sheet},
                     {"margin_sides_mm", &sheet.margin_sides, true, 0.0, most_margin},
                     {"margin_top_mm", &sheet.margin_top, true, 0.0, most_margin},
                     {"margin_bottom_mm", &sheet.margin_bottom, true, 0.0, most_margin}});
    if (problem::has_error(problems)) {
        return problems;
    }
    return sheet;
}

}  // namespace holdwater::layout
