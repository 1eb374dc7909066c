#include "render/pdf_objects.h"

#include "base/utf8.h"
#include "render/pdf.h"

#include <fmt/format.h>
#include <string>

namespace thawslip::render {
namespace {

/// The codes that building objects can meet; `hpdf_error.h` lists all.
std::string words_of(HPDF_STATUS code) {
    switch (code) {
    case HPDF_FAILD_TO_ALLOC_MEM: return "out of memory";
    case HPDF_ARRAY_COUNT_ERR: return "an array has too many elements";
    case HPDF_DICT_COUNT_ERR: return "a dictionary has too many entries";
    case HPDF_XREF_COUNT_ERR: return "the document has too many objects";
    case HPDF_REAL_OUT_OF_RANGE: return "a number is too large";
    case HPDF_NAME_OUT_OF_RANGE: return "a name is too long";
    case HPDF_STRING_OUT_OF_RANGE: return "a text is too long";
    default: return "an object is not as it should be";
    }
}

/// PDF's text string: UTF-16, big end first, behind a byte order mark.
std::string utf16_bytes(std::string_view utf8) {
    std::string out = "\xfe\xff";
    const auto unit = [&out](std::uint32_t value) {
        out += static_cast<char>(value >> 8);
        out += static_cast<char>(value & 0xff);
    };
    for (std::size_t at = 0; at < utf8.size();) {
        const std::uint32_t code_point = next_code_point(utf8, at);
        if (code_point < 0x10000) {
            unit(code_point);
        } else {
            unit(0xd800 + ((code_point - 0x10000) >> 10));
            unit(0xdc00 + ((code_point - 0x10000) & 0x3ff));
        }
    }
    return out;
}

HPDF_Binary binary(HPDF_MMgr memory, std::string_view bytes) {
    std::string copy{bytes}; // libharu copies it too, but wants it mutable
    return HPDF_Binary_New(memory, reinterpret_cast<HPDF_BYTE*>(copy.data()),
                           static_cast<HPDF_UINT>(copy.size()));
}

} // namespace

void check(const HPDF_Error_Rec& error) {
    if (error.error_no != HPDF_OK) {
        throw PdfError(fmt::format("the PDF cannot be made: {} (libharu error 0x{:04x}, detail {})",
                                   words_of(error.error_no), error.error_no, error.detail_no));
    }
}

Array& Array::added(HPDF_STATUS status) {
    if (status != HPDF_OK) {
        check(*array_->error);
    }
    return *this;
}

Array& Array::number(int value) {
    return added(HPDF_Array_AddNumber(array_, value));
}

Array& Array::real(double value) {
    return added(HPDF_Array_AddReal(array_, static_cast<HPDF_REAL>(value)));
}

Array& Array::reference(Reference reference) {
    return added(HPDF_Array_Add(array_, reference.object));
}

Array& Array::numbers(std::span<const int> values) {
    const HPDF_Array inner = HPDF_Array_New(array_->mmgr);
    added(HPDF_Array_Add(array_, inner));
    for (const int value : values) {
        added(HPDF_Array_AddNumber(inner, value));
    }
    return *this;
}

Array& Array::bytes(std::span<const unsigned char> value) {
    const std::string copy(value.begin(), value.end());
    return added(HPDF_Array_Add(array_, binary(array_->mmgr, copy)));
}

Dictionary& Dictionary::added(HPDF_STATUS status) {
    if (status != HPDF_OK) {
        check(*dictionary_->error);
    }
    return *this;
}

Dictionary& Dictionary::name(const char* key, const char* value) {
    return added(HPDF_Dict_AddName(dictionary_, key, value));
}

Dictionary& Dictionary::number(const char* key, int value) {
    return added(HPDF_Dict_AddNumber(dictionary_, key, value));
}

Dictionary& Dictionary::boolean(const char* key, bool value) {
    return added(HPDF_Dict_AddBoolean(dictionary_, key, value ? HPDF_TRUE : HPDF_FALSE));
}

Dictionary& Dictionary::reference(const char* key, Reference reference) {
    return added(HPDF_Dict_Add(dictionary_, key, reference.object));
}

Dictionary& Dictionary::ascii(const char* key, const char* value) {
    return added(
        HPDF_Dict_Add(dictionary_, key, HPDF_String_New(dictionary_->mmgr, value, nullptr)));
}

Dictionary& Dictionary::text(const char* key, std::string_view value) {
    return added(HPDF_Dict_Add(dictionary_, key, binary(dictionary_->mmgr, utf16_bytes(value))));
}

Dictionary Dictionary::dictionary(const char* key) {
    const HPDF_Dict inner = HPDF_Dict_New(dictionary_->mmgr);
    added(HPDF_Dict_Add(dictionary_, key, inner));
    return Dictionary{inner};
}

Array Dictionary::array(const char* key) {
    const HPDF_Array inner = HPDF_Array_New(dictionary_->mmgr);
    added(HPDF_Dict_Add(dictionary_, key, inner));
    return Array{inner};
}

OwnedDictionary::OwnedDictionary(HPDF_MMgr memory)
    : Dictionary{HPDF_Dict_New(memory)}, owned_{handle()} {
    if (!owned_) {
        check(*memory->error);
    }
}

} // namespace thawslip::render
