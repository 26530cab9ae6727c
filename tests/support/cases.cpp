// SPDX-License-Identifier: MIT
#include "support/cases.hpp"

#include "support/files.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <sstream>
#include <stdexcept>

namespace holdwater::support {
namespace {

/// ${x1B} is a byte, ${300*ab} a text again and again, with ~ for line feeds.
std::string unfolded(const std::string& text) {
    std::string made;
    for (std::size_t at = 0; at < text.size();) {
        const auto open = text.find("${", at);
        const auto close = open == std::string::npos ? open : text.find('}', open);
        made += text.substr(at, open == std::string::npos ? open : open - at);
        if (close == std::string::npos) {
            break;
        }
        const std::string inside = text.substr(open + 2, close - open - 2);
        if (const auto star = inside.find('*'); star != std::string::npos) {
            std::string again = inside.substr(star + 1);
            std::replace(again.begin(), again.end(), '~', '\n');
            for (int i = std::stoi(inside.substr(0, star)); i > 0; --i) {
                made += again;
            }
        } else {
            made += static_cast<char>(std::stoi(inside.substr(1), nullptr, 16));
        }
        at = close + 1;
    }
    return made;
}

/// One case while its lines come in.
class Builder {
  public:
    Builder(Case made, std::string base) : made_(std::move(made)), text_(std::move(base)) {}

    void take_away(const std::string& line) {
        const std::string whole = line + "\n";
        at_ = text_.starts_with(whole) ? 0 : text_.find("\n" + whole);
        if (at_ == std::string::npos) {
            throw std::runtime_error(made_.where + ": the base has no line " + line);
        }
        at_ += text_.starts_with(whole) && at_ == 0 ? 0 : 1;
        text_.erase(at_, whole.size());
    }
    void put(const std::string& line) {
        const std::string whole = unfolded(line) + "\n";
        if (at_ == std::string::npos) {
            text_ += whole;
        } else {
            text_.insert(at_, whole);
            at_ += whole.size();
        }
    }
    void expect(const std::string& said) {
        const auto blank = said.find(' ');
        const auto colon = said.find(':');
        made_.line = std::stoi(said);
        made_.column = colon < blank ? std::stoi(said.substr(colon + 1)) : 0;
        made_.says = blank == std::string::npos ? "" : said.substr(blank + 1);
    }
    Case finish() {
        if (made_.says.empty()) {
            throw std::runtime_error(made_.where + ": the case does not say what must be said");
        }
        made_.text = std::move(text_);
        return made_;
    }

  private:
    Case made_;
    std::string text_;
    std::size_t at_ = std::string::npos;  // where a changed line goes; else at the end
};

}  // namespace

std::vector<Case> cases_in(const std::string& file) {
    std::istringstream in(source_text("tests/bad-input/" + file));
    std::map<std::string, std::string> bases{{"nothing", ""}};
    std::string* base = nullptr;
    std::vector<Case> cases;
    std::vector<Builder> open;
    const auto close = [&] {
        if (!open.empty()) {
            cases.push_back(open.back().finish());
            open.clear();
        }
    };
    int number = 0;
    for (std::string line; std::getline(in, line);) {
        ++number;
        const std::string where = file + ":" + std::to_string(number);
        if (line == "=end") {
            base = nullptr;
        } else if (base != nullptr) {
            *base += line + "\n";
        } else if (line.empty() || line.starts_with("#")) {
            continue;
        } else if (line.starts_with("=base ")) {
            close();
            base = &bases[line.substr(6)];
        } else if (line.starts_with("=")) {
            close();
            const auto blank = line.find(' ');
            const auto found = bases.find(line.substr(1, blank - 1));
            if (found == bases.end() || blank == std::string::npos) {
                throw std::runtime_error(where + ": no such base");
            }
            Case made;
            made.name = line.substr(blank + 1);
            made.where = where;
            open.emplace_back(std::move(made), found->second);
        } else if (open.empty()) {
            throw std::runtime_error(where + ": this belongs to no case");
        } else if (line.starts_with("-")) {
            open.back().take_away(line.substr(1));
        } else if (line.starts_with("+")) {
            open.back().put(line.substr(1));
        } else if (line.starts_with("@")) {
            open.back().expect(line.substr(1));
        } else {
            throw std::runtime_error(where + ": this is no line of a case");
        }
    }
    close();
    return cases;
}

std::vector<std::string> words_of(const std::string& line) {
    std::vector<std::string> words;
    char quote = '\0';
    bool open = false;
    for (const char c : line) {
        if (quote == '\0' && (c == ' ' || c == '\n')) {
            open = false;
            continue;
        }
        if (!open) {
            words.emplace_back();
            open = true;
        }
        if (quote != '\0' ? c == quote : c == '"' || c == '\'') {
            quote = quote == '\0' ? c : '\0';
        } else {
            words.back() += c;
        }
    }
    return words;
}

}  // namespace holdwater::support
