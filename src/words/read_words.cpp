// SPDX-License-Identifier: MIT
#include "problem/bounds.hpp"
#include "problem/in_text.hpp"
#include "units/toml_bounds.hpp"
#include "words/words.hpp"

#include <fmt/format.h>
#include <toml++/toml.h>

#include <utility>

namespace holdwater::words {
namespace {

constexpr const char* what_it_holds =
    "a word file holds [table] key = \"text\", or { one = \"text\", other = \"text\" }";

class Reader {
  public:
    explicit Reader(std::string file) : file_(std::move(file)) {}

    problem::Place place(const toml::source_region& where) const {
        return {file_, static_cast<int>(where.begin.line), static_cast<int>(where.begin.column)};
    }
    void fault(problem::Place at, std::string message, std::string hint = what_it_holds) {
        if (problems_.size() >= bounds::listed_problems) {
            return;  // who has mended these reads the file again
        }
        problems_.push_back(problem::error("words-unreadable", std::move(message), std::move(hint)));
        problems_.back().place = std::move(at);
    }
    const problem::Problems& problems() const { return problems_; }

    /// A text that is no longer than a card may hold; else its fault.
    bool within(problem::Place at, std::string_view text) {
        if (text.size() <= bounds::wording_letters) {
            return true;
        }
        fault(std::move(at), fmt::format("a text of {} letters", text.size()),
              fmt::format("at most {}", bounds::wording_letters));
        return false;
    }

    /// Nothing, with its fault, where the value is neither a text nor a table of forms.
    std::optional<Wording> wording(const toml::node& value) {
        Wording made;
        made.place = place(value.source());
        if (const auto text = value.value<std::string>()) {
            made.forms[Form::other] = *text;
            return within(made.place, *text) ? std::optional(made) : std::nullopt;
        }
        const toml::table* forms = value.as_table();
        if (forms == nullptr) {
            fault(made.place, "a word that is not a text");
            return std::nullopt;
        }
        for (const auto& [key, one] : *forms) {
            const auto form = form_named(key.str());
            const auto text = one.value<std::string>();
            if (!form || !text) {
                fault(place(one.source()), "\"" + problem::quoted(key.str()) + "\" is no plural form with a text");
                return std::nullopt;
            }
            if (!within(place(one.source()), *text)) {
                return std::nullopt;
            }
            made.forms[*form] = *text;
        }
        if (!made.forms.contains(Form::other)) {
            fault(made.place, "plural forms without the form \"other\"");
            return std::nullopt;
        }
        return made;
    }

  private:
    std::string file_;
    problem::Problems problems_;
};

}  // namespace

problem::Result<Words> Words::read(std::string_view toml_text, const std::string& file_name) {
    Words words;
    words.file_ = file_name;
    Reader reader(file_name);
    if (auto beyond = units::beyond_toml_bounds(toml_text, file_name)) {
        beyond->code = "words-unreadable";
        return *std::move(beyond);
    }
    try {
        const toml::table root = toml::parse(toml_text, std::string_view{file_name});
        for (const auto& [table_key, node] : root) {
            const toml::table* table = node.as_table();
            if (table == nullptr) {
                reader.fault(reader.place(node.source()), "a key outside a table");
                continue;
            }
            const std::string section(table_key.str());
            words.tables_.emplace(section, reader.place(node.source()));
            for (const auto& [key, value] : *table) {
                if (section == "remark" && !problem::Code::named(key.str())) {
                    reader.fault(reader.place(key.source()), "no remark has the code " + problem::quoted(key.str()),
                                 "leave it out");
                }
                if (auto made = reader.wording(value)) {
                    words.wordings_.emplace(section + "." + std::string(key.str()), std::move(*made));
                }
            }
        }
    } catch (const toml::parse_error& fault) {
        reader.fault(reader.place(fault.source()), std::string(fault.description()));
    }
    // A place with a dot is the text of that key.
    for (auto& [key, wording] : words.wordings_) {
        for (auto& [form, text] : wording.forms) {
            for (const std::string& name : places_of(text)) {
                if (name.find('.') == std::string::npos) {
                    continue;
                }
                const auto meant = words.wordings_.find(name);
                if (meant == words.wordings_.end() || !places_of(meant->second.forms.at(Form::other)).empty()) {
                    reader.fault(wording.place, fmt::format("{} asks for {{{}}}, which is no text without places",
                                                            problem::quoted(key), problem::quoted(name)));
                    continue;
                }
                const std::string place = "{" + name + "}";
                for (auto at = text.find(place); at != std::string::npos && reader.within(wording.place, text);
                     at = text.find(place)) {
                    text.replace(at, place.size(), meant->second.forms.at(Form::other));
                }
            }
        }
    }
    if (!reader.problems().empty()) {
        return reader.problems();
    }
    if (const auto mark = words.find("language.decimal-mark"); mark && mark->size() == 1) {
        words.decimal_mark_ = mark->front();
    }
    if (const auto rule = plural_rule_named(words.find("language.plural").value_or(""))) {
        words.plural_ = *rule;
    }
    return words;
}

}  // namespace holdwater::words
