#pragma once

#include <cstdint>
#include <hpdf.h>
#include <memory>
#include <span>
#include <string_view>

namespace thawslip::render {

/// \throws PdfError when libharu has met an error, in words
void check(const HPDF_Error_Rec& error);

/// Stands for a numbered object of the file wherever another one points to it, before and after it
/// is written.
struct Reference {
    HPDF_Obj_Header* object = nullptr;
    std::uint32_t number() const { return object->obj_id & 0x00ffffffU; }
};

/// A PDF array or dictionary of libharu's, not owned. Each call throws PdfError when libharu fails.
class Array {
public:
    explicit Array(HPDF_Array array) : array_{array} {}
    Array& number(int value);
    Array& real(double value);
    Array& reference(Reference reference);
    Array& numbers(std::span<const int> values); ///< as an array inside this one
    Array& bytes(std::span<const unsigned char> value);

private:
    Array& added(HPDF_STATUS status);
    HPDF_Array array_;
};

class Dictionary {
public:
    explicit Dictionary(HPDF_Dict dictionary) : dictionary_{dictionary} {}
    Dictionary& name(const char* key, const char* value);
    Dictionary& number(const char* key, int value);
    Dictionary& boolean(const char* key, bool value);
    Dictionary& reference(const char* key, Reference reference);
    Dictionary& ascii(const char* key, const char* value);     ///< a byte string
    Dictionary& text(const char* key, std::string_view value); ///< a text string, from UTF-8
    Dictionary dictionary(const char* key);                    ///< a new one inside this one
    Array array(const char* key);                              ///< a new one inside this one

    HPDF_Dict handle() const { return dictionary_; }

private:
    Dictionary& added(HPDF_STATUS status);
    HPDF_Dict dictionary_;
};

/// A dictionary that is not part of anything yet.
class OwnedDictionary : public Dictionary {
public:
    explicit OwnedDictionary(HPDF_MMgr memory);

private:
    struct Free {
        void operator()(HPDF_Dict dictionary) const { HPDF_Dict_Free(dictionary); }
    };
    std::unique_ptr<_HPDF_Dict_Rec, Free> owned_;
};

} // namespace thawslip::render
