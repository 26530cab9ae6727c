// SPDX-License-Identifier: MIT
#include "safety/table.hpp"

#include <fstream>
#include <stdexcept>

namespace holdwater::support {

std::vector<Row> rows_of(const std::string& name) {
    std::ifstream file(std::string(HOLDWATER_SOURCE_DIR) + "/tests/safety/" + name);
    std::vector<Row> rows;
    for (std::string line; std::getline(file, line);) {
        if (line.empty() || line.front() == '#') {
            continue;
        }
        Row row;
        std::size_t from = 0;
        const std::string between = " | ";
        for (std::size_t to = line.find(between); to != std::string::npos; to = line.find(between, from)) {
            row.push_back(line.substr(from, to - from));
            from = to + between.size();
        }
        row.push_back(line.substr(from));
        rows.push_back(std::move(row));
    }
    return rows;
}

safety::Request request_of(const Row& row) {
    const facts::FoodKind* kind = facts::facts().find_food(row.at(1));
    const auto cut = facts::from_name<facts::Cut>(row.at(2));
    const auto rules = facts::from_name<facts::Ruleset>(row.at(4));
    if (kind == nullptr || !cut || !rules) {
        throw std::runtime_error("unreadable row: " + row.at(0));
    }
    safety::Request request = safety::request_for(*kind);
    request.cut = *cut;
    request.target = units::celsius(std::stod(row.at(3)));
    request.ruleset = *rules;
    request.at_risk = row.at(5) == "risk";
    request.has_thermometer = row.at(6) == "yes";
    request.has_wax_tell_tale = row.at(6) == "wax";
    return request;
}

}  // namespace holdwater::support
