#include "render/deflate.h"

#include <cassert>
#include <libdeflate.h>
#include <new>

namespace thawslip::render {
namespace {

/// Of libdeflate's 1 to 12. Measured on sheets of labels: 9 packs 6 % smaller but takes eight times
/// as long; 1 is twice as fast but half as large again.
constexpr int effort = 5;

} // namespace

void Deflater::Free::operator()(libdeflate_compressor* compressor) const {
    libdeflate_free_compressor(compressor);
}

Deflater::Deflater() : compressor_{libdeflate_alloc_compressor(effort)} {
    if (!compressor_) {
        throw std::bad_alloc();
    }
}

std::string_view Deflater::pack(std::string_view bytes) {
    packed_.resize(libdeflate_zlib_compress_bound(compressor_.get(), bytes.size()));
    const auto size = libdeflate_zlib_compress(compressor_.get(), bytes.data(), bytes.size(),
                                               packed_.data(), packed_.size());
    assert(size > 0 && "the bound that libdeflate gave was too small");
    return std::string_view{packed_}.substr(0, size);
}

std::uint32_t crc32(std::uint32_t before, std::string_view bytes) {
    return libdeflate_crc32(before, bytes.data(), bytes.size());
}

} // namespace thawslip::render
