// SPDX-License-Identifier: MIT
#include "layout/face/flow.hpp"

#include "layout/block/split.hpp"
#include "layout/face/most_that.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace holdwater::layout {

namespace {

using Pieces = std::vector<Piece>;

Pieces joined(Pieces all, const Pieces& more) {
    all.insert(all.end(), more.begin(), more.end());
    return all;
}

/// A face with nothing on it but key numbers.
bool lone(const Pieces& face) {
    return !face.empty() && std::all_of(face.begin(), face.end(), [](const Piece& piece) {
        return std::holds_alternative<card::KeyNumber>(piece.block) ||
               std::holds_alternative<card::KeyRow>(piece.block);
    });
}

class Flow {
  public:
    Flow(const card::Card& card, const FaceMaker& maker, const Format& format, double ease, bool company)
        : card_(card), maker_(maker), format_(format), ease_(ease), company_(company) {}

    problem::Result<std::vector<Pieces>> run();

  private:
    void turn();
    void next_face();
    void add(Pieces group);
    void add_split(Pieces group);
    std::size_t rows_that_fit(const Pieces& before, const Pieces& group) const;
    void refuse(const Pieces& group, const FaceMaker::Fit& fit);

    const card::Card& card_;
    const FaceMaker& maker_;
    const Format& format_;
    double ease_;
    bool company_;  // cut what comes next rather than leave a key number alone on its face
    std::vector<Pieces> faces_;
    Pieces current_;
    problem::Problems problems_;
};

void Flow::next_face() {
    faces_.push_back(std::move(current_));
    current_.clear();
}

void Flow::turn() {
    // Only from a face to its back: on a back that content has already reached, a turn would waste a leaf.
    if (!current_.empty() && faces_.size() % 2 == 0) {
        next_face();
    }
}

void Flow::refuse(const Pieces& group, const FaceMaker::Fit& fit) {
    const std::string where = fmt::format("card {} \"{}\"", card_.number, card_.name);
    const std::string hint = "shorten it, or take a larger format";
    const char* block = block_name(group.back().block);
    if (fit.too_wide > 0.0_mm) {
        problems_.push_back(problem::error("block-too-wide",
                                           fmt::format("{}: the {} is {:.1f} mm too wide for the format {}", where,
                                                       fit.widest, fit.too_wide.value(), format_.name),
                                           hint));
    }
    if (fit.labels_missing > 0.0_mm) {
        problems_.push_back(
            problem::error("ruler-crowded",
                           fmt::format("{}: the labels of the ruler need {:.1f} mm more than the format {} gives",
                                       where, fit.labels_missing.value(), format_.name),
                           "label fewer ticks"));
    }
    if (fit.missing > 0.0_mm) {
        problems_.push_back(
            problem::error("block-too-tall",
                           fmt::format("{}: the {} is {:.1f} mm too tall for a whole face of the format {}", where,
                                       block, fit.missing.value(), format_.name),
                           hint));
    }
}

std::size_t Flow::rows_that_fit(const Pieces& before, const Pieces& group) const {
    const auto has_room = [&](int rows) {
        Pieces trial = joined(before, group);
        trial.back() = split_after(group.back(), static_cast<std::size_t>(rows)).first;
        return maker_.fit(trial, ease_).fits();
    };
    const int rows = static_cast<int>(rows_of(group.back().block)) - 1;
    return static_cast<std::size_t>(most_that(1, rows, has_room).value_or(0));
}

void Flow::add_split(Pieces group) {
    // Fewer rows at the foot of a face are not worth their head; steps have none.
    const std::size_t least_here = std::holds_alternative<card::Steps>(group.back().block) && lone(current_) ? 2 : 3;
    while (!group.empty()) {
        if (maker_.fit(joined(current_, group), ease_).fits()) {
            current_ = joined(std::move(current_), group);
            return;
        }
        if (rows_of(group.back().block) < 2) {
            refuse(group, maker_.fit(group));
            return;
        }
        std::size_t rows = rows_that_fit(current_, group);
        if (rows > 2 && rows + 1 == rows_of(group.back().block)) {
            --rows;  // no single row on the next face
        }
        if (rows < least_here && !current_.empty()) {
            next_face();
            continue;
        }
        if (rows == 0) {  // not even its first row has room
            group.back() = split_after(group.back(), 1).first;
            refuse(group, maker_.fit(group));
            return;
        }
        auto [first, second] = split_after(group.back(), rows);
        group.back() = std::move(first);
        current_ = joined(std::move(current_), group);
        next_face();
        group = {std::move(second)};
    }
}

void Flow::add(Pieces group) {
    if (maker_.fit(joined(current_, group), ease_).fits()) {
        current_ = joined(std::move(current_), group);
        return;
    }
    const FaceMaker::Fit alone = maker_.fit(group);
    if (alone.fits()) {
        if (company_ && lone(current_) && rows_of(group.back().block) > 1) {
            add_split(std::move(group));
            return;
        }
        if (!current_.empty()) {
            next_face();
        }
        current_ = std::move(group);
    } else if (alone.too_wide > 0.0_mm || alone.labels_missing > 0.0_mm) {
        refuse(group, alone);
    } else {
        add_split(std::move(group));
    }
}

problem::Result<std::vector<Pieces>> Flow::run() {
    Pieces group;
    for (const auto& block : card_.blocks) {
        if (std::holds_alternative<card::Turn>(block)) {
            if (!group.empty()) {
                add(std::move(group));
                group = {};
            }
            turn();
            continue;
        }
        group.push_back({block});
        if (!std::holds_alternative<card::Heading>(block)) {
            add(std::move(group));
            group = {};
        }
    }
    if (!group.empty()) {
        add(std::move(group));
    }
    if (!current_.empty() || faces_.empty()) {
        next_face();
    }
    if (problem::has_error(problems_)) {
        return problems_;
    }
    return {std::move(faces_), std::move(problems_)};
}

using Faces = std::vector<Pieces>;

/// As comfortable as can be without another face to look at.
problem::Result<Faces> best_flow(const card::Card& card, const FaceMaker& maker, const Format& format, bool company) {
    problem::Result<Faces> best = Flow(card, maker, format, 0.0, company).run();
    if (!best.ok()) {
        return best;
    }
    // Air must not drive the answer from the first face.
    const auto hollow = [&maker](const Faces& faces) {
        constexpr double half = 0.5;
        return faces.size() > 1 && maker.filled(faces.front()) < half;
    };
    for (const double ease : {0.35, 0.2}) {
        auto roomy = Flow(card, maker, format, ease, company).run();
        if (roomy.ok() && roomy->size() <= best->size() && (hollow(*best) || !hollow(*roomy))) {
            return roomy;
        }
    }
    return best;
}

/// A face with next to nothing on it takes over what stood last on the one before, a heading with its block, of steps a
/// few.
void fill_scraps(Faces& faces, const FaceMaker& maker) {
    for (std::size_t i = faces.size(); i-- > 1;) {
        constexpr double worth_a_turn = 0.4;  // of a face
        while (maker.filled(faces[i]) < worth_a_turn && !faces[i - 1].empty()) {
            Pieces& before = faces[i - 1];
            auto from = before.end() - 1;
            if (from != before.begin() && std::holds_alternative<card::Heading>((from - 1)->block)) {
                --from;
            }
            Pieces left(before.begin(), from);
            Pieces more = joined(Pieces(from, before.end()), faces[i]);
            // Of rows that belong to no head the last few.
            constexpr std::size_t few = 3;
            if (const std::size_t rows = rows_of(from->block);
                std::holds_alternative<card::Steps>(from->block) && rows > 2 * few) {
                auto [first, second] = split_after(*from, rows - few);
                left.push_back(std::move(first));
                more = joined({std::move(second)}, faces[i]);
            }
            if (left.empty() || lone(left) || !maker.fit(more).fits()) {
                break;
            }
            before = left;
            faces[i] = std::move(more);
        }
    }
}

}  // namespace

problem::Result<std::vector<Pieces>> flow(const card::Card& card, const FaceMaker& maker, const Format& format) {
    problem::Result<Faces> whole = best_flow(card, maker, format, false);
    const auto any_lone = [](const Faces& faces) {
        return faces.size() > 1 && std::any_of(faces.begin(), faces.end(), lone);
    };
    if (whole.ok() && any_lone(*whole)) {
        auto cut = best_flow(card, maker, format, true);
        if (cut.ok() && cut->size() <= whole->size() && !any_lone(*cut)) {
            whole = std::move(cut);
        }
    }
    if (!whole.ok()) {
        return whole;
    }
    Faces faces = *whole;
    fill_scraps(faces, maker);
    return {std::move(faces), whole.problems()};
}

}  // namespace holdwater::layout
