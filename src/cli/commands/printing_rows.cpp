// SPDX-License-Identifier: MIT
#include "cli/commands/printing_rows.hpp"

#include "cli/files/formats_that_do.hpp"

namespace holdwater::cli {
namespace {

namespace printing_row {

constexpr std::string_view printing = "Printing";

const OptionRow out{.name = "--out",
                    .value = "DIR",
                    .help = "folder to write into",
                    .by_default = "out",
                    .holds = Holds::folder,
                    .group = printing};
const OptionRow format{.name = "--format",
                       .value = "FORMAT",
                       .help = "card format",
                       .by_default = "hand",
                       .choices = {offered_formats.begin(), offered_formats.end()},
                       .group = printing};
const OptionRow sheet{.name = "--sheet",
                      .value = "SHEET",
                      .help = "paper",
                      .by_default = "a4",
                      .choices = {"a4", "letter"},
                      .group = printing};
const OptionRow sides{.name = "--sides",
                      .value = "SIDES",
                      .help = "how backs are printed",
                      .by_default = "duplex",
                      .choices = {"duplex", "single", "fold"},
                      .group = printing};
const OptionRow only{.name = "--only",
                     .value = "CARD,..",
                     .help = "only these cards, one word with commas",
                     .takes = Takes::list,
                     .group = printing};
const OptionRow copies{.name = "--copies",
                       .value = "N",
                       .help = "copies of the deck",
                       .by_default = "1",
                       .range = {"1", "100", "1"},
                       .group = printing};
const OptionRow preview{
    .name = "--preview", .help = "write a PNG of every card face as well, and one of all", .group = printing};
const OptionRow lamp{.name = "--lamp",
                     .value = "COLOUR",
                     .help = "the pictures as seen by a lamp of this colour, a simulation",
                     .choices = {"red"},
                     .needs = "--preview",
                     .group = printing};
const OptionRow dim{.name = "--dim",
                    .help = "the pictures as seen in a dark camp, a simulation",
                    .needs = "--preview",
                    .group = printing};

}  // namespace printing_row
}  // namespace

std::vector<OptionRow> printing_rows(const std::vector<std::string>& cards) {
    using namespace printing_row;
    OptionRow these = only;
    these.choices.assign(cards.begin(), cards.end());
    return {out, format, sheet, sides, these, copies, preview, lamp, dim};
}

std::vector<OptionRow> printing_rows_of_one() {
    using namespace printing_row;
    return {out, format, sheet, sides, copies, preview, lamp, dim};
}

PrintingOptions read_printing_of_one(Options& options) {
    using namespace printing_row;
    PrintingOptions to;
    to.only = {"one"};
    to.out = options.folder(out);
    to.format = options.choice(format);
    to.sheet = options.choice(sheet);
    to.sides = options.choice(sides);
    to.copies = options.whole_number(copies);
    to.preview = options.has(preview);
    to.lamp = options.has(lamp) ? options.choice(lamp) : "";
    to.dim = options.has(dim);
    return to;
}

PrintingOptions read_printing(Options& options) {
    PrintingOptions to = read_printing_of_one(options);
    to.only = options.choices(printing_row::only);
    return to;
}

}  // namespace holdwater::cli
