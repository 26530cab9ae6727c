// SPDX-License-Identifier: MIT
// `fingertip` says first what a hand cannot tell, then its bands; its JSON carries the same numbers.
#include "cli/program.hpp"
#include "safety/burn.hpp"
#include "safety/sting.hpp"
#include "support/finding.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

using namespace holdwater;
using namespace holdwater::support;
using safety::HandState;
using safety::Stirring;

namespace {

nlohmann::json fingertip_json(const std::string& arguments, const std::string& folder) {
    const Said said = holdwater_says("fingertip --json " + arguments, fresh_folder(folder));
    REQUIRE(said.exit == 0);
    return nlohmann::json::parse(said.out);
}

bool same(const nlohmann::json& number, const std::optional<units::Duration>& time) {
    return time ? number.is_number() && near_rel(number.get<double>(), time->si(), 1e-12) : number.is_null();
}

/// The text with its line feeds as spaces, so that a sentence is found wherever it was broken.
std::string flat(std::string text) {
    for (char& c : text) {
        c = c == '\n' ? ' ' : c;
    }
    return text;
}

}  // namespace

TEST_CASE("fingertip --bath --json is the population's band and the burn table") {
    for (const double bath : {0.0, 41.0, 47.0, 60.0, 72.0, 100.0}) {
        for (const bool still : {false, true}) {
            INFO(bath, " C");
            const auto json =
                fingertip_json("--bath '" + std::to_string(bath) + " C'" + (still ? " --still" : ""), "fingertip-b");
            CHECK(json["schema"] == 1);
            const Stirring stirring = still ? Stirring::still : Stirring::stirred;
            for (const auto& [name, hand] : {std::pair{"warm", HandState::warm}, std::pair{"cold", HandState::cold}}) {
                const safety::StingBand band = safety::sting_band(units::celsius(bath), hand, stirring);
                const auto& row = json["sting_s"][name];
                REQUIRE(row.size() == 3);
                CHECK(same(row[0], band.p5));
                CHECK(same(row[1], band.p50));
                CHECK(same(row[2], band.p95));
            }
            const safety::BurnTimes burn = safety::burn_times(units::celsius(bath));
            CHECK(same(json["burn_s"]["second"], burn.second));
            CHECK(same(json["burn_s"]["third"], burn.third));
            CHECK(same(json["burn_s"]["infant"], burn.infant));
        }
    }
}

TEST_CASE("fingertip --sting --json is the band of baths, null where no hand is stung that soon") {
    for (const double sting : {0.0, 0.8, 2.0, 10.0}) {
        INFO(sting, " s");
        const auto json = fingertip_json("--sting '" + std::to_string(sting) + " s'", "fingertip-s");
        for (const auto& [name, hand] : {std::pair{"warm", HandState::warm}, std::pair{"cold", HandState::cold}}) {
            const auto band = safety::bath_band(units::seconds(sting), hand, Stirring::stirred);
            const auto& row = json["bath_c"][name];
            if (!band) {
                CHECK(row.is_null());
                continue;
            }
            REQUIRE(row.size() == 3);
            CHECK(near_rel(row[0].get<double>(), band->p5.celsius(), 1e-12));
            CHECK(near_rel(row[1].get<double>(), band->p50.celsius(), 1e-12));
            CHECK(near_rel(row[2].get<double>(), band->p95.celsius(), 1e-12));
        }
    }
}

TEST_CASE("the warm band overlaps what cooks say of water") {
    // Common practice, no source: comfortable water is about 38 to 43 C; water borne for a count of one or two is about
    // 60 to 66 C; water that hurts at once is above about 71 C.
    for (const int bath : {38, 41, 43}) {
        const auto warm =
            fingertip_json("--bath '" + std::to_string(bath) + " C'", "fingertip-comfort")["sting_s"]["warm"];
        CHECK(warm[1].is_null());
    }
    for (const int bath : {60, 63, 66}) {
        const auto warm =
            fingertip_json("--bath '" + std::to_string(bath) + " C'", "fingertip-borne")["sting_s"]["warm"];
        CHECK(warm[0].get<double>() < 2.0);
        CHECK(warm[2].get<double>() > 1.0);
    }
    for (const int bath : {71, 75, 80}) {
        const auto warm =
            fingertip_json("--bath '" + std::to_string(bath) + " C'", "fingertip-hurts")["sting_s"]["warm"];
        CHECK(warm[0].get<double>() < 1.0);
    }
}

TEST_CASE("every answer begins with what the hand cannot tell, and carries the rule and the two whys") {
    for (const std::string arguments :
         {"--bath '0 C'", "--bath '40 C'", "--bath '52 C'", "--bath '60 C'", "--bath '95 C' --still", "--sting '0 s'",
          "--sting '1 s'", "--sting '2 s' --still", "--sting '10 s'"}) {
        INFO(arguments);
        const Said said = holdwater_says("fingertip " + arguments, fresh_folder("fingertip-text"));
        CHECK(said.exit == 0);
        CHECK(said.out.rfind("A hand is never a thermometer", 0) == 0);
        const std::string text = flat(said.out);
        CHECK(has(text, "Why a count of two already risks a burn: at 65 °C"));
        CHECK(has(text, "Why a cold hand reads low"));
        CHECK(has(text, "one fingertip of a warm, dry, feeling adult hand"));
        CHECK(has(text, "never in for longer than a count of two"));
        CHECK(has(text, "never a child"));
        CHECK(has(text, "after alcohol"));
        std::size_t line = 0;
        for (std::size_t end = said.out.find('\n'); end != std::string::npos; end = said.out.find('\n', line)) {
            CHECK(end - line <= 100);
            line = end + 1;
        }
    }
}

TEST_CASE("words fit the bath and the sting") {
    const auto says = [](const std::string& arguments) {
        return flat(holdwater_says("fingertip " + arguments, fresh_folder("fingertip-words")).out);
    };
    CHECK(has(says("--bath '40 C'"), "Most warm hands are never stung"));
    CHECK(has(says("--bath '40 C'"), "no time published, which is no promise"));
    CHECK(has(says("--bath '50 C'"), "Most warm hands feel no sting within a count of two"));
    CHECK(has(says("--bath '60 C'"), "small child can be burned within that count"));
    CHECK(has(says("--bath '70 C'"), "Do not put a finger in"));
    CHECK(has(says("--sting '2 s'"), "What it proves: little"));
    CHECK(has(says("--sting '2 s'"), "too cool for any food"));
    CHECK(has(says("--sting '5 s'"), "was in too long"));
    CHECK(has(says("--sting '0 s'"), "proves: nothing"));
}

TEST_CASE("wrong use of fingertip is bad input and says what would be right") {
    const auto folder = fresh_folder("fingertip-bad");
    for (const std::string arguments :
         {"", "--json", "--bath '60 C' --sting '2 s'", "--bath 60", "--bath '101 C'", "--bath '-1 C'", "--bath '2 s'",
          "--sting 2", "--sting '-1 s'", "--sting '60 C'", "--sting 'nan s'", "--bath 'inf C'", "--bath ''", "--dip"}) {
        INFO(arguments);
        const Said said = holdwater_says("fingertip " + arguments, folder);
        CHECK(said.exit == 2);
        CHECK(said.out.empty());
        CHECK_FALSE(said.err.empty());
    }
    const Said longer = holdwater_says("fingertip --sting '11 s'", folder);
    CHECK(longer.exit == 2);
    CHECK(has(longer.err, "longer than a count of two"));
}

TEST_CASE(
    "fingertip: the hottest row is an upper end, the text has no middle, and the program reads its own spelling") {
    const auto says = [](const std::string& arguments) {
        return flat(holdwater_says("fingertip " + arguments, fresh_folder("fingertip-fixed")).out);
    };
    for (const char* bath : {"70 C", "85 C", "100 C"}) {
        CHECK(has(says(std::string("--bath '") + bath + "'"), "adult, second degree      under 1 s"));
    }
    CHECK(has(says("--bath '60 C'"), "small child, severe       1 s"));
    for (const char* arguments : {"--bath '60 C'", "--sting '2 s'", "--sting '0.8 s' --still"}) {
        const std::string text = says(arguments);
        CHECK_FALSE(has(text, "middle"));
        CHECK_FALSE(has(text, "half "));
        CHECK_FALSE(has(text, "not known to any use"));
    }
    CHECK(says("--bath '60°C'") == says("--bath '60 C'"));
    CHECK_FALSE(says("--bath '60°C'").empty());
}
