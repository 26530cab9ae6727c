// SPDX-License-Identifier: MIT
// Trip file text -> Trip, or every fault in it at once, each with file:line:column and what would be right.
#pragma once

#include "problem/problem.hpp"
#include "trip/name_check.hpp"
#include "trip/trip.hpp"

#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace holdwater::trip {

/// Gives the text of a file named in the trip file (a box log), relative to the trip file; wired to the disk in cli/.
using FileReader = std::function<problem::Result<std::string>(const std::string& name)>;

/// A box or a fire that is kept in a file of its own, for use in many trips.
struct Kit {
    std::string text;
    std::string path;    // for messages
    std::string folder;  // a whole path: what the kit names is looked up there
};

/// Gives the kit of that name. Errors: word-unknown, and what keeps its file from being read.
using KitReader = std::function<problem::Result<Kit>(const std::string& name)>;

/// Words that a trip file may use and that are listed elsewhere: the kinds of food in facts/, the languages in
/// layouts/. And what a card can print.
struct Known {
    std::vector<std::string> kinds;
    std::vector<std::string> languages = {"en"};
    NameCheck name_fault = {};  // none: every name will do
    /// How long a piece of that mass takes to thaw, in words; none: nobody knows.
    std::function<std::string(units::Mass)> thawing = {};
    KitReader read_kit = {};  // none: there are no kits
};

/// file_name is only used in messages. Warnings come with a good value.
problem::Result<Trip> read_trip(std::string_view text, const std::string& file_name, const FileReader& read_file,
                                const Known& known);

/// The trip in one fixed spelling, SI units, every default written out: two files that mean the same give the same
/// text. It is itself a trip file, and reading it gives the same trip (a box log has become its readings).
std::string canonical(const Trip& trip);
/// One [[box]] of it, with its heading.
std::string canonical(const Box& box);

}  // namespace holdwater::trip
