// SPDX-License-Identifier: MIT
// The command `class`: its files, its refusals, and its worked answers against what the other commands say.
#include "card/class/class_deck.hpp"
#include "card/class/class_exercises.hpp"
#include "card/class/class_gauge.hpp"
#include "cli/program.hpp"
#include "plan/result/hold_table.hpp"
#include "support/near.hpp"
#include "words/words.hpp"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <map>
#include <regex>
#include <set>

using namespace holdwater;
using namespace holdwater::support;
using Json = nlohmann::json;

namespace {

struct Class {
    words::Words words =
        words::Words::read(file_text(std::string(HOLDWATER_SOURCE_DIR) + "/layouts/words/en.toml"), "en.toml").value();
    std::unique_ptr<card::ClassFrame> frame;
    card::LossFinder finder;
    std::vector<card::Exercise> exercises;

    Class() {
        card::ClassWish wish;
        wish.units = units::System::metric;
        wish.thermometer = units::kelvins(1);
        frame = std::move(card::ClassFrame::made(wish, "Class deck")).value();
        exercises = card::class_exercises(*frame, finder, words);
    }

    std::string answer(const std::string& key) const {
        for (const card::Exercise& one : exercises) {
            if (one.key == key) {
                std::string text;
                for (std::size_t i = 0; i < one.answer.size(); ++i) {
                    const bool space = one.answer.compare(i, 2, "\u00A0") == 0;
                    i += space ? 1 : 0;
                    text += space ? " " : one.answer[i] == '*' ? "" : std::string(1, one.answer[i]);
                }
                return text;
            }
        }
        FAIL("no exercise " << key);
        return {};
    }
};

/// Made once for all its answers.
const Class& usual_class() {
    static const Class made;
    return made;
}

/// The numbers of a text that a pattern holds in brackets.
std::vector<double> figures(const std::string& text, const std::string& pattern) {
    CAPTURE(text);
    std::smatch match;
    REQUIRE(std::regex_search(text, match, std::regex(pattern)));
    std::vector<double> found;
    for (std::size_t i = 1; i < match.size(); ++i) {
        found.push_back(match[i].matched && match[i].length() > 0 ? std::stod(match[i]) : 0.0);
    }
    return found;
}

/// The words of a PDF; empty if it is not sound.
std::string words_of(const std::filesystem::path& pdf) {
    const std::string text = pdf.string() + ".txt";
    const std::string checked = "qpdf --check '" + pdf.string() + "' >/dev/null 2>&1";
    const std::string read = "pdftotext -layout '" + pdf.string() + "' '" + text + "'";
    return std::system(checked.c_str()) == 0 && std::system(read.c_str()) == 0 ? file_text(text) : "";
}

Json says(const std::string& arguments) {
    const Said said = holdwater_says(arguments + " --json", own_folder("class-json"));
    CAPTURE(said.err);
    REQUIRE((said.exit == 0 || said.exit == 3));
    return Json::parse(said.out);
}

}  // namespace

TEST_CASE("class writes cards, sheets and pictures, twice the same bytes, and sound PDF") {
    const auto folder = fresh_folder("class");
    const std::string arguments = "class --rules us --preview --out '" + folder.string() + "'";
    const Said said = holdwater_says(arguments, folder);
    CAPTURE(said.err);
    REQUIRE(said.exit == 0);
    std::map<std::string, std::string> first;
    for (const char* name : {"class-cards.pdf", "class-sheets.pdf", "class-card-1.png", "class-card-sheet.png"}) {
        CAPTURE(name);
        REQUIRE(std::filesystem::exists(folder / name));
        CHECK(said.out.find(name) != std::string::npos);
        first[name] = file_text((folder / name).string());
    }
    REQUIRE(holdwater_says(arguments, folder).exit == 0);
    for (const auto& [name, bytes] : first) {
        CHECK(file_text((folder / name).string()) == bytes);
    }
    CHECK(words_of(folder / "class-cards.pdf").find("How long for") != std::string::npos);
    const std::string text = words_of(folder / "class-sheets.pdf");
    for (const char* part : {"Box test", "Loss finder", "Exercises", "Answers", "Instructor's notes", "Time plan"}) {
        CHECK(text.find(part) != std::string::npos);
    }
    CHECK(text.find("Answers") > text.find("Exercises"));
}

TEST_CASE("the stamp changes with every option that changes the cards") {
    const auto folder = fresh_folder("class-stamps");
    const auto stamp = [&](const std::string& more) {
        REQUIRE(holdwater_says("class --out '" + folder.string() + "' " + more, folder).exit == 0);
        const std::string text = words_of(folder / "class-sheets.pdf");
        std::smatch match;
        REQUIRE(std::regex_search(text, match, std::regex(R"([2-9A-Z]{4}-[2-9A-Z]{4})")));
        return match.str();
    };
    std::set<std::string> stamps;
    const std::vector<std::string> wishes{"--rules us",
                                          "--rules uk",
                                          "--rules us --altitude '1850 m'",
                                          "--rules us --thermometer '0.5 K'",
                                          "--rules us --kind chicken-breast",
                                          "--rules us --shape round",
                                          "--rules us --units us"};
    for (const std::string& wish : wishes) {
        stamps.insert(stamp(wish));
    }
    CHECK(stamps.size() == wishes.size());
    CHECK(stamps.contains(stamp("--rules us")));
}

TEST_CASE("bad options of class are reported, all at once, and nothing is written") {
    const auto folder = fresh_folder("class-bad");
    const auto out = folder / "out";
    const std::pair<const char*, const char*> bad[] = {{"", "--rules is missing"},
                                                       {"--rules eu", "eu"},
                                                       {"--rules us --altitude '9000 m'", "--altitude"},
                                                       {"--rules us --altitude 1850", "--altitude"},
                                                       {"--rules us --kind unicorn", "unicorn"},
                                                       {"--rules us --shape cube", "cube"},
                                                       {"--rules us --shape block", "block"},
                                                       {"--rules us --units old", "old"},
                                                       {"--rules us --language xx", "xx"},
                                                       {"--rules us --thermometer '9 K'", "--thermometer"},
                                                       {"--rules us --only night", "--only"},
                                                       {"--rules us --copies 0", "--copies"},
                                                       {"--rules us --format wall", "--format"},
                                                       {"--rules us --dim", "--preview"},
                                                       {"--rules us --rule uk", "--rule"}};
    for (const auto& [arguments, shown] : bad) {
        CAPTURE(arguments);
        const Said said = holdwater_says("class --out '" + out.string() + "' " + arguments, folder);
        CHECK(said.exit == 2);
        CHECK(said.out.empty());
        CAPTURE(said.err);
        CHECK(said.err.find(shown) != std::string::npos);
        CHECK_FALSE(std::filesystem::exists(out));
    }
    const Said both = holdwater_says("class --kind unicorn --units old --out '" + out.string() + "'", folder);
    for (const char* shown : {"--rules", "unicorn", "--units"}) {
        CHECK(both.err.find(shown) != std::string::npos);
    }
}

TEST_CASE("worked answers: boiling point and mixing as boil and mix say") {
    const Class& made = usual_class();
    REQUIRE(made.exercises.size() >= 8);
    const Json boil = says("boil --altitude '1850 m'");
    CHECK(near_abs(figures(made.answer("boil"), R"(^([\d.]+) °C)")[0], boil["boiling_c"], 0.05 + 1e-9));
    const Json mix = says("mix --target '60 C' --altitude '1850 m' --cold '4 C'");
    const auto shown =
        figures(made.answer("mix"), R"(^([\d.]+) parts.*likely (\d+) °C, in a cold box down to (\d+) °C)");
    CHECK(shown[0] >= mix["hot_parts"].get<double>() - 1e-9);
    CHECK(shown[0] < mix["hot_parts"].get<double>() + 0.1);
    CHECK(shown[1] <= mix["likely_c"].get<double>());
    CHECK(shown[1] > mix["likely_c"].get<double>() - 1.0);
    CHECK(shown[2] <= mix["low_c"].get<double>());
}

TEST_CASE("worked answers: come-up and box test as hold and gauge say") {
    const Class& made = usual_class();
    const double bath = made.frame->baths().front().celsius();
    const Json hold = says("hold --kind pork-loin --shape round --thickness '90 mm' --start '5 C' --bath '" +
                           std::to_string(bath) + " C'");
    const auto come_up = figures(made.answer("come-up"), R"(^(\d+) h ?(\d*))");
    const double minutes = 60.0 * come_up[0] + come_up[1];
    CHECK(near_abs(minutes, 60.0 * hold["cautious"]["come_up_h"].get<double>(), 1.0));
    CHECK(made.answer("come-up").find(minutes < 180.0    ? "fine"
                                      : minutes <= 360.0 ? "slow"
                                                         : "refused") != std::string::npos);

    const Json gauge = says("gauge --reading '0 h=65 C' --reading '5 h=59 C' --water '28 L' --outside '8 C'");
    const auto loss = figures(made.answer("box"), R"(: ([\d.]+) W/K\. Worked out without rounding: ([\d.]+) W/K)");
    const double exact = gauge["loss_w_per_k"];
    CHECK(near_abs(loss[1], exact, 0.005 + 1e-9));
    CHECK(loss[0] >= exact);
    CHECK(loss[0] < 1.35 * exact);
    // From a bath that may be 1 K under its reading, at the worse end of the band, down to 54.4 C in air of 0 C.
    const double worse = gauge["tau_h"].get<double>() * exact / gauge["loss_high"].get<double>();
    const double top = made.frame->plan().levels.mark.celsius() - 1.0;
    const auto alone = figures(made.answer("alone"), R"(^(?:(\d+) h)? ?(\d*))");
    const double hours = alone[0] + alone[1] / 60.0;
    const double longest = worse * std::log(top / 54.4);
    CHECK(hours <= longest);
    CHECK(hours > longest - 0.25);
    // In the morning: 54 C read, 53 C at the worst, at the better end of the band.
    const card::ClassMorning morning = card::class_morning(*made.frame);
    const double better = gauge["tau_h"].get<double>() * exact / gauge["loss_low"].get<double>();
    CHECK(near_rel(units::in_hours(morning.below), better * std::log(54.4 / (morning.reading.celsius() - 1.0)), 1e-3));
    CHECK(morning.action == safety::FallAction::finish_and_eat_next);
    CHECK(made.answer("morning").find("eat next") != std::string::npos);
}

TEST_CASE("worked answers: hold, too thick and ladder as the cards say") {
    const Class& made = usual_class();
    const plan::Plan& plan = made.frame->plan();
    const units::Temperature middle = made.frame->baths()[1];
    const auto hold = plan::safe_hold(plan, plan.foods.front(), units::millimetres(20), middle);
    REQUIRE(hold.has_value());
    const auto shown = figures(made.answer("hold"), R"(^(\d+) h ?(\d*))");
    CHECK(60.0 * shown[0] + shown[1] >= units::in_minutes(*hold) - 1e-9);
    CHECK(60.0 * shown[0] + shown[1] < units::in_minutes(*hold) + 5.0);

    const double most = figures(made.answer("thick"), R"((\d+) mm thick at the most)")[0];
    CHECK(plan::safe_hold(plan, plan.foods.back(), units::millimetres(most), middle).has_value());
    CHECK_FALSE(plan::safe_hold(plan, plan.foods.back(), units::millimetres(most + 2.0), middle).has_value());

    const auto litres =
        figures(made.answer("ladder"),
                R"(row of (\d+) °C, the colder one: ([\d.]+) L where there is room. Full box: ([\d.]+) L after)");
    for (const bool full : {false, true}) {
        const double engine =
            units::in_litres(made.frame->pour(units::litres(30), units::celsius(litres[0]), plan.levels.mark, full));
        CHECK(litres[full ? 2 : 1] >= engine - 1e-9);
        CHECK(litres[full ? 2 : 1] < engine + 0.5);
    }
}
