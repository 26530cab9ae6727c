// SPDX-License-Identifier: MIT
#include "problem/bounds.hpp"
#include "words/words.hpp"

#include <algorithm>

namespace holdwater::words {
namespace {

std::string listed(const std::vector<std::string_view>& names) {
    std::string text;
    for (const std::string_view name : names) {
        text += (text.empty() ? "\"" : name == names.back() ? " or \"" : ", \"") + std::string(name) + "\"";
    }
    return text;
}

const std::string& plainest(const Wording& wording) {
    return wording.forms.at(Form::other);
}

class Comparison {
  public:
    explicit Comparison(PluralRule rule) : forms_(forms_of(rule)) {}

    void fault(const problem::Place& at, std::string message, std::string hint) {
        if (faults_.size() >= bounds::kept_problems) {
            return;  // all that a language still lacks is listed, but no endless file of what no card has
        }
        faults_.push_back(problem::error("words-incomplete", std::move(message), std::move(hint)));
        faults_.back().place = at;
    }
    const problem::Problems& faults() const { return faults_; }

    /// The places of a text, and the forms where a count decides.
    void compare(const std::string& key, const Wording& own, const Wording& model) {
        const std::string hint = "\"" + plainest(model) + "\" in English";
        const std::set<std::string> due = Words::places_of(plainest(model));
        const bool counts = due.contains("count");
        const bool plural = own.forms.size() > 1;
        if (plural && !counts) {
            fault(own.place, "no count decides between the forms of " + key, hint);
        }
        if (plural || model.forms.size() > 1) {
            for (const Form form : {Form::one, Form::few, Form::other}) {
                const bool wanted = std::find(forms_.begin(), forms_.end(), form) != forms_.end();
                if (wanted != own.forms.contains(form)) {
                    fault(
                        own.place,
                        key + (wanted ? " lacks the form \"" : " has the form \"") + std::string(name_of(form)) + "\"",
                        wanted ? hint : "the plural rule of this language has no such form");
                }
            }
        }
        for (const auto& [form, text] : own.forms) {
            std::set<std::string> has = Words::places_of(text);
            if (counts && form != Form::other) {
                has.insert("count");  // "1 pot" says it without
            }
            if (has != due) {
                fault(own.place, "other {places} in " + key + " than in English", hint);
            }
        }
    }

    void one_of(const std::string& key, const Wording& own, const std::vector<std::string_view>& known) {
        if (std::find(known.begin(), known.end(), plainest(own)) == known.end()) {
            fault(own.place, key + " is \"" + plainest(own) + "\"", listed(known));
        }
    }

  private:
    std::vector<Form> forms_;
    problem::Problems faults_;
};

}  // namespace

problem::Problems Words::faults_against(const Words& model, const std::vector<std::string>& also) const {
    Comparison comparison(plural_);
    const auto missing = [&](const std::string& key, std::string hint) {
        const auto table = tables_.find(key.substr(0, key.find('.')));
        const problem::Place at = table == tables_.end() ? problem::Place{file_, 0, 0} : table->second;
        comparison.fault(at, "no wording for " + key, std::move(hint));
    };
    for (const auto& [key, wording] : model.wordings_) {
        const auto own = wordings_.find(key);
        if (own == wordings_.end()) {
            missing(key, "\"" + plainest(wording) + "\" in English");
        } else if (!key.starts_with("language.")) {
            comparison.compare(key, own->second, wording);
        }
    }
    for (const std::string& key : also) {
        if (!has(key)) {
            missing(key, "a text of its own");
        }
    }
    for (const auto& [key, wording] : wordings_) {
        const bool spread = key.starts_with("spread.") && !also.empty();
        const bool known =
            model.has(key) || (spread ? std::find(also.begin(), also.end(), key) != also.end() : of_own_sections(key));
        if (!known) {
            comparison.fault(wording.place, "no card has the words " + key, "leave them out");
        }
    }
    const std::pair<const char*, std::vector<std::string_view>> settings[] = {{"language.decimal-mark", {".", ","}},
                                                                              {"language.clock", {"24", "12"}},
                                                                              {"language.clock-us", {"24", "12"}},
                                                                              {"language.plural", plural_rules()}};
    for (const auto& [key, known] : settings) {
        if (const auto own = wordings_.find(key); own != wordings_.end()) {
            comparison.one_of(key, own->second, known);
        }
    }
    return comparison.faults();
}

}  // namespace holdwater::words
