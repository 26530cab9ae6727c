// SPDX-License-Identifier: MIT
#include "cli/files/stamp.hpp"

#include "cli/files/data.hpp"
#include "facts/facts.hpp"
#include "trip/read_trip.hpp"

#include <cstdint>
#include <string_view>

namespace holdwater::cli {
namespace {

/// FNV-1a, 64 bit.
void mix(std::uint64_t& hash, std::string_view text) {
    for (const char c : text) {
        hash ^= static_cast<unsigned char>(c);
        hash *= 1099511628211ULL;
    }
    hash ^= 0xffU;  // ends each part, so that "ab" + "c" differs from "a" + "bc"
    hash *= 1099511628211ULL;
}

}  // namespace

std::string stamp_of(const trip::Trip& trip, const std::vector<std::string>& layout_texts) {
    return stamp_of_text(trip::canonical(trip), layout_texts);
}

problem::Result<std::string> own_stamp(const trip::Trip& trip) {
    const auto words = layout_file("words/" + trip.language + ".toml");
    const auto format = layout_file("formats/hand.toml");
    if (!words || !format) {
        return !words ? words.problems() : format.problems();
    }
    return stamp_of(trip, {*format, *words});
}

std::string stamp_of_text(const std::string& canonical, const std::vector<std::string>& layout_texts) {
    std::uint64_t hash = 14695981039346656037ULL;
    mix(hash, canonical);
    mix(hash, facts::facts().checksum());
    mix(hash, version());
    for (const std::string& text : layout_texts) {
        mix(hash, text);
    }
    // No letters or digits that look alike when wet: no 0 O 1 I L S 5 B 8.
    constexpr std::string_view alphabet = "234679ACDEFGHJKMNPQRTUVWXYZ";
    std::string stamp;
    for (int i = 0; i < 8; ++i) {
        if (i == 4) {
            stamp += '-';
        }
        stamp += alphabet[hash % alphabet.size()];
        hash /= alphabet.size();
    }
    return stamp;
}

}  // namespace holdwater::cli
