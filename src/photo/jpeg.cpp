#include "photo/formats.h"

#include <algorithm>
#include <array>
#include <csetjmp>
#include <cstdio>
#include <jpeglib.h>

namespace thawslip::photo {
namespace {

/// libjpeg leaves by longjmp when it meets a fault, so what it jumps over must hold no objects:
/// everything that owns memory is made before `setjmp`, in the caller.
struct Faults {
    jpeg_error_mgr manager{};
    std::jmp_buf back{};
    std::array<char, JMSG_LENGTH_MAX> message{};
};

extern "C" void leave(j_common_ptr info) {
    auto* faults = reinterpret_cast<Faults*>(info->err);
    faults->manager.format_message(info, faults->message.data());
    std::longjmp(faults->back, 1);
}

extern "C" void stay_silent(j_common_ptr, int) {}

/// A progressive file may hold any number of scans (ISO/IEC 10918-1, Annex G), each of which takes
/// as long as the whole picture. Cameras and programs write about ten.
constexpr int most_scans = 100;

extern "C" void count_scans(j_common_ptr info) {
    if (reinterpret_cast<j_decompress_ptr>(info)->input_scan_number <= most_scans) {
        return;
    }
    auto* faults = reinterpret_cast<Faults*>(info->err);
    std::snprintf(faults->message.data(), faults->message.size(), "more than %d scans", most_scans);
    std::longjmp(faults->back, 1);
}

/// Reads the header; false when the file is damaged, with the words in `faults`.
bool read_header(jpeg_decompress_struct& jpeg, Faults& faults, const unsigned char* bytes,
                 unsigned long size) {
    if (setjmp(faults.back) != 0) {
        return false;
    }
    jpeg_mem_src(&jpeg, bytes, size);
    jpeg_read_header(&jpeg, TRUE);
    return true;
}

/// Reads the rows into `pixels`, which has room for them. A file that is cut short gives the rows
/// it has.
bool read_rows(jpeg_decompress_struct& jpeg, Faults& faults, std::uint8_t* pixels) {
    if (setjmp(faults.back) != 0) {
        return false;
    }
    jpeg_start_decompress(&jpeg);
    while (jpeg.output_scanline < jpeg.output_height) {
        JSAMPROW row = pixels + static_cast<std::size_t>(jpeg.output_scanline) * jpeg.output_width;
        jpeg_read_scanlines(&jpeg, &row, 1);
    }
    jpeg_finish_decompress(&jpeg);
    return true;
}

struct Decompressor {
    jpeg_decompress_struct jpeg{};
    jpeg_progress_mgr progress{};
    Faults faults;
    Decompressor() {
        jpeg.err = jpeg_std_error(&faults.manager);
        faults.manager.error_exit = leave;
        faults.manager.emit_message = stay_silent;
        jpeg_create_decompress(&jpeg);
        progress.progress_monitor = count_scans;
        jpeg.progress = &progress;
        jpeg.mem->max_memory_to_use = 256L << 20U;
    }
    Decompressor(const Decompressor&) = delete;
    Decompressor& operator=(const Decompressor&) = delete;
    ~Decompressor() { jpeg_destroy_decompress(&jpeg); }
    PhotoFault fault() const {
        return {std::string{"the JPEG is damaged: "} + faults.message.data()};
    }
};

/// libjpeg can leave out every second row and column while it decodes: a photograph of 48
/// megapixels then costs a quarter of the time and memory.
unsigned scale_for(std::uint64_t pixels, const Limits& limits) {
    unsigned scale = 1;
    while (scale < 8 && pixels / (std::uint64_t{scale} * scale) > limits.read_pixels) {
        scale *= 2;
    }
    return scale;
}

} // namespace

Result<code::GreyPicture, PhotoFault> decode_jpeg(std::span<const std::uint8_t> bytes,
                                                  const Limits& limits) {
    Decompressor decompressor;
    auto& jpeg = decompressor.jpeg;
    if (!read_header(jpeg, decompressor.faults, bytes.data(), bytes.size())) {
        return Failure{decompressor.fault()};
    }
    if (auto why = refusal(jpeg.image_width, jpeg.image_height, limits); !why.empty()) {
        return Failure{PhotoFault{std::move(why)}};
    }
    jpeg.out_color_space = JCS_GRAYSCALE;
    jpeg.scale_num = 1;
    jpeg.scale_denom = scale_for(std::uint64_t{jpeg.image_width} * jpeg.image_height, limits);
    // As libjpeg rounds: ceiling of the scaled size.
    const auto scaled = [&jpeg](unsigned side) {
        return (side + jpeg.scale_denom - 1) / jpeg.scale_denom;
    };
    code::GreyPicture picture{static_cast<int>(scaled(jpeg.image_width)),
                              static_cast<int>(scaled(jpeg.image_height)),
                              {}};
    picture.pixels.resize(static_cast<std::size_t>(picture.width) *
                          static_cast<std::size_t>(picture.height));
    if (!read_rows(jpeg, decompressor.faults, picture.pixels.data())) {
        return Failure{decompressor.fault()};
    }
    return picture;
}

} // namespace thawslip::photo
