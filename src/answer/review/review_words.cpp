// SPDX-License-Identifier: MIT
#include "answer/review/review_words.hpp"

#include <algorithm>
#include <array>

namespace holdwater::answer {
namespace {

constexpr auto in_words = std::to_array<std::string_view>({"in", "into"});
constexpr auto out_words = std::to_array<std::string_view>(
    {"out", "removed", "remove", "removing", "took", "take", "taken", "lifted", "pulled"});
constexpr auto eaten_words =
    std::to_array<std::string_view>({"served", "serve", "serving", "eaten", "ate", "eating", "eat"});
/// Words for food in general; a clause that has one is about food, whatever else it names.
constexpr auto food_words =
    std::to_array<std::string_view>({"food", "foods", "meat", "meats", "piece", "pieces", "bag", "bags", "fish",
                                     "roast", "roasts", "joint", "joints", "steak", "steaks"});
/// Those of them that a trip may use as the name of one food: they name no other.
constexpr auto general_words =
    std::to_array<std::string_view>({"food", "foods", "meat", "meats", "pieces", "bags", "bag"});
constexpr auto small_words = std::to_array<std::string_view>(
    {"the",   "a",     "an",    "all",    "of",   "at",     "now",   "put",       "goes", "go",   "went", "gone",
     "came",  "comes", "come",  "was",    "were", "is",     "are",   "has",       "have", "been", "both", "and",
     "every", "it",    "them",  "we",     "i",    "its",    "bath",  "box",       "from", "to",   "with", "my",
     "our",   "here",  "whole", "placed", "for",  "dinner", "lunch", "breakfast", "water"});
/// Said of food that was named before: "took it out of the water".
constexpr auto pronouns = std::to_array<std::string_view>({"it", "them", "all", "everything", "dinner", "lunch"});
/// What else is taken in and out around a box. Without a word for food such a clause says nothing about it.
constexpr auto other_things = std::to_array<std::string_view>(
    {"lid",         "lids", "wood", "fire",  "fuel",  "gas",    "stove", "thermometer", "probe", "reading", "readings",
     "temperature", "temp", "note", "notes", "litre", "litres", "liter", "liters",      "l",     "torch",   "lamp"});
/// Where and when: "in the morning" is about no food, "out of the water" may be.
constexpr auto places =
    std::to_array<std::string_view>({"water", "pot", "pots", "sun", "wind", "rain", "snow", "ice", "shade", "tent",
                                     "hut", "morning", "evening", "night", "bed", "cold", "dark", "stirred", "stir"});

template <std::size_t Count>
bool is_in(const std::array<std::string_view, Count>& list, std::string_view word) {
    return std::find(list.begin(), list.end(), word) != list.end();
}

bool letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
           static_cast<unsigned char>(c) >= 0x80U;
}

char small(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

std::string trimmed_small(std::string_view text) {
    const auto from = text.find_first_not_of(" \t");
    if (from == std::string_view::npos) {
        return {};
    }
    std::string result(text.substr(from, text.find_last_not_of(" \t") - from + 1));
    std::transform(result.begin(), result.end(), result.begin(), small);
    return result;
}

bool starts_with_pour(std::string_view part) {
    constexpr auto words = std::to_array<std::string_view>(
        {"top-up", "top up", "topup", "topping up", "topped up", "topped-up", "swap", "hot water", "pour", "poured"});
    return std::any_of(words.begin(), words.end(), [&](std::string_view word) { return part.starts_with(word); });
}

/// Words by which a food may be called, without those that say nothing.
std::vector<std::string> calls_of(std::string_view name) {
    std::vector<std::string> calls = words_of(name);
    std::erase_if(calls, [](const std::string& word) {
        return is_in(general_words, word) || is_in(small_words, word) || is_in(in_words, word) ||
               is_in(out_words, word) || is_in(eaten_words, word);
    });
    return calls;
}

/// "loin" is also called "loins", and the other way round.
bool same_call(const std::string& a, const std::string& b) {
    return a == b || a + "s" == b || b + "s" == a;
}

bool calls(const std::vector<std::string>& names, const std::string& word) {
    return std::any_of(names.begin(), names.end(), [&](const std::string& name) { return same_call(name, word); });
}

using Calls = std::vector<std::vector<std::string>>;  // of each food

/// The foods of which most words are named; empty if none.
std::vector<std::size_t> named_by(const std::vector<std::string>& words, const Calls& names) {
    std::vector<std::size_t> best;
    std::ptrdiff_t most = 1;
    for (std::size_t i = 0; i < names.size(); ++i) {
        const auto count =
            std::count_if(words.begin(), words.end(), [&](const std::string& word) { return calls(names[i], word); });
        if (count > most) {
            best.clear();
            most = count;
        }
        if (count == most) {
            best.push_back(i);
        }
    }
    return best;
}

struct Clause {
    std::vector<std::string> words;
    bool colon = false;
    bool asked = false;
};

/// Names count before kinds: two foods of one kind are distinguished by their names.
Said said_by(const Clause& clause, const Calls& names, const Calls& kinds) {
    const auto& words = clause.words;
    const auto any = [&](const auto& list) {
        return std::any_of(words.begin(), words.end(), [&](const std::string& word) { return is_in(list, word); });
    };
    Said said;
    const bool in = any(in_words);
    const bool out = any(out_words);
    const bool eaten = any(eaten_words);
    if (!in && !out && !eaten) {
        return said;
    }
    said.foods = named_by(words, names);
    if (said.foods.empty()) {
        said.foods = named_by(words, kinds);
    }
    said.named = !said.foods.empty();
    const bool of_food = any(food_words) || any(pronouns) || said.named || eaten;
    if (!of_food && (any(other_things) || (any(places) && !out))) {
        return said;
    }
    if (!said.named) {
        for (std::size_t i = 0; i < names.size(); ++i) {
            said.foods.push_back(i);
        }
    }
    std::string strange;
    for (const std::string& word : words) {
        const bool number = word.front() >= '0' && word.front() <= '9';
        const auto called = [&](const auto& call) { return calls(call, word); };
        const bool name =
            std::any_of(names.begin(), names.end(), called) || std::any_of(kinds.begin(), kinds.end(), called);
        if (!number && !name && !is_in(in_words, word) && !is_in(out_words, word) && !is_in(eaten_words, word) &&
            !is_in(general_words, word) && !is_in(small_words, word)) {
            strange += (strange.empty() ? "" : " ") + word;
        }
    }
    if (!strange.empty() || clause.asked || (in && (out || eaten))) {
        said.what = Said::What::unclear;
        said.unknown = clause.colon && !said.named ? strange : "";
    } else {
        said.what = in ? Said::What::in : eaten ? Said::What::eaten : Said::What::out;
    }
    return said;
}

}  // namespace

std::vector<std::string> words_of(std::string_view text) {
    std::vector<std::string> words;
    bool open = false;
    for (const char c : text) {
        if (!letter(c)) {
            open = false;
            continue;
        }
        if (!open) {
            words.emplace_back();
        }
        open = true;
        words.back() += small(c);
    }
    return words;
}

std::vector<std::string> parts_of(std::string_view note) {
    std::vector<std::string> parts;
    while (!note.empty()) {
        const auto end = note.find(';');
        parts.push_back(trimmed_small(note.substr(0, end)));
        note = end == std::string_view::npos ? std::string_view{} : note.substr(end + 1);
    }
    return parts;
}

bool says_poured_first(std::string_view part) {
    return part == "after" || starts_with_pour(part) ||
           (part.starts_with("after ") && starts_with_pour(part.substr(std::string_view("after ").size())));
}

bool says_before_pour(std::string_view part) {
    return part == "before" ||
           (part.starts_with("before ") && starts_with_pour(part.substr(std::string_view("before ").size())));
}

bool says_none_poured(std::string_view part) {
    constexpr auto words =
        std::to_array<std::string_view>({"nothing poured", "nothing was poured", "none poured", "no top-up",
                                         "no top up", "no topup", "not topped up", "no swap", "no water poured"});
    return std::any_of(words.begin(), words.end(), [&](std::string_view word) { return part.starts_with(word); });
}

std::vector<Said> said_in(std::string_view note, const std::vector<trip::Food>& foods) {
    Calls names;
    Calls kinds;
    for (const trip::Food& food : foods) {
        names.push_back(calls_of(food.name));
        kinds.push_back(calls_of(food.kind));
    }
    std::vector<Said> all;
    while (!note.empty()) {
        const auto end = std::min(note.find_first_of(",!"), note.find(". "));
        const std::string clause = trimmed_small(note.substr(0, end));
        note = end == std::string_view::npos ? std::string_view{} : note.substr(end + 1);
        if (says_poured_first(clause) || says_before_pour(clause) || says_none_poured(clause)) {
            continue;
        }
        Said said =
            said_by({words_of(clause), clause.find(':') != std::string::npos, clause.find('?') != std::string::npos},
                    names, kinds);
        if (said.what != Said::What::nothing) {
            all.push_back(std::move(said));
        }
    }
    return all;
}

}  // namespace holdwater::answer
