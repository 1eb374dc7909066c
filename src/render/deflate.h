#pragma once

#include <memory>
#include <string>
#include <string_view>

struct libdeflate_compressor;

namespace thawslip::render {

/// Packs bytes as PDF's FlateDecode reads them: the zlib format (RFC 1950, RFC 1951).
/// Made once and used for every stream of a document.
class Deflater {
public:
    /// \throws std::bad_alloc
    Deflater();

    /// The packed bytes; good until the next call. The same bytes always give the same.
    std::string_view pack(std::string_view bytes);

private:
    struct Free {
        void operator()(libdeflate_compressor* compressor) const;
    };
    std::unique_ptr<libdeflate_compressor, Free> compressor_;
    std::string packed_;
};

/// CRC-32 of `bytes`, continuing from that of the bytes before them (0 at the start).
std::uint32_t crc32(std::uint32_t before, std::string_view bytes);

} // namespace thawslip::render
