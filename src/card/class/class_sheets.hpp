// SPDX-License-Identifier: MIT
// The plain sheets of a class: the box test with its loss finder, exercises, their answers, the instructor's notes.
#pragma once

#include "card/class/class_frame.hpp"

namespace holdwater::card {

Sheets class_sheets(const ClassFrame& frame, const words::Words& words, const std::string& stamp);

}  // namespace holdwater::card
