// SPDX-License-Identifier: MIT
// A fuzzing program of one kind of text, FUZZ_KIND. Besides single bytes whole lines and cells are changed, since most
// of what is read stands in lines.
#include "fuzz/entries.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <random>
#include <string>

extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t most);

namespace {

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    for (std::size_t at = 0; at <= text.size();) {
        const auto end = std::min(text.find('\n', at), text.size());
        lines.push_back(text.substr(at, end - at));
        at = end + 1;
    }
    return lines;
}

/// What people, spreadsheets and fate put in the place of a value.
constexpr const char* values[] = {"nan",       "-inf",     "1e-310",         "\"\"",
                                  "[]",        "{}",       "\"85 mm\"",      "\"-4 C\"",
                                  "1e308",     "0",        "true",           "2027-05-08T10:00:00",
                                  "\"08:00\"", "food in",  "topped up, 2 L", "62.5",
                                  "-1",        "\xC3\xA9", "\"\\u202E\"",    "{limits.name}"};

std::string changed_line(const std::string& line, std::mt19937& draw) {
    const char* const value = values[draw() % std::size(values)];
    const auto from = line.find_first_of("=,");
    if (from == std::string::npos) {
        return value;
    }
    // A cell, or what stands behind the equals sign.
    const auto to = line[from] == '=' ? line.size() : std::min(line.find(',', from + 1), line.size());
    return line.substr(0, from + 1) + value + line.substr(to);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    FUZZ_ENTRY(std::string_view(reinterpret_cast<const char*>(data), size));
    return 0;
}

extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size, std::size_t most, unsigned seed) {
    std::mt19937 draw(seed);
    if (size == 0 || draw() % 2 == 0) {
        return LLVMFuzzerMutate(data, size, most);
    }
    auto lines = lines_of({reinterpret_cast<const char*>(data), size});
    const std::size_t one = draw() % lines.size();
    const std::size_t other = draw() % lines.size();
    switch (draw() % 5) {
        case 0:
            lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(one));
            break;
        case 1:
            lines.insert(lines.begin() + static_cast<std::ptrdiff_t>(one), std::string(lines[other]));
            break;
        case 2:
            std::swap(lines[one], lines[other]);
            break;
        default:
            lines[one] = changed_line(lines[one], draw);
            break;
    }
    std::string text;
    for (const std::string& line : lines) {
        text += (text.empty() && &line == &lines.front() ? "" : "\n") + line;
    }
    text.resize(std::min(text.size(), most));
    std::memcpy(data, text.data(), text.size());
    return text.size();
}
