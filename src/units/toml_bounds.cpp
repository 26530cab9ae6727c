// SPDX-License-Identifier: MIT
#include "units/toml_bounds.hpp"

#include "problem/bounds.hpp"
#include "problem/in_text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace holdwater::units {
namespace {

/// Walks over a text by TOML's own rules for strings and comments, counting what stands outside them.
class Walk {
  public:
    explicit Walk(std::string_view text) : rest_(text) {
        constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
        if (rest_.starts_with(byte_order_mark)) {
            rest_.remove_prefix(byte_order_mark.size());
        }
    }

    /// True where a bound is passed; then line and column are there, and `dots` says by which.
    bool passes_a_bound() {
        while (!rest_.empty()) {
            switch (rest_.front()) {
                case '#':
                    skip_until("\n");
                    continue;
                case '"':
                case '\'':
                    skip_string();
                    continue;
                case '.':
                    if (++dots >= bounds::toml_depth) {
                        return true;
                    }
                    break;
                case '[':
                case '{':
                    dots = 0;
                    if (++open_ > bounds::toml_depth) {
                        return true;
                    }
                    break;
                case ']':
                case '}':
                    dots = 0;
                    open_ -= open_ > 0 ? 1 : 0;
                    break;
                case '=':
                case ',':
                case '\n':
                    dots = 0;
                    break;
                default:
                    break;
            }
            step(1);
        }
        return false;
    }

    int line = 1;
    int column = 1;
    std::size_t dots = 0;  // of the key so far; a number or a time of day has one at the most

  private:
    /// Over so many bytes; columns count letters, as the parser does.
    void step(std::size_t bytes) {
        for (const char c : rest_.substr(0, bytes)) {
            if (c == '\n') {
                ++line;
                column = 1;
            } else if ((static_cast<unsigned char>(c) & 0xC0U) != 0x80U) {
                ++column;
            }
        }
        rest_.remove_prefix(std::min(bytes, rest_.size()));
    }

    void skip_until(std::string_view end) { step(std::min(rest_.find(end), rest_.size())); }

    /// Basic strings have escapes, literal ones none; three quotation marks open one of several lines, which may end
    /// with two more of them than close it. One that is never closed is for the parser to name.
    void skip_string() {
        const char quote = rest_.front();
        const std::string three(3, quote);
        const bool lines = rest_.starts_with(three);
        step(lines ? 3 : 1);
        while (!rest_.empty()) {
            if (rest_.front() == '\\' && quote == '"') {
                step(2);
            } else if (lines && rest_.starts_with(three)) {
                step(3);
                for (int more = 0; more < 2 && rest_.starts_with(quote); ++more) {
                    step(1);
                }
                return;
            } else if (!lines && (rest_.front() == quote || rest_.front() == '\n')) {
                step(rest_.front() == quote ? 1 : 0);
                return;
            } else {
                step(1);
            }
        }
    }

    std::string_view rest_;
    std::size_t open_ = 0;
};

}  // namespace

std::optional<problem::Problem> beyond_toml_bounds(std::string_view text, const std::string& file_name) {
    if (text.size() > bounds::toml_bytes) {
        problem::Problem big = problem::error("toml-too-big", fmt::format("{} bytes are too many", text.size()),
                                              fmt::format("at most {}; is this the right file?", bounds::toml_bytes));
        big.place = problem::place_in(text, bounds::toml_bytes, file_name);
        return big;
    }
    Walk walk(text);
    if (!walk.passes_a_bound()) {
        return std::nullopt;
    }
    problem::Problem deep =
        walk.dots > 0
            ? problem::error("toml-too-deep", fmt::format("this key has more than {} parts", bounds::toml_depth),
                             "a key is one word, such as thickness = \"85 mm\"")
            : problem::error(
                  "toml-too-deep", fmt::format("more than {} brackets are open here", bounds::toml_depth),
                  "is a bracket left open? a list of tables, [{ ... }, { ... }], is the deepest that is due");
    deep.place = problem::Place{file_name, walk.line, walk.column};
    return deep;
}

}  // namespace holdwater::units
