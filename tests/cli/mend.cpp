// SPDX-License-Identifier: MIT
// `mend`: a trip that holds, beside one that does not; what it writes reads back and holds.
#include "cli/program.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <string>

using namespace holdwater;
using namespace holdwater::support;

namespace {

/// The class's trip with another tolerance, as a file of its own.
std::string narrow_trip(const std::filesystem::path& folder, const std::string& tolerance) {
    std::string text = file_text(std::string(HOLDWATER_SOURCE_DIR) + "/layouts/trips/class-day.toml");
    const auto at = text.find("tolerance = ");
    REQUIRE(at != std::string::npos);
    const auto from = text.find('"', at) + 1;
    text.replace(from, text.find('"', from) - from, tolerance);
    const std::string path = (folder / "narrow.toml").string();
    std::ofstream(path, std::ios::binary) << text;
    return path;
}

}  // namespace

TEST_CASE("mend writes NAME-mended.toml, which holds as it stands; never over an existing one") {
    const auto folder = own_folder("mend");
    const std::string path = narrow_trip(folder, "0.5 K");
    const std::string mended = (folder / "narrow-mended.toml").string();
    const Said said = holdwater_says("mend '" + path + "'", folder);
    REQUIRE(good(said.exit));
    CHECK(said.out.find(mended) != std::string::npos);
    const std::string text = file_text(mended);
    CHECK(text.find("# was: \"0.5 K\"") != std::string::npos);
    CHECK(text.find("how far over the target") != std::string::npos);  // its remark is kept

    // Read back it holds, and there is nothing to mend.
    const Said again = holdwater_says("mend '" + mended + "'", folder);
    CHECK(good(again.exit));
    CHECK(again.out.find("holds as it is; nothing was written") != std::string::npos);
    CHECK_FALSE(std::filesystem::exists(folder / "narrow-mended-mended.toml"));

    std::ofstream(mended, std::ios::binary) << "mine\n";
    const Said over = holdwater_says("mend '" + path + "'", folder);
    CHECK(over.exit == 2);
    CHECK(over.err.find("is there already") != std::string::npos);
    CHECK(file_text(mended) == "mine\n");
}

TEST_CASE("mend in JSON; and where nothing mends it, why, without a file") {
    const auto folder = own_folder("mend-json");
    const std::string path = narrow_trip(folder, "0.5 K");
    const Said json = holdwater_says("mend '" + path + "' --json", folder);
    REQUIRE(good(json.exit));
    CHECK(json.out.find("\"verdict\": \"mended\"") != std::string::npos);
    CHECK(json.out.find("narrow-mended.toml") != std::string::npos);

    std::string text = file_text(path);
    const auto at = text.find("kind = \"");
    REQUIRE(at != std::string::npos);
    text.replace(at, text.find('\n', at) - at, "kind = \"wild-boar\"");
    const std::string boar = (folder / "boar.toml").string();
    std::ofstream(boar, std::ios::binary) << text;
    const Said refused = holdwater_says("mend '" + boar + "'", folder);
    CHECK(refused.exit == 1);
    CHECK(refused.out.find("nothing was written") != std::string::npos);
    CHECK(refused.out.find("no change within this equipment") != std::string::npos);
    CHECK_FALSE(std::filesystem::exists(folder / "boar-mended.toml"));
    CHECK(holdwater_says("mend '" + (folder / "none.toml").string() + "'", folder).exit == 2);
}

TEST_CASE("mend writes the wishes as plan bends them") {
    const auto folder = own_folder("mend-bent");
    const std::string path = narrow_trip(folder, "0.5 K");
    const Said plan = holdwater_says("plan '" + path + "'", folder);
    REQUIRE(good(plan.exit));
    const std::string said = plan.out + plan.err;
    const auto at = said.find("tolerance = \"");
    REQUIRE(at != std::string::npos);
    const std::string wish = said.substr(at, said.find('"', at + 13) + 1 - at);
    REQUIRE(good(holdwater_says("mend '" + path + "'", folder).exit));
    CAPTURE(wish);
    CHECK(file_text((folder / "narrow-mended.toml").string()).find(wish) != std::string::npos);
}
