// SPDX-License-Identifier: MIT
#include "card/content.hpp"

#include <algorithm>
#include <type_traits>

namespace holdwater::card {

void Steps::add(Text text) {
    steps.push_back({"", std::move(text)});
}

void Steps::add(Text when, Text text) {
    steps.push_back({std::move(when), std::move(text)});
}

void Table::column(Text head, Align align, bool strong) {
    columns.push_back({std::move(head), align, strong});
}

void Table::row(std::initializer_list<std::string_view> cells) {
    rows.emplace_back(cells.begin(), cells.end());
}

void Card::warn(Text text) {
    cautions.push_back({SignalWord::warning, std::move(text)});
}

void Card::warn_here(Text text) {
    blocks.add(Caution{SignalWord::warning, std::move(text)});
}

bool Card::cautioned() const {
    return harmless || !cautions.empty() || std::any_of(blocks.begin(), blocks.end(), [](const Block& block) {
               return std::holds_alternative<Caution>(block);
           });
}

template <class Any>
BlockList<Any>::BlockList() = default;
template <class Any>
BlockList<Any>::BlockList(std::vector<Any> blocks) : blocks_(std::move(blocks)) {}
template <class Any>
BlockList<Any>::BlockList(std::initializer_list<Any> blocks) : blocks_(blocks) {}
template <class Any>
BlockList<Any>::BlockList(const BlockList& other) = default;
template <class Any>
BlockList<Any>::BlockList(BlockList&& other) noexcept = default;
template <class Any>
BlockList<Any>& BlockList<Any>::operator=(const BlockList& other) = default;
template <class Any>
BlockList<Any>& BlockList<Any>::operator=(BlockList&& other) noexcept = default;
template <class Any>
BlockList<Any>::~BlockList() = default;

template <class Any>
template <class One>
void BlockList<Any>::add(One block) {
    if constexpr (std::is_same_v<Any, SheetBlock> && std::is_constructible_v<Block, One&&>) {
        blocks_.emplace_back(Block{std::move(block)});
    } else {
        blocks_.emplace_back(std::move(block));
    }
}

template <class Any>
void BlockList<Any>::append(const BlockList& other) {
    blocks_.insert(blocks_.end(), other.begin(), other.end());
}

template <class Any>
void BlockList<Any>::erase(iterator first, iterator last) {
    blocks_.erase(first, last);
}

template class BlockList<Block>;
template class BlockList<SheetBlock>;

template void Blocks::add(Block);
template void Blocks::add(Heading);
template void Blocks::add(KeyNumber);
template void Blocks::add(KeyRow);
template void Blocks::add(Steps);
template void Blocks::add(Table);
template void Blocks::add(Ladder);
template void Blocks::add(Ruler);
template void Blocks::add(Curve);
template void Blocks::add(DayBar);
template void Blocks::add(Caution);
template void Blocks::add(Note);
template void Blocks::add(WriteIn);
template void Blocks::add(Drawings);
template void Blocks::add(Turn);
template void Blocks::add(Thermometer);
template void Blocks::add(Staircase);
template void Blocks::add(Bands);

template void SheetBlocks::add(Heading);
template void SheetBlocks::add(KeyNumber);
template void SheetBlocks::add(KeyRow);
template void SheetBlocks::add(Steps);
template void SheetBlocks::add(Table);
template void SheetBlocks::add(Ladder);
template void SheetBlocks::add(Ruler);
template void SheetBlocks::add(Curve);
template void SheetBlocks::add(DayBar);
template void SheetBlocks::add(Caution);
template void SheetBlocks::add(Note);
template void SheetBlocks::add(WriteIn);
template void SheetBlocks::add(Drawings);
template void SheetBlocks::add(Turn);
template void SheetBlocks::add(Thermometer);
template void SheetBlocks::add(Staircase);
template void SheetBlocks::add(Bands);
template void SheetBlocks::add(Block);
template void SheetBlocks::add(Strip);
template void SheetBlocks::add(LaminateTemplate);

}  // namespace holdwater::card
