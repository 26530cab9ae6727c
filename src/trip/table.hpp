// SPDX-License-Identifier: MIT
// One table of a trip file: hands out typed values, reports what is wrong with each, and remembers which keys were
// asked for, so that at the end it knows the unknown ones.
#pragma once

#include "facts/names.hpp"
#include "problem/bounds.hpp"
#include "trip/ranges.hpp"
#include "trip/report.hpp"
#include "units/local_time.hpp"
#include "units/quantity.hpp"

#include <toml++/toml.h>

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace holdwater::trip {

enum class Need { required, optional };

/// Every reading function returns true if it has put a good value into its target. It leaves the target alone where
/// the key is absent or wrong; wrong, and absent though required, is reported.
class Table {
  public:
    /// `what` names the table in messages: "[trip]", "this reading".
    Table(Report& report, const toml::table& table, std::string what);

    bool has(std::string_view key);
    bool text(std::string_view key, std::string& into, Need need = Need::required, int most = bounds::name_letters);
    /// A text that stands on cards. It is put into its target even if a card cannot print it, so that what refers to it
    /// finds it.
    bool name(std::string_view key, std::string& into, Need need = Need::required);
    bool truth(std::string_view key, bool& into, Need need = Need::required);
    bool count(std::string_view key, int& into, Count range, Need need = Need::required);
    /// A plain number, such as grams in 100 g.
    bool number(std::string_view key, double& into, double low, double high, Need need = Need::required);
    /// A share of one: 0.8 or "80 %".
    bool share(std::string_view key, double& into, const Range& range, Need need = Need::required);
    bool moment(std::string_view key, units::LocalTime& into);
    /// An item of a list under `key` that is to be a date with a time; what it is not is reported.
    std::optional<units::LocalTime> moment(std::string_view key, const toml::node& item);
    bool clock(std::string_view key, units::ClockTime& into);
    template <class Q>
    bool quantity(std::string_view key, Q& into, const Range& range, Need need = Need::required);
    template <class Q>
    bool quantity(std::string_view key, std::optional<Q>& into, const Range& range);
    template <class Enum>
    bool choice(std::string_view key, Enum& into, Need need = Need::required);
    /// A word out of a list that is known elsewhere; `list_hint` is shown where no known word is near.
    bool word(std::string_view key, std::string& into, const std::vector<std::string_view>& known,
              std::string_view list_hint, Need need = Need::required);

    /// An array, handed on with its nodes; nothing if absent or not an array.
    const toml::array* array(std::string_view key, std::string_view due, Need need = Need::required);
    const toml::table* inner(std::string_view key, std::string_view due, Need need = Need::required);
    const toml::node* node(std::string_view key);

    problem::Place place() const;
    problem::Place place(const toml::node& node) const;
    /// Of the key's value; of the table if it is absent.
    problem::Place place(std::string_view key) const;
    void error(std::string_view key, problem::Code code, std::string_view message, std::string_view hint = {});
    void warning(std::string_view key, problem::Code code, std::string_view message, std::string_view hint = {});
    void missing(std::string_view key, std::string_view hint);
    Report& report() { return report_; }
    const std::string& what() const { return what_; }

    /// Reports every key that nobody asked for. Call it last.
    void finish();

  private:
    const toml::node* find(std::string_view key, Need need, std::string_view hint);
    void wrong_type(std::string_view key, const toml::node& node, std::string_view due, std::string_view hint);

    Report& report_;
    const toml::table& table_;
    std::string what_;
    std::vector<std::string_view> asked_;
};

/// Where something stands: in the file that it was read from, which is that of the report unless a kit was used.
problem::Place place_of(const toml::source_region& source, const Report& report);

/// "a whole number", "a date": what stands there instead of what is due.
std::string_view kind_of(const toml::node& node);

/// One value with a unit: reads, checks the range, reports under `label`. Used by Table and for items of arrays.
template <class Q>
std::optional<Q> read_quantity(const toml::node& node, std::string_view label, const Range& range, Report& report);

/// `text` is within `range`; if not, says so under `label`.
template <class Q>
std::optional<Q> quantity_in(std::string_view text, std::string_view label, const Range& range, problem::Place place,
                             Report& report);

/// A limit of a Range as a quantity.
template <class Q>
Q limit(std::string_view text);

/// "a, b, c".
std::string listed(const std::vector<std::string_view>& words);

template <class Q>
bool Table::quantity(std::string_view key, Q& into, const Range& range, Need need) {
    const std::string hint = "write it like " + std::string(key) + " = \"" + std::string(range.example) + "\"";
    const toml::node* const found = find(key, need, hint);
    if (found == nullptr) {
        return false;
    }
    const auto value = read_quantity<Q>(*found, key, range, report_);
    if (value) {
        into = *value;
    }
    return value.has_value();
}

template <class Q>
bool Table::quantity(std::string_view key, std::optional<Q>& into, const Range& range) {
    Q value;
    const bool good = quantity(key, value, range, Need::optional);
    if (good) {
        into = value;
    }
    return good;
}

/// The words of an enumeration, as trip files have them.
template <class Enum>
std::vector<std::string_view> names_of() {
    std::vector<std::string_view> known;
    for (const auto& name : facts::names<Enum>()) {
        known.push_back(name.text);
    }
    return known;
}

template <class Enum>
bool Table::choice(std::string_view key, Enum& into, Need need) {
    const std::vector<std::string_view> known = names_of<Enum>();
    std::string chosen;
    if (!word(key, chosen, known, "one of: " + listed(known), need)) {
        return false;
    }
    into = facts::from_name<Enum>(chosen).value();
    return true;
}

}  // namespace holdwater::trip
