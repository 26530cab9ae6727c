// SPDX-License-Identifier: MIT
#include "trip/edits.hpp"

#include "trip/written.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace holdwater::trip {
namespace {

std::string in_quotes(std::string_view text) {
    std::string out = "\"";
    for (const char c : text) {
        out += c == '"' || c == '\\' ? std::string{'\\', c} : std::string{c};
    }
    return out + "\"";
}

/// Of one table: notes each key of which the written value differs.
class Comparison {
  public:
    Comparison(std::vector<Edit>& edits, std::string table, std::size_t index)
        : edits_(&edits), table_(std::move(table)), index_(index) {}

    void text(std::string_view key, std::string before, std::string after, std::string_view behind) {
        if (before != after) {
            edits_->push_back({table_, index_, std::string(key), std::move(after), std::string(behind)});
        }
    }
    template <class Q>
    void value(std::string_view key, const Q& before, const Q& after, std::string_view behind) {
        text(key, in_quotes(written(before)), in_quotes(written(after)), behind);
    }
    template <class Q>
    void value(std::string_view key, const std::optional<Q>& before, const std::optional<Q>& after,
               std::string_view behind) {
        const auto of = [](const std::optional<Q>& q) { return q ? in_quotes(written(*q)) : std::string{}; };
        text(key, of(before), of(after), behind);
    }
    void moment(std::string_view key, const std::optional<units::LocalTime>& before,
                const std::optional<units::LocalTime>& after, std::string_view behind) {
        const auto of = [](const std::optional<units::LocalTime>& t) { return t ? t->iso() : std::string{}; };
        text(key, of(before), of(after), behind);
    }
    void truth(std::string_view key, bool before, bool after, std::string_view behind) {
        text(key, before ? "true" : "false", after ? "true" : "false", behind);
    }

  private:
    std::vector<Edit>* edits_;
    std::string table_;
    std::size_t index_;
};

std::string quoted_name(std::string_view name) {
    return in_quotes(name);
}

void compare(const Food& before, const Food& after, Comparison keys) {
    keys.text("shape", quoted_name(facts::to_name(before.shape)), quoted_name(facts::to_name(after.shape)), "kind");
    keys.value("thickness", before.thickness, after.thickness, "shape");
    keys.value("width", before.width, after.width, "thickness");
    keys.value("length", before.length, after.length, "thickness");
    keys.value("mass", before.mass, after.mass, "thickness");
    keys.text("pieces", fmt::format("{}", before.pieces), fmt::format("{}", after.pieces), "mass");
    if (after.use != before.use) {
        keys.text("use", quoted_name(facts::to_name(before.use)), quoted_name(facts::to_name(after.use)), "kind");
        keys.value("start", before.start, after.start, "mass");
    }
    if (after.use == facts::Use::keep_hot) {
        if (before.use != after.use) {
            keys.text("target", "there", {}, {});
            keys.text("tolerance", "there", {}, {});
        }
    } else {
        keys.value("target", before.target, after.target, "start");
        keys.value("tolerance", before.tolerance, after.tolerance, "target");
    }
    const auto contact = [](const Food& food) {
        return food.contact_given ? quoted_name(facts::to_name(food.contact)) : std::string{};
    };
    keys.text("contact", contact(before), contact(after), "target");
    keys.truth("over_fire", before.over_fire, after.over_fire, "target");
    const auto box = [](const Food& food) { return food.box.empty() ? std::string{} : in_quotes(food.box); };
    keys.text("box", box(before), box(after), "name");
    keys.moment("out", before.out, after.out, "target");
}

void compare(const Box& before, const Box& after, Comparison keys) {
    const auto name = [](const Box& box) { return box.name.empty() ? std::string{} : in_quotes(box.name); };
    keys.text("name", name(before), name(after), "");
    keys.value("water", before.water, after.water, "inside");
    const auto thermometer = [](const Box& box) {
        return box.thermometer ? in_quotes(written(*box.thermometer)) : in_quotes("none");
    };
    keys.text("thermometer", thermometer(before), thermometer(after), "water");
    keys.truth("wax", before.wax_tell_tale, after.wax_tell_tale, "thermometer");
    const auto* const loss = std::get_if<units::HeatLoss>(&after.test);
    const auto* const own = std::get_if<units::HeatLoss>(&before.test);
    if (loss != nullptr && own == nullptr) {
        keys.text("loss", {}, in_quotes(written(*loss)), "thermometer");
        for (const char* key : {"test", "log", "reading_error", "test_outside", "test_water"}) {
            keys.text(key, "there", {}, {});
        }
    } else if (loss != nullptr) {
        keys.value("loss", *own, *loss, "thermometer");
    }
    keys.truth("prewarmed", before.prewarmed, after.prewarmed, "thermometer");
}

}  // namespace

std::vector<std::size_t> foods_gone(const Trip& before, const Trip& after) {
    std::vector<std::size_t> gone;
    for (std::size_t i = 0; i < before.foods.size(); ++i) {
        const bool kept = std::any_of(after.foods.begin(), after.foods.end(),
                                      [&](const Food& food) { return food.name == before.foods[i].name; });
        if (!kept) {
            gone.push_back(i);
        }
    }
    return gone;
}

std::vector<Edit> edits_between(const Trip& before, const Trip& after) {
    std::vector<Edit> edits;
    Comparison head(edits, "trip", 0);
    head.moment("from", before.from, after.from, "");
    head.moment("light_fire", before.light_fire, after.light_fire, "from");
    head.moment("serve", before.serve, after.serve, "");
    for (std::size_t i = 0; i < before.foods.size(); ++i) {
        const auto own = std::find_if(after.foods.begin(), after.foods.end(),
                                      [&](const Food& food) { return food.name == before.foods[i].name; });
        if (own != after.foods.end()) {
            compare(before.foods[i], *own, Comparison(edits, "food", i));
        }
    }
    for (std::size_t i = 0; i < std::min(before.boxes.size(), after.boxes.size()); ++i) {
        compare(before.boxes[i], after.boxes[i], Comparison(edits, "box", i));
    }
    Comparison(edits, "weather", 0)
        .text("wind", quoted_name(facts::to_name(before.weather.wind)), quoted_name(facts::to_name(after.weather.wind)),
              "");
    Comparison(edits, "fire", 0)
        .text("pots", fmt::format("{}", before.fire.pots), fmt::format("{}", after.fire.pots), "");
    return edits;
}

}  // namespace holdwater::trip
