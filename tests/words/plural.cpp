// SPDX-License-Identifier: MIT
// The plural rules against the examples that the Unicode plural rules (CLDR 44, cardinal numbers) list per language.
#include "words/plural.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

using namespace holdwater::words;

namespace {

struct Row {
    PluralRule rule;
    int count;
    Form form;
};

}  // namespace

TEST_CASE("each rule gives the form that its languages use") {
    constexpr Row rows[] = {{PluralRule::none, 1, Form::other},     {PluralRule::none, 5, Form::other},
                            {PluralRule::one, 0, Form::other},      {PluralRule::one, 1, Form::one},
                            {PluralRule::one, 2, Form::other},      {PluralRule::one, 21, Form::other},
                            {PluralRule::zero_one, 0, Form::one},   {PluralRule::zero_one, 1, Form::one},
                            {PluralRule::zero_one, 2, Form::other}, {PluralRule::czech, 1, Form::one},
                            {PluralRule::czech, 2, Form::few},      {PluralRule::czech, 4, Form::few},
                            {PluralRule::czech, 5, Form::other},    {PluralRule::czech, 22, Form::other},
                            {PluralRule::polish, 1, Form::one},     {PluralRule::polish, 3, Form::few},
                            {PluralRule::polish, 12, Form::other},  {PluralRule::polish, 22, Form::few},
                            {PluralRule::polish, 21, Form::other},  {PluralRule::polish, 112, Form::other},
                            {PluralRule::russian, 1, Form::one},    {PluralRule::russian, 11, Form::other},
                            {PluralRule::russian, 21, Form::one},   {PluralRule::russian, 3, Form::few},
                            {PluralRule::russian, 14, Form::other}, {PluralRule::russian, 0, Form::other},
                            {PluralRule::russian, 101, Form::one},  {PluralRule::russian, 111, Form::other}};
    for (const Row& row : rows) {
        CAPTURE(plural_rules()[static_cast<std::size_t>(row.rule)]);
        CAPTURE(row.count);
        CHECK(name_of(form_of(row.rule, row.count)) == name_of(row.form));
    }
}

TEST_CASE("a rule gives no form that it does not list, and lists none that it never gives") {
    for (const std::string_view name : plural_rules()) {
        CAPTURE(name);
        const auto rule = plural_rule_named(name);
        REQUIRE(rule.has_value());
        const auto listed = forms_of(*rule);
        for (int count = 0; count < 200; ++count) {
            CHECK(std::count(listed.begin(), listed.end(), form_of(*rule, count)) == 1);
        }
        for (const Form form : listed) {
            bool given = false;
            for (int count = 0; count < 200; ++count) {
                given = given || form_of(*rule, count) == form;
            }
            CHECK(given);
            CHECK(form_named(name_of(form)) == form);
        }
    }
    CHECK_FALSE(plural_rule_named("two").has_value());
    CHECK_FALSE(form_named("two").has_value());
}
