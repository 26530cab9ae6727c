# SPDX-License-Identifier: MIT
# cmake -D "files=a.toml|b.toml" -D output=embedded.cpp -P embed.cmake
# Writes one C++ file that holds the text of every file as a raw string literal.
string(REPLACE "|" ";" files "${files}")
set(entries "")
foreach(file IN LISTS files)
  get_filename_component(name "${file}" NAME)
  file(READ "${file}" text)
  string(FIND "${text}" ")facts\"" clash)
  if(NOT clash EQUAL -1)
    message(FATAL_ERROR "${name} holds the text that ends a raw string here")
  endif()
  string(APPEND entries "    {\"${name}\", R\"facts(${text})facts\"},\n")
endforeach()
file(WRITE "${output}.new" "// Made by embed.cmake from the TOML files of src/facts.
#include \"facts/read_facts.hpp\"

namespace holdwater::facts {
namespace {

const Document documents[] = {
${entries}};

}  // namespace

std::span<const Document> embedded_documents() {
    return documents;
}

}  // namespace holdwater::facts
")
file(RENAME "${output}.new" "${output}")
