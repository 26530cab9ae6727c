// SPDX-License-Identifier: MIT
#include "facts/names.hpp"

#include "facts/facts.hpp"

#include <array>

namespace holdwater::facts {
namespace {

constexpr std::array cuts{Name<Cut>{Cut::intact, "intact"},         Name<Cut>{Cut::tied, "tied"},
                          Name<Cut>{Cut::tenderised, "tenderised"}, Name<Cut>{Cut::injected, "injected"},
                          Name<Cut>{Cut::rolled, "rolled"},         Name<Cut>{Cut::stuffed, "stuffed"},
                          Name<Cut>{Cut::minced, "minced"}};
constexpr std::array shapes{Name<Shape>{Shape::slab, "slab"}, Name<Shape>{Shape::round, "round"},
                            Name<Shape>{Shape::block, "block"}, Name<Shape>{Shape::ball, "ball"}};
constexpr std::array contacts{Name<Contact>{Contact::free, "free"}, Name<Contact>{Contact::bottom, "bottom"},
                              Name<Contact>{Contact::stacked, "stacked"}};
constexpr std::array uses{Name<Use>{Use::cook, "cook"}, Name<Use>{Use::steak, "steak"},
                          Name<Use>{Use::keep_hot, "keep-hot"}};
constexpr std::array winds{Name<Wind>{Wind::still, "still"}, Name<Wind>{Wind::breezy, "breezy"},
                           Name<Wind>{Wind::windy, "windy"}};
constexpr std::array bags{Name<Bag>{Bag::thin, "thin"}, Name<Bag>{Bag::thick, "thick"}};
constexpr std::array fuels{Name<Fuel>{Fuel::wood, "wood"}, Name<Fuel>{Fuel::propane, "propane"},
                           Name<Fuel>{Fuel::butane, "butane"}, Name<Fuel>{Fuel::none_needed, "none-needed"}};

}  // namespace

std::optional<std::string_view> renamed(std::string_view text) {
    return text == "floor" ? std::optional<std::string_view>("bottom") : std::nullopt;
}

template <>
std::span<const Name<Cut>> names() {
    return cuts;
}
template <>
std::span<const Name<Shape>> names() {
    return shapes;
}
template <>
std::span<const Name<Contact>> names() {
    return contacts;
}
template <>
std::span<const Name<Use>> names() {
    return uses;
}
template <>
std::span<const Name<Ruleset>> names() {
    return facts().ruleset_names();
}
template <>
std::span<const Name<Wind>> names() {
    return winds;
}
template <>
std::span<const Name<Bag>> names() {
    return bags;
}
template <>
std::span<const Name<Fuel>> names() {
    return fuels;
}

}  // namespace holdwater::facts
