// SPDX-License-Identifier: MIT
// [[box]]: the insulated box, its water and what measures it.
#include "trip/parts.hpp"

#include <fmt/format.h>

namespace holdwater::trip {
namespace {

constexpr std::string_view inside_due = "write it like inside = [\"540 mm\", \"290 mm\", \"300 mm\"]";

bool read_inside(Table& table, std::array<units::Length, 3>& inside) {
    const toml::array* const list = table.array("inside", inside_due);
    if (list == nullptr) {
        return false;
    }
    if (list->size() != inside.size()) {
        table.error("inside", "measures-count", fmt::format("inside: three measures are due, not {}", list->size()),
                    inside_due);
        return false;
    }
    bool good = true;
    for (std::size_t i = 0; i < inside.size(); ++i) {
        const auto measure = read_quantity<units::Length>(*list->get(i), "inside", ranges::inside, table.report());
        good = good && measure.has_value();
        inside[i] = measure.value_or(units::Length{});
    }
    return good;
}

/// Its error, or "none".
void read_thermometer(Table& table, std::optional<units::TemperatureDifference>& thermometer) {
    const toml::node* const found = table.node("thermometer");
    if (found == nullptr) {
        table.missing("thermometer", "write its error, such as thermometer = \"1 K\", or thermometer = \"none\"");
        return;
    }
    if (const auto* const text = found->as_string(); text != nullptr && text->get() == "none") {
        return;
    }
    if (const auto* const text = found->as_string();
        text != nullptr && text->get().find_first_of("0123456789") == std::string::npos) {
        table.error("thermometer", "number-unreadable",
                    fmt::format("thermometer: \"{}\" is neither its error nor \"none\"", quoted(text->get())),
                    fmt::format("write it like \"{}\", or \"none\"", ranges::thermometer.example));
        return;
    }
    table.quantity("thermometer", thermometer, ranges::thermometer);
}

void check_water(Table& table, std::string_view key, units::Volume water, units::Volume room) {
    const double share = water / room;
    const std::string message =
        fmt::format("{}: {:.3g} L in a box of {:.3g} L", key, units::in_litres(water), units::in_litres(room));
    if (share > 1) {
        table.error(key, "water-over-box", message, "check inside, which is measured inside the box, and the litres");
    } else if (share > ranges::odd_fill && key == "water") {
        table.warning(
            key, "box-very-full", message,
            fmt::format("over {:.0f} % it spills when food goes in and when the lid closes", ranges::odd_fill * 100));
    }
}

}  // namespace

void read_box(Table& table, const FileReader& read_file, Box& box) {
    box.place = table.place();
    std::string kit;  // whose values stand in this table by now
    table.text("use", kit, Need::optional);
    table.name("name", box.name, Need::optional);
    const bool has_inside = read_inside(table, box.inside);
    const bool has_water = table.quantity("water", box.water, ranges::water);
    read_thermometer(table, box.thermometer);
    table.truth("wax", box.wax_tell_tale, Need::optional);
    read_box_test(table, read_file, box);
    table.truth("prewarmed", box.prewarmed, Need::optional);
    if (has_inside) {
        const units::Volume room{box.inside[0].si() * box.inside[1].si() * box.inside[2].si()};
        if (has_water) {
            check_water(table, "water", box.water, room);
        }
        if (box.test_water > units::Volume{}) {
            check_water(table, "test_water", box.test_water, room);
        }
    }
    table.finish();
}

}  // namespace holdwater::trip
