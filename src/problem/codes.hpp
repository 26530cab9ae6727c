// SPDX-License-Identifier: MIT
// The codes of all problems: stable and machine-readable. Each says whose the problem is, and the exit code of the
// program follows from that. A code that does not stand here does not compile.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>

namespace holdwater::problem {

/// Who has to mend it, where it is an error.
enum class Whose {
    input,  // what was given: a trip file, a log, the command line, a folder to write to
    plan,   // nothing is wrong with what was given, but it does not hold or is not allowed
    ours    // the program itself, or a file that it came with
};

struct Row {
    std::string_view text;
    Whose whose;
};

// A line each, in order within its part: tests/problem says which is out of place, twice or never used.
inline constexpr std::array code_table{
    // What was given.
    Row{"altitude-out-of-range", Whose::input},
    Row{"arguments-swapped", Whose::input},
    Row{"at-risk-not-said", Whose::input},
    Row{"bath-not-above-outside", Whose::input},
    Row{"bath-not-falling", Whose::input},
    Row{"bath-overflows", Whose::input},
    Row{"box-too-small", Whose::input},
    Row{"box-unknown", Whose::input},
    Row{"box-unnamed", Whose::input},
    Row{"box-untested", Whose::input},
    Row{"box-very-full", Whose::input},
    Row{"box-without-food", Whose::input},
    Row{"card-cut", Whose::input},
    Row{"card-left-out", Whose::input},
    Row{"choice-unknown", Whose::input},
    Row{"class-altitude", Whose::input},
    Row{"class-kind", Whose::input},
    Row{"class-shape", Whose::input},
    Row{"clock-unreadable", Whose::input},
    Row{"column-missing", Whose::input},
    Row{"column-twice", Whose::input},
    Row{"column-unknown", Whose::input},
    Row{"command-missing", Whose::input},
    Row{"command-renamed", Whose::input},
    Row{"composition-sum", Whose::input},
    Row{"core-differs", Whose::input},
    Row{"core-of-which", Whose::input},
    Row{"csv-quotes", Whose::input},
    Row{"csv-separator", Whose::input},
    Row{"csv-width", Whose::input},
    Row{"cut-not-said", Whose::input},
    Row{"decimal-comma", Whose::input},
    Row{"deck-twice", Whose::input},
    Row{"dimension-missing", Whose::input},
    Row{"doubtful-reading", Whose::input},
    Row{"fell-fast", Whose::input},
    Row{"file-exists", Whose::input},
    Row{"file-too-big", Whose::input},
    Row{"file-unreadable", Whose::input},
    Row{"file-unwritable", Whose::input},
    Row{"fill-not-above-outside", Whose::input},
    Row{"folder-missing", Whose::input},
    Row{"food-in-twice", Whose::input},
    Row{"food-not-covered", Whose::input},
    Row{"food-out-twice", Whose::input},
    Row{"food-time", Whose::input},
    Row{"food-without-box", Whose::input},
    Row{"hour-twice", Whose::input},
    Row{"hours-mixed", Whose::input},
    Row{"key-missing", Whose::input},
    Row{"key-unknown", Whose::input},
    Row{"key-unused", Whose::input},
    Row{"kind-unknown", Whose::input},
    Row{"lid-opened", Whose::input},
    Row{"liner-large", Whose::input},
    Row{"log-empty", Whose::input},
    Row{"log-fall", Whose::input},
    Row{"log-gap", Whose::input},
    Row{"log-jump", Whose::input},
    Row{"log-other-day", Whose::input},
    Row{"loss-out-of-range", Whose::input},
    Row{"mass-against-size", Whose::input},
    Row{"measure-not-of-shape", Whose::input},
    Row{"measures-count", Whose::input},
    Row{"measures-order", Whose::input},
    Row{"mix-out-of-reach", Whose::input},
    Row{"mix-snow-by-volume", Whose::input},
    Row{"mixed-units", Whose::input},
    Row{"more-problems", Whose::input},
    Row{"name-glyph", Whose::input},
    Row{"name-twice", Whose::input},
    Row{"name-wide", Whose::input},
    Row{"name-word-wide", Whose::input},
    Row{"no-clean-stretch", Whose::input},
    Row{"no-food-in", Whose::input},
    Row{"not-utf8", Whose::input},
    Row{"note-food-unknown", Whose::input},
    Row{"note-unclear", Whose::input},
    Row{"nothing-fits", Whose::input},
    Row{"nothing-in-the-box", Whose::input},
    Row{"number-unreadable", Whose::input},
    Row{"option-missing", Whose::input},
    Row{"option-needs", Whose::input},
    Row{"option-one-of", Whose::input},
    Row{"option-twice", Whose::input},
    Row{"option-unknown", Whose::input},
    Row{"out-before-in", Whose::input},
    Row{"out-of-range", Whose::input},
    Row{"output-lost", Whose::input},
    Row{"outside-twice", Whose::input},
    Row{"outside-warmer", Whose::input},
    Row{"piece-over-box", Whose::input},
    Row{"poured-below-bath", Whose::input},
    Row{"pressure-out-of-range", Whose::input},
    Row{"properties-missing", Whose::input},
    Row{"reading-unreadable", Whose::input},
    Row{"readings-count", Whose::input},
    Row{"readings-missing", Whose::input},
    Row{"readings-order", Whose::input},
    Row{"readings-rise", Whose::input},
    Row{"replan-after-meal", Whose::input},
    Row{"replan-before-food", Whose::input},
    Row{"replan-core", Whose::input},
    Row{"replan-no-thermometer", Whose::input},
    Row{"replan-two-boxes", Whose::input},
    Row{"residual-large", Whose::input},
    Row{"rise-without-top-up", Whose::input},
    Row{"size-not-used", Whose::input},
    Row{"size-out-of-range", Whose::input},
    Row{"sleep-empty", Whose::input},
    Row{"sleep-long", Whose::input},
    Row{"stretch-cut", Whose::input},
    Row{"table-missing", Whose::input},
    Row{"target-above-bath", Whose::input},
    Row{"test-short", Whose::input},
    Row{"test-twice", Whose::input},
    Row{"text-empty", Whose::input},
    Row{"text-long", Whose::input},
    Row{"text-unprintable", Whose::input},
    Row{"thermometer-unknown", Whose::input},
    Row{"thick", Whose::input},
    Row{"time-unreadable", Whose::input},
    Row{"time-with-offset", Whose::input},
    Row{"times-not-rising", Whose::input},
    Row{"times-order", Whose::input},
    Row{"toml-too-big", Whose::input},
    Row{"toml-too-deep", Whose::input},
    Row{"toml-unreadable", Whose::input},
    Row{"too-few-readings", Whose::input},
    Row{"two-boxes", Whose::input},
    Row{"type-wrong", Whose::input},
    Row{"unit-celsius", Whose::input},
    Row{"unit-fahrenheit", Whose::input},
    Row{"unit-missing", Whose::input},
    Row{"unit-of-another-kind", Whose::input},
    Row{"unit-unknown", Whose::input},
    Row{"unread-end", Whose::input},
    Row{"unread-start", Whose::input},
    Row{"usage", Whose::input},
    Row{"value-missing", Whose::input},
    Row{"value-unusable", Whose::input},
    Row{"warmer-than-box", Whose::input},
    Row{"water-over-box", Whose::input},
    Row{"water-too-much", Whose::input},
    Row{"weak-test", Whose::input},
    Row{"weather-short", Whose::input},
    Row{"word-renamed", Whose::input},
    Row{"word-unexpected", Whose::input},
    Row{"word-unknown", Whose::input},
    // What does not hold, is not allowed, or is worth knowing about a plan.
    Row{"at-risk-target-too-low", Whose::plan},
    Row{"bath-falls-too-fast", Whose::plan},
    Row{"bath-near-floor", Whose::plan},
    Row{"below-consumer-advice", Whose::plan},
    Row{"box-test-weak", Whose::plan},
    Row{"category-refused", Whose::plan},
    Row{"come-up-slow", Whose::plan},
    Row{"come-up-too-slow", Whose::plan},
    Row{"core-too-hot", Whose::plan},
    Row{"fill-impossible", Whose::plan},
    Row{"finish-impossible", Whose::plan},
    Row{"food-floats", Whose::plan},
    Row{"growth-finish", Whose::plan},
    Row{"growth-not-undone", Whose::plan},
    Row{"held-long", Whose::plan},
    Row{"hold-floor", Whose::plan},
    Row{"hot-water-clash", Whose::plan},
    Row{"ice-does-not-fit", Whose::plan},
    Row{"keep-hot-refused", Whose::plan},
    Row{"mend", Whose::plan},
    Row{"no-mend", Whose::plan},
    Row{"no-rule", Whose::plan},
    Row{"no-thermometer-refused", Whose::plan},
    Row{"not-ready-in-time", Whose::plan},
    Row{"own-kill-figures", Whose::plan},
    Row{"physics-only", Whose::plan},
    Row{"portions-scarce", Whose::plan},
    Row{"portions-too-small", Whose::plan},
    Row{"replan-below-floor", Whose::plan},
    Row{"replan-too-cold", Whose::plan},
    Row{"rows-for-salmonella", Whose::plan},
    Row{"sear-no-place", Whose::plan},
    Row{"sear-too-long", Whose::plan},
    Row{"serve-too-early", Whose::plan},
    Row{"side-before-fire", Whose::plan},
    Row{"side-clash", Whose::plan},
    Row{"steak-refused", Whose::plan},
    Row{"target-too-low", Whose::plan},
    Row{"too-many-sides", Whose::plan},
    Row{"too-thick-to-finish", Whose::plan},
    Row{"wish-bent", Whose::plan},
    // The program itself, and the files that it came with.
    Row{"block-too-tall", Whose::ours},
    Row{"block-too-wide", Whose::ours},
    Row{"caution-missing", Whose::ours},
    Row{"chart-two-faces", Whose::ours},
    Row{"contrast-too-low", Whose::ours},
    Row{"data-missing", Whose::ours},
    Row{"data-unreadable", Whose::ours},
    Row{"facts-key-missing", Whose::ours},
    Row{"facts-key-unknown", Whose::ours},
    Row{"facts-name-unknown", Whose::ours},
    Row{"facts-range", Whose::ours},
    Row{"facts-reference-unknown", Whose::ours},
    Row{"facts-source-unknown", Whose::ours},
    Row{"facts-toml", Whose::ours},
    Row{"facts-twice", Whose::ours},
    Row{"facts-type", Whose::ours},
    Row{"font-unreadable", Whose::ours},
    Row{"glyph-missing", Whose::ours},
    Row{"layout-key-missing", Whose::ours},
    Row{"layout-key-unknown", Whose::ours},
    Row{"layout-number-expected", Whose::ours},
    Row{"layout-out-of-range", Whose::ours},
    Row{"layout-text-expected", Whose::ours},
    Row{"layout-true-or-false-expected", Whose::ours},
    Row{"layout-unreadable", Whose::ours},
    Row{"not-for-sheets", Whose::ours},
    Row{"overflow", Whose::ours},
    Row{"overlap", Whose::ours},
    Row{"pdf-failed", Whose::ours},
    Row{"plain-pdf", Whose::ours},
    Row{"png-failed", Whose::ours},
    Row{"quiet-zone", Whose::ours},
    Row{"rule-too-thin", Whose::ours},
    Row{"ruler-crowded", Whose::ours},
    Row{"ruler-cut-off", Whose::ours},
    Row{"sheet-too-small", Whose::ours},
    Row{"strip-crowded", Whose::ours},
    Row{"strip-too-wide", Whose::ours},
    Row{"text-crossed", Whose::ours},
    Row{"type-too-small", Whose::ours},
    Row{"words-incomplete", Whose::ours},
    Row{"words-unreadable", Whose::ours},
};

/// A code of the table, made from its text: problem::error("unit-missing", ...). For texts that are not known until the
/// program runs there is named().
class Code {
  public:
    template <std::size_t N>
    consteval Code(const char (&text)[N]) : row_(row_of(std::string_view(text, N - 1))) {}

    constexpr std::string_view text() const { return code_table[row_].text; }
    constexpr Whose whose() const { return code_table[row_].whose; }

    friend constexpr bool operator==(Code, Code) = default;

    /// Nothing if there is no such code.
    static std::optional<Code> named(std::string_view text);

  private:
    explicit constexpr Code(std::size_t row) : row_(row) {}
    static consteval std::size_t row_of(std::string_view text) {
        for (std::size_t row = 0; row < code_table.size(); ++row) {
            if (code_table[row].text == text) {
                return row;
            }
        }
        throw "this code does not stand in the table";
    }

    std::size_t row_;
};

}  // namespace holdwater::problem
