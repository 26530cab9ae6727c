// SPDX-License-Identifier: MIT
#include "trip/kit.hpp"

#include "problem/bounds.hpp"
#include "trip/parts.hpp"
#include "units/nearest.hpp"
#include "units/toml_bounds.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>

namespace holdwater::trip {
namespace {

/// The text of a kit as TOML; nothing where it cannot be read, which is reported at its place.
std::optional<toml::table> parsed_kit(const Kit& kit, Report& report) {
    Report own(kit.path);
    std::optional<toml::table> table;
    if (kit.text.size() > bounds::trip_bytes) {
        own.error(own.place(0, 0), "file-too-big", fmt::format("{} bytes are too many for a kit", kit.text.size()),
                  fmt::format("at most {}", bounds::trip_bytes));
    } else if (const auto beyond = units::beyond_toml_bounds(kit.text, kit.path)) {
        own.add({*beyond});
    } else {
        try {
            table = toml::parse(kit.text, kit.path);
        } catch (const toml::parse_error& fault) {
            report_syntax(fault, kit.text, own);
        }
    }
    report.add(std::move(own).take());
    return table;
}

/// A table of the trip and the key under which the kit has what belongs there.
class KitUser {
  public:
    KitUser(const KitReader& read_kit, Report& report) : read_kit_(read_kit), report_(report) {}

    void take(toml::table& into, std::string_view key) {
        const toml::node* const use = into.get("use");
        const auto* const name = use != nullptr ? use->as_string() : nullptr;
        if (name == nullptr) {
            return;  // none; or no text, which the reader of the table says
        }
        if (!is_kit_name(name->get())) {
            report_.error(place_of(use->source(), report_), "word-unknown",
                          fmt::format("use: \"{}\" cannot be the name of a kit", quoted(name->get())),
                          "letters, digits, - and _, such as use = \"blue\"");
            return;
        }
        const auto kit = read_kit_ ? read_kit_(name->get())
                                   : problem::Result<Kit>(problem::error("word-unknown", "there are no kits here"));
        if (!kit) {
            for (const problem::Problem& one : kit.problems()) {
                report_.add(one, place_of(use->source(), report_), "use: ");
            }
            return;
        }
        if (auto table = parsed_kit(*kit, report_)) {
            put_in(into, key, *kit, *table);
        }
    }

  private:
    void put_in(toml::table& into, std::string_view key, const Kit& kit, toml::table& whole) {
        Report own(kit.path);
        for (const auto& [name, node] : whole) {
            if (name.str() != "box" && name.str() != "fire") {
                own.error(place_of(node.source(), own), "key-unknown",
                          fmt::format("a kit has no \"{}\"", quoted(name.str())), "it has: [box], [fire]");
            }
        }
        auto* const part = whole.get_as<toml::table>(key);
        if (part == nullptr) {
            own.error(own.place(0, 0), "table-missing", fmt::format("[{}] is missing in this kit", key),
                      fmt::format("head it [{}], in single brackets", key));
        } else if (const toml::node* const again = part->get("use")) {
            own.error(place_of(again->source(), own), "key-unknown", "a kit uses no other kit",
                      "write its values here");
        } else {
            move_values(*part, into, kit);
        }
        report_.add(std::move(own).take());
    }

    static void move_values(toml::table& from, toml::table& into, const Kit& kit) {
        // One of these says how well the box holds heat: where the trip says it, the kit's way is none of its own.
        constexpr std::string_view ways[] = {"test", "log", "loss", "test_outside", "test_water", "reading_error"};
        const bool own_way = std::any_of(std::begin(ways), std::begin(ways) + 3,
                                         [&](std::string_view way) { return into.contains(way); });
        if (auto* const log = from.get_as<std::string>("log")) {
            log->get() = kit.folder + "/" + log->get();
        }
        for (auto&& [key, node] : from) {
            const bool a_way = std::find(std::begin(ways), std::end(ways), key.str()) != std::end(ways);
            if (!into.contains(key.str()) && !(own_way && a_way)) {
                node.visit([&, &name = key](auto& value) { into.insert(name, std::move(value)); });
            }
        }
    }

    const KitReader& read_kit_;
    Report& report_;
};

}  // namespace

bool is_kit_name(std::string_view name) {
    constexpr std::size_t most = 40;
    return !name.empty() && name.size() <= most &&
           name.find_first_not_of("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_") ==
               std::string_view::npos;
}

std::string kit_file(std::string_view name) {
    return fmt::format("{}.toml", name);
}

void put_in_kits(toml::table& trip, const KitReader& read_kit, Report& report) {
    KitUser user(read_kit, report);
    if (auto* const boxes = trip.get_as<toml::array>("box")) {
        for (toml::node& node : *boxes) {
            if (auto* const box = node.as_table()) {
                user.take(*box, "box");
            }
        }
    }
    if (auto* const fire = trip.get_as<toml::table>("fire")) {
        user.take(*fire, "fire");
    }
}

}  // namespace holdwater::trip
