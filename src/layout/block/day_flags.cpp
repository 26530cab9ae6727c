// SPDX-License-Identifier: MIT
#include "layout/block/day_flags.hpp"

#include "layout/block/blocks.hpp"
#include "layout/block/spread.hpp"

#include <algorithm>
#include <limits>
#include <utility>

namespace holdwater::layout {

namespace {

/// Rows of flags that a bar may have: above two fifths of the card's height, with bar and key, it would leave no room
/// for what else stands on a face.
int most_rows(const Format& format) {
    constexpr double share = 0.42;
    constexpr int bar_and_key = 3;  // as many rows
    constexpr int ever = 9;
    return std::clamp(static_cast<int>(share * format.height / leading(format.figure_pt)) - bar_and_key, 2, ever);
}

/// Marks that stand on one flag, by their numbers.
using Shared = std::vector<std::size_t>;

class FlagPlan {
  public:
    FlagPlan(const std::vector<card::DayBar::Mark>& marks, const std::vector<Millimetres>& at,
             const BlockContext& setting)
        : marks_(marks), at_(at), setting_(setting), gap_(setting.scaled(2.2_mm)) {
        for (std::size_t i = 0; i < marks.size(); ++i) {
            groups_.push_back({i});
        }
    }

    DayFlags run();

  private:
    DayFlag flag_of(const Shared& group) const;
    bool place(std::vector<DayFlag>& flags) const;
    bool share_nearest();
    void drop_one();

    const std::vector<card::DayBar::Mark>& marks_;
    const std::vector<Millimetres>& at_;
    const BlockContext& setting_;
    Millimetres gap_;
    std::vector<Shared> groups_;
    std::vector<Millimetres> bare_;
};

DayFlag FlagPlan::flag_of(const Shared& group) const {
    DayFlag made;
    for (const std::size_t i : group) {
        const auto& mark = marks_[i];
        const bool said = !made.texts.empty() && marks_[i - 1].label == mark.label;
        FlagText text;
        text.clock = one_line(said ? card::Text{} : mark.label, day_clock_style(setting_), setting_.measure);
        text.words = one_line(mark.above, body_style(setting_), setting_.measure);
        text.x = made.width + (made.texts.empty() ? 0.0_mm : gap_);
        text.words_x = text.x + text.clock.width + (said ? 0.0_mm : setting_.scaled(1.3_mm));
        made.width = text.words.runs.empty() ? text.x + text.clock.width : text.words_x + text.words.width;
        made.texts.push_back(std::move(text));
        made.at.push_back(at_[i]);
    }
    return made;
}

bool FlagPlan::place(std::vector<DayFlag>& flags) const {
    std::vector<FlagWish> wishes;
    for (const auto& flag : flags) {
        wishes.push_back({flag.at.front(), flag.at.back(), flag.width});
    }
    const auto rows = flag_rows(wishes, 0.0_mm, setting_.width, gap_, most_rows(setting_.format));
    for (std::size_t i = 0; i < rows.size(); ++i) {
        flags[i].left = rows[i].left;
        flags[i].row = rows[i].row;
    }
    return !rows.empty();
}

/// Puts the two neighbours that stand nearest to each other on one flag, of those that find room on the bar together.
bool FlagPlan::share_nearest() {
    std::size_t best = groups_.size();
    Millimetres nearest{std::numeric_limits<double>::infinity()};
    for (std::size_t i = 0; i + 1 < groups_.size(); ++i) {
        const Millimetres apart = at_[groups_[i + 1].front()] - at_[groups_[i].back()];
        Shared both = groups_[i];
        both.insert(both.end(), groups_[i + 1].begin(), groups_[i + 1].end());
        if (apart < nearest && flag_of(both).width <= setting_.width) {
            nearest = apart;
            best = i;
        }
    }
    if (best == groups_.size()) {
        return false;
    }
    groups_[best].insert(groups_[best].end(), groups_[best + 1].begin(), groups_[best + 1].end());
    groups_.erase(groups_.begin() + static_cast<std::ptrdiff_t>(best) + 1);
    return true;
}

/// The label of the first mark without words goes, else that of the first mark.
void FlagPlan::drop_one() {
    const auto wordless = [this](const Shared& group) {
        return std::all_of(group.begin(), group.end(), [this](std::size_t i) { return marks_[i].above.empty(); });
    };
    auto gone = std::find_if(groups_.begin(), groups_.end() - 1, wordless);
    gone = gone == groups_.end() - 1 ? groups_.begin() : gone;
    for (const std::size_t i : *gone) {
        bare_.push_back(at_[i]);
    }
    groups_.erase(gone);
}

DayFlags FlagPlan::run() {
    while (!groups_.empty()) {
        std::vector<DayFlag> flags;
        for (const Shared& group : groups_) {
            flags.push_back(flag_of(group));
        }
        if (place(flags)) {
            return {std::move(flags), std::move(bare_)};
        }
        if (groups_.size() == 1) {
            break;  // wider than the bar all alone
        }
        if (!share_nearest()) {
            drop_one();
        }
    }
    return {{}, at_};
}

}  // namespace

TextStyle day_clock_style(const BlockContext& setting) {
    TextStyle style = figure_style(setting);
    style.role = Role::paragraph;
    return style;
}

DayFlags day_flags(const std::vector<card::DayBar::Mark>& marks, const std::vector<Millimetres>& at,
                   const BlockContext& setting) {
    return FlagPlan(marks, at, setting).run();
}

}  // namespace holdwater::layout
