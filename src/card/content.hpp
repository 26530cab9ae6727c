// SPDX-License-Identifier: MIT
// What is on a card, without geometry: a closed list of blocks. Layout places them, draw never sees them.
#pragma once

#include <cstddef>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace holdwater::card {

/// Text with emphasis: "*bold*" between asterisks is bold, everything else regular; after a backslash, an asterisk or a
/// backslash is itself. A number and its unit are joined by U+00A0 (no-break space), which layout keeps on one line.
using Text = std::string;

/// Words that somebody else wrote, a user's name for a food, as they stand: their asterisks print as asterisks.
inline Text plain(std::string_view words) {
    Text text;
    for (const char c : words) {
        if (c == '*' || c == '\\') {
            text += '\\';
        }
        text += c;
    }
    return text;
}

struct Heading {
    Text text;
};

/// The number of the card: far larger than all else, units quieter.
struct KeyNumber {
    Text label;         // "Fill to"
    std::string value;  // "71"
    std::string unit;   // "°C"
    Text aside;         // "160 °F", or "settled, stirred, before the food goes in"; may be empty
};

/// Several smaller key numbers side by side, two to four.
struct KeyRow {
    std::vector<KeyNumber> numbers;
};

struct Step {
    std::string when;  // clock time or empty
    Text text;
};

/// Ordered actions, one a line, verbs first. `numbered` prints 1, 2, 3; otherwise `when` stands in the left column.
struct Steps {
    std::vector<Step> steps;
    bool numbered = true;

    void add(Text text);
    void add(Text when, Text text);
};

enum class Align { left, centre, right };

struct Column {
    Text head;
    Align align = Align::left;
    bool strong = false;  // bold figures: what one acts on
};

struct Table {
    Text title;  // may be empty
    std::vector<Column> columns;
    std::vector<std::vector<Text>> rows;
    std::optional<std::size_t> marked_row;  // heavy frame: the row of this trip

    void column(Text head, Align align = Align::left, bool strong = false);
    void row(std::initializer_list<std::string_view> cells);
};

/// Left what the thermometer reads, right what to do; read from the top (hot) down; the last rung is the floor.
struct Ladder {
    Text left_head;
    std::vector<Text> right_heads;
    struct Rung {
        Text reading;
        std::vector<Text> amounts;
    };
    std::vector<Rung> rungs;
    Text floor_reading;  // "below 54 °C"
    Text floor_action;   // "go to Limits"
};

/// A thermometer to scale from its hottest row down: at each level what it reads and what to do then.
struct Thermometer {
    struct Row {
        double at = 0.0;          // where it stands on the scale [°C]; never above the row before
        Text reading;             // "66 °C (151 °F)", "below 51 °C"
        std::vector<Text> cells;  // one: over the whole width
    };
    /// Rows with the same columns. The sections stay in order and whole.
    struct Section {
        Text bar;                      // what stands in a bar above it; may be empty
        std::optional<double> bar_at;  // where that stands on the scale [°C]; nothing: at the floor
        bool calm = false;             // its bar is framed, not black
        Text left_head;
        std::vector<Text> heads;  // may be empty
        std::vector<Row> rows;
    };
    std::vector<Section> sections;
    double floor = 0.0;  // below this the tube is black [°C]
};

/// A table by thickness with a bar of true length under each row, rising like a staircase: the card is laid on a piece,
/// the first bar that is not shorter counts.
struct Staircase {
    Text title;  // above the table; may be empty
    Table table;
    std::vector<double> bars;  // of each row of the table, from the shortest up [mm]; 0: a row without one
    Text too_thick;            // stands in the black bar behind the last
    Text longer;               // the same where not all bars have room on the card
    bool may_turn = true;      // along the longer side of the card, where bars are longer than the shorter one
};

/// Bars over one scale of temperature, with marks across all of them.
struct Bands {
    Text head;  // above the names of the bars
    double from = 0.0;
    double to = 0.0;
    struct Bar {
        Text label;
        double low = 0.0;
        double high = 0.0;
        Text span;  // "64–90"
    };
    struct Mark {
        double at = 0.0;
        Text label;
    };
    std::vector<Bar> bars;
    std::vector<Mark> marks;  // lines across, each with a label of its own above, rising
    std::vector<Mark> scale;  // labels below
    Text scale_head;          // before them
    std::vector<Mark> below;  // a second line of labels, below those: what happens at that temperature
    Text below_head;
};

/// A true-scale ruler along the long side of the card: distance from its own zero line in mm, drawn at exactly that.
struct Ruler {
    Text title;       // "pork loin, round · bath never under 60 °C"
    Text zero_label;  // "line up here"
    struct Tick {
        double at_mm = 0.0;
        Text label;           // "2 h 15"; empty: a small tick without text
        bool marked = false;  // the piece of this trip
    };
    std::vector<Tick> ticks;
    double too_thick_mm = 0.0;  // from here on a solid bar
    Text too_thick_label;       // "too thick: split it"
};

struct Curve {
    Text title;
    struct Point {
        double x = 0.0;
        double y = 0.0;
    };
    std::vector<Point> likely;
    std::vector<Point> low;  // the band; same x as `high`
    std::vector<Point> high;
    double floor = 0.0;
    Text floor_label;
    struct Label {
        double at = 0.0;
        Text text;
    };
    std::vector<Label> x_labels;
    std::vector<Label> y_labels;
    Text x_title;
    Text y_title;
    std::vector<Point> second;                    // another line, dashed; may be empty
    std::vector<Point> marks;                     // readings: small open circles; may be empty
    std::vector<std::pair<double, double>> gaps;  // from x to x nobody read anything: hatched
    // What the key calls each; empty: layout's own word.
    Text likely_label;
    Text band_label;
    Text second_label;
    Text marks_label;
    Text gaps_label;
};

/// The day as a bar: spans (patterns, not colours) and marks with clock times.
struct DayBar {
    double from = 0.0;  // hours since some midnight
    double to = 0.0;
    enum class Kind { fill, cook, hold, sleep };
    struct Span {
        Kind kind = Kind::cook;
        double from = 0.0;
        double to = 0.0;
        Text label;
    };
    struct Mark {
        double at = 0.0;
        Text label;  // "22:30"
        Text above;  // "top up"; may be empty
    };
    std::vector<Span> spans;
    std::vector<Mark> marks;
};

enum class SignalWord { none, caution, warning };

struct Caution {
    SignalWord word = SignalWord::warning;
    Text text;
};

struct Note {
    Text text;
};

/// Lines or boxes to write in with a grease pencil, at least 7 mm high.
struct WriteIn {
    std::vector<Text> heads;
    std::vector<Text> first_column;  // pre-printed; one row each
};

/// Line drawings side by side, each by the name of its file in layouts/drawings.
struct Drawings {
    struct Shown {
        std::string name;  // "box-in-section"
        Text alt;          // what it shows, for those who hear the page
        Text label;        // stands below it; may be empty
    };
    std::vector<Shown> shown;
    double height_mm = 0.0;  // of all of them, for a 10 pt body; 0: each at its own size
};

/// Start a new face here if one is to be had (the author wants the pair face / back).
struct Turn {};

using Block = std::variant<Heading, KeyNumber, KeyRow, Steps, Table, Ladder, Ruler, Curve, DayBar, Caution, Note,
                           WriteIn, Drawings, Turn, Thermometer, Staircase, Bands>;

/// Blocks in order. Its members are defined in content.cpp for the kinds of block there are: what a variant of so many
/// kinds asks of the compiler is asked there, and not again in every file that makes a card.
template <class Any>
class BlockList {
  public:
    BlockList();
    BlockList(std::vector<Any> blocks);
    BlockList(std::initializer_list<Any> blocks);
    BlockList(const BlockList& other);
    BlockList(BlockList&& other) noexcept;
    BlockList& operator=(const BlockList& other);
    BlockList& operator=(BlockList&& other) noexcept;
    ~BlockList();

    /// At the end: any kind of block that the list may hold.
    template <class One>
    void add(One block);
    /// All of another list at the end.
    void append(const BlockList& other);
    using iterator = typename std::vector<Any>::const_iterator;
    void erase(iterator first, iterator last);

    std::size_t size() const { return blocks_.size(); }
    bool empty() const { return blocks_.empty(); }
    auto begin() const { return blocks_.begin(); }
    auto end() const { return blocks_.end(); }
    const Any& front() const { return blocks_.front(); }
    const Any& back() const { return blocks_.back(); }
    const Any& at(std::size_t i) const { return blocks_.at(i); }
    const Any& operator[](std::size_t i) const { return blocks_[i]; }

  private:
    std::vector<Any> blocks_;
};
using Blocks = BlockList<Block>;

struct Card {
    std::string key;                // "fill"
    Text name;                      // "Fill"
    Text question;                  // "How hot, how much?"
    int number = 0;                 // in the deck, from 1
    Blocks blocks;                  // face first; goes on at a block boundary on the back
    std::vector<Caution> cautions;  // stand at the foot of every face of this card
    bool harmless = false;  // nothing on it can scald, gas or poison; else it has a caution, here or among blocks

    void warn(Text text);       // adds a caution that begins with WARNING
    void warn_here(Text text);  // the same as the next block, where the act stands that it belongs to
    bool cautioned() const;     // it has what it must have
};

struct Deck {
    std::string title;  // trip name
    std::string stamp;  // 8 characters
    std::string language;
    Text footer;  // "local food-safety rules and licensed practice have the last word"
    std::vector<Card> cards;
};

/// A measuring strip at true scale, of any length: cut out and taped along a stick. Distances from its foot.
struct Strip {
    Text title;       // runs up along it: it says what it is once it is cut out
    Text foot_label;  // "this end on the bottom"
    struct Mark {
        double at_mm = 0.0;
        Text label;           // "20"; empty: a bare tick
        bool strong = false;  // a level to act on; its label stands beside the figures
    };
    std::vector<Mark> marks;  // rising
    double length_mm = 0.0;   // from the foot to where it may be cut off
    Text joint_lower;         // where it takes two pieces: at the head of the lower one
    Text joint_upper;         // and at the foot of the upper one
};

/// The outline by which laminating film is cut, at true scale, and the paper's own outline in it.
struct LaminateTemplate {
    double paper_width_mm = 0.0;
    double paper_height_mm = 0.0;
    double border_mm = 0.0;  // of film beyond the paper, all round
    double corner_mm = 0.0;  // radius of the film's corners
    Text label;              // stands in the paper
};

/// Upright scales side by side, over which a thread is laid straight: where it crosses a third scale stands what goes
/// with the values under it on two others.
struct Nomogram {
    struct Tick {
        double at = 0.0;  // share of the height, from the foot
        Text label;       // empty: a small tick
    };
    struct Scale {
        Text name;            // above it
        double across = 0.0;  // share of the width, from the left
        std::vector<Tick> ticks;
    };
    struct Thread {  // an example, dashed; each end by its scale and its place there
        std::size_t from = 0;
        double from_at = 0.0;
        std::size_t to = 0;
        double to_at = 0.0;
    };
    Text alt;  // what it shows, for those who hear the page
    std::vector<Scale> scales;
    std::vector<Thread> threads;
    double height_mm = 0.0;  // of the scales
};

using SheetBlock = std::variant<Block, Strip, LaminateTemplate, Nomogram>;
using SheetBlocks = BlockList<SheetBlock>;

/// Plain sheets for whoever prepares or teaches: running text, tables, things to cut out. A Turn starts a new sheet;
/// a Ruler belongs on a card and is refused here.
struct Sheets {
    Text name;          // "Basis"
    std::string title;  // trip name
    std::string stamp;
    std::string language;
    Text footer;
    SheetBlocks blocks;
};

}  // namespace holdwater::card
