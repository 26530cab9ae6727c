// SPDX-License-Identifier: MIT
// What other programs say of a PDF: sound, an archival one, and what it reads out.
#pragma once

#include "support/printing.hpp"

#include <set>
#include <sstream>
#include <string>

namespace holdwater::support {

/// Those files of a folder that are valid PDF/A-1b, by name, as Debian's libpdfbox2-java has it: started once for all,
/// since starting it takes longer than checking.
inline std::set<std::string> archival_files(const std::string& folder) {
    std::string jars;
    for (const char* jar : {"preflight", "pdfbox2", "fontbox2", "xmpbox", "commons-logging", "commons-io",
                            "javax.activation", "jaxb-api"}) {
        jars += std::string("/usr/share/java/") + jar + ".jar:";
    }
    const Ran ran = run("java -XX:+UseSerialGC -XX:TieredStopAtLevel=1 -cp " + jars +
                        " org.apache.pdfbox.preflight.Validator_A1b batch " + folder);
    // "The file NAME is a valid PDF/A-1b file", a line each.
    std::set<std::string> valid;
    std::istringstream lines(ran.output);
    const std::string before = "The file ";
    const std::string after = " is a valid PDF/A-1b file";
    for (std::string line; std::getline(lines, line);) {
        if (line.starts_with(before) && line.ends_with(after)) {
            valid.insert(line.substr(before.size(), line.size() - before.size() - after.size()));
        }
    }
    return valid;
}

/// What three programs have against a file; empty: nothing.
inline std::string complaints(const std::string& file) {
    const Ran checked = run("qpdf --check " + file);
    const Ran drawn = run("mutool draw -q -r 20 -F pgm -o /dev/null " + file);
    const Ran parsed = run("gs -q -dNOPAUSE -dBATCH -dPDFSTOPONERROR -sDEVICE=nullpage " + file);
    std::string made;
    made += checked.status != 0 || checked.output.find("WARNING") != std::string::npos ? checked.output : "";
    made += drawn.status != 0 || drawn.output.find("error") != std::string::npos ? drawn.output : "";
    made += parsed.status != 0 || !parsed.output.empty() ? parsed.output : "";
    return made;
}

/// Its elements and their texts in reading order, an element or a text a line, indented as they lie in each other.
inline std::string read_out(const std::string& file) {
    return run("pdfinfo -enc UTF-8 -struct-text " + file).output;
}

}  // namespace holdwater::support
