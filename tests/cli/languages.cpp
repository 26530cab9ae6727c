// SPDX-License-Identifier: MIT
// The language of a trip: known ones are taken, others refused with those that there are; it is named in the PDF.
#include "cli/files/trip_file.hpp"
#include "cli/program.hpp"

#include <doctest/doctest.h>

#include <fstream>
#include <string>

using namespace holdwater;
using namespace holdwater::support;

namespace {

std::string changed(std::string text, const std::string& from, const std::string& to) {
    const auto at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

std::string write_trip(const std::filesystem::path& folder, const std::string& language, const std::string& units) {
    std::string text = file_text(std::string(HOLDWATER_SOURCE_DIR) + "/layouts/trips/paddling-day.toml");
    text = changed(std::move(text), "language = \"en\"", "language = \"" + language + "\"");
    text = changed(std::move(text), "units = \"both\"", "units = \"" + units + "\"");
    const std::string path = (folder / "trip.toml").string();
    std::ofstream(path) << text;
    return path;
}

}  // namespace

TEST_CASE("an unknown language or system of units is refused at its place, with those that there are") {
    const auto folder = own_folder("languages");
    const Said language = holdwater_says("plan '" + write_trip(folder, "xx", "both") + "'", folder);
    CHECK(language.exit == 2);
    CHECK(language.err.find("trip.toml:13:") != std::string::npos);
    std::string known;
    for (const std::string& one : cli::languages()) {
        known += (known.empty() ? "" : ", ") + one;
    }
    CHECK(language.err.find("one of: " + known) != std::string::npos);
    const Said system = holdwater_says("plan '" + write_trip(folder, "es", "imperial") + "'", folder);
    CHECK(system.exit == 2);
    CHECK(system.err.find("one of: metric, us, both, us-first") != std::string::npos);
}

TEST_CASE("every language that is listed loads whole") {
    const auto all = cli::languages();
    REQUIRE(all.size() >= 2);
    for (const std::string& language : all) {
        CAPTURE(language);
        CHECK(cli::load_words(language).ok());
    }
    CHECK_FALSE(cli::load_words("xx").ok());
}

TEST_CASE("a Spanish deck is Spanish in the PDF, and its plan speaks English on the terminal") {
    const auto folder = own_folder("spanish");
    const std::string trip = write_trip(folder, "es", "us-first");
    const Said cards = holdwater_says("cards '" + trip + "' --out '" + folder.string() + "'", folder);
    REQUIRE((cards.exit == 0 || cards.exit == 3));
    for (const char* name : {"trip-cards.pdf", "trip-basis.pdf"}) {
        CAPTURE(name);
        const std::string pdf = file_text((folder / name).string());
        CHECK(pdf.find("/Lang (es)") != std::string::npos);
        CHECK(pdf.find("<dc:language><rdf:Bag><rdf:li>es</rdf:li>") != std::string::npos);
    }
    const Said plan = holdwater_says("plan '" + trip + "' --explain", folder);
    CHECK(plan.out.find("95 of 100 scenarios") != std::string::npos);
    CHECK(plan.out.find("escenarios") == std::string::npos);
}
