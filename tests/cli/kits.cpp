// SPDX-License-Identifier: MIT
// Kits on disk: kept by gauge, found beside a trip and in the user's own folder.
#include "cli/program.hpp"
#include "trip/keys.hpp"

#include <doctest/doctest.h>

#include <fstream>

using namespace holdwater;
using namespace holdwater::support;

namespace {

const std::string box_test =
    "gauge --reading '0 h=62 C' --reading '5 h=55 C' --water '30 L' --outside '8 C' "
    "--inside '500x300x300 mm'";

/// A run for which this folder is the user's configuration folder.
Said with_config(const std::filesystem::path& config, const std::string& arguments,
                 const std::filesystem::path& folder) {
    ::setenv("XDG_CONFIG_HOME", config.c_str(), 1);
    Said said = holdwater_says(arguments, folder);
    ::unsetenv("XDG_CONFIG_HOME");
    return said;
}

/// The shortest trip, whose box is that of a kit but for its thermometer.
std::string trip_of_kit(const std::filesystem::path& folder, const std::string& kit) {
    std::string text(trip::shortest_trip());
    const auto from = text.find("inside = ");
    text.replace(from, text.find("thermometer") - from, "use = \"" + kit + "\"\n");
    std::ofstream(folder / "trip.toml") << text;
    return "'" + (folder / "trip.toml").string() + "'";
}

}  // namespace

TEST_CASE("gauge keeps a box, and a trip that uses it is planned with that box, wherever it lies") {
    const auto folder = own_folder("kits");
    const auto config = folder / "config";
    const Said saved = with_config(config, box_test + " --save blue", folder);
    CHECK(saved.exit == 0);
    const auto kit = config / "holdwater/kits/blue.toml";
    REQUIRE(std::filesystem::exists(kit));
    CHECK(saved.out.find(kit.string()) != std::string::npos);
    CHECK(saved.out.find("use = \"blue\"") != std::string::npos);
    const std::string trip = trip_of_kit(folder, "blue");
    const Said planned = with_config(config, "plan " + trip, folder);
    CAPTURE(planned.err);
    CHECK(planned.exit == 0);
    CHECK(planned.out.find("the plan holds") != std::string::npos);
    // Beside the trip it is the same box; where it lies in neither place, both are named.
    CHECK(holdwater_says("plan " + trip, folder).err.find("there is no kit \"blue\"") != std::string::npos);
    std::filesystem::create_directory(folder / "kits");
    std::filesystem::copy(kit, folder / "kits/blue.toml");
    CHECK(holdwater_says("plan " + trip, folder).out == planned.out);
}

TEST_CASE("a kit that is not there is told with those that are, and with where it was looked for") {
    const auto folder = own_folder("kits-unknown");
    with_config(folder / "config", box_test + " --save blue", folder);
    const Said said = with_config(folder / "config", "plan " + trip_of_kit(folder, "bleu"), folder);
    CHECK(said.exit == 2);
    CHECK(said.err.find("trip.toml:") != std::string::npos);
    CHECK(said.err.find("did you mean \"blue\"?") != std::string::npos);
    CHECK(said.err.find((folder / "kits/bleu.toml").string()) != std::string::npos);
    CHECK(said.err.find((folder / "config/holdwater/kits/bleu.toml").string()) != std::string::npos);
}

TEST_CASE("gauge never writes over a kit, nor under a name that is none") {
    const auto folder = own_folder("kits-kept");
    with_config(folder / "config", box_test + " --save blue", folder);
    const std::string text = file_text((folder / "config/holdwater/kits/blue.toml").string());
    const Said again = with_config(folder / "config", box_test + " --poured '70 C' --save blue", folder);
    CHECK(again.exit == 2);
    CHECK(again.out.find("This box loses") != std::string::npos);  // what was asked is answered
    CHECK(file_text((folder / "config/holdwater/kits/blue.toml").string()) == text);
    const Said bad = with_config(folder / "config", box_test + " --save ../blue", folder);
    CHECK(bad.exit == 2);
    CHECK(bad.out.empty());
    CHECK(bad.err.find("letters, digits") != std::string::npos);
}
