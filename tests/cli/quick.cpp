// SPDX-License-Identifier: MIT
// One meal in one line: its file, its card, and everything that was taken for it.
#include "cli/program.hpp"
#include "facts/facts.hpp"
#include "trip/form.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace holdwater;
using namespace holdwater::support;

namespace {

const std::string meal = "--kind pork-loin --thickness '60 mm' --pieces 4 --water '30 L'";

std::string in(const std::filesystem::path& folder, const std::string& name) {
    return "'" + (folder / name).string() + "'";
}

Said quick(const std::string& name, const std::string& rest, const std::filesystem::path& folder) {
    return holdwater_says("quick " + in(folder, name) + " " + rest + " --out " + in(folder, "out"), folder);
}

}  // namespace

TEST_CASE("quick writes a trip file and the one card, and lists every value that was not said, with its reason") {
    const auto folder = own_folder("quick");
    const Said said = quick("supper.toml", meal + " --serve 2027-07-10T18:30 --preview", folder);
    CHECK(said.exit == 3);
    CHECK(std::filesystem::exists(folder / "out/supper-cards.pdf"));
    CHECK(std::filesystem::exists(folder / "out/supper-card-2.png"));
    CHECK_FALSE(std::filesystem::exists(folder / "out/supper-card-3.png"));
    const trip::Form form(file_text((folder / "supper.toml").string()));
    for (const trip::Form::Entry& entry : form.entries()) {
        CAPTURE(entry.key);
        const bool listed = said.out.find("  " + entry.key + " = " + entry.value + "\n") != std::string::npos;
        CHECK((entry.key == "name" || listed == (entry.chosen && !entry.remark.empty())));
    }
    CHECK(form.entry("food", "thickness").value == "\"60 mm\"");
    CHECK(form.entry("food", "thickness").remark.empty());
    CHECK(form.entry("trip", "serve").value == "2027-07-10T18:30:00");
    CHECK(form.entry("trip", "at_risk").value == "true");
    CHECK(said.err.find("cut is not said") != std::string::npos);
    CHECK(said.err.find("nobody has tested") != std::string::npos);
    // The file is a trip like any other.
    const Said planned = holdwater_says("plan " + in(folder, "supper.toml"), folder);
    CHECK(planned.exit == 3);
    CHECK(planned.out.find("the plan holds") != std::string::npos);
}

TEST_CASE("what the line says stands in the file as it was said and is not listed") {
    const auto folder = own_folder("quick-said");
    const Said said =
        quick("supper.toml",
              meal +
                  " --serve 2027-07-10T18:30 --rules us --altitude '3000 ft' --air '41 F' --loss '0.9 W/K' "
                  "--name 'Bay \"supper\"' --nobody-at-risk --from 12:00 --cut intact --pots 2",
              folder);
    CHECK(said.exit == 0);
    const std::string text = file_text((folder / "supper.toml").string());
    for (const char* line :
         {"rules = \"us\"\n", "altitude = \"3000 ft\"\n", "hours = [{ at = \"12:00\", air = \"41 F\" }]\n",
          "loss = \"0.9 W/K\"\n", "name = \"Bay \\\"supper\\\"\"\n", "at_risk = false\n",
          "from = 2027-07-10T12:00:00\n", "cut = \"intact\"\n", "pots = 2\n"}) {
        CAPTURE(line);
        CHECK(text.find(line) != std::string::npos);
    }
    CHECK(said.out.find("altitude") == std::string::npos);
    CHECK(text.find("target = \"63 C\"") != std::string::npos);  // what these rules' country tells its consumers
}

TEST_CASE("a clock is the next time that it shows so, and nobody lights a fire before now") {
    const auto folder = own_folder("quick-clock");
    ::setenv("SOURCE_DATE_EPOCH", "1815062400", 1);  // 2027-07-08 16:00:00
    quick("today.toml", meal + " --serve 23:30", folder);
    quick("tomorrow.toml", meal + " --serve 12:00", folder);
    ::unsetenv("SOURCE_DATE_EPOCH");
    const std::string today = file_text((folder / "today.toml").string());
    CHECK(today.find("serve = 2027-07-08T23:30:00") != std::string::npos);
    CHECK(today.find("from = 2027-07-08T16:00:00") != std::string::npos);
    const std::string tomorrow = file_text((folder / "tomorrow.toml").string());
    CHECK(tomorrow.find("serve = 2027-07-09T12:00:00") != std::string::npos);
    CHECK(tomorrow.find("from = 2027-07-09T02:00:00") != std::string::npos);
}

TEST_CASE("a line that is wrong, or a meal that cannot be meant, writes nothing and names every fault") {
    const auto folder = own_folder("quick-faults");
    const Said missing = quick("a.toml", "--thickness 60mm", folder);
    CHECK(missing.exit == 2);
    for (const char* option : {"--kind", "--pieces", "--water", "--serve"}) {
        CHECK(missing.err.find(std::string(option) + " is missing") != std::string::npos);
    }
    CHECK(quick("a.toml", meal + " --serve tonight", folder).err.find("no time") != std::string::npos);
    CHECK(quick("a.toml", meal + " --serve 18:30 --air cold", folder).err.find("--air") != std::string::npos);
    CHECK(quick("a.toml", meal + " --serve 18:30 --rules mars", folder).err.find("--rules") != std::string::npos);
    CHECK(quick("a.toml", meal + " --serve 18:30 --kind pork", folder).exit == 2);
    const Said soon = quick("a.toml", meal + " --serve 2027-07-10T18:30 --from 2027-07-10T18:25", folder);
    CHECK(soon.exit == 2);
    CHECK(soon.err.find("is too soon") != std::string::npos);
    CHECK(soon.err.find("a.toml:") == std::string::npos);  // there is no such file to look into
    CHECK_FALSE(std::filesystem::exists(folder / "a.toml"));
    CHECK_FALSE(std::filesystem::exists(folder / "out"));
}

TEST_CASE("quick never writes over a file, and keeps it where the meal does not hold") {
    const auto folder = own_folder("quick-keeps");
    const Said refused = quick("boar.toml",
                               "--kind wild-boar --thickness '40 mm' --pieces 2 --water '30 L' "
                               "--serve 2027-07-10T18:30",
                               folder);
    CHECK(refused.exit == 1);
    CHECK(refused.out.find("refused, no cards") != std::string::npos);
    const std::string text = file_text((folder / "boar.toml").string());
    CHECK(text.find("wild-boar") != std::string::npos);
    CHECK(quick("boar.toml", meal + " --serve 18:30", folder).exit == 2);
    CHECK(file_text((folder / "boar.toml").string()) == text);
}

TEST_CASE("the form's own rules are those that keep every food hottest") {
    const trip::Form form(file_text(std::string(HOLDWATER_SOURCE_DIR) + "/layouts/trips/quick.toml"));
    const std::string word = form.entry("trip", "rules").value;
    const auto own = facts::from_name<facts::Ruleset>(word.substr(1, word.size() - 2));
    REQUIRE(own.has_value());
    for (const facts::Rule& rule : facts::facts().rules()) {
        const facts::Rule* const ours = facts::facts().find_rule(*own, rule.category);
        REQUIRE(ours != nullptr);
        CHECK(ours->hold_floor >= rule.hold_floor);
        CHECK(ours->cook_floor >= rule.cook_floor);
    }
}
