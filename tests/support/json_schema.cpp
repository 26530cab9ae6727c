// SPDX-License-Identifier: MIT
#include "support/json_schema.hpp"

#include <algorithm>
#include <regex>
#include <stdexcept>

namespace holdwater::support {
namespace {

using nlohmann::json;
using Faults = std::vector<std::string>;

class SchemaCheck {
  public:
    explicit SchemaCheck(const json& whole) : whole_(whole) {}

    Faults of(const json& value, const json& schema, const std::string& path) const {
        Faults faults;
        for (const auto& [word, asked] : schema.items()) {
            one_word(value, schema, word, asked, path, faults);
        }
        return faults;
    }

  private:
    static bool is_of(const json& value, const std::string& type) {
        return type == "object"    ? value.is_object()
               : type == "array"   ? value.is_array()
               : type == "string"  ? value.is_string()
               : type == "boolean" ? value.is_boolean()
               : type == "null"    ? value.is_null()
               : type == "integer" ? value.is_number_integer()
               : type == "number"  ? value.is_number()
                                   : throw std::logic_error("no type " + type);
    }

    void one_word(const json& value, const json& schema, const std::string& word, const json& asked,
                  const std::string& path, Faults& faults) const {
        const auto fault = [&](const std::string& text) { faults.push_back(path + ": " + text); };
        if (word == "$schema" || word == "title" || word == "description" || word == "$defs") {
            return;
        }
        if (word == "type") {
            const json types = asked.is_array() ? asked : json::array({asked});
            if (std::none_of(types.begin(), types.end(), [&](const json& type) { return is_of(value, type); })) {
                fault("is no " + asked.dump());
            }
        } else if (word == "const" || word == "enum") {
            const json words = word == "enum" ? asked : json::array({asked});
            if (std::find(words.begin(), words.end(), value) == words.end()) {
                fault(value.dump() + " is none of " + words.dump());
            }
        } else if (word == "pattern") {
            if (value.is_string() &&
                !std::regex_search(value.get<std::string>(), std::regex(asked.get<std::string>()))) {
                fault(value.dump() + " does not match");
            }
        } else if (word == "minItems" || word == "maxItems") {
            if (value.is_array() && (word == "minItems" ? value.size() < asked : value.size() > asked)) {
                fault("has " + std::to_string(value.size()) + " items");
            }
        } else if (word == "items") {
            for (std::size_t i = 0; value.is_array() && i < value.size(); ++i) {
                add(of(value[i], asked, path + "/" + std::to_string(i)), faults);
            }
        } else if (word == "properties") {
            for (const auto& [key, part] : asked.items()) {
                if (value.is_object() && value.contains(key)) {
                    add(of(value[key], part, path + "/" + key), faults);
                }
            }
        } else if (word == "required") {
            for (const json& key : asked) {
                if (value.is_object() && !value.contains(key.get<std::string>())) {
                    fault("has no " + key.dump());
                }
            }
        } else if (word == "additionalProperties") {
            no_others(value, schema, asked, path, faults);
        } else if (word == "$ref") {
            add(of(value, whole_.at(json::json_pointer(asked.get<std::string>().substr(1))), path), faults);
        } else if (word == "anyOf" || word == "oneOf") {
            alternatives(value, word, asked, path, faults);
        } else {
            throw std::logic_error("the checker does not know " + word);
        }
    }

    static void no_others(const json& value, const json& schema, const json& asked, const std::string& path,
                          Faults& faults) {
        if (asked != false) {
            throw std::logic_error("additionalProperties is false, or left out");
        }
        if (!value.is_object()) {
            return;
        }
        for (const auto& [key, part] : value.items()) {
            if (!schema.at("properties").contains(key)) {
                faults.push_back(path + ": has " + key + ", which the schema does not know");
            }
        }
    }

    void alternatives(const json& value, const std::string& word, const json& asked, const std::string& path,
                      Faults& faults) const {
        std::size_t fitting = 0;
        Faults nearest;
        for (const json& part : asked) {
            Faults these = of(value, part, path);
            fitting += these.empty() ? 1 : 0;
            if (nearest.empty() || these.size() < nearest.size()) {
                nearest = std::move(these);
            }
        }
        if (fitting == 0) {
            add(nearest, faults);
        } else if (word == "oneOf" && fitting > 1) {
            faults.push_back(path + ": fits more than one");
        }
    }

    static void add(const Faults& more, Faults& faults) { faults.insert(faults.end(), more.begin(), more.end()); }

    const json& whole_;
};

}  // namespace

std::vector<std::string> schema_faults(const nlohmann::json& value, const nlohmann::json& schema) {
    return SchemaCheck(schema).of(value, schema, "");
}

}  // namespace holdwater::support
