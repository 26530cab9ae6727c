// SPDX-License-Identifier: MIT
#include "draw/pdf_bytes.hpp"

#include "draw/font.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <set>
#include <vector>

namespace holdwater::draw {

namespace {

constexpr char32_t code_limit = 0x10000;  // the codes of the file have two bytes

std::optional<std::string> xml(std::string_view text) {
    constexpr char32_t broken = 0xFFFD;
    for (const char32_t point : code_points(text)) {
        if (point < U' ' || point == broken || (point >= 0x7F && point < 0xA0)) {
            return std::nullopt;
        }
    }
    std::string made;
    for (const char c : text) {
        made += c == '&' ? "&amp;" : c == '<' ? "&lt;" : c == '>' ? "&gt;" : std::string(1, c);
    }
    return made;
}

void add_number(std::string& bytes, std::uint32_t value, int count) {
    for (int shift = 8 * (count - 1); shift >= 0; shift -= 8) {
        bytes += static_cast<char>((value >> shift) & 0xFFU);
    }
}

/// A place in XYZ as three numbers with 16 bits before and 16 behind the point.
std::string xyz(std::uint32_t x, std::uint32_t y, std::uint32_t z) {
    std::string made("XYZ \0\0\0\0", 8);
    for (const std::uint32_t value : {x, y, z}) {
        add_number(made, value, 4);
    }
    return made;
}

/// sRGB decoding (IEC 61966-2-1) in 256 steps, each from 0 to 65535.
std::string decoding_curve() {
    constexpr int steps = 256;
    std::string made("curv\0\0\0\0", 8);
    add_number(made, steps, 4);
    for (int i = 0; i < steps; ++i) {
        const double c = i / 255.0;
        const double linear = c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
        add_number(made, static_cast<std::uint32_t>(std::lround(linear * 65535.0)), 2);
    }
    return made;
}

std::string description() {
    constexpr std::size_t tail = 4 + 4 + 2 + 1 + 67;  // no Unicode and no Macintosh name
    std::string made("desc\0\0\0\0\0\0\0\5sRGB\0", 17);
    made.append(tail, '\0');
    return made;
}

}  // namespace

std::string unicode_map(const std::u32string& used) {
    constexpr std::size_t lines_in_a_block = 100;  // as the file format allows
    const std::set<char32_t> sorted(used.begin(), used.end());
    const std::vector<char32_t> codes(sorted.begin(), sorted.end());
    std::string map =
        "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"
        "/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n"
        "/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n"
        "1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n";
    for (std::size_t from = 0; from < codes.size(); from += lines_in_a_block) {
        const std::size_t to = std::min(codes.size(), from + lines_in_a_block);
        map += fmt::format("{} beginbfchar\n", to - from);
        for (std::size_t i = from; i < to; ++i) {
            map += fmt::format("<{0:04X}> <{0:04X}>\n", static_cast<std::uint32_t>(codes[i]));
        }
        map += "endbfchar\n";
    }
    return map + "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n";
}

std::string glyph_set(const std::u32string& used) {
    std::string bits(code_limit / 8, '\0');
    const auto set = [&bits](char32_t code) {
        bits[code / 8] = static_cast<char>(static_cast<unsigned char>(bits[code / 8]) | (0x80U >> (code % 8)));
    };
    set(0);
    for (const char32_t code : used) {
        if (code < code_limit) {
            set(code);
        }
    }
    return bits;
}

std::optional<std::string> xmp_packet(std::string_view title, std::string_view language, std::string_view creator,
                                      std::string_view producer) {
    const auto name = xml(title);
    const auto tongue = xml(language);
    const auto tool = xml(creator);
    const auto library = xml(producer);
    if (!name || !tongue || !tool || !library) {
        return std::nullopt;
    }
    const std::string head = "<?xpacket begin=\"\xEF\xBB\xBF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n";
    return head + fmt::format(
                      "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">\n"
                      "<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n"
                      "<rdf:Description rdf:about=\"\" xmlns:dc=\"http://purl.org/dc/elements/1.1/\">\n"
                      "<dc:format>application/pdf</dc:format>\n"
                      "<dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">{}</rdf:li></rdf:Alt></dc:title>\n"
                      "<dc:language><rdf:Bag><rdf:li>{}</rdf:li></rdf:Bag></dc:language>\n"
                      "</rdf:Description>\n"
                      "<rdf:Description rdf:about=\"\" xmlns:xmp=\"http://ns.adobe.com/xap/1.0/\">\n"
                      "<xmp:CreatorTool>{}</xmp:CreatorTool>\n</rdf:Description>\n"
                      "<rdf:Description rdf:about=\"\" xmlns:pdf=\"http://ns.adobe.com/pdf/1.3/\">\n"
                      "<pdf:Producer>{}</pdf:Producer>\n</rdf:Description>\n"
                      "<rdf:Description rdf:about=\"\" xmlns:pdfaid=\"http://www.aiim.org/pdfa/ns/id/\">\n"
                      "<pdfaid:part>1</pdfaid:part>\n<pdfaid:conformance>B</pdfaid:conformance>\n"
                      "</rdf:Description>\n</rdf:RDF>\n</x:xmpmeta>\n<?xpacket end=\"w\"?>\n",
                      *name, *tongue, *tool, *library);
}

std::string srgb_profile() {
    // The white of D50 and the sRGB primaries seen from it, as the profile format writes them.
    struct Part {
        const char* name;
        std::size_t content;
    };
    std::vector<std::string> contents{description(),
                                      std::string("text\0\0\0\0no rights reserved", 26) + '\0',
                                      xyz(0xF6D6, 0x10000, 0xD32D),
                                      xyz(0x6FA2, 0x38F5, 0x0390),
                                      xyz(0x6299, 0xB785, 0x18DA),
                                      xyz(0x24A0, 0x0F84, 0xB6CF),
                                      decoding_curve()};
    constexpr Part parts[] = {{"desc", 0}, {"cprt", 1}, {"wtpt", 2}, {"rXYZ", 3}, {"gXYZ", 4},
                              {"bXYZ", 5}, {"rTRC", 6}, {"gTRC", 6}, {"bTRC", 6}};
    constexpr std::size_t header = 128;
    constexpr std::size_t entry = 12;
    const auto padded = [](std::size_t size) { return (size + 3) / 4 * 4; };

    std::vector<std::size_t> starts;
    std::size_t size = header + 4 + entry * std::size(parts);
    for (const auto& content : contents) {
        starts.push_back(size);
        size += padded(content.size());
    }
    std::string made;
    add_number(made, static_cast<std::uint32_t>(size), 4);
    made += std::string("\0\0\0\0", 4);    // no preferred module
    made += std::string("\2\x10\0\0", 4);  // version 2.1
    made += "mntrRGB XYZ ";                // a monitor, RGB, connected through XYZ
    for (const std::uint32_t part : {2000U, 1U, 1U, 0U, 0U, 0U}) {
        add_number(made, part, 2);  // a date there must be; it says nothing
    }
    made += "acsp";
    made.append(28, '\0');  // no platform, flags, device; perceptual
    for (const std::uint32_t part : {0xF6D6U, 0x10000U, 0xD32DU}) {
        add_number(made, part, 4);
    }
    made.append(header - made.size(), '\0');
    add_number(made, static_cast<std::uint32_t>(std::size(parts)), 4);
    for (const auto& part : parts) {
        made += part.name;
        add_number(made, static_cast<std::uint32_t>(starts[part.content]), 4);
        add_number(made, static_cast<std::uint32_t>(contents[part.content].size()), 4);
    }
    for (const auto& content : contents) {
        made += content;
        made.append(padded(content.size()) - content.size(), '\0');
    }
    return made;
}

std::string content_id(std::string_view bytes) {
    // FNV-1a, 64 bit, from the front and from the back.
    constexpr std::uint64_t start = 14695981039346656037ULL;
    constexpr std::uint64_t prime = 1099511628211ULL;
    std::uint64_t forth = start;
    std::uint64_t back = start;
    for (std::size_t i = 0; i < bytes.size(); ++i) {
        forth = (forth ^ static_cast<unsigned char>(bytes[i])) * prime;
        back = (back ^ static_cast<unsigned char>(bytes[bytes.size() - 1 - i])) * prime;
    }
    std::string made;
    for (const std::uint64_t half : {forth, back}) {
        add_number(made, static_cast<std::uint32_t>(half >> 32U), 4);
        add_number(made, static_cast<std::uint32_t>(half & 0xFFFFFFFFU), 4);
    }
    return made;
}

}  // namespace holdwater::draw
