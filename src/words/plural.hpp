// SPDX-License-Identifier: MIT
// Which form of a text goes with a count. The rules are those that languages have for whole numbers, as the Unicode
// plural rules (CLDR) list them.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

namespace holdwater::words {

/// `other` is the form of all counts that have none of their own; every rule has it.
enum class Form { one, few, other };

std::string_view name_of(Form form);
std::optional<Form> form_named(std::string_view name);

enum class PluralRule {
    none,      // "none": other alone (Japanese, Chinese, Korean)
    one,       // "one": one for 1 (English, Spanish, German, Italian)
    zero_one,  // "zero-one": one for 0 and 1 (French, Brazilian Portuguese)
    czech,     // "czech": one for 1, few for 2 to 4 (Czech, Slovak)
    polish,    // "polish": one for 1, few for those that end in 2 to 4 except 12 to 14
    russian,   // "russian": one for those that end in 1 except 11, few as in Polish (Russian, Ukrainian)
};

/// The words of [language] plural.
const std::vector<std::string_view>& plural_rules();
std::optional<PluralRule> plural_rule_named(std::string_view name);

/// The form of a count; 0 or more.
Form form_of(PluralRule rule, int count);
/// All forms that a rule has.
std::vector<Form> forms_of(PluralRule rule);

}  // namespace holdwater::words
