// SPDX-License-Identifier: MIT
// What other programs say of a PDF: sound, an archival one, and what it reads out.
#pragma once

#include "support/printing.hpp"

#include <string>

namespace holdwater::support {

/// The check of PDF/A-1b by Debian's libpdfbox2-java.
inline bool is_archival(const std::string& file) {
    std::string path;
    for (const char* jar : {"preflight", "pdfbox2", "fontbox2", "xmpbox", "commons-logging", "commons-io",
                            "javax.activation", "jaxb-api"}) {
        path += std::string("/usr/share/java/") + jar + ".jar:";
    }
    const Ran ran = run("java -cp " + path + " org.apache.pdfbox.preflight.Validator_A1b " + file);
    return ran.output.find("is a valid PDF/A-1b file") != std::string::npos;
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
