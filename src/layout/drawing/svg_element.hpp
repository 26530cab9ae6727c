// SPDX-License-Identifier: MIT
// One element of a drawing with what it says of itself, and faults at its places.
#pragma once

#include "problem/problem.hpp"

#include <map>
#include <optional>
#include <string>
#include <string_view>

namespace pugi {
class xml_node;
}

namespace holdwater::layout {

/// Attributes and the properties of its style alike; a property counts before an attribute of its name.
struct SvgElement {
    std::string name;
    std::size_t at = 0;  // byte of the name in the text
    std::map<std::string, std::string, std::less<>> said;
    bool styled(std::string_view key) const { return from_style.contains(std::string(key)); }
    std::map<std::string, bool> from_style;
};

/// What a drawing says where, and what is wrong with it.
class SvgSource {
  public:
    SvgSource(std::string_view text, std::string file_name) : text_(text), file_name_(std::move(file_name)) {}

    SvgElement element(const pugi::xml_node& node) const;
    void fault(std::size_t byte, problem::Code code, std::string what, std::string right);
    /// At an attribute of an element, or at the style that says it.
    void fault(const SvgElement& element, std::string_view key, problem::Code code, std::string what,
               std::string right);
    /// A number, in mm or without a unit; nothing, with its fault, if it is none. Where it is not said: `otherwise`, or
    /// a fault if there is none.
    std::optional<double> number(const SvgElement& element, std::string_view key, std::optional<double> otherwise = {});

    problem::Problems problems;

  private:
    std::string_view text_;
    std::string file_name_;
};

}  // namespace holdwater::layout
