// SPDX-License-Identifier: MIT
// Pages as a reader hears them: the tree of headings, paragraphs, tables and figures that a tagged PDF carries.
#pragma once

#include "layout/page.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace holdwater::draw {

/// One element of the tree, named as in the file format: "Table", "TR", "P".
struct Element {
    std::string type;
    int parent = -1;         // in the list; -1: the document
    std::size_t page = 0;    // on which its marks are
    std::vector<int> marks;  // stretches of the page's content, by number
    std::string alt;         // a figure in words
    std::string title;       // a part that an outline leads to
};

/// What is to be written round the items of one page.
struct PageReading {
    std::vector<int> element_of;       // for each item: its element, -1 for furniture
    std::vector<int> element_of_mark;  // for each marked stretch, in order
    std::vector<bool> space_after;     // for each item: a text that its element goes on after a gap or on another line
};

struct TagTree {
    std::vector<Element> elements;  // parents before their children, in reading order
    std::vector<PageReading> pages;
};

TagTree reading_of(const std::vector<layout::Page>& pages);

}  // namespace holdwater::draw
