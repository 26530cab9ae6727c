// SPDX-License-Identifier: MIT
// From blocks to faces: what goes where, what is repeated, what is refused.
#include "layout/layout.hpp"
#include "support/faces.hpp"
#include "support/fake_measure.hpp"
#include "support/problems.hpp"
#include "support/sample_deck.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using namespace holdwater::layout;
using support::all_text;
using support::measure;
using support::squeezed;

namespace {

card::Deck deck_of(std::vector<card::Block> blocks) {
    card::Deck deck;
    deck.title = "Trip";
    deck.stamp = "AAAA1111";
    deck.footer = "Local rules have the last word.";
    card::Card card{
        "hold", "Hold", "How long?", 3, std::move(blocks), {{card::SignalWord::warning, "Scalding water."}}};
    deck.cards.push_back(card);
    return deck;
}

card::Table long_table(int rows) {
    card::Table made;
    made.columns = {{"thick", card::Align::right, false}, {"hold", card::Align::right, true}};
    for (int i = 0; i < rows; ++i) {
        made.rows.push_back({std::to_string(100 + i) + " mm", std::to_string(500 + i) + " min"});
    }
    return made;
}

std::vector<Page> faces_of(const card::Deck& deck, const std::string& format = "hand") {
    auto made = lay_out(deck, support::format(format), measure);
    for (const auto& one : made.problems()) {
        INFO(problem::to_line(one));
        CHECK(one.severity != problem::Severity::error);
    }
    REQUIRE(made.ok());
    REQUIRE(made->size() == 1);
    return made->front().faces;
}

/// Every text of a block that must be found on some face.
std::vector<std::string> contents(const card::Block& block) {
    std::vector<std::string> all;
    const auto take = [&all](const card::Text& text) {
        if (!text.empty()) {
            all.push_back(squeezed(text));
        }
    };
    if (const auto* table = std::get_if<card::Table>(&block)) {
        take(table->title);
        for (const auto& row : table->rows) {
            for (const auto& cell : row) {
                take(cell);
            }
        }
    } else if (const auto* steps = std::get_if<card::Steps>(&block)) {
        for (const auto& step : steps->steps) {
            take(step.when);
            take(step.text);
        }
    } else if (const auto* grid = std::get_if<card::WriteIn>(&block)) {
        for (const auto& text : grid->first_column) {
            take(text);
        }
    } else if (const auto* heading = std::get_if<card::Heading>(&block)) {
        take(heading->text);
    } else if (const auto* note = std::get_if<card::Note>(&block)) {
        take(note->text);
    } else if (const auto* ladder = std::get_if<card::Ladder>(&block)) {
        take(ladder->floor_reading);
        take(ladder->floor_action);
        for (const auto& rung : ladder->rungs) {
            take(rung.reading);
        }
    } else if (const auto* key = std::get_if<card::KeyNumber>(&block)) {
        take(key->value);
        take(key->unit);
    } else if (const auto* bar = std::get_if<card::DayBar>(&block)) {
        for (const auto& mark : bar->marks) {
            take(mark.label);
            take(mark.above);
        }
    }
    return all;
}

}  // namespace

TEST_CASE("nothing is dropped: every row, step and number of the sample deck stands on a face, in each format") {
    const auto deck = support::sample_deck();
    for (const char* name : {"hand", "pocket", "large"}) {
        CAPTURE(std::string(name));
        auto made = lay_out(deck, support::format(name), measure);
        REQUIRE(made.ok());
        REQUIRE(made->size() == deck.cards.size());
        for (std::size_t i = 0; i < deck.cards.size(); ++i) {
            std::string all;
            for (const auto& page : (*made)[i].faces) {
                const std::string here = all_text(page);
                for (const auto& caution : deck.cards[i].cautions) {
                    CHECK_MESSAGE(here.find(squeezed(caution.text)) != std::string::npos, page.name);
                }
                CHECK(here.find(squeezed(deck.cards[i].question)) != std::string::npos);
                CHECK(here.find(deck.stamp) != std::string::npos);
                CHECK(here.find(squeezed(deck.title)) != std::string::npos);
                all += here;
            }
            for (const auto& block : deck.cards[i].blocks) {
                for (const auto& text : contents(block)) {
                    CHECK_MESSAGE(all.find(text) != std::string::npos, text);
                }
            }
        }
    }
}

TEST_CASE("a card that fits has one face and says nothing of turning") {
    const auto faces = faces_of(deck_of({card::Note{"Stir before each reading."}}));
    REQUIRE(faces.size() == 1);
    CHECK(all_text(faces[0]).find("turnover") == std::string::npos);
    CHECK(all_text(faces[0]).find("continued") == std::string::npos);
    CHECK(faces[0].name == "hold-1");
}

TEST_CASE("what does not fit goes on at a block boundary on the back") {
    const auto faces = faces_of(deck_of({long_table(10), long_table(9)}));
    REQUIRE(faces.size() == 2);
    CHECK(all_text(faces[0]).find("turnover") != std::string::npos);
    CHECK(all_text(faces[1]).find("continued") != std::string::npos);
    CHECK(all_text(faces[0]).find("109mm") != std::string::npos);
    CHECK(all_text(faces[1]).find("100mm") != std::string::npos);
    CHECK(all_text(faces[0]).find("2of") == std::string::npos);
}

TEST_CASE("a table taller than a face is cut between rows, its head on each part, its mark in one") {
    card::Table table = long_table(60);
    table.marked_row = 40;
    const auto faces = faces_of(deck_of({card::Heading{"All of them"}, table}));
    REQUIRE(faces.size() > 2);
    int marks = 0;
    int rows = 0;
    for (const auto& page : faces) {
        const std::string here = all_text(page);
        CHECK(here.find("thick") != std::string::npos);
        for (const auto& item : page.items) {
            const auto* box = std::get_if<PlacedBox>(&item);
            marks += box != nullptr && box->stroke_pt > 1.9_pt ? 1 : 0;
        }
        for (std::size_t at = here.find("mm"); at != std::string::npos; at = here.find("mm", at + 1)) {
            ++rows;
        }
    }
    CHECK(marks == 1);
    CHECK(rows == 60);
    CHECK(all_text(faces[0]).find("Allofthem") != std::string::npos);
    CHECK(all_text(faces[2]).find("2of") != std::string::npos);
}

TEST_CASE("no row stands alone on the next face") {
    for (int rows = 15; rows < 50; ++rows) {
        const auto faces = faces_of(deck_of({long_table(rows)}));
        const std::string last = all_text(faces.back());
        CHECK(last.find(std::to_string(100 + rows - 1) + "mm") != std::string::npos);
        CHECK(last.find(std::to_string(100 + rows - 2) + "mm") != std::string::npos);
    }
}

TEST_CASE("steps cut between faces go on counting") {
    card::Steps steps;
    for (int i = 0; i < 40; ++i) {
        steps.steps.push_back({"", "Do it once more"});
    }
    const auto faces = faces_of(deck_of({steps}));
    REQUIRE(faces.size() > 1);
    std::string all;
    for (const auto& page : faces) {
        all += all_text(page);
    }
    for (int i = 1; i <= 40; ++i) {
        CHECK(all.find(std::to_string(i) + "Doit") != std::string::npos);
    }
}

TEST_CASE("a heading stays with what follows it") {
    for (int rows = 1; rows < 16; ++rows) {
        const auto faces = faces_of(deck_of({long_table(rows), card::Heading{"Look again"}, long_table(9)}));
        for (const auto& page : faces) {
            const std::string here = all_text(page);
            if (const auto at = here.find("Lookagain"); at != std::string::npos) {
                CHECK(here.find("100mm", at) != std::string::npos);
            }
        }
    }
}

TEST_CASE("a turn starts the back, but wastes no leaf when the back is reached already") {
    CHECK(faces_of(deck_of({card::Note{"one"}, card::Turn{}, card::Note{"two"}})).size() == 2);
    CHECK(faces_of(deck_of({card::Turn{}, card::Note{"one"}})).size() == 1);
    CHECK(faces_of(deck_of({card::Note{"one"}, card::Turn{}})).size() == 1);
    const auto faces = faces_of(deck_of({long_table(14), long_table(4), card::Turn{}, card::Note{"two"}}));
    CHECK(faces.size() == 2);
}

TEST_CASE("steps are cut rather than leave a key number alone on a small card") {
    card::Steps steps;
    for (int i = 1; i <= 9; ++i) {
        steps.steps.push_back({"", "do this and then look again at what it reads"});
    }
    const card::KeyNumber key{"Fill to", "71", "°C", ""};
    const auto faces = faces_of(deck_of({key, steps}), "pocket");
    REQUIRE(faces.size() == 2);
    CHECK(all_text(faces.front()).find("lookagain") != std::string::npos);
    CHECK(all_text(faces.back()).find("lookagain") != std::string::npos);
    // Where all has room on one face nothing is cut.
    CHECK(faces_of(deck_of({key, steps}), "hand").size() == 1);
}

TEST_CASE("what cannot be cut and is too tall is refused by name, with the missing millimetres") {
    card::Ladder ladder;
    ladder.left_head = "reads";
    ladder.right_heads = {"add"};
    for (int i = 0; i < 40; ++i) {
        ladder.rungs.push_back({std::to_string(70 - i) + " °C", {"1 L"}});
    }
    ladder.floor_reading = "below";
    ladder.floor_action = "go";
    const auto made = lay_out(deck_of({ladder}), support::format("hand"), measure);
    CHECK_FALSE(made.ok());
    REQUIRE(made.problems().size() == 1);
    const auto& one = made.problems()[0];
    CHECK(one.code == problem::Code("block-too-tall"));
    CHECK(one.message.find("card 3 \"Hold\"") != std::string::npos);
    CHECK(one.message.find("the ladder is ") != std::string::npos);
    CHECK(one.message.find(" mm too tall") != std::string::npos);
    CHECK(one.message.find("hand") != std::string::npos);

    // Larger by exactly one rung: the missing millimetres grow by the height of that rung.
    const auto missing = [](const problem::Problem& problem) {
        const auto at = problem.message.find(" is ") + 4;
        return std::stod(problem.message.substr(at));
    };
    ladder.rungs.push_back({"20 °C", {"1 L"}});
    const auto more = lay_out(deck_of({ladder}), support::format("hand"), measure);
    REQUIRE(more.problems().size() == 1);
    const double rung = missing(more.problems()[0]) - missing(one);
    CHECK(rung > 4.0);
    CHECK(rung < 6.0);
}

TEST_CASE("what is too wide is refused by name") {
    const auto made = lay_out(deck_of({card::Note{std::string(60, 'm')}}), support::format("hand"), measure);
    CHECK_FALSE(made.ok());
    CHECK(support::has_code(made.problems(), "block-too-wide"));
    CHECK(made.problems()[0].message.find("note") != std::string::npos);
}

TEST_CASE("a card without a caution cannot be laid out") {
    auto deck = deck_of({card::Note{"one"}});
    deck.cards[0].cautions.clear();
    const auto made = lay_out(deck, support::format("hand"), measure);
    CHECK_FALSE(made.ok());
    CHECK(support::has_code(made.problems(), "caution-missing"));
}

TEST_CASE("a character that the typeface has not is refused") {
    const auto made = lay_out(deck_of({card::Note{"snow \u2603"}}), support::format("hand"), measure);
    CHECK_FALSE(made.ok());
    CHECK(support::has_code(made.problems(), "glyph-missing"));
}

TEST_CASE("the same deck gives the same items") {
    const auto deck = support::sample_deck();
    const auto one = lay_out(deck, support::format("hand"), measure);
    const auto two = lay_out(deck, support::format("hand"), measure);
    REQUIRE(one.ok());
    REQUIRE(two.ok());
    for (std::size_t c = 0; c < one->size(); ++c) {
        REQUIRE((*one)[c].faces.size() == (*two)[c].faces.size());
        for (std::size_t f = 0; f < (*one)[c].faces.size(); ++f) {
            CHECK(all_text((*one)[c].faces[f]) == all_text((*two)[c].faces[f]));
            CHECK((*one)[c].faces[f].items.size() == (*two)[c].faces[f].items.size());
        }
    }
}

TEST_CASE("a format that leaves out prints what has room, names the rest, and says so at the foot of every card") {
    card::Deck deck = deck_of({card::Note{"Stir and read."}});
    card::Card tall = deck.cards.front();
    tall.key = "topup";
    tall.name = "Top-up";
    tall.number = 4;
    tall.blocks = {
        card::Ladder{"reads", {"add"}, std::vector<card::Ladder::Rung>(12, {"60 °C", {"2 L"}}), "below", "go"}};
    deck.cards.push_back(tall);

    const auto strict = lay_out(deck, support::format("pocket"), measure);
    CHECK_FALSE(strict.ok());
    const auto made = lay_out(deck, support::format("wallet"), measure);
    REQUIRE(made.ok());
    REQUIRE(made->size() == 1);
    CHECK(made->front().key == "hold");
    REQUIRE(support::has_code(made.problems(), "card-left-out"));
    CHECK(made.problems().front().severity == problem::Severity::note);
    CHECK(made.problems().front().message.find("card 4 \"Top-up\"") != std::string::npos);
    for (const Page& face : made->front().faces) {
        CHECK(all_text(face).find("Notinthissize:card4.Localrules") != std::string::npos);
    }
    // Nothing is left out where all has room, and no deck is empty.
    deck.cards.pop_back();
    const auto whole = lay_out(deck, support::format("wallet"), measure);
    REQUIRE(whole.ok());
    CHECK(whole.problems().empty());
    CHECK(all_text(whole->front().faces.front()).find("Notinthissize") == std::string::npos);
    deck.cards.front() = tall;
    CHECK(support::has_code(lay_out(deck, support::format("wallet"), measure).problems(), "nothing-fits"));
}

TEST_CASE("a small format does without a drawing that has no room, and keeps the card's words") {
    card::Curve curve;
    curve.title = "bath";
    curve.likely = {{0.0, 60.0}, {8.0, 50.0}};
    curve.low = curve.high = curve.likely;
    curve.floor = 55.0;
    curve.floor_label = "floor";
    card::Ruler ruler;
    ruler.title = "thickness";
    ruler.zero_label = "line up here";
    ruler.ticks = {{10.0, "1 h", false}, {20.0, "2 h", false}};
    ruler.too_thick_mm = 30.0;
    ruler.too_thick_label = "too thick";
    const card::Deck deck = deck_of({card::Note{"Keep the lid shut."}, card::Turn{}, curve, ruler,
                                     card::Note{"Lay the piece across."}, card::Heading{"Then"}, card::Note{"Eat."}});
    const auto made = lay_out(deck, support::format("wallet"), measure);
    REQUIRE(made.ok());
    CHECK(support::has_code(made.problems(), "card-cut"));
    std::string all;
    for (const Page& face : made->front().faces) {
        all += all_text(face);
    }
    for (const char* kept : {"Keepthelidshut.", "Then", "Eat.", "Scaldingwater."}) {
        CHECK(all.find(kept) != std::string::npos);
    }
    CHECK(all.find("Laythepieceacross") == std::string::npos);  // it is said of the ruler
}
