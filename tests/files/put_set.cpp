// SPDX-License-Identifier: MIT
// put_set FOLDER TEXT PICTURES BYTES: puts a set of files in place, each holding TEXT again and again up to so many
// bytes. Ends with 0, or with 2 and what went wrong, as the program does.
#include "cli/files/deck_files.hpp"

#include <cstdlib>
#include <string>

int main(int argc, char** argv) {
    using namespace holdwater::cli;
    if (argc != 5) {
        return 64;
    }
    const DeckFiles deck{argv[1], "camp", "basis"};
    std::string bytes;
    while (bytes.size() < std::stoul(argv[4])) {
        bytes += argv[2];
    }
    std::vector<Finished> files{{deck.path("cards.pdf"), bytes}, {deck.path("basis.pdf"), bytes}};
    for (int i = 1; i <= std::atoi(argv[3]); ++i) {
        files.push_back({deck.path("card-" + std::to_string(i) + ".png"), bytes});
    }
    const auto put = put_in_place(deck, files);
    if (!put) {
        tell(put.problems());
        return 2;
    }
    return 0;
}
