// SPDX-License-Identifier: MIT
#include "trip/report.hpp"

#include "problem/bounds.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <tuple>
#include <utility>

namespace holdwater::trip {
namespace {

bool starts_letter(char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
}

auto order_key(const problem::Problem& p) {
    return std::tuple(p.place->file, p.place->line, p.place->column, p.severity, p.code.text(), p.message);
}

}  // namespace

void Report::put(problem::Problem problem, problem::Place place) {
    if (problems_.size() >= bounds::kept_problems) {
        ++not_kept_;
        failed_ = failed_ || problem.severity == problem::Severity::error;
        return;
    }
    problem.message = problem::one_line(problem.message);
    problem.hint = problem::one_line(problem.hint);
    problem.place = std::move(place);
    problems_.push_back(std::move(problem));
}

void Report::error(problem::Place place, problem::Code code, std::string_view message, std::string_view hint) {
    put(problem::error(code, std::string(message), std::string(hint)), std::move(place));
}

void Report::warning(problem::Place place, problem::Code code, std::string_view message, std::string_view hint) {
    put(problem::warning(code, std::string(message), std::string(hint)), std::move(place));
}

void Report::note(problem::Place place, problem::Code code, std::string_view message, std::string_view hint) {
    put(problem::note(code, std::string(message), std::string(hint)), std::move(place));
}

void Report::add(const problem::Problem& problem, problem::Place place, std::string_view prefix) {
    problem::Problem placed = problem;
    placed.message = std::string(prefix) + placed.message;
    put(std::move(placed), std::move(place));
}

void Report::add(const problem::Problems& problems) {
    for (const problem::Problem& problem : problems) {
        put(problem, problem.place.value_or(place(0, 0)));
    }
}

problem::Problems Report::take() && {
    const auto own_first = [this](const problem::Problem& a, const problem::Problem& b) {
        const bool a_other = a.place->file != file_;
        const bool b_other = b.place->file != file_;
        return a_other != b_other ? b_other : order_key(a) < order_key(b);
    };
    std::stable_sort(problems_.begin(), problems_.end(), own_first);
    const auto same = [](const auto& a, const auto& b) { return order_key(a) == order_key(b); };
    problems_.erase(std::unique(problems_.begin(), problems_.end(), same), problems_.end());
    if (problems_.size() > bounds::listed_problems) {
        const bool bad = failed();
        const std::size_t rest = problems_.size() - bounds::listed_problems + std::exchange(not_kept_, 0);
        problems_.erase(problems_.begin() + bounds::listed_problems, problems_.end());
        const std::string text = fmt::format("{} more like these are not listed", rest);
        if (bad) {
            error(place(0, 0), "more-problems", text, "mend the first ones and read the file again");
        } else {
            warning(place(0, 0), "more-problems", text);
        }
    }
    return std::move(problems_);
}

std::string_view without_space_around(std::string_view text) {
    using namespace std::string_view_literals;
    // White space of Unicode that a name may hold (has_unprintable refuses the rest), as UTF-8.
    static constexpr std::string_view spaces[] = {" "sv,
                                                  "\t"sv,
                                                  "\xC2\xA0"sv,
                                                  "\xE1\x9A\x80"sv,
                                                  "\xE2\x80\x80"sv,
                                                  "\xE2\x80\x81"sv,
                                                  "\xE2\x80\x82"sv,
                                                  "\xE2\x80\x83"sv,
                                                  "\xE2\x80\x84"sv,
                                                  "\xE2\x80\x85"sv,
                                                  "\xE2\x80\x86"sv,
                                                  "\xE2\x80\x87"sv,
                                                  "\xE2\x80\x88"sv,
                                                  "\xE2\x80\x89"sv,
                                                  "\xE2\x80\x8A"sv,
                                                  "\xE2\x80\xAF"sv,
                                                  "\xE2\x81\x9F"sv,
                                                  "\xE3\x80\x80"sv};
    const auto space_at = [&](auto has) {
        const auto found = std::find_if(std::begin(spaces), std::end(spaces), has);
        return found == std::end(spaces) ? std::size_t{0} : found->size();
    };
    while (const std::size_t size = space_at([&](auto space) { return text.starts_with(space); })) {
        text.remove_prefix(size);
    }
    while (const std::size_t size = space_at([&](auto space) { return text.ends_with(space); })) {
        text.remove_suffix(size);
    }
    return text;
}

std::optional<std::size_t> first_not_utf8(std::string_view text) {
    const auto byte_at = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U; };
    for (std::size_t i = 0; i < text.size();) {
        const unsigned lead = byte_at(i);
        const unsigned second = byte_at(i + 1);
        std::size_t more = 0;
        // The range of the second byte shuts out overlong forms, surrogates and what lies beyond U+10FFFF.
        unsigned low = 0x80;
        unsigned high = 0xBF;
        if (lead >= 0xC2 && lead <= 0xDF) {
            more = 1;
        } else if (lead >= 0xE0 && lead <= 0xEF) {
            more = 2;
            low = lead == 0xE0 ? 0xA0 : low;
            high = lead == 0xED ? 0x9F : high;
        } else if (lead >= 0xF0 && lead <= 0xF4) {
            more = 3;
            low = lead == 0xF0 ? 0x90 : low;
            high = lead == 0xF4 ? 0x8F : high;
        } else if (lead >= 0x80) {
            return i;
        }
        if (more > 0 && (second < low || second > high)) {
            return i;
        }
        for (std::size_t k = 2; k <= more; ++k) {
            if ((byte_at(i + k) & 0xC0U) != 0x80U) {
                return i;
            }
        }
        i += 1 + more;
    }
    return std::nullopt;
}

std::size_t letters_in(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), starts_letter));
}

bool has_unprintable(std::string_view text) {
    for (std::size_t i = 0; i < text.size(); ++i) {
        const auto byte = static_cast<unsigned char>(text[i]);
        const auto next = static_cast<unsigned char>(i + 1 < text.size() ? text[i + 1] : '\0');
        const auto third = static_cast<unsigned char>(i + 2 < text.size() ? text[i + 2] : '\0');
        const bool c0_or_delete = byte < 0x20 || byte == 0x7f;
        const bool c1 = byte == 0xC2 && next >= 0x80 && next < 0xA0;
        // U+200B..200F and U+2028..202E (E2 80 8B..8F, A8..AE); U+2060..206F (E2 81 A0..AF); U+FEFF (EF BB BF).
        const bool invisible =
            (byte == 0xE2 && next == 0x80 && ((third >= 0x8B && third <= 0x8F) || (third >= 0xA8 && third <= 0xAE))) ||
            (byte == 0xE2 && next == 0x81 && third >= 0xA0 && third <= 0xAF) ||
            (byte == 0xEF && next == 0xBB && third == 0xBF);
        if (c0_or_delete || c1 || invisible) {
            return true;
        }
    }
    return false;
}

}  // namespace holdwater::trip
