# SPDX-License-Identifier: MIT
# cmake -D room=facts -D header=facts/read_facts.hpp -D "files=a.toml|b.toml" -D output=embedded.cpp -P embed.cmake
# Writes one C++ file that holds the text of every file as a raw string literal: embedded_documents() of that room, whose
# Document{name, text} the header declares.
string(REPLACE "|" ";" files "${files}")
set(entries "")
foreach(file IN LISTS files)
  get_filename_component(name "${file}" NAME)
  file(READ "${file}" text)
  string(FIND "${text}" ")embedded\"" clash)
  if(NOT clash EQUAL -1)
    message(FATAL_ERROR "${name} holds the text that ends a raw string here")
  endif()
  string(APPEND entries "    {\"${name}\", R\"embedded(${text})embedded\"},\n")
endforeach()
file(WRITE "${output}.new" "// Made by embed.cmake.
#include \"${header}\"

namespace holdwater::${room} {
namespace {

const Document documents[] = {
${entries}};

}  // namespace

std::span<const Document> embedded_documents() {
    return documents;
}

}  // namespace holdwater::${room}
")
file(RENAME "${output}.new" "${output}")
