// SPDX-License-Identifier: MIT
#include "words/words.hpp"

#include "words/embedded.hpp"

#include <stdexcept>

namespace holdwater::words {

Place::Place(std::string_view name, std::string_view text) : name_(name), text_(text) {}
Place::Place(std::string_view name, const units::Amount& amount) : name_(name), amount_(&amount) {}
Place::Place(std::string_view name, int count) : name_(name), count_(count) {}

const Words& Words::model() {
    static const Words english = [] {
        auto read = Words::read(embedded_documents().front().text, "en.toml");
        if (!read) {
            throw std::logic_error("the wording in the program cannot be read");
        }
        return std::move(read).value();
    }();
    return english;
}

const std::string& Words::form(std::string_view key, std::initializer_list<Place> places) const {
    const auto found = wordings_.find(key);
    if (found == wordings_.end()) {
        throw std::logic_error(file_ + ": no wording for " + std::string(key));
    }
    const auto& forms = found->second.forms;
    for (const Place& place : places) {
        if (place.name_ == "count" && place.count_) {
            const auto own = forms.find(form_of(plural_, *place.count_));
            return own == forms.end() ? forms.at(Form::other) : own->second;
        }
    }
    return forms.at(Form::other);
}

std::string Words::text(std::string_view key, std::initializer_list<Place> places) const {
    std::string filled;
    std::string_view rest = form(key, places);
    while (true) {
        const auto open = rest.find('{');
        const auto close = rest.find('}', open);
        if (open == std::string_view::npos || close == std::string_view::npos) {
            return filled.append(rest);
        }
        filled.append(rest.substr(0, open));
        const std::string_view name = rest.substr(open + 1, close - open - 1);
        const Place* place = nullptr;
        for (const Place& one : places) {
            place = one.name_ == name ? &one : place;
        }
        if (place == nullptr) {
            throw std::logic_error(file_ + ": nothing fills {" + std::string(name) + "} in " + std::string(key));
        }
        if (place->amount_ != nullptr) {
            filled.append(written(*place->amount_));
        } else if (place->count_) {
            filled.append(std::to_string(*place->count_));
        } else {
            filled.append(place->text_);
        }
        rest.remove_prefix(close + 1);
    }
}

std::optional<std::string> Words::find(std::string_view key) const {
    const auto found = wordings_.find(key);
    return found == wordings_.end() ? std::nullopt : std::optional(found->second.forms.at(Form::other));
}

units::Numerals Words::numerals(units::System system) const {
    const bool us = units::first_of(system) == units::System::us;
    return {decimal_mark_, text(us ? "language.clock-us" : "language.clock") == "12"};
}

bool Words::of_own_sections(std::string_view key) {
    return key.starts_with("remark.") || key.starts_with("spread.");
}

std::set<std::string> Words::places_of(std::string_view text) {
    std::set<std::string> names;
    for (auto open = text.find('{'); open != std::string_view::npos; open = text.find('{', open + 1)) {
        const auto close = text.find('}', open);
        if (close == std::string_view::npos) {
            break;
        }
        names.emplace(text.substr(open + 1, close - open - 1));
    }
    return names;
}

}  // namespace holdwater::words
