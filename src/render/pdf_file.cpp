#include "render/pdf_file.h"

#include "render/deflate.h"
#include "render/number.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <fmt/format.h>
#include <iterator>
#include <new>

namespace thawslip::render {
namespace {

/// Version 1.6 brought PrintScaling (ISO 32000-1, Table 150). The second line holds bytes above
/// 127, by which file transfer tells a binary file (ISO 32000-1, 7.5.2).
constexpr std::string_view header = "%PDF-1.6\n%\xb5\xb6\xb7\xb8\n";

/// Ten digits is what the table of objects has for an offset.
constexpr std::uint64_t largest_file = 9'999'999'999;

extern "C" HPDF_STATUS append_to_buffer(HPDF_Stream stream, const HPDF_BYTE* bytes,
                                        HPDF_UINT size) {
    try {
        static_cast<std::string*>(stream->attr)->append(reinterpret_cast<const char*>(bytes), size);
        return HPDF_OK;
    } catch (const std::bad_alloc&) { // no exception may pass through C
        return HPDF_SetError(stream->error, HPDF_FAILD_TO_ALLOC_MEM, 0);
    }
}

/// Sixteen bytes that tell this file from others: its length and checksum so far.
std::array<unsigned char, 16> identifier(std::uint64_t size, std::uint32_t checksum) {
    std::array<unsigned char, 16> bytes{};
    for (std::size_t i = 0; i < 8; ++i) {
        bytes[i] = static_cast<unsigned char>(size >> (8 * i));
        bytes[8 + i] = static_cast<unsigned char>(std::uint64_t{checksum} >> (8 * i));
    }
    return bytes;
}

} // namespace

PdfFile::PdfFile(Sink sink)
    : sink_{std::move(sink)}, buffer_{std::make_unique<std::string>(header)} {
    document_.reset(HPDF_New(nullptr, nullptr));
    if (!document_) {
        throw std::bad_alloc();
    }
    writer_.reset(HPDF_CallbackWriter_New(document_->mmgr, append_to_buffer, buffer_.get()));
    if (!writer_) {
        check(document_->error);
    }
    // libharu writes its own name and version; another version would give another file.
    HPDF_Dict_RemoveElement(document_->info, "Producer");
    // libharu counts pages by walking them when it saves; ours are gone by then.
    document_->root_pages->before_write_fn = nullptr;
}

Reference PdfFile::reserve() {
    const HPDF_Null object = HPDF_Null_New(document_->mmgr);
    if (HPDF_Xref_Add(document_->xref, object) != HPDF_OK) {
        check(document_->error);
    }
    return {&object->header};
}

OwnedDictionary PdfFile::dictionary() const {
    return OwnedDictionary{document_->mmgr};
}

Dictionary PdfFile::catalog() const {
    return Dictionary{document_->catalog};
}

Dictionary PdfFile::info() const {
    return Dictionary{document_->info};
}

Dictionary PdfFile::root_pages() const {
    return Dictionary{document_->root_pages};
}

Reference PdfFile::root_pages_reference() const {
    return {&document_->root_pages->header};
}

void PdfFile::begin_object(std::uint32_t number) {
    if (offsets_.size() <= number) {
        offsets_.resize(std::max<std::size_t>(number + 1, offsets_.size() * 2));
    }
    assert(offsets_[number] == 0 && "an object is written once");
    offsets_[number] = sent_ + buffer_->size();
    append_whole(*buffer_, number);
    *buffer_ += " 0 obj\n";
}

void PdfFile::append(const Dictionary& object) {
    if (HPDF_Dict_Write(object.handle(), writer_.get(), nullptr) != HPDF_OK) {
        check(document_->error);
    }
}

void PdfFile::write(Reference as, const Dictionary& object) {
    begin_object(as.number());
    append(object);
    *buffer_ += "\nendobj\n";
    send();
}

void PdfFile::write_stream(Reference as, Dictionary object, std::string_view bytes,
                           Packing packing) {
    object.number("Length", static_cast<int>(bytes.size()));
    if (packing == Packing::Deflated) {
        object.name("Filter", "FlateDecode");
    }
    begin_object(as.number());
    append(object);
    *buffer_ += "\nstream\n";
    send();
    put(bytes);
    *buffer_ += "\nendstream\nendobj\n";
    send();
}

void PdfFile::put(std::string_view bytes) {
    sink_(bytes);
    sent_ += bytes.size();
    checksum_ = crc32(checksum_, bytes);
    if (sent_ > largest_file) {
        throw PdfError("the PDF cannot be made: it would pass 10 GB; print fewer sheets at a time");
    }
}

void PdfFile::send() {
    put(*buffer_);
    buffer_->clear();
}

void PdfFile::finish() {
    for (const HPDF_Dict own : {document_->root_pages, document_->info, document_->catalog}) {
        write({&own->header}, Dictionary{own});
    }
    const auto table = sent_;
    write_table();
    write_trailer();
    fmt::format_to(std::back_inserter(*buffer_), "\nstartxref\n{}\n%%EOF\n", table);
    send();
}

void PdfFile::write_table() {
    const auto count = document_->xref->entries->count;
    fmt::format_to(std::back_inserter(*buffer_), "xref\n0 {}\n0000000000 65535 f\r\n", count);
    for (std::uint32_t number = 1; number < count; ++number) {
        assert(number < offsets_.size() && offsets_[number] != 0 && "a reserved object is missing");
        fmt::format_to(std::back_inserter(*buffer_), "{:010} 00000 n\r\n", offsets_[number]);
    }
}

void PdfFile::write_trailer() {
    auto trailer = dictionary();
    trailer.number("Size", static_cast<int>(document_->xref->entries->count));
    trailer.reference("Root", {&document_->catalog->header});
    trailer.reference("Info", {&document_->info->header});
    // The identifier comes from the content, not from the clock (ISO 32000-1, 14.4).
    const auto id = identifier(sent_, checksum_);
    trailer.array("ID").bytes(id).bytes(id);
    *buffer_ += "trailer\n";
    append(trailer);
}

} // namespace thawslip::render
