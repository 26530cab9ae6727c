// SPDX-License-Identifier: MIT
// libharu's objects. For pdf_extras.cpp and pdf_fonts.cpp only: its structures differ from one version to the next.
#pragma once

#include "draw/font.hpp"

#include <hpdf.h>
#include <hpdf_doc.h>
#include <hpdf_font.h>
#include <hpdf_fontdef.h>
#include <hpdf_objects.h>
#include <hpdf_pages.h>

#include <string>

namespace holdwater::draw::objects {

inline bool done(HPDF_STATUS status) {
    return status == HPDF_OK;
}

/// Adds an object that was just made, or says that making it failed.
inline bool add(HPDF_Dict to, const char* key, void* object) {
    return object != nullptr && done(HPDF_Dict_Add(to, key, object));
}

inline bool add(HPDF_Array to, void* object) {
    return object != nullptr && done(HPDF_Array_Add(to, object));
}

/// Text for people: one byte a letter where PDFDocEncoding has them all, which takes a quarter of the room, else as the
/// file's own encoding writes it. Of that encoding only what it shares with Unicode is used; a no-break space, which it
/// lacks, means nothing to a listener.
inline HPDF_String text(HPDF_Doc document, const std::string& utf8) {
    std::string bytes;
    for (const char32_t c : code_points(utf8)) {
        const bool shared = (c >= U' ' && c <= U'~') || (c >= 0xA1 && c <= 0xFF && c != 0xAD);
        if (!shared && c != 0xA0 && c != U'–') {
            return HPDF_String_New(document->mmgr, utf8.c_str(), document->cur_encoder);
        }
        constexpr char en_dash = '\x85';  // in PDFDocEncoding
        bytes += c == 0xA0 ? ' ' : c == U'–' ? en_dash : static_cast<char>(c);
    }
    return HPDF_String_New(document->mmgr, bytes.c_str(), nullptr);
}

/// A dictionary that others may point to.
inline HPDF_Dict indirect_dict(HPDF_Doc document) {
    HPDF_Dict made = HPDF_Dict_New(document->mmgr);
    return made != nullptr && done(HPDF_Xref_Add(document->xref, made)) ? made : nullptr;
}

inline bool fill(HPDF_Dict dict, const std::string& bytes) {
    return done(HPDF_Stream_Write(dict->stream, reinterpret_cast<const HPDF_BYTE*>(bytes.data()),
                                  static_cast<HPDF_UINT>(bytes.size())));
}

/// Other bytes for a stream that is there; a second one would leave the first in the file, unused.
inline bool refill(HPDF_Doc document, HPDF_Dict of, const char* key, const std::string& bytes) {
    auto* dict = static_cast<HPDF_Dict>(HPDF_Dict_GetItem(of, key, HPDF_OCLASS_DICT));
    HPDF_Stream fresh = HPDF_MemStream_New(document->mmgr, static_cast<HPDF_UINT>(bytes.size()));
    if (dict == nullptr || dict->stream == nullptr || fresh == nullptr) {
        return false;
    }
    HPDF_Stream_Free(dict->stream);
    dict->stream = fresh;
    dict->filter = HPDF_STREAM_FILTER_FLATE_DECODE;
    return fill(dict, bytes);
}

inline HPDF_Dict stream(HPDF_Doc document, const std::string& bytes, bool compressed) {
    HPDF_Dict made = HPDF_DictStream_New(document->mmgr, document->xref);
    if (made == nullptr) {
        return nullptr;
    }
    made->filter = compressed ? HPDF_STREAM_FILTER_FLATE_DECODE : HPDF_STREAM_FILTER_NONE;
    return fill(made, bytes) ? made : nullptr;
}

}  // namespace holdwater::draw::objects
