// SPDX-License-Identifier: MIT
// Textbook examples and published bath times through `hold`. Conduction is linear: an example outside -1 to 100 C is
// asked with the same shares of the way from start to bath.
#include "cli/program.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <span>

using namespace holdwater::support;
using nlohmann::json;

namespace {

json given(const std::string& arguments) {
    static const auto folder = own_folder("hold-examples");
    const Said said = holdwater_says("hold --json --contact free " + arguments, folder);
    CAPTURE(arguments);
    CAPTURE(said.err);
    REQUIRE(said.exit == 0);
    return json::parse(said.out)["given"];
}

std::string material(double diffusivity, double conductivity, double film) {
    return fmt::format(" --diffusivity '{} m2/s' --conductivity '{} W/m/K' --film '{} W/m2/K'", diffusivity,
                       conductivity, film);
}

}  // namespace

// Heat reference a.3, column "exact series" (computed apart from this program); tolerance half a last digit.
TEST_CASE("hold: worked examples, time for the core") {
    const struct {
        const char* name;
        std::string arguments;
        double minutes;
        double tolerance;
    } rows[] = {
        {"cengel-hmt Ex 4-3, egg",
         "--shape ball --thickness '50 mm' --start '5 C' --bath '95 C' --target '70 C'" +
             material(0.151e-6, 0.627, 1200),
         14.36, 0.005},
        {"cengel-hmt, 5.5 cm egg",
         "--shape ball --thickness '55 mm' --start '4.3 C' --bath '100 C' --target '74 C'" +
             material(0.146e-6, 0.607, 800),
         18.4, 0.05},
        {"cengel-hmt-5 4-156, sausage",
         "--shape round --thickness '20 mm' --length '120 mm' --start '5 C' --bath '100 C' --target '80 C'" +
             material(2e-7, 0.76, 600),
         221.0 / 60.0, 0.5 / 60.0},
        {"kreith-2011, roast (20, 163, 77 C)",
         fmt::format("--shape ball --thickness '142 mm' --start '0 C' --bath '100 C' --target '{} C'",
                     100.0 * (77.0 - 20.0) / (163.0 - 20.0)) +
             material(0.5 / 4e6, 0.5, 18),
         132.8, 0.25},  // R 71.0 is the rounded radius of 1.5 kg: 0.05 mm of it is 0.2 min
    };
    for (const auto& row : rows) {
        CAPTURE(row.name);
        CHECK(near_abs(given(row.arguments)["reach_min"].get<double>(), row.minutes, row.tolerance));
    }
}

TEST_CASE("hold: worked examples, temperature at a time") {
    // geankoplis-tpuo Ex 5.3-3 and 5.3-4: theta 0.1105 and 0.0836 after 0.75 h.
    const std::string can = "--shape round --thickness '68.1 mm' --start '0 C' --bath '100 C' --at '0.75 h'" +
                            material(2.007e-7, 0.830, 4540);
    CHECK(near_abs(given(can)["core_c"].get<double>(), 100.0 - 11.05, 0.01));
    CHECK(near_abs(given(can + " --length '101.6 mm'")["core_c"].get<double>(), 100.0 - 8.36, 0.01));
    // cengel-thermal-fluid 11-44: surface of a slab from 25 to 2 C in air of -11 C after 5586 s.
    const json steak = given("--shape slab --thickness '20 mm' --start '36 C' --bath '0 C' --at '5586 s'" +
                             material(0.91e-7, 0.45, 9));
    CHECK(near_abs(steak["surface_c"].get<double>(), 13.0, 0.01));
    // cengel-hmt 4-107: granite cube and cylinder, 20 C into 500 C; tenths of a kelvin of 480 K.
    const struct {
        const char* minutes;
        double cube;
        double cylinder;
    } rows[] = {{"10 min", 322.8, 331.0}, {"20 min", 444.8, 448.5}, {"60 min", 499.5, 499.6}};
    for (const auto& row : rows) {
        const std::string granite = fmt::format(
                                        " --thickness '50 mm' --length '50 mm' --start '0 C' --bath '100 C' "
                                        "--at '{}'",
                                        row.minutes) +
                                    material(1.15e-6, 2.5, 40);
        const double cube = given("--shape block --width '50 mm'" + granite)["core_c"].get<double>();
        const double cylinder = given("--shape round" + granite)["core_c"].get<double>();
        CHECK(near_abs(20.0 + 4.8 * cube, row.cube, 0.06));
        CHECK(near_abs(20.0 + 4.8 * cylinder, row.cylinder, 0.06));
    }
}

// baldwin-2012, tables read in copies; meat kinetics read, poultry kinetics and heat assumptions from memory. Published
// minus computed as the heat reference states for all cells: meat -10 to +17 min, poultry -1 to +18 min.
TEST_CASE("hold: published bath times by given kill figures") {
    struct Germ {
        double log10;
        double d;
        double at;
        double z;
    };
    const Germ meat[] = {{6.0, 12.66, 55, 9.22}, {std::log10(3e6), 13.18, 55, 7.58}, {5.0, 19.35, 55, 4.87}};
    const Germ poultry[] = {{7.0, 4.68, 60, 6.45}, {6.0, 5.94, 60, 5.66}};
    const auto slowest = [](std::span<const Germ> germs, int millimetres, int bath, double curvature, double alpha) {
        double minutes = 0.0;
        for (const Germ& g : germs) {
            const json j =
                given(fmt::format("--shape slab --thickness '{} mm' --bath '{} C' --start '5 C' --curvature {} "
                                  "--d-value '{} min' --d-at '{} C' --z '{} K' --log10 {}",
                                  millimetres, bath, curvature, g.d, g.at, g.z, g.log10) +
                      material(alpha, 0.48, 95));
            minutes = std::max(minutes, j["kill_min"].get<double>());
        }
        return minutes;
    };
    const struct {
        int millimetres;
        int bath;
        double published;
    } meat_cells[] = {{5, 55, 120},  {5, 61, 25},   {15, 57, 90},  {20, 60, 75},  {25, 55, 165}, {30, 62, 90},
                      {35, 58, 120}, {45, 56, 195}, {50, 60, 150}, {60, 57, 255}, {70, 55, 390}, {70, 66, 195}},
      poultry_cells[] = {{5, 57, 135},  {10, 61, 40},  {20, 60, 75},  {25, 62, 75},  {35, 59, 150},
                         {40, 63, 120}, {50, 57, 285}, {60, 61, 225}, {70, 57, 420}, {70, 65, 225}};
    for (const auto& cell : meat_cells) {
        CAPTURE(cell.millimetres);
        CAPTURE(cell.bath);
        const double off =
            cell.published - slowest(meat, cell.millimetres, cell.bath, cell.millimetres > 30 ? 0.28 : 0.0, 1.11e-7);
        CHECK(off > -10.5);
        CHECK(off < 17.5);
    }
    for (const auto& cell : poultry_cells) {
        CAPTURE(cell.millimetres);
        CAPTURE(cell.bath);
        const double off = cell.published - slowest(poultry, cell.millimetres, cell.bath, 0.28, 1.08e-7);
        CHECK(off > -1.5);
        CHECK(off < 18.5);
    }
    // Computed rows of the heat reference f.2 with these assumptions, whole minutes.
    CHECK(near_abs(slowest(poultry, 25, 60, 0.28, 1.08e-7), 90.0, 0.51));
    CHECK(near_abs(slowest(poultry, 50, 57, 0.28, 1.08e-7), 283.0, 0.51));
    CHECK(near_abs(slowest(poultry, 70, 65, 0.28, 1.08e-7), 215.0, 0.51));
}
