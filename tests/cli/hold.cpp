// SPDX-License-Identifier: MIT
// `hold` on the built program: answers, refusals, exit codes, JSON.
#include "cli/program.hpp"
#include "support/finding.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <algorithm>

using namespace holdwater::support;
using nlohmann::json;

namespace {

Said hold(const std::string& arguments) {
    static const auto folder = own_folder("hold");
    return holdwater_says("hold " + arguments, folder);
}

json answer(const std::string& arguments, int exit) {
    const Said said = hold(arguments + " --json");
    CAPTURE(arguments);
    CAPTURE(said.err);
    CHECK(said.exit == exit);
    return json::parse(said.out);
}

std::string beef(const std::string& more) {
    return "--kind beef-top-round --shape slab --contact free --start '5 C' " + more;
}

}  // namespace

TEST_CASE("hold: JSON has every key of the contract, null where nothing is known") {
    const json j = answer(beef("--thickness '40 mm' --bath '57 C'"), 0);
    CHECK(j["schema"] == 1);
    CHECK(j["use"] == "eat");
    CHECK(j["contact"] == "free");
    CHECK_FALSE(j.contains("given"));
    CHECK(j["warnings"].is_array());
    CHECK(has(j["verdict"].get<std::string>(), "Safe to eat after"));
    CHECK(has(j["verdict"].get<std::string>(), "(cautious)"));
    for (const char* reading : {"likely", "cautious"}) {
        for (const char* key : {"reach_min", "come_up_h", "kill_min"}) {
            CHECK(j[reading][key].is_number());
        }
        for (const char* key : {"core_c", "surface_c", "mean_c"}) {
            CHECK(j[reading][key].is_null());
        }
    }
    CHECK(j["safe_min"] >= j["cautious"]["kill_min"]);
    const json at = answer(beef("--thickness '40 mm' --bath '57 C' --at '1 h'"), 0);
    CHECK(at["cautious"]["core_c"] < at["likely"]["core_c"]);
    CHECK(at["likely"]["core_c"] < at["likely"]["mean_c"]);
    CHECK(at["likely"]["mean_c"] < at["likely"]["surface_c"]);
}

TEST_CASE("hold: the default target is half a kelvin short of the bath, and the contact that of a trip file") {
    const json j = answer(beef("--thickness '40 mm' --bath '57 C'"), 0);
    const json same = answer(beef("--thickness '40 mm' --bath '57 C' --target '56.5 C'"), 0);
    CHECK(j["likely"] == same["likely"]);
    CHECK(answer("--kind cod --shape slab --thickness '20 mm' --bath '65 C' --start '5 C'", 0)["contact"] == "bottom");
    CHECK(answer("--kind cod --shape round --thickness '20 mm' --bath '65 C' --start '5 C'", 0)["contact"] == "free");
    const json bottom =
        answer("--kind cod --shape slab --thickness '20 mm' --bath '65 C' --start '5 C' --contact bottom", 0);
    const json free =
        answer("--kind cod --shape slab --thickness '20 mm' --bath '65 C' --start '5 C' --contact free", 0);
    CHECK(bottom["likely"]["reach_min"] > free["likely"]["reach_min"]);
    CHECK(bottom["cautious"]["kill_min"] > free["cautious"]["kill_min"]);
    // A blocked face: the slab of twice the thickness, free.
    const json twice =
        answer("--kind cod --shape slab --thickness '40 mm' --bath '65 C' --start '5 C' --contact free", 0);
    CHECK(near_rel(bottom["likely"]["reach_min"].get<double>(), twice["likely"]["reach_min"].get<double>(), 1e-9));
}

TEST_CASE(
    "hold: below the lowest row, a refused aim, a finish and a slow piece are physics only, exit 3, with a way out") {
    const json cool = answer(beef("--thickness '40 mm' --bath '54 C'"), 3);
    CHECK(cool["use"] == "physics only");
    CHECK(cool["likely"]["kill_min"].is_null());
    CHECK(cool["likely"]["come_up_h"].is_null());
    CHECK(cool["likely"]["reach_min"].is_number());
    CHECK(cool["nearest"]["bath_c"] == 57.0);
    const json aim = answer(beef("--thickness '40 mm' --bath '57 C' --target '49.5 C'"), 3);
    CHECK(aim["use"] == "physics only");
    CHECK(has(aim["verdict"].get<std::string>(), "No."));
    CHECK(has(aim["verdict"].get<std::string>(), "54.4 °C"));
    CHECK(aim["nearest"]["safe_min"].is_number());
    CHECK(aim["warnings"][0]["code"] == "physics-only");
    const json minced = answer(beef("--thickness '30 mm' --bath '62 C' --cut minced"), 3);
    CHECK(minced["use"] == "physics only");
    CHECK(has(minced["verdict"].get<std::string>(), "over the fire"));
    const json thick = answer(beef("--thickness '150 mm' --bath '57 C'"), 3);
    CHECK(has(thick["verdict"].get<std::string>(), "split it"));
    CHECK(answer("--kind venison --shape slab --thickness '30 mm' --bath '65 C' --start '5 C'", 3)["use"] ==
          "physics only");
    const json cools = answer("--kind beef-top-round --shape slab --thickness '20 mm' --bath '0 C' --start '60 C'", 3);
    CHECK(cools["likely"]["reach_min"].is_number());
    CHECK(has(cools["verdict"].get<std::string>(), "cools the food"));
    CHECK(hold(beef("--thickness '40 mm' --bath '54 C'")).out.starts_with("No:"));
}

TEST_CASE("hold: kinds that are refused exit 1 and still show the physics") {
    for (const char* kind : {"wild-boar", "bear"}) {
        const json j =
            answer(std::string("--kind ") + kind + " --shape round --thickness '60 mm' --bath '75 C' --start '5 C'", 1);
        CHECK(j["use"] == "physics only");
        CHECK(j["likely"]["reach_min"].is_number());
        CHECK(j["likely"]["kill_min"].is_null());
        CHECK(j["nearest"].is_null());
    }
    CHECK(hold("--kind pork-liver --shape slab --thickness '20 mm' --bath '75 C' --start '5 C' --at-risk").exit == 1);
}

TEST_CASE("hold: other rules ask for more") {
    CHECK(answer(beef("--thickness '30 mm' --bath '58 C'"), 0)["use"] == "eat");
    for (const char* rules : {"uk", "au-nz", "ca"}) {
        CHECK(answer(beef("--thickness '30 mm' --bath '58 C' --rules ") + rules, 3)["use"] == "physics only");
    }
}

TEST_CASE("hold: never and at once") {
    CHECK(answer(beef("--thickness '30 mm' --bath '60 C' --target '61 C'"), 3)["likely"]["reach_min"].is_null());
    CHECK(answer(beef("--thickness '30 mm' --bath '60 C' --target '60 C'"), 0)["likely"]["reach_min"].is_null());
    CHECK(answer(beef("--thickness '30 mm' --bath '60 C' --target '5 C'"), 3)["likely"]["reach_min"] == 0.0);
}

TEST_CASE("hold: without a kind it is physics with the given figures, exit 0") {
    const std::string bare =
        "--shape slab --contact free --thickness '30 mm' --bath '60 C' --start '5 C' "
        "--diffusivity '1.11e-7 m2/s' --conductivity '0.48 W/m/K' --film '95 W/m2/K'";
    const json j = answer(bare, 0);
    CHECK(j["likely"].is_null());
    CHECK(j["cautious"].is_null());
    CHECK(j["given"]["kill_min"].is_null());
    CHECK(j["use"] == "physics only");
    const json killed = answer(bare + " --d-value '4.68 min' --d-at '60 C' --z '6.45 K' --log10 7", 0);
    CHECK(killed["given"]["kill_min"].is_number());
    CHECK(killed["given"]["reach_min"] == j["given"]["reach_min"]);
    CHECK(answer(bare + " --bag '0.01 m2 K/W'", 0)["given"]["film_w_per_m2_k"].get<double>() < 50.0);
}

TEST_CASE("hold: negative temperatures within the range are read") {
    CHECK(hold(beef("--thickness '30 mm' --bath '57 C'")).exit == 0);
    CHECK(hold("--kind cod --shape slab --thickness '20 mm' --bath '65 C' --start '-5 C'").exit == 3);
    CHECK(hold("--kind cod --shape slab --thickness '20 mm' --bath '-1 C' --start '20 C'").exit == 3);
    CHECK(hold("--kind cod --shape slab --thickness '20 mm' --bath=-1C --start '20 C'").exit == 3);
}

TEST_CASE("hold: bad input is exit 2, nothing on standard output, and the fault is named") {
    const struct {
        const char* arguments;
        const char* named;
    } cases[] = {
        {"", "--shape"},
        {"", "--kind"},
        {"--kind bef-top-round --shape slab --thickness '40 mm' --bath '57 C' --start '5 C'", "beef-top-round"},
        {"--kind Beef --shape slab --thickness '40 mm' --bath '57 C' --start '5 C'", "one of: beef-top-round, "},
        {"--kind COD --shape slab --thickness '40 mm' --bath '57 C' --start '5 C'", "did you mean cod?"},
        {"--kind cod --shape slab --thickness '40 mm' --bath nan --start '5 C'", "--bath \"60 C\""},
        {"--kind pork --shape slab --thickness '40 mm' --bath '57 C' --start '5 C'", "pork-loin, "},
        {"--kind cod --shape slb --thickness '40 mm' --bath '57 C' --start '5 C'", "slab"},
        {"--kind cod --shape slab --bath '57 C' --start '5 C'", "--thickness"},
        {"--kind cod --shape slab --thickness 40 --bath '57 C' --start '5 C'", "mm"},
        {"--kind cod --shape slab --thickness '40 C' --bath '57 C' --start '5 C'", "--thickness"},
        {"--kind cod --shape slab --thickness '0.5 mm' --bath '57 C' --start '5 C'", "1 mm to 400 mm"},
        {"--kind cod --shape slab --thickness '401 mm' --bath '57 C' --start '5 C'", "1 mm to 400 mm"},
        {"--kind cod --shape slab --thickness '40 mm' --bath '101 C' --start '5 C'", "-1 C to 100 C"},
        {"--kind cod --shape slab --thickness '40 mm' --bath '-2 C' --start '5 C'", "-1 C to 100 C"},
        {"--kind cod --shape slab --thickness '40 mm' --bath '57 K' --start '5 C'", "--bath"},
        {"--kind cod --shape slab --thickness '40 mm' --bath '57 C' --start '-6 C'", "-5 C to 100 C"},
        {"--kind cod --shape block --thickness '40 mm' --bath '57 C' --start '5 C'", "--width"},
        {"--kind cod --shape block --thickness '40 mm' --bath '57 C' --start '5 C'", "--length"},
        {"--kind cod --shape slab --thickness '40 mm' --bath '57 C' --start '5 C' --at soon", "--at"},
        {"--kind cod --shape slab --thickness '40 mm' --bath '57 C' --start '5 C' --at '-1 h'", "--at"},
        {"--kind cod --shape slab --thickness '40 mm' --bath '57 C' --start '5 C' --contact botom",
         "did you mean bottom?"},
        {"--kind cod --shape slab --thickness '40 mm' --bath '57 C' --start '5 C' --bag thik", "thick"},
        {"--kind cod --shape slab --thickness '40 mm' --bath '57 C' --start '5 C' --rules usa", "us"},
        {"--kind cod --shape slab --thickness '40 mm' --bath '57 C' --start '5 C' --cut mincd", "minced"},
        {"--kind cod --shape slab --tickness '40 mm' --bath '57 C' --start '5 C'", "did you mean --thickness?"},
        {"--kind cod --shape slab --thickness '40 mm' --bath '57 C' --start '5 C' --z '6 K'", "--d-value"},
        {"--kind cod --shape slab --thickness '40 mm' --bath '57 C' --start '5 C' --curvature 0.3", "--contact free"},
        {"--kind cod --shape slab --contact free --thickness '40 mm' --bath '57 C' --start '5 C' --curvature 3",
         "0 to 2"},
        {"--shape slab --thickness '40 mm' --bath '57 C' --start '5 C' --film '95 W/m2/K'", "--diffusivity"},
        {"--kind cod --shape slab --thickness 40 mm --bath '57 C' --start '5 C'", "\"mm\""},
    };
    for (const auto& c : cases) {
        const Said said = hold(c.arguments);
        CAPTURE(c.arguments);
        CAPTURE(said.err);
        CHECK(said.exit == 2);
        CHECK(said.out.empty());
        CHECK(has(said.err, c.named));
    }
    const Said all = hold("--kind cot --shape slap --thickness 40 --bath '200 C' --at now --bgth 3");
    for (const char* named : {"--kind", "--shape", "--thickness", "--bath", "--start", "--at", "--bgth"}) {
        CHECK(has(all.err, named));
    }
}

TEST_CASE("hold: text begins with the verdict and tells both units and what was assumed") {
    const Said said = hold(beef("--thickness '40 mm' --bath '57 C' --at '90 min'"));
    CHECK(said.exit == 0);
    CHECK(said.out.starts_with("Safe to eat after"));
    for (const char* part : {"likely", "cautious", "57.0 °C (135 °F)", "contact free", "thin bag", "diffusivity",
                             "surface", "thermometer", "local food-safety rules", "40 mm (1 5/8 in)"}) {
        CAPTURE(part);
        std::string flat = said.out;
        std::replace(flat.begin(), flat.end(), '\n', ' ');
        CHECK(has(flat, part));
    }
    CHECK(hold(beef("--thickness '40 mm' --bath '57 C' --at '90 min'")).out == said.out);
}

TEST_CASE("hold: people at risk, and food that went in warm, get no yes from own figures") {
    const json at_risk = answer(
        "--kind beef-top-round --shape round --thickness '60 mm' --start '4 C' --bath '55 C' --at-risk --d-value '1 s' "
        "--d-at '60 C' --z '6 K' --log10 7",
        3);
    CHECK(at_risk["use"] == "physics only");
    CHECK(has(at_risk["verdict"].get<std::string>(), "63 °C"));
    const json warm = answer("--kind chicken-breast --shape slab --thickness '40 mm' --start '45 C' --bath '62 C'", 3);
    CHECK(warm["use"] == "physics only");
    CHECK(warm["safe_min"].is_null());
    CHECK(has(warm["verdict"].get<std::string>(), "nobody knows for how long"));
}

TEST_CASE("hold: rules that keep food warmer than they cook it say so, and nothing against it") {
    const json uk = answer(beef("--thickness '40 mm' --bath '60.5 C' --rules uk"), 0);
    CHECK(has(uk["verdict"].get<std::string>(), "63 °C"));
    CHECK(has(uk["verdict"].get<std::string>(), "once, for under 2 h"));
    CHECK(has(uk["warnings"].dump(), "hold-floor"));
    const json hot = answer(beef("--thickness '40 mm' --bath '66 C' --rules uk"), 0);
    CHECK_FALSE(has(hot["verdict"].get<std::string>(), "under 2 h"));
    CHECK_FALSE(has(answer(beef("--thickness '40 mm' --bath '60.5 C'"), 0)["warnings"].dump(), "hold-floor"));
}

TEST_CASE("hold: red meat shows the 7-log rows and what the rows were measured for") {
    const json j = answer(beef("--thickness '40 mm' --bath '57 C'"), 0);
    CHECK(j["cautious"]["kill_7_log_min"] >= j["cautious"]["kill_min"]);
    CHECK(has(j["warnings"].dump(), "worked out for Salmonella"));
    CHECK(has(j["warnings"].dump(), "near 54.4"));
    CHECK(has(hold(beef("--thickness '40 mm' --bath '57 C'")).out, "7-log rows"));
    const json cod = answer("--kind cod --shape slab --thickness '20 mm' --bath '65 C' --start '5 C'", 0);
    CHECK(cod["cautious"]["kill_7_log_min"].is_null());
    CHECK_FALSE(has(cod["warnings"].dump(), "Salmonella"));
}

TEST_CASE("hold: what must be reached is rounded up in both units, what falls short down") {
    const std::string chicken = "--kind chicken-breast --shape slab --thickness '30 mm' --start '5 C' ";
    const std::string cool = answer(chicken + "--bath '59.9 C'", 3)["verdict"];
    CHECK(has(cool, "59.9 °C (139 °F) is too cool"));
    CHECK(has(cool, "60 °C (140 °F)"));
    CHECK(has(answer(chicken + "--bath '65 C' --cut minced", 3)["verdict"].get<std::string>(), "74 °C (165 °F)"));
}

TEST_CASE("hold: an input to change is exit 3, a caution is not") {
    CHECK(hold(beef("--thickness '30 mm' --bath '60 C' --width '80 mm'")).exit == 3);
    CHECK(hold(beef("--thickness '30 mm' --bath '55.5 C'")).exit == 0);
    CHECK(hold(beef("--thickness '30 mm' --bath '60°C'")).exit == 0);
}
