// SPDX-License-Identifier: MIT
#include "facts/entry.hpp"

#include "units/plain_number.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <limits>
#include <utility>

namespace holdwater::facts {
namespace {

constexpr std::array provenances{std::pair{std::string_view{"read"}, Provenance::read},
                                 std::pair{std::string_view{"memory"}, Provenance::memory},
                                 std::pair{std::string_view{"computed"}, Provenance::computed},
                                 std::pair{std::string_view{"measured"}, Provenance::measured},
                                 std::pair{std::string_view{"judgement"}, Provenance::judgement}};

constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();

std::optional<double> as_number(const toml::node& node) {
    if (const auto* whole = node.as_integer()) {
        return static_cast<double>(whole->get());
    }
    if (const auto* broken = node.as_floating_point(); broken != nullptr && units::is_sound(broken->get())) {
        return broken->get();
    }
    return std::nullopt;
}

}  // namespace

const toml::node* Entry::find(std::string_view key) {
    asked_.emplace(key);
    return table_.get(key);
}

void Entry::fault(problem::Code code, std::string message, std::string hint) {
    problem::Problem problem = problem::error(code, name_ + ": " + std::move(message), std::move(hint));
    const toml::source_position& begin = table_.source().begin;
    problem.place = problem::Place{std::string{file_}, static_cast<int>(begin.line), static_cast<int>(begin.column)};
    problems_.push_back(std::move(problem));
}

void Entry::name(std::string_view kind, std::string_view key) {
    name_ = key.empty() ? std::string{kind} : fmt::format("{} \"{}\"", kind, key);
}

std::string Entry::text(std::string_view key) {
    const toml::node* node = find(key);
    if (node == nullptr) {
        fault("facts-key-missing", fmt::format("\"{}\" is missing", key));
        return {};
    }
    const auto* value = node->as_string();
    if (value == nullptr || value->get().empty()) {
        fault("facts-type", fmt::format("\"{}\" must be a text that is not empty", key));
        return {};
    }
    return value->get();
}

std::string Entry::text_or(std::string_view key, std::string otherwise) {
    return find(key) == nullptr ? std::move(otherwise) : text(key);
}

double Entry::number(std::string_view key) {
    const toml::node* node = find(key);
    if (node == nullptr) {
        fault("facts-key-missing", fmt::format("\"{}\" is missing", key));
        return not_a_number;
    }
    const std::optional<double> value = as_number(*node);
    if (!value) {
        fault("facts-type", fmt::format("\"{}\" must be a finite number", key));
    }
    return value.value_or(not_a_number);
}

double Entry::number_or(std::string_view key, double otherwise) {
    return find(key) == nullptr ? otherwise : number(key);
}

std::optional<double> Entry::optional_number(std::string_view key) {
    if (find(key) == nullptr) {
        return std::nullopt;
    }
    return number(key);
}

bool Entry::flag_or(std::string_view key, bool otherwise) {
    const toml::node* node = find(key);
    if (node == nullptr) {
        return otherwise;
    }
    if (const auto* value = node->as_boolean()) {
        return value->get();
    }
    fault("facts-type", fmt::format("\"{}\" must be true or false", key));
    return otherwise;
}

const toml::array* Entry::array(std::string_view key) {
    const toml::node* node = find(key);
    const toml::array* value = node == nullptr ? nullptr : node->as_array();
    if (value == nullptr) {
        fault("facts-type", fmt::format("\"{}\" must be a list", key));
    }
    return value;
}

const toml::table* Entry::table(std::string_view key) {
    const toml::node* node = find(key);
    const toml::table* value = node == nullptr ? nullptr : node->as_table();
    if (value == nullptr) {
        fault("facts-type", fmt::format("\"{}\" must be a table", key));
    }
    return value;
}

Provenance Entry::provenance() {
    const std::string given = text("provenance");
    for (const auto& [name, value] : provenances) {
        if (name == given) {
            return value;
        }
    }
    if (!given.empty()) {
        fault("facts-name-unknown", fmt::format("provenance \"{}\" is not known", given),
              "read, memory, computed, measured or judgement");
    }
    return Provenance::judgement;
}

std::string Entry::source(Provenance provenance) {
    return provenance == Provenance::judgement ? text_or("source", "judgement") : text("source");
}

void Entry::finish() {
    for (const auto& [key, node] : table_) {
        if (!asked_.contains(key.str())) {
            fault("facts-key-unknown", fmt::format("\"{}\" is not a key of this kind of entry", key.str()));
        }
    }
}

}  // namespace holdwater::facts
