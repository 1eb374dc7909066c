#pragma once

#include "render/pdf.h"
#include "render/pdf_objects.h"

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::render {

/// The outside of a PDF file: header, numbered objects, the table of where they stand, trailer
/// (ISO 32000-1, 7.5 "File Structure").
///
/// libharu builds the objects and spells them; but where it keeps a whole document until it is
/// saved, here each object leaves for the sink as soon as it is complete.
class PdfFile {
public:
    explicit PdfFile(Sink sink);

    Reference reserve();                ///< a number for an object that will be written
    OwnedDictionary dictionary() const; ///< for an object of its own
    Dictionary catalog() const;         ///< written by finish(), as the next two
    Dictionary info() const;            ///< title, dates
    Dictionary root_pages() const;      ///< the top of the page tree
    Reference root_pages_reference() const;

    void write(Reference as, const Dictionary& object);
    /// Writes a stream: `object` gets its Length and, when they are packed, the filter.
    enum class Packing { Plain, Deflated };
    void write_stream(Reference as, Dictionary object, std::string_view bytes, Packing packing);

    /// Writes what is left and the table of objects.
    /// \pre all reserved objects are written
    void finish();

private:
    void begin_object(std::uint32_t number);
    void append(const Dictionary& object);
    void put(std::string_view bytes);
    void send();
    void write_table();
    void write_trailer();

    struct FreeDocument {
        void operator()(HPDF_Doc document) const { HPDF_Free(document); }
    };
    struct FreeStream {
        void operator()(HPDF_Stream stream) const { HPDF_Stream_Free(stream); }
    };

    Sink sink_;
    std::unique_ptr<std::string> buffer_; ///< what the sink has not had yet; libharu points at it
    std::unique_ptr<_HPDF_Doc_Rec, FreeDocument> document_;
    std::unique_ptr<_HPDF_Stream_Rec, FreeStream> writer_; ///< libharu's way into buffer_
    std::uint64_t sent_ = 0;
    std::uint32_t checksum_ = 0;
    std::vector<std::uint64_t> offsets_; ///< by object number; 0 is not written
};

} // namespace thawslip::render
