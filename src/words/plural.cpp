// SPDX-License-Identifier: MIT
#include "words/plural.hpp"

#include <algorithm>
#include <array>

namespace holdwater::words {
namespace {

constexpr std::array<std::string_view, 3> form_names{"one", "few", "other"};

bool ends_in_2_to_4(int count) {
    const int last = count % 10;
    const int last_two = count % 100;
    return last >= 2 && last <= 4 && (last_two < 12 || last_two > 14);
}

}  // namespace

std::string_view name_of(Form form) {
    return form_names[static_cast<std::size_t>(form)];
}

std::optional<Form> form_named(std::string_view name) {
    const auto found = std::find(form_names.begin(), form_names.end(), name);
    return found == form_names.end() ? std::nullopt : std::optional(static_cast<Form>(found - form_names.begin()));
}

const std::vector<std::string_view>& plural_rules() {
    static const std::vector<std::string_view> names{"none", "one", "zero-one", "czech", "polish", "russian"};
    return names;
}

std::optional<PluralRule> plural_rule_named(std::string_view name) {
    const auto& names = plural_rules();
    const auto found = std::find(names.begin(), names.end(), name);
    return found == names.end() ? std::nullopt : std::optional(static_cast<PluralRule>(found - names.begin()));
}

Form form_of(PluralRule rule, int count) {
    switch (rule) {
        case PluralRule::none:
            return Form::other;
        case PluralRule::one:
            return count == 1 ? Form::one : Form::other;
        case PluralRule::zero_one:
            return count <= 1 ? Form::one : Form::other;
        case PluralRule::czech:
            return count == 1 ? Form::one : count >= 2 && count <= 4 ? Form::few : Form::other;
        case PluralRule::polish:
            return count == 1 ? Form::one : ends_in_2_to_4(count) ? Form::few : Form::other;
        case PluralRule::russian:
            return count % 10 == 1 && count % 100 != 11 ? Form::one : ends_in_2_to_4(count) ? Form::few : Form::other;
    }
    return Form::other;
}

std::vector<Form> forms_of(PluralRule rule) {
    switch (rule) {
        case PluralRule::none:
            return {Form::other};
        case PluralRule::one:
        case PluralRule::zero_one:
            return {Form::one, Form::other};
        case PluralRule::czech:
        case PluralRule::polish:
        case PluralRule::russian:
            return {Form::one, Form::few, Form::other};
    }
    return {Form::other};
}

}  // namespace holdwater::words
