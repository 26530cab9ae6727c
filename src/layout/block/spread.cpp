// SPDX-License-Identifier: MIT
#include "layout/block/spread.hpp"

#include <algorithm>
#include <cstddef>

namespace holdwater::layout {

Spread spread_apart(const std::vector<Millimetres>& wanted, Millimetres slot, Millimetres low, Millimetres high) {
    Spread made;
    const std::size_t n = wanted.size();
    if (n == 0) {
        return made;
    }
    // With z_i = y_i - i slot the places need only ascend: pool neighbours that do not, to their mean.
    struct Pool {
        Millimetres sum;
        std::size_t count = 0;
        Millimetres mean() const { return sum / static_cast<double>(count); }
    };
    std::vector<Pool> pools;
    for (std::size_t i = 0; i < n; ++i) {
        pools.push_back({wanted[i] - static_cast<double>(i) * slot, 1});
        while (pools.size() > 1 && pools[pools.size() - 2].mean() > pools.back().mean()) {
            const Pool last = pools.back();
            pools.pop_back();
            pools.back().sum += last.sum;
            pools.back().count += last.count;
        }
    }
    const Millimetres highest = high - static_cast<double>(n - 1) * slot;
    made.missing = std::max(0.0_mm, low - highest);
    for (const auto& pool : pools) {
        for (std::size_t k = 0; k < pool.count; ++k) {
            const Millimetres z = std::max(low, std::min(pool.mean(), highest));
            made.at.push_back(z + static_cast<double>(made.at.size()) * slot);
        }
    }
    return made;
}

namespace {

class FlagSearch {
  public:
    FlagSearch(const std::vector<FlagWish>& labels, Millimetres low, Millimetres high, Millimetres gap)
        : labels_(labels), low_(low), high_(high), gap_(gap) {}

    bool search(int rows) {
        flags_.clear();
        steps_ = 0;
        return place(rows);
    }
    const std::vector<Flag>& flags() const { return flags_; }

  private:
    bool place(int rows);
    bool clashes(const Flag& flag, std::size_t i) const;
    /// A leader of label i, which stands higher, runs past a label from `left` to `right`.
    bool passes(std::size_t i, Millimetres left, Millimetres right) const {
        return labels_[i].last > left - 0.5 * gap_ && labels_[i].first < right + 0.5 * gap_;
    }

    const std::vector<FlagWish>& labels_;
    Millimetres low_;
    Millimetres high_;
    Millimetres gap_;
    std::vector<Flag> flags_;
    long steps_ = 0;
};

bool FlagSearch::clashes(const Flag& flag, std::size_t i) const {
    const Millimetres right = flag.left + labels_[i].width;
    for (std::size_t j = 0; j < flags_.size(); ++j) {
        const Millimetres other_right = flags_[j].left + labels_[j].width;
        if (flags_[j].row == flag.row && flag.left < other_right + gap_ && flags_[j].left < right + gap_) {
            return true;
        }
        if (flags_[j].row > flag.row && passes(j, flag.left, right)) {
            return true;
        }
        if (flag.row > flags_[j].row && passes(i, flags_[j].left, other_right)) {
            return true;
        }
    }
    return false;
}

bool FlagSearch::place(int rows) {
    constexpr long patience = 20000;
    const std::size_t i = flags_.size();
    if (i == labels_.size()) {
        return true;
    }
    const FlagWish& label = labels_[i];
    if (label.width > high_ - low_ || label.last - label.first > label.width) {
        return false;
    }
    for (int row = 0; row < rows; ++row) {
        // Centred where it can be, else to the right or to the left of its leaders.
        for (const double share : {0.5, 0.0, 1.0}) {
            if (++steps_ > patience) {
                return false;
            }
            const Millimetres wanted = (1.0 - share) * label.first + share * label.last - share * label.width;
            const Flag flag{row, std::clamp(wanted, low_, high_ - label.width)};
            if (clashes(flag, i)) {
                continue;
            }
            flags_.push_back(flag);
            if (place(rows)) {
                return true;
            }
            flags_.pop_back();
        }
    }
    return false;
}

}  // namespace

std::vector<Flag> flag_rows(const std::vector<FlagWish>& labels, Millimetres low, Millimetres high, Millimetres gap,
                            int most_rows) {
    FlagSearch search(labels, low, high, gap);
    for (int rows = 1; rows <= most_rows; ++rows) {
        if (search.search(rows)) {
            return search.flags();
        }
    }
    return {};
}

}  // namespace holdwater::layout
