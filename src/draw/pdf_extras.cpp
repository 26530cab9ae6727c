// SPDX-License-Identifier: MIT
#include "draw/pdf_extras.hpp"

#include "draw/pdf_objects.hpp"

#include <cstring>

namespace holdwater::draw {

namespace {

using namespace objects;

/// Its place in the list, or the document's own element.
HPDF_Dict parent_of(const Element& element, const std::vector<HPDF_Dict>& made, HPDF_Dict document) {
    return element.parent < 0 ? document : made[static_cast<std::size_t>(element.parent)];
}

/// The element's own entries; its children come later, each by itself.
bool fill_element(HPDF_Doc document, HPDF_Dict made, const Element& element, HPDF_Dict parent, HPDF_Page page) {
    bool fine = done(HPDF_Dict_AddName(made, "S", element.type.c_str())) && add(made, "P", parent);
    if (element.marks.size() == 1) {
        fine = fine && done(HPDF_Dict_AddNumber(made, "K", element.marks[0]));
    } else if (!element.marks.empty()) {
        HPDF_Array marks = HPDF_Array_New(document->mmgr);
        fine = fine && add(made, "K", marks);
        for (const int mark : element.marks) {
            fine = fine && done(HPDF_Array_AddNumber(marks, mark));
        }
    }
    if (!element.marks.empty()) {
        fine = fine && add(made, "Pg", page);
    }
    if (!element.alt.empty()) {
        fine = fine && add(made, "Alt", text(document, element.alt));
    }
    return fine;
}

bool add_child(HPDF_Doc document, HPDF_Dict parent, HPDF_Dict child) {
    auto* children = static_cast<HPDF_Array>(HPDF_Dict_GetItem(parent, "K", HPDF_OCLASS_ARRAY));
    if (children == nullptr) {
        children = HPDF_Array_New(document->mmgr);
        if (!add(parent, "K", children)) {
            return false;
        }
    }
    return add(children, child);
}

/// From the marks of every page to their elements.
bool add_parent_tree(HPDF_Doc document, HPDF_Dict root, const std::vector<HPDF_Page>& pages, const TagTree& reading,
                     const std::vector<HPDF_Dict>& made) {
    HPDF_Dict tree = HPDF_Dict_New(document->mmgr);
    HPDF_Array numbers = HPDF_Array_New(document->mmgr);
    bool fine = add(root, "ParentTree", tree) && add(tree, "Nums", numbers) &&
                done(HPDF_Dict_AddNumber(root, "ParentTreeNextKey", static_cast<HPDF_INT32>(pages.size())));
    for (std::size_t i = 0; fine && i < pages.size(); ++i) {
        HPDF_Array marks = HPDF_Array_New(document->mmgr);
        fine = marks != nullptr && done(HPDF_Xref_Add(document->xref, marks)) &&
               done(HPDF_Array_AddNumber(numbers, static_cast<HPDF_INT32>(i))) && add(numbers, marks) &&
               done(HPDF_Dict_AddNumber(pages[i], "StructParents", static_cast<HPDF_INT32>(i))) &&
               done(HPDF_Dict_AddName(pages[i], "Tabs", "S"));
        for (const int element : reading.pages[i].element_of_mark) {
            fine = fine && add(marks, made[static_cast<std::size_t>(element)]);
        }
    }
    return fine;
}

}  // namespace

bool knows_objects() {
    return std::strcmp(HPDF_GetVersion(), HPDF_VERSION_TEXT) == 0;
}

bool write_raw(HPDF_Page page, const std::string& operators) {
    auto* attributes = static_cast<HPDF_PageAttr>(page->attr);
    return done(HPDF_Stream_WriteStr(attributes->stream, operators.c_str()));
}

bool add_page_boxes(HPDF_Doc document, HPDF_Page page, units::Points width, units::Points height) {
    HPDF_Box box;
    box.left = 0.0F;
    box.bottom = 0.0F;
    box.right = static_cast<HPDF_REAL>(width.value());
    box.top = static_cast<HPDF_REAL>(height.value());
    return add(page, "TrimBox", HPDF_Box_Array_New(document->mmgr, box)) &&
           add(page, "BleedBox", HPDF_Box_Array_New(document->mmgr, box));
}

bool add_language(HPDF_Doc document, const std::string& language) {
    auto* shown = static_cast<HPDF_Dict>(HPDF_Dict_GetItem(document->catalog, "ViewerPreferences", HPDF_OCLASS_DICT));
    return shown != nullptr && done(HPDF_Dict_AddBoolean(shown, "DisplayDocTitle", HPDF_TRUE)) &&
           add(document->catalog, "Lang", HPDF_String_New(document->mmgr, language.c_str(), nullptr));
}

bool add_page_labels(HPDF_Doc document, const std::vector<std::string>& labels) {
    if (labels.empty()) {
        return true;
    }
    HPDF_Array ranges = HPDF_Array_New(document->mmgr);
    HPDF_Dict tree = HPDF_Dict_New(document->mmgr);
    bool fine = add(tree, "Nums", ranges) && add(document->catalog, "PageLabels", tree);
    for (std::size_t i = 0; fine && i < labels.size(); ++i) {
        HPDF_Dict label = HPDF_Dict_New(document->mmgr);
        fine = label != nullptr && add(label, "P", text(document, labels[i])) &&
               done(HPDF_Array_AddNumber(ranges, static_cast<HPDF_INT32>(i))) && add(ranges, label);
    }
    return fine;
}

bool add_outline_entry(HPDF_Doc document, HPDF_Page page, const std::string& title) {
    HPDF_Outline entry = HPDF_CreateOutline(document, nullptr, title.c_str(), document->cur_encoder);
    HPDF_Dict action = HPDF_Dict_New(document->mmgr);
    HPDF_Array target = HPDF_Array_New(document->mmgr);
    // An action, since checkers refuse the library's own destinations.
    return entry != nullptr && action != nullptr && target != nullptr && add(entry, "A", action) &&
           done(HPDF_Dict_AddName(action, "S", "GoTo")) && add(action, "D", target) && add(target, page) &&
           done(HPDF_Array_AddName(target, "Fit"));
}

bool add_reading(HPDF_Doc document, const std::vector<HPDF_Page>& pages, const TagTree& reading) {
    HPDF_Dict root = indirect_dict(document);
    HPDF_Dict whole = indirect_dict(document);
    HPDF_Dict marked = HPDF_Dict_New(document->mmgr);
    if (root == nullptr || whole == nullptr || marked == nullptr) {
        return false;
    }
    bool fine = done(HPDF_Dict_AddName(root, "Type", "StructTreeRoot")) && add(root, "K", whole) &&
                add(document->catalog, "StructTreeRoot", root) && add(document->catalog, "MarkInfo", marked) &&
                done(HPDF_Dict_AddBoolean(marked, "Marked", HPDF_TRUE)) &&
                done(HPDF_Dict_AddName(whole, "Type", "StructElem")) &&
                done(HPDF_Dict_AddName(whole, "S", "Document")) && add(whole, "P", root);
    std::vector<HPDF_Dict> made;
    for (const auto& element : reading.elements) {
        made.push_back(indirect_dict(document));
        HPDF_Dict parent = parent_of(element, made, whole);
        fine = fine && made.back() != nullptr && parent != nullptr &&
               fill_element(document, made.back(), element, parent, pages[element.page]) &&
               add_child(document, parent, made.back());
    }
    return fine && add_parent_tree(document, root, pages, reading, made);
}

bool add_archive_parts(HPDF_Doc document, const std::string& xmp, const std::string& profile) {
    document->pdf_version = HPDF_VER_14;
    HPDF_Dict about = stream(document, xmp, false);
    HPDF_Dict space = stream(document, profile, true);
    HPDF_Dict intent = indirect_dict(document);
    HPDF_Array intents = HPDF_Array_New(document->mmgr);
    return about != nullptr && space != nullptr && intent != nullptr && intents != nullptr &&
           done(HPDF_Dict_AddName(about, "Type", "Metadata")) && done(HPDF_Dict_AddName(about, "Subtype", "XML")) &&
           add(document->catalog, "Metadata", about) && done(HPDF_Dict_AddNumber(space, "N", 3)) &&
           done(HPDF_Dict_AddName(intent, "Type", "OutputIntent")) &&
           done(HPDF_Dict_AddName(intent, "S", "GTS_PDFA1")) &&
           add(intent, "OutputConditionIdentifier", HPDF_String_New(document->mmgr, "sRGB", nullptr)) &&
           add(intent, "Info", HPDF_String_New(document->mmgr, "sRGB", nullptr)) &&
           add(intent, "DestOutputProfile", space) && add(intents, intent) &&
           add(document->catalog, "OutputIntents", intents);
}

bool add_id(HPDF_Doc document, std::string id) {
    HPDF_Array both = HPDF_Array_New(document->mmgr);
    if (!add(document->trailer, "ID", both)) {
        return false;
    }
    for (int i = 0; i < 2; ++i) {
        if (!add(both, HPDF_Binary_New(document->mmgr, reinterpret_cast<HPDF_BYTE*>(id.data()),
                                       static_cast<HPDF_UINT>(id.size())))) {
            return false;
        }
    }
    return true;
}

}  // namespace holdwater::draw
